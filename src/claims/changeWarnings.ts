// Warnings beside a claim that holds: a change too small to resolve, compared changes over different readings,
// and a window crossed by an event in some of the tanks only.
import type { Problem } from '../problems/problem.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { Evaluation } from '../formula/types.ts';

export function changeWarnings(_syntax: ClaimSyntax, _evaluation: Evaluation, _context: FormulaContext): Problem[] { return []; }
export function comparisonWarnings(_syntax: ClaimSyntax, _evaluation: Evaluation, _context: FormulaContext): Problem[] { return []; }
