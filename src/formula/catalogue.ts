// The catalogue of functions: gathers the groups. Checks, evaluator, completion, help and the reference page read it.
export interface FunctionEntry {
  readonly name: string;
  readonly group: 'picking' | 'summary' | 'change' | 'levels' | 'comparison' | 'oxygen' | 'water' | 'plan' | 'arithmetic';
  /** As shown: `rate(series, window?)`. */
  readonly label: string;
  /** The unit of what it gives, in words. */
  readonly units: string;
  /** One sentence. */
  readonly definition: string;
  readonly equation: string;
  readonly source: string | null;
}

export const functions: readonly FunctionEntry[] = [];

export function functionByName(name: string): FunctionEntry | null {
  return functions.find((entry) => entry.name === name) ?? null;
}
