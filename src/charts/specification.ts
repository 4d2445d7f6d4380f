// A Vega-Lite 6 specification from panels: every position that text needs is worked out here, so that drawing it
// needs no measuring, and every piece of the note's text is a datum or a title, never an expression.
//
// Times are wall-clock numbers (instant plus the zone's offset at the start of the figure) on a linear scale whose labels
// are written with UTC functions, so that neither the machine's time zone nor a clock change inside the run can bend the
// axis. (A temporal scale with a fixed domain needs `datetime(number)`, which Vega's interpreter reads as a year.)
import { chartConfig } from './config.ts';
import type { Drawing } from './drawing.ts';
import { frameOf, type Frame } from './frame.ts';
import { groundLayers } from './panelGround.ts';
import { seriesLayers } from './panelLines.ts';
import { textLayers } from './panelTexts.ts';
import { panelView, type Json } from './panelView.ts';

/** At most so many points a chart; a long run is thinned by M4. */
const mostPoints = 1500;

/** One panel, its layers the lowest first; no series has more than about `most` points. */
function panelSpecification(drawing: Drawing, frame: Frame, index: number, most: number): Json {
  const view = panelView(drawing, frame, index);
  const layers = [...groundLayers(view), ...view.panel.drawn.flatMap((drawn) => seriesLayers(view, drawn, most)), ...textLayers(view)];
  return { width: frame.plot, height: frame.height, layer: layers.map((layer) => ({ encoding: {}, ...layer })) };
}

/** Fills a line of the grid. */
function emptyPanel(frame: Frame): Json {
  return { width: frame.plot, height: frame.height, data: { values: [{}] }, mark: { type: 'point', opacity: 0 }, encoding: {} };
}

/** The whole specification, with colour names in place of colours (theme.ts puts them in). */
export function specificationOf(drawing: Drawing, description: string): Json {
  const frame = frameOf(drawing);
  const series = drawing.panels.reduce((sum, panel) => sum + panel.drawn.length, 0);
  const share = Math.max(20, Math.floor(mostPoints / Math.max(1, series)));
  const panels = drawing.panels.map((_, index) => panelSpecification(drawing, frame, index, share));
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    description,
    background: null,
    padding: 0,
    autosize: { type: 'pad', contains: 'padding' },
    config: chartConfig(drawing.locale),
    ...(panels.length === 1 ? panels[0] : frame.columns === 1 ? { vconcat: panels, bounds: 'flush', spacing: frame.between }
      : { concat: frame.cells.map((cell) => (cell === null ? emptyPanel(frame) : panels[cell])), columns: frame.columns, bounds: 'flush', spacing: { row: frame.between, column: frame.gap } }),
  };
}
