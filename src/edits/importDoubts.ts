// What looks wrong in a column that is about to be imported: values in another unit than the column's, or beyond what can be.
import type { Protocol } from '../protocol/types.ts';
import { readHead } from '../readings/heads.ts';
import { plausibleRange, slippedUnit } from '../readings/plausible.ts';
import type { Message } from './edit.ts';

/** A doubt about a column of the import, by its place among the imported heads. */
export interface ImportDoubt { readonly column: number; readonly message: Message }

/** At most one doubt a column: about its first value that cannot well be. */
export function importDoubts(heads: readonly string[], rows: readonly { readonly cells: readonly string[] }[], protocol: Protocol): ImportDoubt[] {
  return heads.flatMap((text, column): ImportDoubt[] => {
    const { measure, column: { id, unit } } = readHead({ text, start: 0, end: text.length }, protocol, new Set());
    const range = plausibleRange(measure, unit);
    const odd = range && rows.find((row) => { const value = Number(row.cells[column]); return row.cells[column] !== undefined && (value < range.low || value > range.high); })?.cells[column];
    if (!range || !unit || odd === undefined || odd === null) return [];
    const perhaps = slippedUnit(Number(odd), measure, unit);
    const limit = (value: number): number => Number(value.toPrecision(4));
    return [{ column, message: perhaps
      ? { code: 'unit-slip', args: { head: id, text: odd, perhaps, unit: unit.symbol } }
      : { code: 'out-of-range', args: { head: id, text: odd, low: limit(range.low), high: limit(range.high), unit: unit.symbol } } }];
  });
}
