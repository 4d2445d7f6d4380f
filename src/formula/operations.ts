// Arithmetic on formula values, pointwise on series. Failures become problems at the operator.
import { flag } from '../dataset/types.ts';
import { sameDimension } from '../quantities/dimension.ts';
import { secondDigit } from '../quantities/format.ts';
import { differenceUnit, perHour } from '../quantities/units.ts';
import { add, combine, divide, exactValue, isFailure, multiply, negate, subtract, type Failure } from '../quantities/value.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { adapted, asInstant, bareRange, durationNumber, failWith, isLiteral, isNumeric, numberDuration, pairsOf, unitOf, type Arithmetic, type Side } from './operands.ts';
import type { Run } from './run.ts';
import { censored, mergedParts, one, pointNumber } from './seriesValues.ts';
import { addedTo, scaledBy, turned, withInterval, type TimeInterval } from './timeIntervals.ts';
import type { DurationValue, FormulaNumber, FormulaValue, InstantValue, SeriesPoint, SeriesValue } from './types.ts';
import { valueKind } from './valueKinds.ts';

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

/** The digits of the operands; a product or quotient shows two significant digits at least. */
function withDecimals(value: NumberValue, a: number | undefined, b: number | undefined, scales = false): FormulaNumber {
  if (a === undefined && b === undefined) return value;
  const own = Math.max(a ?? 0, b ?? 0);
  const size = Math.abs(value.value);
  return { ...value, decimals: scales && size > 0 && size < 1e300 ? Math.max(own, Math.min(secondDigit(size), 6)) : own };
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

/** The unit of a rate: per hour, of differences. */
export function rateUnit(unit: Unit): Unit { return perHour(differenceUnit(unit)); }
