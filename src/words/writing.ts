// The words of the generated prose in the language of a note.
import { languageOf, type Language } from './languages.ts';
import { englishWriting } from './en/writing.ts';

/** Every table of the generated prose. A language has all of them, or it does not compile. */
export type WritingWords = typeof englishWriting;

const tables: Readonly<Record<Language, WritingWords>> = { en: englishWriting, de: englishWriting };

/** The tables for a note's `language:`, a tag such as `de-AT`; English where we have no words of that language. */
export function writingWords(language: string | null | undefined): WritingWords {
  return tables[languageOf(language)];
}
