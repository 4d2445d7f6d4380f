// What is wrong with a cell or with a row's missing remark, and the mends.
import { nearestName } from '../problems/nearest.ts';
import { measureByName } from '../quantities/measures.ts';
import { convert, parseUnit } from '../quantities/units.ts';
import { scaleWord, type CellReading } from './cell.ts';
import type { HeadReading } from './heads.ts';
import type { Line, Token } from './lines.ts';
import { replaceFix, type Complaint, type LocalFix } from './reporter.ts';
import type { Cell } from './types.ts';

/** Problems of one cell: unreadable text, a thousands mark, a decimal comma. */
export function cellComplaints(token: Token, reading: CellReading, head: HeadReading): Complaint[] {
  const range = { start: token.start, end: token.end };
  if (reading.thousands) {
    const likely = reading.thousands.filter((text) => plausible(text, head));
    const fixes = reading.thousands.map((text) => replaceFix(range, text, { preferred: reading.thousands!.length === 1 || (likely.length === 1 && likely[0] === text) }));
    return [{ code: 'thousands-mark', range, args: { text: token.text, meanings: reading.thousands }, fixes }];
  }
  // What was unreadable and then corrected is mended: the first writing stays, the last one counts.
  const broken = reading.state;
  if (broken.kind === 'unreadable') {
    const scale = head.measure?.scale ?? null;
    const fixes: LocalFix[] = [];
    if (reading.rewrite !== null) fixes.push(replaceFix(range, reading.rewrite, { preferred: true, safe: true }));
    const near = scale ? nearestName(broken.text, scale) : null;
    if (near !== null) fixes.push(replaceFix(range, token.text.replace(broken.text, scaleWord(near)), { preferred: fixes.length === 0 }));
    return [{ code: 'cell-unreadable', range, args: { text: token.text, head: head.column.id, words: scale ?? [] }, fixes }];
  }
  if (reading.withPoints !== null) {
    return [{
      code: 'decimal-comma', range, args: { text: token.text, value: reading.withPoints },
      fixes: [replaceFix(range, reading.withPoints, { preferred: true, safe: true })],
    }];
  }
  return [];
}

/** True when the text is a number that what the column measures can have. */
function plausible(text: string, head: HeadReading): boolean {
  const entry = head.measure?.what ? measureByName(head.measure.what.value) : null;
  const usual = entry?.unit ? parseUnit(entry.unit) : null;
  if (!entry?.plausible || !usual || !head.column.unit) return false;
  const value = convert(Number(text), head.column.unit, usual);
  return value >= entry.plausible[0] && value <= entry.plausible[1];
}

/** A correction or a reading left out without a word about why. */
export function remarkComplaints(
  line: Extract<Line, { kind: 'cells' }>, time: Token, earlierTimes: readonly string[], heads: readonly HeadReading[], cells: readonly Cell[],
): Complaint[] {
  if (line.remark) return [];
  const found: Complaint[] = [];
  const tokens = line.tokens.slice(1);
  const add = (code: 'correction-without-remark' | 'left-out-without-remark', picked: readonly number[], withTime: boolean): void => {
    const token = withTime ? time : tokens[picked[0] ?? -1];
    if (!token) return;
    const columns = [...(withTime ? ['time'] : []), ...picked.map((index) => heads[index]!.column.id)];
    found.push({ code, range: { start: token.start, end: token.end }, args: { columns, time: time.text } });
  };
  const indexes = cells.map((_, index) => index);
  add('correction-without-remark', indexes.filter((index) => cells[index]!.earlier.length > 0), earlierTimes.length > 0);
  add('left-out-without-remark', indexes.filter((index) => cells[index]!.leftOut), false);
  return found;
}
