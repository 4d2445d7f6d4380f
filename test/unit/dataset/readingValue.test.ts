import assert from 'node:assert/strict';
import { buildDataset } from '../../../src/dataset/buildDataset.ts';
import { readingValue } from '../../../src/dataset/readingValue.ts';
import { inWindow, missingInWindow, nearestReading, previousReading, readingAfter, readingAt, readingBefore, seriesFor, seriesOf } from '../../../src/dataset/series.ts';
import { parseUnit } from '../../../src/quantities/units.ts';
import { expandedUncertainty, numberValue, standardUncertainty, subtract } from '../../../src/quantities/value.ts';
import type { NumberValue } from '../../../src/quantities/types.ts';
import type { Protocol } from '../../../src/protocol/types.ts';
import { measured, plan, read, start } from '../readings/support.ts';

const near = (actual: number | null, expected: number): void => { assert.ok(actual !== null && Math.abs(actual - expected) < 1e-12, `${actual} is not ${expected}`); };
const placed = (value: string) => ({ value, range: { start: 0, end: 0 } });
function dataset(text: string, protocol: Protocol = plan()) { return buildDataset([read(text, { protocol }).table], protocol).dataset; }
const difference = (a: NumberValue, b: NumberValue): NumberValue => subtract(a, b) as NumberValue;

suite('dataset: one reading with its uncertainty', () => {
  test('accuracy a/√3 and resolution δ/√12 (GUM 4.3.7, F.2.2.1)', () => {
    const value = readingValue(dataset('time mat.DO\n20:00 8.21\n').series.get('mat.DO')!, 0, plan());
    near(value.contributions!.get('instrument:DO')!, 0.1 / Math.sqrt(3));
    near(value.contributions!.get(`resolution:mat.DO@${start}`)!, 0.01 / Math.sqrt(12));
    near(standardUncertainty(value), Math.sqrt(0.01 / 3 + 0.0001 / 12));
    assert.ok(expandedUncertainty(value)! > standardUncertainty(value)!);
  });
  test('repeats: s/√n, the mean counts once (GUM 4.2.3)', () => {
    const series = dataset('time mat.DO\n20:00 6.42/6.45/6.41\n').series.get('mat.DO')!;
    // s of 6.42, 6.45, 6.41 is 0.0208166599946613 (mean 6.42667).
    near(readingValue(series, 0, plan()).contributions!.get(`repeats:mat.DO@${start}`)!, 0.0208166599946613 / Math.sqrt(3));
    near(readingValue(series, 0, plan()).value, (6.42 + 6.45 + 6.41) / 3);
  });
  test('no accuracy stated: unknown, never 0', () => {
    const protocol = plan({ measure: [measured('DO', 'dissolved oxygen', 'mg/L', { resolutionOf: 0.01 })] });
    assert.equal(readingValue(dataset('time mat.DO\n20:00 8.21\n', protocol).series.get('mat.DO')!, 0, protocol).contributions, null);
  });
  test('one instrument in both tanks: its systematic part cancels in the difference', () => {
    const all = dataset('time mat.DO open.DO\n20:00 8.21 8.31\n');
    const gap = difference(readingValue(all.series.get('mat.DO')!, 0, plan()), readingValue(all.series.get('open.DO')!, 0, plan()));
    near(standardUncertainty(gap), 0.01 / Math.sqrt(6));
  });
  test('an instrument of one tank only is its own: nothing cancels between tanks, all within the tank', () => {
    const own = (id: string, tank: string) => measured(id, 'dissolved oxygen', 'mg/L', { accuracyOf: 0.1, in: [placed(tank)] });
    const protocol = plan({ measure: [own('DO@a', 'mat'), own('DO@b', 'open')] });
    const all = dataset('time mat.DO@a open.DO@b\n20:00 8.21 8.31\n20:30 8.20 8.30\n', protocol);
    const [mat, open] = [seriesFor(all, 'mat', 'DO')!, seriesFor(all, 'open', 'DO')!];
    near(standardUncertainty(difference(readingValue(mat, 0, protocol), readingValue(open, 0, protocol))), Math.sqrt(2) * 0.1 / Math.sqrt(3));
    near(standardUncertainty(difference(readingValue(mat, 0, protocol), readingValue(mat, 1, protocol))), 0);
  });
  test('a named instrument without an entry, or a place that the entry does not name, has no stated accuracy', () => {
    const titration = dataset('time mat.DO@titration\n20:00 8.21\n').series.get('mat.DO@titration')!;
    assert.equal(readingValue(titration, 0, plan()).contributions, null);
    const protocol = plan({ measure: [measured('DO', 'dissolved oxygen', 'mg/L', { accuracyOf: 0.1, in: [placed('mat')] })] });
    assert.equal(readingValue(dataset('time open.DO\n20:00 8.21\n', protocol).series.get('open.DO')!, 0, protocol).contributions, null);
  });
  test('accuracy in another unit, or as a percentage of the value', () => {
    const fahrenheit = dataset('time mat.T[degF]\n20:00 77\n').series.get('mat.T')!;
    near(readingValue(fahrenheit, 0, plan()).contributions!.get('instrument:T')!, 0.2 * 1.8 / Math.sqrt(3));
    const protocol = plan({ measure: [measured('DO', 'dissolved oxygen', 'mg/L', { accuracy: numberValue(2, parseUnit('%')!) })] });
    near(readingValue(dataset('time mat.DO\n20:00 8\n', protocol).series.get('mat.DO')!, 0, protocol).contributions!.get('instrument:DO')!, 0.16 / Math.sqrt(3));
  });
});

suite('dataset: questions to a series', () => {
  const series = dataset('time mat.DO\n20:00 8.21\n20:30 -\n21:00 (8.3)\n21:30 8.1?\n22:00 <0.05\n22:30 8.0\n').series.get('mat.DO')!;
  const at = (minutes: number): number => start + minutes * 60_000;
  test('what counts in a window', () => {
    assert.deepEqual(inWindow(series), [0, 3, 5]);
    assert.deepEqual(inWindow(series, { from: at(0), to: at(90) }), [0, 3]);
    assert.deepEqual(inWindow(series, { from: at(0), to: at(90) }, { leftOut: true }), [0, 2, 3]);
    assert.deepEqual(inWindow(series, null, { censored: true }), [0, 3, 4, 5]);
    assert.deepEqual(missingInWindow(series), [1]);
    assert.deepEqual(inWindow(series, { from: at(10), to: at(20) }), []);
  });
  test('at, before, after, nearest', () => {
    assert.equal(readingAt(series, at(0)), 0);
    assert.equal(readingAt(series, at(60)), null);
    assert.equal(readingAt(series, at(1)), null);
    assert.equal(readingBefore(series, at(90)), 0);
    assert.equal(readingAfter(series, at(0)), 3);
    assert.equal(previousReading(series, 5), 3);
    assert.equal(nearestReading(series, at(45)), 0);
    assert.equal(nearestReading(series, at(60), { from: at(50), to: at(200) }), 3);
    assert.equal(nearestReading(series, at(60), { from: at(50), to: at(70) }), null);
  });
  test('which series a name means', () => {
    const all = dataset('time mat.DO@titration open.DO open.DO@titration room.P\n20:00 8 8 8 1000\n');
    assert.equal(seriesFor(all, 'mat', 'DO')!.id, 'mat.DO@titration');
    assert.equal(seriesFor(all, 'open', 'DO')!.id, 'open.DO');
    assert.equal(seriesFor(all, 'room', 'P')!.id, 'room.P');
    assert.equal(seriesFor(all, 'mat', 'T'), null);
    assert.deepEqual(seriesOf(all, 'open', 'DO').map((each) => each.id), ['open.DO', 'open.DO@titration']);
    const two = dataset('time mat.DO@a mat.DO@b\n20:00 8 8\n');
    assert.equal(seriesFor(two, 'mat', 'DO'), null);
  });
});
