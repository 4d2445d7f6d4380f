// Which series share a panel, where the panels stand, and how each series is drawn: colour, shape, dash and label.
import { unitWords } from '../words/units.ts';
import type { Note } from '../experiment/types.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Instant } from '../time/instant.ts';
import { chartWords } from '../words/charts.ts';
import { languageOf } from '../words/languages.ts';
import { computedDash, computedShape, dashOf, tankColour, tankShape, type ColourName } from './theme.ts';
import type { Point } from './points.ts';
import { placeWords, sourcesOf, type Source } from './sources.ts';

export { placeFacts, placeWords, quantityWords, seriesDecimals } from './sources.ts';

/** One series as it is drawn. */
export interface Drawn {
  readonly source: Source;
  readonly points: readonly Point[];
  /** What the reader sees at the line's end: the tank, and the quantity where a panel holds several. */
  readonly label: string;
  readonly colour: ColourName;
  readonly shape: string;
  readonly dash: readonly number[];
}

export interface Panel {
  /** `Dissolved oxygen (mg/L)`. */
  readonly title: string;
  /** In a figure with a panel a tank: whose it is. */
  readonly facet: string | null;
  /** Panels of one scale have one key. */
  readonly scale: string;
  readonly drawn: readonly Drawn[];
}

export function capital(text: string): string {
  return /^pH\b/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
}

/** `a, b and c` in the note's language. */
export function listWords(parts: readonly string[], protocol: Pick<Protocol, 'language'>): string {
  return chartWords(languageOf(protocol.language)).list(parts);
}

/** The window of a figure: what it asks for, else from the first to the last reading shown, the plan's start and end included when near. */
export function figureWindow(note: Note, options: FigureOptions): { from: Instant; to: Instant } | null {
  let first = Infinity;
  let last = -Infinity;
  for (const { value, computed } of options.show) {
    const times = computed ? computed.series.points.map((point) => point.time) : note.dataset.series.get(value)?.times ?? [];
    if (times.length === 0) continue;
    first = Math.min(first, times[0]!);
    last = Math.max(last, times[times.length - 1]!);
  }
  if (!Number.isFinite(first)) return null;
  const from = options.from ?? first;
  const to = options.to ?? last;
  return to > from ? { from, to } : { from: from - 1_800_000, to: Math.max(from, to) + 1_800_000 };
}

/** Values of a list under a key each, in the order in which the keys come up. */
function grouped<Value>(values: readonly Value[], key: (value: Value) => string): [string, Value[]][] {
  const groups = new Map<string, Value[]>();
  for (const value of values) groups.set(key(value), [...(groups.get(key(value)) ?? []), value]);
  return [...groups];
}

/** The panels of a figure, in reading order. */
export function panelsOf(note: Note, protocol: Protocol, options: FigureOptions, window: { from: Instant; to: Instant }): Panel[] {
  const sources = sourcesOf(note, protocol, options, window);
  const { facets } = options;
  // Computed series of several tanks have no colour of a tank: they are told apart by shape and dash.
  const neutral = sources.filter((source) => source.places.length !== 1);
  const panel = (scale: string, group: readonly Source[], facet: string | null): Panel => ({ scale, facet, title: titleOf(group, protocol), drawn: group.map((source) => drawnAs(source, group, neutral.indexOf(source), protocol)) });
  const kinds = grouped(sources, (source) => (facets === null ? source.panel : `${source.panel} ${source.quantity ?? ''}`));
  if (facets !== 'tanks') return kinds.map(([scale, group]) => panel(scale, group, null));
  return kinds.flatMap(([scale, group]) => grouped(group, (source) => source.places.length === 1 ? source.places[0]! : source.id)
    .map(([, own]) => panel(scale, own, capital(nameOf(own[0]!, protocol)))));
}

const nameOf = (source: Source, protocol: Protocol): string => source.name ?? (source.places.length === 1 ? placeWords(protocol, source.places[0]!) : source.what);

function titleOf(group: readonly Source[], protocol: Protocol): string {
  const unit = unitWords(group[0]!.unit.print, languageOf(protocol.language));
  return `${capital(listWords([...new Set(group.map((source) => source.what))], protocol))}${unit === '' || unit === '1' ? '' : ` (${unit})`}`;
}

function drawnAs(source: Source, group: readonly Source[], neutral: number, protocol: Protocol): Drawn {
  const forms = [...new Set(group.map((each) => each.form))];
  const whats = new Set(group.map((each) => each.what));
  const names = new Set(group.map((each) => nameOf(each, protocol)));
  const index = protocol.tanks.find((each) => each.id === source.places[0])?.index ?? null;
  const place = nameOf(source, protocol);
  const what = [...(whats.size > 1 ? [source.what] : []), ...(source.instrument === null ? [] : [source.instrument])].join(', ');
  const label = forms.length === 1 || what === '' ? place : names.size === 1 ? what : `${place}, ${what}`;
  if (neutral >= 0) return { source, points: source.points, label, colour: 'computed', shape: computedShape(neutral), dash: computedDash(neutral) };
  return { source, points: source.points, label, colour: tankColour(index), shape: tankShape(index), dash: forms.length === 1 ? dashOf(index) : dashOf(forms.indexOf(source.form)) };
}
