// Arithmetic of values with units and uncertainty: what may be added, what a difference of two temperatures is,
// and how signed first-order contributions travel (JCGM 100:2008, the GUM, clause 5).
import { sharedSubstance, unitOf } from './concentration.ts';
import { isTimeOnly } from './dimension.ts';
import type { Contributions, NumberValue, Unit } from './types.ts';
import { conversionFactor, convert, convertible, differenceUnit, hasTrueZero, parseUnit } from './units.ts';
import { buildUnit, multiplyUnits } from './unitTerms.ts';

export type FailureCode = 'unit-mismatch' | 'no-true-zero' | 'zero-base' | 'not-finite';

/** Why an operation has no answer. `args` name the units by symbol: `left`, `right`, or `unit`. */
export interface Failure { readonly failure: FailureCode; readonly args: Readonly<Record<string, string>> }

export function isFailure(result: unknown): result is Failure {
  return typeof result === 'object' && result !== null && 'failure' in result;
}

/** Two values are equal when they differ by at most this part of the larger one. */
const equalityTolerance = 1e-9;

/** A value; without contributions nothing is known of its uncertainty (null), which is never the same as none. */
export function numberValue(value: number, unit: Unit, contributions: Contributions | null = null): NumberValue {
  return { type: 'number', value, unit, contributions };
}

/** A value that is exact by definition or as typed in a formula: no uncertainty at all. */
export function exactValue(value: number, unit: Unit): NumberValue {
  return { type: 'number', value, unit, contributions: new Map() };
}

function mismatch(a: Unit, b: Unit): Failure {
  return { failure: 'unit-mismatch', args: { left: a.symbol, right: b.symbol } };
}

function noZero(unit: Unit): Failure {
  return { failure: 'no-true-zero', args: { unit: unit.symbol } };
}

function finite(value: NumberValue): NumberValue | Failure {
  return Number.isFinite(value.value) ? value : { failure: 'not-finite', args: { unit: value.unit.symbol } };
}

/**
 * The value of a function with its uncertainty by first order: each part's signed contributions times the function's
 * derivative by that part (in `unit` per the part's unit), added source by source, so that what two parts share may
 * cancel. A part of unknown uncertainty makes the whole unknown, unless its derivative is 0. Source: GUM, 5.1.2 and 5.2.
 */
export function combine(value: number, unit: Unit, parts: readonly { readonly value: NumberValue; readonly derivative: number }[]): NumberValue {
  const contributions = new Map<string, number>();
  for (const part of parts) {
    if (part.derivative === 0) continue;
    if (part.value.contributions === null || !Number.isFinite(part.derivative)) return numberValue(value, unit, null);
    for (const [source, size] of part.value.contributions) {
      contributions.set(source, (contributions.get(source) ?? 0) + size * part.derivative);
    }
  }
  return numberValue(value, unit, contributions);
}

/** Standard uncertainty (one standard deviation) in the value's unit; null when unknown. */
export function standardUncertainty(value: NumberValue): number | null {
  if (value.contributions === null) return null;
  let squares = 0;
  for (const size of value.contributions.values()) squares += size * size;
  return Math.sqrt(squares);
}

/** Half-width of the 95 % interval: coverage factor 2 times the standard uncertainty (GUM 6.2, 6.3.3); null when unknown. */
export function expandedUncertainty(value: NumberValue): number | null {
  const standard = standardUncertainty(value);
  return standard === null ? null : 2 * standard;
}

/** The value in another unit of the same dimension and kind, uncertainty and all. */
export function toUnit(value: NumberValue, unit: Unit): NumberValue | Failure {
  if (value.unit.symbol === unit.symbol) return value;
  if (!convertible(value.unit, unit)) return mismatch(value.unit, unit);
  return finite(combine(convert(value.value, value.unit, unit), unitOf(unit, value.unit.substance), [{ value, derivative: conversionFactor(value.unit, unit) }]));
}

function isPoint(unit: Unit): boolean {
  return unit.kind === 'temperature' || unit.kind === 'ph';
}

function fitsPoint(point: Unit, difference: Unit): boolean {
  return convertible(differenceUnit(point), difference);
}

function isPercentageWith(a: Unit, b: Unit): boolean {
  return a.kind === 'percentage' && b.kind === 'percentage-points' && convertible(differenceUnit(a), b);
}

/**
 * The sum, in the unit of the first (or of the point). A temperature or pH takes a difference; two points have no sum.
 * A percentage takes percentage points.
 */
export function add(a: NumberValue, b: NumberValue): NumberValue | Failure {
  const point = isPoint(a.unit) ? a : isPoint(b.unit) ? b : isPercentageWith(a.unit, b.unit) ? a : isPercentageWith(b.unit, a.unit) ? b : null;
  if (point) {
    const other = point === a ? b : a;
    const difference = isPoint(point.unit) && isPoint(other.unit) ? mismatch(a.unit, b.unit)
      : fitsPoint(point.unit, other.unit) ? toUnit(other, differenceUnit(point.unit)) : mismatch(a.unit, b.unit);
    return isFailure(difference) ? mismatch(a.unit, b.unit) : plus(point, difference, 1, point.unit);
  }
  const second = toUnit(b, a.unit);
  return isFailure(second) ? mismatch(a.unit, b.unit) : plus(a, second, 1, sharedSubstance(a.unit, a.unit, b.unit));
}

function plus(a: NumberValue, b: NumberValue, sign: 1 | -1, unit: Unit): NumberValue | Failure {
  return finite(combine(a.value + sign * b.value, unit, [{ value: a, derivative: 1 }, { value: b, derivative: sign }]));
}

/**
 * The difference, in the unit of the first. Two temperatures give a temperature difference (K, or degF-difference), two pH
 * values a pH difference, two percentages percentage points; a point less a difference is a point.
 */
export function subtract(a: NumberValue, b: NumberValue): NumberValue | Failure {
  if (isPoint(a.unit) || isPercentageWith(a.unit, b.unit)) {
    if (!convertible(a.unit, b.unit)) {
      const difference = isPoint(b.unit) || !fitsPoint(a.unit, b.unit) ? mismatch(a.unit, b.unit) : toUnit(b, differenceUnit(a.unit));
      return isFailure(difference) ? mismatch(a.unit, b.unit) : plus(a, difference, -1, a.unit);
    }
  }
  const second = toUnit(b, a.unit);
  return isFailure(second) ? mismatch(a.unit, b.unit) : plus(a, second, -1, sharedSubstance(differenceUnit(a.unit), a.unit, b.unit));
}

/** True for plain numbers and times, which change how much there is of a substance but not what it is. */
function scales(unit: Unit): boolean {
  return unit.kind === 'plain' && (unit.symbol === '1' || (isTimeOnly(unit.dimension) && unit.dimension.time !== 0));
}

/** The product. Temperatures and pH values on their scales cannot be multiplied: their zero is not "none". */
export function multiply(a: NumberValue, b: NumberValue): NumberValue | Failure {
  const scaled = [a, b].find((each) => isPoint(each.unit));
  if (scaled) return noZero(scaled.unit);
  const product = multiplyUnits(a.unit, b.unit, 1);
  if (!product) return mismatch(a.unit, b.unit);
  const { scale } = product;
  const unit = unitOf(product.unit, scales(b.unit) ? a.unit.substance : scales(a.unit) ? b.unit.substance : undefined);
  return finite(combine(a.value * b.value * scale, unit, [
    { value: a, derivative: b.value * scale }, { value: b, derivative: a.value * scale },
  ]));
}

/** The quotient; dividing by nothing is `zero-base`, never infinity. */
export function divide(a: NumberValue, b: NumberValue): NumberValue | Failure {
  const scaled = [a, b].find((each) => isPoint(each.unit));
  if (scaled) return noZero(scaled.unit);
  if (b.value === 0) return { failure: 'zero-base', args: { unit: b.unit.symbol } };
  const quotient = multiplyUnits(a.unit, b.unit, -1);
  if (!quotient) return mismatch(a.unit, b.unit);
  const { scale } = quotient;
  const unit = unitOf(quotient.unit, scales(b.unit) ? a.unit.substance : undefined);
  return finite(combine(a.value / b.value * scale, unit, [
    { value: a, derivative: scale / b.value }, { value: b, derivative: -a.value * scale / (b.value * b.value) },
  ]));
}

/** The value with the other sign. Of a temperature point it is the point below zero (−4 degC), of a pH it has no meaning. */
export function negate(a: NumberValue): NumberValue | Failure {
  if (a.unit.kind === 'ph') return noZero(a.unit);
  return combine(a.value === 0 ? 0 : -a.value, a.unit, [{ value: a, derivative: -1 }]);
}

/** The distance from zero of a ratio or a difference. */
export function absolute(a: NumberValue): NumberValue {
  return a.value < 0 ? combine(-a.value, a.unit, [{ value: a, derivative: -1 }]) : a;
}

/**
 * Reads a typed quantity beside a difference as a difference: in `abs(mat.T - open.T) <= 0.5 degC` the 0.5 degC is half a
 * kelvin. degC becomes K with the same number, % becomes pp, pH a pH difference; everything else stays.
 */
export function asDifference(a: NumberValue): NumberValue {
  return { ...a, unit: differenceUnit(a.unit) };
}

const percent = parseUnit('%') ?? buildUnit([]) as Unit;

/**
 * The change from one value to another in per cent of the first. Scales without a true zero (°C, °F, pH, specific
 * gravity) are `no-true-zero`; a first value of 0 is `zero-base`.
 */
export function percentChange(from: NumberValue, to: NumberValue): NumberValue | Failure {
  if (!hasTrueZero(from.unit)) return noZero(from.unit);
  const last = toUnit(to, from.unit);
  if (isFailure(last)) return mismatch(from.unit, to.unit);
  if (from.value === 0) return { failure: 'zero-base', args: { unit: from.unit.symbol } };
  const base = Math.abs(from.value);
  return finite(combine(100 * (last.value - from.value) / base, percent, [
    { value: last, derivative: 100 / base }, { value: from, derivative: -100 * last.value / (from.value * base) },
  ]));
}

/** −1, 0 or 1; equal within 1e-9 of the larger operand. Values of different dimension or kind cannot be compared. */
export function compare(a: NumberValue, b: NumberValue): -1 | 0 | 1 | Failure {
  const second = toUnit(b, a.unit);
  if (isFailure(second)) return mismatch(a.unit, b.unit);
  const difference = a.value - second.value;
  if (Math.abs(difference) <= equalityTolerance * Math.max(Math.abs(a.value), Math.abs(second.value))) return 0;
  return difference < 0 ? -1 : 1;
}
