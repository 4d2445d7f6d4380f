// Units in words, in a language: printed ones that have a word in them, and how prose writes them.
import { unitGrammar as germanGrammar, unitWords as germanWords } from './de/unitWords.ts';
import { unitGrammar as englishGrammar, type UnitGrammar } from './en/unitWords.ts';
import type { Language } from './languages.ts';

/** `mg/L as N` as `mg/L als N`, `inches` as `Zoll`; everything else stays. The text may be an amount with its unit. */
export function unitWords(text: string, language: Language): string {
  return language === 'de' ? text.replace(/ as (?=N\b|P\b|CaCO₃)/gu, ' als ').replace(/\binch(?:es)?\b/gu, 'Zoll').replace(/\bpH units?\b/gu, 'pH-Einheiten') : text;
}

/** How prose puts units together. */
export const unitGrammar = (language: Language): UnitGrammar => (language === 'de' ? germanGrammar : englishGrammar);

/** The words of a unit beside its symbol, by symbol; null for English, whose words stand with the units. */
export const unitWordForms = (language: Language): Readonly<Record<string, readonly string[]>> | null => (language === 'de' ? germanWords : null);
