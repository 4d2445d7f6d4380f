// Why a problem matters, in a language.
import { problemCodes, type ProblemCode } from '../problems/codes.ts';
import { designReasons } from './de/reasons.ts';
import { warningReasons } from './de/warningReasons.ts';
import type { Language } from './languages.ts';

const german: Readonly<Partial<Record<ProblemCode, string>>> = { ...warningReasons, ...designReasons };

/** One or two sentences in Markdown; English for errors, whose reasons stand in the reference. */
export const reasonMarkdown = (code: ProblemCode, language: Language): string => (language === 'de' ? german[code] : undefined) ?? problemCodes[code].why;

/** The same without code marks. */
export const reasonOf = (code: ProblemCode, language: Language): string => reasonMarkdown(code, language).replace(/`/g, '');
