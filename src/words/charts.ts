// The words of charts in a language.
import { chartWords as german } from './de/charts.ts';
import { chartWords as english, type ChartWords } from './en/charts.ts';
import type { Language } from './languages.ts';

export type { ChartWords, CourseFacts, PlaceFacts } from './en/charts.ts';

const tables: Readonly<Record<Language, ChartWords>> = { en: english, de: german };

export function chartWords(language: Language): ChartWords {
  return tables[language];
}
