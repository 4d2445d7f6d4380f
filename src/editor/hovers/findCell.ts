// The cell of a readings block at a place in the note.
import type { Note } from '../../experiment/types.ts';
import type { SourceRange } from '../../problems/problem.ts';
import type { Cell, ReadingColumn, ReadingRow, ReadingsTable } from '../../readings/types.ts';

export interface FoundCell { readonly table: ReadingsTable; readonly row: ReadingRow; readonly column: ReadingColumn; readonly cell: Cell; readonly index: number }

const holds = (range: SourceRange, offset: number) => range.start <= offset && offset <= range.end;

/** The table whose block stands at this offset. Rows of file tables have no place of their own in the note. */
export function tableAt(note: Note, offset: number): ReadingsTable | null {
  return note.tables.find((table) => {
    const block = note.syntax.blocks[table.block];
    return block !== undefined && holds(block.range, offset);
  }) ?? null;
}

export function cellAt(note: Note, offset: number): FoundCell | null {
  const table = tableAt(note, offset);
  if (!table || table.file) return null;
  const row = table.rows.find((each) => holds(each.range, offset));
  const index = row?.cells.findIndex((each) => holds(each.range, offset)) ?? -1;
  const cell = row?.cells[index];
  const column = table.columns[index];
  return row && cell && column ? { table, row, column, cell, index } : null;
}
