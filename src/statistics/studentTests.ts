// Student's and Welch's comparisons of means.
import { mean, sumOfSquares, variance } from './describe.ts';
import { studentQuantile, studentTwoSided } from './distributions.ts';
import { checkSample, type Interval, type StatisticsProblem } from './outcome.ts';

export interface MeanComparison {
  /** Of the means: a − b, or the mean of the differences. */
  readonly difference: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
  readonly t: number;
  /** Two-sided. */
  readonly p: number;
  readonly interval: Interval;
}

function comparison(difference: number, standardError: number, degreesOfFreedom: number, confidence: number): MeanComparison | StatisticsProblem {
  if (!(standardError > 0)) return { problem: 'no-spread' };
  const t = difference / standardError;
  const half = studentQuantile(0.5 + confidence / 2, degreesOfFreedom) * standardError;
  return { difference, standardError, degreesOfFreedom, t, p: studentTwoSided(t, degreesOfFreedom), interval: { low: difference - half, high: difference + half } };
}

/** The mean of a sample against 0. Needs 2 values with some spread. */
export function oneSample(values: readonly number[], confidence = 0.95): MeanComparison | StatisticsProblem {
  const wrong = checkSample(values, 2);
  if (wrong) return wrong;
  return comparison(mean(values), Math.sqrt((variance(values) ?? 0) / values.length), values.length - 1, confidence);
}

/** Pairs: the mean of a − b against 0. Source: Student (1908). */
export function paired(a: readonly number[], b: readonly number[], confidence = 0.95): MeanComparison | StatisticsProblem {
  if (a.length !== b.length) return { problem: 'lengths-differ' };
  return oneSample(a.map((each, index) => each - (b[index] as number)), confidence);
}

/** Two samples of one variance. Needs 2 values in each. */
export function pooled(a: readonly number[], b: readonly number[], confidence = 0.95): MeanComparison | StatisticsProblem {
  const wrong = checkSample(a, 2) ?? checkSample(b, 2);
  if (wrong) return wrong;
  const degrees = a.length + b.length - 2;
  const square = (sumOfSquares(a) + sumOfSquares(b)) / degrees;
  return comparison(mean(a) - mean(b), Math.sqrt(square * (1 / a.length + 1 / b.length)), degrees, confidence);
}

/** Two samples, each with its own variance. Needs 2 values in each. Source: Welch (1947), Biometrika 34, 28–35. */
export function welch(a: readonly number[], b: readonly number[], confidence = 0.95): MeanComparison | StatisticsProblem {
  const wrong = checkSample(a, 2) ?? checkSample(b, 2);
  if (wrong) return wrong;
  return welchOf({ mean: mean(a), square: (variance(a) ?? 0) / a.length, degrees: a.length - 1 }, { mean: mean(b), square: (variance(b) ?? 0) / b.length, degrees: b.length - 1 }, confidence);
}

/** Welch's comparison of two means whose squared standard errors and degrees of freedom are known. */
function welchOf(
  a: { readonly mean: number; readonly square: number; readonly degrees: number },
  b: { readonly mean: number; readonly square: number; readonly degrees: number }, confidence = 0.95,
): MeanComparison | StatisticsProblem {
  const square = a.square + b.square;
  if (!(square > 0)) return { problem: 'no-spread' };
  const degrees = square * square / (a.square * a.square / a.degrees + b.square * b.square / b.degrees);
  return comparison(a.mean - b.mean, Math.sqrt(square), degrees, confidence);
}
