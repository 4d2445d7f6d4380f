import type { Unit } from './types.ts';
export interface UnitEntry { readonly symbol: string; readonly unit: Unit; readonly names: readonly string[]; readonly of: string; readonly remark: string | null }
export declare function parseUnit(text: string): Unit | null;
export declare function nearestUnit(text: string): string | null;
export declare function convertible(a: Unit, b: Unit): boolean;
export declare function convert(value: number, from: Unit, to: Unit): number;
export declare function differenceUnit(unit: Unit): Unit;
export declare function perHour(unit: Unit): Unit;
export declare const unitTable: readonly UnitEntry[];
export declare function matchPrintedUnit(text: string, offset: number): { unit: Unit; length: number } | null;
