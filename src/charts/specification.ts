// A Vega-Lite 6 specification from panels: every position that text needs is worked out here, so that drawing it
// needs no measuring, and every piece of the note's text is a datum or a title, never an expression.
//
// Times are wall-clock numbers (instant plus the zone's offset at the start of the figure) on a linear scale whose labels
// are written with UTC functions, so that neither the machine's time zone nor a clock change inside the run can bend the
// axis. (A temporal scale with a fixed domain needs `datetime(number)`, which Vega's interpreter reads as a year.)
import type { Instant } from '../time/instant.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Axis } from './ticks.ts';
import type { Drawn, Panel } from './panels.ts';
import type { Point } from './points.ts';
import type { Band, StatedPhase } from './shading.ts';
import { eventsOf, frameOf, labelWidth, sizeOf, small, type Frame } from './frame.ts';
import { cutText, keepApart, textWidth, wrapText } from './layout.ts';
import type { ChartLocale } from './locale.ts';
import { colourToken } from './theme.ts';
import { thin } from './downsample.ts';

type Json = Record<string, unknown>;

export interface LimitLine { readonly panel: number; readonly value: number; readonly label: string; readonly side: 'at least' | 'at most' }
export interface EventLine { readonly at: Instant; readonly label: string; readonly lamp: boolean; /** Empty: all of them. */ readonly tanks: readonly string[] }

export interface Drawing {
  readonly panels: readonly Panel[];
  readonly axes: readonly Axis[];
  readonly from: Instant;
  readonly to: Instant;
  /** Milliseconds to add to an instant to get the axis's wall-clock number. */
  readonly offset: number;
  readonly bands: readonly Band[];
  readonly phases: readonly StatedPhase[];
  readonly events: readonly EventLine[];
  readonly limits: readonly LimitLine[];
  /** `Europe/Amsterdam, UTC+01:00`. */
  readonly zoneLabel: string;
  /** null: Vega's own, English. */
  readonly locale: ChartLocale | null;
  readonly title: string | null;
  readonly facets: FigureOptions['facets'];
  readonly width: number;
  /** What is shown beside the pointer, where the drawing stands in a page that can. */
  readonly tip: (drawn: Drawn, point: Point) => string;
}

/** At most so many points a chart; a long run is thinned by M4. */
export const mostPoints = 1500;

const font = 'system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';

function pixelText(items: readonly { x: number; y: number; text: string }[], mark: Json): Json[] {
  if (items.length === 0) return [];
  return items.map((item) => ({
    data: { values: [{ text: item.text }] },
    mark: { type: 'text', align: 'left', baseline: 'middle', fontSize: small, ...mark, x: Math.round(item.x * 10) / 10, y: Math.round(item.y * 10) / 10 },
    encoding: { text: { field: 'text', type: 'nominal' } },
  }));
}

function panelSpecification(drawing: Drawing, frame: Frame, index: number, share: number): Json {
  const panel = drawing.panels[index]!;
  const axis = drawing.axes[index]!;
  const cell = frame.cells.indexOf(index);
  const below = frame.cells[cell + frame.columns];
  const last = below === undefined || below === null;
  const firstInLine = cell % frame.columns === 0;
  const wall = (instant: Instant): number => instant + drawing.offset;
  const { plot, height } = frame;
  const yOf = (value: number): number => height - ((value - axis.low) / (axis.high - axis.low)) * height;
  const xOf = (instant: Instant): number => ((instant - drawing.from) / (drawing.to - drawing.from)) * plot;
  const days = drawing.to - drawing.from > 72 * 3_600_000;
  const dayFirst = frame.xTicks[0] ?? 0;
  const dayFormat = drawing.locale?.dayFormat ?? '%-d %b';
  const xAxis = {
    values: frame.xTicks, labelFlush: false, labelBound: false, labelOverlap: false, title: null, grid: true, ticks: last, labels: last, domain: last,
    labelExpr: days
      ? `utcFormat(datum.value, '${dayFormat}')`
      : `(datum.value === ${dayFirst} || (utchours(datum.value) === 0 && utcminutes(datum.value) === 0)) ? [utcFormat(datum.value, '%H:%M'), utcFormat(datum.value, '${dayFormat}')] : utcFormat(datum.value, '%H:%M')`,
  };
  const x = { field: 't', type: 'quantitative', scale: { domain: [wall(drawing.from), wall(drawing.to)], zero: false, nice: false }, axis: xAxis };
  const y = {
    field: 'v', type: 'quantitative', scale: { domain: [axis.low, axis.high], zero: false, nice: false },
    axis: { values: axis.ticks, title: null, format: `.${axis.decimals}f`, labelOverlap: false, labels: firstInLine },
  };
  const layers: Json[] = [];
  // The first layer carries the axes and spans them, whatever is drawn after it.
  layers.push({
    data: { values: [{ t: wall(drawing.from), v: axis.low }] }, mark: { type: 'point', opacity: 0, size: 1 }, encoding: { x, y },
  });
  if (index === 0) {
    const size = sizeOf(drawing);
    layers.unshift({
      data: { values: [{}] },
      mark: { type: 'rect', x: -frame.left, x2: size.width - frame.left, y: -frame.top, y2: size.height - frame.top, fill: colourToken('background'), fillOpacity: 0, stroke: null },
    });
  }
  for (const kind of ['twilight', 'dark'] as const) {
    const bands = drawing.bands.filter((band) => band.kind === kind);
    if (bands.length === 0) continue;
    layers.push({
      data: { values: bands.map((band) => ({ t: wall(band.from), u: wall(band.to) })) },
      mark: { type: 'rect', fill: colourToken(kind), stroke: null, y: 0, y2: height },
      encoding: { x: { field: 't', type: 'quantitative' }, x2: { field: 'u' } },
    });
  }
  if (drawing.phases.length > 0) {
    layers.push({
      data: { values: drawing.phases.map((phase) => ({ t: wall(phase.from), u: wall(phase.to) })) },
      mark: { type: 'rect', fill: colourToken('muted'), fillOpacity: 0.13, stroke: colourToken('muted'), strokeOpacity: 0.5, strokeWidth: 0.8, y: 0, y2: height },
      encoding: { x: { field: 't', type: 'quantitative' }, x2: { field: 'u' } },
    });
    layers.push(...drawing.phases.flatMap((phase) => {
      const room = xOf(phase.to) - xOf(phase.from) - 6;
      return textWidth(phase.id, 10) > room ? [] : pixelText([{ x: xOf(phase.from) + 3, y: height - 8, text: phase.id }], { fontSize: 10, fill: colourToken('muted') });
    }));
  }
  const events = eventsOf(panel, drawing);
  if (events.length > 0) {
    layers.push({
      data: { values: events.filter((event) => !event.lamp).map((event) => ({ t: wall(event.at) })) },
      mark: { type: 'rule', stroke: colourToken('event'), strokeWidth: 1.2 },
      encoding: { x: { field: 't', type: 'quantitative' } },
    }, {
      data: { values: events.filter((event) => event.lamp).map((event) => ({ t: wall(event.at) })) },
      mark: { type: 'rule', stroke: colourToken('muted'), strokeWidth: 0.8, strokeDash: [1, 3] },
      encoding: { x: { field: 't', type: 'quantitative' } },
    });
  }
  const limits = drawing.limits.filter((each) => each.panel === index);
  if (limits.length > 0) {
    layers.push({
      data: { values: limits.map((limit) => ({ v: limit.value })) },
      mark: { type: 'rule', stroke: colourToken('limit'), strokeWidth: 1.3, strokeDash: [6, 4] },
      encoding: { y: { field: 'v', type: 'quantitative' } },
    });
    layers.push(...pixelText(limits.map((limit) => ({
      // Below a lower limit, above an upper one, unless the edge of the panel is too near.
      x: 6, y: yOf(limit.value) + ((limit.side === 'at least' && yOf(limit.value) < height - 16) || yOf(limit.value) < 16 ? 9 : -8), text: cutText(limit.label, 10, plot - 12),
    })), { fontSize: 10, fill: colourToken('limit') }));
  }
  const xy = { x: { field: 't', type: 'quantitative' }, y: { field: 'v', type: 'quantitative' } };
  const round = (value: number): number => Number(value.toPrecision(12));
  for (const drawn of panel.drawn) {
    const points = thin(drawn.points, share);
    const datum = (point: Point): Json => ({ t: wall(point.time), v: round(point.value) });
    const told = (point: Point): Json => ({ ...datum(point), tip: drawing.tip(drawn, point) });
    const line = points.filter((point) => point.segment >= 0);
    const banded = line.filter((point) => point.half !== undefined);
    if (banded.length > 1) {
      layers.push({
        data: { values: banded.map((point) => ({ t: wall(point.time), l: round(point.value - point.half!), h: round(point.value + point.half!), s: point.segment })) },
        mark: { type: 'area', fill: colourToken(drawn.colour), fillOpacity: 0.26, stroke: null },
        encoding: { x: xy.x, y: { field: 'l', type: 'quantitative', stack: null }, y2: { field: 'h' }, detail: { field: 's', type: 'nominal' } },
      });
    }
    if (line.length > 1) {
      layers.push({
        data: { values: line.map((point) => ({ ...datum(point), s: point.segment })) },
        mark: { type: 'line', stroke: colourToken(drawn.colour), strokeWidth: 2, strokeJoin: 'round', strokeCap: 'butt', ...(drawn.dash.length ? { strokeDash: [...drawn.dash] } : {}) },
        encoding: { ...xy, detail: { field: 's', type: 'nominal' } },
      });
    }
    const dense = points.length > plot / 9;
    const plain = points.filter((point) => point.kind === 'plain');
    // In a dense series only lone points and one in so many are marked, enough to tell the tanks apart by shape.
    const lone = new Map<number, number>();
    for (const point of line) lone.set(point.segment, (lone.get(point.segment) ?? 0) + 1);
    const each = Math.ceil(plain.length / Math.max(6, plot / 42));
    const marked = dense ? plain.filter((point, position) => position % each === Math.floor(each / 2) || lone.get(point.segment) === 1) : plain;
    const shown = (kind: Point['kind']): readonly Point[] => points.filter((point) => point.kind === kind);
    const points_ = (values: readonly Point[], mark: Json): void => {
      if (values.length > 0) layers.push({ data: { values: values.map(told) }, mark: { type: 'point', size: 34, opacity: 1, ...mark }, encoding: { ...xy, tooltip: { field: 'tip', type: 'nominal' } } });
    };
    points_(marked, { shape: drawn.shape, filled: true, fill: colourToken(drawn.colour), fillOpacity: 1, stroke: colourToken('background'), strokeWidth: 0.6 });
    points_(shown('doubtful'), { shape: drawn.shape, size: 52, filled: true, fill: colourToken('background'), fillOpacity: 1, stroke: colourToken(drawn.colour), strokeWidth: 1.8 });
    points_(shown('left-out'), { shape: 'M-0.8,-0.8L0.8,0.8M-0.8,0.8L0.8,-0.8', size: 62, filled: false, stroke: colourToken(drawn.colour), strokeWidth: 1.8 });
    points_(shown('below'), { shape: 'M0,-1L0,0.9M-0.5,0.3L0,0.9L0.5,0.3', size: 120, filled: false, stroke: colourToken(drawn.colour), strokeWidth: 1.6 });
    points_(shown('above'), { shape: 'M0,1L0,-0.9M-0.5,-0.3L0,-0.9L0.5,-0.3', size: 120, filled: false, stroke: colourToken(drawn.colour), strokeWidth: 1.6 });
  }
  const texts: Json[] = [];
  const heading = panel.facet === null || frame.cells.findIndex((each) => each !== null && drawing.panels[each]!.scale === panel.scale) === cell;
  const topOfPanel = index < frame.columns && cell < frame.columns ? -frame.top + frame.legendHeight + (drawing.title ? 24 : 0) : 28 - frame.between;
  if (index === 0 && drawing.title) {
    texts.push(...pixelText([{ x: -frame.left, y: -frame.top + 9, text: cutText(drawing.title, 13.5, drawing.width) }], { fontSize: 13.5, fontWeight: 600, fill: colourToken('text') }));
  }
  if (heading) texts.push(...pixelText([{ x: -frame.left, y: topOfPanel + 9, text: cutText(panel.title, 11.5, drawing.width - 4) }], { fontSize: 11.5, fontWeight: 600, fill: colourToken('text') }));
  if (panel.facet !== null) {
    const own = panel.drawn[0]!;
    const y = topOfPanel + 26;
    texts.push({ data: { values: [{}] }, mark: { type: 'point', x: 5, y, shape: own.shape, size: 34, opacity: 1, filled: true, fill: colourToken(own.colour), fillOpacity: 1, stroke: null } });
    texts.push(...pixelText([{ x: 14, y, text: cutText(panel.facet, small, plot - 14) }], { fontWeight: 500, fill: colourToken(own.colour) }));
  }
  for (const { event, row, align, text } of frame.eventLabels[index]!) {
    if (row < 0) continue;
    texts.push(...pixelText([{ x: xOf(event.at) + (align === 'left' ? 3 : -3), y: -8 - row * 14, text }],
      { fontSize: 10, align, fill: colourToken(event.lamp ? 'muted' : 'event'), ...(event.lamp ? { fontStyle: 'italic' } : {}) }));
  }
  if (index === 0 && frame.legend.length > 0) {
    const seen = new Set<string>();
    let entry = 0;
    for (const each of drawing.panels) for (const drawn of each.drawn) {
      if (seen.has(drawn.label)) continue;
      seen.add(drawn.label);
      const place = frame.legend[entry]!;
      entry += 1;
      const at = { x: -frame.left + place.x, y: -frame.top + (drawing.title ? 24 : 0) + place.y + 8 };
      texts.push({ data: { values: [{}] }, mark: { type: 'point', x: at.x + 13, y: at.y, shape: 'M-1,0L1,0', size: 676, opacity: 1, filled: false, stroke: colourToken(drawn.colour), strokeWidth: 2, ...(drawn.dash.length ? { strokeDash: [...drawn.dash] } : {}) } });
      texts.push({ data: { values: [{}] }, mark: { type: 'point', x: at.x + 13, y: at.y, shape: drawn.shape, size: 34, opacity: 1, filled: true, fill: colourToken(drawn.colour), fillOpacity: 1, stroke: null } });
      texts.push(...pixelText([{ x: at.x + 31, y: at.y, text: cutText(drawn.label, small, drawing.width - 40) }], { fill: colourToken('text') }));
    }
  }
  if (!frame.narrow && frame.labelled) {
    const ends = panel.drawn.map((drawn) => {
      const joined = drawn.points.filter((point) => point.segment >= 0);
      const end = joined[joined.length - 1] ?? drawn.points[drawn.points.length - 1]!;
      const lines = wrapText(drawn.label, small, labelWidth, 3);
      return { drawn, lines, y: yOf(end.value), atEdge: plot - xOf(end.time) < 12, size: lines.length * 13 + 3 };
    });
    const middles = keepApart(ends.map((end) => ({ middle: end.y, size: end.size })), -8, height + 8);
    ends.forEach((end, position) => {
      const middle = middles[position]!;
      // The line's last point is its own sign when the label stands right beside it.
      const beside = end.atEdge && Math.abs(middle - ((end.lines.length - 1) * 13) / 2 - end.y) < 5;
      if (!beside) texts.push({ data: { values: [{}] }, mark: { type: 'point', x: plot + 9, y: middle - ((end.lines.length - 1) * 13) / 2, shape: end.drawn.shape, size: 34, opacity: 1, filled: true, fill: colourToken(end.drawn.colour), fillOpacity: 1, stroke: null } });
      texts.push(...pixelText(end.lines.map((line, row) => ({ x: plot + (beside ? 11 : 17), y: middle + (row - (end.lines.length - 1) / 2) * 13, text: line })),
        { fill: colourToken(end.drawn.colour), fontWeight: 500 }));
    });
  }
  if (index === drawing.panels.length - 1) {
    texts.push(...pixelText([{ x: plot, y: height + 42, text: cutText(drawing.zoneLabel, 10, drawing.width - 8) }], { fontSize: 10, align: 'right', fill: colourToken('muted') }));
  }
  return { width: plot, height, layer: [...layers, ...texts].map((layer) => ({ encoding: {}, ...layer })) };
}

/** Fonts, lines and colours that every chart has. */
function chartConfig(locale: ChartLocale | null): Json {
  return {
    font,
    view: { stroke: null, fill: null },
    concat: { spacing: 46 },
    axis: {
      labelFont: font, labelFontSize: small, labelColor: colourToken('muted'), gridColor: colourToken('grid'), gridWidth: 0.7,
      domainColor: colourToken('axis'), tickColor: colourToken('axis'), labelPadding: 5, tickSize: 4,
    },
    axisY: { domain: false, ticks: false, labelPadding: 8 },
    axisX: { labelLineHeight: 13, grid: true, gridOpacity: 0.6 },
    text: { font },
    aria: false,
    ...(locale === null ? {} : { locale: { number: locale.number, time: locale.time } }),
  };
}

/** Fonts and colours of the texts and marks of somebody's own specification. */
export function ownChartConfig(locale: ChartLocale | null, narrow: boolean): Json {
  const base = chartConfig(locale);
  return {
    ...base, axis: { ...(base['axis'] as Json), titleFont: font, titleFontSize: small, titleColor: colourToken('text'), titleFontWeight: 500 },
    title: { font, fontSize: 13.5, fontWeight: 600, color: colourToken('text') }, legend: { labelFont: font, labelColor: colourToken('text'), titleFont: font, titleColor: colourToken('text'), ...(narrow ? { orient: 'bottom' } : {}) },
    axisXBand: { labelAngle: 0 }, axisXPoint: { labelAngle: 0 }, mark: { color: colourToken('tank-0') }, text: { font, color: colourToken('text') }, rule: { color: colourToken('axis') },
  };
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
