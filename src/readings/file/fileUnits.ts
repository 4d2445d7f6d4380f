// Units that a data file prints: in its heads, or in a line of their own under them.
import type { Unit } from '../../quantities/types.ts';
import { matchPrintedUnit, parseUnit } from '../../quantities/units.ts';
import { isBlank, isData, type FileRow } from './dataCells.ts';

/** The unit that a head prints in brackets: `Oxygen (mg/l)`, `Temp [°C]`, `Temp, °F`. */
export function unitInHead(whole: string): Unit | null {
  const head = whole.slice(-80);
  const inner = /[([]([^)\]]+)[)\]]\s*$/u.exec(head)?.[1] ?? /,\s*(\S+)\s*$/u.exec(head)?.[1] ?? /\sin\s+(\S+)\s*$/u.exec(head)?.[1];
  return inner === undefined ? null : printedUnit(inner.trim());
}

function printedUnit(text: string): Unit | null {
  const printed = matchPrintedUnit(text, 0);
  return printed && printed.length === text.length ? printed.unit : parseUnit(text);
}

/** A line of units: its index among the rows, and a unit (or none) a column. */
export interface UnitLine { readonly at: number; readonly units: readonly (Unit | null)[] }

/** The units in the line under the heads; null where that line is no such line. */
export function unitsUnder(rows: readonly FileRow[], head: number): UnitLine | null {
  const at = head < 0 ? -1 : rows.findIndex((row, index) => index > head && !isBlank(row));
  return at >= 0 && areUnits(rows[at]!) ? { at, units: rows[at]!.cells.map(unitOf) } : null;
}

/** True for a row that holds units, at least in half of its cells, and no data. */
export function areUnits(row: FileRow): boolean {
  const filled = row.cells.filter((cell) => cell.trim() !== '');
  const known = filled.filter((cell) => unitOf(cell) !== null).length;
  return known > 0 && known * 2 >= filled.length && !row.cells.some(isData);
}

/** The unit in a cell, with or without brackets. */
const unitOf = (cell: string): Unit | null => printedUnit(cell.trim().replace(/^[([](.*)[)\]]$/u, '$1').trim());
