// Looking at YAML letter by letter: where plain texts, quotes and brackets end, and where a line has its colon.
import { protocolSchema, type SchemaKey } from './schema.ts';

export interface Line { readonly start: number; readonly end: number; readonly text: string }

function collectKeys(entry: SchemaKey, into: Set<string>): Set<string> {
  for (const key of entry.keys ?? []) {
    into.add(key.key);
    collectKeys(key, into);
  }
  return entry.entry ? collectKeys(entry.entry, into) : into;
}

/** Keys of the whole schema, longest first, so that `light off` is found before a shorter one. */
export const knownKeys: readonly string[] = [...collectKeys(protocolSchema, new Set())].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));

/** Lines of a text with their offsets, line ends left out. */
export function splitLines(text: string): Line[] {
  const lines: Line[] = [];
  let start = 0;
  while (start <= text.length) {
    let end = text.indexOf('\n', start);
    if (end < 0) end = text.length;
    const stop = text[end - 1] === '\r' && end > start ? end - 1 : end;
    lines.push({ start, end: stop, text: text.slice(start, stop) });
    start = end + 1;
  }
  return lines;
}

/** Where a plain text ends: before a ` #`. */
export function plainEnd(value: string): number {
  const hash = /\s#/.exec(value);
  return hash ? hash.index : value.length;
}

/** The offset past the closing quote of a text that starts with one, or -1. */
export function quoteEnd(text: string, start: number): number {
  const mark = text[start];
  for (let i = start + 1; i < text.length; i += 1) {
    if (mark === '"' && text[i] === '\\') i += 1;
    else if (text[i] === mark) {
      if (mark === "'" && text[i + 1] === "'") i += 1;
      else return i + 1;
    }
  }
  return -1;
}

/** Walks a flow collection from its opening bracket: where it closes (-1: not), and the brackets still open. */
export function flowEnd(text: string, start: number): { end: number; open: string } {
  let open = '';
  let tokenStart = true;
  for (let i = start; i < text.length; i += 1) {
    const letter = text[i]!;
    if (tokenStart && (letter === '"' || letter === "'")) {
      const close = quoteEnd(text, i);
      if (close < 0) return { end: -1, open };
      i = close - 1;
      tokenStart = false;
    } else if (letter === '{' || letter === '[') {
      open += letter === '{' ? '}' : ']';
      tokenStart = true;
    } else if (letter === '}' || letter === ']') {
      if (open.endsWith(letter)) open = open.slice(0, -1);
      else if (open.includes(letter)) return { end: -1, open };
      tokenStart = false;
      if (open === '') return { end: i + 1, open };
    } else if (letter === '#' && /\s/.test(text[i - 1] ?? ' ')) {
      const lineEnd = text.indexOf('\n', i);
      if (lineEnd < 0) return { end: -1, open };
      i = lineEnd;
    } else if (letter === ',' || (letter === ':' && /[\s{["']/.test(text[i + 1] ?? ' '))) tokenStart = true;
    else if (!/\s/.test(letter)) tokenStart = false;
  }
  return { end: -1, open };
}

/** `key:` at the start of a line's content: the offset of the colon, or -1. */
export function keyColon(content: string): number {
  if (content.startsWith('"') || content.startsWith("'")) {
    const end = quoteEnd(content, 0);
    return end > 0 && /^\s*:(?=\s|$)/.test(content.slice(end)) ? content.indexOf(':', end) : -1;
  }
  if (/^[{[#|>@`%,\]}]/.test(content)) return -1;
  const match = /:(?=\s|$)/.exec(content.slice(0, plainEnd(content)));
  return match ? match.index : -1;
}
