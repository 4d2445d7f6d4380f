// The way into the words: a problem or a fix in, a sentence in the reader's language out.
import type { Fix, Problem } from '../problems/problem.ts';
import { fixTitles } from './en/fixes.ts';
import { problemSentences } from './en/problems.ts';
import type { Language } from './languages.ts';

export type { Language };

/** One sentence that says what is wrong. */
export function problemSentence(problem: Pick<Problem, 'code' | 'args'>, _language: Language = 'en'): string {
  return problemSentences[problem.code](problem.args);
}

/** The title of a fix, as an editor shows it. */
export function fixTitle(fix: Pick<Fix, 'title' | 'args'>, _language: Language = 'en'): string {
  return fixTitles[fix.title]?.(fix.args) ?? fix.title;
}
