// Why a point of the design check matters, in a language.
import { problemCodes, type ProblemCode } from '../problems/codes.ts';
import { designReasons } from './de/reasons.ts';
import type { Language } from './languages.ts';

/** One or two sentences without code marks; English where the language has none. */
export function reasonOf(code: ProblemCode, language: Language): string {
  const german = language === 'de' ? (designReasons as Readonly<Partial<Record<ProblemCode, string>>>)[code] : undefined;
  return (german ?? problemCodes[code].why).replace(/`/g, '');
}
