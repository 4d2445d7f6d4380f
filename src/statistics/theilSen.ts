// The robust slope: the median of all slopes between two points.
import { median } from './describe.ts';
import { normalQuantile } from './distributions.ts';
import { checkSample, type Interval, type StatisticsProblem } from './outcome.ts';

export interface RobustLine {
  readonly slope: number;
  /** Median of y − slope · x. */
  readonly intercept: number;
  /** By Kendall's statistic, normal approximation; null for too few pairs. */
  readonly interval: Interval | null;
  readonly pairs: number;
}

/**
 * Median of the slopes of all pairs of points with different x; intercept the median of y − slope · x. Source: Theil
 * (1950); Sen (1968), Journal of the American Statistical Association 63, 1379–1389 (interval). Needs 3 points, two different x,
 * and at most 2000 points.
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence = 0.95): RobustLine | StatisticsProblem {
  if (x.length !== y.length) return { problem: 'lengths-differ' };
  const wrong = checkSample(x, 3) ?? checkSample(y, 3);
  if (wrong) return wrong;
  if (x.length > 2000) return { problem: 'too-many-arrangements', has: x.length, needs: 2000 };
  const slopes: number[] = [];
  for (let i = 0; i < x.length; i += 1) {
    for (let j = i + 1; j < x.length; j += 1) {
      const dx = (x[j] as number) - (x[i] as number);
      if (dx !== 0) slopes.push(((y[j] as number) - (y[i] as number)) / dx);
    }
  }
  slopes.sort((a, b) => a - b);
  const slope = median(slopes);
  if (slope === null) return { problem: 'no-spread' };
  const intercept = median(y.map((each, index) => each - slope * (x[index] as number))) ?? 0;
  const count = x.length;
  const reach = normalQuantile(0.5 + confidence / 2) * Math.sqrt(count * (count - 1) * (2 * count + 5) / 18);
  const below = Math.floor((slopes.length - reach) / 2);
  const above = Math.ceil((slopes.length + reach) / 2) + 1;
  const interval = below >= 1 && above <= slopes.length ? { low: slopes[below - 1] as number, high: slopes[above - 1] as number } : null;
  return { slope, intercept, interval, pairs: slopes.length };
}
