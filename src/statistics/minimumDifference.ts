// The smallest difference that a planned comparison can be expected to find.
import { noncentralStudentProbability, studentQuantile } from './distributions.ts';
import type { StatisticsProblem } from './outcome.ts';

export interface PlannedComparison {
  /** Values (tanks or pairs) in each group. */
  readonly count: number;
  /** Standard deviation of a value, or of a pair's difference. */
  readonly deviation: number;
  readonly kind: 'paired' | 'two-groups';
  /** Two-sided; 0.05 unless said. */
  readonly level?: number;
  /** 0.8 unless said. */
  readonly power?: number;
}

function parts(plan: PlannedComparison): { degrees: number; scale: number; level: number; power: number } | StatisticsProblem {
  const { count, deviation, kind, level = 0.05, power = 0.8 } = plan;
  if (!(count >= 2)) return { problem: 'too-few', has: count, needs: 2 };
  if (!(deviation > 0) || !Number.isFinite(deviation)) return { problem: 'no-spread' };
  if (!(level > 0 && level < 1 && power > level / 2 && power < 1)) return { problem: 'not-finite' };
  const samples = kind === 'paired' ? 1 : 2;
  return { degrees: samples * (count - 1), scale: deviation * Math.sqrt(samples / count), level, power };
}

/**
 * Smallest true difference found with the wanted power by a two-sided t test, exactly, by the noncentral t distribution (the far
 * tail left out, as is usual). Needs two values a group.
 */
export function minimumDifference(plan: PlannedComparison): number | StatisticsProblem {
  const given = parts(plan);
  if ('problem' in given) return given;
  const { degrees, scale, level, power } = given;
  const critical = studentQuantile(1 - level / 2, degrees);
  const reached = (shift: number): number => 1 - noncentralStudentProbability(critical, degrees, shift);
  let low = 0;
  let high = 1;
  while (reached(high) < power && high < 1000) high *= 2;
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (reached(middle) < power) low = middle; else high = middle;
  }
  return scale * (low + high) / 2;
}

/** The usual approximation (t(1 − α/2) + t(power)) · s/√n of `minimumDifference`, a little lower for few values. */
export function minimumDifferenceApproximate(plan: PlannedComparison): number | StatisticsProblem {
  const given = parts(plan);
  if ('problem' in given) return given;
  return given.scale * (studentQuantile(1 - given.level / 2, given.degrees) + studentQuantile(given.power, given.degrees));
}
