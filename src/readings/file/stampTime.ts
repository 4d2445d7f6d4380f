// The instant that a logger's time stamp means, or the reason why it means none.
import type { Instant, Zone } from '../../time/instant.ts';
import { instantOf, utc } from '../../time/zone.ts';
import { wallOf, type DateOrder, type Stamp } from './stamps.ts';

/** Why a stamp gives no instant: no time at all, half of one, or an hour that a clock change repeats or skips. */
export type StampReason = 'time' | 'no-date' | 'no-clock' | 'repeated' | 'skipped';
export type StampMeaning = { readonly instant: Instant; readonly reason: null } | { readonly instant: null; readonly reason: StampReason };

/** The stamp's instant: by its own offset where it carries one, else in the zone of the file. */
export function instantOfStamp(stamp: Stamp | null, order: DateOrder, zone: Zone): StampMeaning {
  if (stamp && (!stamp.date || !stamp.clock)) return { instant: null, reason: stamp.date ? 'no-clock' : 'no-date' };
  const wall = stamp ? wallOf(stamp, order) : null;
  if (!stamp || !wall) return { instant: null, reason: 'time' };
  const meant = instantOf(wall.wall, stamp.offset === null ? zone : utc);
  if (meant.kind !== 'single') return { instant: null, reason: meant.kind };
  return { instant: meant.instant - (stamp.offset ?? 0) + wall.millisecond, reason: null };
}
