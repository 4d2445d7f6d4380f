// Functions that pick single readings or count them.
import { firstFrom } from '../../analysis/points.ts';
import { combine, exactValue } from '../../quantities/value.ts';
import type { Call } from '../call.ts';
import { one } from '../seriesValues.ts';
import type { FormulaValue, SeriesPoint } from '../types.ts';
import { isTruths, pointTruth } from '../truths.ts';
import { readingsParameter, seriesParameter, windowParameter, type FunctionEntry } from './entry.ts';

/** A reading as a value: a number, or a word of the scale. */
function readingOf(call: Call, point: SeriesPoint, series = 0): FormulaValue {
  call.use([point]);
  const value = call.series(series);
  return value.content === 'word' ? { type: 'word', word: value.scale?.[point.value] ?? '' } : call.numberAt(point, series);
}

function picked(call: Call, which: 'first' | 'last'): FormulaValue | null {
  const points = call.points(0, 1, { limits: true });
  if (!points) return null;
  const point = (which === 'first' ? points[0] : points.at(-1))!;
  return call.within([point], 0) ? readingOf(call, point) : null;
}

function isNumbers(call: Call): boolean { return (call.series(0).content ?? 'number') === 'number'; }

/** A value between two readings by a straight line. */
export function interpolated(call: Call, series: number, instant: number, at = call.rangeOf(1)): FormulaValue | null {
  const value = call.series(series);
  const { points } = value;
  const index = firstFrom(points, instant);
  const after = points[index];
  if (after?.time === instant) return call.within([after], series) ? readingOf(call, after, series) : null;
  const before = points[index - 1];
  if (!before || !after) {
    const name = call.run.textOf(call.rangeOf(series));
    if (points.length === 0) return call.fail('no-readings', { name }, call.rangeOf(series));
    return call.fail('outside-readings', { name, time: call.time(instant), first: call.time(points[0]!.time), last: call.time(points.at(-1)!.time) }, at);
  }
  if (!call.within([before, after], series)) return null;
  const part = (instant - before.time) / (after.time - before.time);
  const from = call.numberAt(before, series);
  const to = call.numberAt(after, series);
  const mixed = combine(from.value + (to.value - from.value) * part, value.unit, [{ value: from, derivative: 1 - part }, { value: to, derivative: part }]);
  call.use([before, after]);
  call.remark('interpolated', { from: call.time(before.time), to: call.time(after.time) });
  const interval = call.interval(series, before.time);
  if (interval !== null && after.time - before.time > 2 * interval) call.fail('gap-bridged', { from: call.time(before.time), to: call.time(after.time) }, call.range);
  const decimals = Math.max(before.decimals ?? 0, after.decimals ?? 0);
  return { ...mixed, ...(before.decimals === undefined ? {} : { decimals }) };
}

/** Planned reading times in the window without a recorded reading, up to the last reading of any column; `-` cells where nothing is planned. */
function missed(call: Call): number | null {
  const series = call.series(0);
  const stretch = call.window(1);
  const points = call.points(0, 1, { limits: true, empty: true });
  if (!points) return null;
  const inside = (time: number): boolean => !stretch || (time >= stretch.from && time <= stretch.to && !(stretch.opensAtLightsOff && time === stretch.from));
  const { protocol, dataset } = call.run.context;
  const slots = protocol?.schedule?.slots ?? [];
  const column = series.origin ? [...dataset.series.values()].find((each) => each.place === series.origin!.place && each.quantity === series.origin!.quantity && each.instrument === series.origin!.instrument) : null;
  const leftOut = new Set<number>();
  if (column) for (const [index, time] of column.times.entries()) if ((column.flags[index]! & 1) !== 0) leftOut.add(time);
  const holes = (series.holes ?? []).filter((time) => !leftOut.has(time));
  if (slots.length === 0) return holes.filter(inside).length;
  const lastTime = dataset.times.at(-1);
  if (lastTime === undefined) return 0;
  const taken = [...series.points.map((point) => point.time), ...leftOut].sort((a, b) => a - b);
  let count = 0;
  let next = 0;
  for (const [index, slot] of slots.entries()) {
    if (slot > lastTime || !inside(slot)) continue;
    const reach = Math.min(slot - (slots[index - 1] ?? -Infinity), (slots[index + 1] ?? Infinity) - slot, 86_400_000) / 2;
    while (next < taken.length && taken[next]! <= slot - reach) next += 1;
    if (!(next < taken.length && (taken[next]! < slot + reach || taken[next] === slot))) count += 1;
  }
  return count;
}

export const pickingFunctions: readonly FunctionEntry[] = [
  {
    name: 'at', group: 'picking', gives: 'reading', units: 'that of the series',
    signatures: [{ parameters: [readingsParameter, { name: 'time', type: 'instant', about: 'a time at which a reading was taken' }], options: [] }],
    definition: 'The reading taken at that very time; between readings it is a problem, because nothing was measured then.',
    equation: 'at(s, t) = s(t)', source: null,
    example: { formula: 'at(mat.DO, 23:00)', on: 'the oxygen in the mat tank', gives: '7.86 mg/L' },
    words: '{1} at {2}',
    evaluate: (call) => {
      const point = call.readingAt(0, call.instant(1), call.rangeOf(1), isNumbers(call) ? [call.run.replace({ start: call.range.start, end: call.range.start + call.name.length }, 'interpolate')] : []);
      return point && call.within([point], 0) ? readingOf(call, point) : null;
    },
  },
  {
    name: 'interpolate', group: 'picking', gives: 'number', units: 'that of the series',
    signatures: [{ parameters: [seriesParameter, { name: 'time', type: 'instant', about: 'a time between the first and the last reading' }], options: [] }],
    definition: 'The value at a time between two readings, on the straight line that joins them.',
    equation: 's(t) = s₁ + (s₂ − s₁) · (t − t₁) / (t₂ − t₁)', source: null,
    example: { formula: 'interpolate(mat.DO, 22:30)', on: 'the oxygen in the mat tank', gives: '8.06 mg/L' },
    words: '{1} at {2}, read off the straight line between two readings',
    evaluate: (call) => interpolated(call, 0, call.instant(1)),
  },
  {
    name: 'first', group: 'picking', gives: 'reading', units: 'that of the series', signatures: [{ parameters: [readingsParameter, windowParameter], options: [] }],
    definition: 'The first reading in the window.',
    equation: 'first(s) = s(t₁)', source: null,
    example: { formula: 'first(mat.DO)', on: 'the oxygen in the mat tank', gives: '8.20 mg/L' },
    words: 'the first reading of {1}{window}',
    evaluate: (call) => picked(call, 'first'),
  },
  {
    name: 'last', group: 'picking', gives: 'reading', units: 'that of the series', signatures: [{ parameters: [readingsParameter, windowParameter], options: [] }],
    definition: 'The last reading in the window.',
    equation: 'last(s) = s(tₙ)', source: null,
    example: { formula: 'last(mat.DO)', on: 'the oxygen in the mat tank', gives: '6.31 mg/L' },
    words: 'the last reading of {1}{window}',
    evaluate: (call) => picked(call, 'last'),
  },
  {
    name: 'count', group: 'picking', gives: 'number', units: 'a plain number',
    signatures: [{ parameters: [{ name: 'series', type: 'readings or condition', about: 'readings, or a condition on them' }, windowParameter], options: [] }],
    definition: 'How many readings stand in the window; of a condition, at how many readings it is true.',
    equation: 'count(s) = n', source: null,
    example: { formula: 'count(open.DO)', on: 'the oxygen in the open tank, one reading missing', gives: '11' },
    words: 'the number of readings of {1}{window}',
    evaluate: (call) => {
      const points = call.points(0, 1, { counted: true, limits: !isTruths(call.series(0)), empty: true });
      if (!points) return null;
      const counted = isTruths(call.series(0)) ? points.filter((point) => pointTruth(point)) : points;
      call.use(counted);
      return exactValue(counted.length, one);
    },
  },
  {
    name: 'missing', group: 'picking', gives: 'number', units: 'a plain number', signatures: [{ parameters: [readingsParameter, windowParameter], options: [] }],
    definition: 'How many planned readings up to the last one logged were not taken; a reading left out was taken and does not count.',
    equation: 'missing(s) = planned times without a reading', source: null,
    example: { formula: 'missing(open.DO)', on: 'the oxygen in the open tank, one reading missing', gives: '1' },
    words: 'the number of missed readings of {1}{window}',
    evaluate: (call) => {
      const count = missed(call);
      return count === null ? null : exactValue(count, one);
    },
  },
];
