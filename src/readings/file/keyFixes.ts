// Mends for the keys of a readings block that points to a file: lines added at its end, words out of a list.
import type { Block } from '../../note/syntax.ts';
import { nearestName } from '../../problems/nearest.ts';
import { replaceFix, type LocalFix, type Reporter } from '../reporter.ts';
import type { FileKeys, LocalText } from './fileKeys.ts';

/** A key's word out of a list; a wrong word is a problem and counts as not given. */
export function choice<Word extends string>(keys: FileKeys, key: 'encoding' | 'date order' | 'decimal', words: readonly Word[], reporter: Reporter): Word | null {
  const typed = keys.texts.get(key);
  if (!typed) return null;
  const word = words.find((each) => each === typed.text.toLowerCase());
  if (word === undefined) badChoice(key, typed, words, reporter);
  return word ?? null;
}

export function badChoice(key: string, typed: LocalText, words: readonly string[], reporter: Reporter): void {
  const near = nearestName(typed.text, words);
  reporter.add({ code: 'data-file-key-value', range: typed.range, args: { key, text: typed.text, known: words }, fixes: near === null ? [] : [replaceFix(typed.range, near)] });
}

/** A fix that adds lines at the end of the block, with the prefix of the quote or list that the block stands in. */
export function addLines(block: Block, lines: readonly string[], title: string, options: { preferred?: boolean; safe?: boolean } = {}): LocalFix[] {
  const { text } = block.content;
  const end = text.endsWith('\n') ? text.length - 1 : text.length;
  const newText = lines.map((line) => `${block.lineBreak ?? '\n'}${block.linePrefix ?? ''}${line}`).join('');
  return [{ title, args: { lines: lines.join(', ') }, edits: [{ range: { start: end, end }, newText }], ...options }];
}
