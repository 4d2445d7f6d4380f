// The catalogue of functions: gathers the groups. Checks, evaluator, completion, help and the reference page read it.
import { arithmeticFunctions } from './catalogue/arithmetic.ts';
import { changeFunctions } from './catalogue/change.ts';
import { comparisonFunctions } from './catalogue/comparison.ts';
import type { FunctionEntry } from './catalogue/entry.ts';
import { levelFunctions } from './catalogue/levels.ts';
import { oxygenFunctions } from './catalogue/oxygen.ts';
import { pickingFunctions } from './catalogue/picking.ts';
import { planFunctions } from './catalogue/plan.ts';
import { summaryFunctions } from './catalogue/summary.ts';
import { waterFunctions } from './catalogue/water.ts';

export type { FunctionEntry, FunctionGroup, Parameter, OptionParameter, Signature } from './catalogue/entry.ts';
export { functionGroups, signatureLabel } from './catalogue/entry.ts';

/** Every function, in the order of the reference. */
export const functions: readonly FunctionEntry[] = [
  ...pickingFunctions, ...summaryFunctions, ...changeFunctions, ...levelFunctions, ...comparisonFunctions, ...oxygenFunctions, ...waterFunctions,
  ...planFunctions, ...arithmeticFunctions,
];

export const functionNames: readonly string[] = functions.map((entry) => entry.name);

const byName: ReadonlyMap<string, FunctionEntry> = new Map(functions.map((entry) => [entry.name, entry]));

export function functionByName(name: string): FunctionEntry | null {
  return byName.get(name) ?? null;
}
