// Mean, deviation, median, quantiles and serial correlation of a sample.
import { checkSample, isStatisticsProblem, type StatisticsProblem } from './outcome.ts';

/** Arithmetic mean, with the rounding of the first pass taken out in a second. NaN for an empty sample: ask first. */
export function mean(values: readonly number[]): number {
  const count = values.length;
  let first = 0;
  for (const value of values) first += value;
  first /= count;
  let rest = 0;
  for (const value of values) rest += value - first;
  return first + rest / count;
}

/** Sum of squared distances from the mean, two passes with correction (Chan, Golub and LeVeque 1983). */
export function sumOfSquares(values: readonly number[]): number {
  const centre = mean(values);
  let squares = 0;
  let rest = 0;
  for (const value of values) { squares += (value - centre) ** 2; rest += value - centre; }
  return squares - rest * rest / values.length;
}

/** Sample variance (n − 1); null for fewer than two values. */
export function variance(values: readonly number[]): number | null {
  return values.length < 2 ? null : sumOfSquares(values) / (values.length - 1);
}

/** Sample standard deviation (n − 1); null for fewer than two values. */
export function standardDeviation(values: readonly number[]): number | null {
  const square = variance(values);
  return square === null ? null : Math.sqrt(Math.max(0, square));
}

/** Middle value, or the mean of the two middle ones; null for an empty sample. */
export function median(values: readonly number[]): number | null {
  return quantile(values, 0.5);
}

/** Quantile by linear interpolation between order statistics (type 7 of Hyndman and Fan 1996); null for an empty sample. */
export function quantile(values: readonly number[], part: number): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const place = Math.min(Math.max(part, 0), 1) * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? low;
  return low + (high - low) * (place - below);
}

/**
 * Serial correlation at a lag: r = Σ(x_t − x̄)(x_{t+lag} − x̄) / Σ(x_t − x̄)². Source: NIST/SEMATECH e-Handbook 1.3.3.1.
 * Needs more values than the lag and at least 3, and some spread.
 */
export function autocorrelation(values: readonly number[], lag = 1): number | StatisticsProblem {
  const wrong = checkSample(values, Math.max(3, lag + 2));
  if (wrong) return wrong;
  const centre = mean(values);
  let above = 0;
  let below = 0;
  for (let index = 0; index < values.length; index += 1) {
    const here = (values[index] as number) - centre;
    below += here * here;
    if (index + lag < values.length) above += here * ((values[index + lag] as number) - centre);
  }
  return below > 0 ? above / below : { problem: 'no-spread' };
}

/**
 * Number of independent values that tell as much of a mean as n values with serial correlation r1 of an AR(1) process:
 * n(1 − r1)/(1 + r1). A negative r1 is taken as 0, so that it is never more than n; never less than 1.
 */
export function effectiveCount(count: number, correlation: number): number {
  const r = Math.min(Math.max(correlation, 0), 0.999);
  return Math.max(1, count * (1 - r) / (1 + r));
}

export interface MeanWithError {
  readonly mean: number;
  readonly standardDeviation: number;
  /** s/√n, as if the values were independent. */
  readonly naiveError: number;
  readonly correlation: number;
  readonly effectiveCount: number;
  /** s/√n_eff. */
  readonly standardError: number;
}

/** The mean of a series with a standard error that respects its lag-1 correlation. Needs at least 3 values with some spread. */
export function meanOfSeries(values: readonly number[]): MeanWithError | StatisticsProblem {
  const correlation = autocorrelation(values);
  if (isStatisticsProblem(correlation)) return correlation;
  const deviation = standardDeviation(values) ?? 0;
  const effective = effectiveCount(values.length, correlation);
  return {
    mean: mean(values), standardDeviation: deviation, naiveError: deviation / Math.sqrt(values.length),
    correlation, effectiveCount: effective, standardError: deviation / Math.sqrt(effective),
  };
}
