// A note in a few figures: how its claims stand, how many problems, how many slots are read. For CodeLens and status.
import type { Note } from '../experiment/types.ts';
import type { Protocol, Sampling } from '../protocol/types.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { Instant } from '../time/instant.ts';

export interface ClaimCounts {
  readonly all: number;
  /** Computed or condition checked, and it holds. */
  readonly hold: number;
  /** Number differs, condition false, or it cannot be computed. */
  readonly fail: number;
  readonly unfilled: number;
  readonly stated: number;
}

export function claimCounts(note: Note): ClaimCounts {
  const count = { all: note.claims.length, hold: 0, fail: 0, unfilled: 0, stated: 0 };
  for (const claim of note.claims) {
    if (claim.mark === 'stated') count.stated += 1;
    else if (claim.state === 'holds') count.hold += 1;
    else if (claim.state === 'unfilled') count.unfilled += 1;
    else count.fail += 1;
  }
  return count;
}

export interface ProblemCounts { readonly errors: number; readonly warnings: number }

/** Errors and warnings among these problems, or of those in a part of the note. */
export function problemCounts(problems: readonly Problem[], within?: SourceRange): ProblemCounts {
  const count = { errors: 0, warnings: 0 };
  for (const problem of problems) {
    if (within && (problem.range.start < within.start || problem.range.end > within.end)) continue;
    if (problem.severity === 'error') count.errors += 1;
    if (problem.severity === 'warning') count.warnings += 1;
  }
  return count;
}

export interface SlotCounts {
  /** Slots with a row in one of the tables. */
  readonly read: number;
  readonly planned: number;
  /** The first slot after the last reading; null when the plan is through. */
  readonly next: Instant | null;
  readonly last: Instant | null;
}

/** How far the planned reading times are read in these tables; null without a schedule with times. */
export function slotCounts(protocol: Protocol, tables: readonly ReadingsTable[]): SlotCounts | null {
  const schedule = protocol.schedule;
  if (!schedule || schedule.slots.length === 0) return null;
  const times = tables.flatMap((table) => table.rows.map((row) => row.instant)).filter((instant) => instant !== null).sort((a, b) => a - b);
  const read = schedule.slots.filter((slot) => isRead(slot, times, schedule.sampling)).length;
  const last = times.at(-1) ?? null;
  const next = last === null ? schedule.slots[0]! : schedule.slots.find((slot) => slot > last && !isRead(slot, times, schedule.sampling)) ?? null;
  return { read, planned: schedule.slots.length, next, last };
}

/** A slot is read when a row stands nearer to it than half the interval that holds there. */
function isRead(slot: Instant, times: readonly Instant[], sampling: readonly Sampling[]): boolean {
  const stretch = sampling.find(({ from, to }) => from <= slot && slot <= to);
  const reach = (stretch?.every ?? 0) / 2;
  return times.some((time) => time === slot || Math.abs(time - slot) < reach);
}
