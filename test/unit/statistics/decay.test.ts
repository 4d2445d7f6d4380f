// Curves: the decay to an equilibrium, what it refuses, and the simulation of the dossier (section 2).
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { decayAt, decayPrediction, decayReaches, fitDecay } from '../../../src/statistics/decayFit.ts';
import { fitCurve, parameterCorrelation } from '../../../src/statistics/levenbergMarquardt.ts';
import { solveLeastSquares } from '../../../src/statistics/leastSquares.ts';
import { mean, standardDeviation } from '../../../src/statistics/describe.ts';
import { seededRandom } from '../../../src/statistics/random.ts';
import { close, got, refused } from './near.ts';

const hours = Array.from({ length: 21 }, (_, index) => index / 2);

suite('decay to an equilibrium', () => {
  test('dossier: Cs 8.2635, k 0.15, R 0.6, C0 8.0 gives the printed curve', () => {
    const rows: [number, number][] = [[1, 7.479535], [2, 7.031567], [4, 6.314135], [6, 5.782648], [8, 5.388912], [10, 5.097226], [12, 4.881139]];
    for (const [time, expected] of rows) close(decayAt(8.2635 - 0.6 / 0.15, 8, 0.15, time), expected, 1e-6);
  });
  test('when a level is reached, and when never', () => {
    close(decayReaches(4.2635, 8, 0.15, 6.314135) ?? 0, 4, 1e-6);
    assert.equal(decayReaches(4.2635, 8, 0.15, 4), null);
    assert.equal(decayReaches(4.2635, 8, 0.15, 9), null);
    assert.equal(decayReaches(4.2635, 8, 0, 5), null);
    assert.equal(decayReaches(8, 4, 0.2, 6)?.toFixed(6), (Math.log(2) / 0.2).toFixed(6));
  });
  test('noise-free data give the parameters back', function slow() {
    this.timeout(120_000);
    fc.assert(fc.property(fc.double({ min: 0.03, max: 3, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true }), fc.double({ min: 1, max: 5, noNaN: true }), (rate, equilibrium, drop) => {
      const y = hours.map((time) => decayAt(equilibrium, equilibrium + drop, rate, time));
      const decay = got(fitDecay(hours, y));
      close(decay.rate, rate, 1e-7);
      assert.ok(Math.abs(decay.equilibrium - equilibrium) < 1e-6 && Math.abs(decay.initial - equilibrium - drop) < 1e-7);
      assert.ok(decay.identified);
    }), { numRuns: 200 });
  });
  test('2000 nights with noise 0.05: k 0.1503 ± 0.0096, as found by another fitter; correlation of k and R 0.98', function slow() {
    this.timeout(120_000);
    const random = seededRandom('nights');
    const rates: number[] = [];
    const respirations: number[] = [];
    let covered = 0;
    let correlation = 0;
    for (let night = 0; night < 2000; night += 1) {
      const y = hours.map((time) => decayAt(4.2635, 8, 0.15, time) + 0.05 * random.normal());
      const decay = got(fitDecay(hours, y));
      rates.push(decay.rate);
      respirations.push(decay.rate * (8.2635 - decay.equilibrium));
      if (decay.rateInterval.low <= 0.15 && decay.rateInterval.high >= 0.15) covered += 1;
      correlation = parameterCorrelation(decay.fit, 0, 2);
    }
    assert.ok(Math.abs(mean(rates) - 0.1503) < 0.001, `mean rate ${mean(rates)}`);
    assert.ok(Math.abs((standardDeviation(rates) ?? 0) - 0.0096) < 0.0006, `deviation ${standardDeviation(rates)}`);
    assert.ok(Math.abs(mean(respirations) - 0.6007) < 0.002 && Math.abs((standardDeviation(respirations) ?? 0) - 0.0208) < 0.0015);
    assert.ok(covered / 2000 > 0.93 && covered / 2000 < 0.97, `coverage ${covered / 2000}`);
    assert.ok(correlation > 0.9, `correlation of equilibrium and rate ${correlation}`);
    console.log(`      2000 nights: k ${mean(rates).toFixed(4)} ± ${standardDeviation(rates)?.toFixed(4)}, R ${mean(respirations).toFixed(4)} ± ${standardDeviation(respirations)?.toFixed(4)}, coverage ${(100 * covered / 2000).toFixed(1)} %`);
  });
  test('a straight decline is not taken for a decay', () => {
    const random = seededRandom('straight');
    const decay = fitDecay(hours, hours.map((time) => 8 - 0.1 * time + 0.05 * random.normal()));
    assert.ok('problem' in decay || !decay.identified);
  });
  test('prediction inside the night is tight, far outside wide', () => {
    const random = seededRandom('prediction');
    const decay = got(fitDecay(hours, hours.map((time) => decayAt(4.2635, 8, 0.15, time) + 0.03 * random.normal())));
    const inside = decayPrediction(decay, 5);
    const outside = decayPrediction(decay, 20);
    assert.ok(Math.abs(inside.value - decayAt(4.2635, 8, 0.15, 5)) < 0.05 && inside.standardError < 0.03 && outside.standardError > 2 * inside.standardError);
    assert.ok(inside.interval.low < inside.value && inside.interval.high > inside.value);
  });
  test('what has no answer', () => {
    refused(fitDecay([0, 1, 2, 3], [1, 2, 3, 4]), 'too-few');
    refused(fitDecay([1, 1, 1, 1, 1], [1, 2, 3, 4, 5]), 'no-spread');
    refused(fitDecay([0, 1, 2, 3, 4], [1, 2, Number.NaN, 4, 5]), 'not-finite');
    const flat = fitDecay(hours, hours.map(() => 8));
    assert.ok('problem' in flat || !flat.identified, 'a flat line has no rate');
  });
  test('any data give an answer or a problem, never a number that is not finite', function slow() {
    this.timeout(120_000);
    fc.assert(fc.property(fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 5, maxLength: 12 }), (y) => {
      const decay = fitDecay(y.map((_, index) => index), y);
      if ('problem' in decay) return;
      for (const each of [decay.rate, decay.equilibrium, decay.initial, ...decay.fit.standardErrors, decay.fit.residualDeviation]) assert.ok(Number.isFinite(each));
    }), { numRuns: 300 });
  });
});

suite('curves in general', () => {
  test('an unidentifiable pair is refused', () => refused(fitCurve(([a = 0, b = 0], index) => (a + b) * index, [0, 1, 2, 3, 4], [1, 2]), 'not-identifiable'));
  test('a start where the curve has no value is refused', () => refused(fitCurve(([a = 0]) => Math.log(a), [1, 2, 3], [-1]), 'not-finite'));
  test('a linear curve is linear least squares', () => {
    const x = [1, 2, 3, 4, 5];
    const y = [2.1, 3.9, 6.2, 7.8, 10.1];
    const fit = got(fitCurve(([a = 0, b = 0], index) => a + b * (x[index] as number), y, [0, 0]));
    const linear = solveLeastSquares(x.map((each) => [1, each]), y);
    close(fit.parameters[0] as number, linear?.solution[0] as number, 1e-9);
    close(fit.parameters[1] as number, linear?.solution[1] as number, 1e-10);
    close(fit.covariance[0]?.[1] as number, (linear?.unscaledCovariance[0]?.[1] as number) * fit.residualDeviation ** 2, 1e-8);
  });
  test('dependent columns have no solution', () => assert.equal(solveLeastSquares([[1, 2], [2, 4], [3, 6]], [1, 2, 3]), null));
});
