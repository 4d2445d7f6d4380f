// Turns the lines of a data file into rows of readings. A line that cannot be read is kept and listed, never dropped.
import type { Block } from '../../note/syntax.ts';
import type { SourceRange } from '../../problems/problem.ts';
import type { Protocol } from '../../protocol/types.ts';
import type { Zone } from '../../time/instant.ts';
import { readOffset } from '../../time/text.ts';
import { loadZone } from '../../time/zone.ts';
import { readCell } from '../cell.ts';
import type { HeadReading } from '../heads.ts';
import type { Reporter } from '../reporter.ts';
import type { Cell, ReadingRow } from '../types.ts';
import type { FileKeys, LocalText } from './fileKeys.ts';
import { bareText, isGap, isMuddled } from './fileCell.ts';
import { isBlank, type FileRow } from './dataCells.ts';
import { detectDecimal, isTooWide, type DecimalMark } from './layout.ts';
import { addLines, badChoice, choice } from './keyFixes.ts';
import { dateOrders, isPlainOrder, possibleOrders, readStamp, type DateOrder, type Stamp } from './stamps.ts';
import { instantOfStamp } from './stampTime.ts';

/** A column of readings and its position in the file; -1 when the file has no such column. */
export interface FileColumn { readonly at: number; readonly head: HeadReading; readonly name: string }

export interface FileRowsInput {
  readonly rows: readonly FileRow[];
  /** How many columns the heads give the file; null without heads. */
  readonly width: number | null;
  readonly columns: readonly FileColumn[];
  /** Positions of the column (or the two columns) that give the time. */
  readonly time: readonly number[] | null;
  readonly remark: number | null;
  readonly keys: FileKeys;
  readonly protocol: Protocol;
  /** Where every cell is said to stand: the path in the note. */
  readonly range: SourceRange;
  readonly findings: Map<string, string>;
  readonly reporter: Reporter;
  readonly from: LocalText;
  readonly block: Block;
}

/** Reads the rows under the heads. What was detected goes into `findings`; what cannot be read is listed by line. */
export function readFileRows(input: FileRowsInput): ReadingRow[] {
  const { reporter, from } = input;
  const rows = input.rows.filter((row) => !isBlank(row));
  const stampText = (row: FileRow): string => (input.time ?? []).map((at) => row.cells[at] ?? '').join(' ').trim();
  const stamps = rows.map((row) => (input.time ? readStamp(stampText(row)) : null));
  const order = dateOrder(stamps.filter((stamp) => stamp !== null), input);
  const zone = fileZone(stamps, input);
  const decimal = decimalMark(rows, input);
  const lost = new Map<string, number[]>();
  const lose = (reason: string, line: number): void => { const lines = lost.get(reason) ?? []; lines.push(line); lost.set(reason, lines); };
  const unreadable = new Map<string, number[]>();
  const read = rows.map((row, index): ReadingRow => {
    const text = stampText(row);
    // With more cells than heads nobody knows which cell belongs to which head.
    const meant = isTooWide(row, input.width) ? { instant: null, reason: 'width' }
      : input.time && order && zone ? instantOfStamp(stamps[index] ?? null, order, zone) : { instant: null, reason: null };
    if (meant.reason) lose(meant.reason, row.line);
    const cells = input.columns.map((column): Cell => {
      const written = column.at < 0 ? '' : (row.cells[column.at] ?? '').trim();
      const cell = readFileCell(written, column.head, decimal, input.range);
      if (cell.state.kind === 'unreadable') {
        const lines = unreadable.get(column.head.column.id) ?? [];
        lines.push(row.line);
        unreadable.set(column.head.column.id, lines);
      }
      return cell;
    });
    const remark = input.remark === null ? null : (row.cells[input.remark] ?? '').trim() || null;
    return {
      range: input.range, timeRange: input.range, timeText: text, instant: meant.instant, firstInstant: meant.instant, earlierTimes: [],
      cells, line: row.line, remark, remarkRange: remark === null ? null : input.range,
    };
  });
  for (const [reason, lines] of lost) reporter.add({ code: 'data-file-rows', range: from.range, args: { path: from.text, reason, count: lines.length, ...lineList(lines) } });
  for (const [head, lines] of unreadable) reporter.add({ code: 'data-file-cells', range: from.range, args: { path: from.text, head, count: lines.length, ...lineList(lines) } });
  return read;
}

/** `3`, `7-12`: line numbers, runs shortened; how many runs there are beyond the first forty. */
export function lineList(lines: readonly number[]): { lines: string[]; more: number | '' } {
  const parts: string[] = [];
  for (let index = 0; index < lines.length; index += 1) {
    const first = lines[index]!;
    while (index + 1 < lines.length && lines[index + 1] === lines[index]! + 1) index += 1;
    parts.push(first === lines[index] ? String(first) : `${first}-${lines[index]!}`);
  }
  return { lines: parts.slice(0, 40), more: parts.length > 40 ? parts.length - 40 : '' };
}

function readFileCell(written: string, head: HeadReading, decimal: DecimalMark, range: SourceRange): Cell {
  const scale = head.measure?.scale ?? null;
  if (decimal === '.' && scale === null && /^-?\d+(?:\.\d+)?$/u.test(written)) {
    const { state, earlier } = readCell(written, { scale, decimal });
    return { range, text: written, state, earlier, leftOut: false, doubtful: false };
  }
  const text = bareText(written);
  const missing = isGap(text);
  const muddled = !missing && !scale && isMuddled(text, decimal);
  const reading = readCell(missing ? '-' : muddled ? `${text} ` : text.replace(/\s+/gu, scale ? '-' : ' '), { scale, decimal });
  const state = missing ? { ...reading.state, text: written } : reading.state;
  return { range, text: written, state, earlier: reading.earlier, leftOut: reading.leftOut, doubtful: reading.doubtful };
}

/** The order of day, month and year: as written in the block, or the only one possible; two possible ones ask. */
function dateOrder(stamps: readonly Stamp[], input: FileRowsInput): DateOrder | null {
  const typed = choice(input.keys, 'date order', dateOrders, input.reporter);
  if (typed) return typed;
  const orders = possibleOrders(stamps);
  if (orders.length > 1) {
    const schedule = input.protocol.schedule;
    const inRun = (order: DateOrder): number => stamps.filter((stamp) => {
      const { instant } = instantOfStamp(stamp, order, input.protocol.zone);
      return instant !== null && schedule !== null && instant >= schedule.start && (schedule.end === null || instant <= schedule.end);
    }).length;
    const counts = orders.map(inRun);
    const likely = counts.filter((count) => count > 0).length === 1 ? counts.findIndex((count) => count > 0) : -1;
    const example = stamps.find((stamp) => stamp.date !== null)?.date?.parts.join('/') ?? '';
    input.reporter.add({
      code: 'date-order-unclear', range: input.from.range, args: { path: input.from.text, example, orders },
      fixes: orders.flatMap((order, index) => addLines(input.block, [`date order: ${order}`], 'write-file-keys', { preferred: index === likely })),
    });
    return null;
  }
  const order = orders[0] ?? 'year-month-day';
  if (!isPlainOrder(stamps)) input.findings.set('date order', order);
  return order;
}

function fileZone(stamps: readonly (Stamp | null)[], input: FileRowsInput): Zone | null {
  const typed = input.keys.texts.get('time zone');
  if (typed) {
    const offset = readOffset(typed.text);
    const zone = offset !== null ? { name: typed.text, offsetAt: () => offset } : loadZone(typed.text);
    if (!zone) badChoice('time zone', typed, [input.protocol.zone.name, 'UTC'], input.reporter);
    return zone;
  }
  if (stamps.some((stamp) => stamp !== null && stamp.offset === null)) input.findings.set('time zone', input.protocol.zone.name);
  return input.protocol.zone;
}

function decimalMark(rows: readonly FileRow[], input: FileRowsInput): DecimalMark {
  const typed = input.keys.texts.get('decimal');
  if (typed) {
    const marks: Readonly<Record<string, DecimalMark>> = { '.': '.', ',': ',', point: '.', comma: ',' };
    const mark = marks[typed.text.toLowerCase()];
    if (mark) return mark;
    badChoice('decimal', typed, ['point', 'comma'], input.reporter);
  }
  const positions = input.columns.filter((column) => column.at >= 0 && !column.head.measure?.scale).map((column) => column.at);
  const found = detectDecimal(rows.flatMap((row) => positions.map((at) => row.cells[at] ?? '')));
  if (found === 'unclear') {
    input.reporter.add({
      code: 'decimal-unclear', range: input.from.range, args: { path: input.from.text },
      fixes: [...addLines(input.block, ['decimal: comma'], 'write-file-keys'), ...addLines(input.block, ['decimal: point'], 'write-file-keys')],
    });
    return '.';
  }
  if (found && !typed) input.findings.set('decimal', found === ',' ? 'comma' : 'point');
  return found ?? '.';
}
