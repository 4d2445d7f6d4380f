// Words before a number that change what it claims: `about`, `more than`, `under`.
import type { Qualifier } from './mentions.ts';

const english = ['about', 'around', 'nearly', 'almost', 'roughly', 'approximately', 'approx\\.?', 'circa', 'ca\\.?', 'close to', 'some'];
const others: Readonly<Record<string, readonly string[]>> = {
  de: ['etwa', 'ungefähr', 'rund', 'fast', 'knapp', 'beinahe', 'circa', 'ca\\.?'],
  nl: ['ongeveer', 'rond', 'bijna', 'circa', 'ca\\.?'],
  fr: ['environ', 'près de', 'presque', 'autour de'],
  es: ['casi', 'aproximadamente', 'alrededor de', 'unos', 'cerca de'],
  it: ['circa', 'quasi'],
  pt: ['cerca de', 'quase', 'aproximadamente'],
};

function approximationPattern(language: string): RegExp {
  const words = [...english.slice(0, 10), ...(others[language.slice(0, 2).toLowerCase()] ?? ['some'])];
  return new RegExp(`(?:(?<![\\p{L}\\p{N}])(?:${words.join('|')})(?:\\s+(?:at|by))?(?:\\s+(?:an?|the))?\\s+|[~≈∼]\\s*)$`, 'iu');
}

const bounds: readonly (readonly [RegExp, NonNullable<Qualifier['bound']>])[] = [
  [/(?:(?<![\p{L}\p{N}])(?:at least|no less than|not less than|no fewer than)\s+|≥\s*)$/iu, 'at-least'],
  [/(?:(?<![\p{L}\p{N}])(?:at most|no more than|not more than)\s+|≤\s*)$/iu, 'at-most'],
  [/(?:(?<![\p{L}\p{N}])(?:more than|greater than|higher than|above|exceeding|just over|well over)\s+|>\s*)$/iu, 'above'],
  [/(?:(?<![\p{L}\p{N}])(?:less than|fewer than|lower than|smaller than|under|below|just under|well under)\s+|<\s*)$/iu, 'below'],
];

/** Reads the words that end where a number starts. */
export function qualifierBefore(words: string, start: number, language: string): Qualifier {
  const before = words.slice(Math.max(0, start - 40), start);
  const bound = bounds.find(([pattern]) => pattern.test(before))?.[1] ?? null;
  return { approximate: approximationPattern(language).test(before), bound };
}
