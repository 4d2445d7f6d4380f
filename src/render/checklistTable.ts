// The reporting checklist of a `methods` block with `checklist: yes`, as a table.
import { wordsOf } from '../writing/facts.ts';
import { writeChecklist, type ChecklistState } from '../writing/checklist.ts';
import type { RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { tableHtml } from './table.ts';

const signs: Readonly<Record<ChecklistState, string>> = { covered: '✓', partly: '◐', missing: '✕', 'not-applicable': '–' };
const classes: Readonly<Record<ChecklistState, string>> = { covered: 'evenwater-kept', partly: '', missing: 'evenwater-crossed', 'not-applicable': 'evenwater-none' };

export function checklistHtml(context: RenderContext): Html {
  const items = writeChecklist(context.note);
  const { protocol } = context.note;
  if (items.length === 0 || !protocol) return '';
  const words = wordsOf(protocol).checklist;
  const count = (state: ChecklistState): number => items.filter((each) => each.state === state).length;
  const rows = items.map((each) => element('tr', {},
    element('th', { scope: 'row' }, escapeHtml(`${each.number === null ? '' : `${each.number}. `}${each.item}`)),
    element('td', {}, element('span', { class: classes[each.state] || null }, element('span', { 'aria-hidden': 'true' }, `${signs[each.state]} `), words.states[each.state])),
    element('td', {}, escapeHtml([each.sentence === null ? '' : words.quoted(each.sentence), each.advice ?? ''].filter((text) => text !== '').join(' ')))));
  const head = element('tr', {}, ...words.heads.map((text) => element('th', { scope: 'col' }, text)));
  return tableHtml({
    number: null, words: context.words, head, rows, className: 'evenwater-checklist',
    caption: words.caption({ covered: count('covered'), partly: count('partly'), missing: count('missing'), none: count('not-applicable') }),
  });
}
