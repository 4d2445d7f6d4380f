// Functions about levels: when a series first goes below or above one, for how long, when it settles and when it turns.
import { hoursBeyond } from '../../analysis/crossings.ts';
import { settledAt, turningPoint } from '../../analysis/settling.ts';
import { formatDuration } from '../../time/text.ts';
import { parseUnit } from '../../quantities/units.ts';
import { expandedUncertainty, isFailure, numberValue, subtract } from '../../quantities/value.ts';
import type { Call } from '../call.ts';
import type { FormulaValue, SeriesPoint } from '../types.ts';
import { seriesAndWindow, seriesParameter, windowParameter, type FunctionEntry, type Parameter, type Signature } from './entry.ts';

const level: Parameter = { name: 'level', type: 'number', about: 'a value in the unit of the series, such as 6 mg/L' };
const levelSignature: readonly Signature[] = [{ parameters: [seriesParameter, level, windowParameter], options: [] }];
const hourUnit = parseUnit('h')!;

function firstBeyond(call: Call, side: 'below' | 'above'): FormulaValue | null {
  const wanted = call.levelIn(0, call.number(1), call.rangeOf(1));
  const points = call.points(0, 2);
  if (!points || !wanted) return null;
  const margin = 1e-9 * Math.abs(wanted.value);
  const found = points.find((point) => (side === 'below' ? point.value < wanted.value - margin : point.value > wanted.value + margin));
  if (!found) {
    return call.fail('level-not-reached', { name: call.run.textOf(call.rangeOf(0)), side, level: call.run.textOf(call.rangeOf(1)) }, call.rangeOf(1));
  }
  call.use([found]);
  return { type: 'instant', instant: found.time };
}

function hours(call: Call, side: 'below' | 'above'): FormulaValue | null {
  const wanted = call.levelIn(0, call.number(1), call.rangeOf(1));
  const points = call.points(0, 2);
  if (!points || !wanted || !call.needs(points, 2, 0)) return null;
  for (let index = 1; index < points.length; index += 1) {
    const from = points[index - 1]!;
    const to = points[index]!;
    const interval = call.interval(0, from.time);
    if (interval !== null && to.time - from.time > 2 * interval) {
      call.remark('gap', { from: call.time(from.time), to: call.time(to.time) });
      call.fail('gap-bridged', { from: call.time(from.time), to: call.time(to.time) }, call.rangeOf(0));
    }
  }
  call.use(points);
  call.remark('straight-lines', { count: points.length });
  return { ...numberValue(hoursBeyond(points, wanted.value, side).hours, hourUnit), decimals: 1 };
}

function settled(call: Call): FormulaValue | null {
  const length = call.duration('for');
  const tolerance = call.optionNumber('within');
  const within = tolerance && call.levelIn(0, tolerance, call.optionRange('within'), true);
  const points = call.points(0, 1);
  if (!points || length === null || !within) return null;
  const found = settledAt(points, Math.abs(within.value), length);
  if (!found) {
    return call.fail('never-settled', { name: call.run.textOf(call.rangeOf(0)), within: call.run.textOf(call.optionRange('within')), length: formatDuration(length) });
  }
  call.use(points.filter((point) => point.time >= found.time && point.time <= found.time + length));
  return { type: 'instant', instant: found.time };
}

function turning(call: Call): FormulaValue | null {
  const points = call.points(0, 1);
  if (!points || !call.needs(points, 2, 0)) return null;
  if (points.some((point) => point.contributions === null)) return call.fail('accuracy-needed', { name: call.run.textOf(call.rangeOf(0)), function: call.name }, call.rangeOf(0));
  const resolvable = (low: SeriesPoint, later: SeriesPoint): number => {
    const difference = subtract(call.numberAt(later, 0), call.numberAt(low, 0));
    return isFailure(difference) ? Number.POSITIVE_INFINITY : expandedUncertainty(difference) ?? Number.POSITIVE_INFINITY;
  };
  const found = turningPoint(points, resolvable);
  if (!found) return call.fail('never-turns', { name: call.run.textOf(call.rangeOf(0)) });
  const equal = points.filter((point) => point.value === found.value).length;
  if (equal > 1) call.remark('tie', { count: equal, time: call.time(found.time) });
  call.use([found]);
  return { type: 'instant', instant: found.time };
}

const mat = 'the oxygen in the mat tank';

export const levelFunctions: readonly FunctionEntry[] = [
  {
    name: 'first-below', group: 'levels', gives: 'instant', units: 'a time', signatures: levelSignature,
    definition: 'The time of the first reading below the level.', equation: 'first tᵢ with s(tᵢ) < level', source: null,
    example: { formula: 'first-below(mat.DO, 6 mg/L)', on: mat, gives: '04:00' }, words: 'the time of the first reading of {1} below {2}{window}',
    evaluate: (call) => firstBeyond(call, 'below'),
  },
  {
    name: 'first-above', group: 'levels', gives: 'instant', units: 'a time', signatures: levelSignature,
    definition: 'The time of the first reading above the level.', equation: 'first tᵢ with s(tᵢ) > level', source: null,
    example: { formula: 'first-above(mat.DO, 6 mg/L, 06:00..end)', on: mat, gives: '07:00' }, words: 'the time of the first reading of {1} above {2}{window}',
    evaluate: (call) => firstBeyond(call, 'above'),
  },
  {
    name: 'hours-below', group: 'levels', gives: 'number', units: 'h', signatures: levelSignature,
    definition: 'For how many hours the straight lines between the readings lie below the level.',
    equation: 'Σ of the stretches with s(t) < level, s(t) by straight lines', source: null,
    example: { formula: 'hours-below(mat.DO, 6 mg/L)', on: mat, gives: '2.5 h' }, words: 'the time that {1} spent below {2}{window}',
    evaluate: (call) => hours(call, 'below'),
  },
  {
    name: 'hours-above', group: 'levels', gives: 'number', units: 'h', signatures: levelSignature,
    definition: 'For how many hours the straight lines between the readings lie above the level.',
    equation: 'Σ of the stretches with s(t) > level, s(t) by straight lines', source: null,
    example: { formula: 'hours-above(mat.DO, 8 mg/L)', on: mat, gives: '2.7 h' }, words: 'the time that {1} spent above {2}{window}',
    evaluate: (call) => hours(call, 'above'),
  },
  {
    name: 'settled', group: 'levels', gives: 'instant', units: 'a time',
    signatures: [{
      parameters: [seriesParameter, windowParameter],
      options: [
        { name: 'within', type: 'number', required: true, about: 'the most that later readings may differ, such as within 0.05 mg/L' },
        { name: 'for', type: 'duration', required: true, about: 'how long it must last, such as for 1 h' },
      ],
    }],
    definition: 'The first reading time from which every reading during the following length of time differs from it by at most the given amount, with at least three readings in it.',
    equation: 'first tᵢ with |s(t) − s(tᵢ)| ≤ x for tᵢ ≤ t ≤ tᵢ + d', source: null,
    example: { formula: 'settled(mat.T, within 0.1 degC, for 2 h)', on: 'the temperature of the mat tank', gives: '20:00' },
    words: 'the time from which {1} kept within {within} for {for}{window}',
    evaluate: settled,
  },
  {
    name: 'turning-point', group: 'levels', gives: 'instant', units: 'a time', signatures: seriesAndWindow,
    definition: 'The time of the lowest reading, provided that the series later rises by more than the instrument resolves; of several equal ones, the first.',
    equation: 't of min(s), with a later s(t) − min(s) > U', source: null,
    example: { formula: 'turning-point(mat.DO)', on: 'two equal lowest readings, at 05:00 and 06:00', gives: '05:00' }, words: 'the time at which {1} turned upward{window}',
    evaluate: turning,
  },
];
