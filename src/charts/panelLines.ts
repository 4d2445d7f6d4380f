// The series of a panel: the band of their uncertainty, the line, and the points by their kind.
import { thin } from './downsample.ts';
import type { Drawn } from './panels.ts';
import { dashed, type Json, type PanelView } from './panelView.ts';
import type { Point, PointKind } from './points.ts';
import { colourToken } from './theme.ts';

const xy = { x: { field: 't', type: 'quantitative' }, y: { field: 'v', type: 'quantitative' } } as const;
const round = (value: number): number => Number(value.toPrecision(12));

/** The layers of one series, thinned to about `most` points. */
export function seriesLayers(view: PanelView, drawn: Drawn, most: number): Json[] {
  const points = thin(drawn.points, most);
  const line = points.filter((point) => point.segment >= 0);
  return [...bandLayer(view, drawn, line), ...lineLayer(view, drawn, line), ...pointLayers(view, drawn, points, line)];
}

function bandLayer({ wall }: PanelView, drawn: Drawn, line: readonly Point[]): Json[] {
  const banded = line.filter((point) => point.half !== undefined);
  if (banded.length < 2) return [];
  return [{
    data: { values: banded.map((point) => ({ t: wall(point.time), l: round(point.value - point.half!), h: round(point.value + point.half!), s: point.segment })) },
    mark: { type: 'area', fill: colourToken(drawn.colour), fillOpacity: 0.26, stroke: null },
    encoding: { x: xy.x, y: { field: 'l', type: 'quantitative', stack: null }, y2: { field: 'h' }, detail: { field: 's', type: 'nominal' } },
  }];
}

function lineLayer({ wall }: PanelView, drawn: Drawn, line: readonly Point[]): Json[] {
  if (line.length < 2) return [];
  return [{
    data: { values: line.map((point) => ({ t: wall(point.time), v: round(point.value), s: point.segment })) },
    mark: { type: 'line', stroke: colourToken(drawn.colour), strokeWidth: 2, strokeJoin: 'round', strokeCap: 'butt', ...dashed(drawn) },
    encoding: { ...xy, detail: { field: 's', type: 'nominal' } },
  }];
}

function pointLayers({ drawing, frame, wall }: PanelView, drawn: Drawn, points: readonly Point[], line: readonly Point[]): Json[] {
  const colour = colourToken(drawn.colour);
  const ofKind = (kind: PointKind): Point[] => points.filter((point) => point.kind === kind);
  const marked = points.length > frame.plot / 9 ? sparse(ofKind('plain'), line, frame.plot) : ofKind('plain');
  const kinds: readonly (readonly [readonly Point[], Json])[] = [
    [marked, { shape: drawn.shape, filled: true, fill: colour, fillOpacity: 1, stroke: colourToken('background'), strokeWidth: 0.6 }],
    [ofKind('doubtful'), { shape: drawn.shape, size: 52, filled: true, fill: colourToken('background'), fillOpacity: 1, stroke: colour, strokeWidth: 1.8 }],
    [ofKind('left-out'), { shape: 'M-0.8,-0.8L0.8,0.8M-0.8,0.8L0.8,-0.8', size: 62, filled: false, stroke: colour, strokeWidth: 1.8 }],
    [ofKind('below'), { shape: 'M0,-1L0,0.9M-0.5,0.3L0,0.9L0.5,0.3', size: 120, filled: false, stroke: colour, strokeWidth: 1.6 }],
    [ofKind('above'), { shape: 'M0,1L0,-0.9M-0.5,-0.3L0,-0.9L0.5,-0.3', size: 120, filled: false, stroke: colour, strokeWidth: 1.6 }],
  ];
  return kinds.filter(([shown]) => shown.length > 0).map(([shown, mark]) => ({
    data: { values: shown.map((point) => ({ t: wall(point.time), v: round(point.value), tip: drawing.tip(drawn, point) })) },
    mark: { type: 'point', size: 34, opacity: 1, ...mark },
    encoding: { ...xy, tooltip: { field: 'tip', type: 'nominal' } },
  }));
}

/** Of a dense series lone points and one in so many are marked, enough to tell the tanks apart by shape. */
function sparse(plain: readonly Point[], line: readonly Point[], plot: number): Point[] {
  const inSegment = new Map<number, number>();
  for (const point of line) inSegment.set(point.segment, (inSegment.get(point.segment) ?? 0) + 1);
  const every = Math.ceil(plain.length / Math.max(6, plot / 42));
  return plain.filter((point, position) => position % every === Math.floor(every / 2) || inSegment.get(point.segment) === 1);
}
