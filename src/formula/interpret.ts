// The evaluator proper: a syntax tree to a value, with problems at their places and the working noted on the way.
import { toDocumentRange } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import { unitOf } from '../quantities/concentration.ts';
import { nearestUnit, parseUnit } from '../quantities/units.ts';
import { differenceUnit } from '../quantities/units.ts';
import { exactValue, isFailure, toUnit } from '../quantities/value.ts';
import type { Unit } from '../quantities/types.ts';
import { checkArguments } from './arguments.ts';
import { Call } from './call.ts';
import { functionByName, functionNames, otherFunctionNames } from './catalogue.ts';
import { typedInstant } from './instants.ts';
import { nearestName } from './names.ts';
import { durationNumber, failWith, type Side } from './operands.ts';
import { calculate, mapSeries, negated } from './operations.ts';
import { resolveReference } from './references.ts';
import type { Run } from './run.ts';
import { combineTruths, compareValues, invertTruth, isWords } from './truths.ts';
import { one } from './seriesValues.ts';
import { showValue } from './show.ts';
import type { Expression, FormulaValue } from './types.ts';
import { valueKind } from './valueKinds.ts';

/** The value of a tree, or null after a problem was raised. Every part is looked at, so that all problems show at once. */
export function interpret(run: Run, expression: Expression): FormulaValue | null {
  switch (expression.kind) {
    case 'error': return null;
    case 'number': {
      const unit = expression.unit === null ? one : knownUnit(run, expression.unit, expression.unitRange ?? expression.range);
      return unit ? exactValue(expression.value, unit) : null;
    }
    case 'duration': return { type: 'duration', duration: expression.duration };
    case 'instant': {
      const instant = typedInstant(run, expression.text, expression.range);
      return instant === null ? null : { type: 'instant', instant, written: true };
    }
    case 'word': return { type: 'word', word: expression.text };
    case 'reference': return resolveAndNote(run, expression);
    case 'call': return callFunction(run, expression);
    case 'convert': return converted(run, expression);
    case 'unary': {
      const value = interpret(run, expression.operand);
      if (!value) return null;
      return expression.operator === 'not' ? invertTruth(run, value, expression.range) : negated(run, { value, expression: expression.operand }, expression.range);
    }
    case 'binary': return binary(run, expression);
  }
}

function knownUnit(run: Run, text: string, range: SourceRange): Unit | null {
  const unit = parseUnit(text);
  if (unit) return unit;
  const nearest = nearestUnit(text);
  return run.fail('unknown-unit', range, { unit: text, nearest: nearest ?? '' }, nearest ? [run.replace(range, nearest, { preferred: true })] : []);
}

function resolveAndNote(run: Run, expression: Extract<Expression, { kind: 'reference' }>): FormulaValue | null {
  const value = resolveReference(run, expression, functionNames);
  if (value && expression.parts.length === 1 && run.context.resultsByName.has(expression.parts[0]!)) {
    const behind = run.evaluateResult(expression.parts[0]!)?.working ?? [];
    run.working.push({
      formula: expression.parts[0]!, value: showValue(value, run.context), readings: behind.flatMap((step) => step.readings), function: null,
      remarks: behind.flatMap((step) => step.remarks),
    });
  }
  return value;
}

type Binary = Extract<Expression, { kind: 'binary' }>;

/** `a < b < c`: the parser has said so at this operator, and there is nothing to add. */
function isChain(run: Run, { operatorRange }: Binary): boolean {
  const { start } = toDocumentRange(run.formula, operatorRange);
  return run.problems.some((each) => each.code === 'formula-chained' && each.range.start === start);
}

function binary(run: Run, expression: Binary): FormulaValue | null {
  const { operator, operatorRange } = expression;
  if (operator === '==') {
    const words = comparedWord(run, expression);
    if (words === 'failed') return null;
    if (words) return compareValues(run, '==', words[0], words[1], operatorRange);
  }
  const left = interpret(run, expression.left);
  const right = interpret(run, expression.right);
  if (!left || !right || isChain(run, expression)) return null;
  const a: Side = { value: left, expression: expression.left };
  const b: Side = { value: right, expression: expression.right };
  switch (operator) {
    case '..': return windowOf(run, left, right, expression);
    case 'and': case 'or': return combineTruths(run, operator, left, right, operatorRange);
    case '+': case '-': case '*': case '/': return calculate(run, operator, a, b, operatorRange);
    default: return compareValues(run, operator, a, b, operatorRange);
  }
}

/** `mat.behaviour == calm`: beside words of a scale, a bare name is looked up in that scale first. */
function comparedWord(run: Run, expression: Binary): [Side, Side] | 'failed' | null {
  const sides = [expression.left, expression.right] as const;
  for (const [index, side] of sides.entries()) {
    const other = sides[1 - index]!;
    if (side.kind !== 'reference' || side.parts.length !== 1 || other.kind !== 'reference' || other.parts.length !== 2) continue;
    const word = side.parts[0]!;
    const measure = run.context.protocol?.measure.find((each) => each.id === other.parts[1]);
    if (!measure?.scale) continue;
    const series = interpret(run, other);
    if (!series) return 'failed';
    if (!isWords(series)) continue;
    if (!measure.scale.includes(word)) {
      const nearest = nearestName(word, measure.scale);
      run.fail('word-not-in-scale', side.range, { word, quantity: measure.id, scale: measure.scale }, nearest ? [run.replace(side.range, nearest, { preferred: true })] : []);
      return 'failed';
    }
    return [{ value: series, expression: other }, { value: { type: 'word', word }, expression: side }];
  }
  return null;
}

function windowOf(run: Run, left: FormulaValue, right: FormulaValue, expression: Binary): FormulaValue | null {
  const from = endOf(left);
  const to = endOf(right);
  if (!from) run.fail('wrong-argument', expression.left.range, { function: '..', argument: 'from', expected: ['wants-instant'], found: valueKind(left) });
  if (!to) run.fail('wrong-argument', expression.right.range, { function: '..', argument: 'to', expected: ['wants-instant'], found: valueKind(right) });
  if (!from || !to) return null;
  if (from.instant > to.instant) return run.fail('window-backwards', expression.range, { key: '', text: ['from-to', run.exactTime(from.instant), run.exactTime(to.instant)] });
  return {
    type: 'window', from: from.instant, to: to.instant, ...(from.written ? { fromWritten: true } : {}), ...(to.written ? { toWritten: true } : {}),
  };
}

function endOf(value: FormulaValue): { instant: number; written: boolean } | null {
  if (value.type === 'instant') return { instant: value.instant, written: value.written === true };
  return value.type === 'event' ? { instant: value.instant, written: false } : null;
}

function converted(run: Run, expression: Extract<Expression, { kind: 'convert' }>): FormulaValue | null {
  const value = interpret(run, expression.operand);
  const unit = knownUnit(run, expression.unit, expression.unitRange);
  if (!value || !unit) return null;
  const number = value.type === 'duration' ? durationNumber(value) : value;
  if (number.type !== 'number' && (number.type !== 'series' || (number.content ?? 'number') !== 'number')) {
    return run.fail('unit-mismatch', expression.unitRange, { left: valueKind(value), right: unit.symbol });
  }
  const wanted = unitOf(unitForKind(number.unit, unit), number.unit.substance);
  const fail = (range: SourceRange) => (failure: Parameters<typeof failWith>[1]): null => failWith(run, failure, range, number.unit, unit);
  if (number.type === 'number') {
    const result = toUnit(number, wanted);
    return isFailure(result) ? fail(expression.unitRange)(result) : result;
  }
  if (number.unit.symbol === wanted.symbol) return number;
  const series = mapSeries(run, number, expression.unitRange, (point) => {
    const result = toUnit(point, wanted);
    return isFailure(result) ? fail(expression.unitRange)(result) : result;
  });
  return series && { ...series, points: series.points.map(({ decimals: _, ...point }) => point) };
}

/** `fall(mat.T) in degF`: a temperature unit asked of a difference means the difference in that unit's degrees. */
function unitForKind(from: Unit, to: Unit): Unit {
  const difference = differenceUnit(to);
  return from.kind !== to.kind && from.kind === difference.kind ? difference : to;
}

function callFunction(run: Run, expression: Extract<Expression, { kind: 'call' }>): FormulaValue | null {
  const entry = functionByName(expression.name);
  const values = expression.operands.map((operand) => interpret(run, operand));
  const optionValues = expression.options.map((option) => interpret(run, option.value));
  if (!entry) {
    const nearest = (Object.hasOwn(otherFunctionNames, expression.name.toLowerCase()) ? otherFunctionNames[expression.name.toLowerCase()] : null) ?? nearestName(expression.name, functionNames);
    return run.fail('unknown-function', expression.nameRange, { name: expression.name, nearest: nearest ?? '' },
      nearest ? [run.replace(expression.nameRange, nearest, { preferred: true })] : []);
  }
  const checked = checkArguments(run, entry, expression, values, optionValues);
  if (!checked) return null;
  const call = new Call({ run, name: expression.name, range: expression.range, ...checked });
  const value = entry.evaluate(call);
  if (!value) return null;
  if (value.type === 'number' && !Number.isFinite(value.value)) return run.fail('not-finite', expression.range, {});
  run.working.push({
    formula: run.textOf(expression.range), value: showValue(value, run.context), readings: distinct(call.used), function: entry.name, remarks: call.remarks,
  });
  return value;
}

function distinct(ranges: readonly SourceRange[]): SourceRange[] {
  const seen = new Set<number>();
  return ranges.filter((range) => !seen.has(range.start) && seen.add(range.start));
}

/** The step that stands for the whole formula, where it is no single call. */
export function noteWhole(run: Run, expression: Expression, value: FormulaValue): void {
  if (expression.kind === 'call') return;
  if (expression.kind === 'reference' && expression.parts.length === 1) return;
  run.working.push({
    formula: run.formula.text.trim(), value: showValue(value, run.context), readings: distinct(run.working.flatMap((step) => step.readings)), function: null, remarks: [],
  });
}

export function trimmed(text: string): SourceRange {
  const start = text.length - text.trimStart().length;
  return { start: Math.min(start, text.length), end: Math.max(start, text.trimEnd().length) };
}
