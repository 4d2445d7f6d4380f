// Shared checks of the statistics tests: relative agreement and digits of agreement with a certified value.
import assert from 'node:assert/strict';
import { isStatisticsProblem, type StatisticsProblem } from '../../../src/statistics/outcome.ts';

export function got<T>(result: T | StatisticsProblem): T {
  assert.ok(!isStatisticsProblem(result), `no answer: ${JSON.stringify(result)}`);
  return result as T;
}

export function close(actual: number, expected: number, part = 1e-10, what = ''): void {
  assert.ok(Math.abs(actual - expected) <= part * Math.abs(expected) || actual === expected, `${what} ${actual} should be ${expected} to ${part}`);
}

/** Digits of agreement, −log10 of the relative difference, at most 15 (NIST's log relative error). */
export function digits(actual: number, certified: number): number {
  const part = Math.abs(actual - certified) / Math.abs(certified);
  return part === 0 ? 15 : Math.min(15, -Math.log10(part));
}

export function refused(result: unknown, problem: StatisticsProblem['problem']): void {
  assert.ok(isStatisticsProblem(result), `should be refused: ${JSON.stringify(result)}`);
  assert.equal(result.problem, problem);
}
