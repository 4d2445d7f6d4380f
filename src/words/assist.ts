// The words of the editor's own help, by language.
import * as english from './en/assist.ts';
import * as german from './de/assist.ts';
import type { Language } from './languages.ts';

type Words<T> = T extends string ? string : T extends (...args: never[]) => string ? T : { readonly [Key in keyof T]: Words<T[Key]> };
export type AssistWords = Words<typeof english>;
export type { NameKind, RenameRefusal } from './en/assist.ts';

const tables: Readonly<Record<Language, AssistWords>> = { en: english, de: german };

export const assistWords = (language: Language): AssistWords => tables[language];
