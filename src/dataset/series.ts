// Questions put to one series: which readings count, which one stands at a time, which came before.
// Indexes are positions in the series' arrays; nothing here copies data.
import type { Window } from '../protocol/types.ts';
import type { Instant } from '../time/instant.ts';
import { flag, type Dataset, type Series } from './types.ts';

/** Flags of a reading that never enters a calculation as a number. */
export const notUsable = flag.leftOut | flag.missing | flag.word | flag.below | flag.above;

export interface WindowOptions {
  /** Take readings that were left out too (stop rules do). */
  readonly leftOut?: boolean;
  /** Take readings outside the instrument's range too, so that the caller can refuse them. */
  readonly censored?: boolean;
  /** Take words of a scale. */
  readonly words?: boolean;
}

/** True when the reading at `index` is a number that enters calculations. */
export function isUsable(series: Series, index: number, options: WindowOptions = {}): boolean {
  const bits = series.flags[index] ?? flag.missing;
  let barred = notUsable;
  if (options.leftOut) barred &= ~flag.leftOut;
  if (options.censored) barred &= ~(flag.below | flag.above);
  if (options.words) barred &= ~flag.word;
  return (bits & barred) === 0;
}

/** True when the reading is `<x` or `>x`. */
export function isCensored(series: Series, index: number): boolean {
  return ((series.flags[index] ?? 0) & (flag.below | flag.above)) !== 0;
}

/** First position whose time is not before `instant`; the length when there is none. */
export function firstNotBefore(series: Series, instant: Instant): number {
  let low = 0;
  let high = series.times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (series.times[middle]! < instant) low = middle + 1; else high = middle;
  }
  return low;
}

/** Positions of the usable readings in the window, both its ends included; of the whole series without a window. */
export function inWindow(series: Series, window: Window | null = null, options: WindowOptions = {}): number[] {
  const found: number[] = [];
  for (let index = window ? firstNotBefore(series, window.from) : 0; index < series.times.length; index += 1) {
    if (window && series.times[index]! > window.to) break;
    if (isUsable(series, index, options)) found.push(index);
  }
  return found;
}

/** Positions of the gaps (`-`, unreadable, withdrawn) in the window. */
export function missingInWindow(series: Series, window: Window | null = null): number[] {
  const found: number[] = [];
  for (let index = window ? firstNotBefore(series, window.from) : 0; index < series.times.length; index += 1) {
    if (window && series.times[index]! > window.to) break;
    if ((series.flags[index]! & flag.missing) !== 0) found.push(index);
  }
  return found;
}

/** Position of the usable reading at exactly that time; null when there is none. */
export function readingAt(series: Series, instant: Instant, options: WindowOptions = {}): number | null {
  for (let index = firstNotBefore(series, instant); series.times[index] === instant; index += 1) {
    if (isUsable(series, index, options)) return index;
  }
  return null;
}

/** Position of any entry at exactly that time, usable or not; null when no row holds that time. */
export function entryAt(series: Series, instant: Instant): number | null {
  const index = firstNotBefore(series, instant);
  return series.times[index] === instant ? index : null;
}

/** Position of the last usable reading before that time. */
export function readingBefore(series: Series, instant: Instant, options: WindowOptions = {}): number | null {
  for (let index = firstNotBefore(series, instant) - 1; index >= 0; index -= 1) {
    if (isUsable(series, index, options)) return index;
  }
  return null;
}

/** Position of the first usable reading after that time. */
export function readingAfter(series: Series, instant: Instant, options: WindowOptions = {}): number | null {
  for (let index = firstNotBefore(series, instant); index < series.times.length; index += 1) {
    if (series.times[index]! > instant && isUsable(series, index, options)) return index;
  }
  return null;
}

/** Position of the usable reading before the one at `index`. */
export function previousReading(series: Series, index: number, options: WindowOptions = {}): number | null {
  for (let before = index - 1; before >= 0; before -= 1) if (isUsable(series, before, options)) return before;
  return null;
}

/** Position of the usable reading nearest to that time, inside the window where one is given; the earlier of two. */
export function nearestReading(series: Series, instant: Instant, window: Window | null = null, options: WindowOptions = {}): number | null {
  const at = readingAt(series, instant, options);
  const before = readingBefore(series, instant, options);
  const after = readingAfter(series, instant, options);
  let best: number | null = null;
  for (const candidate of [at, before, after]) {
    if (candidate === null) continue;
    const time = series.times[candidate]!;
    if (window && (time < window.from || time > window.to)) continue;
    if (best === null || Math.abs(time - instant) < Math.abs(series.times[best]! - instant)) best = candidate;
  }
  return best;
}

/** The name of a series: `mat.DO`, `mat.DO@titration`. */
export function seriesName(place: string, quantity: string, instrument: string | null = null): string {
  return instrument === null ? `${place}.${quantity}` : `${place}.${quantity}@${instrument}`;
}

/** Every series of one place and quantity, whatever the instrument; the one without a named instrument first. */
export function seriesOf(dataset: Dataset, place: string, quantity: string): Series[] {
  const found = [...dataset.series.values()].filter((series) => series.place === place && series.quantity === quantity);
  return found.sort((a, b) => (a.instrument === null ? 0 : 1) - (b.instrument === null ? 0 : 1));
}

/**
 * The series of a place and quantity. Without an instrument it is the plain one, or the only one there is
 * (`mat.DO` where only `mat.DO@titration` was logged). null: none, or several instruments and no plain one
 * (`seriesOf` then lists them).
 */
export function seriesFor(dataset: Dataset, place: string, quantity: string, instrument: string | null = null): Series | null {
  const exact = dataset.series.get(seriesName(place, quantity, instrument));
  if (exact || instrument !== null) return exact ?? null;
  const all = seriesOf(dataset, place, quantity);
  return all.length === 1 ? all[0]! : null;
}
