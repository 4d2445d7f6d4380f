// Two instruments read side by side in one place, at the start and the end of a run: the offset of one from the other and how it drifts.
import { flag, type Dataset, type Series } from '../dataset/types.ts';
import { isUsable } from '../dataset/series.ts';
import { convert, convertible } from '../quantities/units.ts';
import { hour, type Instant } from '../time/instant.ts';
import type { Unit } from '../quantities/types.ts';

export interface SideBySide {
  readonly quantity: string;
  /** The instrument compared, as after `@`. */
  readonly instrument: string;
  /** In the unit of the other one's readings. */
  readonly unit: Unit;
  readonly count: number;
  /** Mean of instrument less the plain one at the first comparison, and its time. */
  readonly start: { readonly offset: number; readonly time: Instant; readonly count: number };
  /** The same at the last comparison; null where all readings side by side were taken together. */
  readonly end: { readonly offset: number; readonly time: Instant; readonly count: number } | null;
  /** Per hour; null without an end. */
  readonly drift: number | null;
  /** Standard deviation of the differences about their group's mean; null where no group has two. */
  readonly spread: number | null;
}

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

/** Comparisons further apart than this belong to different moments. Common practice, no source. */
const together = hour;

/** Differences at the times that both instruments were read in one place. */
function differences(plain: Series, other: Series): { time: Instant; value: number }[] {
  const byTime = new Map<number, number>();
  plain.times.forEach((time, index) => { if (isUsable(plain, index)) byTime.set(time, plain.values[index]!); });
  const found: { time: Instant; value: number }[] = [];
  other.times.forEach((time, index) => {
    const reference = byTime.get(time);
    if (reference === undefined || !isUsable(other, index) || (other.flags[index]! & flag.word) !== 0) return;
    found.push({ time, value: convert(other.values[index]!, other.unit, plain.unit) - reference });
  });
  return found;
}

/**
 * The offset and drift of `quantity@instrument` against the plain `quantity`, from all places in which both were read at the same
 * times. The differences up to an hour after the first form the start, those up to an hour before the last the end. null: never side by side.
 */
export function compareSideBySide(dataset: Dataset, quantity: string, instrument: string): SideBySide | null {
  const all = [...dataset.series.values()].filter((series) => series.quantity === quantity);
  const pairs: { time: Instant; value: number }[] = [];
  let unit: Unit | null = null;
  for (const other of all.filter((series) => series.instrument === instrument)) {
    const plain = all.find((series) => series.place === other.place && series.instrument === null);
    if (!plain || !convertible(other.unit, plain.unit) || (unit && unit.symbol !== plain.unit.symbol)) continue;
    unit = plain.unit;
    pairs.push(...differences(plain, other));
  }
  if (!unit || pairs.length === 0) return null;
  pairs.sort((a, b) => a.time - b.time);
  const first = pairs.filter((pair) => pair.time <= pairs[0]!.time + together);
  const last = pairs.filter((pair) => pair.time >= pairs.at(-1)!.time - together && pair.time > pairs[0]!.time + together);
  const group = (part: typeof pairs): { offset: number; time: Instant; count: number } => ({ offset: mean(part.map((each) => each.value)), time: mean(part.map((each) => each.time)), count: part.length });
  const start = group(first);
  const end = last.length > 0 ? group(last) : null;
  const spare = [first, last].filter((part) => part.length > 1);
  const freedom = spare.reduce((sum, part) => sum + part.length - 1, 0);
  const squares = spare.reduce((sum, part) => { const centre = mean(part.map((each) => each.value)); return sum + part.reduce((inner, each) => inner + (each.value - centre) ** 2, 0); }, 0);
  return {
    quantity, instrument, unit, count: pairs.length, start, end,
    drift: end ? (end.offset - start.offset) * hour / (end.time - start.time) : null,
    spread: freedom > 0 ? Math.sqrt(squares / freedom) : null,
  };
}

/** What the instrument reads too much at a time, in `unit`: along the straight line between the two comparisons, kept beyond them. */
export function offsetAt(found: SideBySide, time: Instant): number {
  if (!found.end) return found.start.offset;
  const share = Math.min(1, Math.max(0, (time - found.start.time) / (found.end.time - found.start.time)));
  return found.start.offset + share * (found.end.offset - found.start.offset);
}

/** Standard uncertainty of the offset, in `unit`: the spread of the differences over the fewer of the two groups; null where it is not known. */
export function offsetError(found: SideBySide): number | null {
  return found.spread === null ? null : found.spread / Math.sqrt(Math.min(found.start.count, found.end?.count ?? Infinity));
}
