// Imports what was proposed: a block of readings, or a pinned reference to the file. What cannot be read is kept, never dropped.
import { readGround } from '../experiment/ground.ts';
import type { Note } from '../experiment/types.ts';
import { readSyntax } from '../note/readSyntax.ts';
import type { Block } from '../note/syntax.ts';
import { sha256Of } from '../protocol/sha256.ts';
import { dataPath } from '../readings/file/dataPath.ts';
import { yamlText } from '../readings/file/fileKeys.ts';
import { applyEdits, lineBreakOf, refused, type EditResult } from './edit.ts';
import { insertBlock, outsideBlocks } from './insertReadingsTable.ts';
import { cleanRemark } from './logRow.ts';
import type { ImportProposal } from './importProposal.ts';
import { layoutTable, type LayoutRow } from './tableLayout.ts';

/** The text of the block that a proposal becomes. Lines whose time cannot be read are kept as comments. */
export function importedBlockText(proposal: ImportProposal, lineBreak = '\n'): string {
  const heads = ['time', ...proposal.heads];
  const kept = proposal.rows.filter((row) => row.time !== null);
  const [head, ...laidOut] = layoutTable(heads, kept.map((row): LayoutRow => ({ time: row.time!, cells: row.cells, remark: row.remark })));
  let at = 0;
  const body = proposal.rows.map((row) => (row.time === null ? `# not read, line ${row.line}: ${cleanRemark(row.raw) ?? ''}` : laidOut[at++]!));
  return ['```readings', head!, ...body, '```', ''].join(lineBreak);
}

/** Edits that put the proposal into the note as a block of readings: one step to undo. */
export function importTable(note: Note, proposal: ImportProposal, offset: number): EditResult {
  if (proposal.asks.length > 0) return { ok: false, message: proposal.asks[0]! };
  return insertQuietly(note, offset, importedBlockText(proposal, lineBreakOf(note.text)));
}

/**
 * The block at the place; where it would not be a block there (inside other code), or would move readings that stand (a table
 * without dates takes its day from the table above it), behind the last table of the note, else at its end.
 */
function insertQuietly(note: Note, offset: number, block: string): EditResult {
  const last = note.syntax.blocks.findLast((each) => each.word === 'readings')?.range.end ?? note.text.length;
  const places = [outsideBlocks(note, offset), last, note.text.length].map((place) => insertBlock(note.text, place, block));
  return places.find((result) => result.ok && standsQuietly(note, applyEdits(note.text, result.edits))) ?? refused('no-place');
}

/** True when the text has one more block of readings, and every reading that stood before has kept its time. */
function standsQuietly(note: Note, text: string): boolean {
  const { blocks } = readSyntax(text);
  const readings = (all: readonly Block[]): number => all.filter((each) => each.word === 'readings').length;
  if (readings(blocks) !== readings(note.syntax.blocks) + 1) return false;
  if (note.tables.length === 0) return true;
  const { tables } = readGround(blocks, note.ground.files, null);
  const times = new Set(tables.flatMap((table) => table.rows.map((row) => row.instant)));
  return note.tables.every((table) => table.rows.every((row) => times.has(row.instant)));
}

/** Edits that put a pinned reference to the file into the note. `path` is relative to the note, with forward slashes. */
export function importFile(note: Note, proposal: ImportProposal, path: string, bytes: Uint8Array, offset: number): EditResult {
  if (proposal.asks.length > 0) return { ok: false, message: proposal.asks[0]! };
  if (proposal.clockOnly) return refused('time-unreadable', { text: proposal.rows[0]?.time ?? '' });
  if (dataPath(path) === null) return refused('nothing-to-import');
  return insertQuietly(note, offset, fileBlockText(proposal, path, bytes, lineBreakOf(note.text)));
}

/** Edits that name a file of readings and nothing more; reading the note then asks for its columns. */
export function bareReference(note: Note, path: string, offset: number): EditResult {
  if (dataPath(path) === null) return refused('nothing-to-import');
  return insertQuietly(note, offset, ['```readings', `from: ${yamlText(path)}`, '```', ''].join(lineBreakOf(note.text)));
}

/** The text of a block that pins a file, with everything that was detected written down. */
export function fileBlockText(proposal: ImportProposal, path: string, bytes: Uint8Array, lineBreak = '\n'): string {
  const dated = proposal.rows.length > 0;
  const lines = [
    '```readings', `from: ${yamlText(path)}`, 'columns:',
    ...proposal.columns.flatMap((column) => (column.to === null ? [] : [`  ${yamlText(column.from)}: ${column.to}`])),
    ...(dated && !proposal.offsets ? [`time zone: ${yamlText(proposal.timeZone)}`] : []),
    `delimiter: ${proposal.delimiter}`,
    ...(proposal.decimal ? [`decimal: ${proposal.decimal === ',' ? 'comma' : 'point'}`] : []),
    ...(proposal.dateOrder && proposal.dateOrder !== 'year-month-day' ? [`date order: ${proposal.dateOrder}`] : []),
    ...(proposal.headerLine === 1 ? [] : [`header line: ${proposal.headerLine}`]),
    ...(proposal.encoding === 'utf-8' ? [] : [`encoding: ${proposal.encoding}`]),
    `sha256: ${sha256Of(bytes)}`, '```', '',
  ];
  return lines.join(lineBreak);
}
