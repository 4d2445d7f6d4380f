// The two sides of an operator: what a typed number takes from its neighbour, which points belong together, and what is said
// where the sides do not fit.
import { concentrationForm, unitOf as unitOfSubstance } from '../quantities/concentration.ts';
import { differenceUnit, isTimeUnit, parseUnit } from '../quantities/units.ts';
import { exactValue, numberValue, type Failure } from '../quantities/value.ts';
import type { Unit } from '../quantities/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { hour } from '../time/instant.ts';
import type { Phrase } from '../words/phrases.ts';
import type { Run } from './run.ts';
import { joinByTime, one, pointNumber } from './seriesValues.ts';
import { halfWidthOf } from './timeIntervals.ts';
import type { DurationValue, Expression, FormulaNumber, FormulaValue, SeriesPoint, SeriesValue } from './types.ts';

export type Arithmetic = '+' | '-' | '*' | '/';
export type Comparison = '<' | '>' | '<=' | '>=' | '==';

/** One side of an operator: its value and how it was written. */
export interface Side { readonly value: FormulaValue; readonly expression: Expression }

const hourUnit: Unit = parseUnit('h') ?? one;

/** A duration as a number of hours; an interval without an end leaves its uncertainty unknown. */
export function durationNumber({ duration, interval }: DurationValue): FormulaNumber {
  if (interval === undefined) return exactValue(duration / hour, hourUnit);
  const half = halfWidthOf(interval);
  return numberValue(duration / hour, hourUnit, half === null ? null : new Map([[`time:${duration}:${half}`, half / 2 / hour]]));
}

/** A number of a time unit as a duration in milliseconds, or null. */
export function numberDuration(value: FormulaNumber): number | null {
  const { unit } = value;
  return isTimeUnit(unit) ? Math.round(value.value * unit.factor * 1000) : null;
}

export function isLiteral(expression: Expression): boolean {
  return expression.kind === 'number' || (expression.kind === 'unary' && expression.operator === '-' && isLiteral(expression.operand));
}

function isBareLiteral(expression: Expression): boolean {
  return expression.kind === 'number' ? expression.unit === null : expression.kind === 'unary' && expression.operator === '-' && isBareLiteral(expression.operand);
}

/** Kinds whose numbers are commonly written without a unit. */
export const bareScales: readonly Unit['kind'][] = ['ph', 'ph-difference', 'salinity', 'specific-gravity'];

/**
 * A number typed in the formula takes the kind that its neighbour asks for: `0.5 degC` beside a difference of temperatures
 * is a difference, `7.5` beside a pH is a pH.
 */
function adapt(side: Side, beside: Unit, operator: Arithmetic | Comparison): FormulaValue {
  const { value, expression } = side;
  if (value.type !== 'number' || !isLiteral(expression)) return value;
  const { kind } = value.unit;
  if (beside.substance && concentrationForm(value.unit) !== null) return { ...value, unit: unitOfSubstance(value.unit, beside.substance) };
  if (isBareLiteral(expression) && bareScales.includes(beside.kind)) {
    const unit = operator === '+' && beside.kind === 'ph' ? differenceUnit(beside) : beside;
    return { ...value, unit };
  }
  const wantsDifference = (kind === 'temperature' && (beside.kind === 'temperature-difference' || (operator === '+' && beside.kind === 'temperature')))
    || (kind === 'percentage' && beside.kind === 'percentage-points')
    || (kind === 'ph' && (beside.kind === 'ph-difference' || (operator === '+' && beside.kind === 'ph')));
  return wantsDifference ? { ...value, unit: differenceUnit(value.unit) } : value;
}

export function adapted(left: Side, right: Side, operator: Arithmetic | Comparison): [FormulaValue, FormulaValue] {
  if (operator === '*' || operator === '/') return [left.value, right.value];
  const a = unitOf(left.value);
  const b = unitOf(right.value);
  return [b ? adapt(left, b, operator) : left.value, a ? adapt(right, a, operator) : right.value];
}

export function unitOf(value: FormulaValue): Unit | null {
  return value.type === 'number' || (value.type === 'series' && (value.content ?? 'number') === 'number') ? value.unit : null;
}

/** A failure of src/quantities as a problem of the formula. */
export function failWith(run: Run, failure: Failure, range: SourceRange, left: Unit | null, right: Unit | null, bare: SourceRange | null = null): null {
  const args = { left: nameUnit(left), right: nameUnit(right) };
  const { unit } = failure.args as { readonly unit?: string };
  switch (failure.failure) {
    case 'unit-mismatch': {
      const lacking = left && right ? lackingFor(left, right) : null;
      if (lacking) return run.fail(lacking, range, args);
      const missing = bare && left && right ? (left.symbol === one.symbol ? right : left) : null;
      return run.fail('unit-mismatch', range, args, missing && bare ? [run.replace(bare, `${run.textOf(bare)} ${missing.symbol}`)] : []);
    }
    case 'no-true-zero': return run.fail('no-true-zero', range, { unit: unit ?? left?.symbol ?? '' });
    case 'zero-base': return run.fail('zero-base', range, { time: '', unit: unit ?? '' });
    default: return run.fail('not-finite', range);
  }
}

/** What stands between two ways to count a substance in water; null where the units measure different things altogether. */
function lackingFor(left: Unit, right: Unit): 'substance-needed' | 'density-needed' | null {
  const forms = [left, right].map(concentrationForm);
  if (forms.includes(null) || forms[0] === forms[1] || left.dimension.time !== right.dimension.time) return null;
  return forms.includes('mass-share') ? 'density-needed' : 'substance-needed';
}

function nameUnit(unit: Unit | null): string | Phrase {
  if (!unit || unit.symbol === one.symbol) return ['plain-number'];
  return unit.kind === 'temperature-difference' && unit.dimension.time === 0 ? ['temperature-difference'] : unit.print || unit.symbol;
}

export type Pair = [FormulaNumber, FormulaNumber, readonly SeriesPoint[]];

export function pairsOf(a: FormulaNumber | SeriesValue, b: FormulaNumber | SeriesValue): { pairs: Pair[]; holes: readonly number[] } {
  if (a.type === 'series' && b.type === 'series') {
    const joined = joinByTime(a, b);
    return { pairs: joined.pairs.map(([p, q]): Pair => [pointNumber(p, a.unit), pointNumber(q, b.unit), [p, q]]), holes: joined.holes };
  }
  if (a.type === 'series') return { pairs: a.points.map((p): Pair => [pointNumber(p, a.unit), b as FormulaNumber, [p]]), holes: a.holes ?? [] };
  const series = b as SeriesValue;
  return { pairs: series.points.map((q): Pair => [a, pointNumber(q, series.unit), [q]]), holes: series.holes ?? [] };
}

export function bareRange(left: Side, right: Side): SourceRange | null {
  if (isBareLiteral(right.expression)) return right.expression.range;
  return isBareLiteral(left.expression) ? left.expression.range : null;
}

export function asInstant(value: FormulaValue): FormulaValue {
  return value.type === 'event' ? { type: 'instant', instant: value.instant } : value;
}

export function isNumeric(value: FormulaValue): value is FormulaNumber | SeriesValue {
  return value.type === 'number' || (value.type === 'series' && (value.content ?? 'number') === 'number');
}
