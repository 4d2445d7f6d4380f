// The words of a new note, by the language in which it is written, and the instructions in it: src/edits writes them, and
// src/experiment finds those that were left standing, in whichever language.
import { newNoteWords as german } from './de/newNote.ts';
import { newNoteWords as english, type NewNoteWords } from './en/newNote.ts';
import { languages, type Language } from './languages.ts';

const tables: Readonly<Record<Language, NewNoteWords>> = { en: english, de: german };

export const newNoteWords = (language: Language): NewNoteWords => tables[language];

/** Everything that the author of a new note is meant to write over. */
export const instructionsToAuthor: readonly string[] = languages.flatMap((each) => tables[each].instructions);
