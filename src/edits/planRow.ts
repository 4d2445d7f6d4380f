// What is to be logged now: the slot that is due, the table, and the columns in the planned order.
import type { Note } from '../experiment/types.ts';
import { plannedColumns } from './insertReadingsTable.ts';
import { nearestSlot, slotReach } from '../dataset/coverage.ts';
import { slotGrace, wasRead } from '../dataset/slotRecord.ts';
import { isUsable } from '../dataset/series.ts';
import type { Series } from '../dataset/types.ts';
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import type { Unit } from '../quantities/types.ts';
import { measureFor } from '../readings/heads.ts';
import type { ReadingColumn, ReadingsTable } from '../readings/types.ts';
import { hasOrder, tankOrder } from './tankOrder.ts';
import { minute, type Instant } from '../time/instant.ts';

export interface PlannedColumn {
  /** Position in the table. */
  readonly index: number;
  /** `mat.DO` */
  readonly id: string;
  readonly place: string;
  /** What prose calls the tank; `room` for the room. */
  readonly label: string;
  readonly quantity: string;
  readonly unit: Unit | null;
  readonly measure: MeasuredQuantity | null;
  /** Words of the scale as they are typed; null for numbers. */
  readonly words: readonly string[] | null;
  readonly series: Series | null;
}

export interface RowPlan {
  /** Index into `note.tables` of the table to log into; null: `logRow` makes one with a column for everything the plan measures. */
  readonly table: number | null;
  /** `due`: a slot is due now; `waiting`: the next slot is still to come; `before`, `after` the run; `unplanned`: no slots. */
  readonly state: 'due' | 'waiting' | 'before' | 'after' | 'unplanned';
  /** The slot that is due; null unless `due`. */
  readonly slot: Instant | null;
  /** The next slot without a reading that is still to come. */
  readonly next: Instant | null;
  /** Slots that passed without a reading. */
  readonly missed: readonly Instant[];
  /**
   * The time to log: the slot when now is within two minutes of it (and a tenth of its interval), else now to the minute.
   * A late or early reading so keeps its true time.
   */
  readonly time: Instant;
  readonly now: Instant;
  readonly columns: readonly PlannedColumn[];
}

/** The table that takes new rows: the last one typed in the note that is not sealed and has columns. */
export function openTable(note: Note): number | null {
  for (let index = note.tables.length - 1; index >= 0; index -= 1) {
    const table = note.tables[index]!;
    if (!table.file && !table.sealed && table.columns.length > 0 && note.syntax.blocks[table.block]?.closed) return index;
  }
  return null;
}

/** What to log now. Null without a readable plan. `table` names another table than the usual one. */
export function planRow(note: Note, now: Instant, table: number | null = openTable(note)): RowPlan | null {
  const { protocol } = note;
  if (!protocol) return null;
  const target = table === null ? null : note.tables[table] ?? null;
  const rest = (slot: Instant | null) => ({ table: target ? table : null, now, columns: inPlannedOrder(target?.columns ?? plannedColumns(protocol), protocol, note, slot) });
  const onMinute = Math.floor(now / minute) * minute;
  const schedule = protocol.schedule;
  if (!schedule || schedule.slots.length === 0) return { ...rest(null), state: 'unplanned', slot: null, next: null, missed: [], time: onMinute };
  const taken = new Set<Instant>();
  for (const time of target ? takenTimes(target) : []) {
    const slot = nearestSlot(schedule, time);
    if (slot !== null && Math.abs(time - slot) <= slotReach(schedule, slot)) taken.add(slot);
  }
  const isTaken = (slot: Instant): boolean => taken.has(slot);
  const near = nearestSlot(schedule, now)!;
  const due = Math.abs(now - near) <= Math.max(slotReach(schedule, near), minute) && !isTaken(near) ? near : null;
  const next = schedule.slots.find((slot) => slot > now && slot !== due && !isTaken(slot)) ?? null;
  const missed = schedule.slots.filter((slot) => slot < now && slot !== due && !isTaken(slot));
  const state = due !== null ? 'due' : now < schedule.slots[0]! ? 'before' : next !== null ? 'waiting' : 'after';
  const grace = due === null ? 0 : slotGrace(schedule, due);
  return { ...rest(due ?? near), state, slot: due, next, missed, time: due !== null && Math.abs(now - due) <= grace ? due : onMinute };
}

/** Times of rows with at least one reading. */
function takenTimes(table: ReadingsTable): Instant[] {
  return table.rows.flatMap((row) => (row.instant !== null && wasRead(row) ? [row.instant] : []));
}

/** The plan for a row of another time than now: its columns stand in the order of the slot nearest to that time. */
export function planForTime(plan: RowPlan, note: Note, time: Instant): RowPlan {
  const { protocol } = note;
  if (!protocol) return plan;
  const slot = protocol.schedule ? nearestSlot(protocol.schedule, time) : null;
  return { ...plan, time, columns: sortForSlot(plan.columns, protocol, slot) };
}

/** Columns in the order in which the plan has the tanks read at the slot, the room last; without one as they stand in the table. */
function sortForSlot(columns: readonly PlannedColumn[], protocol: Protocol, slot: Instant | null): PlannedColumn[] {
  const order = hasOrder(protocol) ? tankOrder(protocol, slot) : [];
  const rank = (place: string): number => { const at = order.indexOf(place); return at < 0 ? order.length : at; };
  return columns.toSorted((a, b) => rank(a.place) - rank(b.place) || a.index - b.index);
}

function inPlannedOrder(columns: readonly Omit<ReadingColumn, 'range'>[], protocol: Protocol, note: Note, slot: Instant | null): PlannedColumn[] {
  const planned = columns.map((column, index): PlannedColumn => {
    const measure = measureFor(protocol, column.quantity, column.instrument);
    return {
      index, id: column.id, place: column.place, quantity: column.quantity, unit: column.unit, measure,
      label: protocol.tanks.find((tank) => tank.id === column.place)?.label ?? column.place,
      words: measure?.scale?.map((word) => word.trim().replace(/\s+/gu, '-')) ?? null,
      series: note.dataset.series.get(column.id) ?? null,
    };
  });
  return sortForSlot(planned, protocol, slot);
}

/** The last usable reading of a column before a time. */
export function lastReading(column: PlannedColumn, before: Instant): { value: number; time: Instant; text: string } | null {
  const { series } = column;
  if (!series) return null;
  for (let index = series.times.length - 1; index >= 0; index -= 1) {
    if (series.times[index]! < before && isUsable(series, index)) {
      return { value: series.values[index]!, time: series.times[index]!, text: series.sources[index]!.cell.state.text };
    }
  }
  return null;
}
