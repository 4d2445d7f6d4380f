// A `values` block as a table: each named result with its value, its formula and the formula in words.
import { contextOf } from '../experiment/readNote.ts';
import { machineValue, showValue } from '../formula/show.ts';
import { dataHtml, formulaWords, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { problemSentence } from '../words/words.ts';
import { tableHtml } from './table.ts';

export function valuesHtml(blockIndex: number, context: RenderContext): Html {
  const results = context.note.results.filter((result) => result.block === blockIndex);
  if (results.length === 0) return element('p', { class: 'evenwater-empty' }, 'No named results yet: write one “name = formula” a line.');
  const formulas = contextOf(context.note);
  const rows = results.map((result) => {
    const { value, problems } = result.evaluation;
    const formula = result.formula.text.trim();
    const words = formulaWords(context, formula);
    const how = element('td', { class: 'evenwater-how' },
      ...(words === formula ? [] : [element('span', { class: 'evenwater-words' }, escapeHtml(words)), element('br', {})]), element('code', {}, escapeHtml(formula)));
    const first = problems.find((each) => each.severity === 'error') ?? problems[0];
    const cell = value === null
      ? element('td', { class: 'evenwater-number evenwater-loud' }, escapeHtml(first ? `✕ ${problemSentence(first)}` : '✕ cannot be computed'))
      : element('td', { class: 'evenwater-number' }, dataHtml(showValue(value, formulas, { withUncertainty: true }), machineValue(value, formulas), formula));
    return element('tr', {}, element('th', { scope: 'row' }, element('code', {}, escapeHtml(result.name))), cell, how);
  });
  const head = element('tr', {}, ...['Result', 'Value', 'How it is computed'].map((each) => element('th', { scope: 'col' }, each)));
  return tableHtml({ number: context.tableNumber.get(blockIndex) ?? null, caption: 'Named results. Figures after ± are half of a 95 % interval, from the stated accuracy and resolution of the instruments.', head, rows, className: 'evenwater-values' });
}
