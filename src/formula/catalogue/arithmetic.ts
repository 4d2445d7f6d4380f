// Functions of plain arithmetic; on a series they work reading by reading.
import { combine } from '../../quantities/value.ts';
import { parseUnit } from '../../quantities/units.ts';
import type { NumberValue, Unit } from '../../quantities/types.ts';
import { roundTo } from '../../quantities/format.ts';
import { hour } from '../../time/instant.ts';
import type { Call } from '../call.ts';
import { mapSeries } from '../operations.ts';
import { censored } from '../seriesValues.ts';
import type { FormulaNumber, FormulaValue } from '../types.ts';
import type { FunctionEntry, Signature } from './entry.ts';

const value: Signature = { parameters: [{ name: 'x', type: 'number or series', about: 'a number, a difference, or readings' }], options: [] };

function each(call: Call, change: (x: NumberValue) => NumberValue | null, keepsLimits = false): FormulaValue | null {
  const operand = call.operand(0) as FormulaNumber | Extract<FormulaValue, { type: 'series' }>;
  if (operand.type === 'series') {
    if (!keepsLimits && operand.points.some((point) => (point.flags & censored) !== 0) && !call.within(operand.points, 0)) return null;
    return mapSeries(call.run, operand, call.range, change);
  }
  const result = change(operand);
  return result && { ...result, ...(operand.decimals === undefined ? {} : { decimals: operand.decimals }) };
}

/** The unit whose square the given one is, for the square root; null where there is none that a note could write. */
function rootUnit(unit: Unit): Unit | null {
  if (unit.symbol === '1') return unit;
  const roots: Readonly<Record<string, string>> = { m2: 'm', cm2: 'cm', mm2: 'mm', h2: 'h' };
  return roots[unit.symbol] === undefined ? null : parseUnit(roots[unit.symbol]!);
}

function squareRoot(call: Call): FormulaValue | null {
  return each(call, (x) => {
    const unit = rootUnit(x.unit);
    if (!unit) return call.fail('plain-number-needed', { function: call.name, unit: x.unit.symbol }, call.rangeOf(0));
    if (x.value < 0) return call.fail('negative-not-possible', { function: call.name }, call.rangeOf(0));
    const root = Math.sqrt(x.value);
    return combine(root, unit, [{ value: x, derivative: root > 0 ? 0.5 / root : Number.NaN }]);
  });
}

function logarithm(call: Call): FormulaValue | null {
  return each(call, (x) => {
    if (x.unit.symbol !== '1') return call.fail('plain-number-needed', { function: call.name, unit: x.unit.symbol }, call.rangeOf(0));
    if (!(x.value > 0)) return call.fail('negative-not-possible', { function: call.name }, call.rangeOf(0));
    return combine(Math.log(x.value), x.unit, [{ value: x, derivative: 1 / x.value }]);
  });
}

function rounded(call: Call): FormulaValue | null {
  const places = call.operand(1) as FormulaNumber | undefined;
  const decimals = places ? places.value : 0;
  if (places && (places.unit.symbol !== '1' || !Number.isInteger(decimals) || decimals < 0 || decimals > 12)) {
    return call.fail('decimals-unreadable', { found: call.run.textOf(call.rangeOf(1)) }, call.rangeOf(1));
  }
  const change = (x: NumberValue): NumberValue => ({ ...x, value: roundTo(x.value, decimals) });
  const operand = call.operand(0)!;
  if (operand.type === 'number') return { ...change(operand), decimals };
  const result = mapSeries(call.run, call.series(0), call.range, change);
  return result && { ...result, points: result.points.map((point) => ({ ...point, decimals })) };
}

function size(call: Call): FormulaValue | null {
  const expression = call.expression(0);
  const operand = call.operand(0)!;
  // A length of time arrives in hours; it stays one.
  if (operand.type === 'number' && operand.unit.symbol === 'h' && expression?.kind === 'duration') return { type: 'duration', duration: Math.abs(operand.value) * hour };
  return each(call, (x) => (x.value < 0 ? combine(-x.value, x.unit, [{ value: x, derivative: -1 }]) : x), true);
}

export const arithmeticFunctions: readonly FunctionEntry[] = [
  {
    name: 'abs', group: 'arithmetic', gives: 'number or series', units: 'that of the operand', signatures: [value],
    definition: 'The size of a number without its sign.', equation: '|x|', source: null,
    example: { formula: 'abs(at(mat.T, 22:00) - at(open.T, 22:00))', on: 'the temperatures of both tanks', gives: '0.2 °C' }, words: 'the size of {1}',
    evaluate: size,
  },
  {
    name: 'sqrt', group: 'arithmetic', gives: 'number or series', units: 'a plain number, or a length from an area', signatures: [value],
    definition: 'The square root of a number that is not negative.', equation: '√x', source: null,
    example: { formula: 'sqrt(2)', on: 'a plain number', gives: '1.41' }, words: 'the square root of {1}',
    evaluate: squareRoot,
  },
  {
    name: 'ln', group: 'arithmetic', gives: 'number or series', units: 'a plain number', signatures: [value],
    definition: 'The natural logarithm of a plain number above nothing.', equation: 'ln x', source: null,
    example: { formula: 'ln(2)', on: 'a plain number', gives: '0.693' }, words: 'the natural logarithm of {1}',
    evaluate: logarithm,
  },
  {
    name: 'round', group: 'arithmetic', gives: 'number or series', units: 'that of the operand',
    signatures: [{ parameters: [...value.parameters, { name: 'decimals', type: 'number', optional: true, about: 'digits after the decimal mark; none without it' }], options: [] }],
    definition: 'A number rounded to whole ones, or to the given number of decimals; halves go away from zero.', equation: 'x to n decimals', source: null,
    example: { formula: 'round(at(mat.DO, 23:00), 1)', on: 'the oxygen in the mat tank', gives: '7.9 mg/L' }, words: '{1}, rounded',
    evaluate: rounded,
  },
];
