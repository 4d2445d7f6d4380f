// The outline, and with it the breadcrumbs: what src/assist finds, as the editor's symbols.
import * as vscode from 'vscode';
import { outlineOf, type OutlineEntry, type OutlineKind } from '../assist/outline.ts';
import type { NoteStore } from './noteStore.ts';
import { toRange } from './places.ts';
import { noteSelector } from './selector.ts';

const kinds: Readonly<Record<OutlineKind, vscode.SymbolKind>> = {
  experiment: vscode.SymbolKind.Module, plan: vscode.SymbolKind.Interface, tank: vscode.SymbolKind.Class, quantity: vscode.SymbolKind.Field, event: vscode.SymbolKind.Event,
  day: vscode.SymbolKind.Package, readings: vscode.SymbolKind.Array, reading: vscode.SymbolKind.Number, values: vscode.SymbolKind.Namespace,
  result: vscode.SymbolKind.Variable, drawn: vscode.SymbolKind.Object,
};

export function registerOutline(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDocumentSymbolProvider(noteSelector, {
    provideDocumentSymbols: async (document, token) => {
      const note = await notes.noteAtRest(document, token);
      return note ? outlineOf(note, words).map((entry) => toSymbol(document, entry)) : [];
    },
  }, { label: 'Evenwater' });
}

const words = { rows: (count: number): string => (count === 1 ? vscode.l10n.t('1 row') : vscode.l10n.t('{0} rows', count)) };

function toSymbol(document: vscode.TextDocument, entry: OutlineEntry): vscode.DocumentSymbol {
  const symbol = new vscode.DocumentSymbol(entry.name, entry.detail, kinds[entry.kind], toRange(document, entry.range), toRange(document, entry.selection));
  symbol.children = entry.inside.map((each) => toSymbol(document, each));
  return symbol;
}
