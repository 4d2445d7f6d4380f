// What a formula is evaluated against: plan, readings and named results. Caches live inside the context, never in the module,
// so that a fresh context always starts from nothing.
import type { MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Dataset } from '../dataset/types.ts';
import type { NightFit } from '../analysis/nightFit.ts';
import type { StatisticsProblem } from '../statistics/outcome.ts';
import type { Evaluation, SeriesValue, WorkingStep } from './types.ts';
import { collectNames, type NameTable } from './names.ts';
import type { ParsedFormula } from './parse.ts';

export interface ResultDefinition { readonly name: string; readonly nameRange: SourceRange; readonly formula: MappedText }

export interface FormulaContext {
  readonly protocol: Protocol | null;
  readonly dataset: Dataset;
  readonly results: readonly ResultDefinition[];
  readonly names: NameTable;
  /** First definition of each result name. */
  readonly resultsByName: ReadonlyMap<string, ResultDefinition>;
  /** Evaluations of named results, filled on demand. */
  readonly cache: Map<string, Evaluation>;
  /** Series by id and what was let in. */
  readonly seriesCache: Map<string, SeriesValue>;
  /** Series that rest on an equation, with what there is to remark about them. */
  readonly equationCache: Map<string, { readonly value: SeriesValue; readonly remarks: WorkingStep['remarks'] }>;
  /** Nights already fitted, by column and window. */
  readonly nightFits: Map<string, NightFit | StatisticsProblem>;
  /** Formulas already read, by text. */
  readonly parsed: Map<string, ParsedFormula>;
  /** Result names that stand in a circle, found once. */
  circles: ReadonlySet<string> | null;
}

export function createContext(parts: {
  readonly protocol: Protocol | null; readonly dataset: Dataset; readonly results: readonly ResultDefinition[];
}): FormulaContext {
  const resultsByName = new Map<string, ResultDefinition>();
  for (const result of parts.results) if (!resultsByName.has(result.name)) resultsByName.set(result.name, result);
  return {
    protocol: parts.protocol, dataset: parts.dataset, results: parts.results,
    names: collectNames(parts.protocol, parts.results.map((result) => result.name)),
    resultsByName, cache: new Map(), seriesCache: new Map(), equationCache: new Map(), nightFits: new Map(), parsed: new Map(), circles: null,
  };
}
