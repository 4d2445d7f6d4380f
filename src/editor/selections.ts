// Growing selections: cell, row, table, block; words or formula of a claim, the claim; a value of the plan, its key, its map.
import * as vscode from 'vscode';
import { stretchesAt } from '../assist/structure.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerSelections(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerSelectionRangeProvider(noteSelector, {
    provideSelectionRanges: (document, positions) => {
      const note = notes.noteOf(document);
      if (!note?.protocol) return [];
      return positions.map((position) => stretchesAt(note, document.offsetAt(position)).toReversed()
        .reduce<vscode.SelectionRange | undefined>((outer, each) => new vscode.SelectionRange(toRange(document, each), outer), undefined)
        ?? new vscode.SelectionRange(new vscode.Range(position, position)));
    },
  });
}
