// The command *fill in*: writes each computed value in the place of its `?`. On a manual save too, where the setting says so.
import * as vscode from 'vscode';
import { fillInEdits } from '../../claims/fillIn.ts';
import type { NoteStore } from '../noteStore.ts';
import { addEdits, toRange } from '../places.ts';
import { documentFor, sayNoNote } from './activeNote.ts';

export function registerFillIn(notes: NoteStore): vscode.Disposable {
  return vscode.commands.registerCommand('evenwater.fillIn', async (address?: unknown): Promise<number> => {
    const document = await documentFor(address);
    const note = document && await notes.noteWithFiles(document);
    if (!document || !note) {
      sayNoNote();
      return 0;
    }
    const edits = fillInEdits(note);
    const change = new vscode.WorkspaceEdit();
    addEdits(change, document, edits);
    const done = edits.length > 0 && await vscode.workspace.applyEdit(change);
    const open = note.claims.filter((claim) => claim.state === 'unfilled').length - edits.length;
    if (edits.length === 0 && open === 0) vscode.window.setStatusBarMessage(vscode.l10n.t('Evenwater: there is no ? to fill in.'), 8000);
    else if (open > 0) void vscode.window.showInformationMessage(vscode.l10n.t('{0} of the claims could not be computed and keep their ?.', open));
    return done ? edits.length : 0;
  });
}

export function fillInOnSave(notes: NoteStore): vscode.Disposable {
  return vscode.workspace.onWillSaveTextDocument((event) => {
    if (event.reason !== vscode.TextDocumentSaveReason.Manual) return;
    if (!vscode.workspace.getConfiguration('evenwater', event.document.uri).get<boolean>('fillInOnSave', false)) return;
    const note = notes.noteOf(event.document);
    if (!note) return;
    const edits = fillInEdits(note).map((edit) => vscode.TextEdit.replace(toRange(event.document, edit.range), edit.newText));
    event.waitUntil(Promise.resolve(edits));
  });
}
