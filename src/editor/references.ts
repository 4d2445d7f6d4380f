// References and highlights of a name: its declaration and every head, list, formula, claim and figure that uses it.
import * as vscode from 'vscode';
import { references } from '../assist/navigate.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerReferences(notes: NoteStore): vscode.Disposable {
  const find = (document: vscode.TextDocument, position: vscode.Position) => {
    const note = notes.noteOf(document);
    return note ? references(note, document.offsetAt(position)) : [];
  };
  return vscode.Disposable.from(
    vscode.languages.registerReferenceProvider(noteSelector, {
      provideReferences: (document, position, { includeDeclaration }) => find(document, position)
        .filter((place) => includeDeclaration || !place.declares).map((place) => new vscode.Location(document.uri, toRange(document, place.range))),
    }),
    vscode.languages.registerDocumentHighlightProvider(noteSelector, {
      provideDocumentHighlights: (document, position) => find(document, position)
        .map((place) => new vscode.DocumentHighlight(toRange(document, place.range), place.declares ? vscode.DocumentHighlightKind.Write : vscode.DocumentHighlightKind.Read)),
    }),
  );
}
