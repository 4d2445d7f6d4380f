// Before the first reading a plan can hold formulas, figures and unfilled claims already. What fails only because nothing
// has been read yet is no fault of the plan: it is gathered into one piece of information.
import type { ProblemCode } from '../problems/codes.ts';
import { problem, type Problem, type SourceRange } from '../problems/problem.ts';
import type { CheckedClaim } from '../claims/types.ts';
import { flag, type Dataset } from '../dataset/types.ts';

const waiting: ReadonlySet<ProblemCode> = new Set<ProblemCode>([
  'no-readings', 'empty-window', 'too-few-readings', 'no-reading-at-time', 'outside-readings', 'no-neighbours', 'no-stretch', 'no-joint-rows',
  'level-not-reached', 'never-settled', 'never-turns', 'result-failed', 'figure-empty', 'summary-empty', 'summary-cell-empty', 'claim-unfilled',
]);

/** True when no series of the note holds a value yet. */
export function nothingRead(dataset: Dataset): boolean {
  return [...dataset.series.values()].every((series) => series.flags.every((bits) => (bits & flag.missing) !== 0));
}

/**
 * Problems without those that wait for readings, and one `nothing-read-yet` at `place` where there were any.
 * Claims that state a number or words keep theirs: they say something that nothing supports.
 */
export function leaveWaiting(problems: readonly Problem[], claims: readonly CheckedClaim[], place: SourceRange): Problem[] {
  const stated = new Set(claims.filter((claim) => claim.syntax.form !== 'unfilled').flatMap((claim) => claim.problems));
  const kept = problems.filter((each) => !waiting.has(each.code) || stated.has(each));
  const count = problems.length - kept.length;
  return count === 0 ? kept : [...kept, problem('nothing-read-yet', place, { count })];
}
