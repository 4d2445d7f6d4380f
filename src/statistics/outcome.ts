// What keeps a statistic from having an answer, and the shape of an interval.

export interface Interval { readonly low: number; readonly high: number }

/** Why there is no answer. `has` and `needs` count values where counting is the matter. */
export interface StatisticsProblem {
  readonly problem:
    | 'too-few' | 'no-spread' | 'not-finite' | 'lengths-differ' | 'too-many-arrangements' | 'not-converged' | 'not-identifiable' | 'unbounded';
  readonly has?: number;
  readonly needs?: number;
}

export function isStatisticsProblem(result: unknown): result is StatisticsProblem {
  return typeof result === 'object' && result !== null && 'problem' in result;
}

/** The first thing wrong with samples that need at least so many finite values, or null. */
export function checkSample(values: readonly number[], needs: number): StatisticsProblem | null {
  if (values.length < needs) return { problem: 'too-few', has: values.length, needs };
  return values.every(Number.isFinite) ? null : { problem: 'not-finite' };
}
