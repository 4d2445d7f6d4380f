// What is drawn as one line: the readings of a column, or a computed series, with what it is called and where it belongs.
import type { Note } from '../experiment/types.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import { seriesValue, type ComputedSeries, type ShownSeries } from '../experiment/shownSeries.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Unit } from '../quantities/types.ts';
import type { Series } from '../dataset/types.ts';
import { plainWords } from '../formula/plainWords.ts';
import { printedUnit } from '../formula/show.ts';
import type { SeriesPoint, SeriesValue } from '../formula/types.ts';
import type { Instant } from '../time/instant.ts';
import { chartWords, type PlaceFacts } from '../words/charts.ts';
import { languageOf } from '../words/languages.ts';
import { quantityName } from '../words/quantities.ts';
import { computedPoints, halvesOf, pointsOf, type Point } from './points.ts';

export interface Source {
  readonly id: string;
  readonly unit: Unit;
  readonly points: readonly Point[];
  /** Digits after the decimal mark of its values. */
  readonly decimals: number;
  /** Tanks and the room whose readings went in. */
  readonly places: readonly string[];
  /** Quantity and instrument of a column; null for a computed series. */
  readonly quantity: string | null;
  readonly instrument: string | null;
  /** What is drawn, without its place: `dissolved oxygen`, `saturation of the dissolved oxygen`. */
  readonly what: string;
  /** What the line is called where its place is no name for it: `floating-mat tank minus open-surface tank`. */
  readonly name: string | null;
  /** Series of one key share a panel: those of one unit, computed ones only with their like. */
  readonly panel: string;
  /** Series of one key are alike but for their places: `DO`, `DO@titration`, `saturation(DO)`. */
  readonly form: string;
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

/** Digits after the decimal mark with which the readings of a series were written. */
export function seriesDecimals(series: Series): number {
  let most = 0;
  for (const source of series.sources) {
    if (source.column.unit?.symbol === series.unit.symbol || source.column.unit === null) most = Math.max(most, source.cell.state.decimals);
    else most = Math.max(most, 2);
  }
  return Math.min(6, most);
}

function computedDecimals({ points }: SeriesValue): number {
  const known = points.flatMap((point: SeriesPoint) => (point.decimals === undefined ? [] : [point.decimals]));
  return known.length > 0 ? Math.min(6, Math.max(...known)) : 2;
}

/** The words of a computed series: what it is, and what its line is called where a place does not name it. */
export function computedWords(shown: ShownSeries, computed: ComputedSeries, note: Note, protocol: Protocol): { readonly what: string; readonly name: string | null } {
  const words = chartWords(languageOf(protocol.language));
  const { difference } = computed;
  if (computed.name !== null) {
    const name = computed.name.replaceAll('-', ' ');
    return { what: name, name: computed.places.length === 1 ? null : name };
  }
  if (difference) {
    const [a, b] = [difference.from, difference.taken].map((column) => column.slice(0, column.indexOf('.')));
    const quantity = difference.from.slice(difference.from.indexOf('.') + 1).split('@')[0]!;
    return { what: words.differenceIn(quantityWords(protocol, quantity)), name: words.minus(roleOrPlace(a!, protocol), roleOrPlace(b!, protocol)) };
  }
  const formula = shown.value;
  let text = plainWords(formula, note.context);
  if (computed.places.length !== 1) return { what: words.bare(text), name: formula };
  for (const [reference, , quantity] of formula.matchAll(/([\p{L}][\p{L}\p{N}_-]*)\.([\p{L}][\p{L}\p{N}_-]*(?:@[\p{L}\p{N}_-]+)?)/gu)) {
    const [full, bare] = [plainWords(reference, note.context), plainWords(quantity!.split('@')[0]!, note.context)];
    // The place stands behind the quantity and is not bent with it.
    if (full.startsWith(bare)) text = text.replace(full.slice(bare.length), '');
  }
  // A tank itself, as in `solubility(mat)`.
  text = text.replace(` ${words.inPlaces([placeFacts(protocol, computed.places[0]!)])}`, '');
  return { what: words.bare(text), name: null };
}

function roleOrPlace(name: string, protocol: Protocol): string {
  const tanks = protocol.tanks.filter((tank) => tank.id === name || tank.role?.value === name || tank.group?.value === name);
  return tanks.length === 1 ? tanks[0]!.label : name;
}

/** The lines of a figure; series without a value in the window are left out. */
export function sourcesOf(note: Note, protocol: Protocol, options: FigureOptions, { from, to }: { readonly from: Instant; readonly to: Instant }): Source[] {
  return options.show.flatMap((shown): Source[] => {
    const value = options.uncertainty || shown.computed ? seriesValue(shown, note.context) : null;
    const halves = options.uncertainty && value ? halvesOf(value) : undefined;
    const source = shown.computed ? computedSource(shown, shown.computed, note, protocol, from, to, halves) : columnSource(shown.value, note, protocol, from, to, halves);
    return source && source.points.length > 0 ? [source] : [];
  });
}

function columnSource(id: string, note: Note, protocol: Protocol, from: Instant, to: Instant, halves?: ReadonlyMap<Instant, number>): Source | null {
  const series = note.dataset.series.get(id);
  if (!series) return null;
  return {
    id, unit: series.unit, points: pointsOf(series, protocol, from, to, halves), decimals: seriesDecimals(series), places: [series.place], quantity: series.quantity,
    instrument: series.instrument, what: quantityWords(protocol, series.quantity), name: null, panel: series.unit.symbol,
    form: series.instrument === null ? series.quantity : `${series.quantity}@${series.instrument}`,
  };
}

function computedSource(shown: ShownSeries, computed: ComputedSeries, note: Note, protocol: Protocol, from: Instant, to: Instant, halves?: ReadonlyMap<Instant, number>): Source {
  const { series, form } = computed;
  return {
    id: shown.value, unit: printedUnit(series.unit), points: computedPoints(series, protocol, from, to, halves), decimals: computedDecimals(series), places: computed.places,
    quantity: null, instrument: null, ...computedWords(shown, computed, note, protocol), panel: `${series.unit.symbol} ${form}`, form,
  };
}
