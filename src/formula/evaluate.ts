// The way in: a formula's text and a context in, its value with problems and working out.
import type { MappedText } from '../note/mappedText.ts';
import type { Instant } from '../time/instant.ts';
import type { Window } from '../protocol/types.ts';
import type { Evaluation } from './types.ts';
import type { FormulaContext } from './context.ts';

export function evaluate(_formula: MappedText, _context: FormulaContext): Evaluation {
  return { value: null, problems: [], working: [] };
}

/** The evaluation of a named result; null when there is no result of that name. */
export function evaluateResult(_name: string, _context: FormulaContext): Evaluation | null {
  return null;
}

export interface ReadingTruth {
  readonly instant: Instant;
  readonly truth: boolean;
}

/** A condition's truth at every instant at which all its series have a reading, with what stood in the way. */
export interface ReadingTruths { readonly truths: readonly ReadingTruth[]; readonly problems: Evaluation['problems'] }

export function evaluateAtEachReading(
  _formula: MappedText, _context: FormulaContext, _window: Window | null, _options: { includeLeftOut?: boolean } = {},
): ReadingTruths {
  return { truths: [], problems: [] };
}
