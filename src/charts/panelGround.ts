// What lies under the lines of a panel: the axes, the dark and the twilight, phases, events and limits.
import { eventsOf, sizeOf } from './frame.ts';
import { cutText, textWidth } from './layout.ts';
import { pixelText, type Json, type PanelView } from './panelView.ts';
import { colourToken } from './theme.ts';

const x = { field: 't', type: 'quantitative' } as const;
const spanX = { x, x2: { field: 'u' } } as const;

/** The layers of the ground, the lowest first. */
export function groundLayers(view: PanelView): Json[] {
  return [...(view.index === 0 ? [wholeDrawing(view)] : []), axesLayer(view), ...bandLayers(view), ...phaseLayers(view), ...eventLayers(view), ...limitLayers(view)];
}

/** A rectangle behind everything, so that the drawing is as large as it was worked out. */
function wholeDrawing({ drawing, frame }: PanelView): Json {
  const size = sizeOf(drawing);
  return {
    data: { values: [{}] },
    mark: { type: 'rect', x: -frame.left, x2: size.width - frame.left, y: -frame.top, y2: size.height - frame.top, fill: colourToken('background'), fillOpacity: 0, stroke: null },
  };
}

/** Carries the axes and spans them, whatever is drawn after it. */
function axesLayer(view: PanelView): Json {
  const { drawing, frame, axis, cell, wall } = view;
  const below = frame.cells[cell + frame.columns];
  const last = below === undefined || below === null;
  const firstInLine = cell % frame.columns === 0;
  const xAxis = {
    values: frame.xTicks, labelFlush: false, labelBound: false, labelOverlap: false, title: null, grid: true, ticks: last, labels: last, domain: last,
    labelExpr: timeLabels(view),
  };
  const y = {
    field: 'v', type: 'quantitative', scale: { domain: [axis.low, axis.high], zero: false, nice: false },
    axis: { values: axis.ticks, title: null, format: `.${axis.decimals}f`, labelOverlap: false, labels: firstInLine },
  };
  return {
    data: { values: [{ t: wall(drawing.from), v: axis.low }] }, mark: { type: 'point', opacity: 0, size: 1 },
    encoding: { x: { ...x, scale: { domain: [wall(drawing.from), wall(drawing.to)], zero: false, nice: false }, axis: xAxis }, y },
  };
}

/** Clock times, with the day below the first and below each midnight; days alone where the run is longer than three. */
function timeLabels({ drawing, frame }: PanelView): string {
  const dayFirst = frame.xTicks[0] ?? 0;
  const dayFormat = drawing.locale?.dayFormat ?? '%-d %b';
  return drawing.to - drawing.from > 72 * 3_600_000
    ? `utcFormat(datum.value, '${dayFormat}')`
    : `(datum.value === ${dayFirst} || (utchours(datum.value) === 0 && utcminutes(datum.value) === 0)) ? [utcFormat(datum.value, '%H:%M'), utcFormat(datum.value, '${dayFormat}')] : utcFormat(datum.value, '%H:%M')`;
}

function bandLayers({ drawing, frame, wall }: PanelView): Json[] {
  return (['twilight', 'dark'] as const).flatMap((kind) => {
    const bands = drawing.bands.filter((band) => band.kind === kind);
    if (bands.length === 0) return [];
    return [{
      data: { values: bands.map((band) => ({ t: wall(band.from), u: wall(band.to) })) },
      mark: { type: 'rect', fill: colourToken(kind), stroke: null, y: 0, y2: frame.height },
      encoding: spanX,
    }];
  });
}

function phaseLayers({ drawing, frame, wall, xOf }: PanelView): Json[] {
  if (drawing.phases.length === 0) return [];
  const names = drawing.phases.flatMap((phase) => {
    const room = xOf(phase.to) - xOf(phase.from) - 6;
    return textWidth(phase.id, 10) > room ? [] : [{ x: xOf(phase.from) + 3, y: frame.height - 8, text: phase.id }];
  });
  return [{
    data: { values: drawing.phases.map((phase) => ({ t: wall(phase.from), u: wall(phase.to) })) },
    mark: { type: 'rect', fill: colourToken('muted'), fillOpacity: 0.13, stroke: colourToken('muted'), strokeOpacity: 0.5, strokeWidth: 0.8, y: 0, y2: frame.height },
    encoding: spanX,
  }, ...pixelText(names, { fontSize: 10, fill: colourToken('muted') })];
}

function eventLayers({ drawing, panel, wall }: PanelView): Json[] {
  const events = eventsOf(panel, drawing);
  if (events.length === 0) return [];
  const rules = (lamp: boolean, mark: Json): Json => ({
    data: { values: events.filter((event) => event.lamp === lamp).map((event) => ({ t: wall(event.at) })) },
    mark: { type: 'rule', ...mark },
    encoding: { x },
  });
  return [rules(false, { stroke: colourToken('event'), strokeWidth: 1.2 }), rules(true, { stroke: colourToken('muted'), strokeWidth: 0.8, strokeDash: [1, 3] })];
}

function limitLayers({ drawing, frame, index, yOf }: PanelView): Json[] {
  const limits = drawing.limits.filter((each) => each.panel === index);
  if (limits.length === 0) return [];
  const names = limits.map((limit) => {
    const y = yOf(limit.value);
    // Below a lower limit, above an upper one, unless the edge of the panel is too near.
    return { x: 6, y: y + ((limit.side === 'at least' && y < frame.height - 16) || y < 16 ? 9 : -8), text: cutText(limit.label, 10, frame.plot - 12) };
  });
  return [{
    data: { values: limits.map((limit) => ({ v: limit.value })) },
    mark: { type: 'rule', stroke: colourToken('limit'), strokeWidth: 1.3, strokeDash: [6, 4] },
    encoding: { y: { field: 'v', type: 'quantitative' } },
  }, ...pixelText(names, { fontSize: 10, fill: colourToken('limit') })];
}
