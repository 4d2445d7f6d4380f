// What stands behind a `±`: the half-width of a time, `06:04 ± 20 min` or `9 h 30 min ± 1 h 10 min`.
import { convert, isTimeUnit, matchPrintedUnit, parseUnit } from '../quantities/units.ts';
import { hour } from '../time/instant.ts';
import type { Language } from '../words/languages.ts';
import type { DecimalMark } from '../quantities/decimalMark.ts';
import type { TimeHalfWidth } from './mentions.ts';

const space = '[\\s\\u00a0\\u202f\\u2009]';
/** The sign with the spaces about it. */
export const plusMinus = new RegExp(`${space}*\\(?${space}*(?:±|\\+/-|\\+/−|\\+-|plus or minus|plus oder minus|plus/minus)${space}*`, 'y');

const hours = parseUnit('h');

interface Part { readonly end: number; readonly duration: number; readonly step: number }

/** A number with a unit of time, shorter than `below`, at the offset. */
function partAt(text: string, offset: number, mark: DecimalMark, below: number, language: Language): Part | null {
  const digits = (mark === ',' ? /\d+(?:,\d+)?/y : /\d+(?:\.\d+)?/y);
  digits.lastIndex = offset;
  const shown = digits.exec(text)?.[0];
  if (shown === undefined || hours === null) return null;
  const from = offset + shown.length + /^\s?/u.exec(text.slice(offset + shown.length))![0].length;
  const printed = matchPrintedUnit(text, from, language);
  if (!printed?.unit || !isTimeUnit(printed.unit) || /[\p{L}\p{N}]/u.test(text[from + printed.length] ?? '')) return null;
  const size = convert(1, printed.unit, hours) * hour;
  if (size >= below) return null;
  const decimals = shown.split(mark)[1]?.length ?? 0;
  return { end: from + printed.length, duration: Math.round(Number(shown.replace(',', '.')) * size), step: Math.max(1, Math.round(size / 10 ** decimals)) };
}

/** The length of time, of one or several parts, whose digits start at the offset. */
function timeHalfWidthFrom(text: string, start: number, mark: DecimalMark, language: Language): TimeHalfWidth | null {
  let found = partAt(text, start, mark, Number.POSITIVE_INFINITY, language);
  if (!found) return null;
  for (;;) {
    const gap = /^\s*/u.exec(text.slice(found.end))![0].length;
    const next = partAt(text, found.end + gap, mark, found.step, language);
    if (!next) break;
    found = { end: next.end, duration: found.duration + next.duration, step: next.step };
  }
  return { start, end: found.end, duration: found.duration, step: found.step };
}

/** The half-width behind a time that ends at the offset, and where the whole ends, a closing bracket included. */
export function timeHalfWidthAt(text: string, offset: number, mark: DecimalMark, language: Language): { readonly halfWidth: TimeHalfWidth; readonly end: number } | null {
  plusMinus.lastIndex = offset;
  const sign = plusMinus.exec(text);
  const halfWidth = sign && timeHalfWidthFrom(text, offset + sign[0].length, mark, language);
  if (!halfWidth) return null;
  const closing = sign[0].includes('(') ? /^\s*\)/u.exec(text.slice(halfWidth.end)) : null;
  return { halfWidth, end: halfWidth.end + (closing?.[0].length ?? 0) };
}
