// How a data file is laid out: its delimiter, the line of its heads, its decimal mark. Detected, never silently kept.
import papaparse from 'papaparse/papaparse.js';
import { isBlank, isData, type FileRow } from './dataCells.ts';
import { areUnits } from './fileUnits.ts';
import { readStamp } from './stamps.ts';

export const delimiters = { comma: ',', semicolon: ';', tab: '\t', bar: '|', space: ' ' } as const;
export type DelimiterName = keyof typeof delimiters;

/** Splits text into rows of cells; quoted cells may hold delimiters and line breaks. At most `limit` rows. */
export function splitRows(text: string, delimiter: string, limit = 0): FileRow[] {
  const plain = text.replace(/\r\n?/gu, '\n');
  if (delimiter === ' ') {
    return withWholeTimes(plain.split('\n', limit || undefined).map((line, index) => ({ cells: line.trim() === '' ? [''] : line.trim().split(/\s+/u), line: index + 1 })));
  }
  const { data, errors } = parse(plain, delimiter, limit);
  // A quote mark that nothing closes would swallow the rest of the file into one cell.
  if (errors.some((error) => error.code === 'MissingQuotes')) return splitLineByLine(plain, delimiter, limit);
  const rows: FileRow[] = [];
  let line = 1;
  for (const cells of data) {
    rows.push({ cells, line });
    line += 1;
    for (const cell of cells) if (cell.includes('\n')) line += cell.split('\n').length - 1;
  }
  return rows;
}

/** Spaces also split a date from its clock time: where the heads have one name for both, they are put together again. */
function withWholeTimes(rows: readonly FileRow[]): FileRow[] {
  const filled = rows.slice(0, 200).filter((row) => !isBlank(row));
  const width = usualWidth(filled);
  if (!filled.some((row) => row.cells.length === width - 1 && !row.cells.some(isData))) return [...rows];
  return rows.map((row) => {
    const at = row.cells.length < width ? -1 : row.cells.findIndex((cell, index) => {
      const [date, clock] = [readStamp(cell), readStamp(row.cells[index + 1] ?? '')];
      return date !== null && date.clock === null && clock !== null && clock.date === null;
    });
    return at < 0 ? row : { line: row.line, cells: row.cells.flatMap((cell, index) => (index === at ? [`${cell} ${row.cells[index + 1]!}`] : index === at + 1 ? [] : [cell])) };
  });
}

const parse = (text: string, delimiter: string, limit: number) => papaparse.parse(text, { delimiter, newline: '\n', quoteChar: '"', header: false, skipEmptyLines: false, ...(limit ? { preview: limit } : {}) });

/** Every line a row; quote marks count only where all of them are closed in their line. */
function splitLineByLine(text: string, delimiter: string, limit: number): FileRow[] {
  return text.split('\n', limit || undefined).map((line, index) => {
    const parsed = line.includes('"') ? parse(line, delimiter, 1) : null;
    return { cells: parsed && parsed.errors.length === 0 ? parsed.data[0] ?? [''] : line.split(delimiter), line: index + 1 };
  });
}

/** True for a row with something under no head: a delimiter too many in it. Empty cells at the end are a habit of many files. */
export function isTooWide(row: FileRow, width: number | null): boolean {
  return width !== null && row.cells.length > width && row.cells.slice(width).some((cell) => cell.trim() !== '');
}

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
    const score = (body.length / rows.length) * (clean / cells.length) * (name === 'space' ? 0.5 : 1);
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

/** A row's heads by which its columns can be told apart: a second column of one name, or one without, goes by its number. */
export function headNames(row: FileRow): string[] {
  const taken = new Set<string>();
  const names = row.cells.map((cell, index) => {
    const name = cell.trim();
    if (name !== '' && !taken.has(name)) { taken.add(name); return name; }
    return numberedColumn(index);
  });
  while (names.length > 0 && row.cells[names.length - 1]!.trim() === '') names.pop();
  return names;
}

const numberedColumn = (index: number): string => `column ${index + 1}`;

/** Names for the columns of a file without heads. */
export function numberedColumns(rows: readonly FileRow[]): string[] {
  return Array.from({ length: rows.slice(0, 200).reduce((widest, row) => Math.max(widest, row.cells.length), 0) }, (_, index) => numberedColumn(index));
}

/**
 * The row of the heads: the one that holds most of the wanted names, else the first full row without data
 * that stands above one with data. Without heads the columns are called `column 1`, `column 2`…
 */
export function detectHeads(rows: readonly FileRow[], wanted: readonly string[]): HeadLine {
  const unnamed: HeadLine = { at: -1, names: numberedColumns(rows) };
  if (wanted.length > 0) {
    let best = -1;
    let most = 0;
    rows.slice(0, 200).forEach((row, index) => {
      const held = new Set(headNames(row));
      const hits = wanted.filter((name) => held.has(name)).length;
      if (hits > most) { best = index; most = hits; }
    });
    if (best >= 0) return { at: best, names: headNames(rows[best]!) };
    if (wanted.every((name) => /^column \d+$/u.test(name))) return unnamed;
  }
  const width = usualWidth(rows.slice(0, 200).filter((row) => !isBlank(row)));
  const holdsData = (row: FileRow): boolean => !isBlank(row) && row.cells.filter(isData).length * 2 >= row.cells.filter((cell) => cell.trim() !== '').length;
  // A narrower line with a number in it is likely to belong to a preamble.
  const full = rows.findIndex((row) => row.cells.length >= width && holdsData(row));
  const firstData = full >= 0 ? full : rows.findIndex((row) => row.cells.length >= Math.min(width, 2) && holdsData(row));
  for (let index = (firstData < 0 ? rows.length : firstData) - 1; index >= 0; index -= 1) {
    const row = rows[index]!;
    if (isBlank(row) || row.cells.some(isData) || row.cells.length < width) continue;
    const above = rows[index - 1];
    // A line of units stands between the heads and the data.
    if (above && areUnits(row) && !isBlank(above) && !above.cells.some(isData) && above.cells.length >= width) continue;
    return { at: index, names: headNames(row) };
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
