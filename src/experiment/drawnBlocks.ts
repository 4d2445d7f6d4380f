// Figures, summaries and the other blocks with options, read once a note. A block that says the same on the same ground is
// taken from the earlier note, its problems moved along, so that a key typed elsewhere computes nothing again.
import type { Problem } from '../problems/problem.ts';
import type { Block, NoteSyntax } from '../note/syntax.ts';
import { readFigureBlock, type FigureOptions } from './figureBlock.ts';
import type { Ground } from './ground.ts';
import { changeBetween, moved, moveProblems } from './movedClaims.ts';
import { readLimitsBlock, readMethodsBlock } from './optionBlocks.ts';
import { readSummaryBlock } from './summaryBlock.ts';
import { makeSummary, type SummaryTable } from './summaryTable.ts';
import type { Note } from './types.ts';

export interface DrawnBlock {
  /** Of a `figure` block from which something can be drawn. */
  readonly figure: FigureOptions | null;
  /** Of a `summary` block from which a table can be made. */
  readonly summary: SummaryTable | null;
  readonly problems: readonly Problem[];
}

function readDrawnBlock(block: Block, ground: Ground): DrawnBlock | null {
  const { protocol, context } = ground;
  if (!protocol) return null;
  const nothing = { figure: null, summary: null };
  switch (block.word) {
    case 'figure': {
      const { options, problems } = readFigureBlock(block, context);
      return { ...nothing, figure: options, problems };
    }
    case 'summary': {
      const { options, problems } = readSummaryBlock(block, context);
      const made = options && makeSummary(options, context);
      return { ...nothing, summary: made?.table ?? null, problems: [...problems, ...(made?.problems ?? [])] };
    }
    case 'limits': return { ...nothing, problems: readLimitsBlock(block, protocol).problems };
    case 'methods': return { ...nothing, problems: readMethodsBlock(block).problems };
    default: return null;
  }
}

/** The blocks with options by their index in the note's blocks. */
export function readDrawnBlocks(syntax: NoteSyntax, ground: Ground, previous: Note | undefined): ReadonlyMap<number, DrawnBlock> {
  const earlier = previous?.ground === ground ? takenOver(previous, syntax) : () => null;
  const found = new Map<number, DrawnBlock>();
  syntax.blocks.forEach((block, index) => {
    const drawn = earlier(block) ?? readDrawnBlock(block, ground);
    if (drawn) found.set(index, drawn);
  });
  return found;
}

/** Finds what an earlier note made of a block that says the same now. */
function takenOver(previous: Note, syntax: NoteSyntax): (block: Block) => DrawnBlock | null {
  const change = changeBetween(previous.text, syntax.text);
  const byPlace = new Map<number, DrawnBlock>();
  previous.syntax.blocks.forEach((block, index) => {
    const range = moved(block.range, change);
    const drawn = previous.drawn.get(index);
    if (!range || !drawn || previous.text.slice(block.range.start, block.range.end) !== syntax.text.slice(range.start, range.end)) return;
    const problems = moveProblems(drawn.problems, change);
    if (problems) byPlace.set(range.start, { ...drawn, problems });
  });
  return (block) => byPlace.get(block.range.start) ?? null;
}
