// Columns of readings as series values: one column, the mean over a group of tanks, and two series joined by time.
import type { SourceRange } from '../problems/problem.ts';
import { flag, type Series } from '../dataset/types.ts';
import { seriesFor, seriesOf } from '../dataset/series.ts';
import { compareSideBySide, offsetAt, offsetError, type SideBySide } from '../analysis/sideBySide.ts';
import { amountIn, instrumentOf, measureOf, readingValue } from '../dataset/readingValue.ts';
import type { Protocol } from '../protocol/types.ts';
import { combine, isFailure, toUnit } from '../quantities/value.ts';
import { unitOf } from '../quantities/concentration.ts';
import { dimensionless } from '../quantities/dimension.ts';
import { parseUnit } from '../quantities/units.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { substanceOf } from '../water/concentrations.ts';
import type { FormulaContext } from './context.ts';
import type { Run } from './run.ts';
import type { FormulaNumber, SeriesPoint, SeriesValue } from './types.ts';

export const censored = flag.below | flag.above;

/** The unit of pure numbers and of truths. */
export const one: Unit = parseUnit('1') ?? { symbol: '1', dimension: dimensionless, kind: 'plain', factor: 1, offset: 0, ucum: '1', print: '' };

/** One column as a series; missing and left-out entries become holes. */
export function columnValue(context: FormulaContext, series: Series, includeLeftOut: boolean): SeriesValue {
  const key = `${series.id}${includeLeftOut ? ' with left-out' : ''}`;
  const known = context.seriesCache.get(key);
  if (known) return known;
  const { protocol } = context;
  const points: SeriesPoint[] = [];
  const holes: number[] = [];
  const measure = protocol ? measureOf(protocol, series.quantity, series.instrument) : null;
  const ofWords = measure?.scale != null;
  const sideBySide = series.instrument !== null && measure?.correctedBy && measure.id === `${series.quantity}@${series.instrument}` ? compareSideBySide(context.dataset, series.quantity, series.instrument) : null;
  for (let index = 0; index < series.times.length; index += 1) {
    const flags = series.flags[index]!;
    const time = series.times[index]!;
    const absent = (flags & flag.missing) !== 0 || ((flags & flag.leftOut) !== 0 && !includeLeftOut) || ((flags & flag.word) !== 0) !== ofWords;
    const cell = series.sources[index]?.cell;
    const value = ofWords ? series.words[index]! : series.values[index]!;
    if (absent || !Number.isFinite(value) || (ofWords && value < 0)) {
      holes.push(time);
      continue;
    }
    const plain = ofWords || !protocol ? null : readingValue(series, index, protocol);
    const measured = plain && sideBySide ? corrected(plain, sideBySide, time, series, protocol!) : plain;
    const decimals = cell?.state.decimals ?? -1;
    points.push({
      time, value: measured?.value ?? value, flags, contributions: measured?.contributions ?? null,
      ...(decimals >= 0 ? { decimals } : {}), ...(cell ? { readings: [cell.range] } : {}),
    });
  }
  const value: SeriesValue = {
    type: 'series', unit: unitOf(series.unit, measure?.what ? substanceOf(measure.what.value) : undefined), points, holes, content: ofWords ? 'word' : 'number',
    origin: { place: series.place, quantity: series.quantity, instrument: series.instrument },
    ...(ofWords ? { scale: measure.scale } : {}),
  };
  context.seriesCache.set(key, value);
  return value;
}

/**
 * A reading with the offset against the plain instrument taken out. Its systematic part is then the plain instrument's, with
 * what the comparison leaves open.
 */
function corrected(value: NumberValue, found: SideBySide, time: number, series: Series, protocol: Protocol): NumberValue {
  const offset = offsetAt(found, time) * found.unit.factor / series.unit.factor;
  const reference = instrumentOf({ ...series, instrument: null }, { ...protocol, measure: protocol.measure.map((each) => ({ ...each, in: [] })) });
  const accuracy = reference ? amountIn(reference.entry.accuracy, series.unit, value.value) : null;
  const error = offsetError(found);
  if (value.contributions === null || !reference || accuracy === null || error === null) return { ...value, value: value.value - offset, contributions: null };
  const contributions = new Map([...value.contributions].filter(([key]) => !key.startsWith('instrument:')));
  contributions.set(reference.key, accuracy / Math.sqrt(3));
  contributions.set(`side by side:${series.quantity}@${series.instrument}`, error * found.unit.factor / series.unit.factor);
  return { ...value, value: value.value - offset, contributions };
}

/** The series of a tank (or the room) and quantity, or a problem that says why there is none. */
export function placeSeries(run: Run, place: string, quantity: string, instrument: string | null, range: SourceRange): SeriesValue | null {
  const { dataset } = run.context;
  const found = seriesFor(dataset, place, quantity, instrument);
  if (found) return columnValue(run.context, found, run.includeLeftOut);
  const all = seriesOf(dataset, place, quantity).map((each) => each.id);
  if (all.length > 0 && instrument === null) {
    return run.fail('several-instruments', range, { name: `${place}.${quantity}`, columns: all }, all.map((each) => run.replace(range, each)));
  }
  const name = `${place}.${quantity}${instrument === null ? '' : `@${instrument}`}`;
  const others = [...dataset.series.values()].filter((each) => each.place === place).map((each) => each.id);
  return run.fail('no-column', range, { name, columns: others.length > 0 ? others : [...dataset.series.keys()] });
}

/** The mean over the tanks of a group, only at times at which all of them have a value. */
export function groupSeries(run: Run, group: string, tanks: readonly string[], quantity: string, instrument: string | null, range: SourceRange): SeriesValue | null {
  if (tanks.length === 0) return run.fail('group-empty', range, { name: group });
  const key = `group ${group}.${quantity}@${instrument ?? ''}${run.includeLeftOut ? ' with left-out' : ''}`;
  const known = run.context.seriesCache.get(key);
  if (known) return known;
  const members: SeriesValue[] = [];
  for (const tank of tanks) {
    const member = placeSeries(run, tank, quantity, instrument, range);
    if (!member) return null;
    members.push(member);
  }
  const first = members[0]!;
  if (members.length === 1) return first;
  if (first.content === 'word') return run.fail('wrong-argument', range, { function: 'mean', argument: 'quantity', expected: ['wants-numbers'], found: ['words'] });
  const points: SeriesPoint[] = [];
  const holes = new Set<number>(members.flatMap((member) => member.holes ?? []));
  const byTime = members.map((member) => new Map(member.points.map((point) => [point.time, point])));
  const times = [...new Set(members.flatMap((member) => member.points.map((point) => point.time)))].sort((a, b) => a - b);
  for (const time of times) {
    const parts = byTime.map((each) => each.get(time));
    if (parts.some((part) => part === undefined)) {
      holes.add(time);
      continue;
    }
    const values: NumberValue[] = [];
    for (const [index, part] of parts.entries()) {
      const value = toUnit(pointNumber(part!, members[index]!.unit), first.unit);
      if (isFailure(value)) return run.fail('unit-mismatch', range, { left: first.unit.symbol, right: members[index]!.unit.symbol });
      values.push(value);
    }
    const mean = values.reduce((sum, each) => sum + each.value, 0) / values.length;
    const combined = combine(mean, first.unit, values.map((value) => ({ value, derivative: 1 / values.length })));
    points.push({ time, value: combined.value, contributions: combined.contributions, ...mergedParts(parts as SeriesPoint[]) });
  }
  const value: SeriesValue = { type: 'series', unit: first.unit, points, holes: [...holes].sort((a, b) => a - b), content: 'number' };
  run.context.seriesCache.set(key, value);
  return value;
}

/** A point as a number. */
export function pointNumber(point: SeriesPoint, unit: Unit): FormulaNumber {
  return { type: 'number', value: point.value, unit, contributions: point.contributions, ...(point.decimals === undefined ? {} : { decimals: point.decimals }) };
}

/** Flags, digits and places of points that went into one. */
export function mergedParts(parts: readonly SeriesPoint[]): Pick<SeriesPoint, 'flags' | 'decimals' | 'readings'> {
  let flags = 0;
  let decimals: number | undefined;
  const readings: SourceRange[] = [];
  for (const part of parts) {
    flags |= part.flags & ~flag.word;
    if (part.decimals !== undefined) decimals = Math.max(decimals ?? 0, part.decimals);
    readings.push(...(part.readings ?? []));
  }
  return { flags, readings, ...(decimals === undefined ? {} : { decimals }) };
}

/** Pairs of points that two series have at one time, and the times at which only one has a value or either has a hole. */
export function joinByTime(a: SeriesValue, b: SeriesValue): { pairs: [SeriesPoint, SeriesPoint][]; holes: number[] } {
  if (a === b) return { pairs: a.points.map((point) => [point, point]), holes: [...(a.holes ?? [])] };
  const pairs: [SeriesPoint, SeriesPoint][] = [];
  const holes = new Set<number>([...(a.holes ?? []), ...(b.holes ?? [])]);
  let left = 0;
  let right = 0;
  while (left < a.points.length || right < b.points.length) {
    const one = a.points[left];
    const other = b.points[right];
    if (one && other && one.time === other.time) {
      pairs.push([one, other]);
      left += 1;
      right += 1;
    } else if (!other || (one && one.time < other.time)) {
      holes.add(one!.time);
      left += 1;
    } else {
      holes.add(other.time);
      right += 1;
    }
  }
  return { pairs, holes: [...holes].sort((x, y) => x - y) };
}
