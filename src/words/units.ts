// Printed units that have a word in them, in a language.
import type { Language } from './languages.ts';

/** `mg/L as N` as `mg/L als N`, `inches` as `Zoll`; everything else stays. The text may be an amount with its unit. */
export function unitWords(text: string, language: Language): string {
  return language === 'de' ? text.replace(/ as (?=N\b|P\b|CaCO₃)/gu, ' als ').replace(/\binch(?:es)?\b/gu, 'Zoll').replace(/\bpH units?\b/gu, 'pH-Einheiten') : text;
}
