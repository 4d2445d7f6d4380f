// Writes a readings table from the plan: the heads of everything that is measured, and one row for every planned time.
import type { Note } from '../experiment/types.ts';
import { placesOf, readHead } from '../readings/heads.ts';
import type { ReadingColumn } from '../readings/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { day, type Instant } from '../time/instant.ts';
import { formatClock, formatDate, formatInstant } from '../time/text.ts';
import { instantOf, wallTimeOf } from '../time/zone.ts';
import { done, lineBreakOf, refused, type EditResult } from './edit.ts';
import { tankOrder } from './tankOrder.ts';
import { layoutTable, type LayoutRow } from './tableLayout.ts';

/** Heads for everything that is measured: tank by tank in the planned order, then the room. */
export function plannedHeads(protocol: Protocol): string[] {
  // A table keeps one order of columns, also where the order of reading changes from slot to slot.
  const tanks = protocol.orderRule ? protocol.tanks.map((tank) => tank.id) : tankOrder(protocol, null);
  const heads = [...tanks, 'room'].flatMap((place) => protocol.measure
    .filter((entry) => placesOf(entry, protocol).includes(place)).map((entry) => `${place}.${entry.id}`));
  return [...new Set(heads)];
}

/** The columns that those heads stand for. */
export function plannedColumns(protocol: Protocol): Omit<ReadingColumn, 'range'>[] {
  return plannedHeads(protocol).map((head) => readHead({ text: head, start: 0, end: head.length }, protocol, new Set()).column);
}

/** Times of the plan as a table writes them: clock times, with day lines where the run lasts more than a day. */
export function plannedLines(protocol: Protocol, slots: readonly Instant[]): { text: string; slot: Instant | null }[] {
  const { zone, schedule } = protocol;
  const long = schedule !== null && schedule.end !== null && schedule.end - schedule.start > day;
  const lines: { text: string; slot: Instant | null }[] = [];
  let date = '';
  slots.forEach((slot, index) => {
    const today = formatDate(slot, zone);
    // A step over midnight of more than 12 h needs its day as well.
    const far = index > 0 && today !== date && slot - slots[index - 1]! > day / 2;
    if ((long && today !== date) || far) lines.push({ text: `# ${today}`, slot: null });
    date = today;
    const plain = instantOf(wallTimeOf(slot, zone), zone).kind === 'single';
    lines.push({ text: plain ? formatClock(slot, zone) : `${today}T${formatClock(slot, zone)}${formatInstant(slot, zone).slice(19)}`, slot });
  });
  return lines;
}

/** The text of a whole readings block with every planned time laid out, ready to be logged into; `rows: false` gives heads only. */
export function readingsBlockText(protocol: Protocol, options: { rows?: boolean; lineBreak?: string } = {}): string {
  const lineBreak = options.lineBreak ?? '\n';
  const heads = ['time', ...plannedHeads(protocol)];
  const lines = options.rows === false ? [] : plannedLines(protocol, protocol.schedule?.slots ?? []);
  const rows = lines.filter((line) => line.slot !== null).map((line): LayoutRow => ({ time: line.text, cells: heads.slice(1).map(() => '-'), remark: null }));
  const [head, ...laidOut] = layoutTable(heads, rows);
  let at = 0;
  const body = lines.map((line) => (line.slot === null ? line.text : laidOut[at++]!));
  return ['```readings', head!, ...body, '```', ''].join(lineBreak);
}

/** Edits that put such a block at a place of the note, with blank lines around it. The place moves to the start of its line. */
export function insertReadingsTable(note: Note, offset: number, options: { rows?: boolean } = {}): EditResult {
  const { protocol, text } = note;
  if (!protocol) return refused('no-protocol');
  if (protocol.measure.length === 0 || protocol.tanks.length === 0) return refused('table-broken');
  if (options.rows !== false && (protocol.schedule?.slots.length ?? 0) === 0) return refused('no-slots');
  return insertBlock(text, outsideBlocks(note, offset), readingsBlockText(protocol, { ...options, lineBreak: lineBreakOf(text) }));
}

/** The offset itself, or the end of the block that it lies in. */
export function outsideBlocks(note: Note, offset: number): number {
  const inside = note.syntax.blocks.find((block) => offset > block.range.start && offset < block.range.end);
  return inside ? inside.range.end : offset;
}

/** A block on lines of its own, with blank lines around it. */
export function insertBlock(text: string, offset: number, block: string): EditResult {
  const lineBreak = lineBreakOf(text);
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const blank = text.slice(start, offset).trim() === '';
  const at = blank ? start : (text.indexOf('\n', offset) < 0 ? text.length : text.indexOf('\n', offset) + 1);
  const before = text.slice(0, at);
  const gap = before === '' || /\n[ \t]*\r?\n$/u.test(before) ? '' : before.endsWith('\n') ? lineBreak : lineBreak + lineBreak;
  const after = text.slice(at);
  const tail = after === '' || /^[ \t]*\r?\n/u.test(after) ? '' : lineBreak;
  return done([{ range: { start: at, end: at }, newText: gap + block + tail }]);
}
