// "Fix all": the mends that cannot change what a number or a sentence says; and the mends that a seal forbids.
import { applyEdits } from '../edits/edit.ts';
import { noFiles, readNote } from '../experiment/readNote.ts';
import type { Note } from '../experiment/types.ts';
import type { Problem, TextEdit } from '../problems/problem.ts';

export interface SafeEdits { readonly edits: readonly TextEdit[]; /** Problems that are mended. */ readonly count: number }

/** One safe mend a problem, the preferred one first; of mends that touch each other only the first is taken, of those that break a seal none. */
export function safeEdits(note: Note, problems: readonly Problem[] = note.problems): SafeEdits {
  const taken: TextEdit[] = [];
  let count = 0;
  for (const problem of problems) {
    const safe = problem.fixes.filter((fix) => fix.safe);
    const chosen = safe.find((fix) => fix.preferred) ?? (safe.length === 1 ? safe[0] : undefined);
    if (!chosen || chosen.edits.some((edit) => taken.some((other) => touches(edit, other))) || breaksSeal(note, chosen.edits)) continue;
    taken.push(...chosen.edits);
    count += 1;
  }
  return { edits: taken, count };
}

const touches = (a: TextEdit, b: TextEdit): boolean => a.range.start <= b.range.end && b.range.start <= a.range.end;

/** True where an edit would change what a seal of the note fixes. A correction written as `old->new` does not. */
export function breaksSeal(note: Note, edits: readonly TextEdit[]): boolean {
  const sealed = note.tables.filter((table) => table.sealed).map((table) => note.syntax.blocks[table.block]!.range);
  if (!edits.some(({ range }) => sealed.some((block) => range.start <= block.end && block.start <= range.end))) return false;
  return brokenSeals(readNote(applyEdits(note.text, edits), noFiles)) > brokenSeals(note);
}

const brokenSeals = (note: Note): number => note.problems.filter((problem) => problem.code === 'seal-broken' || problem.code === 'seal-unreadable').length;
