// Turns the word forms of the tables into patterns: whole words, `*` for the rest of a word.

import type { FormulaContext } from '../../formula/context.ts';
import { findWords, type FindWords } from '../../words/findWords.ts';
import { languageOf } from '../../words/languages.ts';

/** The words of the note's language. */
export const wordsIn = (context: FormulaContext): FindWords => findWords(languageOf(context.protocol?.language));

/** One pattern for all forms, in lower-case text. */
export function formPattern(forms: readonly string[]): RegExp {
  const sorted = [...forms].sort((a, b) => b.length - a.length);
  const alternatives = sorted.map((form) => form.replace(/[.+?^${}()|[\]\\]/g, '\\$&').replace(/\*/g, '[\\p{L}]*').replace(/[\s-]+/g, '[\\s-]+'));
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${alternatives.join('|')})(?![\\p{L}\\p{N}])`, 'gu');
}

/** True when a word of the text and a word of the plan are forms of one word: `lid` and `lidded`, `litter` and `littered`. */
export function related(word: string, planned: string, { endings }: Pick<FindWords, 'endings'>): boolean {
  if (word === planned) return true;
  const shorter = Math.min(word.length, planned.length);
  if (shorter < 3) return false;
  if (shorter < 4 && Math.abs(word.length - planned.length) > 3) return false;
  const stem = (text: string): string => text.replace(endings, '');
  const [a, b] = [stem(word), stem(planned)];
  if (a.length < 3 || b.length < 3) return false;
  return a === b || (a.startsWith(b) && a.length - b.length <= 2) || (b.startsWith(a) && b.length - a.length <= 2);
}

export interface Word { readonly text: string; readonly start: number; readonly end: number }

export function wordsOf(text: string): Word[] {
  return [...text.matchAll(/[\p{L}\p{N}]+/gu)].map((each) => ({ text: each[0], start: each.index, end: each.index + each[0].length }));
}
