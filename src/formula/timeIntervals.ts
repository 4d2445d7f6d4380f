// The 95 % interval of an instant or of a length of time: how far it reaches to either side, in milliseconds.
import type { Duration } from '../time/instant.ts';

export interface TimeInterval {
  /** How far it reaches below the value; not negative; null where it has no end on that side. */
  readonly earlier: Duration | null;
  /** How far above. */
  readonly later: Duration | null;
}

/** Sides that differ by less than this part of the longer one are shown as one ±. */
const nearlyEven = 0.1;

/** Half the interval: of an uneven one its longer side, so that it holds at least as often. null where it has no end. */
export function halfWidthOf(interval: TimeInterval | undefined): Duration | null {
  return interval === undefined || interval.earlier === null || interval.later === null ? null : Math.max(interval.earlier, interval.later);
}

/** True where one ± says it all. */
export function isEven({ earlier, later }: TimeInterval): boolean {
  return earlier !== null && later !== null && Math.abs(earlier - later) <= nearlyEven * Math.max(earlier, later);
}

/** Of the value with its sign turned. */
export function turned(interval: TimeInterval | undefined): TimeInterval | undefined {
  return interval && { earlier: interval.later, later: interval.earlier };
}

const scaledSide = (side: Duration | null, size: number): Duration | null => (side === null ? null : side * size);
const sideSum = (a: Duration | null, b: Duration | null): Duration | null => (a === null || b === null ? null : a + b);

/** Of the value times a factor. */
export function scaledBy(interval: TimeInterval | undefined, factor: number): TimeInterval | undefined {
  if (interval === undefined) return undefined;
  const size = Math.abs(factor);
  const stretched = { earlier: scaledSide(interval.earlier, size), later: scaledSide(interval.later, size) };
  return factor < 0 ? turned(stretched) : stretched;
}

/**
 * Of the sum of two times. Where both have an interval their sides are added, because what the two share is not known: the sum
 * then reaches at least as far as it should.
 */
export function addedTo(a: TimeInterval | undefined, b: TimeInterval | undefined): TimeInterval | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return { earlier: sideSum(a.earlier, b.earlier), later: sideSum(a.later, b.later) };
}

/** As a part of a value, which has none where there is no interval. */
export function withInterval(interval: TimeInterval | undefined): { interval?: TimeInterval } {
  return interval === undefined ? {} : { interval };
}
