// Clock times and dates in prose: `06:30`, `6:30 am`, `6 am`, `noon`, `2026-03-15 06:30`, `15 March at 06:30`.
import { readClock, readDate, readDateTime } from '../time/text.ts';
import type { ClaimWords } from '../words/claimWords.ts';
import type { ClockMention, DateMention } from './mentions.ts';

const isoPattern = /(\d{4}-\d{2}-\d{2})(?:(?:[Tt]|\s+)(?:at\s+)?(\d{1,2}:\d{2}(?::\d{2})?)\s*([Zz]|[+\-−]\d{2}:\d{2})?)?(?![\p{L}\p{N}])/uy;
const clockPattern = /(\d{1,2}:\d{2}(?::\d{2})?)(?:\s*([ap])\.?m\b\.?)?(?![\p{L}\p{N}])/iuy;
const hourOnlyPattern = /(\d{1,2})\s*([ap])\.?m\b\.?/iuy;
const europeanPattern = /(\d{1,2})[.:](\d{2})(?=\s+(?:uhr|uur)\b)/iuy;

const plain = { approximate: false, bound: null, joinedToNext: false, language: 'en' } as const;

function at(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

/** The date, or date with time, that starts at `offset`. */
export function dateAt(text: string, offset: number, words: ClaimWords): ClockMention | DateMention | null {
  const iso = at(isoPattern, text, offset);
  if (iso) {
    const date = readDate(iso[1]!);
    if (!date) return null;
    const end = offset + iso[0].length;
    if (iso[2] === undefined) return { ...plain, kind: 'date', start: offset, end, ...date };
    const read = readDateTime(`${iso[1]!} ${iso[2]}${iso[3] ?? ''}`);
    if (!read) return null;
    const valueStart = offset + iso[0].indexOf(iso[2], 10);
    return { ...plain, kind: 'clock', start: offset, end, hour: read.wall.hour, minute: read.wall.minute, second: iso[2].length > 5 ? read.wall.second : null,
      date, offset: read.offset, style: 'twenty-four', valueStart, valueEnd: valueStart + iso[2].length, halfWidth: null };
  }
  const dotted = words.dottedDate && at(words.dottedDate, text, offset);
  if (dotted) {
    const date = readDate(`${dotted[3]!}-${dotted[2]!.padStart(2, '0')}-${dotted[1]!.padStart(2, '0')}`);
    if (date) return { ...plain, kind: 'date', start: offset, end: offset + dotted[0].length, ...date };
  }
  const worded = at(words.dayMonth, text, offset) ?? (words.monthDay && at(words.monthDay, text, offset));
  if (!worded) return null;
  const dayFirst = /^\d/.test(worded[0]);
  const day = Number(dayFirst ? worded[1] : worded[2]);
  const month = words.monthOf((dayFirst ? worded[2] : worded[1])!);
  if (day < 1 || day > 31 || month < 1) return null;
  return { ...plain, kind: 'date', start: offset, end: offset + worded[0].length, year: worded[3] ? Number(worded[3]) : null, month, day };
}

/** The clock time that starts at `offset`. */
export function clockAt(text: string, offset: number, words: ClaimWords): ClockMention | null {
  const made = (length: number, read: { hour: number; minute: number; second: number } | null, shownSeconds: boolean, style: ClockMention['style']): ClockMention | null =>
    read && { ...plain, kind: 'clock', start: offset, end: offset + length, hour: read.hour, minute: read.minute, second: shownSeconds ? read.second : null,
      date: null, offset: null, style, valueStart: offset, valueEnd: offset + length, halfWidth: null };
  const european = at(europeanPattern, text, offset);
  if (european) return made(european[0].length, readClock(`${european[1]}:${european[2]}`), false, 'twenty-four');
  const clock = at(clockPattern, text, offset);
  if (clock) return made(clock[0].length, readClock(clock[2] ? `${clock[1]} ${clock[2]}m` : clock[1]!), clock[1]!.length > 5, clock[2] ? 'twelve' : 'twenty-four');
  const hourOnly = at(hourOnlyPattern, text, offset);
  if (hourOnly) return made(hourOnly[0].length, readClock(`${hourOnly[1]}:00 ${hourOnly[2]}m`), false, 'twelve-hours-only');
  const hourWord = words.hourWord && at(words.hourWord, text, offset);
  if (hourWord) return made(hourWord[0].length, readClock(`${hourWord[1] ?? hourWord[3]!}:${hourWord[2] ?? '00'}`), false, 'twenty-four');
  const word = at(words.noon, text, offset);
  if (word) return made(word[0].length, { hour: words.midnight.test(word[1]!) ? 0 : 12, minute: 0, second: 0 }, false, 'word');
  return null;
}
