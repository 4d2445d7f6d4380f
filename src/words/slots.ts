// The words for planned times in a language.
import { slotWords as german } from './de/slots.ts';
import { slotWords as english, type SlotWords } from './en/slots.ts';
import type { Language } from './languages.ts';

export type { SlotWords };

const tables: Readonly<Record<Language, SlotWords>> = { en: english, de: german };

export const slotWords = (language: Language): SlotWords => tables[language];
