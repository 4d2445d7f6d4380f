// All readings of a note as typed columns joined by time.
import type { Cell, ReadingColumn, ReadingRow, ReadingsTable } from '../readings/types.ts';
import type { Unit } from '../quantities/types.ts';
import type { Instant } from '../time/instant.ts';

/** Bits of a reading's state. */
export const flag = { leftOut: 1, doubtful: 2, corrected: 4, below: 8, above: 16, repeated: 32, missing: 64, word: 128 } as const;

/** Where a reading stands. */
export interface ReadingSource { readonly table: ReadingsTable; readonly row: ReadingRow; readonly column: ReadingColumn; readonly cell: Cell }

/** One tank, quantity and instrument over time. Arrays run side by side, sorted by time. Entries with `missing` have no value. */
export interface Series {
  /** `mat.DO`, or `mat.DO@titration` for a named instrument. */
  readonly id: string;
  readonly place: string;
  readonly quantity: string;
  readonly instrument: string | null;
  readonly unit: Unit;
  readonly times: Float64Array;
  /** In `unit`. Meaningless where `flags` has `missing` or `word`; the limit itself where `below` or `above`. */
  readonly values: Float64Array;
  readonly flags: Uint8Array;
  /** Words of a scale, index into the protocol's scale, -1 otherwise. */
  readonly words: Int16Array;
  readonly sources: readonly ReadingSource[];
}

export interface Dataset {
  readonly series: ReadonlyMap<string, Series>;
  /** Every reading time of any series, sorted, without doubles (after `pair within`). */
  readonly times: readonly Instant[];
}
