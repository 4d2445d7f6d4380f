// The chart of readings over time: from a note and a figure's options to a Vega-Lite specification with its words.
import type { Problem } from '../problems/problem.ts';
import type { Note } from '../experiment/types.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Chart, ChartTheme } from './types.ts';

/** Draws the series that `options.show` names. `chart` is null when there is nothing to draw; `problems` says why. */
export function readingsChart(_note: Note, _options: FigureOptions, _theme: ChartTheme): { chart: Chart | null; problems: Problem[] } {
  return { chart: null, problems: [] };
}
