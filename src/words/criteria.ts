// Whom a published criterion protects, in a language. The English stands with the criteria in src/protocol/criteria.ts.
import type { Language } from './languages.ts';

const german: Readonly<Record<string, string>> = {
  'early life stages of warm-water fish': 'frühe Lebensstadien von Warmwasserfischen',
  'warm-water fish past their early life stages': 'Warmwasserfische nach den frühen Lebensstadien',
  'early life stages of cold-water fish in the water column': 'frühe Lebensstadien von Kaltwasserfischen im freien Wasser',
  'cold-water fish past their early life stages': 'Kaltwasserfische nach den frühen Lebensstadien',
  'early life stages of warm-water animals': 'frühe Lebensstadien von Warmwassertieren',
  'warm-water animals past their early life stages': 'Warmwassertiere nach den frühen Lebensstadien',
  'early life stages of cold-water animals': 'frühe Lebensstadien von Kaltwassertieren',
  'cold-water animals past their early life stages': 'Kaltwassertiere nach den frühen Lebensstadien',
  'most stages and activities in the life cycle of fish': 'die meisten Stadien und Tätigkeiten im Leben von Fischen',
};

/** What a limit is for: a criterion's words in the language, the author's own as they stand. */
export function protectedBy(words: string, language: Language): string {
  return language === 'de' && Object.hasOwn(german, words) ? german[words]! : words;
}
