import type { NumberValue } from './types.ts';
export interface FormatOptions { readonly decimals?: number; readonly decimalMark?: '.' | ','; readonly uncertainty?: boolean; readonly withUnit?: boolean }
export declare function roundTo(value: number, decimals: number): number;
export declare function formatNumber(value: number, decimals: number, decimalMark?: '.' | ','): string;
export declare function decimalsFor(value: number, halfWidth: number | null): number;
export declare function formatValue(v: NumberValue, options?: FormatOptions): string;
