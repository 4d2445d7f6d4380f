// The command *log a reading*: what is due, the prompt, the row in the note and on disk.
import * as vscode from 'vscode';
import { brokenTable, pendingRow } from '../../edits/pendingRow.ts';
import { planRow } from '../../edits/planRow.ts';
import { readRowInput } from '../../edits/readRowInput.ts';
import { rulesCrossedAt } from '../../experiment/conditions.ts';
import { editSentence } from '../../words/edits.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { newRowId, type RowJournal } from './journal.ts';
import { promptForRow } from './rowPrompt.ts';
import { tellWritten, writeRow, type Written } from './writeNote.ts';

/** For callers that are no keyboard: another note, another moment, a row that is typed already. */
export interface LogReadingArguments { readonly uri?: vscode.Uri; readonly now?: number; readonly typed?: string }

export function registerLogReading(notes: NoteStore, journal: RowJournal): vscode.Disposable {
  /** What was typed into a prompt whose row could not be written: it stands there again the next time. */
  const unfinished = new Map<string, string>();
  return vscode.commands.registerCommand('evenwater.logReading', async (asked?: unknown): Promise<Written | null> => {
    const wanted = argumentsOf(asked);
    const document = await documentFor(wanted.uri);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note) {
      sayNoNote();
      return null;
    }
    const now = wanted.now ?? Date.now();
    const plan = planRow(note, now);
    if (!plan || brokenTable(note)) {
      const message = editSentence(plan ? { code: 'table-broken', args: {} } : { code: 'no-protocol', args: {} });
      void vscode.window.showErrorMessage(message);
      return { state: 'refused', message, kept: false };
    }
    const key = document.uri.toString();
    const typed = wanted.typed ?? await promptForRow(note, plan, unfinished.get(key));
    if (typed === null) return null;
    // The note may have changed while the prompt stood there.
    const fresh = await notes.noteWithFiles(document) ?? note;
    const freshPlan = planRow(fresh, now, plan.table) ?? plan;
    const input = readRowInput(typed, fresh, freshPlan);
    const row = pendingRow(input, freshPlan, typed, newRowId(Date.now()));
    if (!row) {
      unfinished.set(key, typed);
      const message = input.errors.map((each) => editSentence(each.message)).join(' ') || editSentence({ code: 'too-few', args: { found: input.cells.filter((cell) => cell.text !== '').length, expected: plan.columns.length } });
      void vscode.window.showErrorMessage(message);
      return { state: 'refused', message, kept: true };
    }
    const written = await writeRow(document, notes, journal, row);
    if (written.state === 'refused' && !written.kept) unfinished.set(key, typed); else unfinished.delete(key);
    tellWritten(written, typed);
    if (written.state !== 'refused' && wanted.typed === undefined) await sayStopRules(document, notes, row.time);
    return written;
  });
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
