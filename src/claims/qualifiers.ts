// Words before a number that change what it claims: `about`, `more than`, `under`.
import { approximateWords, claimWords } from '../words/claimWords.ts';
import { languageOf } from '../words/languages.ts';
import type { Qualifier, Spoken } from './mentions.ts';

const patterns = new Map<string, RegExp>();

function approximationPattern(tag: string): RegExp {
  let pattern = patterns.get(tag);
  if (!pattern) {
    pattern = new RegExp(`(?:(?<![\\p{L}\\p{N}])(?:${approximateWords(tag).join('|')})${claimWords(languageOf(tag)).between}|[~≈∼]\\s*)$`, 'iu');
    patterns.set(tag, pattern);
  }
  return pattern;
}

/** Reads the words that end where a number starts. `tag` is the note's language. */
export function qualifierBefore(words: string, start: number, tag: string): Qualifier & Spoken {
  const before = words.slice(Math.max(0, start - 40), start);
  const language = languageOf(tag);
  const bound = claimWords(language).bounds.find(([pattern]) => pattern.test(before))?.[1] ?? null;
  return { approximate: approximationPattern(tag).test(before), bound, language };
}
