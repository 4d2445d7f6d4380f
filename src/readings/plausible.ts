// Values that what is measured cannot well have: a slipped unit, a swapped column, a lost decimal point.
import { measureByName, type MeasureEntry } from '../quantities/measures.ts';
import type { Unit } from '../quantities/types.ts';
import { convert, convertible, parseUnit } from '../quantities/units.ts';
import { problem, type Fix, type Problem, type SourceRange } from '../problems/problem.ts';
import type { MeasuredQuantity } from '../protocol/types.ts';
import type { HeadReading } from './heads.ts';
import type { Reporter } from './reporter.ts';
import type { ReadingsTable } from './types.ts';

/** The range that a quantity's readings should lie in, in the column's unit; null where none is known. */
export function plausibleRange(measure: MeasuredQuantity | null, unit: Unit | null): { low: number; high: number; entry: MeasureEntry } | null {
  const entry = measure?.what ? measureByName(measure.what.value) : null;
  const usual = entry?.unit ? parseUnit(entry.unit) : null;
  if (!entry?.plausible || !usual || !unit || !convertible(usual, unit)) return null;
  const low = convert(entry.plausible[0], usual, unit);
  const high = convert(entry.plausible[1], usual, unit);
  return Number.isFinite(low) && Number.isFinite(high) ? { low: Math.min(low, high), high: Math.max(low, high), entry } : null;
}

/** A unit in which the value would be plausible, of those that people use for the quantity; null when none is. */
export function slippedUnit(value: number, measure: MeasuredQuantity | null, unit: Unit | null): string | null {
  const range = plausibleRange(measure, unit);
  if (!range || !unit) return null;
  for (const symbol of range.entry.units) {
    const other = parseUnit(symbol);
    if (!other || symbol === unit.symbol || !convertible(other, unit)) continue;
    const meant = convert(value, other, unit);
    if (meant >= range.low && meant <= range.high) return symbol;
  }
  return null;
}

/** Raises `value-implausible`: once at the head where most of a column is out of range, else at each cell. */
export function checkPlausible(table: ReadingsTable, heads: readonly HeadReading[], reporter: Reporter): void {
  reporter.problems.push(...implausible(table, heads.map((head) => head.measure), null));
}

/** The same for any table; `place` puts every problem there (a data file's cells have no place of their own). */
export function implausible(table: ReadingsTable, measures: readonly (MeasuredQuantity | null)[], place: SourceRange | null): Problem[] {
  const found: Problem[] = [];
  table.columns.forEach((column, index) => {
    const measure = measures[index] ?? null;
    const range = plausibleRange(measure, column.unit);
    if (!range) return;
    let read = 0;
    const odd: { value: number; text: string; range: SourceRange }[] = [];
    for (const row of table.rows) {
      const cell = row.cells[index];
      if (!cell || cell.leftOut || cell.state.kind !== 'number') continue;
      read += 1;
      for (const value of cell.state.repeats.length > 0 ? cell.state.repeats : [cell.state.value!]) {
        if (value < range.low || value > range.high) { odd.push({ value, text: cell.text, range: cell.range }); break; }
      }
    }
    if (odd.length === 0) return;
    const args = (text: string, slip: string | null) => ({
      text, head: column.id, unit: column.unit!.symbol, low: limit(range.low), high: limit(range.high), perhaps: slip ?? '', count: odd.length,
    });
    const slips = new Set(odd.map((each) => slippedUnit(each.value, measure, column.unit)));
    const slip = slips.size === 1 ? [...slips][0]! : null;
    const whole = place !== null || (odd.length >= 3 && odd.length * 2 > read);
    if (!whole) {
      for (const each of odd) found.push(problem('value-implausible', each.range, { ...args(each.text, slippedUnit(each.value, measure, column.unit)), count: 1 }));
      return;
    }
    const fixes: Fix[] = slip !== null && place === null ? [{
      title: 'read-column-in-unit', args: { head: column.id, unit: slip }, preferred: false, safe: false,
      edits: [{ range: column.range, newText: `${column.id}[${slip}]` }],
    }] : [];
    found.push(problem('value-implausible', place ?? column.range, args(odd[0]!.text, slip), fixes));
  });
  return found;
}

function limit(value: number): string {
  return String(Number(value.toPrecision(4)));
}
