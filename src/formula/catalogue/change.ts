// Functions of change between readings: end to end, per cent, per hour, by least squares, and at its steepest.
import { leastSquaresLine } from '../../analysis/line.ts';
import { neighbouringStretches, stretchesOver, type Stretch } from '../../analysis/steepest.ts';
import { measureOf } from '../../dataset/readingValue.ts';
import { measureByName } from '../../quantities/measures.ts';
import { hour } from '../../time/instant.ts';
import { decimalsFor, formatNumber, formatValue, rateDecimals } from '../../quantities/format.ts';
import { isStatisticsProblem } from '../../statistics/outcome.ts';
import { serialEstimate } from '../../statistics/serialModel.ts';
import { theilSen } from '../../statistics/theilSen.ts';
import { medianStep } from '../../analysis/points.ts';
import { formatDuration } from '../../time/text.ts';
import { differenceUnit, parseUnit } from '../../quantities/units.ts';
import { combine, expandedUncertainty, isFailure, negate, numberValue, percentChange, subtract } from '../../quantities/value.ts';
import type { NumberValue } from '../../quantities/types.ts';
import type { Call } from '../call.ts';
import { rateUnit } from '../operations.ts';
import { mergedParts } from '../seriesValues.ts';
import type { FormulaNumber, FormulaValue, SeriesPoint } from '../types.ts';
import { seriesAndWindow, seriesParameter, windowParameter, type FunctionEntry, type OptionParameter, type Signature } from './entry.ts';
import { decimalsOf, enoughDecimals, remarkSerial } from './summary.ts';

function change(call: Call, sign: 1 | -1): FormulaNumber | null {
  const ends = call.ends(0, 1);
  if (!ends) return null;
  const [from, to] = sign === 1 ? [ends.first, ends.last] : [ends.last, ends.first];
  const result = subtract(call.numberAt(to, 0), call.numberAt(from, 0));
  return isFailure(result) ? call.failure(result) : { ...result, ...decimalsOf([ends.first, ends.last]) };
}

function percent(call: Call, sign: 1 | -1): FormulaNumber | null {
  const ends = call.ends(0, 1);
  return ends && percentBetween(call, ends.first, ends.last, sign);
}

function percentBetween(call: Call, first: SeriesPoint, last: SeriesPoint, sign: 1 | -1): FormulaNumber | null {
  const { origin, unit } = call.series(0);
  const { protocol } = call.run.context;
  const what = origin && protocol ? measureOf(protocol, origin.quantity, origin.instrument)?.what?.value : undefined;
  if (what !== undefined && measureByName(what)?.trueZero === false) return call.fail('no-true-zero', { unit: unit.symbol }, call.rangeOf(0));
  const result = percentChange(call.numberAt(first, 0), call.numberAt(last, 0));
  if (isFailure(result)) {
    if (result.failure === 'zero-base') return call.fail('zero-base', { time: call.time(first.time), unit: call.series(0).unit.symbol }, call.rangeOf(0));
    return call.failure(result, call.rangeOf(0));
  }
  const signed = sign === 1 ? result : negate(result);
  return isFailure(signed) ? call.failure(signed) : { ...signed, decimals: 1 };
}

function rate(call: Call): FormulaNumber | null {
  const ends = call.ends(0, 1);
  return ends && rateBetween(call, ends.first, ends.last, 1);
}

function rateBetween(call: Call, from: SeriesPoint, to: SeriesPoint, sign: 1 | -1): FormulaNumber {
  const hours = (to.time - from.time) / hour;
  const value = sign * (to.value - from.value) / hours;
  const parts = [{ value: call.numberAt(to, 0), derivative: sign / hours }, { value: call.numberAt(from, 0), derivative: -sign / hours }];
  return withRateDecimals(combine(value, rateUnit(call.series(0).unit), parts), [from, to]);
}

/** Digits as the readings and the hours between the first and the last of them allow. */
function withRateDecimals(value: NumberValue, points: readonly SeriesPoint[]): FormulaNumber {
  const { decimals } = decimalsOf(points);
  const hours = (points.at(-1)!.time - points[0]!.time) / hour;
  return decimals === undefined || !(hours > 0) ? value : { ...value, decimals: rateDecimals(value.value, decimals, hours, expandedUncertainty(value)) };
}

/** Digits of a slope through many readings: one more than theirs, no more than its ± asks for. */
function withSlopeDecimals(value: NumberValue, points: readonly SeriesPoint[]): FormulaNumber {
  const { decimals } = enoughDecimals(value.value, decimalsOf(points, 1));
  const half = expandedUncertainty(value);
  if (decimals === undefined) return value;
  return { ...value, decimals: half !== null && half > 0 ? Math.min(decimals, decimalsFor(value.value, half)) : decimals };
}

function slope(call: Call): FormulaNumber | null {
  const points = call.points(0, 1);
  if (!points || !call.needs(points, 3, 0)) return null;
  const line = leastSquaresLine(points);
  if (!line) return call.fail('too-few-readings', { function: call.name, name: call.run.textOf(call.rangeOf(0)), count: 1, least: 3 });
  call.use(points);
  call.remark('least-squares', { count: points.length });
  const step = medianStep(points);
  const hours = points.map((point) => (point.time - points[0]!.time) / hour);
  const gaps = points.map((point, index) => (index === 0 || !step ? 1 : (point.time - points[index - 1]!.time) / step));
  const serial = points.length <= mostForSerial ? serialEstimate(hours.map((each) => [1, each]), points.map((point) => point.value), 1, { gaps }) : null;
  if (serial && !isStatisticsProblem(serial)) {
    // Half the interval over 2, so that the 95 % half-width printed is that of Student's t.
    const contributions = new Map([[`scatter:${call.run.textOf(call.range)}`, (serial.interval.high - serial.interval.low) / 4]]);
    const value = numberValue(line.slope, rateUnit(call.series(0).unit), contributions);
    call.remark('serial', { value: formatValue(value, { uncertainty: true }), correlation: formatNumber(serial.correlation, 2) });
    remarkSerial(call, serial, points.length);
    return withSlopeDecimals(value, points);
  }
  const parts = points.map((point, index) => ({ value: call.numberAt(point, 0), derivative: line.weights[index]! }));
  return withSlopeDecimals(combine(line.slope, rateUnit(call.series(0).unit), parts), points);
}

/** The median of all slopes between two readings, with Sen's interval by Kendall's statistic. */
function robustSlope(call: Call): FormulaNumber | null {
  const points = call.points(0, 1);
  if (!points || !call.needs(points, 3, 0)) return null;
  const line = theilSen(points.map((point) => (point.time - points[0]!.time) / hour), points.map((point) => point.value));
  if (isStatisticsProblem(line)) {
    const args = { function: call.name, name: call.run.textOf(call.rangeOf(0)), count: points.length };
    return line.problem === 'too-many-arrangements' ? call.fail('too-many-readings', { ...args, most: 2000 }) : call.fail('too-few-readings', { ...args, least: 3 });
  }
  call.use(points);
  if (!line.interval) {
    call.remark('median-slope-alone', { count: line.pairs });
    return withSlopeDecimals(numberValue(line.slope, rateUnit(call.series(0).unit)), points);
  }
  const places = enoughDecimals(line.slope, decimalsOf(points, 1)).decimals ?? 3;
  call.remark('median-slope', { count: line.pairs, low: formatNumber(line.interval.low, places), high: formatNumber(line.interval.high, places) });
  // Sen's interval is not symmetric: its longer side is taken for ±.
  const half = Math.max(line.interval.high - line.slope, line.slope - line.interval.low);
  return withSlopeDecimals(numberValue(line.slope, rateUnit(call.series(0).unit), new Map([[`scatter:${call.run.textOf(call.range)}`, half / 2]])), points);
}

/** Above this many readings the interval by serial correlation takes too long while typing. */
const mostForSerial = 2000;

function steepest(call: Call, which: 'fall' | 'rise'): Stretch<SeriesPoint> | null {
  const points = call.points(0, 1);
  if (!points || !call.needs(points, 2, 0)) return null;
  const breaks = call.breaks(0);
  const interval = (instant: number): number | null => call.interval(0, instant);
  const length = call.duration('over');
  const stretches = length === null ? neighbouringStretches(points, breaks, interval) : stretchesOver(points, breaks, interval, length, Math.min(call.tolerance, length / 4));
  if (stretches.length === 0) {
    return length === null ? call.fail('no-neighbours', { name: call.run.textOf(call.rangeOf(0)) }, call.rangeOf(0))
      : call.fail('no-stretch', { name: call.run.textOf(call.rangeOf(0)), length: formatDuration(length) }, call.optionRange('over'));
  }
  const sign = which === 'fall' ? -1 : 1;
  let best = stretches[0]!;
  // Within the last digits two rates are equal: 8.26 − 7.86 and 7.86 − 7.46 differ in binary only.
  for (const stretch of stretches) if (sign * stretch.rate > sign * best.rate + 1e-9 * Math.abs(best.rate)) best = stretch;
  const equal = stretches.filter((stretch) => Math.abs(stretch.rate - best.rate) <= 1e-9 * Math.abs(best.rate)).length;
  if (equal > 1) call.remark('tie', { count: equal, time: call.time(best.from.time) });
  call.remark('stretch', { from: call.time(best.from.time), to: call.time(best.to.time) });
  call.use([best.from, best.to]);
  return best;
}

function steepestRate(call: Call, which: 'fall' | 'rise'): FormulaNumber | null {
  const best = steepest(call, which);
  return best && rateBetween(call, best.from, best.to, which === 'fall' ? -1 : 1);
}

function steepestWindow(call: Call, which: 'fall' | 'rise'): FormulaValue | null {
  const best = steepest(call, which);
  return best && { type: 'window', from: best.from.time, to: best.to.time };
}

/** Pairs of readings one step apart: neighbours, or every given length from the first reading of the window. */
function steps(call: Call, measure: (from: SeriesPoint, to: SeriesPoint) => NumberValue | null, unit: NumberValue['unit']): FormulaValue | null {
  const points = call.points(0, 1);
  if (!points || !call.needs(points, 2, 0)) return null;
  const length = call.duration('every');
  const breaks = call.breaks(0);
  const pairs: (readonly [SeriesPoint, SeriesPoint])[] = [];
  const holes: number[] = [];
  if (length === null) {
    for (let index = 1; index < points.length; index += 1) {
      const from = points[index - 1]!;
      const to = points[index]!;
      if (call.neighbours(0, from, to, breaks)) pairs.push([from, to]); else holes.push(to.time);
    }
  } else {
    const tolerance = Math.min(call.tolerance, length / 4);
    const origin = points[0]!.time;
    const last = points.at(-1)!.time;
    if ((last - origin) / length > 100_000) return call.fail('no-stretch', { name: call.run.textOf(call.rangeOf(0)), length: formatDuration(length) }, call.optionRange('every'));
    let next = 0;
    let previous: SeriesPoint | null = points[0]!;
    for (let mark = origin + length; mark <= last + tolerance; mark += length) {
      while (next < points.length && points[next]!.time < mark - tolerance) next += 1;
      const found: SeriesPoint | null = points[next] && points[next]!.time <= mark + tolerance ? points[next]! : null;
      if (previous && found) pairs.push([previous, found]);
      else holes.push(mark);
      previous = found;
    }
  }
  if (pairs.length === 0) {
    return length === null ? call.fail('no-neighbours', { name: call.run.textOf(call.rangeOf(0)) }, call.rangeOf(0))
      : call.fail('no-stretch', { name: call.run.textOf(call.rangeOf(0)), length: formatDuration(length) }, call.optionRange('every'));
  }
  if (holes.length > 0) call.remark('steps-missing', { count: holes.length });
  const result: SeriesPoint[] = [];
  for (const [from, to] of pairs) {
    const value = measure(from, to);
    if (!value) return null;
    call.use([from, to]);
    result.push({ time: to.time, value: value.value, contributions: value.contributions, ...mergedParts([from, to]), ...((value as FormulaNumber).decimals === undefined ? {} : { decimals: (value as FormulaNumber).decimals }) });
  }
  return { type: 'series', unit, points: result, holes, content: 'number' };
}

const percentUnit = parseUnit('%')!;
const over: OptionParameter = { name: 'over', type: 'duration', required: false, about: 'a length of time, such as over 1 h; neighbouring readings without it' };
const everyOption: OptionParameter = { name: 'every', type: 'duration', required: false, about: 'the length of a step, such as every 1 h; neighbouring readings without it' };
const steepestSignature: readonly Signature[] = [{ parameters: [seriesParameter, windowParameter], options: [over] }];
const stepsSignature: readonly Signature[] = [{ parameters: [seriesParameter, windowParameter], options: [everyOption] }];
const perHourWords = 'that of a difference of the series, per hour';
const mat = 'the oxygen in the mat tank';

export const changeFunctions: readonly FunctionEntry[] = [
  {
    name: 'change', group: 'change', gives: 'number', units: 'that of a difference of the series', signatures: seriesAndWindow,
    definition: 'The last reading in the window minus the first; negative when the value fell.', equation: 'change = s(tₙ) − s(t₁)', source: null,
    example: { formula: 'change(mat.DO, 22:00..23:00)', on: mat, gives: '-0.40 mg/L' }, words: 'the change in {1}{window}',
    evaluate: (call) => change(call, 1),
  },
  {
    name: 'rise', group: 'change', gives: 'number', units: 'that of a difference of the series', signatures: seriesAndWindow,
    definition: 'How much the value rose from the first reading in the window to the last; negative when it fell.', equation: 'rise = s(tₙ) − s(t₁)', source: null,
    example: { formula: 'rise(mat.DO, 06:00..07:00)', on: mat, gives: '0.57 mg/L' }, words: 'the rise in {1}{window}',
    evaluate: (call) => change(call, 1),
  },
  {
    name: 'fall', group: 'change', gives: 'number', units: 'that of a difference of the series', signatures: seriesAndWindow,
    definition: 'How much the value fell from the first reading in the window to the last; negative when it rose.', equation: 'fall = s(t₁) − s(tₙ)', source: null,
    example: { formula: 'fall(mat.DO, light-off..23:00)', on: mat, gives: '0.40 mg/L' }, words: 'the fall in {1}{window}',
    evaluate: (call) => change(call, -1),
  },
  {
    name: 'percent-change', group: 'change', gives: 'number', units: '% of the first reading in the window', signatures: seriesAndWindow,
    definition: 'The change in the window as a percentage of its first reading; a temperature or a pH has none, its zero is not “nothing”.',
    equation: '100 · (s(tₙ) − s(t₁)) / s(t₁)', source: null,
    example: { formula: 'percent-change(mat.DO, 22:00..23:00)', on: mat, gives: '-4.8 %' }, words: 'the percentage change in {1}{window}',
    evaluate: (call) => percent(call, 1),
  },
  {
    name: 'percent-rise', group: 'change', gives: 'number', units: '% of the first reading in the window', signatures: seriesAndWindow,
    definition: 'The rise in the window as a percentage of its first reading.', equation: '100 · (s(tₙ) − s(t₁)) / s(t₁)', source: null,
    example: { formula: 'percent-rise(mat.DO, 06:00..07:00)', on: mat, gives: '9.9 %' }, words: 'the percentage rise in {1}{window}',
    evaluate: (call) => percent(call, 1),
  },
  {
    name: 'percent-fall', group: 'change', gives: 'number', units: '% of the first reading in the window', signatures: seriesAndWindow,
    definition: 'The fall in the window as a percentage of its first reading.', equation: '100 · (s(t₁) − s(tₙ)) / s(t₁)', source: null,
    example: { formula: 'percent-fall(mat.DO, light-off..23:00)', on: mat, gives: '4.8 %' }, words: 'the percentage fall in {1}{window}',
    evaluate: (call) => percent(call, -1),
  },
  {
    name: 'rate', group: 'change', gives: 'number', units: perHourWords, signatures: seriesAndWindow,
    definition: 'The change from the first to the last reading in the window, divided by the hours between them.', equation: 'rate = (s(tₙ) − s(t₁)) / (tₙ − t₁)', source: null,
    example: { formula: 'rate(mat.DO, 22:00..00:00)', on: mat, gives: '-0.42 mg/L/h' }, words: 'the hourly rate of change of {1}{window}',
    evaluate: rate,
  },
  {
    name: 'slope', group: 'change', gives: 'number', units: perHourWords, signatures: seriesAndWindow,
    definition: 'The slope of the least squares line through the readings in the window, per hour.', equation: 'slope = Σ (tᵢ − t̄)(sᵢ − s̄) / Σ (tᵢ − t̄)²',
    source: 'Zellner and Tiao (1964), Journal of the American Statistical Association 59, 763–778, for the interval',
    example: { formula: 'slope(mat.DO, 22:00..01:00)', on: mat, gives: '-0.428 mg/L/h' }, words: 'the slope of the line fitted to {1}{window}',
    evaluate: slope,
  },
  {
    name: 'robust-slope', group: 'change', gives: 'number', units: perHourWords, signatures: seriesAndWindow,
    definition: 'The median of the slopes between every two readings in the window, per hour: a few wild readings hardly move it.', equation: 'median of (sⱼ − sᵢ) / (tⱼ − tᵢ)',
    source: 'Theil (1950); Sen (1968), Journal of the American Statistical Association 63, 1379–1389',
    example: { formula: 'robust-slope(mat.DO, 22:00..01:00)', on: mat, gives: '-0.433 mg/L/h' }, words: 'the median slope of {1}{window}',
    evaluate: robustSlope,
  },
  {
    name: 'steepest-fall', group: 'change', gives: 'number', units: perHourWords, signatures: steepestSignature,
    definition: 'The fastest fall per hour between neighbouring readings, or over the given length of time; never across a missing reading.',
    equation: 'largest (s(tᵢ) − s(tᵢ₊₁)) / (tᵢ₊₁ − tᵢ)', source: null,
    example: { formula: 'steepest-fall(mat.DO)', on: mat, gives: '0.44 mg/L/h' }, words: 'the steepest hourly fall in {1}{window}{over}',
    evaluate: (call) => steepestRate(call, 'fall'),
  },
  {
    name: 'steepest-rise', group: 'change', gives: 'number', units: perHourWords, signatures: steepestSignature,
    definition: 'The fastest rise per hour between neighbouring readings, or over the given length of time; never across a missing reading.',
    equation: 'largest (s(tᵢ₊₁) − s(tᵢ)) / (tᵢ₊₁ − tᵢ)', source: null,
    example: { formula: 'steepest-rise(mat.DO)', on: mat, gives: '0.57 mg/L/h' }, words: 'the steepest hourly rise in {1}{window}{over}',
    evaluate: (call) => steepestRate(call, 'rise'),
  },
  {
    name: 'time-of-steepest-fall', group: 'change', gives: 'window', units: 'a stretch of time', signatures: steepestSignature,
    definition: 'The stretch between the two readings where the value fell fastest; of several equal ones, the first.', equation: 'tᵢ..tᵢ₊₁ of the steepest fall', source: null,
    example: { formula: 'time-of-steepest-fall(mat.DO)', on: mat, gives: '23:00 to 00:00' }, words: 'the time of the steepest fall in {1}{window}{over}',
    evaluate: (call) => steepestWindow(call, 'fall'),
  },
  {
    name: 'time-of-steepest-rise', group: 'change', gives: 'window', units: 'a stretch of time', signatures: steepestSignature,
    definition: 'The stretch between the two readings where the value rose fastest; of several equal ones, the first.', equation: 'tᵢ..tᵢ₊₁ of the steepest rise', source: null,
    example: { formula: 'time-of-steepest-rise(mat.DO)', on: mat, gives: '06:00 to 07:00' }, words: 'the time of the steepest rise in {1}{window}{over}',
    evaluate: (call) => steepestWindow(call, 'rise'),
  },
  {
    name: 'steps', group: 'change', gives: 'series', units: 'that of a difference of the series', signatures: stepsSignature,
    definition: 'The change over each step of the given length, counted from the first reading in the window, at the time the step ends.',
    equation: 's(tₖ) − s(tₖ₋₁)', source: null,
    example: { formula: 'min(steps(mat.DO, every 1 h))', on: mat, gives: '-0.44 mg/L' }, words: 'the changes in {1}{window}{every}',
    evaluate: (call) => steps(call, (from, to) => {
      const result = subtract(call.numberAt(to, 0), call.numberAt(from, 0));
      return isFailure(result) ? call.failure(result) : result;
    }, differenceUnit(call.series(0).unit)),
  },
  {
    name: 'percent-steps', group: 'change', gives: 'series', units: '% of the reading at which the step begins', signatures: stepsSignature,
    definition: 'The percentage change over each step of the given length, relative to the reading at which that step begins.',
    equation: '100 · (s(tₖ) − s(tₖ₋₁)) / s(tₖ₋₁)', source: null,
    example: { formula: 'min(percent-steps(mat.DO, every 1 h))', on: mat, gives: '-5.9 %' }, words: 'the percentage changes in {1}{window}{every}',
    evaluate: (call) => steps(call, (from, to) => percentBetween(call, from, to, 1), percentUnit),
  },
];
