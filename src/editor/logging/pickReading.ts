// Which reading a command means: the one at the cursor; else one of the cursor's row; else any, the last ones first.
import * as vscode from 'vscode';
import { cellAt, rowAt, timeAt, type CellPlace, type RowPlace } from '../../edits/changeCell.ts';
import type { Note } from '../../experiment/types.ts';

/** A reading, or (without a column) the time of a row. */
export type ReadingPlace = CellPlace | RowPlace;
export const isCell = (place: ReadingPlace): place is CellPlace => 'column' in place;

/** The reading that is meant; `times` says that the time of a row may be meant as well. Null when nothing was picked. */
export async function readingFor(note: Note, offset: number, times: boolean): Promise<ReadingPlace | null> {
  const cell = cellAt(note, offset) ?? (times ? timeAt(note, offset) : null);
  if (cell) return cell;
  const row = rowAt(note, offset);
  const items = row ? itemsOf(note, row, times) : note.tables.flatMap((table, at) => (table.file ? [] : table.rows.flatMap((_, line) => itemsOf(note, { table: at, row: line }, times)))).reverse();
  const chosen = await vscode.window.showQuickPick(items, { title: vscode.l10n.t('Which reading?'), matchOnDescription: true });
  return chosen?.place ?? null;
}

/** `20:30 mat.DO 8.24`, or the time alone. */
export function describe(note: Note, place: ReadingPlace): string {
  const table = note.tables[place.table];
  const row = table?.rows[place.row];
  const cell = isCell(place) ? ` ${table?.columns[place.column]?.id ?? ''} ${row?.cells[place.column]?.text ?? ''}` : '';
  return `${row?.timeText ?? ''}${cell}`.trim();
}

interface Item extends vscode.QuickPickItem { readonly place: ReadingPlace }

function itemsOf(note: Note, place: RowPlace, times: boolean): Item[] {
  const table = note.tables[place.table]!;
  const row = table.rows[place.row]!;
  const cells = row.cells.flatMap((cell, column): Item[] => (cell.text === '' ? [] : [{ label: `${row.timeText}  ${table.columns[column]!.id}  ${cell.text}`, description: row.remark ?? '', place: { ...place, column } }]));
  return times ? [...cells, { label: row.timeText, description: vscode.l10n.t('the time of this row'), place }] : cells;
}
