// The words of the generated prose in the language of a note.
import { germanWriting } from './de/writing.ts';
import { languageOf, type Language } from './languages.ts';
import { englishWriting, type WritingWords } from './en/writing.ts';

export type { WritingWords } from './en/writing.ts';

const tables: Readonly<Record<Language, WritingWords>> = { en: englishWriting, de: germanWriting };

/** The tables for a note's `language:`, a tag such as `de-AT`; English where we have no words of that language. */
export function writingWords(language: string | null | undefined): WritingWords {
  return tables[languageOf(language)];
}
