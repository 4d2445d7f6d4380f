// A `values` block as a table: each named result with its value, its formula and the formula in words.
import { contextOf } from '../experiment/readNote.ts';
import { machineValue, showValue } from '../formula/show.ts';
import { dataHtml, formulaWords, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { cautionsBehind } from '../words/remarks.ts';
import { problemSentence } from '../words/words.ts';
import { tableHtml } from './table.ts';

export function valuesHtml(blockIndex: number, context: RenderContext): Html {
  const { values: words, cannotBeComputed } = context.words;
  const results = context.note.results.filter((result) => result.block === blockIndex);
  if (results.length === 0) return element('p', { class: 'evenwater-empty' }, words.none);
  const formulas = contextOf(context.note);
  const rows = results.map((result) => {
    const { value, problems } = result.evaluation;
    const formula = result.formula.text.trim();
    const said = formulaWords(context, formula);
    const how = element('td', { class: 'evenwater-how' },
      ...(said === formula ? [] : [element('span', { class: 'evenwater-words' }, escapeHtml(said)), element('br', {})]), element('code', {}, escapeHtml(formula)),
      ...cautionsBehind(result.evaluation.working, context.language).map((each) => element('span', { class: 'evenwater-caution' }, escapeHtml(each))));
    const first = problems.find((each) => each.severity === 'error') ?? problems[0];
    const cell = value === null
      ? element('td', { class: 'evenwater-number evenwater-loud' }, escapeHtml(first ? `✕ ${problemSentence(first, context.problemLanguage)}` : `✕ ${cannotBeComputed}`))
      : element('td', { class: 'evenwater-number' }, dataHtml(showValue(value, formulas, { withUncertainty: true }), machineValue(value, formulas), formula));
    return element('tr', {}, element('th', { scope: 'row' }, element('code', {}, escapeHtml(result.name))), cell, how);
  });
  const head = element('tr', {}, ...words.heads.map((each) => element('th', { scope: 'col' }, each)));
  return tableHtml({ number: context.tableNumber.get(blockIndex) ?? null, words: context.words, caption: words.caption, head, rows, className: 'evenwater-values' });
}
