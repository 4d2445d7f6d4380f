// A chart small enough for a hover: one series on its night, drawn by hand as SVG, without labels but the scale's ends.
import type { Note } from '../experiment/types.ts';
import type { Series } from '../dataset/types.ts';
import type { Instant } from '../time/instant.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { thin } from './downsample.ts';
import { decimalText } from './chartWords.ts';
import { seriesDecimals } from './panels.ts';
import { pointsOf, type Point } from './points.ts';
import { bandsOf } from './shading.ts';
import { chartColours, tankColour, type Colours } from './theme.ts';
import type { ChartTheme } from './types.ts';

export interface SmallChart {
  readonly svg: string;
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** For the text alternative. Counts every reading that is drawn. */
  readonly facts: { readonly readings: number; readonly from: string; readonly to: string; readonly lowest: string; readonly highest: string };
}

const width = 320;
/** Low enough to leave room for what a hover says: the editor opens it at most 250 px high. */
const height = 76;
const plot = { left: 44, right: width - 8, top: 7, bottom: height - 17 };
const mostPoints = 400;

/** The readings of a series over their whole time; null for a series without two of them. `mark` rings one reading. */
export function smallChart(note: Note, series: Series, theme: ChartTheme, mark: Instant | null = null): SmallChart | null {
  const { protocol } = note;
  if (!protocol || series.times.length === 0) return null;
  const all = pointsOf(series, protocol, series.times[0]!, series.times.at(-1)!);
  const first = all[0];
  const last = all.at(-1);
  if (!first || !last || last.time === first.time) return null;
  const counted = all.filter((point) => point.kind !== 'left-out');
  const values = (counted.length > 0 ? counted : all).map((point) => point.value);
  const low = values.reduce((a, b) => Math.min(a, b));
  const high = values.reduce((a, b) => Math.max(a, b));
  const decimals = seriesDecimals(series);
  const text = (value: number): string => decimalText(value, decimals, protocol);
  const clock = (instant: Instant): string => (last.time - first.time > 20 * 3_600_000 ? `${formatDate(instant, protocol.zone)} ` : '') + formatClock(instant, protocol.zone);
  const x = (time: Instant): number => plot.left + (plot.right - plot.left) * (time - first.time) / (last.time - first.time);
  const spread = high - low || Math.max(Math.abs(high) * 0.02, 0.1);
  const y = (value: number): number => Math.min(plot.bottom, Math.max(plot.top, plot.bottom - 4 - (plot.bottom - plot.top - 8) * (value - low) / spread));
  const colours = chartColours(theme);
  const tank = protocol.tanks.find((each) => each.id === series.place);
  const colour = colours[tankColour(tank?.index ?? null)];
  const points = thin(all, mostPoints);
  const marked = mark === null ? undefined : all.find((point) => point.time === mark);
  const parts = [
    rectangle(0, 0, width, height, colours.background),
    ...bandsOf(protocol, first.time, last.time).map((band) => rectangle(x(band.from), plot.top, x(band.to) - x(band.from), plot.bottom - plot.top, colours[band.kind])),
    `<path d="M${plot.left},${plot.bottom}H${plot.right}" stroke="${colours.axis}" fill="none"/>`,
    ...linesOf(points, x, y).map((d) => `<path d="${d}" stroke="${colour}" stroke-width="1.75" fill="none" stroke-linejoin="round"/>`),
    ...(points.length <= 60 ? points : points.filter((point) => point.keep)).map((point) => dot(point, round(x(point.time)), round(y(point.value)), colour, colours.background)),
    ...(marked ? [`<circle cx="${round(x(marked.time))}" cy="${round(y(marked.value))}" r="6" stroke="${colours.text}" stroke-width="1.5" fill="none"/>`] : []),
    label(plot.left - 5, y(high) + 4, 'end', text(high), colours),
    ...(high > low ? [label(plot.left - 5, y(low) + 4, 'end', text(low), colours)] : []),
    label(plot.left, height - 4, 'start', clock(first.time), colours),
    label(plot.right, height - 4, 'end', clock(last.time), colours),
  ];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${parts.join('')}</svg>`;
  return { svg, width, height, facts: { readings: counted.length, from: clock(first.time), to: clock(last.time), lowest: text(low), highest: text(high) } };
}

const round = (value: number): number => Math.round(value * 10) / 10;

function rectangle(x: number, y: number, w: number, h: number, fill: string): string {
  return `<rect x="${round(x)}" y="${round(y)}" width="${round(w)}" height="${round(h)}" fill="${fill}"/>`;
}

/** Texts are numbers and clock times only. */
function label(x: number, y: number, anchor: 'start' | 'end', text: string, colours: Colours): string {
  return `<text x="${round(x)}" y="${round(y)}" text-anchor="${anchor}" font-family="sans-serif" font-size="11" fill="${colours.muted}">${text}</text>`;
}

/** One path for each run of joined points. */
function linesOf(points: readonly Point[], x: (time: Instant) => number, y: (value: number) => number): string[] {
  const lines = new Map<number, string[]>();
  for (const { segment, time, value } of points) {
    if (segment < 0) continue;
    const line = lines.get(segment) ?? [];
    lines.set(segment, line);
    line.push(`${round(x(time))},${round(y(value))}`);
  }
  return [...lines.values()].filter((line) => line.length > 1).map((line) => `M${line.join('L')}`);
}

/** As in the large charts: doubtful readings hollow, left-out ones crossed out, those outside the instrument's range as arrows. */
function dot({ kind }: Point, x: number, y: number, colour: string, background: string): string {
  const stroke = `stroke="${colour}" stroke-width="1.5"`;
  switch (kind) {
    case 'plain': return `<circle cx="${x}" cy="${y}" r="2.2" fill="${colour}"/>`;
    case 'doubtful': return `<circle cx="${x}" cy="${y}" r="3" ${stroke} fill="${background}"/>`;
    case 'left-out': return `<path d="M${x - 3},${y - 3}l6,6m0,-6l-6,6" ${stroke} fill="none"/>`;
    case 'below': return `<path d="M${x - 3},${y - 3}h6l-3,5z" fill="${colour}"/>`;
    case 'above': return `<path d="M${x - 3},${y + 3}h6l-3,-5z" fill="${colour}"/>`;
  }
}
