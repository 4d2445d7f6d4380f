// What looks wrong in a table that is about to be imported: values in another unit than the column's or beyond what can be, times that
// stand twice, readings that the note has already.
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { parseUnit } from '../quantities/units.ts';
import { readHead } from '../readings/heads.ts';
import { plausibleRange, slippedUnit } from '../readings/plausible.ts';
import type { ImportComplaint, ImportDoubt, ImportRow } from './importProposal.ts';

/** At most one doubt a column: about its first value that cannot well be. */
export function importDoubts(heads: readonly string[], rows: readonly { readonly cells: readonly string[] }[], protocol: Protocol): ImportDoubt[] {
  return heads.flatMap((text, column): ImportDoubt[] => {
    const { measure, column: { id, unit } } = readHead({ text, start: 0, end: text.length }, protocol, new Set());
    const range = plausibleRange(measure, unit);
    const odd = range && rows.find((row) => { const value = Number(row.cells[column]); return row.cells[column] !== undefined && (value < range.low || value > range.high); })?.cells[column];
    if (!range || !unit || odd === undefined || odd === null) return [];
    const perhaps = slippedUnit(Number(odd), measure, unit);
    const limit = (value: number): number => Number(value.toPrecision(4));
    return [{ column, message: perhaps
      ? { code: 'unit-slip', args: { head: id, text: odd, perhaps: parseUnit(perhaps)?.print ?? perhaps, unit: unit.print } }
      : { code: 'out-of-range', args: { head: id, text: odd, low: limit(range.low), high: limit(range.high), unit: unit.print } } }];
  });
}

/** Rows whose time stands on an earlier line as well. Clock times may come again the next day: only neighbours count. */
export function timesTwice(rows: readonly ImportRow[]): ImportComplaint[] {
  const seen = new Map<string, number>();
  let above: string | null = null;
  return rows.flatMap((row): ImportComplaint[] => {
    if (row.time === null) return [];
    const first = row.instant === null && row.time !== above ? undefined : seen.get(row.time);
    above = row.time;
    if (first === undefined) { seen.set(row.time, row.line); return []; }
    return [{ line: row.line, fate: 'row', message: { code: 'time-twice', args: { line: row.line, time: row.time, first } } }];
  });
}

/** Rows for whose time the note has a reading of the same column already. */
export function readAlready(rows: readonly ImportRow[], imported: readonly string[], note: Note): ImportComplaint[] {
  const heads = imported.map((head) => head.split('[')[0]!);
  const there = new Set(note.tables.flatMap((table) => table.columns.flatMap((column, at) => (heads.includes(column.id)
    ? table.rows.filter((row) => row.instant !== null && row.cells[at] && row.cells[at].state.kind !== 'missing').map((row) => `${column.id} ${row.instant}`) : []))));
  if (there.size === 0) return [];
  return rows.flatMap((row): ImportComplaint[] => {
    const head = heads.find((each, at) => row.instant !== null && row.cells[at] !== '-' && there.has(`${each} ${row.instant}`));
    return head === undefined ? [] : [{ line: row.line, fate: 'row', message: { code: 'read-already', args: { line: row.line, head, time: row.time ?? '' } } }];
  });
}
