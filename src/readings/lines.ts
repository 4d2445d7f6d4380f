// Splits a readings block into lines and the lines into tokens, with their places in the block's text.
import { readDate, type CalendarDate } from '../time/text.ts';

export interface Token { readonly text: string; readonly start: number; readonly end: number }

export type Line =
  | { readonly kind: 'blank' | 'comment'; readonly start: number; readonly end: number }
  | { readonly kind: 'day'; readonly date: CalendarDate; readonly start: number; readonly end: number }
  | { readonly kind: 'seal'; readonly text: string; readonly start: number; readonly end: number }
  | { readonly kind: 'cells'; readonly tokens: readonly Token[]; readonly remark: Token | null; readonly start: number; readonly end: number };

/** The line `# sealed TIME sha256:…`. */
export const sealLine = /^#\s*sealed\b/u;

/** The tokens between white space of a stretch of text. */
export function tokensOf(text: string, offset: number): Token[] {
  return [...text.matchAll(/\S+/gu)].map((match) => ({
    text: match[0], start: offset + match.index, end: offset + match.index + match[0].length,
  }));
}

/** Every line of the block, in order; the line break belongs to none. */
export function splitLines(text: string): Line[] {
  const lines: Line[] = [];
  let start = 0;
  while (start < text.length) {
    const lineBreak = text.indexOf('\n', start);
    const stop = lineBreak < 0 ? text.length : lineBreak;
    const end = stop > start && text[stop - 1] === '\r' ? stop - 1 : stop;
    lines.push(readLine(text.slice(start, end), start));
    start = stop + 1;
  }
  return lines;
}

function readLine(text: string, start: number): Line {
  const end = start + text.length;
  const trimmed = text.trim();
  if (trimmed === '') return { kind: 'blank', start, end };
  if (trimmed.startsWith('#')) {
    const from = start + text.indexOf('#');
    const to = from + trimmed.length;
    if (sealLine.test(trimmed)) return { kind: 'seal', text: trimmed, start: from, end: to };
    const date = readDate(trimmed.slice(1));
    return date ? { kind: 'day', date, start: from, end: to } : { kind: 'comment', start: from, end: to };
  }
  const semicolon = text.indexOf(';');
  const cells = semicolon < 0 ? text : text.slice(0, semicolon);
  let remark: Token | null = null;
  if (semicolon >= 0) {
    const written = text.slice(semicolon + 1);
    const inner = written.trim();
    const from = start + semicolon + 1 + (written.length - written.trimStart().length);
    if (inner !== '') remark = { text: inner, start: from, end: from + inner.length };
  }
  return { kind: 'cells', tokens: tokensOf(cells, start), remark, start, end };
}
