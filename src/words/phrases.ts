// Phrases that stand inside a problem's sentence: kinds of values, reasons, ranges. An argument carries the phrase's code with what
// belongs into it, never its words, so that each language can speak it.
import type { MessageArguments } from '../problems/problem.ts';
import type { PhraseCode } from './en/phrases.ts';
import { text } from './sentences.ts';

export type { PhraseCode };

/** An argument that names a phrase: its code, then the texts that stand in it. */
export type Phrase = readonly [PhraseCode, ...string[]];
export type Phrases = Readonly<Record<PhraseCode, (first: string, second: string) => string>>;

/** The argument as words: a phrase from the table, any other text as it stands. */
export function phraseIn(phrases: Phrases, args: MessageArguments, name: string): string {
  const value = args[name];
  if (typeof value !== 'object') return text(args, name);
  const [code = '', first = '', second = ''] = value;
  return Object.hasOwn(phrases, code) ? phrases[code as PhraseCode](first, second) : value.join(', ');
}
