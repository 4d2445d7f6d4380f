// Go to definition: from a head, a formula or a claim to where the plan or a `values` block declares the name.
import * as vscode from 'vscode';
import { definitions } from '../assist/navigate.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerDefinitions(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDefinitionProvider(noteSelector, {
    provideDefinition: (document, position): vscode.LocationLink[] => {
      const note = notes.noteOf(document);
      const found = note && definitions(note, document.offsetAt(position));
      return (found?.targets ?? []).map((target) => ({
        originSelectionRange: toRange(document, found!.origin), targetUri: document.uri, targetRange: toRange(document, target), targetSelectionRange: toRange(document, target),
      }));
    },
  });
}
