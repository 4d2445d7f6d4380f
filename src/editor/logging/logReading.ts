// The command *log a reading*: what is due, the prompt, the row in the note and on disk.
import * as vscode from 'vscode';
import { keepTyping, resumeTyping } from '../../edits/keptTyping.ts';
import { brokenTable, pendingRow } from '../../edits/pendingRow.ts';
import { planRow } from '../../edits/planRow.ts';
import { readRowInput, type RowInput } from '../../edits/readRowInput.ts';
import { rulesCrossedAt } from '../../experiment/conditions.ts';
import { editSentence } from '../language.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { newRowId, type RowJournal } from './journal.ts';
import type { KeptTypings } from './keptTypings.ts';
import { promptForRow, type Answer, type Asked } from './rowPrompt.ts';
import { tellWritten, writeRow, type Written } from './writeNote.ts';

/** For callers that are no keyboard: another note, another moment, a row that is typed already. */
export interface LogReadingArguments { readonly uri?: vscode.Uri; readonly now?: number; readonly typed?: string }

export function registerLogReading(notes: NoteStore, journal: RowJournal, kept: KeptTypings): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.logReading', async (argument?: unknown): Promise<Written | null> => {
    const wanted = argumentsOf(argument);
    const document = await documentFor(wanted.uri);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note) {
      sayNoNote();
      return null;
    }
    const plan = planRow(note, wanted.now ?? Date.now());
    if (!plan || brokenTable(note)) return refuse(editSentence(plan ? { code: 'table-broken', args: {} } : { code: 'no-protocol', args: {} }), false);
    const answer = wanted.typed === undefined ? await askForRow(document, notes, kept, { note, plan }, wanted.now) : { note, plan, logs: true, typed: wanted.typed };
    const written = answer.logs ? await logAnswer(document, notes, journal, answer) : null;
    if (wanted.typed !== undefined) return written;
    // What stands neither in the note nor in the journal stands in the prompt again.
    const isSafe = written !== null && (written.state !== 'refused' || written.kept);
    await kept.keep(document.uri, isSafe ? null : keepTyping(answer.typed, answer.note, answer.plan));
    if (written !== null && written.state !== 'refused') await sayStopRules(document, notes, written.time);
    return written;
  });
}

/** Milliseconds after which the prompt has the keyboard. */
const promptStands = 250;

function askForRow(document: vscode.TextDocument, notes: NoteStore, kept: KeptTypings, asked: Asked, now: number | undefined): Promise<Answer> {
  const begun = kept.take(document.uri);
  // An editor that loses the keyboard drops what it was about to refresh: the line above the table would lag behind a fast keeper.
  setTimeout(() => notes.readNow(document), promptStands);
  return promptForRow(asked, begun === null ? '' : resumeTyping(begun, asked.note, asked.plan), () => {
    const note = notes.noteOf(document);
    const plan = note && planRow(note, now ?? Date.now());
    return note && plan && !brokenTable(note) ? { note, plan } : null;
  });
}

/** Writes what was typed, and says what became of it. */
async function logAnswer(document: vscode.TextDocument, notes: NoteStore, journal: RowJournal, answer: Answer): Promise<Written> {
  const { typed, note, plan } = answer;
  // The note may have changed while the prompt stood there.
  const fresh = await notes.noteWithFiles(document) ?? note;
  const freshPlan = { ...planRow(fresh, plan.now) ?? plan, time: plan.time };
  const input = readRowInput(typed, fresh, freshPlan);
  const row = pendingRow(input, freshPlan, typed, newRowId(Date.now()));
  if (!row) return refuse(whyIncomplete(input), false);
  const written = await writeRow(document, notes, journal, row);
  tellWritten(written, typed);
  return written;
}

function whyIncomplete({ errors, cells }: RowInput): string {
  if (errors.length > 0) return errors.map((each) => editSentence(each.message)).join(' ');
  return editSentence({ code: 'too-few', args: { found: cells.filter((cell) => cell.text !== '').length, expected: cells.length } });
}

function refuse(message: string, kept: boolean): Written {
  void vscode.window.showErrorMessage(message);
  return { state: 'refused', message, kept };
}

/** A crossed stop rule stands before everything else, until it is read. */
async function sayStopRules(document: vscode.TextDocument, notes: NoteStore, time: number): Promise<void> {
  const note = await notes.noteWithFiles(document);
  for (const each of note ? rulesCrossedAt(note, time) : []) {
    await vscode.window.showErrorMessage(editSentence({ code: 'stop-rule', args: { ...each } }), { modal: true });
  }
}

function argumentsOf(asked: unknown): LogReadingArguments {
  if (asked instanceof vscode.Uri) return { uri: asked };
  if (typeof asked !== 'object' || asked === null) return {};
  const { uri, now, typed } = asked as Record<string, unknown>;
  return {
    ...(uri instanceof vscode.Uri ? { uri } : {}), ...(typeof now === 'number' && Number.isFinite(now) ? { now } : {}), ...(typeof typed === 'string' ? { typed } : {}),
  };
}
