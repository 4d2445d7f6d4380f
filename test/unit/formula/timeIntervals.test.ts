// The 95 % interval of instants and lengths of time: where it comes from, how it travels through arithmetic, how it is shown.
import assert from 'node:assert/strict';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { jsonValue, showValue } from '../../../src/formula/show.ts';
import { addedTo, halfWidthOf, isEven, scaledBy, turned } from '../../../src/formula/timeIntervals.ts';
import { expandedUncertainty } from '../../../src/quantities/value.ts';
import { hour, minute } from '../../../src/time/instant.ts';
import { ask, contextFrom } from './support.ts';

const context = contextFrom(exampleNote);
const shown = (formula: string, note = context): string => {
  const { value, problems } = ask(formula, note);
  return value ? showValue(value, note, { withUncertainty: true }) : problems.map((each) => each.code).join(' ');
};
const remarks = (formula: string, note = context): string[] => ask(formula, note).working.flatMap((step) => step.remarks).map((each) => each.code);

suite('formulas: intervals of times', () => {
  test('sides: turned, stretched, added; an end that is missing stays missing', () => {
    const uneven = { earlier: 10, later: 30 };
    const open = { earlier: 10, later: null };
    assert.deepEqual(turned(uneven), { earlier: 30, later: 10 });
    assert.deepEqual(scaledBy(uneven, -2), { earlier: 60, later: 20 });
    assert.deepEqual(addedTo(uneven, { earlier: 1, later: 2 }), { earlier: 11, later: 32 });
    assert.deepEqual(addedTo(uneven, undefined), uneven);
    assert.deepEqual(addedTo(uneven, open), { earlier: 20, later: null });
    assert.deepEqual(turned(open), { earlier: null, later: 10 });
    assert.equal(halfWidthOf(uneven), 30);
    assert.equal(halfWidthOf(open), null);
    assert.deepEqual([isEven(uneven), isEven(open), isEven({ earlier: 28, later: 30 })], [false, false, true]);
  });

  test('a length of time and a time of day carry ± where the accuracy is stated', () => {
    assert.match(shown('time-to(mat.DO, 5.5 mg/L)'), /^8 h 38 min ± 1 h \d+ min$/u);
    assert.match(shown('balance-point(mat.DO)'), /^06:04 ± \d+ min$/u);
    const half = Number(/(\d+) min$/u.exec(shown('balance-point(mat.DO)'))![1]);
    assert.ok(half > 10 && half < 60, String(half));
  });

  test('without a stated accuracy the working gives the scatter alone, and the value no ±', () => {
    const bare = contextFrom(exampleNote.replace(', accuracy: 0.1 mg/L, resolution: 0.01 mg/L', ''));
    assert.equal(shown('time-to(mat.DO, 5.5 mg/L)', bare), '8 h 38 min');
    assert.ok(remarks('time-to(mat.DO, 5.5 mg/L)', bare).includes('scatter-alone') && remarks('balance-point(mat.DO)', bare).includes('scatter-alone'));
    assert.ok(!remarks('time-to(mat.DO, 5.5 mg/L)').includes('scatter-alone'));
  });

  test('a less accurate meter widens it by what its error moves the time', () => {
    const wide = (accuracy: string): number => {
      const value = ask('time-to(mat.DO, 5.5 mg/L)', contextFrom(exampleNote.replace('accuracy: 0.1 mg/L, resolution', `accuracy: ${accuracy}, resolution`))).value;
      assert.ok(value?.type === 'duration');
      return halfWidthOf(value.interval)! / hour;
    };
    // A meter reading u too high moves start, rest and level by u: the time to the level moves as the level does, by u over the
    // net loss there, k(L − rest) = 0.1329 (5.5 − 4.184) = 0.1749 mg/L/h.
    const u = 0.5 / Math.sqrt(3);
    const scatter = wide('0.0001 mg/L');
    const late = Math.log((8.327 - 4.184) / (5.5 - u - 4.184)) / 0.13292 - Math.log((8.327 - 4.184) / (5.5 - 4.184)) / 0.13292;
    assert.ok(Math.abs(wide('0.5 mg/L') - Math.hypot(scatter, 2 * late)) < 0.05, `${wide('0.5 mg/L')} ${Math.hypot(scatter, 2 * late)}`);
  });

  test('arithmetic keeps it', () => {
    const half = /± (.+)$/u.exec(shown('time-to(mat.DO, 5.5 mg/L)'))![1]!;
    assert.equal(shown('light-off + time-to(mat.DO, 5.5 mg/L)'), `06:38 ± ${half}`);
    assert.equal(shown('light-off + time-to(mat.DO, 5.5 mg/L) - light-off'), `8 h 38 min ± ${half}`);
    assert.equal(shown('-time-to(mat.DO, 5.5 mg/L)'), `-8 h 38 min ± ${half}`);
    assert.equal(shown('time-to(mat.DO, 5.5 mg/L) + 22 min'), `9 h ± ${half}`);
    const twice = ask('2 * time-to(mat.DO, 5.5 mg/L)', context).value;
    const once = ask('time-to(mat.DO, 5.5 mg/L)', context).value;
    assert.ok(twice?.type === 'duration' && once?.type === 'duration');
    assert.equal(halfWidthOf(twice.interval), 2 * halfWidthOf(once.interval)!);
    const hours = ask('time-to(mat.DO, 5.5 mg/L) in h', context).value;
    assert.ok(hours?.type === 'number');
    assert.ok(Math.abs(expandedUncertainty(hours)! - halfWidthOf(once.interval)! / hour) < 1e-12);
    // two times of one fit: what they share is not known, so the sides are added
    const gap = ask('time-to(mat.DO, 5.5 mg/L) - time-to(mat.DO, 6 mg/L)', context).value;
    const other = ask('time-to(mat.DO, 6 mg/L)', context).value;
    assert.ok(gap?.type === 'duration' && other?.type === 'duration');
    assert.equal(gap.interval!.later, once.interval!.later! + other.interval!.earlier!);
  });

  test('times that are read or planned have none', () => {
    for (const formula of ['first-below(mat.DO, 6 mg/L)', 'time-of-min(mat.DO)', 'light-off', 'duration(dark)', 'light-on - light-off']) assert.ok(!shown(formula).includes('±'), formula);
  });

  test('an uneven interval is shown by its ends, one without an end by its beginning; machines get half of it in hours', () => {
    const at = Date.UTC(2026, 2, 15, 5, 4);
    assert.equal(showValue({ type: 'instant', instant: at, interval: { earlier: 23 * minute, later: 16 * minute } }, context, { withUncertainty: true }), '06:04 (05:41–06:20)');
    const open = { type: 'duration', duration: 8 * hour, interval: { earlier: hour, later: null } } as const;
    assert.equal(showValue(open, context, { withUncertainty: true }), '8 h (≥ 7 h)');
    assert.equal(showValue(open, context), '8 h');
    assert.deepEqual(jsonValue(open, context), { type: 'duration', value: 8, unit: 'h', uncertainty: null, text: '8 h' });
    assert.deepEqual(jsonValue({ type: 'instant', instant: at, interval: { earlier: 30 * minute, later: 30 * minute } }, context),
      { type: 'instant', value: '2026-03-15T06:04:00+01:00', unit: null, uncertainty: 0.5, text: '06:04' });
  });
});
