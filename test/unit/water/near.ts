// Shared checks of the water tests: a value near a published one, a typed problem.
import assert from 'node:assert/strict';
import { isWaterProblem, type Outcome, type WaterProblem } from '../../../src/water/outcome.ts';

export function valueOf(result: Outcome | WaterProblem): number {
  assert.ok(!isWaterProblem(result), `no value: ${JSON.stringify(result)}`);
  return result.value;
}

export function near(result: Outcome | WaterProblem | number, expected: number, tolerance: number, what = ''): void {
  const value = typeof result === 'number' ? result : valueOf(result);
  assert.ok(Math.abs(value - expected) <= tolerance, `${what} ${value} should be ${expected} within ${tolerance}`);
}

export function nearPart(result: Outcome | WaterProblem | number, expected: number, part: number, what = ''): void {
  near(result, expected, part * Math.abs(expected), what);
}

export function refused(result: object, problem: WaterProblem['problem'], input?: string): void {
  assert.ok(isWaterProblem(result), `should be refused: ${JSON.stringify(result)}`);
  assert.equal(result.problem, problem);
  if (input !== undefined && result.problem === 'outside-range') assert.equal(result.input, input);
}
