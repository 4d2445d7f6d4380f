// Looks at pasted cells or a logger's file and proposes how to import them. Everything that was detected can be changed, and
// every line that cannot be read as a row is said with its number and the reason.
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { readCell } from '../readings/cell.ts';
import { decodeText, detectEncoding, type Encoding } from '../readings/file/decode.ts';
import { bareText, isGap, isMuddled } from '../readings/file/fileCell.ts';
import { unitsUnder, type UnitLine } from '../readings/file/fileUnits.ts';
import { isBlank, type FileRow } from '../readings/file/dataCells.ts';
import { delimiters, detectDecimal, detectDelimiter, detectHeads, headNames, isTooWide, numberedColumns, splitRows, type DecimalMark } from '../readings/file/layout.ts';
import { proposeColumns } from '../readings/file/propose.ts';
import { possibleOrders, readStamp, type DateOrder, type Stamp } from '../readings/file/stamps.ts';
import { instantOfStamp } from '../readings/file/stampTime.ts';
import { measureFor, splitHead } from '../readings/heads.ts';
import { day, type Instant, type Zone } from '../time/instant.ts';
import { formatInstant, readOffset } from '../time/text.ts';
import { instantOf, loadZone, wallTimeOf } from '../time/zone.ts';
import type { Message } from './edit.ts';
import { importDoubts, readAlready, timesTwice } from './importDoubts.ts';
import type { ImportChoices, ImportColumn, ImportComplaint, ImportProposal, ImportRow } from './importProposal.ts';
import { cleanRemark } from './logRow.ts';

/** Looks at pasted text or a file's bytes. Null when nothing in it is a table. */
export function proposeImport(source: Uint8Array | string, note: Note, choices: ImportChoices = {}): ImportProposal | null {
  const { protocol } = note;
  const encoding: Encoding = typeof source === 'string' ? 'utf-8' : detectEncoding(source);
  const text = typeof source === 'string' ? source.replace(/^\ufeff/u, '') : decodeText(source, encoding);
  const delimiter = choices.delimiter ?? detectDelimiter(text);
  if (!protocol || !delimiter) return null;
  const layout = layoutOf(splitRows(text, delimiters[delimiter]), choices, protocol);
  const { names, columns, body } = layout;
  if (body.length === 0) return null;

  const place = placesIn(names, columns);
  const targets = place.values.map((each): Target => ({ ...each, scale: scaleOf(each.head, protocol) }));
  const stamps = body.map((row) => (place.time ? readStamp(stampText(row, place.time)) : null));
  const read = stamps.filter((stamp) => stamp !== null);
  const clockOnly = read.length > 0 && read.every((stamp) => stamp.date === null);
  const dateOrders = choices.dateOrder ? [choices.dateOrder] : possibleOrders(read);
  const dateOrder = dateOrders.length === 1 ? dateOrders[0]! : null;
  const numeric = targets.filter((each) => each.scale === null);
  const marks = detectDecimal(body.flatMap((row) => numeric.map((each) => row.cells[each.at] ?? '')));
  const decimal = choices.decimal ?? (marks === 'unclear' ? null : marks);
  const timeZone = choices.timeZone ?? protocol.zone.name;

  const asks: Message[] = [];
  if (!place.time || targets.length === 0) asks.push({ code: 'import-unmapped', args: {} });
  if (dateOrders.length > 1) asks.push({ code: 'date-order-unclear', args: { example: read.find((stamp) => stamp.date)?.date?.parts.join('/') ?? '' } });
  if (marks === 'unclear' && !choices.decimal) asks.push({ code: 'decimal-unclear', args: {} });
  const width = layout.headerLine > 0 ? names.length : null;
  const reader: RowReader = { targets, remarks: place.remarks, width, clockOnly, dateOrder, decimal: decimal ?? '.', zone: (timeZone === protocol.zone.name ? null : zoneNamed(timeZone)) ?? protocol.zone, home: protocol.zone, delimiter: delimiters[delimiter], settled: place.time !== null && dateOrders.length <= 1 };
  const complaints: ImportComplaint[] = [];
  const rows = body.map((row, index) => readRow(row, stamps[index] ?? null, place.time ? stampText(row, place.time) : '', reader, complaints));
  complaints.push(...timesTwice(rows), ...readAlready(rows, targets.map((each) => each.head), note));
  return {
    encoding, delimiter, decimal, dateOrder, dateOrders, timeZone, clockOnly, offsets: read.every((stamp) => stamp.offset !== null), headerLine: layout.headerLine,
    firstLines: layout.firstLines, linesAbove: layout.linesAbove, names, columns, heads: targets.map((each) => each.head), rows,
    complaints: complaints.sort((a, b) => a.line - b.line), doubts: importDoubts(targets.map((each) => each.head), rows, protocol), asks,
  };
}

/** True when nothing is to ask and nothing would be left behind: every column has its place, its values can be, and every line is simply a row. */
export function isSure(proposal: ImportProposal): boolean {
  const { asks, complaints, doubts, linesAbove } = proposal;
  return asks.length === 0 && complaints.length === 0 && doubts.length === 0 && linesAbove === 0 && leftOut(proposal).length === 0;
}

/** Columns of the file that are not imported. */
export function leftOut({ columns, names }: ImportProposal): string[] {
  const placed = new Set(columns.filter((column) => column.to !== null).flatMap((column) => [column.from, ...column.from.split(' + ')]));
  return names.filter((name) => !placed.has(name));
}

/** Where the heads stand, what each column is proposed to hold, and the rows under them. */
function layoutOf(rows: readonly FileRow[], choices: ImportChoices, protocol: Protocol) {
  const wanted = (choices.columns ?? []).flatMap((column) => [column.from, ...column.from.split(' + ')]);
  const head = choices.headerLine === 0 ? -1 : choices.headerLine === undefined ? detectHeads(rows, wanted).at : rows.findIndex((row) => row.line === choices.headerLine);
  const names = head >= 0 ? headNames(rows[head]!) : numberedColumns(rows);
  const unitLine = unitsUnder(rows, head);
  const body = rows.slice((unitLine?.at ?? head) + 1).filter((row) => !isBlank(row));
  return {
    names, body, headerLine: head < 0 ? 0 : rows[head]!.line,
    columns: choices.columns ?? proposedColumns(names, unitLine, body, protocol),
    firstLines: rows.slice(0, 30).filter((row) => !isBlank(row)).map((row) => ({ line: row.line, text: row.cells.map((cell) => cell.trim()).join('  ') })),
    linesAbove: head < 0 ? 0 : rows.slice(0, head).filter((row) => !isBlank(row)).length,
  };
}

/** Proposals by the heads; the time, where no head names it, by the cells: stamps, or dates in one column and clock times in another. */
function proposedColumns(names: readonly string[], unitLine: UnitLine | null, body: readonly FileRow[], protocol: Protocol): ImportColumn[] {
  const plain = proposeColumns(names, protocol, unitLine?.units).map(({ from, to }): ImportColumn => ({ from, to }));
  const sample = body.slice(0, 500);
  const mostly = (index: number, kind: (stamp: Stamp) => boolean): boolean => sample.filter((row) => {
    const stamp = readStamp(row.cells[index] ?? '');
    return stamp !== null && kind(stamp);
  }).length * 2 > sample.length;
  const named = plain.find((each) => each.to === 'time')?.from ?? null;
  if (named !== null && !names.includes(named)) return plain;
  const at = named !== null ? names.indexOf(named) : names.findIndex((_, index) => mostly(index, () => true));
  if (at < 0) return plain;
  const clock = mostly(at, (stamp) => stamp.clock === null) ? names.findIndex((_, index) => index !== at && mostly(index, (stamp) => stamp.date === null)) : -1;
  const time: ImportColumn = { from: clock < 0 ? names[at]! : `${names[at]!} + ${names[clock]!}`, to: 'time' };
  return plain.flatMap((each) => (each.from === names[at] ? [time] : clock >= 0 && each.from === names[clock] ? [] : [each]));
}

/** Positions of the columns that give the time, the remarks and the readings; columns that the file does not have are left out. */
function placesIn(names: readonly string[], columns: readonly ImportColumn[]) {
  const position = (name: string): number => names.indexOf(name);
  const from = columns.find((column) => column.to === 'time')?.from;
  const time = from === undefined ? [] : (names.includes(from) ? [from] : from.split(' + ').map((part) => part.trim())).map(position);
  return {
    time: time.length > 0 && time.every((at) => at >= 0) ? time : null,
    remarks: columns.filter((column) => column.to === 'remark').map((column) => position(column.from)).filter((at) => at >= 0),
    values: columns.flatMap((column) => (column.to === null || column.to === 'time' || column.to === 'remark' ? [] : [{ head: column.to, at: position(column.from) }])).filter((each) => each.at >= 0),
  };
}

interface Target { readonly head: string; readonly at: number; readonly scale: readonly string[] | null }
interface RowReader {
  readonly targets: readonly Target[];
  readonly remarks: readonly number[];
  /** How many columns the heads give the file; null without heads. */
  readonly width: number | null;
  readonly clockOnly: boolean;
  readonly dateOrder: DateOrder | null;
  readonly decimal: DecimalMark;
  /** Of the times in the file, and of the note. */
  readonly zone: Zone;
  readonly home: Zone;
  readonly delimiter: string;
  /** False while the keeper has not said which column is the time, or how its dates are written: no line is to blame for that. */
  readonly settled: boolean;
}

const stampText = (row: FileRow, time: readonly number[]): string => time.map((at) => row.cells[at] ?? '').join(' ').trim();

function scaleOf(head: string, protocol: Protocol): readonly string[] | null {
  const parts = splitHead(head);
  return parts ? measureFor(protocol, parts.quantity, parts.instrument)?.scale ?? null : null;
}

function zoneNamed(name: string): Zone | null {
  const offset = readOffset(name);
  return offset === null ? loadZone(name) : { name, offsetAt: () => offset };
}

function readRow(row: FileRow, stamp: Stamp | null, typed: string, reader: RowReader, complaints: ImportComplaint[]): ImportRow {
  const { line } = row;
  const raw = row.cells.join(reader.delimiter);
  const counts = { line, found: row.cells.length, expected: reader.width ?? 0 };
  const lost = (message: Message): ImportRow => {
    if (reader.settled) complaints.push({ line, fate: 'comment', message });
    return { line, time: null, instant: null, cells: [], remark: null, raw };
  };
  // With more cells than heads nobody knows which cell belongs to which head.
  if (isTooWide(row, reader.width)) return lost({ code: 'line-too-wide', args: counts });
  const time = timeOf(stamp, reader);
  if (time.text === null) return lost({ code: timeComplaints[time.reason], args: { line, text: typed || raw.slice(0, 60) } });
  if (reader.targets.some((target) => target.at >= row.cells.length)) complaints.push({ line, fate: 'row', message: { code: 'line-too-short', args: counts } });
  const remarks = reader.remarks.map((at) => cleanRemark(row.cells[at] ?? '')).filter((each) => each !== null);
  const cells = reader.targets.map((target) => {
    const cell = cellText(row.cells[target.at] ?? '', reader.decimal, target.scale);
    if (cell.lost === null) return cell.text;
    const head = target.head.split('[')[0]!;
    remarks.push(`${head}: ${cell.lost}`);
    complaints.push({ line, fate: 'remark', message: { code: 'cell-no-reading', args: { line, text: cell.lost, head } } });
    return cell.text;
  });
  return { line, time: time.text, instant: time.instant, cells, remark: remarks.length === 0 ? null : remarks.join('; '), raw };
}

const timeComplaints = { 'time': 'line-no-time', 'no-date': 'line-no-date', 'no-clock': 'line-no-clock', 'repeated': 'line-repeated', 'skipped': 'line-skipped' } as const;

type RowTime = { readonly text: string; readonly instant: Instant | null } | { readonly text: null; readonly reason: keyof typeof timeComplaints };

/** The time as the note writes it: a clock time, or the full local date in the note's zone, with an offset where it is needed. */
function timeOf(stamp: Stamp | null, { clockOnly, dateOrder, zone, home }: RowReader): RowTime {
  if (clockOnly && stamp?.clock) {
    const two = (value: number): string => String(value).padStart(2, '0');
    const { hour, minute, second } = stamp.clock;
    return { text: `${two(hour)}:${two(minute)}${second > 0 ? `:${two(second)}` : ''}`, instant: null };
  }
  if (!stamp || !dateOrder) return { text: null, reason: 'time' };
  const meant = instantOfStamp(stamp, dateOrder, zone);
  if (meant.reason !== null) return { text: null, reason: meant.reason };
  return { text: localText(meant.instant, stamp, zone, home), instant: meant.instant };
}

/** The instant in the note's own zone, without seconds where there are none, and with its offset where the clock alone is not clear. */
function localText(instant: Instant, stamp: Stamp, zone: Zone, home: Zone): string {
  const text = formatInstant(instant, home);
  // A stamp without an offset that means one instant in the note's own zone is clear there; and so is one far from any clock change.
  const clear = (stamp.offset === null && zone === home) || home.offsetAt(instant - day) === home.offsetAt(instant + day)
    || instantOf(wallTimeOf(instant, home), home).kind === 'single';
  return `${text.slice(0, text.slice(16, 19) === ':00' ? 16 : 19)}${clear ? '' : text.slice(19)}`;
}

/** A cell as the note writes it; `lost` is what stood there when that is no reading. */
function cellText(written: string, decimal: DecimalMark, scale: readonly string[] | null): { text: string; lost: string | null } {
  const text = bareText(written);
  if (isGap(text)) return { text: '-', lost: null };
  const pointed = scale ? text.replace(/\s+/gu, '-') : decimal === ',' ? text.replace(/,/gu, '.') : text;
  const reading = readCell(pointed, { scale });
  const muddled = scale === null && isMuddled(text, decimal);
  const plain = !muddled && !/[\s;#]/u.test(pointed) && reading.state.kind !== 'unreadable' && reading.thousands === null;
  return plain ? { text: pointed, lost: null } : { text: '-', lost: cleanRemark(written) };
}
