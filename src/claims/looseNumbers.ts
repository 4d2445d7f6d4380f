// Finds numbers in prose that a formula could give: each is a hint, so that the author may turn it into a claim.
import type { ProseRun } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { Problem } from '../problems/problem.ts';

export function findLooseNumbers(_prose: readonly ProseRun[], _context: FormulaContext): Problem[] {
  return [];
}
