// Which problems an author should see while typing: what is only half written on the line under the cursor is no fault yet.
import type { Problem, Severity, SourceRange } from '../problems/problem.ts';

/** A line with a cursor in it, its number from 0. */
export interface CursorLine { readonly line: number; readonly range: SourceRange }

/** A problem as it was last shown. */
export interface ShownProblem { readonly code: string; readonly line: number }

export interface CalmProblems {
  readonly shown: readonly Problem[];
  /** How many wait, and how many of them are errors. */
  readonly waiting: number;
  readonly waitingErrors: number;
  /** Milliseconds until the next of them may be shown; null when none waits. */
  readonly next: number | null;
}

/** Milliseconds without a key after which a problem on the cursor's own line is shown. */
export const patience: Readonly<Record<Severity, number>> = { error: 1500, warning: 4000, information: 4000, hint: 4000 };

/**
 * Problems elsewhere are shown at once, and so is one that stood on the line before the author came to type there.
 * A new one on a line with a cursor waits until the cursor leaves the line or the keys have rested.
 * @param before what was shown last
 * @param quiet milliseconds since the last key; Infinity where nobody types
 */
export function calmProblems(problems: readonly Problem[], before: readonly ShownProblem[], cursors: readonly CursorLine[], quiet: number): CalmProblems {
  const waiting = problems.filter((problem) => {
    const cursor = quiet < patience[problem.severity] ? cursors.find((each) => touches(problem.range, each.range)) : undefined;
    if (!cursor) return false;
    // Of a problem that begins further up, the line under the cursor says nothing: the same code is enough.
    return !before.some((each) => each.code === problem.code && (each.line === cursor.line || problem.range.start < cursor.range.start));
  });
  const held = new Set(waiting);
  return {
    shown: waiting.length === 0 ? problems : problems.filter((problem) => !held.has(problem)),
    waiting: waiting.length,
    waitingErrors: waiting.filter((problem) => problem.severity === 'error').length,
    next: waiting.length === 0 ? null : Math.min(...waiting.map((problem) => patience[problem.severity] - quiet)),
  };
}

/** A range that ends at the start of the next line is not in it. */
const touches = (range: SourceRange, line: SourceRange): boolean => (
  range.start <= line.end && (range.end > line.start || range.start >= line.start));
