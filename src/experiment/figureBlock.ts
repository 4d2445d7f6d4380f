// The options of `figure` and `limits` blocks, read as text and typed with places; what they ask for and cannot have.
// Drawing is src/charts; the options are read here so that readNote knows their problems.
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { Block, NoteSyntax } from '../note/syntax.ts';
import type { Placed, Protocol } from '../protocol/types.ts';
import type { Dataset } from '../dataset/types.ts';
import type { Instant } from '../time/instant.ts';

export interface FigureOptions {
  /** Ids of series: `mat.DO`, `room.P`, `mat.DO@titration`; a bare quantity (`DO`) or tank (`mat`) was expanded. */
  readonly show: readonly Placed<string>[];
  /** null: from the first reading shown. */
  readonly from: Instant | null;
  /** null: to the last reading shown. */
  readonly to: Instant | null;
  readonly title: string | null;
  /** Stands before the generated caption. */
  readonly caption: string | null;
  /** Where problems of the whole figure are shown. */
  readonly range: SourceRange;
  /** Layout width in CSS pixels; default 680. Below 480 the chart is laid out for a phone. */
  readonly width?: number;
}

/** Reads the YAML of a `figure` block. `options` is null when nothing can be drawn from it. */
export function readFigureBlock(_block: Block, _protocol: Protocol, _dataset: Dataset): { options: FigureOptions | null; problems: Problem[] } {
  return { options: null, problems: [] };
}

/** Problems of every `figure`, `summary` and `limits` block of a note. */
export function drawnBlockProblems(_syntax: NoteSyntax, _protocol: Protocol, _dataset: Dataset): Problem[] {
  return [];
}
