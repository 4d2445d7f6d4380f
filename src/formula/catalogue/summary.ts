// Functions that sum up the readings of a window: lowest, highest, mean, spread, and conditions over all of them.
import { secondDigit } from '../../quantities/format.ts';
import { differenceUnit } from '../../quantities/units.ts';
import { combine, isFailure, subtract } from '../../quantities/value.ts';
import type { Call } from '../call.ts';
import { censored } from '../seriesValues.ts';
import { pointTruth } from '../truths.ts';
import type { FormulaNumber, FormulaValue, SeriesPoint } from '../types.ts';
import { seriesAndWindow, windowParameter, type FunctionEntry } from './entry.ts';

/** The first of the lowest (or highest) readings; several equal ones are remarked upon. */
export function extreme(call: Call, points: readonly SeriesPoint[], which: 'min' | 'max'): SeriesPoint {
  let best = points[0]!;
  for (const point of points) if (which === 'min' ? point.value < best.value : point.value > best.value) best = point;
  const equal = points.filter((point) => point.value === best.value).length;
  if (equal > 1) call.remark('tie', { count: equal, time: call.time(best.time) });
  return best;
}

function extremeReading(call: Call, which: 'min' | 'max'): SeriesPoint | null {
  const points = call.points(0, 1);
  if (!points) return null;
  const point = extreme(call, points, which);
  call.use([point]);
  return point;
}

/** Below so many readings their correlation in time may hide (docs/coverage.md). */
export const fewForSerial = 24;

/** Says where an interval with serial correlation may be too narrow; the bounds are those of docs/coverage.md. */
export function remarkSerial(call: Call, found: { readonly correlation: number; readonly nearlyRandomWalk: boolean }, count: number): void {
  if (found.nearlyRandomWalk || found.correlation > 0.6) call.remark('nearly-random-walk');
  else if (count < fewForSerial) call.remark('few-for-serial', { count });
}

/** At least two significant digits, where readings have too few decimals to show a rate. */
export function enoughDecimals(value: number, decimals: { decimals?: number }): { decimals?: number } {
  if (decimals.decimals === undefined || value === 0 || !Number.isFinite(value)) return decimals;
  return { decimals: Math.max(decimals.decimals, Math.min(secondDigit(Math.abs(value)), 6)) };
}

export function decimalsOf(points: readonly SeriesPoint[], more = 0): { decimals?: number } {
  let most: number | undefined;
  for (const point of points) if (point.decimals !== undefined) most = Math.max(most ?? 0, point.decimals);
  return most === undefined ? {} : { decimals: most + more };
}

function mean(call: Call): FormulaNumber | null {
  const points = call.points(0, 1, { counted: true });
  if (!points) return null;
  call.use(points);
  const average = meanOf(points);
  return { ...combine(average, call.series(0).unit, points.map((point) => ({ value: call.numberAt(point, 0), derivative: 1 / points.length }))), ...decimalsOf(points) };
}

/** Mean about the first value, so that no digits are lost. */
function meanOf(points: readonly SeriesPoint[]): number {
  const origin = points[0]!.value;
  return origin + points.reduce((sum, point) => sum + (point.value - origin), 0) / points.length;
}

function median(call: Call): FormulaNumber | null {
  const points = call.points(0, 1, { counted: true });
  if (!points) return null;
  call.use(points);
  const sorted = [...points].sort((a, b) => a.value - b.value);
  const upper = sorted[sorted.length >> 1]!;
  const lower = sorted[(sorted.length - 1) >> 1]!;
  const parts = upper === lower ? [{ value: call.numberAt(upper, 0), derivative: 1 }]
    : [{ value: call.numberAt(lower, 0), derivative: 0.5 }, { value: call.numberAt(upper, 0), derivative: 0.5 }];
  return { ...combine((lower.value + upper.value) / 2, call.series(0).unit, parts), ...decimalsOf([lower, upper]) };
}

function deviation(call: Call): FormulaNumber | null {
  const points = call.points(0, 1, { counted: true });
  if (!points || !call.needs(points, 2, 0)) return null;
  call.use(points);
  const average = meanOf(points);
  const sum = points.reduce((total, point) => total + (point.value - average) ** 2, 0);
  const value = Math.sqrt(sum / (points.length - 1));
  const unit = differenceUnit(call.series(0).unit);
  const parts = points.map((point) => ({ value: call.numberAt(point, 0), derivative: value > 0 ? (point.value - average) / ((points.length - 1) * value) : Number.NaN }));
  return { ...combine(value, unit, parts), ...enoughDecimals(value, decimalsOf(points, 1)) };
}

function spread(call: Call): FormulaValue | null {
  const points = call.points(0, 1);
  if (!points) return null;
  const low = extreme(call, points, 'min');
  const high = extreme(call, points, 'max');
  call.use([low, high]);
  const result = subtract(call.numberAt(high, 0), call.numberAt(low, 0));
  return isFailure(result) ? call.failure(result) : { ...result, ...decimalsOf([low, high]) };
}

function every(call: Call, which: 'all' | 'any'): FormulaValue | null {
  const points = call.points(0, 1, { limits: true });
  if (!points) return null;
  call.use(points);
  const deciding = points.find((point) => pointTruth(point) === (which === 'any'));
  if (deciding) {
    call.remark(which === 'any' ? 'first-true' : 'first-false', { time: call.time(deciding.time) });
    return { type: 'truth', truth: which === 'any' };
  }
  if (points.some((point) => (point.flags & censored) !== 0) && !call.within(points, 0)) return null;
  call.remark('readings-checked', { count: points.length });
  return { type: 'truth', truth: which === 'all' };
}

const conditionAndWindow = [{
  parameters: [{ name: 'condition', type: 'condition' as const, about: 'a condition on readings, such as mat.T >= open.T' }, windowParameter], options: [],
}];

export const summaryFunctions: readonly FunctionEntry[] = [
  {
    name: 'min', group: 'summary', gives: 'number', units: 'that of the series', signatures: seriesAndWindow,
    definition: 'The lowest reading in the window.', equation: 'min(s) = lowest sᵢ', source: null,
    example: { formula: 'min(mat.DO)', on: 'the oxygen in the mat tank', gives: '5.74 mg/L' },
    words: 'the lowest {bare 1}{window}',
    evaluate: (call) => {
      const point = extremeReading(call, 'min');
      return point && call.numberAt(point, 0);
    },
  },
  {
    name: 'max', group: 'summary', gives: 'number', units: 'that of the series', signatures: seriesAndWindow,
    definition: 'The highest reading in the window.', equation: 'max(s) = highest sᵢ', source: null,
    example: { formula: 'max(mat.DO)', on: 'the oxygen in the mat tank', gives: '8.26 mg/L' },
    words: 'the highest {bare 1}{window}',
    evaluate: (call) => {
      const point = extremeReading(call, 'max');
      return point && call.numberAt(point, 0);
    },
  },
  {
    name: 'mean', group: 'summary', gives: 'number', units: 'that of the series', signatures: seriesAndWindow,
    definition: 'The mean of the readings in the window, each counted once.', equation: 'mean(s) = Σ sᵢ / n', source: null,
    example: { formula: 'mean(mat.DO, baseline)', on: 'the three readings up to lights-off', gives: '8.23 mg/L' },
    words: 'the mean {bare 1}{window}',
    evaluate: mean,
  },
  {
    name: 'median', group: 'summary', gives: 'number', units: 'that of the series', signatures: seriesAndWindow,
    definition: 'The middle reading by size; of an even number, the mean of the middle two.', equation: 'half of the readings lie on either side', source: null,
    example: { formula: 'median(mat.DO, baseline)', on: 'the three readings up to lights-off', gives: '8.24 mg/L' },
    words: 'the median {bare 1}{window}',
    evaluate: median,
  },
  {
    name: 'sd', group: 'summary', gives: 'number', units: 'that of a difference of the series', signatures: seriesAndWindow,
    definition: 'The sample standard deviation of the readings in the window.', equation: 'sd(s) = √( Σ (sᵢ − mean)² / (n − 1) )', source: null,
    example: { formula: 'sd(mat.DO, baseline)', on: 'the three readings up to lights-off', gives: '0.031 mg/L' },
    words: 'the standard deviation of {1}{window}',
    evaluate: deviation,
  },
  {
    name: 'range', group: 'summary', gives: 'number', units: 'that of a difference of the series', signatures: seriesAndWindow,
    definition: 'The highest reading minus the lowest.', equation: 'range(s) = max(s) − min(s)', source: null,
    example: { formula: 'range(mat.DO)', on: 'the oxygen in the mat tank', gives: '2.52 mg/L' },
    words: 'the range of {1}{window}',
    evaluate: spread,
  },
  {
    name: 'time-of-min', group: 'summary', gives: 'instant', units: 'a time', signatures: seriesAndWindow,
    definition: 'The time of the lowest reading; of several equal ones, the first.', equation: 't at which s(t) = min(s)', source: null,
    example: { formula: 'time-of-min(mat.DO)', on: 'two equal lowest readings, at 05:00 and 06:00', gives: '05:00' },
    words: 'the time of the lowest {bare 1}{window}',
    evaluate: (call) => {
      const point = extremeReading(call, 'min');
      return point && { type: 'instant', instant: point.time };
    },
  },
  {
    name: 'time-of-max', group: 'summary', gives: 'instant', units: 'a time', signatures: seriesAndWindow,
    definition: 'The time of the highest reading; of several equal ones, the first.', equation: 't at which s(t) = max(s)', source: null,
    example: { formula: 'time-of-max(mat.DO)', on: 'the oxygen in the mat tank', gives: '22:00' },
    words: 'the time of the highest {bare 1}{window}',
    evaluate: (call) => {
      const point = extremeReading(call, 'max');
      return point && { type: 'instant', instant: point.time };
    },
  },
  {
    name: 'all', group: 'summary', gives: 'truth', units: 'true or false', signatures: conditionAndWindow,
    definition: 'True when the condition holds at every reading in the window.', equation: 'c(t₁) and c(t₂) and …', source: null,
    example: { formula: 'all(mat.DO > 5 mg/L)', on: 'the oxygen in the mat tank', gives: 'true' },
    words: '{1}, at every reading{window}',
    evaluate: (call) => every(call, 'all'),
  },
  {
    name: 'any', group: 'summary', gives: 'truth', units: 'true or false', signatures: conditionAndWindow,
    definition: 'True when the condition holds at one reading in the window or more.', equation: 'c(t₁) or c(t₂) or …', source: null,
    example: { formula: 'any(mat.DO < 5 mg/L)', on: 'the oxygen in the mat tank', gives: 'false' },
    words: '{1}, at one reading or more{window}',
    evaluate: (call) => every(call, 'any'),
  },
];
