// Planned times against the rows that were read: which rows came late or early, and which planned times nobody read.
import type { Protocol, Schedule } from '../protocol/types.ts';
import type { ReadingRow, ReadingsTable } from '../readings/types.ts';
import { minute, type Duration, type Instant } from '../time/instant.ts';
import { nearestSlot, slotReach } from './coverage.ts';

/** A row that was read so far from its planned time that a reader should know. */
export interface OffTime {
  readonly slot: Instant;
  /** Time of the row minus its slot: positive is late, negative early. */
  readonly offset: Duration;
}

export interface SlotRecord {
  readonly offTime: ReadonlyMap<ReadingRow, OffTime>;
  /** Planned times up to the last reading at which no row was read, in order of time. */
  readonly missed: readonly Instant[];
  /** Number of planned times that were read. */
  readonly read: number;
  /** The first planned time after the last reading; null when the plan is through. */
  readonly next: Instant | null;
}

const nothing: SlotRecord = { offTime: new Map(), missed: [], read: 0, next: null };

/** How far from its planned time a reading is still on time: two minutes, or a tenth of the interval where that is less. */
export function slotGrace(schedule: Schedule, slot: Instant): Duration {
  return Math.min(2 * minute, slotReach(schedule, slot) / 5);
}

/**
 * The rows of all tables against the plan. The row nearest to a slot is that slot's; further rows in between are extra
 * and neither late nor early. Rows of data files fill slots too, but a logger keeps its own clock: they are never late.
 * Times that are only laid out and hold no reading count as not read.
 */
export function slotRecord(tables: readonly ReadingsTable[], protocol: Protocol): SlotRecord {
  const schedule = protocol.schedule;
  if (!schedule || schedule.slots.length === 0) return nothing;
  const nearest = new Map<Instant, { row: ReadingRow; offset: Duration; typed: boolean }>();
  let last = -Infinity;
  for (const table of tables) {
    for (const row of table.rows) {
      if (row.instant === null || !wasRead(row)) continue;
      last = Math.max(last, row.instant);
      const slot = nearestSlot(schedule, row.instant)!;
      const offset = row.instant - slot;
      if (Math.abs(offset) > slotReach(schedule, slot)) continue;
      const before = nearest.get(slot);
      if (!before || Math.abs(offset) < Math.abs(before.offset)) nearest.set(slot, { row, offset, typed: table.file === null });
    }
  }
  const offTime = new Map<ReadingRow, OffTime>();
  for (const [slot, { row, offset, typed }] of nearest) {
    if (typed && Math.abs(offset) > slotGrace(schedule, slot)) offTime.set(row, { slot, offset });
  }
  const open = schedule.slots.filter((slot) => !nearest.has(slot));
  return { offTime, missed: open.filter((slot) => slot <= last), read: nearest.size, next: open.find((slot) => slot > last) ?? null };
}

/** True for a row with at least one reading; a left-out or doubtful one was taken, too. */
export function wasRead(row: ReadingRow): boolean {
  return row.cells.some((cell) => cell.state.kind !== 'missing');
}

/**
 * Missed planned times by the typed row behind which they belong; `null` stands for the heads of the first table. A planned
 * time for which a row of gaps is laid out is left out: that row shows it.
 */
export function missedBehind(tables: readonly ReadingsTable[], { missed }: SlotRecord): ReadonlyMap<ReadingRow | null, readonly Instant[]> {
  const typed = tables.filter((table) => table.file === null).flatMap((table) => table.rows);
  const laidOut = new Set(typed.map((row) => row.instant));
  const rows = typed.filter((row) => row.instant !== null && wasRead(row)).sort((a, b) => a.instant! - b.instant!);
  const found = new Map<ReadingRow | null, Instant[]>();
  for (const slot of missed) {
    if (laidOut.has(slot)) continue;
    const row = rows.findLast((each) => each.instant! < slot) ?? null;
    found.set(row, [...found.get(row) ?? [], slot]);
  }
  return found;
}
