// A `limits` block: each limit of the protocol against the lowest or highest reading of each tank.
import { unitWords } from '../words/units.ts';
import { assessDays } from '../analysis/criteria.ts';
import type { CriterionPart } from '../protocol/criteria.ts';
import type { Limit } from '../protocol/types.ts';
import type { Series } from '../dataset/types.ts';
import { readLimitsBlock } from '../experiment/optionBlocks.ts';
import { inWindow } from '../dataset/series.ts';
import { printedMinus } from '../quantities/format.ts';
import { convert, convertible, parseUnit } from '../quantities/units.ts';
import { formatClock } from '../time/text.ts';
import { amountText, dateWords, decimalText } from '../charts/chartWords.ts';
import { capital, quantityWords } from '../charts/panels.ts';
import { computed, dataHtml, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { protectedBy } from '../words/criteria.ts';
import { machineNumber } from './readingsTable.ts';
import { tableHtml } from './table.ts';
import { tankMark } from './tankMark.ts';

interface Seen { readonly html: Html; readonly kept: boolean | null }

function seen(limit: Limit, tank: string, context: RenderContext): Seen {
  const { note } = context;
  const protocol = note.protocol!;
  const words = context.words.limits;
  const series = limit.quantity ? note.dataset.series.get(`${tank}.${limit.quantity.value}`) : undefined;
  const indexes = series ? inWindow(series) : [];
  if (!series || indexes.length === 0) return { html: element('td', { class: 'evenwater-number' }, '–'), kept: null };
  let low = indexes[0]!;
  let high = indexes[0]!;
  for (const index of indexes) {
    if (series.values[index]! < series.values[low]!) low = index;
    if (series.values[index]! > series.values[high]!) high = index;
  }
  const long = series.times[series.times.length - 1]! - series.times[0]! > 86_400_000;
  const say = (index: number, name: 'min' | 'max', bound: number | null): Html => {
    const value = series.values[index]!;
    const kept = bound === null ? true : name === 'min' ? value >= bound : value <= bound;
    const formula = `${name}(${series.id})`;
    // Readings outside the instrument's range leave the formula without an answer, and this one without its ±.
    const text = computed(context, formula, { withUncertainty: true })?.text ?? amountText(value, series, protocol);
    const data = dataHtml(text, machineNumber(value), formula);
    const date = long ? escapeHtml(dateWords(series.times[index]!, protocol)) : null;
    return element('span', { class: kept ? 'evenwater-kept' : 'evenwater-crossed' },
      element('span', { 'aria-hidden': 'true' }, kept ? '✓ ' : '✕ '), words.seen({ extreme: words.extremes[name], data, clock: formatClock(series.times[index]!, protocol.zone), date }));
  };
  const bounds = [limit.atLeast, limit.atMost].map((each) => (each && convertible(each.value.unit, series.unit) ? convert(each.value.value, each.value.unit, series.unit) : null));
  const [least, most] = bounds as [number | null, number | null];
  const parts: Html[] = [];
  if (least !== null) parts.push(say(low, 'min', least));
  if (most !== null) parts.push(say(high, 'max', most));
  if (parts.length === 0) return { html: element('td', {}, '–'), kept: null };
  parts.push(...detailsOf(series, limit, least, most, context));
  const kept = (least === null || series.values[low]! >= least) && (most === null || series.values[high]! <= most);
  return { html: element('td', { class: 'evenwater-number' }, parts.join(element('br', {}))), kept };
}

/** Margin with its uncertainty, time beyond the limit and its first moment, each with its formula. */
function detailsOf(series: Series, limit: Limit, least: number | null, most: number | null, context: RenderContext): Html[] {
  const words = context.words.limits;
  const lines: Html[] = [];
  for (const [bound, name, beyond] of [[least === null ? null : limit.atLeast, 'min', 'below'], [most === null ? null : limit.atMost, 'max', 'above']] as const) {
    if (!bound) continue;
    const level = `${Number(bound.value.value.toPrecision(12))}${bound.value.unit.symbol === '1' ? '' : ` ${bound.value.unit.symbol}`}`;
    const marginFormula = name === 'min' ? `min(${series.id}) - ${level}` : `${level} - max(${series.id})`;
    const margin = computed(context, marginFormula, { withUncertainty: true });
    const unsure = computed(context, `resolved(${marginFormula})`)?.machine === 'false';
    if (margin) lines.push(element('span', { class: 'evenwater-limit-detail' }, words.margin(dataHtml(printedMinus(margin.text), margin.machine, marginFormula), unsure)));
    const hoursFormula = `hours-${beyond}(${series.id}, ${level})`;
    const firstFormula = `first-${beyond}(${series.id}, ${level})`;
    const first = computed(context, firstFormula);
    const hours = first && computed(context, hoursFormula);
    if (hours && first) {
      lines.push(element('span', { class: 'evenwater-limit-detail' }, words.beyond({ side: beyond, hours: dataHtml(hours.text, hours.machine, hoursFormula), first: dataHtml(first.text, first.machine, firstFormula) })));
    }
  }
  return lines;
}

/** The parts of a criterion that run over days: kept, crossed, or not assessable. */
function daysHtml(limit: Limit, tank: string, context: RenderContext): (part: CriterionPart, atLeast: number) => Html {
  const { note } = context;
  const protocol = note.protocol!;
  const series = limit.quantity ? note.dataset.series.get(`${tank}.${limit.quantity.value}`) : undefined;
  const milligrams = parseUnit('mg/L');
  return (part, atLeast) => {
    if (!series || !milligrams || part === 'minimum' || !convertible(series.unit, milligrams)) return element('td', { class: 'evenwater-number' }, '–');
    const points = inWindow(series).map((index) => ({ time: series.times[index]!, value: convert(series.values[index]!, series.unit, milligrams) }));
    const found = assessDays(points, part, protocol.zone);
    if (!found.assessable) {
      return element('td', {}, element('span', { class: 'evenwater-none' }, escapeHtml(context.words.limits.notAssessable(found.needs, found.has))));
    }
    const kept = found.lowest >= atLeast - 1e-9 * atLeast;
    return element('td', { class: 'evenwater-number' }, element('span', { class: kept ? 'evenwater-kept' : 'evenwater-crossed' }, element('span', { 'aria-hidden': 'true' }, kept ? '✓ ' : '✕ '),
      escapeHtml(context.words.limits.lowestFrom(`${decimalText(found.lowest, 2, protocol)} mg/L`, found.from))));
  };
}

export function limitsHtml(blockIndex: number, context: RenderContext): Html {
  const { note } = context;
  const protocol = note.protocol;
  const block = note.syntax.blocks[blockIndex];
  if (!protocol || !block) return '';
  const words = context.words.limits;
  const only = readLimitsBlock(block, protocol).for;
  const limits = protocol.limits.filter((limit) => only.length === 0 || only.includes(limit.for));
  if (limits.length === 0) return element('p', { class: 'evenwater-empty' }, words.none);
  const rows = limits.flatMap((limit) => {
    const bounds = ([['at least', limit.atLeast], ['at most', limit.atMost]] as const).flatMap(([side, bound]) => {
      if (!bound) return [];
      const unit = bound.value.unit;
      const decimals = Math.min(4, (String(Number(bound.value.value.toPrecision(8))).split('.')[1] ?? '').length);
      return [`${words.sides[side]} ${decimalText(bound.value.value, decimals, protocol)}${unit.print === '1' || unit.kind === 'ph' ? '' : ` ${unitWords(unit.print, context.language)}`}`];
    });
    const quantity = limit.quantity ? quantityWords(protocol, limit.quantity.value) : '–';
    const readings = protocol.tanks.map((tank) => seen(limit, tank.id, context));
    const source = element('td', { class: 'evenwater-source' }, escapeHtml(limit.source ?? words.noSource));
    const main = element('tr', {}, element('th', { scope: 'row' }, escapeHtml(capital(protectedBy(limit.for, context.language)))), element('td', {}, escapeHtml(`${quantity} ${bounds.join(', ')}`)),
      ...readings.map((each) => each.html), source);
    const cells = protocol.tanks.map((tank) => daysHtml(limit, tank.id, context));
    const overDays = (limit.criterion?.parts ?? []).filter((each) => each.part !== 'minimum').map(({ part, atLeast }) => element('tr', {},
      element('th', { scope: 'row' }, escapeHtml(capital(protectedBy(limit.for, context.language)))), element('td', {}, escapeHtml(words.partLimit({ quantity, part: words.parts[part], amount: `${decimalText(atLeast, 1, protocol)} mg/L` }))),
      ...cells.map((cell) => cell(part, atLeast)), source));
    return [main, ...overDays];
  });
  const head = element('tr', {}, element('th', { scope: 'col' }, words.heads.for), element('th', { scope: 'col' }, words.heads.limit),
    ...protocol.tanks.map((tank) => element('th', { scope: 'col' }, tankMark(tank), escapeHtml(capital(tank.label)))), element('th', { scope: 'col' }, words.heads.source));
  return tableHtml({
    number: context.tableNumber.get(blockIndex) ?? null, words: context.words, head, rows, className: `evenwater-limits${protocol.tanks.length > 2 ? ' evenwater-wide' : ''}`, caption: words.caption,
  });
}
