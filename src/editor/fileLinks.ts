// The data file of a readings block and the note that a plan repeats as links; a data file that is missing is a problem as well.
import * as vscode from 'vscode';
import { fileLinks } from '../assist/structure.ts';
import { insideFolder } from './dataFiles.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerFileLinks(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDocumentLinkProvider(noteSelector, {
    provideDocumentLinks: async (document, token) => {
      const note = await notes.noteAtRest(document, token);
      return (note ? fileLinks(note) : []).flatMap(({ range, path }) => {
        const target = insideFolder(document.uri, path);
        return target ? [new vscode.DocumentLink(toRange(document, range), target)] : [];
      });
    },
  });
}
