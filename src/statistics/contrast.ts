// The before/after by treatment/control contrast, paired in time, with an interval that respects serial correlation.
import { mean, sumOfSquares } from './describe.ts';
import { studentQuantile, studentTwoSided } from './distributions.ts';
import { checkSample, isStatisticsProblem, type Interval, type StatisticsProblem } from './outcome.ts';
import { serialEstimate } from './serialModel.ts';
import { pooled, welch, type MeanComparison } from './studentTests.ts';

export interface SerialContrast extends MeanComparison {
  /** Most credible lag-1 correlation of the differences' noise. */
  readonly correlation: number;
  /** A correlation above 0.9 cannot be ruled out: the interval then covers less often than it says. */
  readonly nearlyRandomWalk: boolean;
}

/**
 * Contrast of paired differences D = treatment − control: mean(D after) − mean(D before), as if the readings were independent.
 * Source: Stewart-Oaten, Murdoch and Parker (1986), Ecology 67, 929–940.
 */
export function pairedContrast(before: readonly number[], after: readonly number[], variances: 'pooled' | 'separate', confidence = 0.95): MeanComparison | StatisticsProblem {
  return variances === 'pooled' ? pooled(after, before, confidence) : welch(after, before, confidence);
}

/**
 * The same contrast, mean(D after) − mean(D before), with an interval that respects the readings' correlation in time: the
 * differences in order of time are one series with a step, its noise autoregressive (see `serialEstimate`). `gaps` are the
 * distances of each reading to the one before in sampling intervals, before and after joined; all 1 where not given.
 * Needs 3 readings in each period; otherwise `too-few`.
 */
export function serialContrast(
  before: readonly number[], after: readonly number[], options: { readonly gaps?: readonly number[]; readonly confidence?: number } = {},
): SerialContrast | StatisticsProblem {
  const wrong = checkSample(before, 3) ?? checkSample(after, 3);
  if (wrong) return wrong;
  const rows = [...before.map(() => [1, 0]), ...after.map(() => [1, 1])];
  const found = serialEstimate(rows, [...before, ...after], 1, options);
  if (isStatisticsProblem(found)) return found;
  const { estimate, standardError, interval, p, degreesOfFreedom, correlation, nearlyRandomWalk } = found;
  return { difference: estimate, standardError, degreesOfFreedom, t: estimate / standardError, p, interval, correlation, nearlyRandomWalk };
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
