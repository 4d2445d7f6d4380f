import type { Contributions, NumberValue, Unit } from './types.ts';
export type FailureCode = 'unit-mismatch' | 'no-true-zero' | 'zero-base' | 'not-finite';
export interface Failure { readonly failure: FailureCode; readonly args: Readonly<Record<string, string>> }
export declare function isFailure(x: unknown): x is Failure;
export declare function numberValue(value: number, unit: Unit, contributions?: Contributions | null): NumberValue;
export declare function exactValue(value: number, unit: Unit): NumberValue;
export declare function add(a: NumberValue, b: NumberValue): NumberValue | Failure;
export declare function subtract(a: NumberValue, b: NumberValue): NumberValue | Failure;
export declare function multiply(a: NumberValue, b: NumberValue): NumberValue | Failure;
export declare function divide(a: NumberValue, b: NumberValue): NumberValue | Failure;
export declare function negate(a: NumberValue): NumberValue | Failure;
export declare function asDifference(a: NumberValue): NumberValue;
export declare function percentChange(from: NumberValue, to: NumberValue): NumberValue | Failure;
export declare function toUnit(v: NumberValue, unit: Unit): NumberValue | Failure;
export declare function compare(a: NumberValue, b: NumberValue): -1 | 0 | 1 | Failure;
export declare function combine(value: number, unit: Unit, parts: readonly { readonly value: NumberValue; readonly derivative: number }[]): NumberValue;
export declare function standardUncertainty(v: NumberValue): number | null;
export declare function expandedUncertainty(v: NumberValue): number | null;
