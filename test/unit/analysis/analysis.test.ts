import assert from 'node:assert/strict';
import fc from 'fast-check';
import { hoursBeyond } from '../../../src/analysis/crossings.ts';
import { leastSquaresLine } from '../../../src/analysis/line.ts';
import { anyBetween, areNeighbours, between, intervalAt, medianStep } from '../../../src/analysis/points.ts';
import { settledAt, turningPoint } from '../../../src/analysis/settling.ts';
import { neighbouringStretches, stretchesOver } from '../../../src/analysis/steepest.ts';
import { balanceHours } from '../../../src/analysis/balance.ts';
import { fitNight, hoursToLevel, nightCurve, nightRegression } from '../../../src/analysis/nightFit.ts';
import { hour, minute } from '../../../src/time/instant.ts';

const at = (...values: number[]): { time: number; value: number }[] => values.map((value, index) => ({ time: index * 30 * minute, value }));

suite('analysis', () => {
  test('points between two times, both included', () => {
    assert.deepEqual(between(at(1, 2, 3, 4), 30 * minute, 60 * minute).map((point) => point.value), [2, 3]);
    assert.deepEqual(between(at(1, 2), 31 * minute, 40 * minute), []);
    assert.equal(medianStep(at(1, 2, 3)), 30 * minute);
    assert.equal(medianStep(at(1)), null);
  });

  test('the planned interval counts before the one seen', () => {
    const schedule = { sampling: [{ every: hour, from: 0, to: 10 * hour }] } as unknown as Parameters<typeof intervalAt>[0];
    assert.equal(intervalAt(schedule, at(1, 2, 3), 0), hour);
    assert.equal(intervalAt(schedule, at(1, 2, 3), 11 * hour), 30 * minute);
    assert.equal(intervalAt(null, at(1, 2, 3), 0), 30 * minute);
  });

  test('neighbours', () => {
    assert.ok(areNeighbours(0, 30, [], 30));
    assert.ok(areNeighbours(0, 45, [], 30));
    assert.ok(!areNeighbours(0, 46, [], 30));
    assert.ok(!areNeighbours(0, 30, [15], 30));
    assert.ok(areNeighbours(0, 30, [0, 30], 30));
    assert.ok(!anyBetween([], 0, 1));
  });

  test('hours below a level by straight lines; a value at the level is not below', () => {
    assert.equal(hoursBeyond(at(4, 2, 4), 3, 'below').hours, 0.5);
    assert.equal(hoursBeyond(at(4, 2, 4), 3, 'above').hours, 0.5);
    assert.equal(hoursBeyond(at(3, 3), 3, 'below').hours, 0);
    assert.equal(hoursBeyond(at(2, 2), 3, 'below').hours, 0.5);
    fc.assert(fc.property(fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 2, maxLength: 20 }), fc.double({ min: -10, max: 10, noNaN: true }), (values, level) => {
      const points = at(...values);
      const below = hoursBeyond(points, level, 'below').hours;
      const above = hoursBeyond(points, level, 'above').hours;
      assert.ok(below >= 0 && above >= 0 && below + above <= (values.length - 1) / 2 + 1e-9);
      if (values.every((value) => value !== level)) assert.ok(Math.abs(below + above - (values.length - 1) / 2) < 1e-9);
    }));
  });

  test('steepest stretches', () => {
    const stretches = neighbouringStretches(at(5, 4, 2, 2), [], () => 30 * minute);
    assert.deepEqual(stretches.map((each) => each.rate), [-2, -4, 0]);
    assert.deepEqual(neighbouringStretches(at(5, 4, 2, 2), [45 * minute], () => 30 * minute).map((each) => each.rate), [-2, 0]);
    assert.deepEqual(stretchesOver(at(5, 4, 2, 2), [], () => 30 * minute, hour, minute).map((each) => each.rate), [-3, -2]);
    assert.deepEqual(stretchesOver(at(5, 4, 2, 2), [45 * minute], () => 30 * minute, hour, minute), []);
  });

  test('settled: the first reading that the following ones keep to, three at least, and the data must reach that far', () => {
    assert.equal(settledAt(at(5, 4, 3, 3.04, 3.01, 3), 0.05, hour)?.time, 60 * minute);
    assert.equal(settledAt(at(5, 4, 3, 3.04), 0.05, hour), null);
    assert.equal(settledAt(at(3, 3), 0.05, 30 * minute), null, 'two readings only');
    assert.equal(settledAt(at(3, 3.1, 3.1, 3.1), 0.1, hour)?.time, 0, 'the limit itself is within');
    assert.equal(settledAt([], 1, hour), null);
  });

  test('turning point: lowest of all, the first of equals, with a later rise that can be told', () => {
    assert.equal(turningPoint(at(5, 3, 3, 4), () => 0.5)?.time, 30 * minute);
    assert.equal(turningPoint(at(5, 3, 3.4), () => 0.5), null);
    assert.equal(turningPoint(at(5, 4, 3), () => 0), null);
    assert.equal(turningPoint([], () => 0), null);
  });

  // Cs 8.2635, k 0.15 /h, R 0.6 mg/L/h, C0 8: closed form C(1) 7.479535, C(2) 7.031567, C(4) 6.314135, C(10) 5.097226 (dC/dt = k(Cs − C) − R).
  const dark = Array.from({ length: 21 }, (_, index) => ({ hours: index / 2, oxygen: 0, solubility: 8.2635 }));
  const decay = nightCurve(dark, 8, 0.15, 0.6);
  const rows = dark.map((row, index) => ({ ...row, oxygen: decay[index]! }));

  test('a dark night: the closed form, and the fit that finds its k and R again', () => {
    for (const [hours, expected] of [[1, 7.479535], [2, 7.031567], [4, 6.314135], [6, 5.782648], [8, 5.388912], [10, 5.097226]] as const) {
      assert.ok(Math.abs(decay[hours * 2]! - expected) < 5e-7, `${hours} h: ${decay[hours * 2]}`);
    }
    const fit = fitNight(rows);
    assert.ok('exchange' in fit && Math.abs(fit.exchange - 0.15) < 1e-9 && Math.abs(fit.respiration - 0.6) < 1e-9 && Math.abs(fit.equilibrium - 4.2635) < 1e-7);
    assert.ok(fit.identified);
    // t to 5 mg/L: ln((8 − 4.2635)/(5 − 4.2635))/0.15
    assert.ok(Math.abs(hoursToLevel(fit, 5)! - Math.log(3.7365 / 0.7365) / 0.15) < 1e-6);
    assert.equal(hoursToLevel(fit, 4), null);
  });

  test('night-time regression on interval means has the known bias: k (2/Δ) tanh(kΔ/2)', () => {
    const found = nightRegression(rows)!;
    assert.ok(Math.abs(found.exchange - 0.14992973) < 5e-9 && Math.abs(found.respiration - 0.59971891) < 5e-9);
  });

  test('a solubility that changes during the night is followed row by row', () => {
    const warming = dark.map((row, index) => ({ ...row, solubility: 8.2635 - 0.02 * index }));
    const values = nightCurve(warming, 8, 0.15, 0.6);
    // the same by a thousand small Euler steps an hour
    let oxygen = 8;
    for (let step = 0; step < 10_000; step += 1) oxygen += (0.15 * (8.2635 - 0.04 * (step + 0.5) / 1000 - oxygen) - 0.6) / 1000;
    assert.ok(Math.abs(values[20]! - oxygen) < 5e-4, `${values[20]} ${oxygen}`);
    const fit = fitNight(warming.map((row, index) => ({ ...row, oxygen: values[index]! })));
    assert.ok('exchange' in fit && Math.abs(fit.exchange - 0.15) < 1e-8);
  });

  test('a straight decline tells k and R not apart', () => {
    const straight = rows.map((row, index) => ({ ...row, oxygen: 8 - 0.2 * index + (index % 2 ? 0.01 : -0.01) }));
    const fit = fitNight(straight);
    assert.ok('problem' in fit || !fit.identified);
    assert.ok('problem' in fitNight(rows.slice(0, 4)));
  });

  test('the balance point: production that sets in after the dark', () => {
    const lit = [0, 1, 2, 3, 4].map((index) => ({ hours: index, oxygen: [5, 4.8, 4.75, 4.9, 5.3][index]!, solubility: 8 }));
    // net change less exchange at the midpoints, k = 0: −0.2, −0.05, 0.15: crosses at 1.5 + 0.25
    assert.ok(Math.abs(balanceHours(lit, 0)! - 1.75) < 1e-9);
    assert.equal(balanceHours(lit.slice(0, 3), 0), null);
  });

  test('least squares line: NIST StRD Norris, certified slope and data', () => {
    // https://www.itl.nist.gov/div898/strd/lls/data/Norris.shtml; x in hours here, certified B1 = 1.00211681802045.
    const data: [number, number][] = [[0.1, 0.2], [338.8, 337.4], [118.1, 118.2], [888.0, 884.6], [9.2, 10.1], [228.1, 226.5], [668.5, 666.3], [998.5, 996.3], [449.1, 448.6],
      [778.9, 777.0], [559.2, 558.2], [0.3, 0.4], [0.1, 0.6], [778.1, 775.5], [668.8, 666.9], [339.3, 338.0], [448.9, 447.5], [10.8, 11.6], [557.7, 556.0], [228.3, 228.1],
      [998.0, 995.8], [888.8, 887.6], [119.6, 120.2], [0.3, 0.3], [0.6, 0.3], [557.6, 556.8], [339.3, 339.1], [888.0, 887.2], [998.5, 999.0], [778.9, 779.0], [10.2, 11.1],
      [117.6, 118.3], [228.9, 229.2], [668.4, 669.1], [449.2, 448.9], [0.2, 0.5]];
    const line = leastSquaresLine(data.map(([y, x]) => ({ time: x * hour, value: y })));
    assert.ok(line && Math.abs(line.slope / 1.00211681802045 - 1) < 1e-10, String(line?.slope));
    assert.equal(leastSquaresLine(at(1)), null);
    assert.equal(leastSquaresLine([{ time: 5, value: 1 }, { time: 5, value: 2 }]), null);
  });
});
