// A readings block as tables, one a quantity: what was read, the step since the reading before, its rate per hour, and
// treatment minus control. Flags stay visible: left out is struck, doubtful is marked, a correction shows its first value.
import { unitWords } from '../words/units.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Cell, ReadingColumn, ReadingRow, ReadingsTable } from '../readings/types.ts';
import type { Series } from '../dataset/types.ts';
import { entryAt, previousReading, isUsable } from '../dataset/series.ts';
import { hour, type Instant } from '../time/instant.ts';
import { formatClock, formatDate, formatInstant } from '../time/text.ts';
import { capital, placeWords, quantityWords } from '../charts/panels.ts';
import { dateWords, decimalText } from '../charts/chartWords.ts';
import type { Unit } from '../quantities/types.ts';
import type { PageWords } from '../words/page.ts';
import { dataHtml, tableQuantities, tanksOfRole, type RenderContext } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { cellHtml } from './readingCell.ts';
import { slotMarks, type SlotMarks } from './slotMarks.ts';
import { tankMark } from './tankMark.ts';
import { tableHtml } from './table.ts';

/** More rows than this are shown as their beginning and end; the data section of a post holds all of them. */
const mostRows = 120;
const shownAtEnds = 40;

/** The instant as a formula writes it: with an offset only where the local time alone would be ambiguous. */
function formulaInstant(instant: Instant, protocol: Protocol): string {
  const text = formatInstant(instant, protocol.zone);
  const changes = protocol.zone.offsetAt(instant - 3 * hour) !== protocol.zone.offsetAt(instant + 3 * hour);
  const local = text.slice(0, text.slice(17, 19) === '00' ? 16 : 19);
  return changes ? `${local}${text.slice(19)}` : local;
}

/** Machine form of a number: no noise of binary arithmetic beyond twelve digits. */
export function machineNumber(value: number): string {
  const text = Number(value.toPrecision(12));
  return String(text === 0 ? 0 : text);
}

function signed(value: number, decimals: number, protocol: Protocol): string {
  const text = decimalText(value, decimals, protocol);
  return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

interface Column { readonly column: ReadingColumn; readonly position: number; readonly series: Series | null; readonly decimals: number }

function decimalsOf(table: ReadingsTable, position: number): number {
  return Math.min(6, table.rows.reduce((most, row) => Math.max(most, row.cells[position]?.state.decimals ?? 0), 0));
}

function stepCells(each: Column, instant: Instant | null, previousRow: Instant | null, protocol: Protocol, { readings: words }: PageWords): [Html, Html] {
  const blank = element('td', { class: 'evenwater-number' }, '');
  const { series } = each;
  if (!series || instant === null) return [blank, blank];
  const index = entryAt(series, instant);
  if (index === null || !isUsable(series, index)) return [blank, blank];
  const before = previousReading(series, index);
  if (before === null) return [blank, blank];
  const span = series.times[index]! - series.times[before]!;
  if (span <= 0) return [blank, blank];
  const change = series.values[index]! - series.values[before]!;
  const window = `${formulaInstant(series.times[before]!, protocol)}..${formulaInstant(series.times[index]!, protocol)}`;
  const since = previousRow !== null && series.times[before]! < previousRow
    ? element('span', { class: 'evenwater-flag' }, escapeHtml(words.since(formatClock(series.times[before]!, protocol.zone)))) : '';
  const rate = (change / span) * hour;
  const rateDecimals = each.decimals + (span > hour ? 1 : 0);
  return [
    element('td', { class: 'evenwater-number evenwater-step' }, dataHtml(signed(change, each.decimals, protocol), machineNumber(change), `change(${series.id}, ${window})`), since),
    element('td', { class: 'evenwater-number evenwater-step' }, dataHtml(signed(rate, rateDecimals, protocol), machineNumber(rate), `rate(${series.id}, ${window})`)),
  ];
}

/** Mean over the tanks of a role at an instant; null unless every one has a value then. */
function roleMean(context: RenderContext, tanks: readonly string[], quantity: string, unit: string, instant: Instant): number | null {
  if (tanks.length === 0) return null;
  let sum = 0;
  for (const tank of tanks) {
    const series = context.note.dataset.series.get(`${tank}.${quantity}`);
    const index = series ? entryAt(series, instant) : null;
    if (!series || index === null || !isUsable(series, index) || series.unit.symbol !== unit) return null;
    sum += series.values[index]!;
  }
  return sum / tanks.length;
}

/** One quantity's table before its rows: which columns it has, and whether the tanks are compared. */
interface Layout {
  readonly table: ReadingsTable;
  readonly quantity: string;
  readonly columns: readonly Column[];
  readonly unit: Unit | null;
  /** No column holds a number: there are no steps then. */
  readonly wordsOnly: boolean;
  /** The tanks whose means the last column compares; null where there is no such column. */
  readonly compared: { readonly treatment: readonly string[]; readonly control: readonly string[]; readonly unit: Unit } | null;
  /** Columns of the table as HTML counts them. */
  readonly width: number;
  readonly context: RenderContext;
  readonly protocol: Protocol;
  readonly marks: SlotMarks;
}

function layoutOf(table: ReadingsTable, quantity: string, context: RenderContext, protocol: Protocol, marks: SlotMarks): Layout {
  const columns: Column[] = table.columns.map((column, position) => ({ column, position })).filter((each) => each.column.quantity === quantity)
    .map((each) => ({ ...each, series: context.note.dataset.series.get(each.column.id) ?? null, decimals: decimalsOf(table, each.position) }));
  const unit = columns[0]!.series?.unit ?? columns[0]!.column.unit;
  const wordsOnly = columns.every((each) => table.rows.every((row) => row.cells[each.position]?.state.kind !== 'number'));
  const treatment = tanksOfRole(protocol, 'treatment');
  const control = tanksOfRole(protocol, 'control');
  const places = new Set(columns.map((each) => each.column.place));
  const compares = !wordsOnly && treatment.length > 0 && control.length > 0 && [...treatment, ...control].every((tank) => places.has(tank));
  const compared = compares && unit !== null ? { treatment, control, unit } : null;
  const width = 1 + columns.length * (wordsOnly ? 1 : 3) + (compared ? 1 : 0);
  return { table, quantity, columns, unit, wordsOnly, compared, width, context, protocol, marks };
}

/** Two lines of heads: the tanks, and what stands below each. */
function headHtml({ columns, wordsOnly, compared, context, protocol }: Layout): Html {
  const words = context.words.readings;
  const top: Html[] = [element('th', { scope: 'col', rowspan: 2, class: 'evenwater-time' }, words.time)];
  const below: Html[] = [];
  for (const each of columns) {
    const tank = protocol.tanks.find((one) => one.id === each.column.place) ?? null;
    top.push(element('th', { scope: 'colgroup', colspan: wordsOnly ? 1 : 3, class: 'evenwater-group' },
      tankMark(tank), escapeHtml(capital(placeWords(protocol, each.column.place))), each.column.instrument === null ? '' : escapeHtml(`, ${each.column.instrument}`)));
    below.push(element('th', { scope: 'col', class: 'evenwater-group' }, words.reading));
    if (!wordsOnly) below.push(element('th', { scope: 'col' }, words.step), element('th', { scope: 'col' }, words.perHour));
  }
  if (compared) {
    top.push(element('th', { scope: 'colgroup', class: 'evenwater-group' }, words.difference));
    below.push(element('th', { scope: 'col', class: 'evenwater-group' }, words.treatmentMinusControl));
  }
  return element('tr', {}, ...top) + element('tr', {}, ...below);
}

const changed = (cell: Cell): boolean => cell.leftOut || cell.doubtful || cell.earlier.length > 0 || cell.state.kind === 'missing';

/** True where a row's remark is told below this quantity's table: it has a flag here, or none anywhere. */
function remarkBelongs(row: ReadingRow, columns: readonly Column[]): boolean {
  if (row.remark === null || row.remark === '') return false;
  const flaggedHere = columns.some((each) => {
    const cell = row.cells[each.position];
    return cell && (changed(cell) || cell.state.kind === 'unreadable');
  });
  return flaggedHere || !row.cells.some(changed);
}

/** The row's time, with what it was before a correction, the letter of its remark, and how far off the plan it is. */
function timeCell(row: ReadingRow, letter: Html, { context, protocol, marks }: Layout): Html {
  const time = row.instant === null ? element('span', { class: 'evenwater-loud' }, escapeHtml(row.timeText))
    : element('time', { datetime: formatInstant(row.instant, protocol.zone) }, escapeHtml(formatClock(row.instant, protocol.zone)));
  const earlier = row.earlierTimes.length > 0 ? element('span', { class: 'evenwater-flag evenwater-corrected' }, `${context.words.readings.first} `, element('del', {}, escapeHtml(row.earlierTimes.join(' → ')))) : '';
  return element('th', { scope: 'row', class: 'evenwater-time' }, time, earlier, letter, marks.besideTime(row));
}

/** Treatment minus control at the row's time; empty where a tank has no reading then. */
function differenceCell(instant: Instant | null, { columns, quantity, compared, context, protocol }: Layout): Html {
  const mean = (tanks: readonly string[]): number | null => (instant === null ? null : roleMean(context, tanks, quantity, compared!.unit.symbol, instant));
  const [a, b] = [mean(compared!.treatment), mean(compared!.control)];
  const at = instant === null ? '' : formulaInstant(instant, protocol);
  const decimals = Math.max(...columns.map((each) => each.decimals));
  return element('td', { class: 'evenwater-number evenwater-group evenwater-difference' }, a === null || b === null ? ''
    : dataHtml(signed(a - b, decimals, protocol), machineNumber(a - b), `at(treatment.${quantity}, ${at}) - at(control.${quantity}, ${at})`));
}

function rowHtml(row: ReadingRow, previousRow: Instant | null, letter: Html, layout: Layout): Html {
  const { context, protocol } = layout;
  const cells: Html[] = [timeCell(row, letter, layout)];
  for (const each of layout.columns) {
    const cell = row.cells[each.position];
    cells.push(element('td', { class: 'evenwater-number evenwater-group' }, cell ? cellHtml(cell, protocol, context.words) : ''));
    if (!layout.wordsOnly) cells.push(...stepCells(each, row.instant, previousRow, protocol, context.words));
  }
  if (layout.compared) cells.push(differenceCell(row.instant, layout));
  return element('tr', {}, ...cells);
}

/** The rows with a line for each new day and for what was not read; of a long table its beginning and end. Remarks go below. */
function bodyOf(layout: Layout): { rows: Html[]; notes: Html[] } {
  const { table, context, protocol, marks, width } = layout;
  const dated = new Set(table.rows.flatMap((row) => (row.instant === null ? [] : [formatDate(row.instant, protocol.zone)]))).size > 1;
  const notes: Html[] = [];
  const rows: Html[] = [];
  let previousRow: Instant | null = null;
  let date = '';
  if (table === context.note.tables.find((each) => each.file === null)) rows.push(marks.behind(null, width));
  table.rows.forEach((row, position) => {
    const skip = table.rows.length > mostRows && position >= shownAtEnds && position < table.rows.length - shownAtEnds;
    if (skip) {
      if (position === shownAtEnds) rows.push(element('tr', { class: 'evenwater-skipped' }, element('td', { colspan: width }, escapeHtml(context.words.readings.rowsBetween(table.rows.length - 2 * shownAtEnds)))));
      previousRow = row.instant ?? previousRow;
      return;
    }
    const today = row.instant === null ? date : formatDate(row.instant, protocol.zone);
    if (dated && today !== date && row.instant !== null) rows.push(element('tr', { class: 'evenwater-date' }, element('th', { scope: 'rowgroup', colspan: width }, escapeHtml(dateWords(row.instant, protocol)))));
    date = today;
    let letter = '';
    if (remarkBelongs(row, layout.columns)) {
      notes.push(element('li', {}, escapeHtml(row.remark!)));
      letter = element('sup', { class: 'evenwater-note-letter' }, noteLetter(notes.length));
    }
    rows.push(rowHtml(row, previousRow, letter, layout), marks.behind(row, width));
    previousRow = row.instant ?? previousRow;
  });
  return { rows, notes };
}

function quantityTable(layout: Layout, number: number | null): Html {
  const { table, quantity, unit, wordsOnly, compared, context, protocol } = layout;
  const print = unit && unit.print !== '1' && unit.kind !== 'ph' ? unitWords(unit.print, context.language) : '';
  const caption = context.words.readings.caption({
    what: capital(quantityWords(protocol, quantity)), unit: print, name: table.name, words: wordsOnly, compares: compared !== null, differenceUnit: print === '°C' ? 'K' : null,
  });
  return tableHtml({ number, words: context.words, caption, head: headHtml(layout), ...bodyOf(layout), className: 'evenwater-readings' });
}

/** a, b, … z, aa, ab. */
export function noteLetter(number: number): string {
  let text = '';
  for (let rest = number; rest > 0; rest = Math.floor((rest - 1) / 26)) text = String.fromCharCode(97 + ((rest - 1) % 26)) + text;
  return text;
}

export function readingsTablesHtml(blockIndex: number, context: RenderContext): Html {
  const { note } = context;
  const table = note.tables.find((each) => each.block === blockIndex);
  if (!table || !note.protocol) return '';
  if (table.columns.length === 0 || table.rows.length === 0) {
    const file = table.file;
    const words = context.words.readings;
    const reason = file === null ? words.none : file.state === 'not-loaded' ? words.fileNotLoaded(file.path) : file.state === 'missing' ? words.fileMissing(file.path) : words.fileEmpty(file.path);
    return element('p', { class: 'evenwater-empty' }, escapeHtml(reason));
  }
  const first = context.tableNumber.get(blockIndex) ?? null;
  const marks = slotMarks(note, note.protocol, context.language);
  return tableQuantities(note, blockIndex).map((quantity, index) => quantityTable(layoutOf(table, quantity, context, note.protocol!, marks), first === null ? null : first + index)).join('');
}
