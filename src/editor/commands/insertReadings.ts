// The commands *insert readings table* (every planned time, at the cursor) and *seal plan* (before the first reading).
import * as vscode from 'vscode';
import { insertReadingsTable } from '../../edits/insertReadingsTable.ts';
import { sealPlan } from '../../edits/sealPlan.ts';
import type { EditResult } from '../../edits/edit.ts';
import type { Note } from '../../experiment/types.ts';
import { editSentence } from '../language.ts';
import type { NoteStore } from '../noteStore.ts';
import { addEdits } from '../places.ts';
import { documentFor, sayNoNote } from './activeNote.ts';

export function registerInsertReadings(notes: NoteStore): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.commands.registerCommand('evenwater.insertReadings', (address?: unknown) => change(notes, address, (note, offset) => insertReadingsTable(note, offset))),
    vscode.commands.registerCommand('evenwater.sealPlan', (address?: unknown) => change(notes, address, (note) => sealPlan(note, Date.now()))),
  );
}

/** Makes an edit as one step of undo, and shows it; says why where it is refused. */
async function change(notes: NoteStore, address: unknown, make: (note: Note, offset: number) => EditResult): Promise<boolean> {
  const document = await documentFor(address);
  const note = document && notes.noteOf(document);
  if (!document || !note) {
    sayNoNote();
    return false;
  }
  const editor = vscode.window.visibleTextEditors.find((each) => each.document === document);
  const offset = editor ? document.offsetAt(editor.selection.active) : note.protocol ? note.protocol.range.end : 0;
  const result = make(note, offset);
  if (!result.ok) {
    void vscode.window.showInformationMessage(editSentence(result.message));
    return false;
  }
  const edit = new vscode.WorkspaceEdit();
  addEdits(edit, document, result.edits);
  if (!await vscode.workspace.applyEdit(edit)) return false;
  editor?.revealRange(new vscode.Range(document.positionAt(result.shows.start), document.positionAt(result.shows.end)), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  return true;
}
