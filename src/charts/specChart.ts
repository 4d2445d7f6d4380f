// A chart from its author's own specification: the readings as tidy rows under the name `readings`, our colours, axes and
// locale round the author's marks and channels. What the author may write was checked by src/experiment/chartSpec.ts.
import { languageOf } from '../words/languages.ts';
import { unitWords } from '../words/units.ts';
import type { Note } from '../experiment/types.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import { readingFields, type ChartSpec, type ReadingField } from '../experiment/chartSpec.ts';
import type { Protocol } from '../protocol/types.ts';
import { hour, type Instant } from '../time/instant.ts';
import { capital, figureWindow } from './panels.ts';
import { alternativeOf, captionOf, decimalText, sentence, wordsOf, type ChartFacts } from './chartWords.ts';
import { chartFacts } from './chartFacts.ts';
import { ownChartConfig } from './config.ts';
import { localeOf } from './locale.ts';
import { keptRows } from './ownFilter.ts';
import { placeWords, sourcesOf, type Source } from './sources.ts';
import { colourToken, dashOf, tankColour } from './theme.ts';
import type { Chart } from './types.ts';

type Json = Readonly<Record<string, unknown>>;

/** One row of the data set: a reading that counts. `segment` tells stretches without a gap apart. */
type Row = Readonly<Record<ReadingField | 'segment', string | number | boolean | null>>;

function phaseAt(protocol: Protocol, time: Instant): string | null {
  return protocol.phases.find(({ id, window }) => time >= window.from && time <= window.to && !(/^dark(?:-\d+)?$/.test(id) && time === window.from))?.id ?? null;
}

/** The readings that count (or those that do not), in order of series and time. Times are wall-clock numbers, as if the zone were UTC. */
function rowsOf(sources: readonly Source[], protocol: Protocol, from: Instant, counting = true): Row[] {
  const offset = protocol.zone.offsetAt(from);
  const start = protocol.schedule?.start ?? from;
  const round = (value: number): number => Number(value.toPrecision(12));
  return sources.flatMap((source) => source.points.filter((point) => point.segment >= 0 === counting).map((point): Row => {
    const place = source.places.length === 1 ? source.places[0]! : source.id;
    return {
      time: point.time + offset, hours: round((point.time - start) / hour), series: source.id, tank: place,
      label: source.name ?? (source.places.length === 1 ? capital(placeWords(protocol, place)) : source.id), quantity: source.quantity ?? source.form,
      value: round(point.value), unit: source.unit.print, low: point.half === undefined ? null : round(point.value - point.half),
      high: point.half === undefined ? null : round(point.value + point.half), phase: phaseAt(protocol, point.time), doubtful: point.kind === 'doubtful', segment: `${source.id} ${point.segment}`,
    };
  }));
}

interface Ground { readonly sources: readonly Source[]; readonly protocol: Protocol }

/** Colours (or dashes) of the tanks, for a channel that tells them apart and has no scale of its own. */
function tankScale(field: unknown, channel: string, { sources, protocol }: Ground): Json | null {
  if (field !== 'tank' && field !== 'label' && field !== 'series') return null;
  const seen = new Map<string, readonly [string, readonly number[]]>();
  for (const source of sources) {
    const index = source.places.length === 1 ? protocol.tanks.find((tank) => tank.id === source.places[0])?.index ?? null : null;
    const key = field === 'series' ? source.id : field === 'tank' ? (source.places.length === 1 ? source.places[0]! : source.id)
      : source.name ?? (source.places.length === 1 ? capital(placeWords(protocol, source.places[0]!)) : source.id);
    if (!seen.has(key)) seen.set(key, [colourToken(source.places.length === 1 ? tankColour(index) : 'computed'), dashOf(index)]);
  }
  return { domain: [...seen.keys()], range: [...seen.values()].map(([colour, dash]) => (channel === 'strokeDash' ? (dash.length === 0 ? [1, 0] : dash) : colour)) };
}

const coloured = ['color', 'fill', 'stroke', 'strokeDash'];

/** A channel with what the author left to us: its type, its colours, its title, and wall-clock time on a scale without a zone. */
function channelOf(name: string, channel: Json, ground: Ground): Json {
  const field = channel['field'] as string | undefined;
  const known = field !== undefined && Object.hasOwn(readingFields, field) ? readingFields[field as ReadingField] : undefined;
  const timeUnit = channel['timeUnit'];
  const counted = channel['aggregate'] !== undefined || channel['bin'] !== undefined;
  const type = channel['type'] ?? (field === undefined ? undefined : counted ? 'quantitative' : timeUnit !== undefined ? 'ordinal' : known ?? 'quantitative');
  const position = name === 'x' || name === 'y';
  const scale = coloured.includes(name) && channel['scale'] === undefined ? tankScale(field, name, ground)
    : position && type === 'temporal' ? { type: 'utc', ...(channel['scale'] as Json | undefined) }
      : position && type === 'quantitative' && field === 'value' && !counted && channel['scale'] === undefined ? { zero: false } : null;
  const title = channel['title'] === undefined && channel['bin'] === undefined ? channelTitle(field, known !== undefined, channel['aggregate'], ground) : undefined;
  return {
    ...channel, ...(type === undefined ? {} : { type }), ...(timeUnit === undefined ? {} : { timeUnit: `utc${String(timeUnit)}` }),
    ...(scale === null ? {} : { scale }), ...(title === undefined ? {} : { title }),
  };
}

/** The title of a channel that has none of its own: its field, what was made of it before that. */
function channelTitle(field: string | undefined, known: boolean, aggregate: unknown, ground: Ground): string | undefined {
  const { aggregates } = wordsOf(ground.protocol);
  const made = typeof aggregate === 'string' && Object.hasOwn(aggregates, aggregate) ? aggregates[aggregate as keyof typeof aggregates] : null;
  if (made !== null && (field === undefined || aggregate === 'count')) return made;
  const title = known ? titleOf(field as ReadingField, ground) : undefined;
  return made === null || title === undefined ? title : `${made}: ${title}`;
}

function titleOf(field: ReadingField, { sources, protocol }: Ground): string | undefined {
  if (field === 'value' || field === 'low' || field === 'high') {
    const titles = [...new Set(sources.map((source) => `${capital(source.what)}${source.unit.print === '' || source.unit.print === '1' ? '' : ` (${unitWords(source.unit.print, languageOf(protocol.language))})`}`))];
    return titles.length === 1 ? titles[0] : undefined;
  }
  return wordsOf(protocol).fields[field];
}

function encodingOf(encoding: Json, ground: Ground): Json {
  return Object.fromEntries(Object.entries(encoding).map(([name, channel]) => [name,
    Array.isArray(channel) ? channel.map((each: Json) => channelOf(name, each, ground)) : channelOf(name, channel as Json, ground)]));
}

/** Lines and areas of single readings break where nothing was measured, as in our own charts. */
function broken(mark: unknown, encoding: Json): Json {
  const channels = Object.values(encoding).flat() as Json[];
  const joined = ['line', 'area', 'trail'].includes(markOf({ mark })) && channels.some((each) => each['field'] === 'value')
    && channels.every((each) => each['aggregate'] === undefined && each['timeUnit'] === undefined && each['bin'] === undefined);
  if (!joined) return encoding;
  return { ...encoding, detail: [...((encoding['detail'] as readonly Json[] | undefined) === undefined ? [] : [encoding['detail'] as Json].flat()), { field: 'segment', type: 'nominal' }] };
}

/** The marks, channels and transforms of the author, completed. */
function completed(body: Json, ground: Ground): Json {
  const own = body['encoding'] as Json | undefined;
  const encoding = own && (body['mark'] === undefined || body['transform'] !== undefined ? own : broken(body['mark'], own));
  const layers = body['layer'] as readonly Json[] | undefined;
  const transforms = body['transform'] as readonly Json[] | undefined;
  return {
    ...body, ...(encoding ? { encoding: encodingOf(encoding, ground) } : {}), ...(layers ? { layer: layers.map((each) => completed(each, ground)) } : {}),
    ...(transforms ? { transform: transforms.map((each) => (each['timeUnit'] === undefined ? each : { ...each, timeUnit: `utc${String(each['timeUnit'])}` })) } : {}),
  };
}

/** Axis text of times: clock times within three days, days beyond. */
function timeAxis(from: Instant, to: Instant, dayFormat: string): Json {
  return { format: to - from > 72 * hour ? dayFormat : '%H:%M' };
}

/** Writes the time format into the axes of time that have none: the format is ours, never the author's. */
function withTimeAxes(spec: Json, axis: Json): Json {
  const layers = spec['layer'] as readonly Json[] | undefined;
  const encoding = spec['encoding'] as Json | undefined;
  const dressed = encoding && Object.fromEntries(Object.entries(encoding).map(([name, channel]) => {
    const each = channel as Json;
    return [name, (name === 'x' || name === 'y') && each['type'] === 'temporal' && each['timeUnit'] === undefined && each['axis'] !== null ? { ...each, axis: { ...axis, ...(each['axis'] as Json | undefined) } } : channel];
  }));
  return { ...spec, ...(dressed ? { encoding: dressed } : {}), ...(layers ? { layer: layers.map((each) => withTimeAxes(each, axis)) } : {}) };
}

const markOf = (body: Json): string => {
  const mark = body['mark'] as string | Json | undefined;
  return typeof mark === 'string' ? mark : String(mark?.['type'] ?? '');
};

/** Marks by name, and the channels with what they show, for the words of the drawing. */
function shownIn(body: Json): { readonly marks: readonly string[]; readonly channels: readonly (readonly [string, string])[] } {
  const parts = [body, ...((body['layer'] as readonly Json[] | undefined) ?? [])];
  const channels = parts.flatMap((part) => Object.entries((part['encoding'] as Json | undefined) ?? {})).flatMap(([name, channel]): [string, string][] => {
    const each = channel as Json;
    const field = each['field'] ?? (each['aggregate'] === 'count' ? 'count' : undefined);
    return Array.isArray(channel) || field === undefined ? [] : [[name, each['aggregate'] !== undefined && each['aggregate'] !== 'count' ? `${String(each['aggregate'])} ${String(field)}` : String(field)]];
  });
  return { marks: [...new Set(parts.map(markOf).filter((mark) => mark !== ''))], channels: [...new Map(channels)] };
}

/** Draws the author's specification; null where no reading counts in the window. */
export function specChart(note: Note, options: FigureOptions, spec: ChartSpec): Chart | null {
  const { protocol } = note;
  const window = figureWindow(note, options);
  if (!protocol || !window) return null;
  // The bounds of the interval stand in the rows, whether or not somebody draws them.
  const shown = sourcesOf(note, protocol, { ...options, uncertainty: true }, window);
  const transforms = (spec.body['transform'] as readonly Json[] | undefined) ?? [];
  const rows = keptRows(rowsOf(shown, protocol, window.from), transforms);
  if (rows.length === 0) return null;
  const sources = shown.filter((source) => rows.some((row) => row['series'] === source.id));
  const words = wordsOf(protocol);
  const ground = { sources, protocol };
  const locale = localeOf(protocol);
  const width = Math.min(spec.width ?? 680, options.width ?? 680);
  const height = spec.height ?? 300;
  const facts = ofRows(chartFacts(note, { ...options, facets: null, uncertainty: false }, protocol, window), rows, protocol.zone.offsetAt(window.from));
  const leftOut = keptRows(rowsOf(shown, protocol, window.from, false), transforms).length;
  const described = words.ownChart({ ...shownIn(spec.body), rows: decimalText(rows.length, 0, protocol) });
  const alternative = [...(options.alternative === null ? [] : [sentence(options.alternative)]), described, alternativeOf({ ...facts, bands: [], phases: [], events: [], limits: [] }, words.shownReadings)].join(' ');
  const title = options.title ?? spec.title;
  const body = withTimeAxes(completed(spec.body, ground), timeAxis(window.from, window.to, locale?.dayFormat ?? '%-d %b'));
  return {
    width, height, alternative,
    caption: captionOf({ ...facts, panels: plainPanels(facts.panels), bands: [], phases: [], limits: [] }, options.caption, [words.ownRows(rows.length, leftOut)]),
    specification: {
      $schema: 'https://vega.github.io/schema/vega-lite/v6.json', description: alternative, background: null, padding: { left: 2, top: 4, right: 8, bottom: 2 },
      autosize: { type: 'fit', contains: 'padding' }, width, height, config: ownChartConfig(locale, width < 480),
      datasets: { readings: rows }, data: { name: 'readings' }, ...(title === null ? {} : { title: { text: title, anchor: 'start' } }), ...body,
    },
  };
}

/** The facts of these rows alone. */
function ofRows(facts: ChartFacts, rows: readonly Row[], offset: number): ChartFacts {
  const times = new Map<unknown, Set<unknown>>();
  for (const row of rows) times.set(row.series, (times.get(row.series) ?? new Set()).add(row.time));
  const panels = facts.panels.map((panel) => ({ ...panel, drawn: panel.drawn.flatMap((drawn) => {
    const kept = times.get(drawn.source.id);
    return kept ? [{ ...drawn, points: drawn.points.filter((point) => point.segment >= 0 && kept.has(point.time + offset)) }] : [];
  }) }));
  return { ...facts, panels: panels.filter((panel) => panel.drawn.length > 0) };
}

/** The panels without marks that this drawing does not have: crosses, arrows and hollow points are those of our own charts. */
function plainPanels(panels: ChartFacts['panels']): ChartFacts['panels'] {
  return panels.map((panel) => ({ ...panel, drawn: panel.drawn.map((drawn) => ({
    ...drawn, points: drawn.points.filter((point) => point.segment >= 0).map((point) => ({ ...point, kind: 'plain' as const, segment: 0 })),
  })) }));
}
