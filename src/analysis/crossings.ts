// Time spent below or above a level, with readings joined by straight lines.
import { hour, type Duration } from '../time/instant.ts';
import type { TimedValue } from './points.ts';

/**
 * Hours during which the straight lines between the readings lie below (or above) the level, and the widest gap that was
 * bridged while doing so. A value exactly at the level is neither below nor above.
 */
export function hoursBeyond(points: readonly TimedValue[], level: number, side: 'below' | 'above'): { hours: number; widestStep: Duration } {
  const sign = side === 'below' ? 1 : -1;
  let total = 0;
  let widestStep = 0;
  for (let index = 1; index < points.length; index += 1) {
    const from = points[index - 1]!;
    const to = points[index]!;
    const length = to.time - from.time;
    widestStep = Math.max(widestStep, length);
    const start = sign * (level - from.value);
    const end = sign * (level - to.value);
    if (start > 0 && end > 0) total += length;
    else if (start > 0) total += length * (start / (start - end));
    else if (end > 0) total += length * (end / (end - start));
  }
  return { hours: total / hour, widestStep };
}
