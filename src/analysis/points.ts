// Readings as bare points in time, and the questions that need no more: neighbours, intervals, gaps.
import type { Duration, Instant } from '../time/instant.ts';
import type { Schedule } from '../protocol/types.ts';

export interface TimedValue { readonly time: Instant; readonly value: number }

/** First position whose time is not before `instant`; the length when there is none. */
export function firstFrom(points: readonly { readonly time: Instant }[], instant: Instant): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle]!.time < instant) low = middle + 1; else high = middle;
  }
  return low;
}

/** The points from `from` to `to`, both ends included. */
export function between<P extends { readonly time: Instant }>(points: readonly P[], from: Instant, to: Instant): readonly P[] {
  const start = firstFrom(points, from);
  let end = start;
  while (end < points.length && points[end]!.time <= to) end += 1;
  return start === 0 && end === points.length ? points : points.slice(start, end);
}

/** Median step of the points; null with fewer than two. */
export function medianStep(points: readonly { readonly time: Instant }[]): Duration | null {
  if (points.length < 2) return null;
  const steps: number[] = [];
  for (let index = 1; index < points.length; index += 1) steps.push(points[index]!.time - points[index - 1]!.time);
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1]!;
}

/** The longest planned sampling interval around an instant; null where nothing is planned. */
export function plannedInterval(schedule: Schedule | null, instant: Instant): Duration | null {
  let longest: Duration | null = null;
  for (const stretch of schedule?.sampling ?? []) {
    if (stretch.from <= instant && instant <= stretch.to) longest = Math.max(longest ?? 0, stretch.every);
  }
  return longest;
}

/** The sampling interval around an instant: the planned one where the schedule has one, else the median step of the points. */
export function intervalAt(schedule: Schedule | null, points: readonly { readonly time: Instant }[], instant: Instant): Duration | null {
  return plannedInterval(schedule, instant) ?? medianStep(points);
}

/** True when a time lies within (not at) the given ends. */
export function anyBetween(times: readonly Instant[], from: Instant, to: Instant): boolean {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= from) low = middle + 1; else high = middle;
  }
  return low < times.length && times[low]! < to;
}

/**
 * True when two readings stand in neighbouring slots: nothing missing or left out at a planned time between them, and no
 * more than one and a half intervals apart.
 */
export function areNeighbours(earlier: Instant, later: Instant, holes: readonly Instant[], interval: Duration | null): boolean {
  if (interval !== null && later - earlier > 1.5 * interval) return false;
  return !anyBetween(holes, earlier, later);
}
