// A `summary` block as a table: every figure with the formula it came from; what could not be computed is a dash with its reason.
import { contextOf } from '../experiment/readNote.ts';
import type { SummaryCell, SummaryColumn, SummaryRow, SummarySubject, SummaryTable } from '../experiment/summaryTable.ts';
import type { Protocol } from '../protocol/types.ts';
import type { FormulaValue } from '../formula/types.ts';
import { intervalSource } from '../formula/intervalSource.ts';
import { machineValue, printedUnit, showValue, shownDecimals } from '../formula/show.ts';
import { decimalsFor, printedMinus } from '../quantities/format.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import { formatClock, formatDate, formatInstant } from '../time/text.ts';
import { hour, type Instant } from '../time/instant.ts';
import { dateWords } from '../charts/chartWords.ts';
import { capital, placeWords } from '../charts/panels.ts';
import { computedWords, quantityWords } from '../charts/sources.ts';
import { problemSentence } from '../words/words.ts';
import { summaryWords, type StretchFacts, type SummaryWords } from '../words/summary.ts';
import { dataHtml, formulaWords, tanksOfRole, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { noteLetter } from './readingsTable.ts';
import { tableHtml } from './table.ts';
import { tankMark } from './tankMark.ts';

/** No more digits than two significant ones of the ± ask for. Digits that the readings do not have are not added. */
function fewerDecimals(value: FormulaValue): { readonly decimals?: number } {
  const half = value.type === 'number' ? expandedUncertainty(value) : null;
  return value.type === 'number' && half !== null && half > 0 ? { decimals: Math.min(shownDecimals(value), decimalsFor(value.value, half)) } : {};
}

class SummaryPrinter {
  private readonly notes: string[] = [];
  private readonly table: SummaryTable;
  private readonly context: RenderContext;
  private readonly protocol: Protocol;
  private readonly words: SummaryWords;
  /** One unit a column where all its values share it: it stands in the head then. */
  private readonly units: readonly (string | null)[];

  constructor(table: SummaryTable, context: RenderContext, protocol: Protocol) {
    this.table = table;
    this.context = context;
    this.protocol = protocol;
    this.words = summaryWords(context.language);
    this.units = table.columns.map((_, index) => this.unitOf(index));
  }

  print(number: number | null): Html {
    const rows = this.table.rows.map((row) => element('tr', { class: row.kind === 'gap' || row.kind === 'change' ? 'evenwater-summary-last' : null },
      element('th', { scope: 'row' }, this.rowHead(row)), ...row.cells.map((cell, index) => this.cell(cell, row, index))));
    return tableHtml({
      number, words: this.context.words, caption: this.caption(), head: this.head(), rows, className: `evenwater-summary${this.table.columns.length > 6 ? ' evenwater-wide' : ''}`,
      notes: this.notes.map((note) => element('li', {}, escapeHtml(note))),
    });
  }

  private unitOf(column: number): string | null {
    const units = new Set<string>();
    for (const row of this.table.rows) {
      const { value } = row.cells[column]!;
      if (value) units.add(value.type === 'number' ? printedUnit(value.unit).print : '');
    }
    const [unit] = units;
    return units.size === 1 && unit !== '' && unit !== '1' ? unit! : null;
  }

  /** What the series of a column is called, its place left out. */
  private what(subject: SummarySubject): string {
    if (!subject.computed) return `${quantityWords(this.protocol, subject.form)}${subject.instrument === null ? '' : `, ${subject.instrument}`}`;
    const shown = this.computedNamed(subject.formula);
    return shown ? computedWords(shown, shown.computed, this.context.note, this.protocol).what : subject.formula;
  }

  private computedNamed(formula: string) {
    return this.table.series.flatMap(({ value, computed }) => (computed && value === formula ? [{ value, computed }] : []))[0] ?? null;
  }

  /** What a series of several tanks is called. */
  private seriesName(formula: string): string {
    const shown = this.computedNamed(formula);
    return (shown && computedWords(shown, shown.computed, this.context.note, this.protocol).name) ?? formula;
  }

  private subjectHead(subject: SummarySubject, several: boolean): Html {
    if (this.table.kind === 'tanks') return escapeHtml(capital(this.what(subject)));
    const what = several ? `: ${this.what(subject)}` : '';
    if (subject.kind === 'gap') return escapeHtml(capital(`${this.gapName()}${what}`));
    if (subject.place === null) return escapeHtml(capital(`${this.seriesName(subject.formula)}${what}`));
    return `${this.placeHead(subject.place)}${escapeHtml(what)}`;
  }

  private placeHead(place: string): Html {
    const tank = this.protocol.tanks.find((each) => each.id === place) ?? null;
    return `${tank ? tankMark(tank) : ''}${escapeHtml(capital(placeWords(this.protocol, place)))}`;
  }

  private gapName(): string {
    return (['treatment', 'control'] as const).every((role) => tanksOfRole(this.protocol, role).length === 1) ? this.words.gap : this.words.gapOfMeans;
  }

  private head(): Html {
    const { columns, kind } = this.table;
    const first = { phases: this.words.phaseHead, windows: this.words.stretch, 'before-after': this.words.stretch, times: this.words.time, tanks: this.words.tank }[kind];
    const several = new Set(columns.map((column) => this.what(column.subject))).size > 1;
    const top: Html[] = [element('th', { scope: 'col', rowspan: 2 }, escapeHtml(first))];
    const groups: SummaryColumn[][] = [];
    for (const column of columns) {
      const last = groups.at(-1);
      if (last && last[0]!.subject === column.subject) last.push(column);
      else groups.push([column]);
    }
    for (const group of groups) top.push(element('th', { scope: 'colgroup', colspan: group.length, class: 'evenwater-group' }, this.subjectHead(group[0]!.subject, several)));
    const below = columns.map((column, index) => element('th', { scope: 'col', class: this.startsGroup(index) ? 'evenwater-group' : null },
      escapeHtml(`${this.words.function(column.function)}${this.units[index] === null ? '' : ` (${this.units[index]!})`}`)));
    return element('tr', {}, ...top) + element('tr', {}, ...below);
  }

  private startsGroup(index: number): boolean {
    return index === 0 || this.table.columns[index]!.subject !== this.table.columns[index - 1]!.subject;
  }

  private rowHead(row: SummaryRow): Html {
    switch (row.kind) {
      case 'time': return element('time', { datetime: formatInstant(row.instant!, this.protocol.zone) }, escapeHtml(this.time(row.instant!)));
      case 'tank': return this.protocol.tanks.some((tank) => tank.id === row.name) || row.name === 'room' ? this.placeHead(row.name) : escapeHtml(capital(this.seriesName(row.name)));
      case 'gap': return escapeHtml(capital(this.gapName()));
      case 'before': return escapeHtml(capital(this.words.before(this.moment())));
      case 'after': return escapeHtml(capital(this.words.after(this.moment())));
      case 'change': return escapeHtml(capital(this.words.change));
      case 'window': return escapeHtml(capital(row.window?.phase != null ? this.words.phase(row.window.phase) : this.span(row)));
    }
  }

  private span({ window }: SummaryRow): string { return window ? this.words.span(this.time(window.from), this.time(window.to)) : this.words.whole; }

  /** `22:00`, with its date where the table is about more than a day. */
  private time(instant: Instant): string {
    const times = this.table.rows.flatMap((row) => [row.instant, row.window?.from, row.window?.to]).filter((each) => each != null);
    const long = Math.max(...times) - Math.min(...times) > 24 * hour;
    const clock = formatClock(instant, this.protocol.zone);
    return long ? `${formatDate(instant, this.protocol.zone)} ${clock}` : clock;
  }

  /** The moment between before and after, as readers call it. */
  private moment(): string {
    const name = this.table.moment?.name ?? '';
    const event = this.protocol.events.find((each) => each.id === name);
    return this.words.moments[name] ?? (event ? this.words.event(event.what) : this.table.moment ? this.time(this.table.moment.instant) : name);
  }

  private cell(cell: SummaryCell, row: SummaryRow, index: number): Html {
    const classes = `evenwater-number${this.startsGroup(index) ? ' evenwater-group' : ''}`;
    if (cell.formula === '') return element('td', { class: classes }, '');
    if (!cell.value) return element('td', { class: `${classes} evenwater-none` }, this.dash(cell));
    const signed = row.kind === 'gap' || row.kind === 'change' || this.table.columns[index]!.subject.kind === 'gap';
    const title = this.context.target === 'post' ? null : formulaWords(this.context, cell.formula);
    return element('td', { class: classes }, dataHtml(this.shown(cell.value, index, signed), machineValue(cell.value, contextOf(this.context.note)), cell.formula, title));
  }

  private shown(value: FormulaValue, column: number, signed: boolean): string {
    const text = showValue(value, contextOf(this.context.note), { withUncertainty: true, withUnit: this.units[column] === null, ...fewerDecimals(value) });
    if (value.type !== 'number') return text;
    const mark = text.includes(',') ? ',' : '.';
    // A narrow cell breaks before its ±, never behind it; an interval narrower than the last digit shown is not nothing.
    const honest = printedMinus(text).replace('± ', '±\u00a0')
      .replace(/(±\u00a0)0(?:[.,](0*)0)?(?=$|\s)/u, (_, sign: string, zeros: string | undefined) => (zeros === undefined ? `${sign}<1` : `${sign}<0${mark}${zeros}1`));
    return signed && value.value > 0 && !/^[+−]/u.test(honest) && /[1-9]/u.test(honest.split('±')[0]!) ? `+${honest}` : honest;
  }

  /** A dash with a letter that leads to the reason below the table. */
  private dash(cell: SummaryCell): Html {
    const reason = cell.reason ? problemSentence(cell.reason, this.context.problemLanguage) : this.words.noValue;
    if (!this.notes.includes(reason)) this.notes.push(reason);
    const letter = noteLetter(this.notes.indexOf(reason) + 1);
    return `${element('span', { title: reason, 'aria-label': this.words.noValue }, '–')}${element('sup', { class: 'evenwater-note-letter' }, letter)}`;
  }

  private caption(): string {
    const { table, words } = this;
    const quantities = [...new Set(table.columns.map((column) => this.what(column.subject)))];
    const said = [words.caption({ quantities: capital(words.list(quantities)), rows: table.kind, moment: table.kind === 'before-after' ? this.moment() : null })];
    if (table.caption !== null) said.unshift(/[.!?…]$/u.test(table.caption) ? table.caption : `${table.caption}.`);
    const stretches = table.rows.filter((row) => row.window !== null);
    if (stretches.length > 0) said.push(words.stretches(stretches.map((row) => this.stretch(row))));
    else if (table.kind === 'tanks') said.push(...this.readingsByTank());
    const names = table.columns.map((column) => column.function);
    const dark = stretches.some((row) => row.window!.opensAtLightsOff);
    if (names.some((name) => name.startsWith('percent-'))) said.push(words.percentBase);
    if (dark && stretches.length > 1) said.push(words.lightsOff);
    if (table.kind === 'before-after' && !dark && table.moment) said.push(words.sharedMoment(this.time(table.moment.instant)));
    const sources = table.rows.flatMap((row) => row.cells.flatMap(({ value, contrast }) => (value?.type === 'number' && !contrast ? intervalSource(value) ?? [] : [])));
    if (sources.length > 0) said.push(sources.every((source) => source === 'instruments') ? words.uncertainty : words.uncertaintyOfFits);
    if (table.rows.some((row) => row.cells.some((cell) => cell.contrast))) said.push(this.gapName() === words.gap ? words.contrast : words.contrastOfTanks);
    return said.join(' ');
  }

  private stretch(row: SummaryRow): StretchFacts {
    const { window, kind } = row;
    const name = kind === 'before' ? this.words.before(this.moment()) : kind === 'after' ? this.words.after(this.moment()) : window!.phase === null ? '' : this.words.phase(window!.phase);
    return { name, from: this.time(window!.from), to: this.time(window!.to), readings: row.readings };
  }

  private readingsByTank(): string[] {
    const counts = this.table.rows.flatMap((row) => (row.readings ? [row.readings] : []));
    const { window } = this.table;
    const said = window ? [capital(`${this.words.span(this.time(window.from), this.time(window.to))}, ${dateWords(window.from, this.protocol)}.`)] : [];
    return counts.length === 0 ? said : [...said, this.words.readings({ least: Math.min(...counts.map((each) => each.least)), most: Math.max(...counts.map((each) => each.most)) })];
  }
}

export function summaryHtml(blockIndex: number, context: RenderContext): Html {
  const { note } = context;
  const table = note.drawn.get(blockIndex)?.summary;
  if (!table || !note.protocol) return element('p', { class: 'evenwater-empty' }, escapeHtml(summaryWords(context.language).nothing));
  return new SummaryPrinter(table, context, note.protocol).print(context.tableNumber.get(blockIndex) ?? null);
}
