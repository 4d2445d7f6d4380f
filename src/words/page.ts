// The words of the preview and of the page in a language.
import { cautionWords as germanCautions } from './de/cautions.ts';
import { pageWords as germanPage } from './de/page.ts';
import { planWords as germanPlan } from './de/planCard.ts';
import { cautionWords as englishCautions, type CautionWords } from './en/cautions.ts';
import { pageWords as englishPage, type PageWords } from './en/page.ts';
import { planWords as englishPlan, type PlanCardWords } from './en/planCard.ts';
import type { Language } from './languages.ts';

export type { CautionWords, PageWords, PlanCardWords };

const pages: Readonly<Record<Language, PageWords>> = { en: englishPage, de: germanPage };
const plans: Readonly<Record<Language, PlanCardWords>> = { en: englishPlan, de: germanPlan };
const cautions: Readonly<Record<Language, CautionWords>> = { en: englishCautions, de: germanCautions };

export const pageWords = (language: Language): PageWords => pages[language];
export const planWords = (language: Language): PlanCardWords => plans[language];
export const cautionWords = (language: Language): CautionWords => cautions[language];

/** True where a plan's text, in lower case, mentions a thing of this kind, in its own language or in English. */
export function mentions(kind: keyof CautionWords['finds'], text: string, language: Language): boolean {
  return englishCautions.finds[kind].test(text) || cautions[language].finds[kind].test(text);
}
