// Mends of a plan as text edits: a key added to the plan, to a tank or to an entry of a list, a value replaced.
// Where the text has a shape that an edit could spoil, there is no edit.
import type { SourceRange, TextEdit } from '../problems/problem.ts';
import type { Placed, Protocol } from '../protocol/types.ts';

const lineStart = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;
const indentAt = (text: string, offset: number): string => /^[ \t]*/.exec(text.slice(lineStart(text, offset)))![0];
const breakOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

/** Lines at the end of the plan. None where the block stands in a quote or a list. */
export function addToPlan(text: string, protocol: Pick<Protocol, 'range'>, lines: readonly string[]): TextEdit[] {
  const { end } = protocol.range;
  if (lineStart(text, end) !== end || !/^(?:```|~~~)/.test(text.slice(end))) return [];
  return [{ range: { start: end, end }, newText: lines.map((line) => line + breakOf(text)).join('') }];
}

/** `key: value` as the first entry of the map under a key (a tank, a measured quantity), in braces or indented. */
export function addUnderKey(text: string, key: SourceRange, entry: string): TextEdit[] {
  const after = /^\s*:[ \t]*/.exec(text.slice(key.end));
  if (!after) return [];
  const at = key.end + after[0].length;
  if (text[at] === '{') {
    const empty = /^\{\s*\}/.test(text.slice(at));
    return [{ range: { start: at + 1, end: at + 1 }, newText: empty ? entry : `${entry}, ` }];
  }
  const block = /^(?:#[^\n]*)?\r?\n(?:[ \t]*(?:#[^\n]*)?\r?\n)*([ \t]+)\S/.exec(text.slice(at));
  if (!block || block[1]!.length <= indentAt(text, key.start).length) return [];
  const first = text.indexOf('\n', at) + 1;
  return [{ range: { start: first, end: first }, newText: `${block[1]}${entry}${breakOf(text)}` }];
}

/** `key: value` as the first entry of a map in a list; `range` is the map's. */
export function addToEntry(text: string, range: SourceRange, entry: string): TextEdit[] {
  const { start } = range;
  if (text[start] === '{') return [{ range: { start: start + 1, end: start + 1 }, newText: `${entry}, ` }];
  const before = text.slice(lineStart(text, start), start);
  if (!/^[ \t]*(?:- *)?$/.test(before)) return [];
  return [{ range: { start, end: start }, newText: `${entry}${breakOf(text)}${before.replace('-', ' ')}` }];
}

/** Where the value of a key stands, looked for from `from` on: to the end of its line, or to the comma or bracket that ends it. */
export function valueOf(text: string, from: number, to: number, key: string): SourceRange | null {
  const part = text.slice(from, to);
  const match = new RegExp(`(^|[{,\\n])[ \\t]*${key}[ \\t]*:[ \\t]+`, 'm').exec(part);
  if (!match) return null;
  const start = from + match.index + match[0].length;
  const inBraces = match[1] === '{' || match[1] === ',';
  if (text[start] === '[') {
    const close = text.indexOf(']', start);
    return close < 0 || close > to ? null : { start, end: close + 1 };
  }
  const value = (inBraces ? /^[^,}\n]*/ : /^[^\n#]*/).exec(text.slice(start, to))![0].trimEnd();
  return value === '' ? null : { start, end: start + value.length };
}

/** The schedule's text: from its key to the next key of the plan, or to the end of its braces. */
function scheduleRange(text: string, protocol: Protocol): SourceRange | null {
  if (!protocol.schedule) return null;
  const start = protocol.schedule.range.start;
  const rest = text.slice(start, protocol.range.end);
  const next = /\n[^\s#]/.exec(rest);
  return { start, end: start + (next ? next.index : rest.length) };
}

/** A value of the schedule replaced, or null where it does not stand in plain sight. */
export function replaceInSchedule(text: string, protocol: Protocol, key: string, change: (value: string) => string | null): TextEdit[] {
  const within = scheduleRange(text, protocol);
  const range = within && valueOf(text, within.start, within.end, key);
  const newText = range && change(text.slice(range.start, range.end));
  return range && newText !== null ? [{ range, newText }] : [];
}

/** A further stretch in `every`. */
export function addStretch(text: string, protocol: Protocol, stretch: string): TextEdit[] {
  return replaceInSchedule(text, protocol, 'every', (value) => {
    if (value.includes(']')) return value.replace(/\s*\]$/, `, ${stretch}]`);
    return value === '' || value.includes('[') ? null : `[${value}, ${stretch}]`;
  });
}

/** A name added to a list key of the plan (`differs`, `accepted`), which may not be there yet. */
export function addToList(text: string, protocol: Pick<Protocol, 'range'>, key: string, placed: readonly Placed<string>[], name: string): TextEdit[] {
  const last = placed.at(-1);
  if (!last) return new RegExp(`^${key}[ \\t]*:`, 'm').test(text.slice(protocol.range.start, protocol.range.end)) ? [] : addToPlan(text, protocol, [`${key}: [${name}]`]);
  const bracketed = /^\s*[,\]]/.test(text.slice(last.range.end));
  const before = text.slice(lineStart(text, last.range.start), last.range.start);
  if (bracketed) return [{ range: { start: last.range.end, end: last.range.end }, newText: `, ${name}` }];
  if (/^[ \t]*- +$/.test(before)) return [{ range: { start: last.range.end, end: last.range.end }, newText: `${breakOf(text)}${before}${name}` }];
  return placed.length === 1 ? [{ range: last.range, newText: `[${last.value}, ${name}]` }] : [];
}
