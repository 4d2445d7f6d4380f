// The words of summary tables in a language.
import { summaryWords as german } from './de/summary.ts';
import { summaryWords as english, type SummaryWords } from './en/summary.ts';
import type { Language } from './languages.ts';

export type { StretchFacts, SummaryWords } from './en/summary.ts';

const tables: Readonly<Record<Language, SummaryWords>> = { en: english, de: german };

export const summaryWords = (language: Language): SummaryWords => tables[language];
