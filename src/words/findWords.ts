// The word forms that the search for formulas reads, in a language.
import { findWords as german } from './de/findWords.ts';
import { findWords as english } from './en/findWords.ts';
import type { Language } from './languages.ts';

export type { Cue, StatementCue } from './en/findWords.ts';
export type FindWords = typeof english;

const tables: Readonly<Record<Language, FindWords>> = { en: english, de: german };

export const findWords = (language: Language): FindWords => tables[language];
