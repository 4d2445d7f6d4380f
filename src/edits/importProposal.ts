// A proposal of how to import a table: what was detected, what the keeper chose instead, and what becomes of every line.
import type { Encoding } from '../readings/file/decode.ts';
import type { DecimalMark, DelimiterName } from '../readings/file/layout.ts';
import type { DateOrder } from '../readings/file/stamps.ts';
import type { Instant } from '../time/instant.ts';
import type { Message } from './edit.ts';

/** A column of the file and what it holds: `time`, `remark`, `mat.DO`, `mat.T[degF]`; null: it is not imported. */
export interface ImportColumn { readonly from: string; readonly to: string | null }

/** What the keeper chose instead of what was detected. */
export interface ImportChoices {
  readonly delimiter?: DelimiterName;
  readonly decimal?: DecimalMark;
  readonly dateOrder?: DateOrder;
  /** IANA name or offset of the times in the file; the note's own zone when not given. */
  readonly timeZone?: string;
  /** Line of the heads, from 1; 0: there are none. */
  readonly headerLine?: number;
  /** What each column holds; a column not named is not imported. */
  readonly columns?: readonly ImportColumn[];
}

/** One line as it would be imported. */
export interface ImportRow {
  readonly line: number;
  /** As the note would write it; null: the line cannot be read, and becomes a comment. */
  readonly time: string | null;
  readonly instant: Instant | null;
  /** Texts in the order of `heads`; what is no reading is `-` and goes into the remark. */
  readonly cells: readonly string[];
  readonly remark: string | null;
  /** The line as it stands in the file, for those that cannot be read. */
  readonly raw: string;
}

/** A line of the file that is not simply a row. `fate` is what becomes of it. */
export interface ImportComplaint {
  readonly line: number;
  /** `comment`: the line stays in the table as a comment; `remark`: what was no reading stays in the row's remark; `row`: it is imported as it is. */
  readonly fate: 'comment' | 'remark' | 'row';
  readonly message: Message;
}

export interface ImportProposal {
  readonly encoding: Encoding;
  readonly delimiter: DelimiterName;
  readonly decimal: DecimalMark | null;
  readonly dateOrder: DateOrder | null;
  /** More than one: the dates can be read in several ways, and the keeper must pick. */
  readonly dateOrders: readonly DateOrder[];
  readonly timeZone: string;
  /** True when the times are clock times without dates. */
  readonly clockOnly: boolean;
  /** True when every time carries its offset, so that the time zone does not matter. */
  readonly offsets: boolean;
  /** Line of the heads; 0: there are none. */
  readonly headerLine: number;
  /** The first lines that could hold heads, for choosing another one. */
  readonly firstLines: readonly { readonly line: number; readonly text: string }[];
  /** How many lines that hold something stand above the heads; they are not imported. */
  readonly linesAbove: number;
  /** Every column of the file. */
  readonly names: readonly string[];
  readonly columns: readonly ImportColumn[];
  /** Heads of the imported columns, without `time`. */
  readonly heads: readonly string[];
  readonly rows: readonly ImportRow[];
  /** Lines that are not simply rows, by line. */
  readonly complaints: readonly ImportComplaint[];
  /** Columns whose values look wrong, at most one doubt a column. */
  readonly doubts: readonly ImportDoubt[];
  /** What must be settled before the import. */
  readonly asks: readonly Message[];
}

/** A doubt about a column of the import, by its place among the imported heads. */
export interface ImportDoubt { readonly column: number; readonly message: Message }
