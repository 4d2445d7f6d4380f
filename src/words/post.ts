// The words of a published page and of its recheck in a language.
import { postWords as german } from './de/post.ts';
import { postWords as english, type PostWords } from './en/post.ts';
import type { Language } from './languages.ts';

export type { PostWords };

const tables: Readonly<Record<Language, PostWords>> = { en: english, de: german };

export const postWords = (language: Language): PostWords => tables[language];
