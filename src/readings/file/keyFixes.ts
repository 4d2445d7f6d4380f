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

/** A fix that adds lines at the end of the block; none where the block stands in a quote or list, whose prefix it would lack. */
export function addLines(block: Block, lines: readonly string[], title: string, options: { preferred?: boolean; safe?: boolean } = {}): LocalFix[] {
  const { text, pieces } = block.content;
  const shift = (pieces[0]?.document ?? 0) - (pieces[0]?.offset ?? 0);
  if (pieces.some((piece) => piece.document - piece.offset !== shift)) return [];
  const lineBreak = text.includes('\r\n') ? '\r\n' : '\n';
  const newText = (text === '' || text.endsWith('\n') ? '' : lineBreak) + lines.map((line) => line + lineBreak).join('');
  return [{ title, args: { lines: lines.join(', ') }, edits: [{ range: { start: text.length, end: text.length }, newText }], ...options }];
}
