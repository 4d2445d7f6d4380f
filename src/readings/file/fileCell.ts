// What a data file's cell holds before it is read as a reading: nothing, a text behind a spreadsheet's quote mark, mixed marks.
import type { DecimalMark } from './layout.ts';
import { readStamp } from './stamps.ts';

/** Most values: no date hides in so few digits. */
const plainValue = /^-?\d{1,5}(?:\.\d{1,9})?$/u;

const gap = /^(?:|-+|n\/?a|nan|null|none|#n\/a|\?+)$/iu;

/** True for the ways in which files say that nothing was measured. */
export const isGap = (text: string): boolean => gap.test(text.trim());

/** The text without the quote mark by which tables keep a spreadsheet from computing a cell: `'-0.3`. */
export const bareText = (text: string): string => text.trim().replace(/^'(?=[-=+@])/u, '');

/**
 * True where a text is surely no reading, though parts of it look like one: the other mark than the file's decimal mark stands
 * between thousands, or the line is broken; or a whole date stands where a number should.
 */
export function isMuddled(text: string, decimal: DecimalMark): boolean {
  if (decimal === '.' && plainValue.test(text)) return false;
  if ((decimal === ',' ? /\d\.\d/u : /\d,\d/u).test(text)) return true;
  return readStamp(text)?.date?.lengths.includes(4) ?? false;
}
