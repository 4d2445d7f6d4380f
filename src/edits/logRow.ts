// Logs one row: the right block, the right place, aligned, at its true time. No other row's time may move by it.
import type { Note } from '../experiment/types.ts';
import { slotReach } from '../dataset/coverage.ts';
import { readSyntax } from '../note/readSyntax.ts';
import type { TextEdit } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import { readCell } from '../readings/cell.ts';
import { measureFor } from '../readings/heads.ts';
import { readTable } from '../readings/readTable.ts';
import type { ReadingColumn, ReadingRow, ReadingsTable } from '../readings/types.ts';
import { day, second, type Instant, type Zone } from '../time/instant.ts';
import { formatClock, formatDate, formatInstant } from '../time/text.ts';
import { applyEdits, done, lineBelow, lineBreakOf, prefixOf, refused, tableAfter, type EditResult } from './edit.ts';
import { insertBlock, plannedColumns } from './insertReadingsTable.ts';
import { openTable } from './planRow.ts';
import { anchorsOf, layoutRow, layoutTable } from './tableLayout.ts';

export interface RowToLog {
  /** When the readings were taken; parts of a second are dropped. */
  readonly time: Instant;
  /** One text a column, in the order of the table's columns (of `plannedHeads` where there is no table yet). */
  readonly cells: readonly string[];
  readonly remark?: string | null;
  /** Index into `note.tables`; the open table when not given. */
  readonly table?: number | null;
}

/**
 * Edits that log a row. A row of that time that holds only gaps (or a laid-out row of the slot) takes the values in;
 * a row that holds values already is never written over. The time is written as short as it can be read back.
 */
export function logRow(note: Note, row: RowToLog): EditResult {
  const { protocol } = note;
  if (!protocol) return refused('no-protocol');
  const index = row.table ?? openTable(note);
  const table = index === null ? null : note.tables[index] ?? null;
  if (!table && index !== null) return refused('no-table');
  if (!table) return logInNewTable(note, protocol, row);
  if (table.file) return refused('table-in-file', { path: table.file.path });
  if (table.sealed) return refused('table-sealed');
  if (!table.headRange || table.columns.length === 0 || !note.syntax.blocks[table.block]?.closed) return refused('table-broken');
  if (row.cells.length !== table.columns.length) {
    return refused(row.cells.length < table.columns.length ? 'too-few' : 'too-many', { found: row.cells.length, expected: table.columns.length });
  }
  const cells = row.cells.map((cell) => cell.trim());
  const unreadable = firstUnreadable(cells, table.columns, protocol);
  if (unreadable) return unreadable;
  const remark = cleanRemark(row.remark ?? null);
  const time = Math.floor(row.time / second) * second;
  const waiting = table.rows.find((each) => each.instant === time) ?? laidOutRow(table, note, time);
  return waiting ? fillRow(note, table, waiting, time, cells, remark) : addRow(note, table, time, cells, remark);
}

function firstUnreadable(cells: readonly string[], columns: readonly Omit<ReadingColumn, 'range'>[], protocol: Protocol): EditResult | null {
  for (const [at, text] of cells.entries()) {
    const column = columns[at]!;
    const scale = measureFor(protocol, column.quantity, column.instrument)?.scale ?? null;
    const reading = readCell(text, { scale });
    if (/[\s;#]/u.test(text) || reading.state.kind === 'unreadable' || reading.thousands) return refused('unreadable', { text: text || 'nothing', head: column.id });
  }
  return null;
}

/** The first row of a note without an open table: a new block with the planned heads, behind the last readings or the plan. */
function logInNewTable(note: Note, protocol: Protocol, row: RowToLog): EditResult {
  const columns = plannedColumns(protocol);
  if (columns.length === 0) return refused('no-table');
  if (row.cells.length !== columns.length) return refused(row.cells.length < columns.length ? 'too-few' : 'too-many', { found: row.cells.length, expected: columns.length });
  const cells = row.cells.map((cell) => cell.trim());
  const unreadable = firstUnreadable(cells, columns, protocol);
  if (unreadable) return unreadable;
  const behind = note.syntax.blocks.filter((block) => block.word === 'readings' || block.word === 'protocol').reduce((end, block) => Math.max(end, block.range.end), 0);
  const time = Math.floor(row.time / second) * second;
  const { text } = note;
  const lineBreak = lineBreakOf(text);
  const long = protocol.schedule?.end != null && protocol.schedule.end - protocol.schedule.start > day;
  for (const [index, timeText] of timeTexts(note, time).entries()) {
    const [head, line] = layoutTable(['time', ...columns.map((column) => column.id)], [{ time: timeText, cells, remark: cleanRemark(row.remark ?? null) }]);
    const days = long && index === 0 ? [`# ${formatDate(time, protocol.zone)}`] : [];
    const result = insertBlock(text, behind, ['```readings', head!, ...days, line!, '```', ''].join(lineBreak));
    if (!result.ok) return result;
    const blocks = readSyntax(applyEdits(text, result.edits)).blocks;
    const at = blocks.findIndex((block) => block.word === 'readings' && block.range.start >= result.shows.start);
    const read = at < 0 ? null : readTable(blocks[at]!, at, protocol, note.tables.at(-1) ?? null, new Map()).table;
    if (read?.rows.length !== 1 || read.rows[0]!.instant !== time) continue;
    return { ...result, shows: read.rows[0]!.range };
  }
  return refused('time-not-written', { time: formatInstant(time, protocol.zone) });
}

/** A remark fit for one line; null when there is nothing in it. */
export function cleanRemark(text: string | null): string | null {
  const clean = (text ?? '').replace(/[\u0000-\u001f\u007f\u2028\u2029\s]+/gu, ' ').trim();
  return clean === '' ? null : clean;
}

/** A row that was laid out for the slot of this time and holds nothing yet. */
function laidOutRow(table: ReadingsTable, note: Note, time: Instant): ReadingRow | null {
  const schedule = note.protocol?.schedule;
  if (!schedule) return null;
  return table.rows.find((row) => row.instant !== null && row.remark === null && row.earlierTimes.length === 0
    && row.cells.every((cell) => cell.text === '-') && (row.extra?.length ?? 0) === 0
    && schedule.slots.includes(row.instant) && Math.abs(row.instant - time) < slotReach(schedule, row.instant)) ?? null;
}

/** Puts values into the gaps of a row that is there already. */
function fillRow(note: Note, table: ReadingsTable, row: ReadingRow, time: Instant, cells: readonly string[], remark: string | null): EditResult {
  const taken = cells.flatMap((text, at) => (text !== '-' && row.cells[at]!.text !== '-' ? [table.columns[at]!.id] : []));
  if (taken.length > 0) return refused('already-read', { columns: taken, time: row.timeText });
  const rowIndex = table.rows.indexOf(row);
  const merged = cells.map((text, at) => (text === '-' ? row.cells[at]!.text : text));
  const all = [row.remark, remark].filter((each) => each !== null).join('; ');
  const anchors = anchorsOf(table, rowIndex === 0 ? null : rowIndex - 1, note.text);
  const times = row.instant === time ? [row.timeText] : timeTexts(note, time);
  for (const text of times) {
    const line = layoutRow({ time: text, cells: merged, remark: all === '' ? null : all }, anchors);
    const edits: TextEdit[] = [{ range: row.range, newText: line }];
    if (keepsTimes(note, table, edits, rowIndex, time, false)) return done(edits);
  }
  return refused('time-not-written', { time: formatInstant(time, zoneOf(note)) });
}

/** Puts a new row where its time belongs. */
function addRow(note: Note, table: ReadingsTable, time: Instant, cells: readonly string[], remark: string | null): EditResult {
  const { text } = note;
  let after = -1;
  table.rows.forEach((row, index) => { if (row.instant !== null && row.instant <= time) after = index; });
  // In a table that is not in order of time, and after rows whose time cannot be read, new rows go to the end.
  const ordered = table.rows.every((row, index) => index === 0 || row.instant === null || table.rows[index - 1]!.instant === null || row.instant >= table.rows[index - 1]!.instant!);
  if (!ordered || table.rows.slice(after + 1).every((row) => row.instant === null)) after = table.rows.length - 1;
  const above = after >= 0 ? table.rows[after]! : null;
  const place = above ? above.range : table.headRange!;
  const prefix = prefixOf(text, above ? above.range.start : table.headRange!.start);
  // The seal and comments under the heads stay above the first row.
  const offset = above ? above.range.end : underHeads(note, table);
  const anchors = anchorsOf(table, above ? after : table.rows.length > 0 ? 0 : null, text);
  const wanted = (line: string): TextEdit[] => [lineBelow(text, Math.max(place.start, offset), prefix, line)];
  const texts = timeTexts(note, time);
  const clock = texts[0]!;
  const dayLine = `# ${formatDate(time, zoneOf(note))}`;
  const schedule = note.protocol?.schedule;
  const long = schedule?.end != null && schedule.end - schedule.start > day;
  const withDays = long || dayLinesIn(note, table);
  const usesDays = withDays && (above?.instant == null || formatDate(above.instant, zoneOf(note)) !== formatDate(time, zoneOf(note)));
  const rowLine = (timeText: string): string => layoutRow({ time: timeText, cells, remark }, anchors);
  const candidates = [
    ...(usesDays ? [] : [rowLine(clock)]),
    ...(withDays ? [`${dayLine}${text.includes('\r\n') ? '\r\n' : '\n'}${prefix}${rowLine(clock)}`] : []),
    ...texts.slice(1).map(rowLine),
  ];
  for (const line of candidates) {
    const edits = wanted(line);
    if (!keepsTimes(note, table, edits, after + 1, time, true)) continue;
    const result = done(edits);
    if (!result.ok) return result;
    const from = result.shows.start + edits[0]!.newText.lastIndexOf(line.slice(line.lastIndexOf('\n') + 1 + (line.includes('\n') ? prefix.length : 0)));
    return { ...result, shows: { start: from, end: result.shows.start + edits[0]!.newText.trimEnd().length } };
  }
  return refused('time-not-written', { time: formatInstant(time, zoneOf(note)) });
}

const zoneOf = (note: Note): Zone => note.protocol!.zone;

/** The time from short to long: clock, clock with seconds comes by itself, full date, full date with offset. */
export function timeTexts(note: Note, time: Instant): string[] {
  const zone = zoneOf(note);
  const clock = formatClock(time, zone);
  const date = formatDate(time, zone);
  return [clock, `${date}T${clock}`, `${date}T${clock}${formatInstant(time, zone).slice(19)}`];
}

/** The offset of the last comment, day line or seal that stands directly under the heads; the heads when there is none. */
function underHeads(note: Note, table: ReadingsTable): number {
  let offset = table.headRange!.end;
  const block = note.syntax.blocks[table.block]!;
  const firstRow = table.rows[0]?.range.start ?? block.range.end;
  for (const line of note.text.slice(offset, firstRow).matchAll(/\n[ \t>]*#[^\n]*/gu)) {
    const at = table.headRange!.end + line.index + line[0].length;
    // A day line belongs to the rows under it.
    if (/#\s*\d{4}-\d\d-\d\d\s*$/u.test(line[0])) break;
    offset = at;
  }
  return offset;
}

function dayLinesIn(note: Note, table: ReadingsTable): boolean {
  const block = note.syntax.blocks[table.block];
  return block !== undefined && /(?:^|\n)[ \t]*#[ \t]*\d{4}-\d\d-\d\d[ \t]*\r?(?:\n|$)/u.test(block.content.text);
}

/** True when, after the edits, every row has the time it had and the row at `index` has the wanted one. */
function keepsTimes(note: Note, table: ReadingsTable, edits: readonly TextEdit[], index: number, time: Instant, added: boolean): boolean {
  const after = tableAfter(note, table, edits);
  if (!after || after.rows.length !== table.rows.length + (added ? 1 : 0)) return false;
  return after.rows.every((row, at) => {
    if (at === index) return row.instant === time;
    const before = table.rows[added && at > index ? at - 1 : at]!;
    return row.instant === before.instant && row.timeText === before.timeText;
  });
}

