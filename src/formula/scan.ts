// The words of a formula, character by character: names, units, numbers, durations and instants at a place in the text.
// Each reader returns what stands at the offset, or null; none changes anything.
import { day, hour, minute, second, type Duration } from '../time/instant.ts';

export interface Scanned { readonly text: string; readonly end: number }

const nameShape = /[\p{L}][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*/uy;
const unitShape = /(?:1?\/)?[\p{L}%°‰][\p{L}\p{N}%°²³^_]*(?:\(STP\)|\(stp\))?(?:[/-][\p{L}%°][\p{L}\p{N}%°²³^_]*)*/uy;
const numberShape = /(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+(?![\p{L}\p{N}]))?/uy;
const dateShape = /\d{4}-\d{1,2}-\d{1,2}(?!\d)/uy;
const clockShape = /\d{1,2}:\d{2}(?::\d{2})?(?!\d)/uy;
const offsetShape = /(?:[+\-−](?:0\d|1[0-4]):?\d{2}(?!\d)|Z(?![\p{L}\p{N}]))/uy;
const spaceShape = /\s*/uy;
const compactDuration = /(\d+)h(\d{1,2})(?![\p{L}\p{N}])/uy;
const durationPart = /(\d+(?:\.\d+)?)\s*(days?|d|hours?|h|minutes?|min|seconds?|s)(?![\p{L}\p{N}%°²³^_])(?!\/[\p{L}%])(?!-[\p{L}])/uy;

function match(shape: RegExp, text: string, at: number): RegExpExecArray | null {
  shape.lastIndex = at;
  return shape.exec(text);
}

export function skipSpace(text: string, at: number): number {
  match(spaceShape, text, at);
  return spaceShape.lastIndex;
}

export function isSpace(character: string | undefined): boolean {
  return character !== undefined && /\s/u.test(character);
}

export function readName(text: string, at: number): Scanned | null {
  const found = match(nameShape, text, at);
  return found ? { text: found[0], end: at + found[0].length } : null;
}

/** A unit without spaces: `mg/L`, `%/h`, `mg/L-N`, `1`. */
export function readUnit(text: string, at: number, alsoOne = false): Scanned | null {
  const found = match(unitShape, text, at);
  if (found) return { text: found[0], end: at + found[0].length };
  return alsoOne && text[at] === '1' ? { text: '1', end: at + 1 } : null;
}

export function readNumber(text: string, at: number): Scanned | null {
  const found = match(numberShape, text, at);
  return found ? { text: found[0], end: at + found[0].length } : null;
}

const lengths: Readonly<Record<string, Duration>> = { d: day, h: hour, m: minute, s: second };

/** `30 min`, `9 h 30 min`, `1h30`, `90 s`, `2 d`. Null where the number carries another unit. */
export function readDurationAt(text: string, at: number): { duration: Duration; end: number } | null {
  const compact = match(compactDuration, text, at);
  if (compact) return { duration: Number(compact[1]) * hour + Number(compact[2]) * minute, end: at + compact[0].length };
  let total = 0;
  let end = at;
  let smallest = Infinity;
  for (let next = at; ;) {
    const part = match(durationPart, text, next);
    const length = part ? lengths[part[2]![0]!]! : 0;
    if (!part || length >= smallest) break;
    total += Number(part[1]) * length;
    smallest = length;
    end = next + part[0].length;
    next = skipSpace(text, end);
  }
  return end > at ? { duration: Math.round(total), end } : null;
}

/** `22:30`, `22:30:15`, `2026-03-15T02:30`, `2026-03-15 02:30+01:00`. A date alone has `clock` false. */
export function readInstantAt(text: string, at: number): { text: string; end: number; clock: boolean } | null {
  let next = at;
  const date = match(dateShape, text, next);
  if (date) {
    next += date[0].length;
    if (text[next] === 'T' || text[next] === ' ') {
      const clock = match(clockShape, text, next + 1);
      if (clock) return withOffset(text, at, next + 1 + clock[0].length);
    }
    return { text: date[0], end: next, clock: false };
  }
  const clock = match(clockShape, text, next);
  return clock ? withOffset(text, at, next + clock[0].length) : null;
}

function withOffset(text: string, at: number, end: number): { text: string; end: number; clock: boolean } {
  const offset = match(offsetShape, text, end);
  const after = offset ? end + offset[0].length : end;
  return { text: text.slice(at, after), end: after, clock: true };
}
