// Exact permutation tests for few replicate tanks, with the smallest p that the design can reach.
import { mean } from './describe.ts';
import { checkSample, type StatisticsProblem } from './outcome.ts';

export interface ExactTest {
  /** Observed difference of means, a − b, or mean difference of the pairs. */
  readonly difference: number;
  /** Two-sided: arrangements at least as far from 0, over all. */
  readonly p: number;
  readonly arrangements: number;
  /** The least two-sided p that this number of tanks can give. */
  readonly smallestP: number;
}

/** More arrangements than this are not counted out. */
const mostArrangements = 1_000_000;

/** Number of ways to pick k of n. */
function combinations(n: number, k: number): number {
  let result = 1;
  for (let index = 1; index <= Math.min(k, n - k); index += 1) result = Math.round(result * (n - index + 1) / index);
  return result;
}

/** The least two-sided p of an exact comparison of groups of m and n tanks: 2 of C(m + n, m) splits; 1 of them where m ≠ n allows no mirror. */
export function smallestSplitP(m: number, n: number): number {
  const splits = combinations(m + n, m);
  return Math.min(1, (m === n ? 2 : 1) / splits);
}

/** The least two-sided p of an exact comparison of n pairs: 2 of 2^n sign patterns. */
export function smallestPairP(n: number): number {
  return Math.min(1, 2 / 2 ** n);
}

/**
 * Two groups: every split of all values into groups of these sizes; two-sided p is the part of splits whose difference of
 * means is at least as far from 0 as the observed one. Source: Fisher (1935), Pitman (1937). Needs one value in each group and
 * three in all.
 */
export function exactSplit(a: readonly number[], b: readonly number[]): ExactTest | StatisticsProblem {
  const wrong = checkSample(a, 1) ?? checkSample(b, 1) ?? checkSample([...a, ...b], 3);
  if (wrong) return wrong;
  const all = [...a, ...b];
  const arrangements = combinations(all.length, a.length);
  if (arrangements > mostArrangements) return { problem: 'too-many-arrangements', has: arrangements, needs: mostArrangements };
  const centre = mean(all);
  const values = all.map((each) => each - centre);
  // with all values centred the difference of means is sum(a) · (1/m + 1/n)
  const observed = Math.abs(values.slice(0, a.length).reduce((sum, each) => sum + each, 0));
  const slack = 1e-12 * values.reduce((sum, each) => sum + Math.abs(each), 0);
  let asFar = 0;
  const choose = (from: number, left: number, sum: number): void => {
    if (left === 0) { if (Math.abs(sum) >= observed - slack) asFar += 1; return; }
    for (let index = from; index <= values.length - left; index += 1) choose(index + 1, left - 1, sum + (values[index] as number));
  };
  choose(0, a.length, 0);
  return { difference: mean(a) - mean(b), p: asFar / arrangements, arrangements, smallestP: smallestSplitP(a.length, b.length) };
}

/** Pairs: every pattern of signs of the differences. Source: Fisher (1935). Needs two pairs; 19 at most are counted out. */
export function exactSigns(differences: readonly number[]): ExactTest | StatisticsProblem {
  const wrong = checkSample(differences, 2);
  if (wrong) return wrong;
  const count = differences.length;
  const arrangements = 2 ** count;
  if (arrangements > mostArrangements) return { problem: 'too-many-arrangements', has: arrangements, needs: mostArrangements };
  const observed = Math.abs(differences.reduce((sum, each) => sum + each, 0));
  const slack = 1e-12 * differences.reduce((sum, each) => sum + Math.abs(each), 0);
  let asFar = 0;
  for (let pattern = 0; pattern < arrangements; pattern += 1) {
    let sum = 0;
    for (let index = 0; index < count; index += 1) sum += ((pattern >> index) & 1) === 1 ? (differences[index] as number) : -(differences[index] as number);
    if (Math.abs(sum) >= observed - slack) asFar += 1;
  }
  return { difference: mean(differences), p: asFar / arrangements, arrangements, smallestP: smallestPairP(count) };
}
