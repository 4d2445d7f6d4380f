// The words of the open data in a language.
import { openDataWords as german } from './de/openData.ts';
import { openDataWords as english, type OpenDataWords } from './en/openData.ts';
import type { Language } from './languages.ts';

export type { OpenDataWords };

const tables: Readonly<Record<Language, OpenDataWords>> = { en: english, de: german };

export const openDataWords = (language: Language): OpenDataWords => tables[language];
