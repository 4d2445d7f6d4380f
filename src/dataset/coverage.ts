// What was planned against what was read: missed slots, and readings outside the run.
import { problem, type Problem } from '../problems/problem.ts';
import type { Protocol, Schedule } from '../protocol/types.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { Duration, Instant } from '../time/instant.ts';
import { formatClock, formatInstant } from '../time/text.ts';
import { flag, type Dataset, type Series } from './types.ts';

/** How far a reading may lie from its slot and still be that slot's: half the interval planned there. */
export function slotReach(schedule: Schedule, slot: Instant): Duration {
  let reach = Infinity;
  for (const stretch of schedule.sampling) {
    if (slot >= stretch.from && slot <= stretch.to) reach = Math.min(reach, stretch.every / 2);
  }
  if (reach !== Infinity) return reach;
  const index = schedule.slots.indexOf(slot);
  const gaps = [schedule.slots[index - 1], schedule.slots[index + 1]].flatMap((other) => (other === undefined ? [] : [Math.abs(other - slot)]));
  return gaps.length === 0 ? 0 : Math.min(...gaps) / 2;
}

/** The planned time nearest to an instant; the earlier of two. */
export function nearestSlot(schedule: Schedule, time: Instant): Instant | null {
  const { slots } = schedule;
  let low = 0;
  let high = slots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (slots[middle]! < time) low = middle + 1; else high = middle;
  }
  const [before, after] = [slots[low - 1], slots[low]];
  if (before === undefined || after === undefined) return before ?? after ?? null;
  return time - before <= after - time ? before : after;
}

/**
 * Slots of the plan at which a series has no value (a gap, or no row near it), up to the last time that anything was
 * read. A reading belongs to the slot nearest to it. Left-out and doubtful readings were taken, so they are not missed.
 */
export function missedSlots(series: Series, dataset: Dataset, protocol: Protocol): Instant[] {
  const schedule = protocol.schedule;
  const last = lastTaken(dataset);
  if (!schedule || last === null) return [];
  const reached = schedule.slots.filter((slot) => slot - slotReach(schedule, slot) <= last);
  const filled = new Set<Instant>();
  let at = 0;
  for (let index = 0; index < series.times.length; index += 1) {
    if ((series.flags[index]! & flag.missing) !== 0) continue;
    const time = series.times[index]!;
    while (at + 1 < reached.length && Math.abs(reached[at + 1]! - time) <= Math.abs(reached[at]! - time)) at += 1;
    const slot = reached[at];
    if (slot !== undefined && Math.abs(slot - time) <= slotReach(schedule, slot)) filled.add(slot);
  }
  return reached.filter((slot) => !filled.has(slot) && slot <= last);
}

/** The last time at which anything was read; rows that were only laid out for later do not count. Null: nothing yet. */
export function lastTaken(dataset: Dataset): Instant | null {
  let last: Instant | null = null;
  for (const series of dataset.series.values()) {
    for (let index = series.times.length - 1; index >= 0; index -= 1) {
      if ((series.flags[index]! & flag.missing) !== 0) continue;
      if (last === null || series.times[index]! > last) last = series.times[index]!;
      break;
    }
  }
  return last;
}

/** One information a column that missed slots. A second instrument beside a plain column is not asked to keep the plan. */
export function slotsMissed(dataset: Dataset, protocol: Protocol): Problem[] {
  const problems: Problem[] = [];
  const last = lastTaken(dataset);
  for (const series of dataset.series.values()) {
    if (series.instrument !== null && dataset.series.has(`${series.place}.${series.quantity}`)) continue;
    const source = series.sources[0];
    const missed = missedSlots(series, dataset, protocol);
    if (missed.length === 0 || !source) continue;
    const planned = protocol.schedule!.slots.filter((slot) => slot <= last!).length;
    const long = protocol.schedule!.slots.at(-1)! - protocol.schedule!.slots[0]! > 86_400_000;
    const show = (slot: Instant): string => (long ? formatInstant(slot, protocol.zone).slice(0, 16).replace('T', ' ') : formatClock(slot, protocol.zone));
    problems.push(problem('slots-missed', source.column.range, {
      head: series.id, missed: missed.length, planned, times: missed.slice(0, 6).map(show), more: missed.length > 6 ? missed.length - 6 : '',
    }));
  }
  return problems;
}

/** One information a block with readings before the start or after the end of the run. */
export function outsideRun(tables: readonly ReadingsTable[], protocol: Protocol): Problem[] {
  const schedule = protocol.schedule;
  if (!schedule) return [];
  const problems: Problem[] = [];
  const outside = (instant: Instant): boolean => instant < schedule.start || (schedule.end !== null && instant > schedule.end);
  for (const table of tables) {
    const rows = table.rows.filter((row) => row.instant !== null && outside(row.instant));
    if (rows.length === 0) continue;
    const first = rows[0]!;
    problems.push(problem('reading-outside-run', first.timeRange, {
      count: rows.length, first: formatInstant(first.instant!, protocol.zone).slice(0, 16).replace('T', ' '),
      last: formatInstant(rows.at(-1)!.instant!, protocol.zone).slice(0, 16).replace('T', ' '),
    }));
  }
  return problems;
}
