// The readings of one series as points to draw: which are joined by a line, which stand alone and how they are marked.
import type { Protocol } from '../protocol/types.ts';
import { flag, type Series } from '../dataset/types.ts';
import type { Duration, Instant } from '../time/instant.ts';

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
}

/** The planned interval at an instant; the usual step of the series where the plan says nothing. */
function intervalAt(protocol: Protocol, series: Series): (instant: Instant) => Duration {
  const steps: number[] = [];
  for (let index = 1; index < series.times.length; index += 1) {
    const step = series.times[index]! - series.times[index - 1]!;
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  const usual = steps[Math.floor(steps.length / 2)] ?? Number.MAX_SAFE_INTEGER;
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
export function pointsOf(series: Series, protocol: Protocol, from: Instant, to: Instant): Point[] {
  const interval = intervalAt(protocol, series);
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
    points.push({ time, value, kind: doubtful ? 'doubtful' : 'plain', segment, keep: doubtful });
    previous = time;
  }
  return points;
}
