// When a series has come to rest, and where it turns upward again.
import type { Duration } from '../time/instant.ts';
import type { TimedValue } from './points.ts';

/**
 * The first reading from which every reading during the following `length` differs from it by at most `within`, with at
 * least three readings in that time (the first included) and the readings reaching to its end. null: never.
 */
export function settledAt<P extends TimedValue>(points: readonly P[], within: number, length: Duration): P | null {
  const last = points.at(-1);
  if (!last) return null;
  const tolerance = within + 1e-9 * Math.max(Math.abs(within), 1e-12);
  for (const [index, candidate] of points.entries()) {
    if (last.time < candidate.time + length) return null;
    let inside = 0;
    let calm = true;
    for (let next = index; next < points.length && points[next]!.time <= candidate.time + length && calm; next += 1) {
      inside += 1;
      const difference = Math.abs(points[next]!.value - candidate.value);
      calm = difference <= tolerance + 1e-9 * Math.abs(candidate.value);
    }
    if (calm && inside >= 3) return candidate;
  }
  return null;
}

/** The lowest reading (the first of equals), if a later one lies more than `resolvable(low, later)` above it. null: it never turns. */
export function turningPoint<P extends TimedValue>(points: readonly P[], resolvable: (low: P, later: P) => number): P | null {
  let low: P | null = null;
  for (const point of points) if (!low || point.value < low.value) low = point;
  if (!low) return null;
  const lowest = low;
  return points.some((point) => point.time > lowest.time && point.value - lowest.value > resolvable(lowest, point)) ? lowest : null;
}
