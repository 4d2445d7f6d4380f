// One panel of a drawing, its scales, and the marks that are put by pixels.
import type { Instant } from '../time/instant.ts';
import type { Drawing } from './drawing.ts';
import { small, type Frame } from './frame.ts';
import type { Drawn, Panel } from './panels.ts';
import { colourToken } from './theme.ts';
import type { Axis } from './ticks.ts';

/** A layer or a part of one. */
export type Json = Record<string, unknown>;

export interface PanelView {
  readonly drawing: Drawing;
  readonly frame: Frame;
  /** Its place among the drawing's panels, and in the grid. */
  readonly index: number;
  readonly cell: number;
  readonly panel: Panel;
  readonly axis: Axis;
  /** The axis's wall-clock number of an instant. */
  readonly wall: (instant: Instant) => number;
  /** Pixels from the left and from the top of the plot. */
  readonly xOf: (instant: Instant) => number;
  readonly yOf: (value: number) => number;
}

export function panelView(drawing: Drawing, frame: Frame, index: number): PanelView {
  const axis = drawing.axes[index]!;
  const { plot, height } = frame;
  return {
    drawing, frame, index, axis, cell: frame.cells.indexOf(index), panel: drawing.panels[index]!,
    wall: (instant) => instant + drawing.offset,
    xOf: (instant) => ((instant - drawing.from) / (drawing.to - drawing.from)) * plot,
    yOf: (value) => height - ((value - axis.low) / (axis.high - axis.low)) * height,
  };
}

/** Texts at places in pixels, a layer each. */
export function pixelText(items: readonly { x: number; y: number; text: string }[], mark: Json): Json[] {
  return items.map((item) => ({
    data: { values: [{ text: item.text }] },
    mark: { type: 'text', align: 'left', baseline: 'middle', fontSize: small, ...mark, x: Math.round(item.x * 10) / 10, y: Math.round(item.y * 10) / 10 },
    encoding: { text: { field: 'text', type: 'nominal' } },
  }));
}

/** The sign of a series at a place in pixels: its shape in its colour. */
export function pixelSign({ shape, colour }: Pick<Drawn, 'shape' | 'colour'>, x: number, y: number): Json {
  return { data: { values: [{}] }, mark: { type: 'point', x, y, shape, size: 34, opacity: 1, filled: true, fill: colourToken(colour), fillOpacity: 1, stroke: null } };
}

/** `strokeDash` where a line has one. */
export const dashed = ({ dash }: Pick<Drawn, 'dash'>): Json => (dash.length > 0 ? { strokeDash: [...dash] } : {});
