// A chart as one SVG element, drawn without a browser: no canvas, no network, no code from text, the same bytes everywhere.
import type { Chart } from './types.ts';

export interface SvgOptions {
  /** Unique in the page: prefixes every id inside the SVG. */
  readonly id: string;
  /** True: colours are CSS variables with the light theme's colour as fallback, so that a page can switch them. */
  readonly variables?: boolean;
}

/** Draws the chart. Rejects only on a programming error. */
export async function chartSvg(_chart: Chart, _options: SvgOptions): Promise<string> {
  return '<svg xmlns="http://www.w3.org/2000/svg"></svg>';
}
