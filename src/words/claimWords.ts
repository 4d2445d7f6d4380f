// The words that claims are read by, in a language, and what other languages say for `about`.
import { claimWords as german } from './de/claimWords.ts';
import { claimWords as english, type ClaimWords } from './en/claimWords.ts';
import { languageOf, type Language } from './languages.ts';

export type { Bound, ClaimWords } from './en/claimWords.ts';

const tables: Readonly<Record<Language, ClaimWords>> = { en: english, de: german };

export const claimWords = (language: Language): ClaimWords => tables[language];

/** Languages without words of their own are read by the English ones and by these. */
const others: Readonly<Record<string, readonly string[]>> = {
  nl: ['ongeveer', 'rond', 'bijna', 'circa', 'ca\\.?'],
  fr: ['environ', 'près de', 'presque', 'autour de'],
  es: ['casi', 'aproximadamente', 'alrededor de', 'unos', 'cerca de'],
  it: ['circa', 'quasi'],
  pt: ['cerca de', 'quase', 'aproximadamente'],
};

/** Patterns of words for `about` before a number, for a note's language tag. `some` is one in English alone. */
export function approximateWords(tag: string): readonly string[] {
  const language = languageOf(tag);
  if (language !== 'en') return tables[language].approximate;
  return [...english.approximate.slice(0, 10), ...(others[tag.slice(0, 2).toLowerCase()] ?? english.approximate.slice(10))];
}
