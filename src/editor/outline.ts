// The note's blocks in the outline: the plan with tanks, quantities and events, readings with their columns, named results.
import * as vscode from 'vscode';
import type { Note } from '../experiment/types.ts';
import type { Block } from '../note/syntax.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { NoteStore } from './noteStore.ts';
import { rangeOf, toRange } from './places.ts';
import { noteSelector } from './selector.ts';

export function registerOutline(notes: NoteStore): vscode.Disposable {
  return vscode.languages.registerDocumentSymbolProvider(noteSelector, {
    provideDocumentSymbols: async (document, token) => {
      const note = await notes.noteAtRest(document, token);
      return note ? note.syntax.blocks.map((block, index) => blockSymbol(document, note, block, index)) : [];
    },
  }, { label: 'Evenwater' });
}

function blockSymbol(document: vscode.TextDocument, note: Note, block: Block, index: number): vscode.DocumentSymbol {
  const kinds = { protocol: vscode.SymbolKind.Namespace, readings: vscode.SymbolKind.Array, values: vscode.SymbolKind.Namespace } as const;
  const kind = block.word in kinds ? kinds[block.word as keyof typeof kinds] : vscode.SymbolKind.Object;
  const name = block.name ? `${block.word} ${block.name}` : block.word;
  const symbol = new vscode.DocumentSymbol(name, detailOf(note, block, index), kind, toRange(document, block.range), toRange(document, block.infoRange));
  symbol.children = childrenOf(document, note, block, index);
  return symbol;
}

function detailOf(note: Note, block: Block, index: number): string {
  if (block.word === 'protocol') return note.protocol?.question?.value ?? '';
  if (block.word !== 'readings') return '';
  const rows = note.tables.find((table) => table.block === index)?.rows.length ?? 0;
  return rows === 1 ? vscode.l10n.t('1 row') : vscode.l10n.t('{0} rows', rows);
}

function childrenOf(document: vscode.TextDocument, note: Note, block: Block, index: number): vscode.DocumentSymbol[] {
  const inBlock = (range: SourceRange) => range.start >= block.range.start && range.end <= block.range.end;
  const leaf = (name: string, detail: string, kind: vscode.SymbolKind, range: SourceRange) => (
    name !== '' && inBlock(range) ? [new vscode.DocumentSymbol(name, detail, kind, toRange(document, range), toRange(document, range))] : []);
  if (block.word === 'protocol' && note.protocol) {
    const { tanks, measure, events } = note.protocol;
    return [
      ...tanks.flatMap((tank) => leaf(tank.id, [tank.label === tank.id ? '' : tank.label, tank.role?.value ?? ''].filter(Boolean).join(', '), vscode.SymbolKind.Class, tank.idRange)),
      ...measure.flatMap((quantity) => leaf(quantity.id, quantity.what?.value ?? '', vscode.SymbolKind.Field, quantity.idRange)),
      ...events.flatMap((event) => leaf(event.id ?? event.what, event.id ? event.what : '', vscode.SymbolKind.Event, event.range)),
    ];
  }
  if (block.word === 'readings') {
    const columns = note.tables.find((table) => table.block === index)?.columns ?? [];
    return columns.flatMap((column) => leaf(column.id, column.unit?.symbol ?? '', vscode.SymbolKind.Field, column.range));
  }
  return note.results.filter((result) => result.block === index).flatMap((result) => {
    const range = { start: result.nameRange.start, end: Math.max(result.nameRange.end, rangeOf(result.formula).end) };
    if (!inBlock(range)) return [];
    return [new vscode.DocumentSymbol(result.name, result.formula.text.trim(), vscode.SymbolKind.Variable, toRange(document, range), toRange(document, result.nameRange))];
  });
}
