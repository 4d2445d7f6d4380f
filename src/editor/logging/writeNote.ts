// Puts edits into a note, saves it, and says truly whether it is on disk.
import * as vscode from 'vscode';
import type { Message } from '../../edits/edit.ts';
import { canBeMended, writePending, type PendingRow } from '../../edits/pendingRow.ts';
import type { SourceRange, TextEdit } from '../../problems/problem.ts';
import type { Instant } from '../../time/instant.ts';
import { editSentence } from '../language.ts';
import type { NoteStore } from '../noteStore.ts';
import { addEdits, toRange } from '../places.ts';
import type { RowJournal } from './journal.ts';

/** `saved`: on disk. `unsaved`: in the editor only. `refused`: nowhere but, where `kept`, in the journal. */
export type Written =
  | { readonly state: 'saved' | 'unsaved'; readonly time: Instant; readonly line: number; readonly text: string; readonly already: boolean }
  | { readonly state: 'refused'; readonly message: string; readonly kept: boolean };

/** Applies edits as one step to undo. False when the editor did not take them. */
export async function applyToNote(document: vscode.TextDocument, edits: readonly TextEdit[]): Promise<boolean> {
  if (edits.length === 0) return true;
  const change = new vscode.WorkspaceEdit();
  addEdits(change, document, edits);
  return vscode.workspace.applyEdit(change);
}

/** True when the document stands on disk as it is in the editor. A note that was never saved has no file yet. */
export async function saveNote(document: vscode.TextDocument): Promise<boolean> {
  if (document.isUntitled) return false;
  if (!document.isDirty) return true;
  try {
    return await document.save() && !document.isDirty;
  } catch {
    return false; // The editor itself says why.
  }
}

/** True for a note that the editor cannot write. A file that is merely protected can be: the editor asks when it saves. */
async function isReadOnly({ uri, isUntitled }: vscode.TextDocument): Promise<boolean> {
  if (isUntitled) return false;
  if (vscode.workspace.fs.isWritableFileSystem(uri.scheme) === false) return true;
  try {
    const { permissions = 0 } = await vscode.workspace.fs.stat(uri);
    return (permissions & vscode.FilePermission.Readonly) !== 0;
  } catch {
    return false; // A file that is gone is written anew.
  }
}

/** Shows the place of what was written, without taking the cursor out of another editor. */
export function reveal(document: vscode.TextDocument, shows: SourceRange): void {
  const editor = vscode.window.visibleTextEditors.find((each) => each.document === document);
  editor?.revealRange(toRange(document, shows), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}

/** Journal, edit, save, and only then out of the journal. */
export async function writeRow(document: vscode.TextDocument, notes: NoteStore, journal: RowJournal, row: PendingRow): Promise<Written> {
  const kept = await journal.add(document.uri, row);
  if (await isReadOnly(document)) return { state: 'refused', message: vscode.l10n.t('This note is read-only, so nothing was written.'), kept };
  for (let round = 0; round < 3; round += 1) {
    const note = await notes.noteWithFiles(document);
    const result = note ? writePending(note, row) : null;
    if (!result?.ok) {
      const message: Message = result?.message ?? { code: 'no-protocol', args: {} };
      const mendable = canBeMended(message);
      if (kept && !mendable) await journal.remove(document.uri, row);
      return { state: 'refused', message: editSentence(message), kept: kept && mendable };
    }
    // An edit made in between moves offsets; the editor refuses such edits, and the row is placed anew.
    if (document.getText() !== note!.text || !await applyToNote(document, result.edits)) continue;
    const line = document.positionAt(result.shows.start).line;
    const written = { time: row.time, line, text: document.lineAt(line).text, already: result.already ?? false };
    notes.readNow(document);
    reveal(document, result.shows);
    if (!await saveNote(document)) {
      if (document.isUntitled) await journal.remove(document.uri, row);
      return { state: 'unsaved', ...written };
    }
    await journal.remove(document.uri, row);
    return { state: 'saved', ...written };
  }
  return { state: 'refused', message: vscode.l10n.t('The note kept changing; nothing was written.'), kept };
}

/** Tells what became of a row, where it is worth telling. */
export function tellWritten(written: Written, typed: string): void {
  if (written.state === 'refused') {
    void vscode.window.showErrorMessage(written.kept
      ? vscode.l10n.t('{0} The row is kept, and offered when the note is opened again: {1}', written.message, typed)
      : vscode.l10n.t('{0} Not in the note: {1}', written.message, typed));
  } else if (written.state === 'unsaved') {
    void vscode.window.showWarningMessage(vscode.l10n.t('The row stands in the editor but is not on disk yet. Save the note.'));
  } else {
    vscode.window.setStatusBarMessage(vscode.l10n.t('Evenwater: logged {0}', written.text.trim().replace(/\s+/g, ' ')), 8000);
  }
}
