// What the tests of German words share: is a sentence German, and does it say of its arguments what the English one says?
import { notEqual, ok } from 'node:assert/strict';
import type { MessageArguments } from '../../../src/problems/problem.ts';

/** Words that English sentences cannot do without. What stands in quotes, code or brackets is the note's own. */
const english = /(?<![\p{L}-])(?:the|and|of|is|are|with|there|this|write|read|readings?|tanks?|which|have|has|cannot|should|would|from|first|last|not yet)(?![\p{L}-])/iu;
const ownWords = /„[^“]*“|`[^`]*`|"[^"]*"|⟦[^⟧]*⟧/gu;

export function isGerman(sentence: string, englishSentence: string | null): void {
  ok(sentence.trim() !== '');
  if (englishSentence !== null) notEqual(sentence, englishSentence, sentence);
  const bare = sentence.replace(ownWords, '');
  ok(!english.test(bare), `English in “${sentence}”: ${english.exec(bare)?.[0]}`);
  ok(!/\b(?:Sie|Ihr|Ihre[mnrs]?|Ihnen|du|dein|dir)\b/u.test(bare.replace(/(?:^|[.:;] )(?:Sie|Ihre?) /gu, '')), `addresses somebody: ${sentence}`);
  ok(!/“[^“„”]*”/u.test(sentence), `English quotation marks: ${sentence}`);
  ok(!/undefined|NaN|Infinity|\[object| {2}/u.test(sentence), sentence);
}

/** Arguments that show in a sentence where they went. */
export const marked = (names: readonly string[]): MessageArguments => Object.fromEntries(names.map((name) => [name, [`⟦${name}⟧`]]));
export const shownIn = (sentence: string): string[] => [...new Set(sentence.match(/⟦[^⟧]*⟧/gu) ?? [])].sort();

/** The names of the arguments that a table of sentences asks for, seen through arguments that note what is asked. */
export function asked(sentence: (args: MessageArguments) => string): MessageArguments {
  const names = new Set<string>();
  sentence(new Proxy({}, { get: (_, name) => { names.add(String(name)); return undefined; } }) as MessageArguments);
  return marked([...names]);
}
