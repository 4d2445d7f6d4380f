// The commands that change a reading that stands: correct, leave out, mark as doubtful, add a remark; and seal a table.
// Each works on the cell at the cursor, or asks for one, the last ones first.
import * as vscode from 'vscode';
import { addRemark, cellAt, correctReading, leaveOut, markDoubtful, rowAt, type CellPlace } from '../../edits/changeCell.ts';
import type { EditResult } from '../../edits/edit.ts';
import { sealBlock } from '../../edits/sealTable.ts';
import type { Note } from '../../experiment/types.ts';
import { editSentence } from '../../words/edits.ts';
import { documentFor, sayNoNote } from '../commands/activeNote.ts';
import type { NoteStore } from '../noteStore.ts';
import { applyToNote, reveal, saveNote } from './writeNote.ts';

/** What the caller knows already; the rest is asked. */
interface Asked { readonly uri?: vscode.Uri; readonly place?: CellPlace; readonly value?: string; readonly reason?: string }
interface Target { readonly document: vscode.TextDocument; readonly note: Note; readonly offset: number; readonly asked: Asked }

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
      const place = at && await cellFor(at);
      if (!at || !place) return false;
      const before = textOf(at.note, place);
      const value = at.asked.value ?? await vscode.window.showInputBox({ title: vscode.l10n.t('Correct {0}', before), prompt: vscode.l10n.t('The value that is right; - where there was none. The first value stays in the table.') });
      if (value === undefined) return false;
      const reason = at.asked.reason ?? await reasonFor(vscode.l10n.t('Correct {0} to {1}', before, value));
      return reason !== undefined && finish(at, correctReading(at.note, place, value, reason));
    }),
    vscode.commands.registerCommand('evenwater.leaveOut', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && await cellFor(at);
      if (!at || !place) return false;
      const reason = at.asked.reason ?? await reasonFor(vscode.l10n.t('Leave out {0}', textOf(at.note, place)));
      return reason !== undefined && finish(at, leaveOut(at.note, place, reason));
    }),
    vscode.commands.registerCommand('evenwater.markDoubtful', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && await cellFor(at);
      if (!at || !place) return false;
      const reason = at.asked.reason ?? await vscode.window.showInputBox({ title: vscode.l10n.t('Mark {0} as doubtful', textOf(at.note, place)), prompt: vscode.l10n.t('Why? May stay empty.') });
      return reason !== undefined && finish(at, markDoubtful(at.note, place, reason));
    }),
    vscode.commands.registerCommand('evenwater.addRemark', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      const place = at && (at.asked.place ?? rowAt(at.note, at.offset) ?? await pickCell(at.note));
      if (!at || !place) return false;
      const words = at.asked.reason ?? await vscode.window.showInputBox({ title: vscode.l10n.t('Add a remark to {0}', at.note.tables[place.table]?.rows[place.row]?.timeText ?? '') });
      return words !== undefined && finish(at, addRemark(at.note, place, words));
    }),
    vscode.commands.registerCommand('evenwater.sealBlock', async (argument?: unknown): Promise<boolean> => {
      const at = await target(argument);
      if (!at) return false;
      const block = at.note.syntax.blocks.findIndex((each) => at.offset >= each.range.start && at.offset <= each.range.end);
      const here = at.note.tables.findIndex((table) => table.block === block);
      const last = at.note.tables.findLastIndex((table) => !table.file && !table.sealed);
      const table = here >= 0 ? here : last >= 0 ? last : at.note.tables.length - 1;
      return finish(at, sealBlock(at.note, table, Date.now()));
    }),
  );
}

async function finish({ document, note }: Target, result: EditResult): Promise<boolean> {
  if (!result.ok) {
    void vscode.window.showErrorMessage(editSentence(result.message));
    return false;
  }
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

const cellFor = async (at: Target): Promise<CellPlace | null> => at.asked.place ?? cellAt(at.note, at.offset) ?? await pickCell(at.note);

function textOf(note: Note, place: CellPlace): string {
  const table = note.tables[place.table];
  const row = table?.rows[place.row];
  return `${row?.timeText ?? ''} ${table?.columns[place.column]?.id ?? ''} ${row?.cells[place.column]?.text ?? ''}`.trim();
}

/** Every reading of the note, the last one first. */
async function pickCell(note: Note): Promise<CellPlace | null> {
  const items = note.tables.flatMap((table, at) => (table.file ? [] : table.rows.flatMap((row, line) => row.cells.flatMap((cell, column) => (
    cell.text === '' ? [] : [{ label: `${row.timeText}  ${table.columns[column]!.id}  ${cell.text}`, description: row.remark ?? '', place: { table: at, row: line, column } }]))))).reverse();
  const chosen = await vscode.window.showQuickPick(items, { title: vscode.l10n.t('Which reading?'), matchOnDescription: true });
  return chosen?.place ?? null;
}
