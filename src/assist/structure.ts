// The note's structure for folding and growing selections: blocks, days of a long table, cells, rows, claims and their parts.
import type { Note } from '../experiment/types.ts';
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import { repeatFacts } from '../protocol/planSeal.ts';
import { splitLines } from '../readings/lines.ts';
import { walkPlan } from './planWalk.ts';

/** A stretch that can be folded, by offsets: its first line stays. */
export type Fold = SourceRange;

const whole = (mapped: MappedText): SourceRange => toDocumentRange(mapped, { start: 0, end: mapped.text.length });

/** Blocks, days in readings tables, and the plan's keys that hold lines. Headings fold as Markdown folds them. */
export function folds(note: Note): Fold[] {
  const found: Fold[] = note.syntax.blocks.map((block) => block.range);
  for (const block of note.syntax.blocks) {
    if (block.word !== 'readings') continue;
    const lines = splitLines(block.content.text);
    const days = lines.filter((line) => line.kind === 'day');
    days.forEach((line, index) => {
      const next = days[index + 1];
      const last = lines.filter((each) => each.kind === 'cells' && each.start > line.start && (!next || each.end < next.start)).at(-1);
      if (last) found.push(toDocumentRange(block.content, { start: line.start, end: last.end }));
    });
  }
  for (const key of walkPlan(note).nodes) if (key.end > key.start && note.text.slice(key.start, key.end).trimEnd().includes('\n')) found.push({ start: key.start, end: key.start + note.text.slice(key.start, key.end).trimEnd().length });
  return found.filter((each) => note.text.slice(each.start, each.end).includes('\n'));
}

/** Stretches around an offset, the narrowest first, each holding the one before it. */
export function stretchesAt(note: Note, offset: number): SourceRange[] {
  const found: SourceRange[] = [];
  const add = (range: SourceRange | null | undefined): void => { if (range && range.start <= offset && offset <= range.end && range.end > range.start) found.push(range); };
  for (const claim of note.claims) {
    if (offset < claim.syntax.range.start || offset > claim.syntax.range.end) continue;
    add(claim.syntax.range);
    add(whole(claim.syntax.words));
    add(whole(claim.syntax.formula));
  }
  for (const result of note.results) {
    add(result.nameRange);
    add(whole(result.formula));
    add({ start: result.nameRange.start, end: whole(result.formula).end });
  }
  for (const table of note.tables) {
    const block = note.syntax.blocks[table.block];
    if (!block || offset < block.range.start || offset > block.range.end || table.file) continue;
    add(table.headRange);
    for (const column of table.columns) add(column.range);
    for (const row of table.rows) {
      if (offset < row.range.start || offset > row.range.end) continue;
      for (const range of [row.range, row.timeRange, row.remarkRange, ...row.cells.map((cell) => cell.range)]) add(range);
    }
    const last = table.rows.at(-1);
    if (last) add({ start: table.rows[0]!.range.start, end: last.range.end });
    if (last && table.headRange) add({ start: table.headRange.start, end: last.range.end });
  }
  for (const block of note.syntax.blocks) {
    if (offset < block.range.start || offset > block.range.end) continue;
    add(whole(block.content));
    add(block.range);
    if (block.word === 'protocol') walkPlan(note).nodes.forEach(add);
  }
  const sorted = found.sort((a, b) => (a.end - a.start) - (b.end - b.start));
  const chain: SourceRange[] = [];
  for (const range of sorted) {
    const inner = chain.at(-1);
    if (!inner || (range.start <= inner.start && range.end >= inner.end && (range.start < inner.start || range.end > inner.end))) chain.push(range);
  }
  return chain;
}

/** The data files that readings blocks point to, and the note that the plan repeats, at the place of their path. */
export function fileLinks(note: Note): { readonly range: SourceRange; readonly path: string }[] {
  const files = note.tables.flatMap((table) => (table.file && table.file.state !== 'outside' ? [{ range: table.file.range, path: table.file.path }] : []));
  const link = note.protocol?.repeats;
  const path = note.protocol && repeatFacts(note.protocol)?.name;
  const at = link && path ? note.text.indexOf(path, link.range.start) : -1;
  return link && path && at >= 0 && at < link.range.end ? [{ range: { start: at, end: at + path.length }, path }, ...files] : files;
}
