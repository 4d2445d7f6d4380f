// Text taken out of a note, with the way back: containers (lists, quotes) put prefixes between lines,
// so an offset in the taken text maps to the note's text piece by piece.
import type { SourceRange } from '../problems/problem.ts';

/** `length` characters from `offset` in the taken text stand at `document` in the note. */
export interface Piece { readonly offset: number; readonly document: number; readonly length: number }

export interface MappedText {
  readonly text: string;
  /** In rising order; together they cover the whole text, a line break included in the piece before it. */
  readonly pieces: readonly Piece[];
}

/** Text that stands in the note without prefixes. */
export function mappedText(text: string, document = 0): MappedText {
  return { text, pieces: [{ offset: 0, document, length: text.length }] };
}

/** The place in the note of an offset in the taken text. `end` picks the piece on the left of a seam. */
export function toDocumentOffset(mapped: MappedText, offset: number, end = false): number {
  const { pieces } = mapped;
  let low = 0;
  let high = pieces.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    const piece = pieces[middle]!;
    if (end ? piece.offset < offset : piece.offset <= offset) low = middle; else high = middle - 1;
  }
  const piece = pieces[low];
  if (!piece) return offset;
  return piece.document + Math.min(Math.max(0, offset - piece.offset), piece.length);
}

export function toDocumentRange(mapped: MappedText, range: SourceRange): SourceRange {
  const start = toDocumentOffset(mapped, range.start);
  const end = toDocumentOffset(mapped, range.end, true);
  return { start, end: Math.max(start, end) };
}

/** A part of taken text, still with its way back. */
export function sliceMapped(mapped: MappedText, start: number, end: number): MappedText {
  const pieces: Piece[] = [];
  for (const piece of mapped.pieces) {
    const from = Math.max(piece.offset, start);
    const to = Math.min(piece.offset + piece.length, end);
    if (from < to) pieces.push({ offset: from - start, document: piece.document + (from - piece.offset), length: to - from });
  }
  if (pieces.length === 0) pieces.push({ offset: 0, document: toDocumentOffset(mapped, start), length: 0 });
  return { text: mapped.text.slice(start, end), pieces };
}
