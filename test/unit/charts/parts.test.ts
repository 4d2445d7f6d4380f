// The parts that a chart is put together from: thinning, ticks, labels kept apart, joined and unjoined points, dark hours.
import assert from 'node:assert/strict';
import { thin } from '../../../src/charts/downsample.ts';
import { cutText, keepApart, rowsOf, textWidth, wrapText } from '../../../src/charts/layout.ts';
import { pointsOf } from '../../../src/charts/points.ts';
import { bandsOf } from '../../../src/charts/shading.ts';
import { timeTicks, valueAxis } from '../../../src/charts/ticks.ts';
import { day, hour, minute } from '../../../src/time/instant.ts';
import { nightNote, nightProtocol, nightReadings } from './handmade.ts';

suite('charts: thinning', () => {
  const many = Array.from({ length: 20_000 }, (_, index) => ({ time: index * 1000, value: Math.sin(index / 900), keep: false, segment: 0 }));

  test('a short series stays whole', () => assert.equal(thin(many.slice(0, 900), 1000).length, 900));

  test('the lowest and highest reading of the run survive', () => {
    const spiked = many.map((point, index) => (index === 7777 ? { ...point, value: 99 } : index === 12_345 ? { ...point, value: -99 } : point));
    const kept = thin(spiked, 800);
    assert.ok(kept.length <= 804, String(kept.length));
    assert.ok(kept.some((point) => point.value === 99) && kept.some((point) => point.value === -99));
    assert.deepEqual([kept[0], kept.at(-1)], [spiked[0], spiked.at(-1)]);
  });

  test('flagged points are never thinned out, and order stays', () => {
    const flagged = many.map((point, index) => (index % 1000 === 500 ? { ...point, keep: true } : point));
    const kept = thin(flagged, 400);
    assert.equal(kept.filter((point) => point.keep).length, 20);
    assert.ok(kept.every((point, index) => index === 0 || point.time > kept[index - 1]!.time));
  });
});

suite('charts: ticks', () => {
  test('a value axis has round ticks inside a slightly wider range', () => {
    assert.deepEqual(valueAxis(4.8, 8.31, 6).ticks, [5, 6, 7, 8]);
    const axis = valueAxis(24.1, 24.9, 4);
    assert.deepEqual(axis.ticks, [24.2, 24.4, 24.6, 24.8]);
    assert.ok(axis.low < 24.1 && axis.high > 24.9);
    assert.equal(axis.decimals, 1);
  });

  test('equal readings still get an axis of some height', () => {
    for (const value of [0, 7, -3.5, 1e-7, 1e9]) {
      const axis = valueAxis(value, value, 5);
      assert.ok(axis.high > axis.low && axis.ticks.length >= 1 && axis.ticks.length <= 41, String(value));
      assert.ok(axis.ticks.every(Number.isFinite));
    }
  });

  test('time ticks fall on round clock times', () => {
    assert.deepEqual(timeTicks(20 * hour, 34 * hour, 8), [20, 22, 24, 26, 28, 30, 32, 34].map((each) => each * hour));
    assert.deepEqual(timeTicks(10 * minute, 62 * minute, 5), [15, 30, 45, 60].map((each) => each * minute));
    assert.ok(timeTicks(0, 400 * day, 6).length <= 7);
  });
});

suite('charts: labels', () => {
  test('overlapping labels move apart and stay inside', () => {
    const middles = keepApart([{ middle: 100, size: 16 }, { middle: 104, size: 16 }, { middle: 99, size: 16 }], 0, 200);
    const sorted = [...middles].sort((a, b) => a - b);
    assert.ok(sorted[1]! - sorted[0]! >= 15.8 && sorted[2]! - sorted[1]! >= 15.8, middles.join());
    assert.ok(middles[2]! < middles[0]! && middles[0]! < middles[1]!);
    assert.deepEqual(keepApart([{ middle: 500, size: 20 }], 0, 100), [90]);
  });

  test('event labels take the lowest free row', () => {
    assert.deepEqual(rowsOf([{ at: 0, width: 50 }, { at: 20, width: 50 }, { at: 60, width: 30 }, { at: 190, width: 40 }], 200, 4),
      [{ row: 0, align: 'left' }, { row: 1, align: 'left' }, { row: 0, align: 'left' }, { row: 0, align: 'right' }]);
  });

  test('long text is cut with an ellipsis or wrapped', () => {
    assert.equal(cutText('short', 11, 200), 'short');
    const cut = cutText('a very long name of a tank with plants', 11, 90);
    assert.ok(cut.endsWith('…') && textWidth(cut, 11) <= 90);
    assert.equal(wrapText('floating-mat tank of the north window', 11, 120, 2).length, 2);
  });
});

suite('charts: points', () => {
  const note = nightNote();
  const window: [number, number] = [Date.parse('2026-03-14T19:00Z'), Date.parse('2026-03-15T09:00Z')];

  test('a left-out reading stands alone and breaks the line', () => {
    const points = pointsOf(note.dataset.series.get('mat.DO')!, note.protocol!, ...window);
    const out = points.filter((point) => point.kind === 'left-out');
    assert.deepEqual(out.map((point) => [point.value, point.segment]), [[4.1, -1]]);
    assert.deepEqual([...new Set(points.filter((point) => point.segment >= 0).map((point) => point.segment))], [0, 1]);
  });

  test('a missing reading breaks the line; a doubtful one does not', () => {
    const points = pointsOf(note.dataset.series.get('open.DO')!, note.protocol!, ...window);
    assert.equal(points.length, 14);
    assert.deepEqual([...new Set(points.map((point) => point.segment))], [0, 1]);
    assert.deepEqual(points.filter((point) => point.kind === 'doubtful').map((point) => [point.value, point.segment]), [[8.15, 1]]);
  });

  test('hours without a row are not bridged', () => {
    const sparse = nightNote('', 'time mat.DO\n20:00 8.2\n21:00 8.1\n02:00 6.4\n03:00 6.0\n');
    const points = pointsOf(sparse.dataset.series.get('mat.DO')!, sparse.protocol!, ...window);
    assert.deepEqual(points.map((point) => point.segment), [0, 0, 1, 1]);
  });

  test('values outside the instrument\'s range stand alone at the limit', () => {
    const censored = nightNote('', 'time mat.DO\n20:00 8.2\n21:00 <0.05\n22:00 >14\n23:00 8.0\n');
    const points = pointsOf(censored.dataset.series.get('mat.DO')!, censored.protocol!, ...window);
    assert.deepEqual(points.map((point) => [point.kind, point.value, point.segment >= 0]), [['plain', 8.2, true], ['below', 0.05, false], ['above', 14, false], ['plain', 8, true]]);
  });
});

suite('charts: dark hours', () => {
  const at = (text: string): number => Date.parse(`${text}+01:00`);
  const from = at('2026-03-14T20:00');
  const to = at('2026-03-15T10:00');

  test('lamps off at night is dark, in civil twilight lighter, in daylight not shaded', () => {
    const { protocol } = nightNote();
    const bands = bandsOf(protocol!, from, to);
    assert.deepEqual(bands.map((band) => band.kind), ['dark', 'twilight']);
    const sun = protocol!.sun.find((each) => each.date === '2026-03-15')!;
    assert.deepEqual([bands[0]!.from, bands[0]!.to, bands[1]!.to], [at('2026-03-14T22:00'), sun.dawn, sun.sunrise]);
  });

  test('where no daylight reaches the tanks the lamps alone decide', () => {
    const { protocol } = nightNote('', nightReadings, nightProtocol.replace('  time zone:', '  daylight: no\n  time zone:'));
    assert.deepEqual(bandsOf(protocol!, from, to), [{ from: at('2026-03-14T22:00'), to: at('2026-03-15T09:30'), kind: 'dark' }]);
  });

  test('a window inside the dark is shaded from end to end', () => {
    const { protocol } = nightNote();
    assert.deepEqual(bandsOf(protocol!, at('2026-03-15T01:00'), at('2026-03-15T03:00')), [{ from: at('2026-03-15T01:00'), to: at('2026-03-15T03:00'), kind: 'dark' }]);
  });
});
