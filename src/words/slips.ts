// What a slip of the search for formulas is called, by language.
import { slipWords as german } from './de/slips.ts';
import { slipWords as english, type SlipCode } from './en/slips.ts';
import type { Language } from './languages.ts';

const tables = { en: english, de: german } as const;

export const slipSentence = (slip: SlipCode, language: Language = 'en'): string => tables[language][slip];
