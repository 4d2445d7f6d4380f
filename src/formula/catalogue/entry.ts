// The shape of one entry of the function catalogue. Checks, evaluator, completion, signature help, hover, the reference page
// and the tests all read it.
import type { FormulaValue } from '../types.ts';
import type { Call } from '../call.ts';

export const functionGroups = ['picking', 'summary', 'change', 'levels', 'comparison', 'oxygen', 'water', 'plan', 'arithmetic'] as const;
export type FunctionGroup = (typeof functionGroups)[number];

/**
 * What an operand may be. `series`: readings with numbers; `readings`: a series of numbers or words; `condition`: a series of
 * truths; `number or series`; `oxygen`: a column of dissolved oxygen of one tank.
 */
export type ParameterType =
  | 'series' | 'readings' | 'condition' | 'readings or condition' | 'number' | 'number or series' | 'temperature' | 'pressure' | 'salinity' | 'instant' | 'window' | 'tank' | 'quantity';

export interface Parameter {
  readonly name: string;
  readonly type: ParameterType;
  readonly optional?: boolean;
  /** One phrase for signature help. */
  readonly about: string;
}

export interface OptionParameter {
  readonly name: 'every' | 'within' | 'for' | 'over' | 'dark' | 'exchange' | 'stocking';
  readonly type: 'duration' | 'number';
  readonly required: boolean;
  readonly about: string;
}

export interface Signature {
  readonly parameters: readonly Parameter[];
  readonly options: readonly OptionParameter[];
  /** Plain words where this signature reads differently from the entry's. */
  readonly words?: string;
}

export interface FunctionExample {
  readonly formula: string;
  /** What it is asked of, in words. */
  readonly on: string;
  /** The value as text. */
  readonly gives: string;
}

export interface FunctionEntry {
  readonly name: string;
  readonly group: FunctionGroup;
  /** One, or several where the function can be asked in different ways. */
  readonly signatures: readonly Signature[];
  /** Type of what it gives. */
  readonly gives: 'number' | 'instant' | 'duration' | 'window' | 'series' | 'truth' | 'number or series' | 'reading';
  /** The unit of what it gives, in words. */
  readonly units: string;
  /** One sentence. */
  readonly definition: string;
  /** As a reader writes it by hand. */
  readonly equation: string;
  /** A published source, or null where the equation needs none. */
  readonly source: string | null;
  /** Values are of the example note of src/formula/catalogue/exampleNote.ts. */
  readonly example: FunctionExample;
  /**
   * In plain English: `{1}` is the first operand, `{bare 1}` the same without its article, `{window}` the stretch of time,
   * `{every}` an option. What was left away leaves nothing behind.
   */
  readonly words: string;
  readonly evaluate: (call: Call) => FormulaValue | null;
}

/** `rate(series, window?)`, for signature help and the reference. */
export function signatureLabel(name: string, signature: Signature): string {
  const parts = signature.parameters.map((each) => `${each.name}${each.optional ? '?' : ''}`);
  const options = signature.options.map((each) => `${each.name} …${each.required ? '' : '?'}`);
  return `${name}(${[...parts, ...options].join(', ')})`;
}

export const seriesParameter: Parameter = { name: 'series', type: 'series', about: 'readings of one tank and quantity, such as mat.DO' };
export const readingsParameter: Parameter = { name: 'series', type: 'readings', about: 'readings of one tank and quantity, such as mat.DO' };
export const windowParameter: Parameter = { name: 'window', type: 'window', optional: true, about: 'a stretch of time, such as light-off..22:30 or dark; all readings without one' };
/** The signature of most functions: a series and an optional window. */
export const seriesAndWindow: readonly Signature[] = [{ parameters: [seriesParameter, windowParameter], options: [] }];
