// Reads one readings block into columns, rows and cells, each with its place. Nothing recorded is dropped.
import type { Block } from '../note/syntax.ts';
import type { Problem } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import { readCell } from './cell.ts';
import { cellComplaints, remarkComplaints } from './cellComplaints.ts';
import { checkPlausible } from './plausible.ts';
import { fileOf, readFileTable } from './file/readFileTable.ts';
import { readHead, type HeadReading } from './heads.ts';
import { splitLines, type Line, type Token } from './lines.ts';
import { createReporter, replaceFix, type Complaint, type Reporter } from './reporter.ts';
import { sealProblems } from './seal.ts';
import { readTimes, type TimeCell, type TimeReading } from './times.ts';
import { formatDate } from '../time/text.ts';
import { day } from '../time/instant.ts';
import type { Cell, CellState, FileContents, ReadingColumn, ReadingRow, ReadingsTable } from './types.ts';

type CellsLine = Extract<Line, { kind: 'cells' }>;

/**
 * Reads a readings block: a table typed in the note, or a reference to a data file.
 * `previous` is the readings table before it in the note (its last time helps to date the first row).
 * `wants` lists the files that the block refers to. Ranges are places in the note. Never throws.
 */
export function readTable(
  block: Block, blockIndex: number, protocol: Protocol, previous: ReadingsTable | null, files: FileContents,
): { table: ReadingsTable; wants: string[]; problems: Problem[] } {
  const reporter = createReporter(block.content);
  if (fileOf(block)) return readFileTable(block, blockIndex, protocol, files, reporter);
  const lines = splitLines(block.content.text);
  const headAt = lines.findIndex((line) => line.kind === 'cells');
  const empty: ReadingsTable = { block: blockIndex, name: block.name, columns: [], rows: [], headRange: null, file: null, sealed: null };
  if (headAt < 0) {
    reporter.add({ code: 'readings-empty', range: { start: 0, end: 0 }, args: {} });
    return { table: empty, wants: [], problems: reporter.problems };
  }
  const headLine = lines[headAt] as CellsLine;
  const heads = readHeads(headLine, protocol, reporter);
  const columns: ReadingColumn[] = heads.map((head) => ({ ...head.column, range: reporter.place(head.token) }));
  const seals = lines.filter((line) => line.kind === 'seal');
  const rows = readRows(lines, headAt, heads, protocol, lastInstant(previous), block, reporter);
  const seal = seals[0];
  const table: ReadingsTable = {
    ...empty, columns, rows,
    headRange: reporter.place({ start: headLine.start, end: headLine.end }),
    sealed: seal ? { text: seal.text, range: reporter.place({ start: seal.start, end: seal.end }) } : null,
  };
  if (seals[1]) reporter.add({ code: 'seal-unreadable', range: { start: seals[1].start, end: seals[1].end }, args: {} });
  checkPlausible(table, heads, reporter);
  return { table, wants: [], problems: [...reporter.problems, ...sealProblems(table)] };
}

/** The last time of a table; null without one. */
function lastInstant(table: ReadingsTable | null): number | null {
  let last: number | null = null;
  for (const row of table?.rows ?? []) if (row.instant !== null && (last === null || row.instant > last)) last = row.instant;
  return last;
}

/** The heads after `time`. A first head that is not `time` is a problem; its column is then taken for the time all the same. */
function readHeads(line: CellsLine, protocol: Protocol, reporter: Reporter): HeadReading[] {
  const [first, ...rest] = line.tokens;
  if (!first) {
    reporter.add({ code: 'time-column-missing', range: { start: line.start, end: line.end }, args: { head: '' } });
    return [];
  }
  let tokens: readonly Token[] = rest;
  if (first.text !== 'time') {
    const range = { start: first.start, end: first.end };
    const isColumn = first.text.includes('.');
    const fixes = isColumn
      ? [{ title: 'insert-text', args: { text: 'time' }, edits: [{ range: { start: first.start, end: first.start }, newText: 'time  ' }] }]
      : [replaceFix(range, 'time', { preferred: true })];
    reporter.add({ code: 'time-column-missing', range, args: { head: first.text }, fixes });
    if (isColumn) tokens = line.tokens;
  }
  const taken = new Set<string>();
  return tokens.map((token) => {
    const head = readHead(token, protocol, taken);
    taken.add(head.column.id);
    for (const complaint of head.complaints) reporter.add(complaint);
    return head;
  });
}

/** Every line of cells under the heads, as rows. */
function readRows(
  lines: readonly Line[], headAt: number, heads: readonly HeadReading[], protocol: Protocol, before: number | null, block: Block, reporter: Reporter,
): ReadingRow[] {
  const rowLines: CellsLine[] = [];
  const timeCells: TimeCell[] = [];
  let date: TimeCell['day'] = null;
  lines.forEach((line, index) => {
    if (line.kind === 'day') date = line.date;
    if (line.kind !== 'cells' || index <= headAt) return;
    const token = line.tokens[0];
    if (!token) { reporter.add(loneRemark(line)); return; }
    rowLines.push(line);
    timeCells.push({ token, day: date });
    date = null;
  });
  const times = readTimes(timeCells, protocol, before);
  const rows = rowLines.map((line, index): ReadingRow => {
    const time = times[index]!;
    const token = timeCells[index]!.token;
    if (time.complaint) reporter.add(time.complaint);
    const cells = readCells(line, heads, reporter);
    for (const complaint of remarkComplaints(line, token, time.earlier, heads, cells.cells)) reporter.add(complaint);
    return {
      range: reporter.place({ start: line.tokens[0]?.start ?? line.start, end: line.remark?.end ?? line.tokens.at(-1)?.end ?? line.end }),
      timeRange: reporter.place(token), timeText: token.text, instant: time.instant, firstInstant: time.first, earlierTimes: time.earlier,
      cells: cells.cells, extra: cells.extra,
      remark: line.remark?.text ?? null, remarkRange: line.remark ? reporter.place(line.remark) : null,
    };
  });
  askForDates(timeCells, times, protocol, block, reporter);
  return rows;
}

/** In a run of more than a day every day has its line (or its rows full dates): one warning a block, one mend for all. */
function askForDates(cells: readonly TimeCell[], times: readonly TimeReading[], protocol: Protocol, block: Block, reporter: Reporter): void {
  const schedule = protocol.schedule;
  if (!schedule?.end || schedule.end - schedule.start <= day) return;
  const undated = cells.flatMap((cell, index) => {
    const time = times[index]!;
    return time.instant !== null && !cell.day && (time.rolled || (index === 0 && !time.dated)) ? [{ cell, instant: time.instant }] : [];
  });
  const first = undated[0];
  if (!first) return;
  const dates = undated.map(({ instant }) => `# ${formatDate(instant, protocol.zone)}`);
  reporter.add({
    code: 'time-wants-date', range: first.cell.token, args: { time: first.cell.token.text },
    fixes: [{
      title: 'insert-dates', args: { text: dates[0]!, more: dates.length - 1 }, preferred: true,
      edits: undated.map(({ cell }, index) => ({
        range: { start: cell.token.start, end: cell.token.start }, newText: `${dates[index]!}${block.lineBreak ?? '\n'}${block.linePrefix ?? ''}`,
      })),
    }],
  });
}

/** A line that holds only a remark belongs to no row. */
function loneRemark(line: CellsLine): Complaint {
  const text = line.remark?.text ?? '';
  const range = { start: line.start, end: line.remark?.end ?? line.end };
  return { code: 'remark-without-row', range, args: { text }, fixes: [{ title: 'make-comment', args: {}, edits: [{ range, newText: `# ${text}` }], preferred: true, safe: true }] };
}

interface RowCells { readonly cells: Cell[]; readonly extra: { readonly range: Cell['range']; readonly text: string }[] }

/** The cells of a row, one a column. When their number is wrong, nobody can tell which value belongs where: all are kept as text. */
function readCells(line: CellsLine, heads: readonly HeadReading[], reporter: Reporter): RowCells {
  const tokens = line.tokens.slice(1);
  const fits = tokens.length === heads.length;
  if (!fits) {
    const last = line.tokens.at(-1)!;
    const tooMany = tokens.length > heads.length;
    const range = tooMany ? { start: tokens[heads.length]!.start, end: last.end } : { start: line.tokens[0]!.start, end: last.end };
    const closed = line.tokens.map((token) => token.text).join(' ').replace(/ -> | ->|(?<!-)-> /gu, '->').split(' ');
    const missing = heads.length - tokens.length;
    const fixes = closed.length - 1 === heads.length
      ? [replaceFix({ start: line.tokens[0]!.start, end: last.end }, closed.join('  '))]
      : tooMany ? [] : [{ title: 'add-missing-cells', args: { count: missing }, edits: [{ range: { start: last.end, end: last.end }, newText: '  -'.repeat(missing) }] }];
    reporter.add({ code: 'column-count', range, args: { found: tokens.length, expected: heads.length }, fixes });
  }
  const cells = heads.map((head, index): Cell => {
    const token = tokens[index];
    if (!token) {
      const end = line.tokens.at(-1)?.end ?? line.end;
      return { range: reporter.place({ start: end, end }), text: '', state: keptText(''), earlier: [], leftOut: false, doubtful: false };
    }
    const range = reporter.place(token);
    if (!fits) return { range, text: token.text, state: keptText(token.text), earlier: [], leftOut: false, doubtful: false };
    const scale = head.measure?.scale ?? null;
    const reading = readCell(token.text, { scale });
    for (const complaint of cellComplaints(token, reading, head)) reporter.add(complaint);
    return { range, text: token.text, state: reading.state, earlier: reading.earlier, leftOut: reading.leftOut, doubtful: reading.doubtful };
  });
  const extra = tokens.slice(heads.length).map((token) => ({ range: reporter.place(token), text: token.text }));
  return { cells, extra };
}

function keptText(text: string): CellState {
  return { kind: 'unreadable', value: null, repeats: [], decimals: -1, word: null, text };
}
