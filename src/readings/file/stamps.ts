// Times as loggers write them, and which order of day, month and year a whole column shows.
import { daysInMonth, firstYear, lastYear, wallNumber } from '../../time/civil.ts';
import { readOffset, type Clock } from '../../time/text.ts';
import type { Duration, WallTime } from '../../time/instant.ts';

export type DateOrder = 'year-month-day' | 'day-month-year' | 'month-day-year';
export const dateOrders: readonly DateOrder[] = ['year-month-day', 'day-month-year', 'month-day-year'];

export interface Stamp {
  /** Three numbers in the order written; a month's name is its number with `named` set. */
  readonly date: { readonly parts: readonly [number, number, number]; readonly lengths: readonly [number, number, number]; readonly named: boolean } | null;
  readonly clock: (Clock & { readonly millisecond: number }) | null;
  readonly offset: Duration | null;
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const datePattern = /^(\d{1,4})\s?[-/. ]\s?(\d{1,2}|[A-Za-z]{3,9}\.?)\s?[-/. ]\s?(\d{1,4})(?=$|[\sT,])/u;
const nameFirst = /^([A-Za-z]{3,9})\.?\s+(\d{1,2}),?\s+(\d{4})(?=$|[\sT,])/u;
const compact = /^(\d{4})(\d{2})(\d{2})(?=$|[\sT])/u;
const clockPattern = /^(\d{1,2})[:.](\d{2})(?:[:.](\d{2})(?:[.,](\d{1,6}))?)?\s*([AaPp])?\.?(?:[Mm]\.?)?/u;

/** By far the most stamps of loggers: read at once, and to the same stamp as by the detours. */
const plainStamp = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.(\d{1,6}))?)?(Z|[+-]\d\d:\d\d)?$/u;
const plainLengths = [4, 2, 2] as const;

function readPlainStamp(text: string): Stamp | null {
  const match = plainStamp.exec(text);
  if (!match) return null;
  const [month, hour, minute, second] = [Number(match[2]), Number(match[4]), Number(match[5]), Number(match[6] ?? 0)];
  const offset = match[8] === undefined ? null : readOffset(match[8]);
  if (month === 0 || hour > 23 || minute > 59 || second > 59 || (match[8] !== undefined && offset === null)) return null;
  return { date: { parts: [Number(match[1]), month, Number(match[3])], lengths: plainLengths, named: false }, clock: { hour, minute, second, millisecond: millisecondsOf(match[7]) }, offset };
}

/** Whole milliseconds of the digits behind the seconds. */
const millisecondsOf = (digits: string | undefined): number => (digits === undefined ? 0 : Math.floor(Number(`0.${digits}`) * 1000));

/** Reads a time stamp; null when it is none. Either part may be missing. */
export function readStamp(text: string): Stamp | null {
  return readPlainStamp(text) ?? readAnyStamp(text);
}

function readAnyStamp(text: string): Stamp | null {
  let rest = text.trim().replace(/\u202f|\u00a0/gu, ' ');
  let date: Stamp['date'] = null;
  const match = compact.exec(rest) ?? datePattern.exec(rest);
  const named = match ? null : nameFirst.exec(rest);
  if (match) {
    const month = /^\d/u.test(match[2]!) ? Number(match[2]) : months.indexOf(match[2]!.slice(0, 3).toLowerCase()) + 1;
    if (month === 0) return null;
    date = { parts: [Number(match[1]), month, Number(match[3])], lengths: [match[1]!.length, match[2]!.length, match[3]!.length], named: !/^\d/u.test(match[2]!) };
    rest = rest.slice(match[0].length);
  } else if (named) {
    const month = months.indexOf(named[1]!.slice(0, 3).toLowerCase()) + 1;
    if (month === 0) return null;
    date = { parts: [Number(named[2]), month, Number(named[3])], lengths: [2, 3, 4], named: true };
    rest = rest.slice(named[0].length);
  }
  rest = rest.replace(/^[\sT,]+/u, '');
  if (rest === '') return date ? { date, clock: null, offset: null } : null;
  const time = clockPattern.exec(rest);
  if (!time || (!date && !/^\d{1,2}:/u.test(rest))) return null;
  let hours = Number(time[1]);
  const half = time[5]?.toLowerCase();
  if (half) {
    if (hours < 1 || hours > 12) return null;
    hours = (hours % 12) + (half === 'p' ? 12 : 0);
  }
  const [minutes, seconds] = [Number(time[2]), Number(time[3] ?? 0)];
  if (hours > 23 || minutes > 59 || seconds > 59) return null;
  const clock = { hour: hours, minute: minutes, second: seconds, millisecond: millisecondsOf(time[4]) };
  const tail = rest.slice(time[0].length).trim();
  if (tail === '') return { date, clock, offset: null };
  const offset = /^(?:UTC|GMT)$/u.test(tail) ? 0 : readOffset(tail);
  return offset === null ? null : { date, clock, offset };
}

/** The calendar date of a stamp in an order; null when there is no such day. Years of two digits are of this century. */
export function dateIn(stamp: Stamp, order: DateOrder): { year: number; month: number; day: number } | null {
  if (!stamp.date) return null;
  const { parts, lengths, named } = stamp.date;
  const yearFirst = order === 'year-month-day';
  if (named && order === 'month-day-year') return null;
  const yearLength = yearFirst ? lengths[0] : lengths[2];
  if (yearLength === 1 || yearLength === 3) return null;
  if (yearLength === 2 && (yearFirst ? lengths[2] : lengths[0]) > 2) return null;
  const typed = yearFirst ? parts[0] : parts[2];
  const year = yearLength === 2 ? 2000 + typed : typed;
  const month = order === 'month-day-year' ? parts[0] : parts[1];
  const day = yearFirst ? parts[2] : order === 'day-month-year' ? parts[0] : parts[1];
  if (year < firstYear || year > lastYear || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return { year, month, day };
}

/** Wall time of a stamp, and the milliseconds beyond its second. */
export function wallOf(stamp: Stamp, order: DateOrder): { wall: WallTime; millisecond: number } | null {
  const date = dateIn(stamp, order);
  if (!date || !stamp.clock) return null;
  const { hour, minute, second, millisecond } = stamp.clock;
  return { wall: { year: date.year, month: date.month, day: date.day, hour, minute, second }, millisecond };
}

/**
 * The orders that read every date of the column (or, where none reads all, those that read the most). One order: it is
 * sure. Several that give the same days count as one. Several that differ: only the keeper knows.
 */
export function possibleOrders(stamps: readonly Stamp[]): DateOrder[] {
  const dated = stamps.filter((stamp) => stamp.date !== null);
  if (dated.length > 0 && dated.every((stamp) => stamp.date!.lengths[0] === 4)) return ['year-month-day'];
  const counted = dateOrders.map((order) => ({ order, read: dated.filter((stamp) => dateIn(stamp, order) !== null).length }));
  const most = Math.max(0, ...counted.map((each) => each.read));
  if (most === 0) return [];
  const orders = counted.filter((each) => each.read === most).map((each) => each.order);
  const same = (order: DateOrder): boolean => dated.every((stamp) => {
    const [a, b] = [dateIn(stamp, orders[0]!), dateIn(stamp, order)];
    return (a === null) === (b === null) && (!a || !b || wallNumber({ ...a, hour: 0, minute: 0, second: 0 }) === wallNumber({ ...b, hour: 0, minute: 0, second: 0 }));
  });
  return orders.every(same) ? orders.slice(0, 1) : orders;
}

/** True for dates that need no order said: a year of four digits in front. */
export function isPlainOrder(stamps: readonly Stamp[]): boolean {
  return stamps.every((stamp) => stamp.date === null || stamp.date.lengths[0] === 4 || stamp.date.named);
}
