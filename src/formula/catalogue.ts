// The catalogue of functions: gathers the groups. Checks, evaluator, completion, help and the reference page read it.
import { arithmeticFunctions } from './catalogue/arithmetic.ts';
import { changeFunctions } from './catalogue/change.ts';
import { comparisonFunctions } from './catalogue/comparison.ts';
import type { FunctionEntry } from './catalogue/entry.ts';
import { gapFunctions } from './catalogue/gap.ts';
import { levelFunctions } from './catalogue/levels.ts';
import { nightFunctions } from './catalogue/night.ts';
import { oxygenFunctions } from './catalogue/oxygen.ts';
import { pickingFunctions } from './catalogue/picking.ts';
import { planFunctions } from './catalogue/plan.ts';
import { summaryFunctions } from './catalogue/summary.ts';
import { whatIfFunctions } from './catalogue/whatIf.ts';
import { waterFunctions } from './catalogue/water.ts';

export type { FunctionEntry, FunctionGroup, Parameter, OptionParameter, Signature } from './catalogue/entry.ts';
export { functionGroups, signatureLabel } from './catalogue/entry.ts';

/** Every function, in the order of the reference. */
export const functions: readonly FunctionEntry[] = [
  ...pickingFunctions, ...summaryFunctions, ...changeFunctions, ...levelFunctions, ...comparisonFunctions, ...gapFunctions, ...oxygenFunctions, ...nightFunctions, ...whatIfFunctions, ...waterFunctions,
  ...planFunctions, ...arithmeticFunctions,
];

export const functionNames: readonly string[] = functions.map((entry) => entry.name);

/** Names that people bring from elsewhere, for the fix of a function that is not there. */
export const otherFunctionNames: Readonly<Record<string, string>> = {
  avg: 'mean', average: 'mean', minimum: 'min', lowest: 'min', maximum: 'max', highest: 'max', stdev: 'sd', std: 'sd', delta: 'change', diff: 'difference',
  drop: 'fall', decrease: 'fall', increase: 'rise', loss: 'fall', gain: 'rise', value: 'at', regression: 'slope', trend: 'slope', log: 'ln', root: 'sqrt',
  length_of: 'duration', every: 'all', some: 'any', number: 'count', n: 'count', spread: 'range',
};

const byName: ReadonlyMap<string, FunctionEntry> = new Map(functions.map((entry) => [entry.name, entry]));

export function functionByName(name: string): FunctionEntry | null {
  return byName.get(name) ?? null;
}
