// Where the cursor stands: in a fence's info string, inside a block, or in prose. Works on raw text, so that it also
// knows its way in a block that is being typed and not closed yet.
import { blockWords, type BlockWord } from '../note/syntax.ts';
import { toDocumentOffset, type MappedText, type Piece } from '../note/mappedText.ts';

export interface FencePlace {
  readonly kind: 'fence';
  /** Offset of the first letter of the info string. */
  readonly infoStart: number;
  /** What a new line inside the block starts with. */
  readonly linePrefix: string;
  /** The fence's own marks. */
  readonly marks: string;
  readonly closed: boolean;
}

export interface BlockPlace {
  readonly kind: 'block';
  readonly word: BlockWord;
  /** The block's text without what containers put before its lines. */
  readonly content: MappedText;
  /** The cursor in `content.text`. */
  readonly at: number;
}

export type Place = FencePlace | BlockPlace | { readonly kind: 'code' } | { readonly kind: 'prose' };

const opening = /^((?:[ \t]*>)*[ \t]*(?:(?:[-*+]|\d{1,9}[.)])[ \t]+)*)(`{3,}|~{3,})[ \t]*([^`\r\n]*)$/u;

interface Open { readonly prefix: string; readonly marks: string; readonly info: string; readonly infoStart: number; readonly contentStart: number }

/** The next line from `from` on that can open or close a fence, or that holds the cursor. */
function nextLine(text: string, from: number, cursorLine: number): number {
  const marks = ['```', '~~~'].map((mark) => text.indexOf(mark, from)).filter((at) => at >= 0);
  const fence = marks.length === 0 ? text.length + 1 : lineAt(text, Math.min(...marks)).start;
  return cursorLine >= from ? Math.min(fence, cursorLine) : fence;
}

/** The place of an offset of the note's text. */
export function placeAt(text: string, offset: number): Place {
  let open: Open | null = null;
  const cursorLine = lineAt(text, offset).start;
  for (let start = nextLine(text, 0, cursorLine); start <= text.length; start = nextLine(text, start, cursorLine)) {
    const stop = text.indexOf('\n', start);
    const end = stop < 0 ? text.length : stop;
    const line = text.slice(start, end).replace(/\r$/u, '');
    const inLine = offset >= start && offset <= end;
    const found = opening.exec(line);
    if (open && closes(line, open)) {
      if (inLine) return { kind: 'code' };
      open = null;
    } else if (found && (!open || isBlockWord(wordOf(found[3]!)))) {
      const [, prefix, marks, info] = found as unknown as [string, string, string, string];
      const infoStart = start + line.length - info.length;
      const next = { prefix, marks, info, infoStart, contentStart: Math.min(text.length, end + 1) };
      if (inLine) return offset < start + prefix.length + marks.length ? { kind: 'prose' } : fencePlace(text, next);
      open = next;
    } else if (inLine) {
      if (!open) return { kind: 'prose' };
      const word = wordOf(open.info);
      return isBlockWord(word) ? blockPlace(text, offset, open, word) : { kind: 'code' };
    }
    if (stop < 0) break;
    start = end + 1;
  }
  return { kind: 'prose' };
}

const wordOf = (info: string): string => /^\S*/u.exec(info.trim())![0];
const isBlockWord = (word: string): word is BlockWord => (blockWords as readonly string[]).includes(word);

function closes(line: string, open: Open): boolean {
  const marks = /^[ \t>]*(`{3,}|~{3,})[ \t]*$/u.exec(line)?.[1];
  return marks !== undefined && marks[0] === open.marks[0] && marks.length >= open.marks.length;
}

/** Quote marks stay, list marks become spaces. */
const continuing = (prefix: string): string => prefix.replace(/[^\s>]/gu, ' ');

function fencePlace(text: string, open: Open): FencePlace {
  let closed = false;
  for (let start = open.contentStart; start < text.length;) {
    const stop = text.indexOf('\n', start);
    const line = text.slice(start, stop < 0 ? text.length : stop).replace(/\r$/u, '');
    if (closes(line, open)) { closed = true; break; }
    if (opening.test(line) || stop < 0) break;
    start = stop + 1;
  }
  return { kind: 'fence', infoStart: open.infoStart, linePrefix: continuing(open.prefix), marks: open.marks, closed };
}

function blockPlace(text: string, offset: number, open: Open, word: BlockWord): BlockPlace {
  const quotes = open.prefix.split('>').length - 1;
  const rest = open.prefix.slice(open.prefix.lastIndexOf('>') + 1).length;
  const pieces: Piece[] = [];
  let content = '';
  let at = 0;
  for (let start = open.contentStart; start <= text.length;) {
    const stop = text.indexOf('\n', start);
    const end = stop < 0 ? text.length : stop;
    const line = text.slice(start, end).replace(/\r$/u, '');
    const ended = closes(line, open) || isBlockWord(wordOf(opening.exec(line)?.[3] ?? ''));
    if (ended && start > offset) break;
    const skip = prefixLength(line, quotes, rest);
    const bare = line.slice(skip);
    if (offset >= start && offset <= end) at = content.length + Math.min(bare.length, Math.max(0, offset - start - skip));
    pieces.push({ offset: content.length, document: start + skip, length: bare.length + (stop < 0 ? 0 : 1) });
    content += stop < 0 ? bare : `${bare}\n`;
    if (stop < 0) break;
    start = end + 1;
  }
  return { kind: 'block', word, content: { text: content, pieces }, at };
}

/** How much of a line belongs to its containers. */
function prefixLength(line: string, quotes: number, rest: number): number {
  let at = 0;
  for (let count = 0; count < quotes; count += 1) {
    const mark = /^[ \t]*>/u.exec(line.slice(at));
    if (!mark) return at;
    at += mark[0].length;
  }
  let left = rest;
  while (left > 0 && (line[at] === ' ' || line[at] === '\t')) { at += 1; left -= 1; }
  return at;
}

/** The line of a block's text that holds an offset. */
export function lineAt(text: string, at: number): { readonly start: number; readonly end: number; readonly text: string } {
  const start = at <= 0 ? 0 : text.lastIndexOf('\n', at - 1) + 1;
  const stop = text.indexOf('\n', at);
  const end = stop < 0 ? text.length : stop;
  return { start, end, text: text.slice(start, end) };
}

/** From the block's text to the note's. */
export const toNote = (place: BlockPlace, offset: number): number => toDocumentOffset(place.content, offset);
