// How a data file is laid out: its delimiter, the line of its heads, its decimal mark. Detected, never silently kept.
import papaparse from 'papaparse/papaparse.js';
import { readStamp } from './stamps.ts';

export const delimiters = { comma: ',', semicolon: ';', tab: '\t', bar: '|', space: ' ' } as const;
export type DelimiterName = keyof typeof delimiters;

export interface FileRow { readonly cells: readonly string[]; /** From 1. */ readonly line: number }

/** Splits text into rows of cells; quoted cells may hold delimiters and line breaks. At most `limit` rows. */
export function splitRows(text: string, delimiter: string, limit = 0): FileRow[] {
  if (delimiter === ' ') {
    return text.split(/\r\n|\n|\r/u, limit || undefined).map((line, index) => ({ cells: line.trim() === '' ? [''] : line.trim().split(/\s+/u), line: index + 1 }));
  }
  const { data } = papaparse.parse(text, { delimiter, quoteChar: '"', header: false, skipEmptyLines: false, ...(limit ? { preview: limit } : {}) });
  const rows: FileRow[] = [];
  let line = 1;
  for (const cells of data) {
    rows.push({ cells, line });
    line += 1;
    for (const cell of cells) if (cell.includes('\n') || cell.includes('\r')) line += cell.split(/\r\n|\n|\r/u).length - 1;
  }
  return rows;
}

export const isBlank = (row: FileRow): boolean => row.cells.every((cell) => cell.trim() === '');
const numeric = /^[<>]?[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?$/u;

/** True for a cell that holds data: a number or a time, nothing else glued to it. */
const isData = (cell: string): boolean => { const text = cell.trim(); return numeric.test(text) || readStamp(text) !== null; };

/** The delimiter that leaves the most cells clean; null when the file has one column or none. */
export function detectDelimiter(text: string): DelimiterName | null {
  let best: { name: DelimiterName; score: number } | null = null;
  for (const name of ['tab', 'semicolon', 'comma', 'bar', 'space'] as const) {
    const rows = splitRows(text, delimiters[name], 120).filter((row) => !isBlank(row));
    const width = usualWidth(rows);
    if (width < 2) continue;
    const body = rows.filter((row) => row.cells.length === width);
    const cells = body.flatMap((row) => row.cells);
    const clean = cells.filter((cell) => cell.trim() === '' || isData(cell)).length;
    // Space is the last resort: it also splits a date from its time.
    const score = (body.length / rows.length) * (clean / cells.length) * (name === 'space' ? 0.7 : 1);
    if (!best || score > best.score + 1e-9) best = { name, score };
  }
  return best?.name ?? null;
}

function usualWidth(rows: readonly FileRow[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) counts.set(row.cells.length, (counts.get(row.cells.length) ?? 0) + 1);
  let width = 0;
  let most = 0;
  for (const [cells, count] of counts) if (count > most || (count === most && cells > width)) { width = cells; most = count; }
  return width;
}

export interface HeadLine { /** Index into the rows; -1 when the file has no heads. */ readonly at: number; readonly names: readonly string[] }

/**
 * The row of the heads: the one that holds most of the wanted names, else the first full row without data
 * that stands above one with data. Without heads the columns are called `column 1`, `column 2`…
 */
export function detectHeads(rows: readonly FileRow[], wanted: readonly string[]): HeadLine {
  const names = (row: FileRow): string[] => row.cells.map((cell) => cell.trim());
  const wide = Math.max(0, ...rows.slice(0, 200).map((row) => row.cells.length));
  const unnamed: HeadLine = { at: -1, names: Array.from({ length: wide }, (_, index) => `column ${index + 1}`) };
  if (wanted.length > 0) {
    let best = -1;
    let most = 0;
    rows.slice(0, 200).forEach((row, index) => {
      const held = new Set(names(row));
      const hits = wanted.filter((name) => held.has(name)).length;
      if (hits > most) { best = index; most = hits; }
    });
    if (best >= 0) return { at: best, names: names(rows[best]!) };
    if (wanted.every((name) => /^column \d+$/u.test(name))) return unnamed;
  }
  const width = usualWidth(rows.slice(0, 200).filter((row) => !isBlank(row)));
  const firstData = rows.findIndex((row) => row.cells.length >= Math.min(width, 2) && row.cells.filter(isData).length * 2 >= row.cells.filter((cell) => cell.trim() !== '').length && !isBlank(row));
  for (let index = (firstData < 0 ? rows.length : firstData) - 1; index >= 0; index -= 1) {
    const row = rows[index]!;
    if (isBlank(row) || row.cells.some(isData) || row.cells.length < width) continue;
    return { at: index, names: names(row) };
  }
  return unnamed;
}

export type DecimalMark = '.' | ',';

/** The decimal mark that the cells show; null when none has decimals; `unclear` when a comma may stand between thousands. */
export function detectDecimal(cells: Iterable<string>): DecimalMark | 'unclear' | null {
  let points = 0;
  let commas = 0;
  let thousands = 0;
  for (const cell of cells) {
    const text = cell.trim().replace(/^[<>]/u, '');
    if (/^[+-]?\d{1,3}(?:,\d{3})+\.\d+$/u.test(text) || /^[+-]?\d*\.\d+(?:[eE][+-]?\d+)?$/u.test(text)) points += 1;
    else if (/^[+-]?\d{1,3}(?:\.\d{3})+,\d+$/u.test(text)) commas += 1;
    else if (/^[+-]?[1-9]\d{0,2},\d{3}$/u.test(text)) thousands += 1;
    else if (/^[+-]?\d*,\d+$/u.test(text)) commas += 1;
  }
  if (commas > 0) return points > commas ? '.' : ',';
  if (points > 0) return '.';
  return thousands > 0 ? 'unclear' : null;
}
