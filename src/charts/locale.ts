// How Vega writes the numbers and days of an axis in the note's language.
import type { Protocol } from '../protocol/types.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { wordsOf } from './chartWords.ts';
import { chartWords } from '../words/charts.ts';

/** Parts of a Vega locale; null where Vega's own, English, is right. */
export interface ChartLocale {
  readonly number: { readonly decimal: string; readonly thousands: string; readonly grouping: readonly number[]; readonly currency: readonly [string, string] };
  readonly time: {
    readonly dateTime: string; readonly date: string; readonly time: string; readonly periods: readonly string[];
    readonly days: readonly string[]; readonly shortDays: readonly string[]; readonly months: readonly string[]; readonly shortMonths: readonly string[];
  };
  /** How a day below the axis is written. */
  readonly dayFormat: string;
}

/** Axis numbers are never grouped; of the time formats the axes use the short months alone. */
export function localeOf(protocol: Pick<Protocol, 'language'>): ChartLocale | null {
  const words = wordsOf(protocol);
  const decimal = decimalMarkOf(protocol.language);
  if (decimal === '.' && words === chartWords('en')) return null;
  const months = [...words.months];
  const days = ['0', '1', '2', '3', '4', '5', '6'];
  return {
    number: { decimal, thousands: '', grouping: [3], currency: ['', ''] },
    time: { dateTime: '%Y-%m-%d %H:%M', date: '%Y-%m-%d', time: '%H:%M', periods: ['', ''], days, shortDays: days, months, shortMonths: months },
    dayFormat: words.dayFormat,
  };
}
