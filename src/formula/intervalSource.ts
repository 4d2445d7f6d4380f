// Where the interval of a value comes from: the instruments (with repeats taken at once), the scatter of readings, or both.
import type { IntervalSource } from '../words/intervals.ts';
import type { FormulaNumber } from './types.ts';

/** Keys of contributions that stand for scatter: of paired differences, about a line, about a fitted night. */
const scatterKey = /^(?:contrast|scatter|fit):/u;

/** Functions whose ± comes from scatter, by the kind of scatter. */
export const scatterFunctions = {
  contrast: ['contrast'],
  slope: ['slope', 'robust-slope'],
  night: ['respiration', 'reaeration', 'balance-point', 'time-to', 'predicted-min', 'predicted-hours-below'],
} as const satisfies Record<string, readonly string[]>;

/** What the ± of a number comes from; null where it has none. */
export function intervalSource({ contributions }: Pick<FormulaNumber, 'contributions'>): IntervalSource | null {
  const kinds = [...contributions ?? []].filter(([, size]) => size !== 0).map(([key]) => scatterKey.test(key));
  if (kinds.length === 0) return null;
  return kinds.every(Boolean) ? 'scatter' : kinds.some(Boolean) ? 'both' : 'instruments';
}
