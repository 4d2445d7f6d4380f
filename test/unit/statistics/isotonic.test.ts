// Levels that may only rise, against the max-min formula (Robertson, Wright and Dykstra 1988, Order Restricted Statistical Inference).
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { risingLevels } from '../../../src/statistics/isotonic.ts';
import { close } from './near.ts';

const spread = (values: readonly number[], weights: readonly number[]): number[] => risingLevels(values, weights).flatMap((level) => Array.from({ length: level.to - level.from }, () => level.value));

/** The greatest over all starts of the least over all ends of the mean between. */
function maxMin(values: readonly number[], weights: readonly number[]): number[] {
  const mean = (from: number, to: number): number => {
    let sum = 0;
    let weight = 0;
    for (let index = from; index <= to; index += 1) { sum += (values[index] as number) * (weights[index] as number); weight += weights[index] as number; }
    return sum / weight;
  };
  return values.map((_, place) => Math.max(...values.slice(0, place + 1).map((__, from) => Math.min(...values.slice(place).map((___, past) => mean(from, place + past))))));
}

suite('values that may only rise', () => {
  test('a fall is pooled to its mean, weighted', () => {
    assert.deepEqual(spread([1, 3, 2, 4], [1, 1, 1, 1]), [1, 2.5, 2.5, 4]);
    assert.deepEqual(spread([1, 4, 1], [1, 1, 2]), [1, 2, 2]);
    assert.deepEqual(spread([3, 2, 1], [1, 1, 1]), [2, 2, 2]);
    assert.deepEqual(risingLevels([], []), []);
  });
  test('equal to the max-min formula for any values and weights', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: 1, max: 5 })), { minLength: 1, maxLength: 12 }), (pairs) => {
      const values = pairs.map(([value]) => value);
      const weights = pairs.map(([, weight]) => weight);
      const found = spread(values, weights);
      maxMin(values, weights).forEach((each, place) => close(found[place] as number, each, 1e-12));
    }));
  });
});
