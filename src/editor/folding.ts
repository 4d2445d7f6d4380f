// Folding of blocks, of days in long tables and of the plan's keys, beside what Markdown folds by itself.
import * as vscode from 'vscode';
import { folds } from '../assist/structure.ts';
import type { NoteStore } from './noteStore.ts';
import { noteSelector } from './selector.ts';

export function registerFolding(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerFoldingRangeProvider(noteSelector, {
    provideFoldingRanges: async (document, _context, token) => {
      const note = await notes.noteAtRest(document, token);
      return note?.protocol ? folds(note).map((each) => new vscode.FoldingRange(document.positionAt(each.start).line, document.positionAt(each.end).line)) : [];
    },
  });
}
