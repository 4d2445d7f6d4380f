// How formulas are said in plain words, in a language.
import { plainWords as german } from './de/plainWords.ts';
import { plainWords as english, type PlainWords } from './en/plainWords.ts';
import type { Language } from './languages.ts';

export type { CallFacts, Phrase, PlainWords, PlaceOf, QuantityFacts } from './en/plainWords.ts';

const tables: Readonly<Record<Language, PlainWords>> = { en: english, de: german };

export const plainWordsIn = (language: Language): PlainWords => tables[language];
