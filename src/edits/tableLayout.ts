// How a table's line is laid out: values aligned on the decimal point of the first value, under their heads.
// Works on texts only; no value is touched.
import type { ReadingColumn, ReadingsTable } from '../readings/types.ts';

/** Characters of a cell that stand before the decimal point of its first value (or up to its last digit). Words: 0. */
export function beforePoint(text: string): number {
  if (text === '-' || text.startsWith('-->')) return 1;
  const match = /^[(<>+-]*\d*/u.exec(text)![0];
  return /\d/u.test(match) || /^[(<>+-]*\.\d/u.test(text) ? match.length : 0;
}

/** Length of a cell's first value, without what hangs over to the right: a closing bracket, a doubt, a correction, repeats. */
function firstLength(text: string): number {
  const left = beforePoint(text);
  if (left === 0 && !text.startsWith('.')) return text.length;
  return left + /^(?:\.\d+)?/u.exec(text.slice(left))![0].length;
}

/** Widths of one column: left of the point, right of it, what hangs over behind the value, and the head. */
interface ColumnWidth { left: number; right: number; over: number; readonly head: number }

const pad = (width: number): string => ' '.repeat(Math.max(0, width));

/** One line of a table to be laid out. */
export interface LayoutRow { readonly time: string; readonly cells: readonly string[]; readonly remark: string | null }

/** Lays out a whole table. The first line is the heads; all rows must have one cell a head. Each line without its break. */
export function layoutTable(heads: readonly string[], rows: readonly LayoutRow[]): string[] {
  const widths: ColumnWidth[] = heads.slice(1).map((head, index) => {
    const width: ColumnWidth = { left: 0, right: 0, over: 0, head: head.length };
    for (const row of rows) {
      const cell = row.cells[index] ?? '';
      const left = beforePoint(cell);
      width.left = Math.max(width.left, left);
      width.right = Math.max(width.right, firstLength(cell) - left);
    }
    for (const row of rows) {
      const cell = row.cells[index] ?? '';
      width.over = Math.max(width.over, cell.length - beforePoint(cell) - width.right);
    }
    return width;
  });
  const timeWidth = rows.reduce((widest, row) => Math.max(widest, row.time.length), heads[0]?.length ?? 0);
  const core = (width: ColumnWidth): number => Math.max(width.head, width.left + width.right);
  // A single overhanging sign fits into the gap before the next column; more widens it.
  const gap = (index: number): number => (index === 0 ? 2 : Math.max(2, widths[index - 1]!.over + 1));
  const headLine = (heads[0] ?? '') + pad(timeWidth - (heads[0]?.length ?? 0))
    + widths.map((width, index) => pad(gap(index) + core(width) - width.head) + heads[index + 1]!).join('');
  const lines = rows.map((row) => {
    let line = row.time + pad(timeWidth - row.time.length);
    let end = timeWidth;
    widths.forEach((width, index) => {
      const cell = row.cells[index] ?? '';
      end += gap(index) + core(width);
      const start = end - width.right - beforePoint(cell);
      line += pad(start - line.length) + cell;
    });
    return line;
  });
  const longest = lines.reduce((length, line) => Math.max(length, line.length), 0);
  return [headLine, ...lines.map((line, index) => {
    const remark = rows[index]!.remark;
    return remark === null ? line : `${line + pad(longest - line.length)}   ; ${remark}`.trimEnd();
  })];
}

/** Where the points of a table's columns stand, counted from the start of the line, by the row nearest to a place. */
export interface Anchors { readonly points: readonly number[]; readonly ends: readonly number[]; readonly remark: number | null }

/** Anchors from an existing row: the column's points as that row has them. Without a row, the heads' right ends. */
export function anchorsOf(table: ReadingsTable, rowIndex: number | null, text: string): Anchors {
  const row = rowIndex === null ? null : table.rows[rowIndex] ?? null;
  const origin = (offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;
  const ends = table.columns.map((column: ReadingColumn) => {
    const tail = /^\S*/u.exec(text.slice(column.range.start))![0].length;
    return column.range.start + tail - origin(column.range.start) - (table.headRange ? table.headRange.start - origin(table.headRange.start) : 0);
  });
  if (!row || row.cells.some((cell) => cell.text === '') || (row.extra?.length ?? 0) > 0) return { points: [], ends, remark: null };
  const from = origin(row.range.start) + (row.range.start - origin(row.range.start));
  const points = row.cells.map((cell) => cell.range.start - from + beforePoint(cell.text));
  return { points, ends, remark: row.remarkRange ? row.remarkRange.start - from : null };
}

/** One row laid out under rows that stand already; where a value does not fit, it moves right. */
export function layoutRow(row: LayoutRow, anchors: Anchors): string {
  let line = row.time;
  row.cells.forEach((cell, index) => {
    const point = anchors.points[index];
    const wanted = point === undefined ? (anchors.ends[index] ?? 0) - cell.length : point - beforePoint(cell);
    const start = wanted >= line.length + 1 ? wanted : line.length + 2;
    line = line + pad(start - line.length) + cell;
  });
  return row.remark === null ? line : `${line}   ; ${row.remark}`;
}
