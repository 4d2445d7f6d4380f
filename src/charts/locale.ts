// How Vega writes the numbers and days of an axis in the note's language.
import type { Protocol } from '../protocol/types.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { wordsOf } from './chartWords.ts';
import { chartWords } from '../words/charts.ts';
import type { ChartLocale } from './types.ts';

/** null where Vega's own, English, is right. Axis numbers are never grouped; of the time formats the axes use the short months alone. */
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
