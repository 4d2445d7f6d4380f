// The shape of one entry in the table of problem codes.
import type { Severity } from './problem.ts';

/** A small note that raises the problem. Each part replaces the part of the base note of examples.ts. */
export interface ProblemExample {
  /** Replaces the whole note. */
  readonly note?: string;
  /** Replaces the whole text inside the `protocol` block. */
  readonly protocol?: string;
  /** Lines added to the end of the base protocol. */
  readonly addToProtocol?: string;
  /** Replaces the whole text inside the `readings` block. */
  readonly readings?: string;
  /** Replaces the text inside the `values` block. */
  readonly values?: string;
  /** Prose (or further blocks) put after the blocks. */
  readonly prose?: string;
  /** Bytes of data files as text, by path, where the example needs one; null for a file that is not there. */
  readonly files?: Readonly<Record<string, string | null>>;
}

export interface CodeEntry {
  readonly severity: Severity;
  /** Names of the arguments, in the order in which the reference lists them. */
  readonly args: readonly string[];
  /** Why it matters to the keeper, one or two sentences in the trade's words. Shown in the reference and on hover. */
  readonly why: string;
  readonly example: ProblemExample;
  /** True when the problem carries at least one fix. */
  readonly fixable: boolean;
}
