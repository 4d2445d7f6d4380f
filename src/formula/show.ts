// A value as text for readers, for machines, and as the JSON of `evenwater ask`.
import type { FormulaValue } from './types.ts';
import type { FormulaContext } from './context.ts';

export interface ShowOptions {
  /** Digits after the decimal mark; by default those of the readings that went in, or what the uncertainty allows. */
  readonly decimals?: number;
  readonly withUnit?: boolean;
  readonly withUncertainty?: boolean;
}

export interface JsonValue {
  readonly type: string; readonly value: unknown; readonly unit: string | null; readonly uncertainty: number | null; readonly text: string;
}

export function showValue(_value: FormulaValue, _context: FormulaContext, _options: ShowOptions = {}): string { return ''; }
export function machineValue(_value: FormulaValue, _context: FormulaContext): string { return ''; }
export function jsonValue(value: FormulaValue, _context: FormulaContext): JsonValue {
  return { type: value.type, value: null, unit: null, uncertainty: null, text: '' };
}
