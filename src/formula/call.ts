// One call of a catalogue function: its operands by type, the readings in its window, and the ways to fail or remark.
// What every function shares about windows, ends and gaps is decided here, once.
import { areNeighbours, between, firstFrom, medianStep, plannedInterval } from '../analysis/points.ts';
import type { Fix, MessageArguments, SourceRange } from '../problems/problem.ts';
import type { ProblemCode } from '../problems/codes.ts';
import type { Duration, Instant } from '../time/instant.ts';
import { minute } from '../time/instant.ts';
import { formatDuration } from '../time/text.ts';
import { unitOf } from '../quantities/concentration.ts';
import { differenceUnit } from '../quantities/units.ts';
import { isFailure, toUnit, type Failure } from '../quantities/value.ts';
import { bareScales, failWith } from './operands.ts';
import type { Remark, Run } from './run.ts';
import { censored, pointNumber } from './seriesValues.ts';
import type { Expression, FormulaNumber, FormulaValue, SeriesPoint, SeriesValue, WindowValue } from './types.ts';

export interface CallParts {
  readonly run: Run;
  readonly name: string;
  readonly range: SourceRange;
  /** One a parameter; undefined where an optional one was left away. */
  readonly operands: readonly (FormulaValue | undefined)[];
  readonly expressions: readonly (Expression | undefined)[];
  readonly options: ReadonlyMap<string, { readonly value: FormulaValue; readonly range: SourceRange }>;
  readonly signature: number;
}

export class Call {
  readonly run: Run;
  readonly name: string;
  readonly range: SourceRange;
  /** Which of the entry's signatures fits. */
  readonly signature: number;
  readonly remarks: Remark[] = [];
  readonly used: SourceRange[] = [];
  private readonly parts: CallParts;
  /** Median steps of the operands, found once. */
  private readonly steps = new Map<number, Duration | null>();

  constructor(parts: CallParts) {
    this.parts = parts;
    this.run = parts.run;
    this.name = parts.name;
    this.range = parts.range;
    this.signature = parts.signature;
  }

  operand(index: number): FormulaValue | undefined { return this.parts.operands[index]; }
  rangeOf(index: number): SourceRange { return this.parts.expressions[index]?.range ?? this.range; }
  expression(index: number): Expression | undefined { return this.parts.expressions[index]; }

  /** Operand of a parameter whose type the checker has made sure of. */
  series(index: number): SeriesValue { return this.parts.operands[index] as SeriesValue; }
  number(index: number): FormulaNumber { return this.parts.operands[index] as FormulaNumber; }
  instant(index: number): Instant { return (this.parts.operands[index] as { instant: Instant }).instant; }
  window(index: number): WindowValue | null { return (this.parts.operands[index] as WindowValue | undefined) ?? null; }

  duration(option: string): Duration | null {
    const value = this.parts.options.get(option)?.value;
    return value?.type === 'duration' ? value.duration : null;
  }

  optionNumber(option: string): FormulaNumber | null {
    const value = this.parts.options.get(option)?.value;
    return value?.type === 'number' ? value : null;
  }

  optionRange(option: string): SourceRange { return this.parts.options.get(option)?.range ?? this.range; }

  fail(code: ProblemCode, args: MessageArguments = {}, at: SourceRange = this.range, fixes: readonly Fix[] = []): null {
    return this.run.fail(code, at, args, fixes);
  }

  failure(failure: Failure, at: SourceRange = this.range): null { return failWith(this.run, failure, at, null, null); }

  remark(code: string, args: Remark['args'] = {}): void { this.remarks.push({ code, args }); }

  /** Notes the readings behind a value, for the working. */
  use(points: readonly SeriesPoint[]): void { for (const point of points) if (point.readings) this.used.push(...point.readings); }

  time(instant: Instant): string { return this.run.time(instant); }

  /**
   * The readings in the window, at least one. `counted`: a reading at lights-off belongs to the phase before the dark.
   * `limits`: readings outside the instrument's range may pass.
   */
  points(series: number, window: number, how: { readonly counted?: boolean; readonly limits?: boolean; readonly empty?: boolean } = {}): readonly SeriesPoint[] | null {
    const value = this.series(series);
    const stretch = this.window(window);
    if (stretch && stretch.from > stretch.to) return this.backwards(window);
    let points = stretch ? between(value.points, stretch.from, stretch.to) : value.points;
    if (how.counted && stretch?.opensAtLightsOff) points = points.filter((point) => point.time !== stretch.from);
    if (points.length === 0 && !how.empty) return this.empty(series, window);
    if (!how.limits && !this.within(points, series)) return null;
    return points;
  }

  private backwards(window: number): null {
    const stretch = this.window(window)!;
    return this.fail('window-backwards', { key: '', text: ['from-to', this.run.exactTime(stretch.from), this.run.exactTime(stretch.to)] }, this.rangeOf(window));
  }

  private empty(series: number, window: number): null {
    const name = this.run.textOf(this.rangeOf(series));
    const stretch = this.window(window);
    if (!stretch) return this.fail('no-readings', { name }, this.rangeOf(series));
    return this.fail('empty-window', { name, from: this.time(stretch.from), to: this.time(stretch.to) }, this.rangeOf(window));
  }

  /** False, with a problem, when one of the readings is `<x` or `>x`. */
  within(points: readonly SeriesPoint[], series: number): boolean {
    const outside = points.find((point) => (point.flags & censored) !== 0);
    if (!outside) return true;
    this.fail('censored-value', { function: this.name, name: this.run.textOf(this.rangeOf(series)), time: this.time(outside.time) }, this.rangeOf(series));
    return false;
  }

  /** Too few readings for a figure that compares some. */
  needs(points: readonly SeriesPoint[], least: number, series: number): boolean {
    if (points.length >= least) return true;
    this.fail('too-few-readings', { function: this.name, name: this.run.textOf(this.rangeOf(series)), count: points.length, least }, this.range);
    return false;
  }

  /**
   * First and last reading of the window, for changes and rates. An end written as a time needs a reading then; a named or
   * computed end takes the nearest reading inside, which the working shows.
   */
  ends(series: number, window: number): { readonly first: SeriesPoint; readonly last: SeriesPoint } | null {
    const value = this.series(series);
    const stretch = this.window(window);
    if (stretch && stretch.from > stretch.to) return this.backwards(window);
    let missing = false;
    if (stretch?.fromWritten && !this.readingAt(series, stretch.from, this.endRange(window, 'left'))) missing = true;
    if (stretch?.toWritten && !this.readingAt(series, stretch.to, this.endRange(window, 'right'))) missing = true;
    if (missing) return null;
    const points = stretch ? between(value.points, stretch.from, stretch.to) : value.points;
    const first = points[0];
    const last = points.at(-1);
    if (!first || !last) return this.empty(series, window);
    if (stretch) {
      this.compareEnd(series, window, 'left', stretch.from, first.time);
      this.compareEnd(series, window, 'right', stretch.to, last.time);
    }
    if (!this.within(first === last ? [first] : [first, last], series)) return null;
    if (first.time === last.time) {
      this.needs([first], 2, series);
      return null;
    }
    this.use([first, last]);
    return { first, last };
  }

  private endRange(window: number, side: 'left' | 'right'): SourceRange {
    const expression = this.expression(window);
    return expression?.kind === 'binary' && expression.operator === '..' ? expression[side].range : this.rangeOf(window);
  }

  private compareEnd(series: number, window: number, side: 'left' | 'right', wanted: Instant, found: Instant): void {
    const distance = Math.abs(found - wanted);
    if (distance === 0) return;
    const args = { wanted: this.time(wanted), found: this.time(found), name: this.run.textOf(this.rangeOf(series)) };
    this.remark('nearest-reading', args);
    const interval = this.interval(series, wanted);
    if (interval !== null && distance > interval) {
      this.fail('reading-far-from-end', { ...args, distance: formatDuration(distance) }, this.endRange(window, side));
    }
  }

  /** The reading at exactly that time, or a problem that names its neighbours. */
  readingAt(series: number, instant: Instant, at: SourceRange, alsoFixes: readonly Fix[] = []): SeriesPoint | null {
    const { points } = this.series(series);
    const index = firstFrom(points, instant);
    const found = points[index];
    if (found?.time === instant) return found;
    const before = points[index - 1];
    const name = this.run.textOf(this.rangeOf(series));
    const neighbours = [before, found].filter((point): point is SeriesPoint => point !== undefined);
    if (neighbours.length === 0) return this.fail('no-readings', { name }, this.rangeOf(series));
    const dropped = (this.series(series).holes ?? []).includes(instant);
    return this.fail('no-reading-at-time', {
      name, time: this.time(instant), neighbours: neighbours.map((point) => this.time(point.time)), dropped: dropped ? 'yes' : 'no',
    }, at, [...neighbours.map((point) => this.run.replace(at, this.time(point.time))), ...(neighbours.length === 2 ? alsoFixes : [])]);
  }

  /** The sampling interval around an instant. */
  interval(series: number, instant: Instant): Duration | null {
    const planned = plannedInterval(this.run.context.protocol?.schedule ?? null, instant);
    if (planned !== null) return planned;
    if (!this.steps.has(series)) this.steps.set(series, medianStep(this.series(series).points));
    return this.steps.get(series) ?? null;
  }

  /** Missing or left-out readings that break a neighbourhood: those at planned times, where times are planned. */
  breaks(series: number): readonly Instant[] {
    const holes = this.series(series).holes ?? [];
    const slots = this.run.context.protocol?.schedule?.slots ?? [];
    if (slots.length === 0 || holes.length === 0) return holes;
    const planned = new Set(slots);
    return holes.filter((time) => planned.has(time));
  }

  neighbours(series: number, from: SeriesPoint, to: SeriesPoint, breaks = this.breaks(series)): boolean {
    return areNeighbours(from.time, to.time, breaks, this.interval(series, from.time));
  }

  /** How far from a wanted time a reading may stand and still count as taken then. */
  get tolerance(): Duration { return Math.max(this.run.context.protocol?.pairWithin ?? 0, minute); }

  /** A level or tolerance in the series' unit (`difference`: in the unit of its differences); a bare number where that unit is bare. */
  levelIn(series: number, value: FormulaNumber, at: SourceRange, difference = false): FormulaNumber | null {
    const { unit } = this.series(series);
    const wanted = difference ? differenceUnit(unit) : unit;
    const adapted = difference && value.unit.kind !== wanted.kind && value.unit.kind === unit.kind ? { ...value, unit: differenceUnit(value.unit) }
      : value.unit.symbol === '1' && bareScales.includes(wanted.kind) ? { ...value, unit: wanted } : value;
    const converted = toUnit(adapted.unit.substance ? adapted : { ...adapted, unit: unitOf(adapted.unit, wanted.substance) }, wanted);
    if (!isFailure(converted)) return { ...converted, ...(value.decimals === undefined ? {} : { decimals: value.decimals }) };
    const bare = value.unit.symbol === '1' ? [this.run.replace(at, `${this.run.textOf(at)} ${unit.symbol}`)] : [];
    return this.fail('unit-mismatch', { left: unit.symbol, right: value.unit.symbol === '1' ? ['plain-number'] : value.unit.symbol }, at, bare);
  }

  numberAt(point: SeriesPoint, series: number): FormulaNumber { return pointNumber(point, this.series(series).unit); }
}
