// The readings of one series as points to draw: which are joined by a line, which stand alone and how they are marked.
import type { Protocol } from '../protocol/types.ts';
import { flag, type Series } from '../dataset/types.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import type { SeriesValue } from '../formula/types.ts';
import { day, type Duration, type Instant } from '../time/instant.ts';

/** `plain`, `doubtful` (hollow) are joined by the line; `left-out` (cross), `below`, `above` (arrows) are not. */
export type PointKind = 'plain' | 'doubtful' | 'left-out' | 'below' | 'above';

export interface Point {
  readonly time: Instant;
  readonly value: number;
  readonly kind: PointKind;
  /** Points of one segment are joined; -1 for those that stand alone. */
  readonly segment: number;
  /** Never thinned out. */
  readonly keep: boolean;
  /** Half of the 95 % interval, where a band is drawn and the accuracy is known. */
  readonly half?: number;
}

/** The usual step between times in order. */
function usualStep(times: ArrayLike<Instant>): Duration {
  const steps: number[] = [];
  for (let index = 1; index < times.length; index += 1) {
    const step = times[index]! - times[index - 1]!;
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? Number.MAX_SAFE_INTEGER;
}

/** The planned interval at an instant; the usual step of the series where the plan says nothing. */
function intervalAt(protocol: Protocol, usual: Duration): (instant: Instant) => Duration {
  const sampling = protocol.schedule?.sampling ?? [];
  return (instant) => {
    let planned: Duration | null = null;
    // The coarsest stretch that holds there: a denser stretch inside it adds slots, it does not make a gap of the others.
    for (const stretch of sampling) if (instant >= stretch.from && instant <= stretch.to) planned = Math.max(planned ?? 0, stretch.every);
    return planned ?? usual;
  };
}

/**
 * All readings of a series within a window (ends included) as points. The line breaks at a missing reading, at one that
 * was left out or lies outside the instrument's range, and where more than one and a half planned intervals pass
 * without a reading: a line is never drawn over what nobody measured.
 */
export function pointsOf(series: Series, protocol: Protocol, from: Instant, to: Instant, halves?: ReadonlyMap<Instant, number>): Point[] {
  const interval = intervalAt(protocol, usualStep(series.times));
  const points: Point[] = [];
  let segment = 0;
  let previous: Instant | null = null;
  const breakLine = (): void => {
    if (previous !== null) segment += 1;
    previous = null;
  };
  for (let index = 0; index < series.times.length; index += 1) {
    const time = series.times[index]!;
    const bits = series.flags[index]!;
    if (time < from || time > to) continue;
    if ((bits & (flag.missing | flag.word)) !== 0) {
      breakLine();
      continue;
    }
    const value = series.values[index]!;
    if (!Number.isFinite(value)) continue;
    if ((bits & (flag.leftOut | flag.below | flag.above)) !== 0) {
      breakLine();
      const kind = (bits & flag.leftOut) !== 0 ? 'left-out' : (bits & flag.below) !== 0 ? 'below' : 'above';
      points.push({ time, value, kind, segment: -1, keep: true });
      continue;
    }
    if (previous !== null && time - previous > 1.5 * Math.max(interval(previous), interval(time))) breakLine();
    const doubtful = (bits & flag.doubtful) !== 0;
    points.push({ time, value, kind: doubtful ? 'doubtful' : 'plain', segment, keep: doubtful, ...halfAt(halves, time) });
    previous = time;
  }
  return points;
}

const halfAt = (halves: ReadonlyMap<Instant, number> | undefined, time: Instant): { half?: number } => {
  const half = halves?.get(time);
  return half === undefined ? {} : { half };
};

/** Half of the 95 % interval at each time, where the accuracy is known. */
export function halvesOf(series: SeriesValue): ReadonlyMap<Instant, number> {
  const halves = new Map<Instant, number>();
  for (const point of series.points) {
    const half = point.contributions === null ? null : expandedUncertainty({ type: 'number', value: point.value, unit: series.unit, contributions: point.contributions });
    if (half !== null && half > 0) halves.set(point.time, half);
  }
  return halves;
}

/**
 * The points of a computed series within a window. The line breaks where a value could not be computed, and over more than
 * one and a half of the planned interval or of the series' own step, whichever is longer.
 */
export function computedPoints(series: SeriesValue, protocol: Protocol, from: Instant, to: Instant, halves?: ReadonlyMap<Instant, number>): Point[] {
  const usual = usualStep(series.points.map((point) => point.time));
  const planned = intervalAt(protocol, usual);
  const reach = (time: Instant): Duration => Math.max(planned(time), Math.min(usual, day));
  const holes = series.holes ?? [];
  const points: Point[] = [];
  let segment = 0;
  let previous: Instant | null = null;
  for (const { time, value, flags } of series.points) {
    if (time < from || time > to || !Number.isFinite(value)) continue;
    const last: Instant | null = previous;
    if (last !== null && (time - last > 1.5 * Math.max(reach(last), reach(time)) || (usual <= planned(time) && holes.some((hole) => hole > last && hole < time)))) segment += 1;
    const outside = (flags & (flag.below | flag.above)) !== 0;
    const kind = outside ? ((flags & flag.below) !== 0 ? 'below' : 'above') : (flags & flag.doubtful) !== 0 ? 'doubtful' : 'plain';
    points.push({ time, value, kind, segment: outside ? -1 : segment, keep: kind !== 'plain', ...halfAt(halves, time) });
    if (!outside) previous = time;
  }
  return points;
}
