// The steepest stretch of a series: the greatest rate between neighbouring readings, or over a given length of time.
import type { Duration, Instant } from '../time/instant.ts';
import { hour } from '../time/instant.ts';
import { areNeighbours, firstFrom, type TimedValue } from './points.ts';

export interface Stretch<P> { readonly from: P; readonly to: P; /** Units an hour; positive when rising. */ readonly rate: number }

/** Every stretch of neighbouring readings. `interval` tells the sampling interval around an instant. */
export function neighbouringStretches<P extends TimedValue>(
  points: readonly P[], holes: readonly Instant[], interval: (instant: Instant) => Duration | null,
): Stretch<P>[] {
  const found: Stretch<P>[] = [];
  for (let index = 1; index < points.length; index += 1) {
    const from = points[index - 1]!;
    const to = points[index]!;
    if (to.time > from.time && areNeighbours(from.time, to.time, holes, interval(from.time))) found.push(stretch(from, to));
  }
  return found;
}

/** Every stretch of the given length (within `tolerance`) with no reading missing inside. */
export function stretchesOver<P extends TimedValue>(
  points: readonly P[], holes: readonly Instant[], interval: (instant: Instant) => Duration | null, length: Duration, tolerance: Duration,
): Stretch<P>[] {
  const found: Stretch<P>[] = [];
  for (const [index, from] of points.entries()) {
    const end = firstFrom(points, from.time + length - tolerance);
    const to = points[end];
    if (!to || end <= index || to.time > from.time + length + tolerance) continue;
    let whole = true;
    for (let step = index + 1; step <= end && whole; step += 1) {
      whole = areNeighbours(points[step - 1]!.time, points[step]!.time, holes, interval(points[step - 1]!.time));
    }
    if (whole) found.push(stretch(from, to));
  }
  return found;
}

function stretch<P extends TimedValue>(from: P, to: P): Stretch<P> {
  return { from, to, rate: (to.value - from.value) / ((to.time - from.time) / hour) };
}
