// A chart ready to draw: a Vega-Lite specification with its data inside, and the words that go with it.
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
