// The before/after by treatment/control contrast, paired in time, with an interval that respects serial correlation.
import { autocorrelation, effectiveCount, mean, sumOfSquares, variance } from './describe.ts';
import { studentQuantile, studentTwoSided } from './distributions.ts';
import { checkSample, isStatisticsProblem, type Interval, type StatisticsProblem } from './outcome.ts';
import { pooled, welch, welchOf, type MeanComparison } from './studentTests.ts';

export interface SerialContrast extends MeanComparison {
  /** Lag-1 correlation of the differences within their periods, corrected for its bias in short series. */
  readonly correlation: number;
  readonly effectiveBefore: number;
  readonly effectiveAfter: number;
}

/**
 * Contrast of paired differences D = treatment − control: mean(D after) − mean(D before), as if the readings were independent.
 * Source: Stewart-Oaten, Murdoch and Parker (1986), Ecology 67, 929–940.
 */
export function pairedContrast(before: readonly number[], after: readonly number[], variances: 'pooled' | 'separate', confidence = 0.95): MeanComparison | StatisticsProblem {
  return variances === 'pooled' ? pooled(after, before, confidence) : welch(after, before, confidence);
}

/**
 * The same contrast with the readings' serial correlation taken into account: one lag-1 correlation for both periods (their
 * products pooled, corrected for bias), each period's variance over its effective number of readings, Welch's degrees of freedom
 * from the effective numbers. Readings within a period stand in order of time. Needs 4 in each period and 2 effective ones;
 * otherwise `too-few`.
 */
export function serialContrast(before: readonly number[], after: readonly number[], confidence = 0.95): SerialContrast | StatisticsProblem {
  const wrong = checkSample(before, 4) ?? checkSample(after, 4);
  if (wrong) return wrong;
  const correlation = pooledCorrelation([before, after]);
  if (isStatisticsProblem(correlation)) return correlation;
  const effectiveBefore = effectiveCount(before.length, correlation);
  const effectiveAfter = effectiveCount(after.length, correlation);
  if (Math.min(effectiveBefore, effectiveAfter) < 2) return { problem: 'too-few', has: Math.min(effectiveBefore, effectiveAfter), needs: 2 };
  const part = (values: readonly number[], effective: number): { mean: number; square: number; degrees: number } => {
    // a correlated sample's deviation reads low: s² expects σ²(1 − (n/n_eff − 1)/(n − 1))
    const shrink = 1 - (values.length / effective - 1) / (values.length - 1);
    return { mean: mean(values), square: (variance(values) ?? 0) / Math.max(shrink, 0.2) / effective, degrees: effective - 1 };
  };
  const result = welchOf(part(after, effectiveAfter), part(before, effectiveBefore), confidence);
  return isStatisticsProblem(result) ? result : { ...result, correlation, effectiveBefore, effectiveAfter };
}

/** Lag-1 correlation of several stretches about their own means, corrected for its bias: r + (1 + 4r)/n (Kendall and Stuart). */
export function pooledCorrelation(stretches: readonly (readonly number[])[]): number | StatisticsProblem {
  let above = 0;
  let below = 0;
  let count = 0;
  for (const values of stretches) {
    const single = autocorrelation(values);
    if (isStatisticsProblem(single)) { if (single.problem === 'no-spread') { count += values.length; continue; } return single; }
    const squares = sumOfSquares(values);
    above += single * squares;
    below += squares;
    count += values.length;
  }
  if (!(below > 0)) return { problem: 'no-spread' };
  const raw = above / below;
  return Math.min(0.95, raw + (1 + 4 * raw) * stretches.length / count);
}

/**
 * The contrast without pairing: (T after − T before) − (C after − C before) with the error of the four means from one residual
 * variance. For readings that were not taken at the same times. Needs 2 values in each cell.
 */
export function unpairedContrast(
  cells: { readonly treatmentBefore: readonly number[]; readonly treatmentAfter: readonly number[]; readonly controlBefore: readonly number[]; readonly controlAfter: readonly number[] },
  confidence = 0.95,
): MeanComparison | StatisticsProblem {
  const all = [cells.treatmentAfter, cells.treatmentBefore, cells.controlAfter, cells.controlBefore];
  for (const cell of all) { const wrong = checkSample(cell, 2); if (wrong) return wrong; }
  const degreesOfFreedom = all.reduce((sum, cell) => sum + cell.length - 1, 0);
  const square = all.reduce((sum, cell) => sum + sumOfSquares(cell), 0) / degreesOfFreedom;
  if (!(square > 0)) return { problem: 'no-spread' };
  const standardError = Math.sqrt(square * all.reduce((sum, cell) => sum + 1 / cell.length, 0));
  const difference = mean(cells.treatmentAfter) - mean(cells.treatmentBefore) - (mean(cells.controlAfter) - mean(cells.controlBefore));
  const t = difference / standardError;
  const half = studentQuantile(0.5 + confidence / 2, degreesOfFreedom) * standardError;
  const interval: Interval = { low: difference - half, high: difference + half };
  return { difference, standardError, degreesOfFreedom, t, p: studentTwoSided(t, degreesOfFreedom), interval };
}
