// One reading as a value with its uncertainty: the instrument's systematic part, its resolution, the spread of repeats.
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import type { NumberValue } from '../quantities/types.ts';
import type { Series } from './types.ts';

/** The `measure` entry that describes a series' instrument: `DO@titration` if the protocol has one, else `DO`; null when none does. */
export function measureOf(protocol: Protocol, quantity: string, instrument: string | null): MeasuredQuantity | null {
  const id = instrument === null ? quantity : `${quantity}@${instrument}`;
  return protocol.measure.find((entry) => entry.id === id) ?? protocol.measure.find((entry) => entry.id === quantity) ?? null;
}

export function readingValue(series: Series, index: number, _protocol: Protocol): NumberValue {
  return { type: 'number', value: series.values[index] ?? 0, unit: series.unit, contributions: null };
}
