// Beneath the results: what the fitted night of each tank would have done with longer darkness, a stronger surface exchange or a
// smaller stocking. Only where exchange and respiration could be told apart.
import { capital } from '../charts/panels.ts';
import { contextOf } from '../experiment/readNote.ts';
import { evaluate } from '../formula/evaluate.ts';
import { mappedText } from '../note/mappedText.ts';
import type { Protocol } from '../protocol/types.ts';
import type { PageWords } from '../words/page.ts';
import { cautionsBehind } from '../words/remarks.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { hour, minute } from '../time/instant.ts';
import { formatDuration } from '../time/text.ts';
import { computed, dataHtml, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { tableHtml } from './table.ts';
import { tankMark } from './tankMark.ts';

interface Scenario { readonly words: string; readonly options: string }

/** As it was, three hours more of darkness, twice the exchange, half the stocking. */
function scenarios(length: number, { scenarios: words }: PageWords['whatIf']): Scenario[] {
  const longer = formatDuration(Math.round((length + 3 * hour) / minute) * minute);
  return [
    { words: words.asFitted(formatDuration(Math.round(length / minute) * minute)), options: '' },
    { words: words.longer(longer), options: `, dark ${longer}` },
    { words: words.exchange, options: ', exchange 2' },
    { words: words.stocking, options: ', stocking 0.5' },
  ];
}

/** Columns of dissolved oxygen, by tank. */
function oxygenColumns(protocol: Protocol, context: RenderContext): string[] {
  const ids = protocol.measure.filter((each) => each.what?.value === 'dissolved oxygen' && !each.id.includes('@')).map((each) => each.id);
  return protocol.tanks.flatMap((tank) => ids.map((id) => `${tank.id}.${id}`)).filter((column) => context.note.dataset.series.has(column));
}

/** What makes the fit's intervals doubtful; that these are predictions the caption says. */
function doubtsAbout(formula: string, context: RenderContext): string[] {
  const { working } = evaluate(mappedText(formula), contextOf(context.note));
  return cautionsBehind(working.map(({ remarks }) => ({ remarks: remarks.filter((remark) => remark.code !== 'what-if') })), context.language);
}

export function whatIfHtml(context: RenderContext): Html {
  const { protocol } = context.note;
  if (!protocol) return '';
  const words = context.words.whatIf;
  const tables: Html[] = [];
  for (const phase of protocol.phases.filter((each) => /^dark(?:-\d+)?$/.test(each.id))) {
    const columns = oxygenColumns(protocol, context).filter((column) => computed(context, `predicted-min(${column}, ${phase.id})`) !== null);
    if (columns.length === 0) continue;
    const limit = protocol.limits.find((each) => each.atLeast && each.quantity && columns.some((column) => column.endsWith(`.${each.quantity!.value}`)))?.atLeast?.value ?? null;
    const level = limit ? `${Number(limit.value.toPrecision(12))} ${limit.unit.symbol}` : null;
    const cell = (formula: string): Html => {
      const found = computed(context, formula, { withUncertainty: true });
      return element('td', { class: 'evenwater-number' }, found ? dataHtml(found.text, found.machine, formula) : escapeHtml(words.noAnswer));
    };
    const rows = scenarios(phase.window.to - phase.window.from, words).map((each) => element('tr', {}, element('th', { scope: 'row' }, escapeHtml(capital(each.words))),
      ...columns.flatMap((column) => [cell(`predicted-min(${column}, ${phase.id}${each.options})`), ...(level ? [cell(`predicted-hours-below(${column}, ${level}, ${phase.id}${each.options})`)] : [])])));
    const tankOf = (column: string): Html => {
      const tank = protocol.tanks.find((each) => column.startsWith(`${each.id}.`))!;
      return `${tankMark(tank)}${escapeHtml(capital(tank.label))}`;
    };
    const figures = [words.lowestOxygen, ...(level ? [words.hoursBelow(level.replace('.', decimalMarkOf(protocol.language)))] : [])];
    const head = element('tr', {}, element('th', { scope: 'col', rowspan: 2 }, words.head), ...columns.map((column) => element('th', { scope: 'colgroup', colspan: figures.length }, tankOf(column))))
      + element('tr', {}, ...columns.flatMap(() => figures.map((figure) => element('th', { scope: 'col' }, escapeHtml(capital(figure))))));
    tables.push(tableHtml({
      number: null, words: context.words, head, rows, className: `evenwater-what-if${columns.length > 2 ? ' evenwater-wide' : ''}`, caption: words.caption(phase.id === 'dark' ? null : phase.id),
    }));
    const doubts = columns.flatMap((column) => doubtsAbout(`predicted-min(${column}, ${phase.id})`, context).map((each) => element('li', {}, tankOf(column), escapeHtml(`: ${each}`))));
    if (doubts.length > 0) tables.push(element('ul', { class: 'evenwater-table-notes' }, ...doubts));
  }
  return tables.join('');
}
