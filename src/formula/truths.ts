// Comparisons and logic on formula values, at every reading where a side is a series.
import { flag } from '../dataset/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { compare, exactValue, type Failure } from '../quantities/value.ts';
import { adapted, asInstant, bareRange, durationNumber, failWith, isNumeric, pairsOf, unitOf, type Comparison, type Side } from './operands.ts';
import type { Run } from './run.ts';
import { censored, joinByTime, mergedParts, one } from './seriesValues.ts';
import type { FormulaValue, SeriesPoint, SeriesValue } from './types.ts';
import { valueKind } from './valueKinds.ts';

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
    const limits = x.type === 'series' ? parts[0]!.flags & censored : 0;
    const otherLimits = y.type === 'series' ? parts[parts.length - 1]!.flags & censored : 0;
    const known = (limits | otherLimits) === 0 ? holds(operator, order) : limitedTruth(operator, order, limits, otherLimits);
    points.push(truthPoint(parts, known));
  }
  return { type: 'series', unit: one, points, holes, content: 'truth' };
}

function truth(value: boolean): FormulaValue { return { type: 'truth', truth: value }; }

/** What holds at the time of some readings; null where a reading outside its instrument's range cannot tell. */
function truthPoint(parts: readonly SeriesPoint[], known: boolean | null): SeriesPoint {
  const merged = mergedParts(parts);
  return { time: parts[0]!.time, contributions: null, ...merged, value: known === true ? 1 : 0, flags: known === null ? merged.flags : merged.flags & ~censored };
}

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
  if (x && y) {
    const { pairs, holes } = joinByTime(x, y);
    return { type: 'series', unit: one, content: 'truth', holes, points: pairs.map(([p, q]) => truthPoint([p, q], join(pointTruth(p), pointTruth(q)))) };
  }
  const series = (x ?? y)!;
  const single = (a.type === 'truth' ? a : b) as { truth: boolean };
  return { type: 'series', unit: one, content: 'truth', holes: series.holes ?? [], points: series.points.map((point) => truthPoint([point], join(pointTruth(point), single.truth))) };
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
