// What every edit of this room gives back: replacements in the note's text, or a message that says why not.
import type { Note } from '../experiment/types.ts';
import { readSyntax } from '../note/readSyntax.ts';
import type { MessageArguments, SourceRange, TextEdit } from '../problems/problem.ts';
import { readTable } from '../readings/readTable.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { EditMessageCode } from '../words/en/edits.ts';

/** Something to tell the keeper; src/words/edits.ts puts it into a sentence. */
export interface Message { readonly code: EditMessageCode; readonly args: MessageArguments }

export type EditResult =
  | { readonly ok: true; readonly edits: readonly TextEdit[]; /** Where the new text stands, once the edits are made. */ readonly shows: SourceRange }
  | { readonly ok: false; readonly message: Message };

export const refused = (code: EditMessageCode, args: MessageArguments = {}): EditResult => ({ ok: false, message: { code, args } });

/** Edits that do not overlap, made in a text. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const sorted = edits.map((edit, order) => ({ edit, order })).sort((a, b) => a.edit.range.start - b.edit.range.start || a.edit.range.end - b.edit.range.end || a.order - b.order);
  let result = '';
  let at = 0;
  for (const { edit } of sorted) {
    result += text.slice(at, edit.range.start) + edit.newText;
    at = Math.max(at, edit.range.end);
  }
  return result + text.slice(at);
}

/** A result of edits, with the place of the one that matters (the first by default) in the new text. */
export function done(edits: readonly TextEdit[], shown = 0): EditResult {
  const main = edits[shown];
  if (!main) return { ok: true, edits, shows: { start: 0, end: 0 } };
  const before = edits.filter((edit) => edit !== main && edit.range.start < main.range.start)
    .reduce((sum, edit) => sum + edit.newText.length - (edit.range.end - edit.range.start), 0);
  const start = main.range.start + before;
  return { ok: true, edits, shows: { start, end: start + main.newText.length } };
}

export function lineBreakOf(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/** Offset of the first character of the line that holds the offset. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** Offset of the line's break (or of the text's end); a carriage return counts to the break. */
export function lineEnd(text: string, offset: number): number {
  const found = text.indexOf('\n', offset);
  const end = found < 0 ? text.length : found;
  return end > offset && text[end - 1] === '\r' ? end - 1 : end;
}

/** A new line under the line that holds `offset`, with the same container prefix (quote marks, indentation). */
export function lineBelow(text: string, offset: number, prefix: string, line: string): TextEdit {
  const lineBreak = lineBreakOf(text);
  const end = lineEnd(text, offset);
  if (end >= text.length) return { range: { start: end, end }, newText: lineBreak + prefix + line };
  const next = text.indexOf('\n', end) + 1;
  return { range: { start: next, end: next }, newText: prefix + line + lineBreak };
}

/** What stands before the row (or the heads) on its line: a quote's mark, a list's indentation. */
export function prefixOf(text: string, offset: number): string {
  return text.slice(lineStart(text, offset), offset);
}

/** The same table, read again after edits: what the edits really say. Null when its block is no longer there. */
export function tableAfter(note: Note, table: ReadingsTable, edits: readonly TextEdit[]): ReadingsTable | null {
  const block = readSyntax(applyEdits(note.text, edits)).blocks[table.block];
  if (block?.word !== 'readings' || !note.protocol) return null;
  const before = note.tables[note.tables.indexOf(table) - 1] ?? null;
  return readTable(block, table.block, note.protocol, before, new Map()).table;
}
