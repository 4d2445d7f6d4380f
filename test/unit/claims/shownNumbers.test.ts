// A number as shown against a value: rounding, signs, conversions, ranges, half-widths, times.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { readMentions } from '../../../src/claims/readMentions.ts';
import { checkShown } from '../../../src/claims/shownNumbers.ts';
import type { FormulaValue } from '../../../src/formula/types.ts';
import { parseUnit } from '../../../src/quantities/units.ts';
import { loadZone, utc } from '../../../src/time/zone.ts';

const unit = (symbol: string) => parseUnit(symbol) ?? assert.fail(`no unit ${symbol}`);
const number = (value: number, symbol: string, halfWidth: number | null = null): FormulaValue =>
  ({ type: 'number', value, unit: unit(symbol), contributions: halfWidth === null ? null : new Map([['instrument:x', halfWidth / 2]]) });
const series = (values: readonly number[], symbol: string): FormulaValue =>
  ({ type: 'series', unit: unit(symbol), points: values.map((value, index) => ({ time: index * 3_600_000, value, flags: 0, contributions: null })) });
const check = (words: string, value: FormulaValue, language = 'en') => checkShown(words, readMentions(words, { language }), value, utc);
const state = (words: string, value: FormulaValue, language = 'en'): string => check(words, value, language).state;
const mended = (words: string, value: FormulaValue): string => {
  let text = words;
  for (const each of [...check(words, value).disagreements].reverse()) text = text.slice(0, each.editStart) + each.newText + text.slice(each.editEnd);
  return text;
};

suite('claims: shown numbers', () => {
  test('half a unit of the last decimal shown', () => {
    assert.equal(state('6.44 mg/L', number(6.444, 'mg/L')), 'holds');
    assert.equal(state('6.44 mg/L', number(6.445, 'mg/L')), 'holds');
    assert.equal(state('6.44 mg/L', number(6.4451, 'mg/L')), 'mismatch');
    assert.equal(state('6.4 mg/L', number(6.44, 'mg/L')), 'holds');
    assert.equal(state('6 mg/L', number(6.44, 'mg/L')), 'holds');
    assert.equal(state('6440 µg/L', number(6.44, 'mg/L')), 'holds');
  });

  test('the first number of a fitting unit is the claimed one', () => {
    assert.equal(state('tank 2 fell 0.24 mg/L', number(0.24, 'mg/L')), 'holds');
    assert.equal(state('within 30 min it fell 0.24 mg/L', number(0.24, 'mg/L')), 'holds');
    assert.equal(check('tank 2 fell 0.24 mg/L', number(0.24, 'mg/L')).claimed?.start, 12);
  });

  test('every further number of that dimension is checked, from the unrounded or the shown value', () => {
    const value = number(25.44, 'degC');
    assert.equal(state('25.4 °C (77.8 °F)', value), 'holds'); // 25.44 °C is 77.792 °F
    assert.equal(state('25.4 °C (77.7 °F)', value), 'holds'); // 25.4 °C is 77.72 °F
    assert.equal(state('25.4 °C (77.6 °F)', value), 'mismatch');
    assert.equal(mended('25.4 °C (77.6 °F)', value), '25.4 °C (77.8 °F)');
  });

  test('a number without a sign does not stand for a negative value', () => {
    assert.equal(state('fell 0.24 mg/L', number(-0.24, 'mg/L')), 'mismatch');
    assert.equal(check('fell 0.24 mg/L', number(-0.24, 'mg/L')).disagreements[0]?.kind, 'sign-lost');
    assert.equal(state('changed by −0.24 mg/L', number(-0.24, 'mg/L')), 'holds');
    assert.equal(state('changed by −0.24 mg/L', number(0.24, 'mg/L')), 'mismatch');
    assert.equal(mended('changed by 0.25 mg/L', number(-0.24, 'mg/L')), 'changed by −0.24 mg/L');
  });

  test('about allows five per cent', () => {
    assert.equal(state('about 10 %', number(10.5, '%')), 'holds');
    assert.equal(state('about 10.0 %', number(10.5, '%')), 'holds');
    assert.equal(state('10.0 %', number(10.5, '%')), 'mismatch');
    assert.equal(state('about 10.0 %', number(10.6, '%')), 'mismatch');
    assert.equal(check('~10 %', number(10.3, '%')).approximate, true);
  });

  test('more than and under need a value on that side', () => {
    assert.equal(state('more than 2 mg/L', number(2.4, 'mg/L')), 'holds');
    assert.equal(state('more than 2 mg/L', number(1.8, 'mg/L')), 'mismatch');
    assert.equal(state('under 3 mg/L', number(2.96, 'mg/L')), 'holds');
  });

  test('± is checked against the half-width', () => {
    assert.equal(state('6.44 ± 0.12 mg/L', number(6.44, 'mg/L', 0.12)), 'holds');
    assert.equal(state('6.44 ± 0.13 mg/L', number(6.44, 'mg/L', 0.12)), 'mismatch');
    assert.equal(mended('6.44 ± 0.13 mg/L', number(6.44, 'mg/L', 0.12)), '6.44 ± 0.12 mg/L');
    assert.equal(check('6.44 ± 0.12 mg/L', number(6.44, 'mg/L')).disagreements[0]?.kind, 'no-half-width');
    assert.equal(state('76.8 ± 0.9 °F', number(24.9, 'degC', 0.5)), 'holds');
  });

  test('a range claims the least and the greatest of a series', () => {
    assert.equal(state('2.5 to 4.9 %/h', series([3, 4.9, 2.5], '%/h')), 'holds');
    assert.equal(state('4.9 to 2.5 %/h', series([3, 4.9, 2.5], '%/h')), 'holds');
    assert.equal(state('2.5–4.8 %/h', series([3, 4.9, 2.5], '%/h')), 'mismatch');
    assert.equal(mended('2.6–4.8 %/h', series([3, 4.9, 2.5], '%/h')), '2.5–4.9 %/h');
    assert.equal(mended('3.0 %/h', series([3, 4.9, 2.5], '%/h')), '2.5 to 4.9 %/h');
    assert.equal(state('2–3', series([2, 3], '1')), 'holds');
    assert.equal(state('3.0, 4.9 and 2.5 %/h', series([3, 4.9, 2.5], '%/h')), 'holds');
    assert.equal(state('3.0, 4.7 and 2.5 %/h', series([3, 4.9, 2.5], '%/h')), 'mismatch');
  });

  test('a range does not stand for one number', () => {
    assert.equal(state('2 to 5 mg/L', number(2.2, 'mg/L')), 'mismatch');
  });

  test('percentages are no percentage points, differences of temperature are written in °C', () => {
    assert.equal(state('12 %', number(12, 'pp')), 'no-number');
    assert.equal(state('12 pp', number(12, 'pp')), 'holds');
    assert.equal(state('12 percentage points', number(12, 'pp')), 'holds');
    assert.equal(state('0.8 °C', number(0.8, 'K')), 'holds');
    assert.equal(state('1.4 °F', number(0.8, 'K')), 'holds');
    assert.equal(state('0.8 hPa', number(0.8, 'K')), 'no-number');
  });

  test('counts, number words and bare numbers', () => {
    assert.equal(state('17 readings', number(17, '1')), 'holds');
    assert.equal(state('two readings', number(2, '1')), 'holds');
    assert.equal(mended('two readings', number(3, '1')), 'three readings');
    assert.equal(state('7.2', number(7.2, 'pH')), 'holds');
    assert.equal(check('8.21', number(8.21, 'mg/L')).unitMissing, true);
  });

  test('lengths of time', () => {
    assert.equal(state('9 h 30 min', number(9.5, 'h')), 'holds');
    assert.equal(state('9 h 30 min', number(9.52, 'h')), 'mismatch');
    assert.equal(mended('9 h 30 min', number(9.75, 'h')), '9 h 45 min');
    assert.equal(state('9.5 hours', { type: 'duration', duration: 9.5 * 3_600_000 }), 'holds');
    assert.equal(state('570 min', { type: 'duration', duration: 9.5 * 3_600_000 }), 'holds');
    assert.equal(state('half an hour', { type: 'duration', duration: 1_800_000 }), 'holds');
    assert.equal(state('half an hour', number(1, 'h')), 'mismatch');
  });

  test('clock times follow the zone, with or without a date', () => {
    const zone = loadZone('Europe/Amsterdam') ?? assert.fail();
    const instant = Date.UTC(2026, 2, 15, 5, 30);
    const at = (words: string): string => checkShown(words, readMentions(words, { language: 'en' }), { type: 'instant', instant }, zone).state;
    assert.equal(at('at 06:30'), 'holds');
    assert.equal(at('at 6:30 am'), 'holds');
    assert.equal(at('at 6:30 pm'), 'mismatch');
    assert.equal(at('at 06:31'), 'mismatch');
    assert.equal(at('about 06:40'), 'holds');
    assert.equal(at('about 06:46'), 'mismatch');
    assert.equal(at('on 15 March at 06:30'), 'holds');
    assert.equal(at('on 14 March at 06:30'), 'mismatch');
    assert.equal(at('2026-03-15 06:30'), 'holds');
    assert.equal(at('2026-03-14 06:30'), 'mismatch');
    assert.equal(at('2026-03-15T05:30Z'), 'holds');
    assert.equal(at('at dawn'), 'no-number');
    const window: FormulaValue = { type: 'window', from: instant - 3_600_000, to: instant };
    const span = (words: string): string => checkShown(words, readMentions(words, { language: 'en' }), window, zone).state;
    assert.equal(span('05:30–06:30'), 'holds');
    assert.equal(span('between 05:30 and 06:30'), 'holds');
    assert.equal(span('05:30 to 07:00'), 'mismatch');
  });

  test('mending gives the new time in the same style', () => {
    const words = 'at 6:45 pm';
    const instant = Date.UTC(2026, 2, 15, 5, 30);
    const [wrong] = checkShown(words, readMentions(words, { language: 'en' }), { type: 'instant', instant }, utc).disagreements;
    assert.equal(wrong?.newText, '5:30 am');
  });

  const units = ['mg/L', 'degC', 'hPa', '%', 'pp', 'mg/L/h', 'K', 'L', 'cm', 'mg/L-N', 'uS/cm', '1'];
  const shown = (value: number, decimals: number, mark: string): string => Math.abs(value).toFixed(decimals).replace('.', mark);

  test('what is formatted with any decimals and unit holds again, in both decimal marks', () => {
    fc.assert(fc.property(fc.double({ min: -9999, max: 9999, noNaN: true }), fc.integer({ min: 0, max: 5 }), fc.constantFrom(...units), fc.constantFrom('en', 'de'), (value, decimals, symbol, language) => {
      const digits = shown(value, decimals, language === 'de' ? ',' : '.');
      const sign = value < 0 && Number(Math.abs(value).toFixed(decimals)) !== 0 ? '−' : '';
      const words = `it was ${sign}${digits} ${symbol === '1' ? 'of them' : unit(symbol).print} then`;
      assert.equal(state(words, number(value, symbol), language), 'holds', words);
    }), { numRuns: 600 });
  });

  test('a last digit that is one off does not hold, and its mend does', () => {
    fc.assert(fc.property(fc.double({ min: 0.5, max: 999, noNaN: true }), fc.integer({ min: 0, max: 4 }), fc.constantFrom(...units), fc.constantFrom(-1, 1), (value, decimals, symbol, off) => {
      const scaled = value * 10 ** decimals;
      fc.pre(Math.abs(Math.abs(scaled - Math.round(scaled)) - 0.5) > 1e-4);
      const wrong = ((Math.round(scaled) + off) / 10 ** decimals).toFixed(decimals);
      const words = `${wrong} ${symbol === '1' ? 'readings' : unit(symbol).print}`;
      assert.equal(state(words, number(value, symbol)), 'mismatch', words);
      assert.equal(state(mended(words, number(value, symbol)), number(value, symbol)), 'holds');
    }), { numRuns: 600 });
  });

  test('any text is read without throwing and all places lie within it, in order', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9.,:±~\- –hminmg/LC°%a-z()*]{0,40}$/)), (words) => {
      let at = 0;
      for (const mention of readMentions(words, { language: 'en' })) {
        assert.ok(mention.start >= at && mention.end > mention.start && mention.end <= words.length);
        at = mention.end;
      }
    }), { numRuns: 1500 });
  });
});
