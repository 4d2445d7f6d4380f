// What the editor tells of figures and summaries: the option under the pointer, and their line in the outline.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { drawnDetail, drawnFormulas, drawnOptionAt } from '../../../src/assist/drawnTexts.ts';
import { tokens } from '../../../src/assist/tokens.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { figureKeys } from '../../../src/experiment/figureBlock.ts';
import { summaryKeys } from '../../../src/experiment/summaryBlock.ts';
import { assistWords } from '../../../src/words/assist.ts';
import { noteText } from './support.ts';

const text = noteText({ prose: '```figure\ntitle: The night\nshow: [mat.DO - open.DO]\nfacets: tanks\n```\n\n```summary\nof: [DO, mat.T]\nrows: before-after light-off\nshow: [mean]\n```\n' });
const note = readNote(text);

suite('assist: figures and summaries', () => {
  test('the option under the pointer, and help for every option in both languages', () => {
    const at = text.indexOf('facets:') + 2;
    deepEqual(drawnOptionAt(note, at), { block: 'figure', key: 'facets', range: { start: at - 2, end: at + 4 } });
    equal(drawnOptionAt(note, text.indexOf('tanks\n```') + 1), null);
    equal(drawnOptionAt(note, text.indexOf('question:') + 2), null);
    for (const language of ['en', 'de'] as const) {
      const help: Readonly<Record<string, string>> = assistWords(language).optionHelp;
      for (const key of figureKeys) ok(help[`figure.${key}`], key);
      for (const key of summaryKeys) ok(help[`summary.${key}`], key);
    }
  });

  test('the outline says what is drawn and summed up', () => {
    const detail = (word: string) => drawnDetail(note.syntax.blocks.find((block) => block.word === word)!);
    equal(detail('figure'), 'The night · mat.DO - open.DO');
    equal(detail('summary'), 'DO, mat.T · before-after light-off');
  });

  test('their formulas are coloured: tanks, quantities, moments, functions', () => {
    deepEqual(drawnFormulas(note.syntax).map((formula) => formula.text), ['mat.DO - open.DO', 'DO', 'mat.T', 'light-off']);
    const found = tokens(note).filter((token) => token.range.start > text.indexOf('```figure')).map((token) => `${token.type} ${text.slice(token.range.start, token.range.end)}`);
    deepEqual(found, ['tank mat', 'quantity DO', 'tank open', 'quantity DO', 'quantity DO', 'tank mat', 'quantity T', 'moment light-off', 'function mean']);
  });
});
