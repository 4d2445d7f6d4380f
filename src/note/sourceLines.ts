// The lines of a note, and the way from text that markdown-it took out of containers back to the note.
import type { MappedText, Piece } from './mappedText.ts';

export interface SourceLines {
  readonly text: string;
  /** The text as markdown-it sees it: line feeds only, no null characters, no byte order mark. */
  readonly normal: string;
  /** Start of each line in the note, and in the normal text. */
  readonly starts: readonly number[];
  readonly normalStarts: readonly number[];
  /** End of each line in the note, its line break excluded. */
  readonly ends: readonly number[];
}

export function sourceLines(text: string): SourceLines {
  const starts: number[] = [];
  const ends: number[] = [];
  const normalStarts: number[] = [];
  const first = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let start = first;
  let normalStart = 0;
  for (let index = first; index <= text.length; index++) {
    const code = index === text.length ? 0x0a : text.charCodeAt(index);
    if (code !== 0x0a && code !== 0x0d) continue;
    starts.push(start);
    ends.push(index);
    normalStarts.push(normalStart);
    normalStart += index - start + 1;
    if (code === 0x0d && text.charCodeAt(index + 1) === 0x0a) index++;
    start = index + 1;
  }
  const normal = text.slice(first).replace(/\r\n?/g, '\n').replace(/\0/g, '\uFFFD');
  return { text, normal, starts, ends, normalStarts };
}

/** The place in the note of an offset on a line of the normal text. */
export function fromNormal(lines: SourceLines, line: number, offset: number): number {
  return (lines.starts[line] ?? lines.text.length) + offset - (lines.normalStarts[line] ?? 0);
}

/** End of a line without its trailing blanks. */
export function trimmedEnd(lines: SourceLines, line: number): number {
  const start = lines.starts[line] ?? lines.text.length;
  let end = lines.ends[line] ?? lines.text.length;
  while (end > start && isBlank(lines.text.charCodeAt(end - 1))) end--;
  return end;
}

/** Adds a piece, or lengthens the one before it when both stand together in the note too. */
export function addPiece(pieces: Piece[], piece: Piece): void {
  const last = pieces[pieces.length - 1];
  if (last && last.offset + last.length === piece.offset && last.document + last.length === piece.document) {
    pieces[pieces.length - 1] = { offset: last.offset, document: last.document, length: last.length + piece.length };
  } else pieces.push(piece);
}

function isBlank(code: number): boolean {
  return code === 0x20 || code === 0x09 || code === 0x0b || code === 0x0c;
}

/**
 * Maps text that markdown-it took from whole lines (a fence's content, a paragraph). Each taken line is the end of the note's line, but for
 * spaces that stand for part of a tab: those map to the tab. `trimmed` says that blanks at the end of the last line were dropped.
 */
export function mapLines(lines: SourceLines, content: string, firstLine: number, trimmed: boolean): MappedText {
  const pieces: Piece[] = [];
  let offset = 0;
  for (let line = firstLine; offset < content.length; line++) {
    const lineBreak = content.indexOf('\n', offset);
    const end = lineBreak < 0 ? content.length : lineBreak;
    const documentStart = lines.starts[line] ?? lines.text.length;
    const documentEnd = trimmed && lineBreak < 0 ? trimmedEnd(lines, line) : lines.ends[line] ?? lines.text.length;
    let blanks = 0;
    while (offset + blanks < end && isBlank(content.charCodeAt(offset + blanks))) blanks++;
    let same = end - offset - blanks;
    while (same < end - offset && documentEnd - same > documentStart
      && lines.text.charCodeAt(documentEnd - same - 1) === content.charCodeAt(end - same - 1)) same++;
    const virtual = end - offset - same;
    for (let index = 0; index < virtual; index++) {
      pieces.push({ offset: offset + index, document: Math.max(documentStart, documentEnd - same - 1), length: 1 });
    }
    const length = same + (lineBreak < 0 ? 0 : 1);
    if (length > 0) addPiece(pieces, { offset: offset + virtual, document: documentEnd - same, length });
    offset = end + 1;
  }
  if (pieces.length === 0) pieces.push({ offset: 0, document: lines.starts[firstLine] ?? lines.text.length, length: 0 });
  return { text: content, pieces };
}

/** Maps a table's cell: cuts the row at its unescaped `|` as markdown-it does; an escaped one loses its backslash. */
export function mapCells(row: string, document: number): MappedText[] {
  const cells: MappedText[] = [];
  let segments: [number, number][] = [];
  let from = 0;
  let escaped = false;
  for (let index = 0; index <= row.length; index++) {
    if (index === row.length || (row[index] === '|' && !escaped)) {
      segments.push([from, index]);
      cells.push(cellOf(row, segments, document));
      segments = [];
      from = index + 1;
    } else if (row[index] === '|') {
      segments.push([from, index - 1]);
      from = index;
    }
    escaped = row[index] === '\\';
  }
  if (segmentsEmpty(cells[0])) cells.shift();
  if (segmentsEmpty(cells[cells.length - 1])) cells.pop();
  return cells.map(trimCell);
}

function segmentsEmpty(cell: MappedText | undefined): boolean {
  return cell !== undefined && cell.text === '';
}

function cellOf(row: string, segments: readonly [number, number][], document: number): MappedText {
  const pieces: Piece[] = [];
  let text = '';
  for (const [start, end] of segments) {
    if (end > start) addPiece(pieces, { offset: text.length, document: document + start, length: end - start });
    text += row.slice(start, end);
  }
  if (pieces.length === 0) pieces.push({ offset: 0, document: document + (segments[0]?.[0] ?? 0), length: 0 });
  return { text, pieces };
}

function trimCell(cell: MappedText): MappedText {
  const text = cell.text.trim();
  const start = text === '' ? 0 : cell.text.indexOf(text);
  const pieces: Piece[] = [];
  for (const piece of cell.pieces) {
    const from = Math.max(piece.offset, start);
    const to = Math.min(piece.offset + piece.length, start + text.length);
    if (from < to) pieces.push({ offset: from - start, document: piece.document + from - piece.offset, length: to - from });
  }
  if (pieces.length === 0) pieces.push({ offset: 0, document: cell.pieces[0]?.document ?? 0, length: 0 });
  return { text, pieces };
}
