// How numbers, times and units are said aloud, in a language.
import { speech as german } from './de/speech.ts';
import { speech as english, type Speech } from './en/speech.ts';
import type { Language } from './languages.ts';

const tables: Readonly<Record<Language, Speech>> = { en: english, de: german };

export const speechIn = (language: Language): Speech => tables[language];
