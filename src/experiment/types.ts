// One note, read whole: the immutable value that every surface (editor, preview, post, command line) works from.
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { NoteSyntax } from '../note/syntax.ts';
import type { Protocol } from '../protocol/types.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { Dataset } from '../dataset/types.ts';
import type { Evaluation } from '../formula/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { CheckedClaim } from '../claims/types.ts';
import type { MappedText } from '../note/mappedText.ts';
import type { DrawnBlock } from './drawnBlocks.ts';
import type { Ground } from './ground.ts';

/** One line `name = formula` of a `values` block. */
export interface NamedResult {
  readonly name: string;
  readonly nameRange: SourceRange;
  readonly formula: MappedText;
  /** Index of the block in NoteSyntax.blocks. */
  readonly block: number;
  readonly evaluation: Evaluation;
}

export interface StopRuleCheck { readonly rule: number; readonly evaluation: Evaluation | null; readonly crossedAt: readonly number[] }
export interface EqualiseCheck {
  readonly step: number;
  /** null: no condition, or no paired reading yet. */
  readonly holds: boolean | null;
  /** Instants at which the condition was checked. */
  readonly checkedAt: readonly number[];
  /** The widest figure behind an `abs(a - b) <= x` condition, as text, where the condition has that shape. */
  readonly worst: string | null;
}

export interface Note {
  readonly text: string;
  readonly syntax: NoteSyntax;
  /** Plan, readings and results, kept together so that a later reading of the note can take them over. */
  readonly ground: Ground;
  readonly protocol: Protocol | null;
  readonly tables: readonly ReadingsTable[];
  readonly dataset: Dataset;
  readonly results: readonly NamedResult[];
  readonly claims: readonly CheckedClaim[];
  /** Figures, summaries and other blocks with options, by index in NoteSyntax.blocks. */
  readonly drawn: ReadonlyMap<number, DrawnBlock>;
  readonly equalise: readonly EqualiseCheck[];
  readonly stopRules: readonly StopRuleCheck[];
  /** Paths, relative to the note's folder, of the data files the note refers to. */
  readonly wants: readonly string[];
  /** What formulas of this note are evaluated against. */
  readonly context: FormulaContext;
  /** Every problem of the note that stands, sorted by place. */
  readonly problems: readonly Problem[];
  /** Problems that the author accepts by name in the protocol (`accepted`); the post says so. */
  readonly accepted: readonly Problem[];
}
