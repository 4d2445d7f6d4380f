// One block to HTML: which part draws which word, and what is shown when it cannot be drawn.
import { writeMethods } from '../writing/methods.ts';
import { writeResults } from '../writing/results.ts';
import { readMethodsBlock } from '../experiment/optionBlocks.ts';
import { checklistHtml } from './checklistTable.ts';
import type { RenderContext } from './context.ts';
import { blockProblemsHtml, problemsIn } from './errorBox.ts';
import { figureHtml } from './figure.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { limitsHtml } from './limitsTable.ts';
import { planCardHtml } from './planCard.ts';
import { proseHtml } from './proseBlock.ts';
import { readingsTablesHtml } from './readingsTable.ts';
import { summaryHtml } from './summaryTable.ts';
import { valuesHtml } from './valuesTable.ts';
import { whatIfHtml } from './whatIfTable.ts';

const source = (text: string): Html => element('pre', { class: 'evenwater-source-text' }, element('code', {}, escapeHtml(text)));

function drawn(blockIndex: number, content: string, context: RenderContext): Html {
  const { note } = context;
  const block = note.syntax.blocks[blockIndex]!;
  if (block.word === 'protocol') return note.protocol ? planCardHtml(note.protocol, context) : source(content);
  if (!note.protocol) return element('p', { class: 'evenwater-empty' }, context.words.needsProtocol) + source(content);
  const figure = context.figures.get(blockIndex);
  switch (block.word) {
    case 'readings': {
      const tables = readingsTablesHtml(blockIndex, context);
      const table = note.tables.find((each) => each.block === blockIndex);
      const rows = table?.rows.length ?? 0;
      const wrapped = rows > 0 ? element('details', { class: 'evenwater-readings-tables', open: rows <= 40 },
        element('summary', {}, escapeHtml(context.words.stepByStep(rows))), tables) : tables;
      return (figure ? figureHtml(blockIndex, figure, context) : '') + wrapped;
    }
    case 'figure': return figure ? figureHtml(blockIndex, figure, context)
      : problemsIn(note, block.range, 'error').length > 0 ? source(content) : element('p', { class: 'evenwater-empty' }, context.words.nothingToDraw);
    case 'values': return valuesHtml(blockIndex, context);
    case 'limits': return limitsHtml(blockIndex, context);
    case 'summary': return problemsIn(note, block.range, 'error').length > 0 && !note.drawn.get(blockIndex)?.summary ? source(content) : summaryHtml(blockIndex, context);
    case 'methods': return proseHtml(writeMethods(note), 'methods', context) + (readMethodsBlock(block).checklist ? checklistHtml(context) : '');
    case 'results': return proseHtml(writeResults(note), 'results', context) + whatIfHtml(context);
  }
}

/** A block as HTML, its problems first. `content` is the fence's text, shown as it is where nothing better can be. */
export function blockHtml(blockIndex: number, content: string, context: RenderContext): Html {
  const block = context.note.syntax.blocks[blockIndex]!;
  return blockProblemsHtml(context.note, block, context.problemLanguage, context.target) + drawn(blockIndex, content, context);
}
