// A note in a few figures: how its claims stand, how many problems, how many slots are read. For CodeLens and status.
import { slotRecord } from '../dataset/slotRecord.ts';
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { Instant } from '../time/instant.ts';

export interface ClaimCounts {
  readonly all: number;
  /** Computed or condition checked, and it holds. */
  readonly hold: number;
  /** Something is said, and the number differs, the condition is false, or it cannot be computed. */
  readonly fail: number;
  /** A `?` stands there still, whether or not its formula has a value yet. */
  readonly unfilled: number;
  readonly stated: number;
}

export function claimCounts(note: Note): ClaimCounts {
  const count = { all: note.claims.length, hold: 0, fail: 0, unfilled: 0, stated: 0 };
  for (const claim of note.claims) {
    if (claim.mark === 'stated') count.stated += 1;
    else if (claim.state === 'holds') count.hold += 1;
    else if (claim.syntax.form === 'unfilled') count.unfilled += 1;
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
  /** Planned times that were read. */
  readonly read: number;
  readonly planned: number;
  /** Planned times that passed without a reading, rows that came late, and rows that came early. */
  readonly missed: number;
  readonly late: number;
  readonly early: number;
  /** The first planned time after the last reading; null when the plan is through. */
  readonly next: Instant | null;
}

/** How far the planned reading times are read in these tables; null without a schedule with times. */
export function slotCounts(protocol: Protocol, tables: readonly ReadingsTable[]): SlotCounts | null {
  const planned = protocol.schedule?.slots.length ?? 0;
  if (planned === 0) return null;
  const { read, missed, next, offTime } = slotRecord(tables, protocol);
  const late = [...offTime.values()].filter((each) => each.offset > 0).length;
  return { read, planned, missed: missed.length, late, early: offTime.size - late, next };
}
