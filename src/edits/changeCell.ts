// Corrects a reading, leaves one out, marks one as doubtful, adds a remark. The first value always stays in the table.
import type { Note } from '../experiment/types.ts';
import type { TextEdit } from '../problems/problem.ts';
import { readCell } from '../readings/cell.ts';
import { measureFor } from '../readings/heads.ts';
import { readTimePart } from '../readings/times.ts';
import type { Cell, ReadingColumn, ReadingRow, ReadingsTable } from '../readings/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { done, lineEnd, refused, tableAfter, type EditResult } from './edit.ts';
import { cleanRemark } from './logRow.ts';

/** Where a row stands: indexes into `note.tables` and its rows; and a reading, by its column as well. */
export interface RowPlace { readonly table: number; readonly row: number }
export interface CellPlace extends RowPlace { readonly column: number }

interface Found { readonly protocol: Protocol; readonly table: ReadingsTable; readonly row: ReadingRow; readonly cell: Cell; readonly column: ReadingColumn }

function find(note: Note, place: CellPlace): Found | EditResult {
  if (!note.protocol) return refused('no-protocol');
  const table = note.tables[place.table];
  if (!table) return refused('no-table');
  if (table.file) return refused('table-in-file', { path: table.file.path });
  const row = table.rows[place.row];
  const cell = row?.cells[place.column];
  const column = table.columns[place.column];
  if (!row || !cell || !column || cell.text === '') return refused('no-row');
  return { protocol: note.protocol, table, row, cell, column };
}

/** The cell at an offset of the note's text, for commands that start where the cursor is; null when there is none. */
export function cellAt(note: Note, offset: number): CellPlace | null {
  for (const [table, each] of note.tables.entries()) {
    if (each.file) continue;
    for (const [row, line] of each.rows.entries()) {
      if (offset < line.range.start || offset > lineEnd(note.text, line.range.end)) continue;
      const column = line.cells.findIndex((cell) => cell.text !== '' && offset >= cell.range.start && offset <= cell.range.end);
      return column < 0 ? null : { table, row, column };
    }
  }
  return null;
}

/** The row (of any column) at an offset; null when there is none. */
export function rowAt(note: Note, offset: number): RowPlace | null {
  for (const [table, each] of note.tables.entries()) {
    if (each.file) continue;
    const row = each.rows.findIndex((line) => offset >= line.range.start && offset <= lineEnd(note.text, line.range.end));
    if (row >= 0) return { table, row };
  }
  return null;
}

/** The row whose time stands at an offset; null when there is none. */
export function timeAt(note: Note, offset: number): RowPlace | null {
  const place = rowAt(note, offset);
  const range = place && note.tables[place.table]!.rows[place.row]!.timeRange;
  return range && offset >= range.start && offset <= range.end ? place : null;
}

/**
 * Corrects a reading: `8.28` becomes `8.28->8.26`, a gap `-->8.26`, a withdrawn reading `8.28->-`. A reading that was left
 * out stays left out; a doubt about the old value does not go over to the new one. The reason is added to the remark.
 */
export function correctReading(note: Note, place: CellPlace, newText: string, reason: string): EditResult {
  const found = find(note, place);
  if ('ok' in found) return found;
  const { protocol, cell, column } = found;
  const scale = measureFor(protocol, column.quantity, column.instrument)?.scale ?? null;
  const typed = newText.trim();
  const reading = readCell(typed, { scale });
  if (/[\s;#]/u.test(typed) || reading.state.kind === 'unreadable' || reading.thousands || reading.earlier.length > 0 || reading.leftOut) {
    return refused('unreadable', { text: typed || 'nothing', head: column.id });
  }
  const value = reading.withPoints ?? typed;
  if (plainText(cell) === value || cell.state.text === value) return refused('same-value', { text: value });
  if (cleanRemark(reason) === null) return refused('reason-missing');
  const whole = /^\(([^()]+)\)(\??)$/u.exec(cell.text);
  // A gap that is corrected: `-->8.26`. Marks of the whole cell stay around the chain.
  const text = whole ? `(${whole[1]!}${whole[2]!}->${value})` : `${cell.text}->${value}`;
  return changed(note, found, text, reason);
}

/** The value that counts, without marks. */
function plainText(cell: Cell): string {
  return cell.state.text.replace(/^\(|[)?]+$/gu, '');
}

/** Corrects a row's time: `20:30->20:35`. The time is written as typed; other rows must keep theirs. */
export function correctTime(note: Note, place: RowPlace, newText: string, reason: string): EditResult {
  const table = note.tables[place.table];
  const row = table?.rows[place.row];
  if (!note.protocol) return refused('no-protocol');
  if (!table || !row) return refused('no-row');
  if (table.file) return refused('table-in-file', { path: table.file.path });
  const typed = newText.trim();
  if (readTimePart(typed) === null) return refused('time-unreadable', { text: typed });
  if (row.timeText.endsWith(typed)) return refused('same-value', { text: typed });
  if (cleanRemark(reason) === null) return refused('reason-missing');
  const edits: TextEdit[] = [{ range: row.timeRange, newText: `${row.timeText}->${typed}` }, ...remarkEdit(note, row, `time: ${cleanRemark(reason)!}`)];
  const after = tableAfter(note, table, edits);
  const others = after?.rows.every((each, at) => at === place.row ? each.instant !== null : each.instant === table.rows[at]!.instant) ?? false;
  return others ? done(edits) : refused('time-not-written', { time: typed });
}

/** Leaves a reading out of every calculation: `4.90` becomes `(4.90)`; it stays in the table, with the reason. */
export function leaveOut(note: Note, place: CellPlace, reason: string): EditResult {
  const found = find(note, place);
  if ('ok' in found) return found;
  const { cell } = found;
  if (cell.leftOut) return refused('already-left-out');
  if (cell.state.kind === 'missing' || cell.state.kind === 'unreadable') return refused('nothing-to-mark');
  if (cleanRemark(reason) === null) return refused('reason-missing');
  // Parentheses inside the chain belong to earlier values; around the last value only, then.
  const text = cell.text.includes('(') ? cell.text.replace(/(?<=^|->)((?:(?!->).)+)$/u, '($1)') : `(${cell.text})`;
  return changed(note, found, text, reason);
}

/** Marks a reading as doubtful: used, drawn hollow, named in the methods. The reason may be left out. */
export function markDoubtful(note: Note, place: CellPlace, reason = ''): EditResult {
  const found = find(note, place);
  if ('ok' in found) return found;
  const { cell } = found;
  if (cell.doubtful) return refused('already-doubtful');
  if (cell.state.kind === 'missing' || cell.state.kind === 'unreadable') return refused('nothing-to-mark');
  return changed(note, found, cell.text.endsWith(')') ? `${cell.text.slice(0, -1)}?)` : `${cell.text}?`, reason);
}

/** Adds words to a row's remark. */
export function addRemark(note: Note, place: RowPlace, words: string): EditResult {
  const table = note.tables[place.table];
  const row = table?.rows[place.row];
  if (!table || !row) return refused('no-row');
  if (table.file) return refused('table-in-file', { path: table.file.path });
  const clean = cleanRemark(words);
  return clean === null ? refused('remark-empty') : done(remarkEdit(note, row, clean));
}

/** The edits of a changed cell and of the remark that says why. What they say is read again before they are handed out. */
function changed(note: Note, found: Found, text: string, reason: string): EditResult {
  const { table, row, cell, column } = found;
  const clean = cleanRemark(reason);
  const named = clean === null ? null : clean.includes(column.id) ? clean : `${column.id}: ${clean}`;
  const edits: TextEdit[] = [replacedCell(note.text, cell, text), ...(named === null ? [] : remarkEdit(note, row, named))];
  const after = tableAfter(note, table, edits);
  const at = table.rows.indexOf(row);
  const there = after?.rows[at]?.cells[table.columns.indexOf(column)];
  const first = (each: Cell): string => (each.earlier[0] ?? each.state).text.replace(/[()?]/gu, '');
  if (!after || after.rows.length !== table.rows.length || !there || there.state.kind === 'unreadable' || first(there) !== first(cell)) return refused('table-broken');
  return done(edits);
}

/** A cell's new text. It takes of the spaces around it, so that its digits and the cells to its right stay where they are as far as that goes. */
function replacedCell(text: string, { range }: Cell, newText: string): TextEdit {
  const opens = newText.startsWith('(') && text[range.start] !== '(' && text.slice(range.start - 2, range.start) === '  ';
  const start = opens ? range.start - 1 : range.start;
  const gap = /^ */u.exec(text.slice(range.end, range.end + 80))![0].length;
  const next = text[range.end + gap] ?? '\n';
  if (/[\r\n]/u.test(next)) return { range: { start, end: range.end }, newText };
  const longer = newText.length - (range.end - start);
  const kept = next === '\t' ? gap : Math.max(Math.min(gap, 2), gap - longer, 1);
  return { range: { start, end: range.end + gap }, newText: newText + ' '.repeat(kept) };
}

/** Words added to the end of a row's remark, or a remark of their own. */
export function remarkEdit(note: Note, row: ReadingRow, words: string): TextEdit[] {
  if (row.remarkRange) return [{ range: { start: row.remarkRange.end, end: row.remarkRange.end }, newText: `; ${words}` }];
  const end = lineEnd(note.text, row.range.end);
  const rest = note.text.slice(row.range.end, end);
  // A bare `;` is already there.
  const bare = rest.indexOf(';');
  if (bare >= 0) return [{ range: { start: row.range.end + bare + 1, end }, newText: ` ${words}` }];
  return [{ range: { start: row.range.end, end }, newText: `   ; ${words}` }];
}
