// Imports pasted cells or a logger's file: a proposal in which everything detected can be changed, then a block of
// readings or a pinned reference to the file. What cannot be read is listed by line and kept, never dropped.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { Note } from '../experiment/types.ts';
import { readCell } from '../readings/cell.ts';
import { dataPath } from '../readings/file/dataPath.ts';
import { decodeText, detectEncoding, type Encoding } from '../readings/file/decode.ts';
import { yamlText } from '../readings/file/fileKeys.ts';
import { delimiters, detectDecimal, detectDelimiter, detectHeads, isBlank, splitRows, type DecimalMark, type DelimiterName, type FileRow } from '../readings/file/layout.ts';
import { proposeColumns } from '../readings/file/propose.ts';
import { possibleOrders, readStamp, wallOf, type DateOrder, type Stamp } from '../readings/file/stamps.ts';
import { measureFor, splitHead } from '../readings/heads.ts';
import type { Instant, Zone } from '../time/instant.ts';
import { formatClock, formatDate, formatInstant, readOffset } from '../time/text.ts';
import { instantOf, loadZone, utc, wallTimeOf } from '../time/zone.ts';
import { lineBreakOf, refused, type EditResult, type Message } from './edit.ts';
import { insertBlock, outsideBlocks } from './insertReadingsTable.ts';
import { cleanRemark } from './logRow.ts';
import { layoutTable, type LayoutRow } from './tableLayout.ts';

/** What the keeper chose instead of what was detected. */
export interface ImportChoices {
  readonly delimiter?: DelimiterName;
  readonly decimal?: DecimalMark;
  readonly dateOrder?: DateOrder;
  /** IANA name or offset of the times in the file; the note's own zone when not given. */
  readonly timeZone?: string;
  /** Line of the heads, from 1; 0: there are none. */
  readonly headerLine?: number;
  /** What each column holds: `time`, `remark`, `mat.DO`, `mat.T[degF]`; a column not named (or null) is not imported. */
  readonly columns?: readonly { readonly from: string; readonly to: string | null }[];
}

/** One line as it would be imported. */
export interface ImportRow {
  readonly line: number;
  /** As the note would write it; null: the time cannot be read, and the line becomes a comment. */
  readonly time: string | null;
  readonly instant: Instant | null;
  /** Texts in the order of `heads`; what is no reading is `-` and goes into the remark. */
  readonly cells: readonly string[];
  readonly remark: string | null;
  /** The line as it stands in the file, for those that cannot be read. */
  readonly raw: string;
}

export interface ImportProposal {
  readonly encoding: Encoding;
  readonly delimiter: DelimiterName;
  readonly decimal: DecimalMark | null;
  readonly dateOrder: DateOrder | null;
  /** More than one: the dates can be read in several ways, and the keeper must pick. */
  readonly dateOrders: readonly DateOrder[];
  readonly timeZone: string;
  /** True when the times are clock times without dates. */
  readonly clockOnly: boolean;
  /** True when every time carries its offset, so that the time zone does not matter. */
  readonly offsets: boolean;
  readonly headerLine: number;
  /** Every column of the file. */
  readonly names: readonly string[];
  readonly columns: readonly { readonly from: string; readonly to: string | null }[];
  /** Heads of the imported columns, without `time`. */
  readonly heads: readonly string[];
  readonly rows: readonly ImportRow[];
  /** Lines whose time cannot be read, and lines with cells that are no readings. */
  readonly unreadTimes: readonly number[];
  readonly unreadCells: readonly number[];
  /** What must be settled before the import. */
  readonly asks: readonly Message[];
}

/** Looks at pasted text or a file's bytes. Null when nothing in it is a table. */
export function proposeImport(source: Uint8Array | string, note: Note, choices: ImportChoices = {}): ImportProposal | null {
  const { protocol } = note;
  const encoding: Encoding = typeof source === 'string' ? 'utf-8' : detectEncoding(source);
  const text = typeof source === 'string' ? source.replace(/^\ufeff/u, '') : decodeText(source, encoding);
  const delimiter = choices.delimiter ?? detectDelimiter(text);
  if (!protocol || !delimiter) return null;
  const allRows = splitRows(text, delimiters[delimiter]);
  const head = choices.headerLine === 0 ? -1 : choices.headerLine === undefined ? detectHeads(allRows, []).at : allRows.findIndex((row) => row.line === choices.headerLine);
  const width = Math.max(0, ...allRows.slice(0, 200).map((row) => row.cells.length));
  const names = head >= 0 ? allRows[head]!.cells.map((cell) => cell.trim()) : Array.from({ length: width }, (_, index) => `column ${index + 1}`);
  const body = allRows.slice(head + 1).filter((row) => !isBlank(row));
  if (body.length === 0) return null;
  const columns = choices.columns ?? firstTime(proposeColumns(names.filter((name) => name !== ''), protocol), names, body);
  const position = (name: string): number => names.indexOf(name);
  const timeFrom = columns.find((column) => column.to === 'time')?.from ?? null;
  const timeAt = timeFrom === null ? [] : (names.includes(timeFrom) ? [timeFrom] : timeFrom.split(' + ').map((part) => part.trim())).map(position);
  const remarkAt = columns.filter((column) => column.to === 'remark').map((column) => position(column.from)).filter((at) => at >= 0);
  const values = columns.flatMap((column) => (column.to === null || column.to === 'time' || column.to === 'remark' ? [] : [{ head: column.to, at: position(column.from) }])).filter((each) => each.at >= 0);
  const stampText = (row: FileRow): string => timeAt.map((at) => row.cells[at] ?? '').join(' ').trim();
  const stamps = body.map((row) => (timeAt.length > 0 && timeAt.every((at) => at >= 0) ? readStamp(stampText(row)) : null));
  const read = stamps.filter((stamp): stamp is Stamp => stamp !== null);
  const clockOnly = read.length > 0 && read.every((stamp) => stamp.date === null);
  const dateOrders = choices.dateOrder ? [choices.dateOrder] : possibleOrders(read);
  const dateOrder = dateOrders.length === 1 ? dateOrders[0]! : null;
  const scaleOf = (target: string): readonly string[] | null => {
    const parts = splitHead(target);
    return parts ? measureFor(protocol, parts.quantity, parts.instrument)?.scale ?? null : null;
  };
  const numeric = values.filter((each) => scaleOf(each.head) === null);
  const marks = detectDecimal(body.flatMap((row) => numeric.map((each) => row.cells[each.at] ?? '')));
  const decimal = choices.decimal ?? (marks === 'unclear' ? null : marks);
  const timeZone = choices.timeZone ?? protocol.zone.name;
  const zone = zoneNamed(timeZone) ?? protocol.zone;
  const asks: Message[] = [];
  if (timeAt.length === 0 || timeAt.some((at) => at < 0) || values.length === 0) asks.push({ code: 'import-unmapped', args: {} });
  if (dateOrders.length > 1) asks.push({ code: 'date-order-unclear', args: { example: read.find((stamp) => stamp.date)?.date?.parts.join('/') ?? '' } });
  if (marks === 'unclear' && !choices.decimal) asks.push({ code: 'decimal-unclear', args: {} });
  const unreadTimes: number[] = [];
  const unreadCells: number[] = [];
  const rows = body.map((row, index): ImportRow => {
    const time = timeOf(stamps[index] ?? null, clockOnly, dateOrder, zone, protocol.zone);
    if (time.text === null) unreadTimes.push(row.line);
    const notes = remarkAt.map((at) => cleanRemark(row.cells[at] ?? '')).filter((each) => each !== null);
    const cells = values.map(({ head: target, at }) => {
      const cell = cellText(row.cells[at] ?? '', decimal ?? '.', scaleOf(target));
      if (cell.lost !== null) { notes.push(`${target.split('[')[0]!}: ${cell.lost}`); if (unreadCells.at(-1) !== row.line) unreadCells.push(row.line); }
      return cell.text;
    });
    return { line: row.line, time: time.text, instant: time.instant, cells, remark: notes.length === 0 ? null : notes.join('; '), raw: row.cells.join(delimiters[delimiter] === ' ' ? ' ' : delimiters[delimiter]) };
  });
  return {
    encoding, delimiter, decimal, dateOrder, dateOrders, timeZone, clockOnly, offsets: read.every((stamp) => stamp.offset !== null), headerLine: head < 0 ? 0 : allRows[head]!.line,
    names, columns, heads: values.map((each) => each.head), rows, unreadTimes, unreadCells, asks,
  };
}

/** Where no head names the time, the first column whose cells are times. */
function firstTime(proposals: readonly { from: string; to: string | null }[], names: readonly string[], body: readonly FileRow[]): { from: string; to: string | null }[] {
  const plain = proposals.map(({ from, to }) => ({ from, to }));
  if (plain.some((each) => each.to === 'time')) return plain;
  const at = names.findIndex((_, index) => body.filter((row) => readStamp(row.cells[index] ?? '') !== null).length * 2 > body.length);
  return at < 0 ? plain : plain.map((each) => (each.from === names[at] ? { from: each.from, to: 'time' } : each));
}

function zoneNamed(name: string): Zone | null {
  const offset = readOffset(name);
  return offset === null ? loadZone(name) : { name, offsetAt: () => offset };
}

/** The time as the note writes it: a clock time, or the full local date in the note's zone, with an offset where it is needed. */
function timeOf(stamp: Stamp | null, clockOnly: boolean, order: DateOrder | null, zone: Zone, home: Zone): { text: string | null; instant: Instant | null } {
  if (!stamp?.clock) return { text: null, instant: null };
  const two = (value: number): string => String(value).padStart(2, '0');
  if (clockOnly) {
    const { hour, minute, second } = stamp.clock;
    return { text: `${two(hour)}:${two(minute)}${second > 0 ? `:${two(second)}` : ''}`, instant: null };
  }
  const wall = order ? wallOf(stamp, order) : null;
  if (!wall) return { text: null, instant: null };
  const meant = instantOf(wall.wall, stamp.offset === null ? zone : utc);
  if (meant.kind !== 'single') return { text: null, instant: null };
  const instant = meant.instant - (stamp.offset ?? 0);
  const clear = instantOf(wallTimeOf(instant, home), home).kind === 'single';
  return { text: `${formatDate(instant, home)}T${formatClock(instant, home)}${clear ? '' : formatInstant(instant, home).slice(19)}`, instant };
}

/** A cell as the note writes it; `lost` is what stood there when that is no reading. */
function cellText(written: string, decimal: DecimalMark, scale: readonly string[] | null): { text: string; lost: string | null } {
  const text = written.trim().replace(/^'(?=[-=+@])/u, '');
  if (/^(?:|-+|n\/?a|nan|null|none|#n\/a|\?+)$/iu.test(text)) return { text: '-', lost: null };
  const mixed = scale === null && (decimal === ',' ? /\d\.\d/u : /\d,\d/u).test(text);
  const pointed = scale ? text.replace(/\s+/gu, '-') : decimal === ',' ? text.replace(/,/gu, '.') : text;
  const reading = readCell(pointed, { scale });
  const plain = !mixed && !/[\s;#]/u.test(pointed) && reading.state.kind !== 'unreadable' && reading.thousands === null;
  return plain ? { text: pointed, lost: null } : { text: '-', lost: cleanRemark(written) };
}

/** The text of the block that a proposal becomes. Lines whose time cannot be read are kept as comments. */
export function importedBlockText(proposal: ImportProposal, lineBreak = '\n'): string {
  const heads = ['time', ...proposal.heads];
  const kept = proposal.rows.filter((row) => row.time !== null);
  const [head, ...laidOut] = layoutTable(heads, kept.map((row): LayoutRow => ({ time: row.time!, cells: row.cells, remark: row.remark })));
  let at = 0;
  const body = proposal.rows.map((row) => (row.time === null ? `# not read, line ${row.line}: ${cleanRemark(row.raw) ?? ''}` : laidOut[at++]!));
  return ['```readings', head!, ...body, '```', ''].join(lineBreak);
}

/** Edits that put the proposal into the note as a block of readings: one step to undo. */
export function importTable(note: Note, proposal: ImportProposal, offset: number): EditResult {
  if (proposal.asks.length > 0) return { ok: false, message: proposal.asks[0]! };
  return insertBlock(note.text, outsideBlocks(note, offset), importedBlockText(proposal, lineBreakOf(note.text)));
}

/** Edits that put a pinned reference to the file into the note. `path` is relative to the note, with forward slashes. */
export function importFile(note: Note, proposal: ImportProposal, path: string, bytes: Uint8Array, offset: number): EditResult {
  if (proposal.asks.length > 0) return { ok: false, message: proposal.asks[0]! };
  if (proposal.clockOnly) return refused('time-unreadable', { text: proposal.rows[0]?.time ?? '' });
  if (dataPath(path) === null) return refused('nothing-to-import');
  return insertBlock(note.text, outsideBlocks(note, offset), fileBlockText(proposal, path, bytes, lineBreakOf(note.text)));
}

/** The text of a block that pins a file, with everything that was detected written down. */
export function fileBlockText(proposal: ImportProposal, path: string, bytes: Uint8Array, lineBreak = '\n'): string {
  const dated = proposal.rows.length > 0;
  const lines = [
    '```readings', `from: ${yamlText(path)}`, 'columns:',
    ...proposal.columns.flatMap((column) => (column.to === null ? [] : [`  ${yamlText(column.from)}: ${column.to}`])),
    ...(dated && !proposal.offsets ? [`time zone: ${yamlText(proposal.timeZone)}`] : []),
    `delimiter: ${proposal.delimiter}`,
    ...(proposal.decimal ? [`decimal: ${proposal.decimal === ',' ? 'comma' : 'point'}`] : []),
    ...(proposal.dateOrder && proposal.dateOrder !== 'year-month-day' ? [`date order: ${proposal.dateOrder}`] : []),
    ...(proposal.headerLine === 1 ? [] : [`header line: ${proposal.headerLine}`]),
    ...(proposal.encoding === 'utf-8' ? [] : [`encoding: ${proposal.encoding}`]),
    `sha256: ${bytesToHex(sha256(bytes))}`, '```', '',
  ];
  return lines.join(lineBreak);
}
