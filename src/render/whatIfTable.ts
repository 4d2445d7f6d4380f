// Beneath the results: what the fitted night of each tank would have done with longer darkness, a stronger surface exchange or a
// smaller stocking. Only where exchange and respiration could be told apart.
import { capital } from '../charts/panels.ts';
import type { Protocol } from '../protocol/types.ts';
import { hour, minute } from '../time/instant.ts';
import { formatDuration } from '../time/text.ts';
import { computed, dataHtml, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { tableHtml } from './table.ts';
import { tankMark } from './tankMark.ts';

interface Scenario { readonly words: string; readonly options: string }

/** As it was, three hours more of darkness, twice the exchange, half the stocking. */
function scenarios(length: number): Scenario[] {
  const longer = formatDuration(Math.round((length + 3 * hour) / minute) * minute);
  return [
    { words: `as fitted, ${formatDuration(Math.round(length / minute) * minute)} of darkness`, options: '' },
    { words: `${longer} of darkness`, options: `, dark ${longer}` },
    { words: 'an air pump that doubles the surface exchange', options: ', exchange 2' },
    { words: 'half the animals and plants', options: ', stocking 0.5' },
  ];
}

/** Columns of dissolved oxygen, by tank. */
function oxygenColumns(protocol: Protocol, context: RenderContext): string[] {
  const ids = protocol.measure.filter((each) => each.what?.value === 'dissolved oxygen' && !each.id.includes('@')).map((each) => each.id);
  return protocol.tanks.flatMap((tank) => ids.map((id) => `${tank.id}.${id}`)).filter((column) => context.note.dataset.series.has(column));
}

export function whatIfHtml(context: RenderContext): Html {
  const { protocol } = context.note;
  if (!protocol) return '';
  const tables: Html[] = [];
  for (const phase of protocol.phases.filter((each) => /^dark(?:-\d+)?$/.test(each.id))) {
    const columns = oxygenColumns(protocol, context).filter((column) => computed(context, `predicted-min(${column}, ${phase.id})`) !== null);
    if (columns.length === 0) continue;
    const limit = protocol.limits.find((each) => each.atLeast && each.quantity && columns.some((column) => column.endsWith(`.${each.quantity!.value}`)))?.atLeast?.value ?? null;
    const level = limit ? `${Number(limit.value.toPrecision(12))} ${limit.unit.symbol}` : null;
    const cell = (formula: string): Html => {
      const found = computed(context, formula, { withUncertainty: true });
      return element('td', { class: 'evenwater-number' }, found ? dataHtml(found.text, found.machine, formula) : escapeHtml('no answer'));
    };
    const rows = scenarios(phase.window.to - phase.window.from).map((each) => element('tr', {}, element('th', { scope: 'row' }, escapeHtml(capital(each.words))),
      ...columns.flatMap((column) => [cell(`predicted-min(${column}, ${phase.id}${each.options})`), ...(level ? [cell(`predicted-hours-below(${column}, ${level}, ${phase.id}${each.options})`)] : [])])));
    const tankOf = (column: string): Html => {
      const tank = protocol.tanks.find((each) => column.startsWith(`${each.id}.`))!;
      return `${tankMark(tank)}${escapeHtml(capital(tank.label))}`;
    };
    const head = element('tr', {}, element('th', { scope: 'col' }, 'What if'), ...columns.flatMap((column) => [
      element('th', { scope: 'col' }, tankOf(column), escapeHtml(', lowest oxygen')), ...(limit && level ? [element('th', { scope: 'col' }, tankOf(column), escapeHtml(`, hours below ${level}`))] : []),
    ]));
    tables.push(tableHtml({
      number: null, head, rows, className: 'evenwater-what-if',
      caption: `Predictions from the fitted night${phase.id === 'dark' ? '' : ` (${phase.id})`}, with 95 % intervals. They take every animal, plant and bacterium to go on as it did, and the water to keep its temperature: plan with them, do not rely on them.`,
    }));
  }
  return tables.join('');
}
