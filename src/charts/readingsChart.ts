// The chart of readings over time: from a note and a figure's options to a Vega-Lite specification with its words.
import type { Problem } from '../problems/problem.ts';
import type { Note } from '../experiment/types.ts';
import { plainFigure, type FigureOptions } from '../experiment/figureBlock.ts';
import { formatClock, formatOffset } from '../time/text.ts';
import { printedMinus } from '../quantities/format.ts';
import { flag } from '../dataset/types.ts';
import type { Chart, ChartTheme } from './types.ts';
import { alternativeOf, amountIn, captionOf, sentence, wordsOf, type ChartFacts } from './chartWords.ts';
import { chartFacts } from './chartFacts.ts';
import type { Drawing, LimitLine } from './drawing.ts';
import { figureWindow, type Panel } from './panels.ts';
import { localeOf } from './locale.ts';
import { sizeOf } from './frame.ts';
import { specificationOf } from './specification.ts';
import { specChart } from './specChart.ts';
import { themed } from './theme.ts';
import { valueAxis, type Axis } from './ticks.ts';

/** The figure that a `readings` block shows: every series of its columns; null when they hold no number. */
export function readingsFigureOptions(blockIndex: number, note: Note): FigureOptions | null {
  const table = note.tables.find((each) => each.block === blockIndex);
  if (!table) return null;
  const show = table.columns.filter((column) => {
    const series = note.dataset.series.get(column.id);
    return series !== undefined && series.sources.some((source, index) => source.table === table && (series.flags[index]! & (flag.missing | flag.word)) === 0);
  }).map((column) => ({ value: column.id, computed: null }));
  if (show.length === 0) return null;
  const times = table.rows.flatMap((row) => (row.instant === null ? [] : [row.instant]));
  return { ...plainFigure, show, from: times.length > 0 ? Math.min(...times) : null, to: times.length > 0 ? Math.max(...times) : null };
}

/** The axis of panels that share a scale. */
function axisOf(panels: readonly Panel[], limits: readonly LimitLine[], ticks: number): Axis {
  let low = Infinity;
  let high = -Infinity;
  for (const panel of panels) for (const drawn of panel.drawn) for (const point of drawn.points) {
    low = Math.min(low, point.value - (point.half ?? 0));
    high = Math.max(high, point.value + (point.half ?? 0));
  }
  // A limit is drawn when it is near enough not to squash the readings.
  const spread = Math.max(high - low, Math.abs(high) * 0.02, 1e-9);
  for (const limit of limits) {
    if (limit.value < low && low - limit.value <= spread * 1.5) low = limit.value;
    if (limit.value > high && limit.value - high <= spread * 1.5) high = limit.value;
  }
  return valueAxis(low, high, ticks);
}

/** Builds the chart with colour names in place of colours: the preview puts its theme's in with `themed`. */
export function unthemedChart(note: Note, options: FigureOptions): Chart | null {
  if (options.spec) return specChart(note, options, options.spec);
  const { protocol } = note;
  const window = figureWindow(note, options);
  if (!protocol || !window) return null;
  const all = chartFacts(note, options, protocol, window);
  const { panels, bands, events } = all;
  if (panels.length === 0) return null;
  const words = wordsOf(protocol);
  const { from, to } = window;
  const axes = panels.map(({ scale }) => axisOf(panels.filter((each) => each.scale === scale), all.limits.filter((limit) => panels[limit.panel]!.scale === scale), panels.length === 1 ? 6 : 4));
  const limits = all.limits.filter((limit) => limit.value >= axes[limit.panel]!.low && limit.value <= axes[limit.panel]!.high);
  const offset = protocol.zone.offsetAt(from);
  const changed = protocol.zone.offsetAt(to) !== offset;
  const drawing: Drawing = {
    panels, axes, from, to, offset, bands, phases: all.phases, events, limits, title: options.title, width: options.width ?? 680,
    tip: (drawn, point) => `${drawn.label}, ${formatClock(point.time, protocol.zone)}: ${amountIn(point.value, drawn.source.unit, drawn.source.decimals, protocol)}${words.kinds[point.kind]}`,
    zoneLabel: words.timesIn(protocol.zone.name === 'UTC' ? null : { name: protocol.zone.name, offset: printedMinus(formatOffset(offset)), changed }),
    locale: localeOf(protocol), facets: options.facets,
  };
  const facts: ChartFacts = { ...all, limits };
  const alternative = [...(options.alternative === null ? [] : [sentence(options.alternative)]), alternativeOf(facts)].join(' ');
  return { specification: specificationOf(drawing, alternative), ...sizeOf(drawing), caption: captionOf(facts, options.caption), alternative };
}

/** Draws the series that `options.show` names. `chart` is null when there is nothing to draw; readNote has named the reason. */
export function readingsChart(note: Note, options: FigureOptions, theme: ChartTheme): { chart: Chart | null; problems: Problem[] } {
  const chart = unthemedChart(note, options);
  return { chart: chart && { ...chart, specification: themed(chart.specification, theme) }, problems: [] };
}
