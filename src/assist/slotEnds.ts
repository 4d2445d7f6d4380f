// What the ends of a table's lines can say about the plan: a row that came late or early, planned times that nobody read.
import { missedBehind, slotRecord, type OffTime } from '../dataset/slotRecord.ts';
import type { Note } from '../experiment/types.ts';
import type { Instant } from '../time/instant.ts';
import { lineAt } from './place.ts';

export interface SlotEnd {
  /** Offset of the line's end. */
  readonly at: number;
  readonly offTime: OffTime | null;
  /** Planned times behind this row that were not read; those before the first row stand behind the heads. */
  readonly missed: readonly Instant[];
}

/** One entry a line of the note's own tables that has something to say, in the order of the note. */
export function slotEnds(note: Note): SlotEnd[] {
  const tables = note.tables.filter((table) => table.file === null && table.headRange !== null);
  if (!note.protocol || tables.length === 0) return [];
  const record = slotRecord(note.tables, note.protocol);
  const missed = missedBehind(note.tables, record);
  const endOf = (offset: number): number => {
    const { end } = lineAt(note.text, offset);
    return note.text[end - 1] === '\r' ? end - 1 : end;
  };
  const ofRows = tables.flatMap((table) => table.rows).flatMap((row) => {
    const end = { at: endOf(row.range.start), offTime: record.offTime.get(row) ?? null, missed: missed.get(row) ?? [] };
    return end.offTime || end.missed.length > 0 ? [end] : [];
  });
  const before = missed.get(null) ?? [];
  const all = before.length > 0 ? [{ at: endOf(tables[0]!.headRange!.start), offTime: null, missed: before }, ...ofRows] : ofRows;
  return all.sort((a, b) => a.at - b.at);
}
