// Which series share a panel: one panel a unit, in the order in which the figure names them, with styles and labels.
import type { Note } from '../experiment/types.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Protocol, Tank } from '../protocol/types.ts';
import type { Series } from '../dataset/types.ts';
import type { Instant } from '../time/instant.ts';
import { chartWords, type PlaceFacts } from '../words/charts.ts';
import { languageOf } from '../words/languages.ts';
import { quantityName } from '../words/quantities.ts';
import { dashOf, tankColour, tankShape, type ColourName } from './theme.ts';
import { pointsOf, type Point } from './points.ts';

/** One series as it is drawn. */
export interface Drawn {
  readonly series: Series;
  readonly tank: Tank | null;
  readonly points: readonly Point[];
  /** What the reader sees at the line's end: the tank, and the quantity where a panel holds several. */
  readonly label: string;
  readonly colour: ColourName;
  readonly shape: string;
  readonly dash: readonly number[];
  /** Digits after the decimal mark of its readings. */
  readonly decimals: number;
}

export interface Panel {
  readonly unit: string;
  /** `Dissolved oxygen (mg/L)`. */
  readonly title: string;
  readonly drawn: readonly Drawn[];
}

/** What a quantity is called in prose, in the note's language: `dissolved oxygen`; its id where the protocol says nothing. */
export function quantityWords(protocol: Protocol, quantity: string): string {
  const what = protocol.measure.find((each) => each.id === quantity)?.what?.value;
  return what === undefined ? quantity : quantityName(what, languageOf(protocol.language));
}

/** A tank with its label, the room, or another place by its id. */
export function placeFacts(protocol: Protocol, place: string): PlaceFacts {
  const tank = protocol.tanks.find((each) => each.id === place);
  if (tank) return { label: tank.label, kind: 'tank' };
  return place === 'room' ? { label: chartWords(languageOf(protocol.language)).room, kind: 'room' } : { label: place, kind: 'other' };
}

/** What a place is called in a head or beside a line: a tank's label, or `room`. */
export function placeWords(protocol: Protocol, place: string): string {
  return placeFacts(protocol, place).label;
}

export function capital(text: string): string {
  return /^pH\b/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
}

/** `a, b and c` in the note's language. */
export function listWords(parts: readonly string[], protocol: Pick<Protocol, 'language'>): string {
  return chartWords(languageOf(protocol.language)).list(parts);
}

/** Digits after the decimal mark with which the readings of a series were written. */
export function seriesDecimals(series: Series): number {
  let most = 0;
  for (const source of series.sources) {
    if (source.column.unit?.symbol === series.unit.symbol || source.column.unit === null) most = Math.max(most, source.cell.state.decimals);
    else most = Math.max(most, 2);
  }
  return Math.min(6, most);
}

function kindOf(series: Series): string {
  return series.instrument === null ? series.quantity : `${series.quantity}@${series.instrument}`;
}

/** The window of a figure: what it asks for, else from the first to the last reading shown, the plan's start and end included when near. */
export function figureWindow(note: Note, options: FigureOptions): { from: Instant; to: Instant } | null {
  let first = Infinity;
  let last = -Infinity;
  for (const { value } of options.show) {
    const series = note.dataset.series.get(value);
    if (!series || series.times.length === 0) continue;
    first = Math.min(first, series.times[0]!);
    last = Math.max(last, series.times[series.times.length - 1]!);
  }
  if (!Number.isFinite(first)) return null;
  const from = options.from ?? first;
  const to = options.to ?? last;
  return to > from ? { from, to } : { from: from - 1_800_000, to: Math.max(from, to) + 1_800_000 };
}

/** The panels of a figure. Series without a number in the window are left out. */
export function panelsOf(note: Note, protocol: Protocol, options: FigureOptions, window: { from: Instant; to: Instant }): Panel[] {
  const byUnit = new Map<string, { series: Series; points: Point[] }[]>();
  for (const { value } of options.show) {
    const series = note.dataset.series.get(value);
    if (!series) continue;
    const points = pointsOf(series, protocol, window.from, window.to);
    if (points.length === 0) continue;
    const group = byUnit.get(series.unit.symbol);
    if (group) group.push({ series, points }); else byUnit.set(series.unit.symbol, [{ series, points }]);
  }
  return [...byUnit.values()].map((group) => {
    const kinds = [...new Set(group.map(({ series }) => kindOf(series)))];
    const quantities = [...new Set(group.map(({ series }) => series.quantity))];
    const places = [...new Set(group.map(({ series }) => series.place))];
    const drawn = group.map(({ series, points }): Drawn => {
      const tank = protocol.tanks.find((each) => each.id === series.place) ?? null;
      const index = tank?.index ?? null;
      const place = placeWords(protocol, series.place);
      const what = [...(quantities.length > 1 ? [quantityWords(protocol, series.quantity)] : []), ...(series.instrument === null ? [] : [series.instrument])].join(', ');
      return {
        series, tank, points, decimals: seriesDecimals(series), colour: tankColour(index), shape: tankShape(index),
        label: kinds.length === 1 || what === '' ? place : places.length === 1 ? what : `${place}, ${what}`,
        dash: kinds.length === 1 ? dashOf(index) : dashOf(kinds.indexOf(kindOf(series))),
      };
    });
    const unit = group[0]!.series.unit.print;
    const names = quantities.map((each) => quantityWords(protocol, each));
    const title = `${capital(listWords([...new Set(names)], protocol))}${unit === '' || unit === '1' ? '' : ` (${unit})`}`;
    return { unit, title, drawn };
  });
}
