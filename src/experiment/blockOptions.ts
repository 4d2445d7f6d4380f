// The YAML of blocks with options (figure, summary, limits, methods): keys and values as a tree with places in the note.
import { LineCounter, isMap, isScalar, parseDocument, type Node } from 'yaml';
import { fix, problem, type Fix, type Problem, type SourceRange } from '../problems/problem.ts';
import { nearestName } from '../problems/nearest.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { Block } from '../note/syntax.ts';
import { Collector } from '../protocol/collector.ts';
import { readTree, type TextNode, type TreeNode } from '../protocol/planTree.ts';

/** One option of a block: its key, its value as a tree, and the texts in it, however deep. */
export interface BlockOption {
  readonly key: string;
  readonly keyRange: SourceRange;
  readonly value: TreeNode;
  readonly texts: readonly TextNode[];
  /** Of the value; of the key where there is none. */
  readonly range: SourceRange;
}

/** Where problems of a whole block stand: its opening fence. */
export const blockRange = (block: Block): SourceRange => ({ start: block.range.start, end: Math.max(block.range.start + 1, block.infoRange.end) });

/** What keeps the YAML library from reading a block; null where nothing does. */
function unreadable(block: Block): Problem | null {
  const { text } = block.content;
  const lineCounter = new LineCounter();
  const document = parseDocument(text, { schema: 'failsafe', lineCounter, prettyErrors: false, uniqueKeys: true });
  const raise = (offset: number, reason: string): Problem => {
    const start = Math.max(0, Math.min(offset, text.length - 1));
    return problem('block-unreadable', toDocumentRange(block.content, { start, end: Math.min(text.length, start + 1) }),
      { block: block.word, line: String(lineCounter.linePos(start).line), reason });
  };
  const error = document.errors[0];
  if (error) return raise(error.pos[0], /end with an? [\]}]/.test(error.message) ? 'open-bracket' : error.code);
  const root = document.contents as Node | null;
  if (root === null || isMap(root) || (isScalar(root) && String(root.value ?? '').trim() === '')) return null;
  return raise(root.range?.[0] ?? 0, 'no-options');
}

/** The options of a block with their places; an empty block has none. */
export function readOptions(block: Block): { readonly options: readonly BlockOption[]; readonly problems: readonly Problem[] } {
  const broken = unreadable(block);
  if (broken) return { options: [], problems: [broken] };
  const collector = new Collector();
  const tree = readTree(block.content, collector);
  const options = tree?.kind !== 'map' ? [] : tree.entries.map(({ key, keyRange, value }): BlockOption => {
    const texts = textsIn(value);
    return { key, keyRange, value, texts, range: value.kind === 'text' && value.value.trim() === '' ? keyRange : value.range };
  });
  return { options, problems: collector.problems };
}

/** The texts of a value, those of lists one after another; what stands under keys is no text of the option. */
function textsIn(node: TreeNode): TextNode[] {
  if (node.kind === 'text') return node.value.trim() === '' ? [] : [node];
  return node.kind === 'list' ? node.items.flatMap(textsIn) : [];
}

/** A key that the block does not know. */
export function unknownOption(option: BlockOption, block: Block, known: readonly string[]): Problem {
  const close = nearestName(option.key, known);
  return problem('option-unknown', option.keyRange, { option: option.key, block: block.word, nearest: close ?? '', known: known.join(', ') },
    close ? [replaceFix(option.keyRange, close)] : []);
}

/** A value that is none of those the option takes. */
export function unknownValue(option: BlockOption, known: readonly string[]): Problem {
  const [text] = option.texts;
  const close = (text && nearestName(text.value, known)) ?? known[0]!;
  const range = text?.range ?? option.keyRange;
  return problem('option-value', range, { option: option.key, known: known.join(', ') },
    [fix('replace-with', { text: close }, [{ range: text ? range : option.range, newText: text ? close : `${option.key}: ${close}` }])]);
}

/** The mend that most people want: another text at a place. */
export const replaceFix = (range: SourceRange, text: string): Fix => fix('replace-with', { text }, [{ range, newText: text }], { preferred: true });

/** `yes` or `no`; null with a problem for anything else. */
export function readYesNo(option: BlockOption, problems: Problem[]): boolean | null {
  const [text] = option.texts;
  if (text && /^(?:yes|no)$/.test(text.value)) return text.value === 'yes';
  problems.push(unknownValue(option, ['yes', 'no']));
  return null;
}
