// The commands that change a reading that stands: correct, leave out, mark as doubtful, add a remark; and seal a table.
// What cannot be done is said before anything is typed, and a value that cannot be read while it is typed.
import * as vscode from 'vscode';
import { addRemark, correctReading, correctTime, leaveOut, markDoubtful, rowAt, type CellPlace } from '../../edits/changeCell.ts';
import type { EditResult } from '../../edits/edit.ts';
import { sealBlock } from '../../edits/sealTable.ts';
import type { Note } from '../../experiment/types.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import { editSentence } from '../language.ts';
import type { NoteStore } from '../noteStore.ts';
import { describe, isCell, readingFor, type ReadingPlace } from './pickReading.ts';
import { applyToNote, reveal, saveNote } from './writeNote.ts';

/** What the caller knows already; the rest is asked. */
interface Asked { readonly uri?: vscode.Uri; readonly place?: CellPlace; readonly value?: string; readonly reason?: string }
interface Target { readonly document: vscode.TextDocument; readonly note: Note; readonly offset: number; readonly asked: Asked }

/** Words for trying whether an edit is possible before its reason is asked. */
const someReason = 'reason';

export function registerChangeReading(notes: NoteStore): vscode.Disposable {
  const target = async (argument: unknown): Promise<Target | null> => {
    const asked = (argument instanceof vscode.Uri ? { uri: argument } : typeof argument === 'object' && argument !== null ? argument : {}) as Asked;
    const document = await documentFor(asked.uri);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note) {
      sayNoNote();
      return null;
    }
    const editor = vscode.window.activeTextEditor;
    return { document, note, offset: editor?.document === document ? document.offsetAt(editor.selection.active) : -1, asked };
  };
  return vscode.Disposable.from(
    vscode.commands.registerCommand('evenwater.correctReading', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && (at.asked.place ?? await readingFor(at.note, at.offset, true));
      if (!at || !place) return false;
      const corrected = (typed: string, reason: string): EditResult => (isCell(place) ? correctReading(at.note, place, typed, reason) : correctTime(at.note, place, typed, reason));
      const value = at.asked.value ?? await typeValue(at.note, place, corrected);
      if (value === undefined) return false;
      const reason = at.asked.reason ?? await reasonFor(vscode.l10n.t('Correct {0} to {1}', describe(at.note, place), value.trim()));
      return reason !== undefined && finish(at, corrected(value, reason));
    }),
    vscode.commands.registerCommand('evenwater.leaveOut', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && await cellFor(at);
      if (!at || !place || !isPossible(leaveOut(at.note, place, someReason))) return false;
      const reason = at.asked.reason ?? await reasonFor(vscode.l10n.t('Leave out {0}', describe(at.note, place)));
      return reason !== undefined && finish(at, leaveOut(at.note, place, reason));
    }),
    vscode.commands.registerCommand('evenwater.markDoubtful', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && await cellFor(at);
      if (!at || !place || !isPossible(markDoubtful(at.note, place, someReason))) return false;
      const reason = at.asked.reason ?? await vscode.window.showInputBox({ title: vscode.l10n.t('Mark {0} as doubtful', describe(at.note, place)), prompt: vscode.l10n.t('Why? May stay empty.') });
      return reason !== undefined && finish(at, markDoubtful(at.note, place, reason));
    }),
    vscode.commands.registerCommand('evenwater.addRemark', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && (at.asked.place ?? rowAt(at.note, at.offset) ?? await readingFor(at.note, at.offset, false));
      if (!at || !place) return false;
      const words = at.asked.reason ?? await vscode.window.showInputBox({ title: vscode.l10n.t('Add a remark to {0}', describe(at.note, { table: place.table, row: place.row })) });
      return words !== undefined && finish(at, addRemark(at.note, place, words));
    }),
    vscode.commands.registerCommand('evenwater.sealBlock', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      if (!at) return false;
      const block = at.note.syntax.blocks.findIndex((each) => at.offset >= each.range.start && at.offset <= each.range.end);
      const here = at.note.tables.findIndex((table) => table.block === block);
      const last = at.note.tables.findLastIndex((table) => !table.file && !table.sealed);
      const table = here >= 0 ? here : last >= 0 ? last : at.note.tables.length - 1;
      const sealed = await finish(at, sealBlock(at.note, table, Date.now()));
      if (sealed) vscode.window.setStatusBarMessage(vscode.l10n.t('Evenwater: {0} rows are sealed', at.note.tables[table]?.rows.length ?? 0), 8000);
      return sealed;
    }),
  );
}

/** True when the edit can be made; else the keeper hears why not. */
function isPossible(result: EditResult): boolean {
  if (!result.ok) void vscode.window.showErrorMessage(editSentence(result.message));
  return result.ok;
}

async function finish({ document, note }: Target, result: EditResult): Promise<boolean> {
  if (!isPossible(result) || !result.ok) return false;
  if (document.getText() !== note.text || !await applyToNote(document, result.edits)) {
    void vscode.window.showErrorMessage(vscode.l10n.t('The note kept changing; nothing was written.'));
    return false;
  }
  reveal(document, result.shows);
  if (!await saveNote(document)) void vscode.window.showWarningMessage(vscode.l10n.t('The change stands in the editor but is not on disk yet. Save the note.'));
  return true;
}

const reasonFor = (title: string) => vscode.window.showInputBox({
  title, prompt: vscode.l10n.t('Why? The reason stays with the row.'),
  validateInput: (value) => (value.trim() === '' ? vscode.l10n.t('A few words are enough.') : null),
});

async function cellFor(at: Target): Promise<CellPlace | null> {
  const place = at.asked.place ?? await readingFor(at.note, at.offset, false);
  return place && isCell(place) ? place : null;
}

/** Asks for the right value; while it is typed, says what is wrong with it, or how the cell will read. */
function typeValue(note: Note, place: ReadingPlace, corrected: (typed: string, reason: string) => EditResult): Thenable<string | undefined> {
  const row = note.tables[place.table]?.rows[place.row];
  const before = (isCell(place) ? row?.cells[place.column]?.text : row?.timeText) ?? '';
  return vscode.window.showInputBox({
    title: vscode.l10n.t('Correct {0}', describe(note, place)), placeHolder: before,
    prompt: isCell(place) ? vscode.l10n.t('The value that is right; - where there was none. The first value stays in the table.') : vscode.l10n.t('The time that is right. The first one stays in the table.'),
    validateInput: (typed) => {
      if (typed.trim() === '') return null;
      const result = corrected(typed, someReason);
      if (!result.ok) return { message: editSentence(result.message), severity: vscode.InputBoxValidationSeverity.Error };
      return { message: vscode.l10n.t('It will read {0}', result.edits[0]?.newText.trim() ?? ''), severity: vscode.InputBoxValidationSeverity.Info };
    },
  });
}
