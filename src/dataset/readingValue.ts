// One reading as a value with its uncertainty: the instrument's systematic part, its resolution, the spread of repeats.
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { measureFor } from '../readings/heads.ts';
import { flag, type Series } from './types.ts';

/** The `measure` entry that describes a series' instrument: `DO@titration` if the protocol has one, else `DO`; null when none does. */
export function measureOf(protocol: Protocol, quantity: string, instrument: string | null): MeasuredQuantity | null {
  return measureFor(protocol, quantity, instrument);
}

/**
 * The entry whose accuracy is that of the series' instrument, and the instrument's name for shared errors; null when
 * the plan states no instrument for that place.
 *
 * The rule: one `measure` entry is one instrument. Used in several tanks its systematic error is shared and cancels in
 * a difference between them; an entry whose `in` names one tank is that tank's own. A place that `in` does not name, and
 * a named instrument (`@titration`) without an entry of its own (`DO@titration`), have no stated accuracy.
 */
export function instrumentOf(series: Pick<Series, 'place' | 'quantity' | 'instrument'>, protocol: Protocol): { entry: MeasuredQuantity; key: string } | null {
  const entry = measureFor(protocol, series.quantity, series.instrument);
  if (!entry) return null;
  if (series.instrument !== null && entry.id !== `${series.quantity}@${series.instrument}`) return null;
  if (entry.in.length > 0 && !entry.in.some((place) => place.value === series.place)) return null;
  return { entry, key: `instrument:${entry.id}` };
}

/** A stated accuracy or resolution as an amount of the series' unit; a percentage is taken of the value. Null: does not fit. */
export function amountIn(stated: NumberValue | null, unit: Unit, value: number): number | null {
  if (!stated) return null;
  if (stated.unit.symbol === unit.symbol) return Math.abs(stated.value);
  const percent = stated.unit.kind === 'percentage' || stated.unit.kind === 'percentage-points';
  if (percent && unit.kind !== 'percentage') return Math.abs(stated.value * value / 100);
  const same = (Object.keys(unit.dimension) as (keyof Unit['dimension'])[]).every((base) => stated.unit.dimension[base] === unit.dimension[base]);
  // Amounts are differences, so an offset (°C, °F) takes no part.
  const amount = Math.abs(stated.value * stated.unit.factor / unit.factor);
  return same && Number.isFinite(amount) ? amount : null;
}

/**
 * The reading at `index` in the series' unit, with its contributions to the standard uncertainty (GUM, JCGM 100:2008):
 * - `instrument:ID` accuracy a as a rectangular distribution, a/√3 (4.3.7), systematic, shared by every reading of it;
 * - `resolution:SERIES@TIME` δ/√12 for the rounding of one reading (F.2.2.1);
 * - `repeats:SERIES@TIME` s/√n for n ≥ 2 repeats (4.2.3).
 * `contributions` is null when no accuracy is stated. The caller sees to it that the entry is a usable number.
 */
export function readingValue(series: Series, index: number, protocol: Protocol): NumberValue {
  const value = series.values[index] ?? 0;
  const instrument = instrumentOf(series, protocol);
  const accuracy = instrument ? amountIn(instrument.entry.accuracy, series.unit, value) : null;
  if (!instrument || accuracy === null) return { type: 'number', value, unit: series.unit, contributions: null };
  const contributions = new Map<string, number>();
  const at = `${series.id}@${series.times[index] ?? 0}`;
  if (accuracy > 0) contributions.set(instrument.key, accuracy / Math.sqrt(3));
  const source = series.sources[index];
  const repeats = source?.cell.state.repeats ?? [];
  const resolution = amountIn(instrument.entry.resolution, series.unit, value);
  if (resolution !== null && resolution > 0) contributions.set(`resolution:${at}`, resolution / Math.sqrt(12 * Math.max(1, repeats.length)));
  if (repeats.length > 1 && (series.flags[index]! & flag.repeated) !== 0) {
    const mean = repeats.reduce((sum, each) => sum + each, 0) / repeats.length;
    const variance = repeats.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (repeats.length - 1);
    const scale = source!.column.unit ? source!.column.unit.factor / series.unit.factor : 1;
    const spread = Math.sqrt(variance / repeats.length) * scale;
    if (spread > 0) contributions.set(`repeats:${at}`, spread);
  }
  return { type: 'number', value, unit: series.unit, contributions };
}
