// Writes computed values in the place of `?` in unfilled claims.
import type { TextEdit } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { CheckedClaim } from './types.ts';

/** Edits that replace every `?` whose formula gives a value. A claim that cannot be computed keeps its `?`. */
export function fillInEdits(note: { readonly claims: readonly CheckedClaim[] }): TextEdit[] {
  return note.claims.flatMap((claim) => claim.state === 'unfilled' && claim.computed !== null
    ? [{ range: toDocumentRange(claim.syntax.words, { start: 0, end: claim.syntax.words.text.length }), newText: claim.computed }]
    : []);
}
