// Dates, clock times and durations as people write them, and back to text. No zone but the one given, no locale.
import { daysInMonth, firstYear, lastYear, wallFromNumber } from './civil.ts';
import { day, hour, minute, second, type Duration, type Instant, type WallTime, type Zone } from './instant.ts';
import { wallTimeOf } from './zone.ts';

export interface Clock { readonly hour: number; readonly minute: number; readonly second: number }
export interface CalendarDate { readonly year: number; readonly month: number; readonly day: number }

/** `20:30`, `6:30`, `20:30:15`, `6:30 am`, `6:30:00 pm`. Null when it is no time of day. */
export function readClock(text: string): Clock | null {
  const match = /^\s*(\d{1,2}):(\d\d)(?::(\d\d))?(?:\s*([ap])\.?m\.?)?\s*$/i.exec(text);
  if (!match) return null;
  let hours = Number(match[1]);
  const minutes = Number(match[2]);
  const seconds = Number(match[3] ?? 0);
  if (match[4]) {
    if (hours < 1 || hours > 12) return null;
    hours = (hours % 12) + (match[4].toLowerCase() === 'p' ? 12 : 0);
  }
  return hours > 23 || minutes > 59 || seconds > 59 ? null : { hour: hours, minute: minutes, second: seconds };
}

/** `2026-03-15`, years 1970 to 2100. Null when no such day exists. */
export function readDate(text: string): CalendarDate | null {
  const match = /^\s*(\d{4})-(\d\d)-(\d\d)\s*$/.exec(text);
  if (!match) return null;
  const year = Number(match[1]);
  const month = Number(match[2]);
  const dayOfMonth = Number(match[3]);
  if (year < firstYear || year > lastYear || month < 1 || month > 12) return null;
  return dayOfMonth < 1 || dayOfMonth > daysInMonth(year, month) ? null : { year, month, day: dayOfMonth };
}

/** `Z`, `+01:00`, `-0530`, `+01`: milliseconds ahead of UTC. Null when it is no offset. */
export function readOffset(text: string): Duration | null {
  if (text === 'Z' || text === 'z') return 0;
  const match = /^([+\-−])(\d\d)(?::?(\d\d))?$/.exec(text);
  if (!match) return null;
  const size = Number(match[2]) * hour + Number(match[3] ?? 0) * minute;
  if (size > 14 * hour || Number(match[3] ?? 0) > 59) return null;
  return match[1] === '+' ? size : 0 - size;
}

/** `2026-03-15 06:30`, `2026-03-15T06:30:15+01:00`, `… Z`. `offset` is null when the text names none. */
export function readDateTime(text: string): { wall: WallTime; offset: Duration | null } | null {
  const match = /^\s*(\d{4}-\d\d-\d\d)(?:[Tt]|\s+)(\d{1,2}:\d\d(?::\d\d)?(?:\s*[ap]\.?m\.?)?)\s*([Zz]|[+\-−]\d\d(?::?\d\d)?)?\s*$/i.exec(text);
  if (!match) return null;
  const date = readDate(match[1]!);
  const clock = readClock(match[2]!);
  if (!date || !clock) return null;
  const offset = match[3] === undefined ? null : readOffset(match[3]);
  return match[3] !== undefined && offset === null ? null : { wall: { ...date, ...clock }, offset };
}

const durationUnits: readonly { readonly words: readonly string[]; readonly size: Duration }[] = [
  { words: ['w', 'wk', 'week', 'weeks'], size: 7 * day },
  { words: ['d', 'day', 'days'], size: day },
  { words: ['h', 'hr', 'hrs', 'hour', 'hours'], size: hour },
  { words: ['min', 'mins', 'minute', 'minutes'], size: minute },
  { words: ['s', 'sec', 'secs', 'second', 'seconds'], size: second },
];

/**
 * `30 min`, `1 h`, `9 h 30 min`, `1h30`, `90 s`, `2 d`, `1 week`, `1.5 h`, `2 hours and 15 minutes`.
 * Units go from large to small. Null when it is no length of time or a part lacks its unit.
 */
export function readDuration(text: string): Duration | null {
  const trimmed = text.trim();
  const joined = /^(\d{1,4})\s*h\s*(\d{1,2})$/.exec(trimmed);
  if (joined) return Number(joined[2]) > 59 ? null : Number(joined[1]) * hour + Number(joined[2]) * minute;
  const part = /\s*(\d{1,7}(?:\.\d{1,6})?)\s*([A-Za-z]+)\.?(?:\s*,|\s+and\b)?/y;
  let total = 0;
  let previous = -1;
  let position = 0;
  while (position < trimmed.length) {
    part.lastIndex = position;
    const match = part.exec(trimmed);
    if (!match) return null;
    const word = match[2]!.toLowerCase();
    const index = durationUnits.findIndex((unit) => unit.words.includes(word));
    if (index <= previous) return null;
    previous = index;
    total += Number(match[1]) * durationUnits[index]!.size;
    position = part.lastIndex;
  }
  return previous < 0 || /(?:,|\band)$/.test(trimmed) ? null : Math.round(total);
}

const twoDigits: readonly string[] = Array.from({ length: 100 }, (_, number) => String(number).padStart(2, '0'));
const two = (number: number): string => twoDigits[number] ?? String(number);
const dateText = (wall: WallTime): string => `${String(wall.year).padStart(4, '0')}-${two(wall.month)}-${two(wall.day)}`;

/** `+01:00`; a zone's odd seconds (before standard time) are rounded to the minute. */
export function formatOffset(offset: Duration): string {
  const minutes = Math.round(Math.abs(offset) / minute);
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** `2026-03-15T06:30:00+01:00`: local time with its offset. */
export function formatInstant(instant: Instant, zone: Zone): string {
  const offset = zone.offsetAt(instant);
  const wall = wallFromNumber(instant + offset);
  return `${dateText(wall)}T${two(wall.hour)}:${two(wall.minute)}:${two(wall.second)}${formatOffset(offset)}`;
}

/** `06:30`; with seconds, `06:30:15`, where there are any. */
export function formatClock(instant: Instant, zone: Zone): string {
  const wall = wallTimeOf(instant, zone);
  return `${two(wall.hour)}:${two(wall.minute)}${wall.second ? `:${two(wall.second)}` : ''}`;
}

/** `2026-03-15`, the local date. */
export function formatDate(instant: Instant, zone: Zone): string {
  return dateText(wallTimeOf(instant, zone));
}

/**
 * `9 h 30 min`, `45 s`, `2 d`: readable by `readDuration`. Days are used for whole days and from three days on.
 * A negative length has a leading `-`; parts of a second are shown as decimals.
 */
export function formatDuration(duration: Duration): string {
  if (duration < 0) return `-${formatDuration(-duration)}`;
  const whole = Math.round(duration);
  const days = whole % day === 0 || whole >= 3 * day ? Math.floor(whole / day) : 0;
  const rest = whole - days * day;
  const hours = Math.floor(rest / hour);
  const minutes = Math.floor((rest % hour) / minute);
  const seconds = (rest % minute) / second;
  const parts: string[] = [];
  if (days) parts.push(`${days} d`);
  if (hours) parts.push(`${hours} h`);
  if (minutes) parts.push(`${minutes} min`);
  if (seconds) parts.push(`${seconds} s`);
  return parts.length ? parts.join(' ') : '0 min';
}
