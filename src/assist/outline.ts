// The outline of a note: the experiment, in it plan, days, blocks and single readings, named results, what is drawn and written.
// The range of every entry holds those of the entries in it, as outlines ask for.
import type { Note } from '../experiment/types.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import { drawnDetail } from './drawnTexts.ts';
import type { Block } from '../note/syntax.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { ReadingRow, ReadingsTable } from '../readings/types.ts';
import { formatClock, formatDate } from '../time/text.ts';

export type OutlineKind = 'experiment' | 'plan' | 'tank' | 'quantity' | 'event' | 'day' | 'readings' | 'reading' | 'values' | 'result' | 'drawn';

export interface OutlineEntry {
  readonly kind: OutlineKind;
  readonly name: string;
  readonly detail: string;
  readonly range: SourceRange;
  /** What is revealed when the entry is chosen; within `range`. */
  readonly selection: SourceRange;
  readonly inside: readonly OutlineEntry[];
}

export interface OutlineWords { /** `8 rows`. */ readonly rows: (count: number) => string }

/** The note's one entry: the experiment. Empty for a text without blocks. */
export function outlineOf(note: Note, words: OutlineWords): OutlineEntry[] {
  if (note.syntax.blocks.length === 0) return [];
  const heading = note.syntax.headings[0];
  const first = note.syntax.blocks[0]!;
  const question = note.protocol?.question?.value ?? '';
  const days = daysInOrder(note);
  const inside = [
    ...note.syntax.blocks.flatMap((block, index) => (days && block.word === 'readings' && rowsOf(note, index).length > 0 ? [] : [blockEntry(note, block, index, words)])),
    ...(days ?? []).map((day) => dayEntry(note, day, words)),
  ].sort((a, b) => a.range.start - b.range.start);
  return [{
    kind: 'experiment', name: (note.protocol?.title?.value ?? heading?.text ?? question).trim() || first.word, detail: question,
    range: { start: 0, end: note.text.length }, selection: heading?.range ?? first.infoRange, inside,
  }];
}

interface Day { readonly name: string; readonly parts: readonly { readonly block: number; readonly rows: readonly ReadingRow[] }[]; readonly range: SourceRange }

/** The days with their rows where each day is one stretch of the note; null where days interleave (several tables over the same days). */
function daysInOrder(note: Note): Day[] | null {
  const days = new Map<string, Map<number, ReadingRow[]>>();
  note.syntax.blocks.forEach((_, index) => {
    for (const row of rowsOf(note, index)) {
      const name = dayOf(note, row);
      const parts = days.get(name) ?? new Map<number, ReadingRow[]>();
      const rows = parts.get(index) ?? [];
      days.set(name, parts);
      parts.set(index, rows);
      rows.push(row);
    }
  });
  const found = [...days].map(([name, blocks]) => {
    const parts = [...blocks].map(([block, rows]) => ({ block, rows }));
    const rows = parts.flatMap((part) => part.rows);
    // A day whose readings all stand in one block that holds no other day takes the block whole.
    const only = parts.length === 1 && rowsOf(note, parts[0]!.block).length === rows.length ? note.syntax.blocks[parts[0]!.block] : undefined;
    return { name, parts, range: only?.range ?? { start: rows[0]!.range.start, end: rows.at(-1)!.range.end } };
  }).sort((a, b) => a.range.start - b.range.start);
  const apart = found.every((day, index) => index === 0 || found[index - 1]!.range.end <= day.range.start);
  const others = note.syntax.blocks.filter((block) => block.word !== 'readings');
  return apart && !found.some((day) => others.some((block) => block.range.start < day.range.end && block.range.end > day.range.start)) ? found : null;
}

/** The rows that stand in the note itself. */
function rowsOf(note: Note, block: number): readonly ReadingRow[] {
  const table = note.tables.find((each) => each.block === block);
  return table && !table.file ? table.rows : [];
}

const dayOf = (note: Note, row: ReadingRow): string => (row.instant === null || !note.protocol ? '?' : formatDate(row.instant, note.protocol.zone));

function dayEntry(note: Note, day: Day, words: OutlineWords): OutlineEntry {
  const inside = day.parts.map(({ block, rows }): OutlineEntry => {
    const table = note.tables.find((each) => each.block === block)!;
    const syntax = note.syntax.blocks[block]!;
    const whole = rows.length === table.rows.length;
    const range = whole && day.parts.length === 1 ? syntax.range : { start: rows[0]!.range.start, end: rows.at(-1)!.range.end };
    return { kind: 'readings', name: nameOf(syntax), detail: words.rows(rows.length), range, selection: whole && day.parts.length === 1 ? syntax.infoRange : rows[0]!.range, inside: rows.map((row) => rowEntry(note, table, row)) };
  });
  return { kind: 'day', name: day.name, detail: '', range: day.range, selection: inside[0]!.selection, inside };
}

/** A row by its time; its readings as they stand there. */
function rowEntry(note: Note, table: ReadingsTable, row: ReadingRow): OutlineEntry {
  const name = row.instant === null || !note.protocol ? row.timeText : formatClock(row.instant, note.protocol.zone);
  return { kind: 'reading', name: name || '?', detail: row.cells.slice(0, table.columns.length).map((cell) => cell.text).join('  '), range: row.range, selection: row.timeRange, inside: [] };
}

const nameOf = (block: Block): string => (block.name ? `${block.word} ${block.name}` : block.word);

function blockEntry(note: Note, block: Block, index: number, words: OutlineWords): OutlineEntry {
  const base = { name: nameOf(block), range: block.range, selection: block.infoRange };
  switch (block.word) {
    case 'protocol': return { ...base, kind: 'plan', detail: note.protocol?.question?.value ?? '', inside: planEntries(note, block) };
    case 'readings': {
      const table = note.tables.find((each) => each.block === index);
      const rows = rowsOf(note, index);
      return { ...base, kind: 'readings', detail: words.rows(table?.rows.length ?? 0), inside: rowsByDay(note, table, rows) };
    }
    case 'values': return { ...base, kind: 'values', detail: '', inside: note.results.filter((result) => result.block === index).flatMap((result) => {
      const formula = toDocumentRange(result.formula, { start: 0, end: result.formula.text.length });
      const range = { start: result.nameRange.start, end: Math.max(result.nameRange.end, formula.end) };
      return inBlock(block, range) ? [{ kind: 'result' as const, name: result.name, detail: result.formula.text.trim(), range, selection: result.nameRange, inside: [] }] : [];
    }) };
    default: return { ...base, kind: 'drawn', detail: block.word === 'figure' || block.word === 'summary' ? drawnDetail(block) : '', inside: [] };
  }
}

/** Days inside a table, for notes whose tables run side by side over the same days. */
function rowsByDay(note: Note, table: ReadingsTable | undefined, rows: readonly ReadingRow[]): OutlineEntry[] {
  if (!table) return [];
  const days: { name: string; rows: ReadingRow[] }[] = [];
  for (const row of rows) {
    const name = dayOf(note, row);
    if (days.at(-1)?.name === name) days.at(-1)!.rows.push(row);
    else days.push({ name, rows: [row] });
  }
  const entries = (some: readonly ReadingRow[]): OutlineEntry[] => some.map((row) => rowEntry(note, table, row));
  if (days.length < 2) return entries(rows);
  return days.map((day) => ({
    kind: 'day', name: day.name, detail: '', range: { start: day.rows[0]!.range.start, end: day.rows.at(-1)!.range.end }, selection: day.rows[0]!.timeRange, inside: entries(day.rows),
  }));
}

const inBlock = (block: Block, range: SourceRange): boolean => range.start >= block.range.start && range.end <= block.range.end;

function planEntries(note: Note, block: Block): OutlineEntry[] {
  if (!note.protocol) return [];
  const { tanks, measure, events } = note.protocol;
  const leaf = (kind: OutlineKind, name: string, detail: string, range: SourceRange): OutlineEntry[] => (
    name !== '' && inBlock(block, range) ? [{ kind, name, detail, range, selection: range, inside: [] }] : []);
  return [
    ...tanks.flatMap((tank) => leaf('tank', tank.id, [tank.label === tank.id ? '' : tank.label, tank.role?.value ?? ''].filter(Boolean).join(', '), tank.idRange)),
    ...measure.flatMap((quantity) => leaf('quantity', quantity.id, quantity.what?.value ?? '', quantity.idRange)),
    ...events.flatMap((event) => leaf('event', event.id ?? event.what, event.id ? event.what : '', event.range)),
  ].sort((a, b) => a.range.start - b.range.start);
}
