// A chart ready to draw: a Vega-Lite specification with its data inside, and the words that go with it; what it is drawn by.
import type { Run } from '../writing/types.ts';

export interface Chart {
  /** A Vega-Lite v6 specification with inline data only. */
  readonly specification: Readonly<Record<string, unknown>>;
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly caption: readonly Run[];
  /** The text alternative: what a person who cannot see the chart needs. */
  readonly alternative: string;
}
export type ChartTheme = 'light' | 'dark' | 'high-contrast' | 'high-contrast-light' | 'print';

/** Parts of a Vega locale. */
export interface ChartLocale {
  readonly number: { readonly decimal: string; readonly thousands: string; readonly grouping: readonly number[]; readonly currency: readonly [string, string] };
  readonly time: {
    readonly dateTime: string; readonly date: string; readonly time: string; readonly periods: readonly string[];
    readonly days: readonly string[]; readonly shortDays: readonly string[]; readonly months: readonly string[]; readonly shortMonths: readonly string[];
  };
  /** How a day below the axis is written. */
  readonly dayFormat: string;
}
