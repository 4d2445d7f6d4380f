// Readings as bare columns for the search: tanks, groups, the room, and what is derived from them by an equation.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { isUsable } from '../../dataset/series.ts';
import { mappedText } from '../../note/mappedText.ts';
import { measureOf } from '../../dataset/readingValue.ts';
import { convertible, parseUnit } from '../../quantities/units.ts';
import type { Unit } from '../../quantities/types.ts';
import type { Column, Stretch } from './types.ts';

/** Columns as read, and the means over tanks of one role or group. */
export function readColumns(context: FormulaContext): Column[] {
  const { protocol, dataset } = context;
  const columns: Column[] = [];
  for (const series of dataset.series.values()) {
    const kept: number[] = [];
    for (let index = 0; index < series.times.length; index += 1) if (isUsable(series, index)) kept.push(index);
    if (kept.length === 0) continue;
    columns.push({ name: series.id, place: series.place, quantity: series.quantity, unit: series.unit,
      times: Float64Array.from(kept, (index) => series.times[index]!), values: Float64Array.from(kept, (index) => series.values[index]!) });
  }
  const tanks = protocol?.tanks ?? [];
  const groups = new Map<string, string[]>();
  for (const tank of tanks) for (const name of [tank.group?.value, tank.role?.value]) if (name !== undefined) groups.set(name, [...(groups.get(name) ?? []), tank.id]);
  const seen = new Set<string>();
  for (const [name, ids] of groups) {
    // A role that means the same tanks as a group adds nothing.
    if (ids.length < 2 || seen.has(ids.join())) continue;
    seen.add(ids.join());
    for (const quantity of new Set(columns.filter((column) => ids.includes(column.place)).map((column) => column.quantity))) {
      const column = computedColumn(`${name}.${quantity}`, name, quantity, context);
      if (column) columns.push(column);
    }
  }
  return columns;
}

/** Columns that an equation derives, of the units that can fit; they cost more than bare readings. */
export function derivedColumns(context: FormulaContext, columns: readonly Column[], fits: (unit: Unit) => boolean): Column[] {
  const { protocol } = context;
  const found: Column[] = [];
  const percent = parseUnit('%');
  const concentration = parseUnit('mg/L');
  const add = (formula: string, place: string, quantity: string): void => {
    const column = computedColumn(formula, place, quantity, context);
    if (column && fits(column.unit)) found.push(column);
  };
  const kindOf = (column: Column): string | undefined => (protocol ? measureOf(protocol, column.quantity, null)?.what?.value : undefined);
  for (const column of columns) {
    if (kindOf(column) !== 'dissolved oxygen' || !protocol?.tanks.some((tank) => tank.id === column.place)) continue;
    if (percent && fits(percent)) add(`saturation(${column.name})`, column.place, 'saturation');
    if (concentration && fits(concentration)) { add(`deficit(${column.name})`, column.place, 'deficit'); add(`solubility(${column.place})`, column.place, 'solubility'); }
  }
  const has = (place: string, what: readonly string[]): boolean => what.every((name) => columns.some((column) => column.place === place && kindOf(column) === name));
  if (concentration && fits(concentration)) {
    for (const tank of protocol?.tanks ?? []) {
      if (has(tank.id, ['pH', 'carbonate hardness'])) add(`carbon-dioxide(${tank.id})`, tank.id, 'carbon-dioxide');
      if (has(tank.id, ['pH', 'total ammonia'])) add(`un-ionised-ammonia(${tank.id})`, tank.id, 'un-ionised-ammonia');
    }
  }
  return found;
}

function computedColumn(formula: string, place: string, quantity: string, context: FormulaContext): Column | null {
  const { value } = evaluate(mappedText(formula), context);
  if (value?.type !== 'series' || (value.content ?? 'number') !== 'number' || value.points.length === 0) return null;
  return { name: formula, place, quantity, unit: value.unit, times: Float64Array.from(value.points, (point) => point.time), values: Float64Array.from(value.points, (point) => point.value) };
}

/** First position whose time is not before `instant`. */
export function positionFrom(times: Float64Array, instant: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < instant) low = middle + 1; else high = middle;
  }
  return low;
}

/** Position of exactly that time; -1 when there is none. */
export function positionAt(times: Float64Array, instant: number): number {
  const position = positionFrom(times, instant);
  return times[position] === instant ? position : -1;
}

export const sameKind = (a: Column, b: Column): boolean => a.unit.kind === b.unit.kind && convertible(a.unit, b.unit);

/** What a stretch of a column comes to; the times are those of its lowest and highest reading. */
interface Summary { lowest: number; highest: number; lowestAt: number; highestAt: number; mean: number; count: number }

/** null where the stretch holds no reading. */
export function summaryOf(column: Column, stretch: Stretch | null): Summary | null {
  const { times, values } = column;
  const from = stretch ? positionFrom(times, stretch.from) : 0;
  const summary: Summary = { lowest: Infinity, highest: -Infinity, lowestAt: 0, highestAt: 0, mean: 0, count: 0 };
  let sum = 0;
  for (let index = from; index < times.length; index += 1) {
    const time = times[index]!;
    if (stretch && time > stretch.to) break;
    if (stretch?.opensAtLightsOff && time === stretch.from) continue;
    const value = values[index]!;
    sum += value;
    summary.count += 1;
    if (value < summary.lowest) { summary.lowest = value; summary.lowestAt = time; }
    if (value > summary.highest) { summary.highest = value; summary.highestAt = time; }
  }
  if (summary.count === 0) return null;
  summary.mean = sum / summary.count;
  return summary;
}
