// The way into the words: a problem or a fix in, a sentence in the reader's language out.
import type { Fix, Problem } from '../problems/problem.ts';
import { fixTitles as germanTitles } from './de/fixes.ts';
import { problemSentences as germanSentences } from './de/problems.ts';
import { fixTitles as englishTitles, type FixTitle } from './en/fixes.ts';
import { problemSentences as englishSentences } from './en/problems.ts';
import type { Language } from './languages.ts';

export type { Language };

const sentences = { en: englishSentences, de: germanSentences } as const;
const titles = { en: englishTitles, de: germanTitles } as const;

/** One sentence that says what is wrong. */
export function problemSentence(problem: Pick<Problem, 'code' | 'args'>, language: Language = 'en'): string {
  return sentences[language][problem.code](problem.args);
}

/** The title of a fix, as an editor shows it. */
export function fixTitle(fix: Pick<Fix, 'title' | 'args'>, language: Language = 'en'): string {
  return Object.hasOwn(titles[language], fix.title) ? titles[language][fix.title as FixTitle](fix.args) : fix.title;
}
