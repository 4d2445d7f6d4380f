// Editing a named result and its uses as one, for whoever has switched linked editing on. Everything else is renamed with F2,
// which checks the new name first.
import * as vscode from 'vscode';
import { linkedPlaces } from '../assist/navigate.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerLinkedNames(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerLinkedEditingRangeProvider(noteSelector, {
    provideLinkedEditingRanges: (document, position) => {
      const note = notes.noteOf(document);
      const places = note?.protocol ? linkedPlaces(note, document.offsetAt(position)) : [];
      return places.length > 1 ? new vscode.LinkedEditingRanges(places.map((place) => toRange(document, place)), /[A-Za-z][A-Za-z0-9-]*/) : undefined;
    },
  });
}
