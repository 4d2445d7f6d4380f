// Where the parts of a chart stand: margins, the grid of panels, rows of event labels, the legend of a narrow drawing.
import type { Instant } from '../time/instant.ts';
import type { Drawing, EventLine } from './drawing.ts';
import { cutText, rowsOf, textWidth, wrapText } from './layout.ts';
import type { Drawn, Panel } from './panels.ts';
import { timeTicks, type Axis } from './ticks.ts';

export const small = 11;
export const labelWidth = 132;
const mostColumns = 3;

export interface EventLabel { readonly event: EventLine; readonly row: number; readonly align: 'left' | 'right'; readonly text: string }

export interface Frame {
  readonly left: number; readonly right: number; readonly narrow: boolean;
  /** Of each panel. */
  readonly plot: number; readonly height: number;
  /** Panels in their places, line by line; null where a line is not full. */
  readonly cells: readonly (number | null)[];
  readonly columns: number;
  /** Pixels between columns, and between lines. */
  readonly gap: number; readonly between: number;
  /** Pixels above the first line, and below the last. */
  readonly top: number; readonly bottom: number;
  /** Labels are written beside the ends of the lines. */
  readonly labelled: boolean;
  /** By panel; empty below the first line. */
  readonly eventLabels: readonly (readonly EventLabel[])[];
  readonly legend: readonly { readonly x: number; readonly y: number }[]; readonly legendHeight: number; readonly xTicks: readonly number[];
}

/** Panels of one scale stand side by side where each is one tank's; else one below the other. */
function gridOf(drawing: Drawing, narrow: boolean): { cells: (number | null)[]; columns: number } {
  const { panels } = drawing;
  if (drawing.facets !== 'tanks') return { cells: panels.map((_, index) => index), columns: 1 };
  const groups = [...new Set(panels.map((panel) => panel.scale))].map((scale) => panels.flatMap((panel, index) => (panel.scale === scale ? [index] : [])));
  const columns = narrow ? 1 : Math.min(mostColumns, Math.max(...groups.map((group) => group.length)));
  return { columns, cells: groups.flatMap((group): (number | null)[] => [...group, ...new Array<null>((columns - (group.length % columns)) % columns).fill(null)]) };
}

/** Events that are drawn in a panel: those of all tanks, and in a panel of one tank its own. */
export function eventsOf(panel: Panel, drawing: Drawing): EventLine[] {
  if (panel.facet === null) return [...drawing.events];
  const places = new Set(panel.drawn.flatMap((drawn) => drawn.source.places));
  return drawing.events.filter((event) => event.tanks.length === 0 || event.tanks.some((tank) => places.has(tank)));
}

function labelsOf(events: readonly EventLine[], plot: number, x: (at: Instant) => number): EventLabel[] {
  const texts = events.map((event) => cutText(event.label, 10, Math.max(x(event.at), plot - x(event.at)) - 8));
  const rows = rowsOf(events.map((event, index) => ({ at: x(event.at) + 3, width: textWidth(texts[index]!, 10) + 6 })), plot, 4);
  return rows.map((each, index) => ({ ...each, event: events[index]!, text: texts[index]! }));
}

/** What the legend of a narrow drawing names: every label once, as it is drawn first. */
export function legendSeries(drawing: Drawing): Drawn[] {
  const byLabel = new Map<string, Drawn>();
  for (const panel of drawing.panels) for (const drawn of panel.drawn) if (!byLabel.has(drawn.label)) byLabel.set(drawn.label, drawn);
  return [...byLabel.values()];
}

function legendOf(drawing: Drawing): { places: { x: number; y: number }[]; height: number } {
  const places: { x: number; y: number }[] = [];
  let at = 0;
  let row = 0;
  for (const { label } of legendSeries(drawing)) {
    const width = 34 + textWidth(label, small) + 14;
    if (at > 0 && at + width > drawing.width - 8) {
      at = 0;
      row += 1;
    }
    places.push({ x: at, y: row * 17 });
    at += width;
  }
  return { places, height: (row + 1) * 17 + 6 };
}

export function frameOf(drawing: Drawing): Frame {
  const { panels, axes } = drawing;
  const narrow = drawing.width < 480;
  const faceted = drawing.facets === 'tanks';
  const { cells, columns } = gridOf(drawing, narrow);
  const tickText = (axis: Axis): string[] => axis.ticks.map((tick) => tick.toFixed(axis.decimals));
  const left = Math.max(30, ...axes.flatMap((axis) => tickText(axis).map((text) => Math.ceil(textWidth(text, small)) + 14)));
  // A panel that is one tank's and shows one line needs no label beside it: its head says it.
  const labelled = !faceted || panels.some((panel) => panel.drawn.length > 1);
  const labels = labelled ? panels.flatMap((panel) => panel.drawn.flatMap((drawn) => wrapText(drawn.label, small, labelWidth, 3))) : [];
  const right = narrow ? 20 : Math.ceil(Math.max(24, ...labels.map((label) => textWidth(label, small) + 20)));
  const gap = labelled ? right : 16;
  const plot = Math.floor((drawing.width - left - right - (columns - 1) * gap) / columns);
  const x = (at: Instant): number => ((at - drawing.from) / (drawing.to - drawing.from)) * plot;
  const eventLabels = panels.map((panel, index) => (cells.indexOf(index) < columns ? labelsOf(eventsOf(panel, drawing), plot, x) : []));
  const rows = Math.max(0, ...eventLabels.flat().map((each) => each.row + 1));
  const legend = narrow && labelled ? legendOf(drawing) : { places: [], height: 0 };
  const heads = faceted ? 18 : 0;
  return {
    left, right, plot, narrow, cells, columns, gap, labelled, eventLabels, legend: legend.places, legendHeight: legend.height,
    height: panels.length === 1 ? (narrow ? 220 : 270) : faceted ? 140 : narrow ? 150 : 165,
    top: legend.height + (drawing.title ? 24 : 0) + 24 + heads + rows * 14 + (rows > 0 ? 4 : 0), between: 46 + heads, bottom: 50,
    xTicks: timeTicks(drawing.from + drawing.offset, drawing.to + drawing.offset, Math.max(3, Math.floor(plot / 54))),
  };
}

/** The size of the drawing in pixels. */
export function sizeOf(drawing: Drawing): { width: number; height: number } {
  const frame = frameOf(drawing);
  const lines = frame.cells.length / frame.columns;
  return { width: drawing.width, height: frame.top + frame.height * lines + frame.between * (lines - 1) + frame.bottom };
}
