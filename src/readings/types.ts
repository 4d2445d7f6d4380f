// A readings block as columns, rows and cells, each with its place. Nothing recorded is dropped.
import type { SourceRange } from '../problems/problem.ts';
import type { Unit } from '../quantities/types.ts';
import type { Instant } from '../time/instant.ts';

export interface ReadingColumn {
  /** As typed: `mat.DO`, `room.P`, `mat.DO@titration`. */
  readonly id: string;
  /** Tank id or `room`. */
  readonly place: string;
  readonly quantity: string;
  readonly instrument: string | null;
  /** From the brackets or the protocol; null where unknown (a problem says so) and for word scales. */
  readonly unit: Unit | null;
  readonly range: SourceRange;
}

export interface CellState {
  /** `number`: value is a number; `word`: of the scale; `missing`: `-`; `below`/`above`: outside the instrument's range; `unreadable`. */
  readonly kind: 'number' | 'word' | 'missing' | 'below' | 'above' | 'unreadable';
  /** Mean of the repeats, or the instrument's limit for below/above; null otherwise. In the column's unit. */
  readonly value: number | null;
  /** Two or more readings taken at once; else empty. */
  readonly repeats: readonly number[];
  /** Digits after the decimal mark as written; -1 when not a number. */
  readonly decimals: number;
  readonly word: string | null;
  readonly text: string;
}

export interface Cell {
  readonly range: SourceRange;
  readonly text: string;
  /** The state that counts: after the last correction. */
  readonly state: CellState;
  /** Earlier states, the first value first; empty when never corrected. */
  readonly earlier: readonly CellState[];
  readonly leftOut: boolean;
  readonly doubtful: boolean;
}

export interface ReadingRow {
  readonly range: SourceRange;
  readonly timeRange: SourceRange;
  readonly timeText: string;
  /** null when the time cannot be read; the row is kept. */
  readonly instant: Instant | null;
  readonly earlierTimes: readonly string[];
  /** Before any correction of the time; the same as `instant` when it was never corrected. */
  readonly firstInstant?: Instant | null;
  /** One a column, in order. */
  readonly cells: readonly Cell[];
  /** Cells beyond the last column, kept as text. */
  readonly extra?: readonly { readonly range: SourceRange; readonly text: string }[];
  /** Line of the data file, from 1, for rows that were read from one. */
  readonly line?: number;
  readonly remark: string | null;
  readonly remarkRange: SourceRange | null;
}

/** A data file that a readings block pins. */
export interface FileReference {
  readonly path: string;
  readonly range: SourceRange;
  readonly sha256: string | null;
  readonly state: 'loaded' | 'not-loaded' | 'missing' | 'changed' | 'outside';
}

export interface ReadingsTable {
  /** Index of the block in NoteSyntax.blocks. */
  readonly block: number;
  readonly name: string | null;
  readonly columns: readonly ReadingColumn[];
  readonly rows: readonly ReadingRow[];
  readonly headRange: SourceRange | null;
  readonly file: FileReference | null;
  readonly sealed: { readonly text: string; readonly range: SourceRange } | null;
}

/** What the shell hands in: bytes of a wanted file, null for "looked, not there". A path not in the map is not loaded yet. */
export type FileContents = ReadonlyMap<string, Uint8Array | null>;
