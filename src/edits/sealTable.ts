// Seals a readings table: one line under its heads, with a hash over times, units and first values.
import type { Note } from '../experiment/types.ts';
import { sealText, verifySeal as verify, type SealState } from '../readings/seal.ts';
import type { Instant } from '../time/instant.ts';
import { done, lineBelow, prefixOf, refused, type EditResult } from './edit.ts';

/** Edits that seal the table at `now`. A valid seal stays; a broken one is not covered up by a new one. */
export function sealBlock(note: Note, tableIndex: number, now: Instant): EditResult {
  const table = note.tables[tableIndex];
  if (!note.protocol) return refused('no-protocol');
  if (!table || !table.headRange) return refused('no-table');
  if (table.file) return refused('table-in-file', { path: table.file.path });
  if (table.sealed) return refused(verify(table).state === 'valid' ? 'already-sealed' : 'seal-broken');
  if (table.rows.length === 0) return refused('nothing-to-seal');
  const unreadable = table.rows.some((row) => row.instant === null || (row.extra?.length ?? 0) > 0 || row.cells.some((cell) => cell.state.kind === 'unreadable'));
  if (unreadable) return refused('rows-unreadable');
  return done([lineBelow(note.text, table.headRange.end, prefixOf(note.text, table.headRange.start), sealText(table, now, note.protocol.zone))]);
}

/** Whether the table is as it was sealed, and which cells are not. */
export function verifySeal(note: Note, tableIndex: number): SealState {
  const table = note.tables[tableIndex];
  return table ? verify(table) : { state: 'none' };
}
