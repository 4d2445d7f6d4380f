// Values: arithmetic of units and uncertainty, rounding and printing.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { parseUnit } from '../../../src/quantities/units.ts';
import type { NumberValue, Unit } from '../../../src/quantities/types.ts';
import {
  add, asDifference, combine, compare, divide, exactValue, expandedUncertainty, isFailure, multiply, negate, numberValue, percentChange, standardUncertainty, subtract, toUnit, type Failure,
} from '../../../src/quantities/value.ts';
import { decimalsFor, formatNumber, formatValue, printedMinus, rateDecimals, roundTo } from '../../../src/quantities/format.ts';
import { contributionsOf, fromAccuracyLimit, fromRepeats, fromResolution } from '../../../src/quantities/uncertainty.ts';

const unit = (text: string): Unit => parseUnit(text) as Unit;
const q = (value: number, symbol: string, parts: Record<string, number> | null = null): NumberValue =>
  numberValue(value, unit(symbol), parts && new Map(Object.entries(parts)));
const told = (result: NumberValue | Failure): string => (isFailure(result) ? result.failure : `${Number(result.value.toPrecision(12))} ${result.unit.symbol}`);

suite('values: what may be added', () => {
  const sums: [string, NumberValue | Failure, string][] = [
    ['point − point', subtract(q(25, 'degC'), q(24, 'degC')), '1 K'], ['°C − °F', subtract(q(25, 'degC'), q(75.2, 'degF')), '1 K'], ['°F − °F', subtract(q(77, 'degF'), q(75, 'degF')), '2 degF-difference'],
    ['point + difference', add(q(25, 'degC'), q(1, 'K')), '26 degC'], ['difference + point', add(q(1.8, 'degF-difference'), q(25, 'degC')), '26 degC'], ['point − difference', subtract(q(25, 'degC'), q(1, 'K')), '24 degC'],
    ['point + point', add(q(25, 'degC'), q(1, 'degC')), 'unit-mismatch'], ['difference − point', subtract(q(1, 'K'), q(25, 'degC')), 'unit-mismatch'],
    ['pH − pH', subtract(q(7.4, 'pH'), q(7.1, 'pH')), '0.3 pH-difference'], ['pH + pH', add(q(7.4, 'pH'), q(7.1, 'pH')), 'unit-mismatch'], ['pH + difference', add(q(7.4, 'pH'), q(0.1, 'pH-difference')), '7.5 pH'],
    ['% − %', subtract(q(82, '%'), q(75, '%')), '7 pp'], ['% + pp', add(q(82, '%'), q(5, 'pp')), '87 %'], ['% − pp', subtract(q(82, '%'), q(5, 'pp')), '77 %'], ['pp − pp', subtract(q(7, 'pp'), q(5, 'pp')), '2 pp'],
    ['mg/L + ug/L', add(q(1, 'mg/L'), q(500, 'ug/L')), '1.5 mg/L'], ['mg/L + mg/L-N', add(q(1, 'mg/L'), q(1, 'mg/L-N')), 'unit-mismatch'], ['h + min', add(q(1, 'h'), q(30, 'min')), '1.5 h'],
    ['% of', multiply(q(80, '%'), q(5, 'mg/L')), '4 mg/L'], ['%/h · min', multiply(q(2, '%/h'), q(30, 'min')), '1 %'], ['mg/L/h · min', multiply(q(3, 'mg/L/h'), q(30, 'min')), '1.5 mg/L'],
    ['mg/L ÷ min', divide(q(3, 'mg/L'), q(30, 'min')), '0.1 mg/L/min'], ['% ÷ %', divide(q(3, '%'), q(2, '%')), '1.5 1'], ['mg/L · cm³', multiply(q(5, 'mg/L'), q(42000, 'cm3')), '210 mg'],
    ['1 ÷ h', divide(q(1, '1'), q(2, 'h')), '0.5 /h'], ['N · L', multiply(q(5, 'mg/L-N'), q(2, 'L')), '10 mg-N'], ['N ÷ N', divide(q(5, 'mg/L-N'), q(2, 'mg/L-N')), '2.5 1'], ['K ÷ h', divide(q(3, 'K'), q(2, 'h')), '1.5 K/h'],
    ['2 · °C', multiply(q(25, 'degC'), q(2, '1')), 'no-true-zero'], ['pH ÷ 2', divide(q(7, 'pH'), q(2, '1')), 'no-true-zero'], ['÷ 0', divide(q(5, 'g'), q(0, 'h')), 'zero-base'], ['overflow', multiply(q(1e300, 'g'), q(1e300, '1')), 'not-finite'],
    ['−x', negate(q(0.24, 'mg/L')), '-0.24 mg/L'], ['−0', negate(q(0, 'mg/L')), '0 mg/L'], ['−pH', negate(q(7, 'pH')), 'no-true-zero'],
    ['fall', percentChange(q(8.26, 'mg/L'), q(8.02, 'mg/L')), '-2.90556900726 %'], ['% of °C', percentChange(q(25, 'degC'), q(24, 'degC')), 'no-true-zero'], ['% of 0', percentChange(q(0, 'mg/L'), q(1, 'mg/L')), 'zero-base'],
    ['as difference', asDifference(q(0.5, 'degC')), '0.5 K'], ['dKH + CaCO3', add(q(1, 'meq/L'), q(50.04345, 'mg/L-CaCO3')), '2 meq/L'],
  ];
  for (const [name, result, expected] of sums) test(`${name}: ${expected}`, () => assert.equal(told(result), expected));

  test('a tank of 50 x 30 x 28 cm holds 42 L', () => {
    const area = multiply(q(50, 'cm'), q(30, 'cm')) as NumberValue;
    const volume = multiply(area, q(280, 'mm')) as NumberValue;
    assert.equal(told(toUnit(volume, unit('L'))), '42 L');
  });

  test('comparing: equal within 1e-9 of the larger, across units; kinds apart', () => {
    assert.equal(compare(q(0.1 + 0.2, 'mg/L'), q(300, 'ug/L')), 0);
    assert.equal(compare(q(1, 'mg/L'), q(1 + 0.9e-9, 'mg/L')), 0);
    assert.equal(compare(q(1, 'mg/L'), q(1 + 2e-9, 'mg/L')), -1);
    assert.equal(compare(q(5, 'dKH'), q(89, 'mg/L-CaCO3')), 1);
    assert.ok(isFailure(compare(q(1, 'K'), q(1, 'degC'))));
  });

  test('sum less one part gives the other back, in any units', () => {
    const symbols = ['mg/L', 'ug/L', 'g/L'];
    fc.assert(fc.property(fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.constantFrom(...symbols), fc.constantFrom(...symbols), (x, y, a, b) => {
      const sum = add(q(x, a), q(y, b)) as NumberValue;
      const back = toUnit(subtract(sum, q(x, a)) as NumberValue, unit(b)) as NumberValue;
      const scale = Math.abs(x) * unit(a).factor / unit(b).factor + Math.abs(y);
      assert.ok(Math.abs(back.value - y) <= 1e-12 * scale + 1e-300);
    }));
  });

  test('product divided by one part gives the other back, unit and all', () => {
    const symbols = ['mg/L', 'L', 'h', 'min', '%/h', 'cm', 'cm3', 'K/h', 'mg/L-N', 'umol/m2/s', 'W', '1', 'uS/cm', 'L/h'];
    fc.assert(fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), fc.double({ min: 0.1, max: 100, noNaN: true }), fc.constantFrom(...symbols), fc.constantFrom(...symbols), (x, y, a, b) => {
      const product = multiply(q(x, a), q(y, b));
      if (isFailure(product)) return;
      assert.deepEqual(parseUnit(product.unit.symbol), product.unit);
      const quotient = divide(product, q(y, b)) as NumberValue;
      const back = toUnit(quotient, unit(a));
      if (isFailure(back)) return assert.ok(unit(a).kind !== 'plain' || unit(b).kind !== 'plain', `${a} ${b}`);
      assert.ok(Math.abs(back.value - x) <= 1e-12 * x);
    }));
  });
});

suite('values: uncertainty (JCGM 100:2008)', () => {
  test('what one instrument shares cancels in a difference, what two do not adds in squares', () => {
    const a = q(6.2, 'mg/L', { meter: 0.1155, 'repeats:a': 0.03 });
    const b = q(5.8, 'mg/L', { meter: 0.1155, 'repeats:b': 0.04 });
    assert.ok(Math.abs((standardUncertainty(subtract(a, b) as NumberValue) ?? 0) - 0.05) < 1e-12);
    const other = q(5.8, 'mg/L', { other: 0.1155, 'repeats:b': 0.04 });
    assert.ok(Math.abs((standardUncertainty(subtract(a, other) as NumberValue) ?? 0) - Math.hypot(0.1155, 0.1155, 0.03, 0.04)) < 1e-12);
  });

  test('unknown stays unknown, exact is no uncertainty', () => {
    assert.equal(expandedUncertainty(add(q(1, 'mg/L'), q(1, 'mg/L', { a: 1 })) as NumberValue), null);
    assert.equal(expandedUncertainty(multiply(exactValue(2, unit('1')), q(1, 'mg/L', { a: 0.1 })) as NumberValue), 0.4);
    assert.equal(standardUncertainty(combine(1, unit('1'), [{ value: q(1, '1'), derivative: 0 }])), 0);
  });

  test('a shared part cancels wholly in a ratio of equal readings', () => {
    const a = q(5, 'mg/L', { meter: 0.1 });
    assert.equal(standardUncertainty(divide(a, a) as NumberValue), 0);
  });

  test('a change of unit scales the contributions', () => {
    const converted = toUnit(q(25, 'degC', { probe: 0.2 }), unit('degF')) as NumberValue;
    assert.ok(Math.abs((standardUncertainty(converted) ?? 0) - 0.36) < 1e-12);
  });

  test('u(DO) of the dossier worked check, section 6.5: ±0.2, step 0.01, s 0.05 of three: 0.11906', () => {
    const value = numberValue(6.2, unit('mg/L'), contributionsOf([['meter', fromAccuracyLimit(0.2)], ['step', fromResolution(0.01)], ['repeats', fromRepeats([6.15, 6.2, 6.25]) ?? 0]]));
    assert.ok(Math.abs((standardUncertainty(value) ?? 0) - 0.11906) < 5e-6);
    assert.equal(fromRepeats([6.2]), null);
  });

  test('first-order propagation agrees with a finite difference', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 50, noNaN: true }), fc.double({ min: 1, max: 50, noNaN: true }), (x, y) => {
      const step = 1e-6;
      const parts = { x: 1 };
      const ratio = divide(q(x, 'mg/L', parts), q(y, 'mg/L', { y: 1 })) as NumberValue;
      assert.ok(Math.abs((ratio.contributions?.get('x') ?? 0) - ((x + step) / y - x / y) / step) < 1e-6);
      assert.ok(Math.abs((ratio.contributions?.get('y') ?? 0) - (x / (y + step) - x / y) / step) < 1e-3);
      const change = percentChange(q(x, 'mg/L', parts), q(y, 'mg/L', { y: 1 })) as NumberValue;
      assert.ok(Math.abs((change.contributions?.get('x') ?? 0) - (100 * (y - x - step) / (x + step) - 100 * (y - x) / x) / step) < 0.02);
    }));
  });
});

suite('rounding and printing', () => {
  const rows: [number, number, string][] = [
    [1.005, 2, '1.01'], [-1.005, 2, '-1.01'], [2.5, 0, '3'], [-2.5, 0, '-3'], [0.5, 0, '1'], [0.4999, 0, '0'], [-0.004, 2, '0.00'], [1e-7, 3, '0.000'], [1e-7, 8, '0.00000010'], [1.5e-7, 7, '0.0000002'],
    [9.995, 2, '10.00'], [1234.5, 0, '1235'], [8.345, 2, '8.35'], [0, 2, '0.00'], [-0, 1, '0.0'], [1013.25, 1, '1013.3'], [1e20, 0, '100000000000000000000'], [123456789.125, 2, '123456789.13'],
  ];
  for (const [value, decimals, text] of rows) test(`${value} to ${decimals} is ${text}`, () => assert.equal(formatNumber(value, decimals), text));

  test('agrees with exact decimal arithmetic, ties away from zero', () => {
    fc.assert(fc.property(fc.integer({ min: -99999999, max: 99999999 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), (digits, places, decimals) => {
      const value = Number(`${digits}e-${places}`);
      const drop = Math.max(0, places - decimals);
      const base = 10n ** BigInt(drop);
      const size = BigInt(Math.abs(digits));
      const rounded = (size * 2n + base) / (base * 2n);
      const expected = Number(`${rounded}e-${places - drop}`) * (digits < 0 ? -1 : 1);
      assert.equal(roundTo(value, decimals), expected === 0 ? 0 : expected);
      assert.equal(Number(formatNumber(value, decimals)), expected === 0 ? 0 : expected);
    }), { numRuns: 2000 });
  });

  test('rounding twice is rounding once, and never moves more than half a step', () => {
    fc.assert(fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), fc.integer({ min: 0, max: 8 }), (value, decimals) => {
      const once = roundTo(value, decimals);
      assert.equal(roundTo(once, decimals), once);
      assert.ok(Math.abs(once - value) <= 0.5 * 10 ** -decimals * (1 + 1e-9) + Math.abs(value) * 1e-15);
      assert.equal(formatNumber(value, decimals), formatNumber(once, decimals));
    }), { numRuns: 2000 });
  });

  test('tens and hundreds', () => assert.deepEqual([roundTo(1250, -2), roundTo(-14, -1), roundTo(4, -1), roundTo(5, -1)], [1300, -10, 0, 10]));
  test('a decimal comma', () => assert.equal(formatNumber(7.31, 1, ','), '7,3'));
  test('the minus of print, at the front alone', () => assert.deepEqual(['-1.5 mg/L', '1e-7', '2026-03-14', '0'].map(printedMinus), ['−1.5 mg/L', '1e-7', '2026-03-14', '0']));
  test('nothing that is not finite is printed', () => assert.deepEqual([formatNumber(Number.NaN, 1), formatNumber(Infinity, 1)], ['?', '?']));

  const decimals: [number, number | null, number][] = [
    [76.055, 2.97, 1], [6.2, 0.0996, 2], [6.2, 0.0994, 3], [1009, 35, 0], [1009, 350, 0], [6.2, 1, 1], [6.2, 0.1, 2], [8.2635, null, 2], [76.055, null, 1], [1009.4, null, 1], [5, null, 0], [0.00345678, null, 5], [6.2, 1e-9, 6], [0, null, 0],
  ];
  for (const [value, half, expected] of decimals) test(`${value} ± ${half}: ${expected} decimals`, () => assert.equal(decimalsFor(value, half), expected));

  test('digits that binary arithmetic adds are not the number’s own', () => assert.equal(decimalsFor(0.6 / 10, null), 2));
  // Value per hour, decimals of the readings, hours, half-width, decimals.
  const rates: [string, number, number, number, number | null, number][] = [
    ['0.6 °C in 10 h, read to 0.1 °C', 0.6 / 10, 1, 10, 0.0082, 2],
    ['0.6 °C in 8 h: the second digit stands', 0.6 / 8, 1, 8, 0.0102, 3],
    ['0.37 mg/L in 8 h: no digit beyond what 0.01 mg/L shows in 8 h', 0.37 / 8, 2, 8, 0.001, 3],
    ['0.10 mg/L in 1 h keeps the digits of the readings', 0.1, 2, 1, 0.008, 2],
    ['0.84 mg/L in 2 h has no zero at its end', 0.84 / 2, 2, 2, null, 2],
    ['0.07 mg/L in 2 h', 0.07 / 2, 2, 2, null, 3],
    ['a ± of 12 leaves whole numbers', 123.4, 1, 1, 12, 0],
    ['no change', 0, 1, 10, 0.0082, 1],
  ];
  for (const [name, value, own, hours, half, expected] of rates) test(`decimals of a rate: ${name}`, () => assert.equal(rateDecimals(value, own, hours, half), expected));

  test('values as a reader sees them', () => {
    assert.equal(formatValue(q(76.055, '%', { all: 1.4868 }), { uncertainty: true }), '76.1 ± 3.0 %');
    assert.equal(formatValue(q(82, '/min')), '82/min');
    assert.equal(formatValue(q(24.9, 'degC'), { decimals: 1, decimalMark: ',' }), '24,9 °C');
    assert.equal(formatValue(q(7.2, 'pH')), '7.2');
    assert.equal(formatValue(q(258.244, 'umol/L')), '258.2 µmol/L');
    assert.equal(formatValue(q(1.5, 'mg/L-N/h'), { withUnit: false }), '1.5');
  });
});
