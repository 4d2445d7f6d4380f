// Remarks in the working of a formula: their shape, so that words need not know formulas, and their sentences in a language.
import { remarkSentences as german } from './de/remarks.ts';
import { remarkSentences as english, type RemarkCode } from './en/remarks.ts';
import type { Language } from './languages.ts';

export interface WorkingRemark { readonly code: string; readonly args: Readonly<Record<string, string | number>> }

const tables: Readonly<Record<Language, Readonly<Record<RemarkCode, (args: WorkingRemark['args']) => string>>>> = { en: english, de: german };

/** One sentence for a remark; an unknown code gives its code. */
export function remarkSentence(remark: WorkingRemark, language: Language = 'en'): string {
  return Object.hasOwn(tables[language], remark.code) ? tables[language][remark.code as RemarkCode](remark.args) : remark.code;
}

export const remarkCodes: readonly string[] = Object.keys(english);
