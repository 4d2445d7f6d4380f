// Claims that stand on the same ground and say the same need no second computing: they only move with the text around them.
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { CheckedClaim } from '../claims/types.ts';
import type { WorkingStep } from '../formula/types.ts';

/** Where offsets of an earlier text stand after one change: before it they stay, behind it they move, inside it they are lost. */
export interface TextChange { readonly start: number; readonly oldEnd: number; readonly by: number }

/** The one stretch in which two texts differ. */
export function changeBetween(before: string, after: string): TextChange {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before.charCodeAt(start) === after.charCodeAt(start)) start += 1;
  let tail = 0;
  while (tail < shorter - start && before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)) tail += 1;
  return { start, oldEnd: before.length - tail, by: after.length - before.length };
}

/** The range after the change, or null when the change touches it. */
export function moved(range: SourceRange, change: TextChange): SourceRange | null {
  if (range.end <= change.start) return range;
  if (range.start >= change.oldEnd) return { start: range.start + change.by, end: range.end + change.by };
  return null;
}

/** Earlier claims by the place at which they would now stand. */
export function claimsByPlace(claims: readonly CheckedClaim[], change: TextChange): ReadonlyMap<number, CheckedClaim> {
  const places = new Map<number, CheckedClaim>();
  for (const claim of claims) {
    const range = moved(claim.syntax.range, change);
    if (range) places.set(range.start, claim);
  }
  return places;
}

/** The earlier claim at its new place, or null when it says something else or one of its places is lost. */
export function moveClaim(claim: CheckedClaim, syntax: ClaimSyntax, change: TextChange): CheckedClaim | null {
  const earlier = claim.syntax;
  if (earlier.form !== syntax.form || earlier.words.text !== syntax.words.text || earlier.formula.text !== syntax.formula.text
    || earlier.source !== syntax.source || earlier.range.end - earlier.range.start !== syntax.range.end - syntax.range.start) return null;
  if (change.by === 0 || earlier.range.end <= change.start && allBefore(claim, change.start)) return { ...claim, syntax };
  const problems = moveProblems(claim.problems, change);
  if (!problems) return null;
  if (!claim.evaluation) return { ...claim, syntax, problems };
  const evaluationProblems = moveProblems(claim.evaluation.problems, change);
  const working: WorkingStep[] = [];
  for (const step of claim.evaluation.working) {
    const readings = step.readings.map((range) => moved(range, change));
    if (readings.includes(null)) return null;
    working.push({ ...step, readings: readings as SourceRange[] });
  }
  return evaluationProblems ? { ...claim, syntax, problems, evaluation: { ...claim.evaluation, problems: evaluationProblems, working } } : null;
}

function allBefore(claim: CheckedClaim, start: number): boolean {
  const before = (each: Problem): boolean => each.range.end <= start && each.fixes.every((fix) => fix.edits.every((edit) => edit.range.end <= start))
    && each.related.every((place) => place.range.end <= start);
  return claim.problems.every(before) && (claim.evaluation?.problems.every(before) ?? true)
    && (claim.evaluation?.working.every((step) => step.readings.every((range) => range.end <= start)) ?? true);
}

/** Problems at their new places; null when one of them is lost. */
export function moveProblems(problems: readonly Problem[], change: TextChange): Problem[] | null {
  const result: Problem[] = [];
  for (const each of problems) {
    const range = moved(each.range, change);
    if (!range) return null;
    const fixes = [];
    for (const fix of each.fixes) {
      const edits = [];
      for (const edit of fix.edits) {
        const place = moved(edit.range, change);
        if (!place) return null;
        edits.push({ ...edit, range: place });
      }
      fixes.push({ ...fix, edits });
    }
    const related = [];
    for (const each2 of each.related) {
      const place = moved(each2.range, change);
      if (!place) return null;
      related.push({ ...each2, range: place });
    }
    result.push({ ...each, range, fixes, related });
  }
  return result;
}
