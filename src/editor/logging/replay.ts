// Rows that never were seen on disk (the editor was killed, the file was read-only): offered when their note opens.
import * as vscode from 'vscode';
import { writePending } from '../../edits/pendingRow.ts';
import type { NoteStore } from '../noteStore.ts';
import type { RowJournal } from './journal.ts';
import { tellWritten, writeRow } from './writeNote.ts';

export function registerReplay(notes: NoteStore, journal: RowJournal): vscode.Disposable {
  const offered = new Set<string>();
  const look = async (document: vscode.TextDocument) => {
    const key = document.uri.toString();
    const note = notes.noteOf(document);
    if (!note || offered.has(key)) return;
    offered.add(key);
    await dropWritten(document, notes, journal);
    const rows = await journal.rows(document.uri);
    if (rows.length === 0) return;
    const write = vscode.l10n.t('Write Them');
    const forget = vscode.l10n.t('Forget Them');
    const first = rows[0]!.typed;
    const sentence = rows.length === 1
      ? vscode.l10n.t('One row was typed but never saved in this note: {0}', first)
      : vscode.l10n.t('{0} rows were typed but never saved in this note, the first: {1}', rows.length, first);
    const chosen = await vscode.window.showWarningMessage(sentence, write, forget);
    for (const row of chosen === undefined ? [] : rows) {
      if (chosen === write) tellWritten(await writeRow(document, notes, journal, row), row.typed);
      else await journal.remove(document.uri, row);
    }
  };
  return vscode.Disposable.from(
    notes.onDidRead((document) => void look(document)),
    notes.onDidClose((document) => offered.delete(document.uri.toString())),
    vscode.workspace.onDidSaveTextDocument((document) => void dropWritten(document, notes, journal)),
  );
}

/** Takes rows out of the journal that the saved note holds. */
async function dropWritten(document: vscode.TextDocument, notes: NoteStore, journal: RowJournal): Promise<void> {
  const note = notes.noteOf(document);
  if (!note || document.isDirty || document.isUntitled) return;
  for (const row of await journal.rows(document.uri)) {
    const result = writePending(note, row);
    if (result.ok && result.already) await journal.remove(document.uri, row);
  }
}
