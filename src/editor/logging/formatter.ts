// The formatter for notes: aligns readings tables, the whole note or the part that is selected; on save where the editor is set so.
import * as vscode from 'vscode';
import { formatTables } from '../../edits/formatTables.ts';
import type { NoteStore } from '../noteStore.ts';
import { toRange } from '../places.ts';

/** Only files that say they are notes: another Markdown file keeps the formatter that its author chose. */
const noteFiles: vscode.DocumentSelector = { language: 'markdown', pattern: '**/*.tank.md' };

export function registerFormatter(notes: NoteStore): vscode.Disposable {
  const edits = (document: vscode.TextDocument, range: vscode.Range | null): vscode.TextEdit[] => {
    const note = notes.noteOf(document);
    if (!note) return [];
    const part = range && { start: document.offsetAt(range.start), end: document.offsetAt(range.end) };
    return formatTables(note.syntax, part).map((edit) => vscode.TextEdit.replace(toRange(document, edit.range), edit.newText));
  };
  return vscode.Disposable.from(
    vscode.languages.registerDocumentFormattingEditProvider(noteFiles, { provideDocumentFormattingEdits: (document) => edits(document, null) }),
    vscode.languages.registerDocumentRangeFormattingEditProvider(noteFiles, { provideDocumentRangeFormattingEdits: (document, range) => edits(document, range) }),
  );
}
