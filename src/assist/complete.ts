// Completion: finds out where the cursor stands and asks the part that knows the place.
import type { Note } from '../experiment/types.ts';
import type { Language } from '../words/languages.ts';
import { askedIn } from './asking.ts';
import { completeDrawn } from './completeDrawn.ts';
import { completeClaim, completeFence } from './completeBlocks.ts';
import { completeFormula } from './completeFormula.ts';
import { completePlan } from './completePlan.ts';
import { completeReadings } from './completeReadings.ts';
import { claimAt, formulaAt } from './formulaPlace.ts';
import { placeAt } from './place.ts';
import type { Suggestion } from './types.ts';

/**
 * What could be written at an offset of the note's text, described in a language. The note's plan, readings and results may be of an earlier text
 * (their names are what counts); the cursor is looked up in the text itself. Never throws.
 */
export function complete(read: Note, offset: number, language: Language = 'en'): Suggestion[] {
  const note = askedIn(language, read);
  const { text } = note;
  const place = placeAt(text, offset);
  if (place.kind === 'fence') return completeFence(note, place, offset);
  if (place.kind === 'code') return [];
  if (place.kind === 'prose') {
    const claim = claimAt(text, offset);
    if (!claim || !note.protocol) return [];
    if (!claim.formula) return completeClaim(note, claim, offset);
    return claim.stated ? [] : completeFormula(note, claim.formula, offset);
  }
  switch (place.word) {
    case 'protocol': return completePlan(note, place);
    case 'readings': return completeReadings(note, place);
    case 'values': {
      const formula = formulaAt(text, offset, place);
      return formula ? completeFormula(note, formula, offset) : [];
    }
    default: return completeDrawn(note, place);
  }
}
