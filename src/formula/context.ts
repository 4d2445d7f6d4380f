// What a formula is evaluated against: plan, readings and named results, with a cache of results inside it.
import type { MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Dataset } from '../dataset/types.ts';
import type { Evaluation } from './types.ts';

export interface ResultDefinition { readonly name: string; readonly nameRange: SourceRange; readonly formula: MappedText }

export interface FormulaContext {
  readonly protocol: Protocol | null;
  readonly dataset: Dataset;
  readonly results: readonly ResultDefinition[];
  /** Evaluations of named results, filled on demand; `computing` marks one under way, so that a circle is seen. */
  readonly cache: Map<string, Evaluation | 'computing'>;
}

export function createContext(parts: { protocol: Protocol | null; dataset: Dataset; results: readonly ResultDefinition[] }): FormulaContext {
  return { ...parts, cache: new Map() };
}
