// A row on its way into the note: what a journal keeps from Enter until the note is on disk. Heads stand by name, so that
// the row finds its columns again when the table was changed meanwhile, and writing it twice changes nothing.
import * as z from 'zod/mini';
import type { Note } from '../experiment/types.ts';
import { firstValue } from '../readings/seal.ts';
import type { ReadingsTable } from '../readings/types.ts';
import { second } from '../time/instant.ts';
import { refused, type EditResult, type Message } from './edit.ts';
import { logRow } from './logRow.ts';
import { openTable, planRow, type RowPlan } from './planRow.ts';
import { readRowInput, type RowInput } from './readRowInput.ts';

const journalEntry = z.object({
  id: z.string(),
  /** When the readings were taken. */
  time: z.number(),
  /**
   * Empty for a row that was typed while the plan or the table could not be read: `typed` is read when it is written,
   * and `time` is the moment of typing. */
  values: z.array(z.object({ head: z.string(), text: z.string() })),
  remark: z.catch(z.nullable(z.string()), null),
  /** As it was typed, to be shown when the row cannot be written. */
  typed: z.string(),
});

export type PendingRow = Readonly<z.infer<typeof journalEntry>>;

/** The row that a complete input stands for; null while something is missing or wrong. */
export function pendingRow(input: RowInput, plan: RowPlan, typed: string, id: string): PendingRow | null {
  const { row } = input;
  if (!row) return null;
  return { id, time: Math.floor(input.time / second) * second, values: plan.columns.map((column) => ({ head: column.id, text: row[column.index]! })), remark: input.remark, typed };
}

export type WriteResult = EditResult & { /** True when the note holds the row already. */ readonly already?: boolean };

/** Edits that write the row. None when every value of it stands at its time already, as a first or as the present value. */
export function writePending(note: Note, row: PendingRow): WriteResult {
  if (!note.protocol) return refused('no-protocol');
  for (const table of note.tables) {
    const at = heldBy(table, row);
    if (at) return { ok: true, edits: [], shows: at, already: true };
  }
  const broken = brokenTable(note);
  if (broken) return refused('table-broken');
  const plan = planRow(note, row.time);
  if (!plan) return refused('no-protocol');
  if (row.values.length === 0) return writeUnread(note, row, plan);
  const gone = row.values.find((value) => value.text !== '-' && !plan.columns.some((column) => column.id === value.head));
  if (gone) return refused('column-gone', { head: gone.head });
  const cells = new Array<string>(plan.columns.length);
  for (const column of plan.columns) cells[column.index] = row.values.find((value) => value.head === column.id)?.text ?? '-';
  return logRow(note, { time: row.time, cells, remark: row.remark, table: plan.table });
}

/** A row that was kept as it was typed: read now, as if it were typed at its moment. */
function writeUnread(note: Note, row: PendingRow, plan: RowPlan): WriteResult {
  const read = pendingRow(readRowInput(row.typed, note, plan), plan, row.typed, row.id);
  return read ? writePending(note, read) : refused('table-broken');
}

/** The place of the row that holds all these values at this time. A row of gaps alone is never "there already". */
function heldBy(table: ReadingsTable, row: PendingRow): { start: number; end: number } | null {
  const taken = row.values.filter((value) => value.text !== '-');
  if (table.file || taken.length === 0) return null;
  const found = table.rows.find((each) => (each.instant === row.time || each.firstInstant === row.time) && taken.every(({ head, text }) => {
    const cell = each.cells[table.columns.findIndex((column) => column.id === head)];
    return cell !== undefined && cell.text !== '' && (firstValue(cell) === text.replace(/^\(+|[)?]+$/gu, '') || cell.state.text === text);
  }));
  return found ? found.range : null;
}

/** The last table that is typed in the note and not sealed, where it cannot take rows: nothing is logged past it. */
export function brokenTable(note: Note): ReadingsTable | null {
  const last = note.tables.findLastIndex((table) => !table.file && !table.sealed);
  if (last < 0) return null;
  const table = note.tables[last]!;
  const head = table.headRange;
  const wrongHeads = head !== null && note.problems.some((each) => each.severity === 'error' && each.range.start >= head.start && each.range.end <= head.end);
  return wrongHeads || last !== openTable(note) ? table : null;
}

/** The text of a journal entry: one row, one file. */
export const pendingText = (row: PendingRow): string => `${JSON.stringify(row)}\n`;

/** The row of a journal entry; null for one that was torn off while it was written, and for anything else. */
export function readPending(text: string): PendingRow | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  return journalEntry.safeParse(value).data ?? null;
}

/** Messages after which the same row can still be written once the note is mended; after any other it never can. */
const mendable: ReadonlySet<string> = new Set(['no-protocol', 'no-table', 'table-broken', 'column-gone']);
export const canBeMended = (message: Message): boolean => mendable.has(message.code);
