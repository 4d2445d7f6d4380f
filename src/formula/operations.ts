// Arithmetic, comparisons and logic on formula values, pointwise on series. Failures become problems at the operator.
import { flag } from '../dataset/types.ts';
import { hour } from '../time/instant.ts';
import { concentrationForm, unitOf as unitOfSubstance } from '../quantities/concentration.ts';
import { sameDimension } from '../quantities/dimension.ts';
import { differenceUnit, parseUnit, perHour } from '../quantities/units.ts';
import { add, combine, compare, divide, exactValue, isFailure, multiply, negate, numberValue, subtract, type Failure } from '../quantities/value.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { Phrase } from '../words/phrases.ts';
import type { Run } from './run.ts';
import { censored, joinByTime, mergedParts, one, pointNumber } from './seriesValues.ts';
import { addedTo, halfWidthOf, scaledBy, turned, withInterval, type TimeInterval } from './timeIntervals.ts';
import type { DurationValue, Expression, FormulaNumber, FormulaValue, InstantValue, SeriesPoint, SeriesValue } from './types.ts';
import { valueKind } from './valueKinds.ts';

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
  if (unit.kind !== 'plain' || unit.dimension.time !== 1 || !onlyTime(unit)) return null;
  return Math.round(value.value * unit.factor * 1000);
}

function onlyTime(unit: Unit): boolean {
  const { mass, length, temperature, amount, current, luminosity } = unit.dimension;
  return mass === 0 && length === 0 && temperature === 0 && amount === 0 && current === 0 && luminosity === 0;
}

function isLiteral(expression: Expression): boolean {
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

function adapted(left: Side, right: Side, operator: Arithmetic | Comparison): [FormulaValue, FormulaValue] {
  if (operator === '*' || operator === '/') return [left.value, right.value];
  const a = unitOf(left.value);
  const b = unitOf(right.value);
  return [b ? adapt(left, b, operator) : left.value, a ? adapt(right, a, operator) : right.value];
}

function unitOf(value: FormulaValue): Unit | null {
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

/** `a + b`, `a - b`, `a * b`, `a / b`. */
export function calculate(run: Run, operator: Arithmetic, left: Side, right: Side, range: SourceRange): FormulaValue | null {
  const [a, b] = adapted(left, right, operator).map(asInstant) as [FormulaValue, FormulaValue];
  const plusOrMinus = operator === '+' || operator === '-';
  if (a.type === 'instant' && plusOrMinus) {
    if (b.type === 'instant' && operator === '-') return { type: 'duration', duration: a.instant - b.instant, ...withInterval(addedTo(a.interval, turned(b.interval))) };
    const step = stepOf(b);
    if (step !== null) return movedInstant(run, a, operator === '+' ? step : turnedStep(step), range);
  }
  if (b.type === 'instant' && operator === '+') {
    const step = stepOf(a);
    if (step !== null) return movedInstant(run, b, step, range);
  }
  if (a.type === 'duration' && b.type === 'duration') {
    if (operator === '+') return durationResult(run, a.duration + b.duration, range, addedTo(a.interval, b.interval));
    if (operator === '-') return durationResult(run, a.duration - b.duration, range, addedTo(a.interval, turned(b.interval)));
  }
  if (a.type === 'duration' && b.type === 'number' && b.unit.symbol === one.symbol && (operator === '*' || operator === '/')) {
    if (operator === '/' && b.value === 0) return run.fail('not-finite', range, {});
    const factor = operator === '*' ? b.value : 1 / b.value;
    return durationResult(run, operator === '*' ? a.duration * b.value : a.duration / b.value, range, scaledBy(a.interval, factor));
  }
  if (b.type === 'duration' && a.type === 'number' && a.unit.symbol === one.symbol && operator === '*') return durationResult(run, a.value * b.duration, range, scaledBy(b.interval, a.value));
  if (a.type === 'duration' && b.type === 'duration' && operator === '/' && b.duration === 0) return run.fail('not-finite', range, {});
  const x = a.type === 'duration' ? durationNumber(a) : a;
  const y = b.type === 'duration' ? durationNumber(b) : b;
  if (isNumeric(x) && isNumeric(y)) {
    const bare = bareRange(left, right);
    return pointwise(run, x, y, range, operator, (p, q) => applyArithmetic(operator, p, q), (failure) => failWith(run, failure, range, unitOf(x), unitOf(y), bare));
  }
  return run.fail('operands-do-not-fit', range, { operator, left: valueKind(a), right: valueKind(b) });
}

function applyArithmetic(operator: Arithmetic, p: NumberValue, q: NumberValue): NumberValue | Failure {
  if (operator === '+') return add(p, q);
  if (operator === '-') return subtract(p, q);
  return operator === '*' ? multiply(p, q) : divide(p, q);
}

function bareRange(left: Side, right: Side): SourceRange | null {
  if (isBareLiteral(right.expression)) return right.expression.range;
  return isBareLiteral(left.expression) ? left.expression.range : null;
}

function asInstant(value: FormulaValue): FormulaValue {
  return value.type === 'event' ? { type: 'instant', instant: value.instant } : value;
}

type Step = Omit<DurationValue, 'type'>;

/** A length of time beside an instant, or null where the value is none. */
function stepOf(value: FormulaValue): Step | null {
  if (value.type === 'duration') return value;
  const duration = value.type === 'number' ? numberDuration(value) : null;
  return duration === null ? null : { duration };
}

function turnedStep({ duration, interval }: Step): Step { return { duration: -duration, ...withInterval(turned(interval)) }; }

function movedInstant(run: Run, instant: InstantValue, step: Step, range: SourceRange): FormulaValue | null {
  const moved = instant.instant + step.duration;
  return Math.abs(moved) <= 8e15 ? { type: 'instant', instant: moved, ...withInterval(addedTo(instant.interval, step.interval)) } : run.fail('not-finite', range, {});
}

function durationResult(run: Run, duration: number, range: SourceRange, interval: TimeInterval | undefined): FormulaValue | null {
  return Number.isFinite(duration) && Math.abs(duration) <= 8e15 ? { type: 'duration', duration: Math.round(duration), ...withInterval(interval) } : run.fail('not-finite', range, {});
}

function isNumeric(value: FormulaValue): value is FormulaNumber | SeriesValue {
  return value.type === 'number' || (value.type === 'series' && (value.content ?? 'number') === 'number');
}

/** The digits of the operands; a product or quotient shows two significant digits at least. */
function withDecimals(value: NumberValue, a: number | undefined, b: number | undefined, scales = false): FormulaNumber {
  if (a === undefined && b === undefined) return value;
  const own = Math.max(a ?? 0, b ?? 0);
  const size = Math.abs(value.value);
  return { ...value, decimals: scales && size > 0 && size < 1e300 ? Math.max(own, Math.min(1 - Math.floor(Math.log10(size) + 1e-9), 6)) : own };
}

/** Applies an operation to numbers, or to every point of series joined by time. */
function pointwise(
  run: Run, a: FormulaNumber | SeriesValue, b: FormulaNumber | SeriesValue, range: SourceRange,
  operator: Arithmetic, operation: Operation, fail: (failure: Failure) => null,
): FormulaValue | null {
  const scales = operator === '*' || operator === '/';
  if (a.type === 'number' && b.type === 'number') {
    const result = operation(a, b);
    if (isFailure(result)) return fail(result);
    return finite(run, withDecimals(result, a.decimals, b.decimals, scales), range);
  }
  const probe = operation(exactValue(1, a.unit), exactValue(1, b.unit));
  if (isFailure(probe)) return fail(probe);
  const quick = scales ? scaled(operator, probe) : alike(a.unit, b.unit, probe.unit) ? summed(operator, probe.unit) : operation;
  const { pairs, holes } = pairsOf(a, b);
  const points: SeriesPoint[] = [];
  for (const [p, q, parts] of pairs) {
    const result = quick(p, q);
    if (isFailure(result)) return fail(result);
    if (!Number.isFinite(result.value)) return run.fail('not-finite', range, {});
    points.push({ time: parts[0]!.time, value: result.value, contributions: result.contributions, ...mergedParts(parts) });
  }
  return { type: 'series', unit: probe.unit, points, holes, content: 'number' };
}

type Operation = (p: NumberValue, q: NumberValue) => NumberValue | Failure;

/** Sums and differences of values that need no conversion: the unit is worked out once for the whole series. */
function summed(operator: Arithmetic, unit: Unit): Operation {
  const sign = operator === '+' ? 1 : -1;
  return (p, q) => combine(p.value + sign * q.value, unit, [{ value: p, derivative: 1 }, { value: q, derivative: sign }]);
}

function alike(...units: readonly Unit[]): boolean {
  return units.every((unit) => unit.factor === units[0]!.factor && sameDimension(unit.dimension, units[0]!.dimension) && unit.kind === units[0]!.kind);
}

/** Products and quotients by the scale that 1 and 1 gave. */
function scaled(operator: Arithmetic, probe: NumberValue): Operation {
  const scale = probe.value;
  if (operator === '*') return (p, q) => combine(p.value * q.value * scale, probe.unit, [{ value: p, derivative: q.value * scale }, { value: q, derivative: p.value * scale }]);
  return (p, q) => (q.value === 0 ? { failure: 'zero-base', args: { unit: q.unit.symbol } } : combine(p.value / q.value * scale, probe.unit, [
    { value: p, derivative: scale / q.value }, { value: q, derivative: -p.value * scale / (q.value * q.value) },
  ]));
}

type Pair = [FormulaNumber, FormulaNumber, readonly SeriesPoint[]];

function pairsOf(a: FormulaNumber | SeriesValue, b: FormulaNumber | SeriesValue): { pairs: Pair[]; holes: readonly number[] } {
  if (a.type === 'series' && b.type === 'series') {
    const joined = joinByTime(a, b);
    return { pairs: joined.pairs.map(([p, q]): Pair => [pointNumber(p, a.unit), pointNumber(q, b.unit), [p, q]]), holes: joined.holes };
  }
  if (a.type === 'series') return { pairs: a.points.map((p): Pair => [pointNumber(p, a.unit), b as FormulaNumber, [p]]), holes: a.holes ?? [] };
  const series = b as SeriesValue;
  return { pairs: series.points.map((q): Pair => [a, pointNumber(q, series.unit), [q]]), holes: series.holes ?? [] };
}

function finite(run: Run, value: FormulaNumber, range: SourceRange): FormulaNumber | null {
  return Number.isFinite(value.value) ? value : run.fail('not-finite', range, {});
}

/** `-x`. A temperature typed in the formula keeps its kind, so that `-5 degC` is five below zero. */
export function negated(run: Run, operand: Side, range: SourceRange): FormulaValue | null {
  const { value, expression } = operand;
  if (value.type === 'duration') return { type: 'duration', ...turnedStep(value) };
  if (!isNumeric(value)) return run.fail('operands-do-not-fit', range, { operator: '-', left: valueKind(value), right: '' });
  if (value.type === 'number') {
    if (isLiteral(expression)) return { ...value, value: value.value === 0 ? 0 : -value.value };
    const result = negate(value);
    return isFailure(result) ? failWith(run, result, range, value.unit, null) : withDecimals(result, value.decimals, undefined);
  }
  return mapSeries(run, value, range, (point) => {
    const result = negate(point);
    return isFailure(result) ? failWith(run, result, range, value.unit, null) : result;
  }, true);
}

/** A series with every point changed by a function of one number; `swaps` turns "below" into "above". */
export function mapSeries(
  run: Run, series: SeriesValue, range: SourceRange, change: (value: NumberValue) => NumberValue | null, swaps = false,
): SeriesValue | null {
  let unit: Unit | null = null;
  const points: SeriesPoint[] = [];
  for (const point of series.points) {
    const result = change(pointNumber(point, series.unit));
    if (!result) return null;
    if (!Number.isFinite(result.value)) return run.fail('not-finite', range, {});
    unit = result.unit;
    points.push({ ...point, value: result.value, contributions: result.contributions, flags: swaps ? swappedFlags(point.flags) : point.flags });
  }
  if (!unit) {
    const probe = change(exactValue(1, series.unit));
    if (!probe) return null;
    unit = probe.unit;
  }
  return { type: 'series', unit, points, holes: series.holes ?? [], content: 'number' };
}

function swappedFlags(flags: number): number {
  const kept = flags & ~censored;
  return kept | (flags & flag.below ? flag.above : 0) | (flags & flag.above ? flag.below : 0);
}

/** `a < b` and its relatives. Values within 1e-9 of the larger are equal. */
export function compareValues(run: Run, operator: Comparison, left: Side, right: Side, range: SourceRange): FormulaValue | null {
  const [a, b] = adapted(left, right, operator).map(asInstant) as [FormulaValue, FormulaValue];
  if (a.type === 'instant' && b.type === 'instant') return truth(holds(operator, Math.sign(a.instant - b.instant)));
  if (a.type === 'duration' && b.type === 'duration') return truth(holds(operator, Math.sign(a.duration - b.duration)));
  if (operator === '==') {
    if (a.type === 'truth' && b.type === 'truth') return truth(a.truth === b.truth);
    if (a.type === 'word' && b.type === 'word') return truth(a.word === b.word);
    if (isWords(a) && b.type === 'word') return wordsEqual(a, b.word);
    if (isWords(b) && a.type === 'word') return wordsEqual(b, a.word);
    if (isWords(a) && isWords(b)) return wordSeriesEqual(a, b);
  }
  const x = a.type === 'duration' ? durationNumber(a) : a;
  const y = b.type === 'duration' ? durationNumber(b) : b;
  if (!isNumeric(x) || !isNumeric(y)) return run.fail('operands-do-not-fit', range, { operator, left: valueKind(a), right: valueKind(b) });
  const fail = (failure: Failure): null => failWith(run, failure, range, unitOf(x), unitOf(y), bareRange(left, right));
  if (x.type === 'number' && y.type === 'number') {
    const order = compare(x, y);
    return typeof order === 'number' ? truth(holds(operator, order)) : fail(order);
  }
  const probe = compare(exactValue(1, x.unit), exactValue(1, y.unit));
  if (typeof probe !== 'number') return fail(probe);
  const { pairs, holes } = pairsOf(x, y);
  const points: SeriesPoint[] = [];
  for (const [p, q, parts] of pairs) {
    const order = compare(p, q);
    if (typeof order !== 'number') return fail(order);
    const merged = mergedParts(parts);
    const limits = x.type === 'series' ? parts[0]!.flags & censored : 0;
    const otherLimits = y.type === 'series' ? parts[parts.length - 1]!.flags & censored : 0;
    const known = (limits | otherLimits) === 0 ? holds(operator, order) : limitedTruth(operator, order, limits, otherLimits);
    points.push({
      time: parts[0]!.time, value: known === true ? 1 : 0, contributions: null, ...merged,
      flags: known === null ? merged.flags : merged.flags & ~censored,
    });
  }
  return { type: 'series', unit: one, points, holes, content: 'truth' };
}

function truth(value: boolean): FormulaValue { return { type: 'truth', truth: value }; }

function holds(operator: Comparison, order: number): boolean {
  switch (operator) {
    case '<': return order < 0;
    case '>': return order > 0;
    case '<=': return order <= 0;
    case '>=': return order >= 0;
    case '==': return order === 0;
  }
}

/** What `<0.05` and `>14` still tell: true, false, or null where they cannot. */
function limitedTruth(operator: Comparison, order: number, left: number, right: number): boolean | null {
  const leftSmaller = (left & flag.below) !== 0 || (right & flag.above) !== 0;
  const leftLarger = (left & flag.above) !== 0 || (right & flag.below) !== 0;
  if (leftSmaller === leftLarger) return null;
  if (leftSmaller && order <= 0) return operator === '<' || operator === '<=';
  if (leftLarger && order >= 0) return operator === '>' || operator === '>=';
  return null;
}

export function isWords(value: FormulaValue): value is SeriesValue {
  return value.type === 'series' && value.content === 'word';
}

function wordsEqual(series: SeriesValue, word: string): SeriesValue {
  const index = series.scale?.indexOf(word) ?? -1;
  return {
    type: 'series', unit: one, content: 'truth', holes: series.holes ?? [],
    points: series.points.map((point) => ({ ...point, value: point.value === index ? 1 : 0, contributions: null })),
  };
}

function wordSeriesEqual(a: SeriesValue, b: SeriesValue): SeriesValue {
  const { pairs, holes } = joinByTime(a, b);
  return {
    type: 'series', unit: one, content: 'truth', holes,
    points: pairs.map(([p, q]) => ({
      time: p.time, contributions: null, ...mergedParts([p, q]), value: a.scale?.[p.value] !== undefined && a.scale[p.value] === b.scale?.[q.value] ? 1 : 0,
    })),
  };
}

/** `and`, `or`, at every reading where a side is a series of truths. */
export function combineTruths(run: Run, operator: 'and' | 'or', a: FormulaValue, b: FormulaValue, range: SourceRange): FormulaValue | null {
  const join = (p: boolean | null, q: boolean | null): boolean | null => {
    if (operator === 'and') return p === false || q === false ? false : p === null || q === null ? null : true;
    return p === true || q === true ? true : p === null || q === null ? null : false;
  };
  if (a.type === 'truth' && b.type === 'truth') return truth(join(a.truth, b.truth) === true);
  const x = isTruths(a) ? a : null;
  const y = isTruths(b) ? b : null;
  if ((!x && a.type !== 'truth') || (!y && b.type !== 'truth')) return run.fail('operands-do-not-fit', range, { operator, left: valueKind(a), right: valueKind(b) });
  const made = (parts: readonly SeriesPoint[], known: boolean | null): SeriesPoint => {
    const merged = mergedParts(parts);
    return { time: parts[0]!.time, contributions: null, ...merged, value: known === true ? 1 : 0, flags: known === null ? merged.flags : merged.flags & ~censored };
  };
  if (x && y) {
    const { pairs, holes } = joinByTime(x, y);
    return { type: 'series', unit: one, content: 'truth', holes, points: pairs.map(([p, q]) => made([p, q], join(pointTruth(p), pointTruth(q)))) };
  }
  const series = (x ?? y)!;
  const single = (a.type === 'truth' ? a : b) as { truth: boolean };
  return { type: 'series', unit: one, content: 'truth', holes: series.holes ?? [], points: series.points.map((point) => made([point], join(pointTruth(point), single.truth))) };
}

export function isTruths(value: FormulaValue): value is SeriesValue {
  return value.type === 'series' && value.content === 'truth';
}

/** true, false, or null where a reading outside the instrument's range cannot tell. */
export function pointTruth(point: SeriesPoint): boolean | null {
  return (point.flags & censored) !== 0 ? null : point.value === 1;
}

export function invertTruth(run: Run, value: FormulaValue, range: SourceRange): FormulaValue | null {
  if (value.type === 'truth') return truth(!value.truth);
  if (isTruths(value)) return { ...value, points: value.points.map((point) => ({ ...point, value: point.value === 1 ? 0 : 1 })) };
  return run.fail('operands-do-not-fit', range, { operator: 'not', left: valueKind(value), right: '' });
}

/** The unit of a rate: per hour, of differences. */
export function rateUnit(unit: Unit): Unit { return perHour(differenceUnit(unit)); }
