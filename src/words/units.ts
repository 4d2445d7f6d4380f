// Units in words, in a language: printed ones that have a word in them, and how prose writes them.
import { unitGrammar as germanGrammar, unitWords as germanWords } from './de/unitWords.ts';
import { unitGrammar as englishGrammar, type UnitGrammar } from './en/unitWords.ts';
import type { Language } from './languages.ts';

/** Printed units, or parts of one, that hold an English word; the last puts an amount of one into the singular. */
const germanPrints: readonly (readonly [RegExp, string])[] = [
  [/ as (?=N\b|P\b|CaCO₃)/gu, ' als '], [/\binch(?:es)?\b/gu, 'Zoll'], [/\bpH units?\b/gu, 'pH-Einheiten'], [/(?<!\p{L})pp(?!\p{L})/gu, 'Prozentpunkte'],
  [/(?<![\d,.])1 (Prozentpunkt|pH-Einheit)en?(?!\p{L})/gu, '1 $1'],
];

/** `mg/L as N` as `mg/L als N`, `inches` as `Zoll`; everything else stays. The text may be an amount with its unit. */
export function unitWords(text: string, language: Language): string {
  return language === 'de' ? germanPrints.reduce((now, [printed, words]) => now.replace(printed, words), text) : text;
}

/** How prose puts units together. */
export const unitGrammar = (language: Language): UnitGrammar => (language === 'de' ? germanGrammar : englishGrammar);

/** The words of a unit beside its symbol, by symbol; null for English, whose words stand with the units. */
export const unitWordForms = (language: Language): Readonly<Record<string, readonly string[]>> | null => (language === 'de' ? germanWords : null);

/** As an author writes them into a claim. */
export const percentagePoints: Readonly<Record<Language, string>> = { en: 'percentage points', de: 'Prozentpunkte' };
