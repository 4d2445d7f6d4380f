// The calendar as integer arithmetic: days since 1970-01-01 and wall times, without a zone.
// Method: Howard Hinnant, "chrono-Compatible Low-Level Date Algorithms", proleptic Gregorian calendar.
import { day, hour, minute, second, type Instant, type WallTime } from './instant.ts';

/** Years that the extension reads; outside them zones' rules are unknown or guesses. */
export const firstYear = 1970;
export const lastYear = 2100;

/** Whole days from 1970-01-01 to the date. */
export function daysFromCivil(year: number, month: number, dayOfMonth: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The date that lies `days` whole days after 1970-01-01. */
export function civilFromDays(days: number): { year: number; month: number; day: number } {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month,
    day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  };
}

/** Days in a month of the Gregorian calendar. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** The wall time as if its zone were UTC, in milliseconds since 1970-01-01T00:00. */
export function wallNumber(wall: WallTime): number {
  return daysFromCivil(wall.year, wall.month, wall.day) * day + wall.hour * hour + wall.minute * minute + wall.second * second;
}

/** The other way round; parts of a second are dropped. */
export function wallFromNumber(number: number): WallTime {
  const days = Math.floor(number / day);
  const rest = number - days * day;
  const date = civilFromDays(days);
  // Field by field: spreading would cost more than the arithmetic, for every row of a long file.
  return {
    year: date.year, month: date.month, day: date.day,
    hour: Math.floor(rest / hour), minute: Math.floor(rest / minute) % 60, second: Math.floor(rest / second) % 60,
  };
}

/** The same clock time some days later (or earlier). */
export function addDays(wall: WallTime, days: number): WallTime {
  return { ...wall, ...civilFromDays(daysFromCivil(wall.year, wall.month, wall.day) + days) };
}

export function atMidnight(date: { year: number; month: number; day: number }): WallTime {
  return { year: date.year, month: date.month, day: date.day, hour: 0, minute: 0, second: 0 };
}

/** True when the instant lies in the years that are read. */
export function inRange(instant: Instant): boolean {
  return instant >= daysFromCivil(firstYear, 1, 1) * day && instant < daysFromCivil(lastYear + 1, 1, 1) * day;
}
