// What `figure` and `summary` blocks name: series, formulas, moments and stretches of time, with their places in the note.
import { readOptions } from '../experiment/blockOptions.ts';
import { sliceMapped, type MappedText } from '../note/mappedText.ts';
import type { Note } from '../experiment/types.ts';
import type { Block, BlockWord, NoteSyntax } from '../note/syntax.ts';
import type { SourceRange } from '../problems/problem.ts';

const named: Readonly<Record<string, readonly string[]>> = { figure: ['show', 'from', 'to'], summary: ['of', 'rows', 'show', 'from', 'to'] };
const rowWords = ['phases', 'tanks'];

/** The texts of one block, each a formula or a name; functions that a summary shows are names of functions. */
export function drawnTexts(block: Block): { readonly option: string; readonly text: MappedText }[] {
  const keys = named[block.word];
  if (!keys) return [];
  return readOptions(block).options.filter((option) => keys.includes(option.key)).flatMap((option) => option.texts.flatMap(({ value, mapped }) => {
    if (option.key === 'rows' && rowWords.includes(value.trim())) return [];
    const before = option.key === 'rows' ? /^before-after\s*/.exec(value)?.[0].length ?? 0 : 0;
    return before < value.length ? [{ option: option.key, text: sliceMapped(mapped, before, mapped.text.length) }] : [];
  }));
}

/** The formulas of every such block; the functions that summaries show are left out, having no operands of their own. */
export function drawnFormulas(syntax: NoteSyntax): MappedText[] {
  return syntax.blocks.flatMap((block) => drawnTexts(block).filter(({ option }) => block.word !== 'summary' || option !== 'show').map(({ text }) => text));
}

/** The option of a block at an offset of the note, for its help; null where none stands there. */
export function drawnOptionAt(note: Pick<Note, 'syntax'>, offset: number): { readonly block: BlockWord; readonly key: string; readonly range: SourceRange } | null {
  const block = note.syntax.blocks.find((each) => ['figure', 'summary', 'limits', 'methods'].includes(each.word) && offset > each.infoRange.end && offset < each.range.end);
  const option = block && readOptions(block).options.find((each) => each.keyRange.start <= offset && offset <= each.keyRange.end);
  return option ? { block: block.word, key: option.key, range: option.keyRange } : null;
}

/** What a figure or summary is about, for the outline: its rows and series as they are written. */
export function drawnDetail(block: Block): string {
  const { options } = readOptions(block);
  const written = (key: string): string => options.find((option) => option.key === key)?.texts.map((text) => text.value.trim()).join(', ') ?? '';
  return [written('title'), written(block.word === 'summary' ? 'of' : 'show'), block.word === 'summary' ? written('rows') : ''].filter((text) => text !== '').join(' · ');
}
