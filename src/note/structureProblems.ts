// Problems of a note's blocks: fences left open, misspelt block words, a second plan, a name used twice.
import { fix, problem, type Fix, type Problem } from '../problems/problem.ts';
import { editDistance } from '../problems/nearest.ts';
import { toDocumentRange } from './mappedText.ts';
import { blockWords, type Block } from './syntax.ts';
import { infoWords } from './claimRule.ts';
import type { Fence, Structure } from './structure.ts';
import { claimProblems } from './claimProblems.ts';
import { mapLines } from './sourceLines.ts';

const words: readonly string[] = blockWords;

/** Every problem of the structure: of its blocks, and of claims that are not where they can be checked. */
export function structureProblems(structure: Structure): Problem[] {
  const { fences, blocks, isNote } = structure;
  const misspelt = fences.flatMap((fence) => nearMiss(fence) ?? []);
  return [
    ...misspelt,
    ...(isNote || misspelt.some((each) => each.args['word'] === 'protocol') ? [] : [problem('protocol-missing', blocks[0]?.infoRange ?? { start: 0, end: 0 })]),
    ...fences.flatMap((fence) => notClosed(fence, structure)),
    ...secondProtocols(blocks),
    ...namesTwice(blocks),
    ...indentedBlocks(structure),
    ...(isNote ? claimProblems(structure) : []),
  ];
}

/** The block word that a fence's first word was meant to be, or null. Long words may be two steps away, short ones one. */
export function nearestBlockWord(found: string): string | null {
  if (found.length < 4 || found.length > 12 || words.includes(found)) return null;
  let nearest: string | null = null;
  let least = 3;
  for (const word of words) {
    const away = editDistance(found.toLowerCase(), word);
    if (away < least && away <= (word.length > 6 ? 2 : 1)) { nearest = word; least = away; }
  }
  return nearest;
}

function nearMiss(fence: Fence): Problem | null {
  const found = infoWords(fence.info)[0];
  const word = nearestBlockWord(found);
  if (word === null) return null;
  const range = { start: fence.infoRange.start, end: fence.infoRange.start + found.length };
  const mend = fix('replace-with', { text: word }, [{ range, newText: word }], { preferred: true });
  return problem('near-miss-block', range, { found, word }, [mend]);
}

/** A fence left open, or one that swallowed the opening fence of the block after it. */
function notClosed(fence: Fence, { text, lines }: Structure): Problem[] {
  const [first] = infoWords(fence.info);
  const word = words.includes(first) ? first : '';
  const marks = /^[`~]+/.exec(text.slice(fence.range.start, fence.range.start + 80))?.[0] ?? '```';
  const lineStart = lines.starts[fence.startLine] ?? 0;
  const prefix = text.slice(lineStart, fence.range.start).replace(/[^>\s]/g, ' ');
  const range = { start: fence.range.start, end: fence.infoRange.end };
  const swallowed = word === '' ? null : swallowedFence(fence.content.text);
  if (swallowed !== null) {
    const inside = toDocumentRange(fence.content, { start: swallowed, end: swallowed + 1 }).start;
    return [problem('fence-not-closed', range, { word }, [closing(inside, `${marks}\n\n${prefix}`)])];
  }
  const short = fence.closed ? null : /^ {0,3}(?:`{3,}|~{3,})[ \t]*$/m.exec(fence.content.text);
  if (short) {
    const marksRange = toDocumentRange(fence.content, { start: short.index + short[0].search(/[`~]/), end: short.index + short[0].trimEnd().length });
    const mend = fix('replace-with', { text: marks }, [{ range: marksRange, newText: marks }], { preferred: true });
    return [problem('fence-not-closed', range, { word }, [mend])];
  }
  const reachesEnd = text.slice(fence.range.end).trim() === '';
  if (fence.closed || (word === '' && !reachesEnd)) return [];
  const content = fence.content.text;
  const used = content.trimEnd().length;
  const at = used === 0 ? fence.infoRange.end : toDocumentRange(fence.content, { start: used - 1, end: used }).end;
  return [problem('fence-not-closed', range, { word }, [closing(at, `\n${prefix}${marks}`)])];
}

function closing(at: number, newText: string): Fix {
  return fix('close-block', {}, [{ range: { start: at, end: at }, newText }], { preferred: true });
}

/** Where a block's content ends that was never closed: at the opening fence of another block, or at a closing fence of other marks; or null. */
export function contentEnd(content: string, closed: boolean): number | null {
  const short = closed ? null : /^ {0,3}(?:`{3,}|~{3,})[ \t]*$/m.exec(content);
  return swallowedFence(content) ?? short?.index ?? null;
}

/** Where the opening fence of another block stands inside a block's content, or null. */
function swallowedFence(content: string): number | null {
  const opening = new RegExp(`^ {0,3}(?:\`{3,}|~{3,})[ \\t]*(?:${blockWords.join('|')})(?=[ \\t]|$)`, 'm').exec(content);
  return opening ? opening.index + opening[0].search(/[`~]/) : null;
}

function secondProtocols(blocks: readonly Block[]): Problem[] {
  const [first, ...others] = blocks.filter((block) => block.word === 'protocol');
  if (!first) return [];
  const related = [{ range: first.infoRange, message: 'first-protocol', args: {} }];
  return others.map((block) => problem('second-protocol', { start: block.range.start, end: block.infoRange.end },
    { line: first.startLine + 1 }, [], related));
}

function namesTwice(blocks: readonly Block[]): Problem[] {
  const seen = new Map<string, Block>();
  const problems: Problem[] = [];
  for (const block of blocks) {
    if (block.name === null || block.word === 'protocol') continue;
    const key = `${block.word} ${block.name}`;
    const first = seen.get(key);
    if (!first) { seen.set(key, block); continue; }
    const nameStart = block.infoRange.start + block.word.length;
    const start = nameStart + Math.max(0, blockNameOffset(block));
    problems.push(problem('block-name-twice', { start, end: start + block.name.length },
      { word: block.word, name: block.name, line: first.startLine + 1 }, [],
      [{ range: first.infoRange, message: 'first-of-name', args: { name: block.name } }]));
  }
  return problems;
}

/** Blanks between the block's word and its name: at least one. */
function blockNameOffset(block: Block): number {
  return block.infoRange.end - block.infoRange.start - block.word.length < (block.name?.length ?? 0) ? 0 : 1;
}

function indentedBlocks({ code, lines, text }: Structure): Problem[] {
  const opening = new RegExp(`^[ \\t]*(?:\`{3,}|~{3,})[ \\t]*(${blockWords.join('|')})(?=[ \\t]|$)`, 'm');
  return code.flatMap((token) => {
    const found = opening.exec(token.content);
    if (!found) return [];
    const mapped = mapLines(lines, token.content, token.map?.[0] ?? 0, false);
    const at = found.index + found[0].search(/[`~]/);
    const range = toDocumentRange(mapped, { start: at, end: found.index + found[0].length });
    const edits = [];
    for (let line = token.map?.[0] ?? 0; line < (token.map?.[1] ?? 0); line++) {
      const start = lines.starts[line] ?? 0;
      const indent = /^(?: {1,4}|\t)/.exec(text.slice(start, lines.ends[line]));
      if (indent) edits.push({ range: { start, end: start + indent[0].length }, newText: '' });
    }
    return [problem('block-indented', range, { word: found[1]! }, [fix('move-left', {}, edits, { preferred: true })])];
  });
}
