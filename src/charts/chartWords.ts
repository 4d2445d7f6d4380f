// The words of a chart: its caption, and the text alternative that tells the same story without the picture.
import { unitWords } from '../words/units.ts';
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Run } from '../writing/types.ts';
import type { Series } from '../dataset/types.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { printedMinus } from '../quantities/format.ts';
import type { Unit } from '../quantities/types.ts';
import { hour, minute, type Instant } from '../time/instant.ts';
import { formatClock } from '../time/text.ts';
import { wallTimeOf } from '../time/zone.ts';
import { chartWords, type ChartWords } from '../words/charts.ts';
import { languageOf } from '../words/languages.ts';
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { EventLine, LimitLine } from './drawing.ts';
import type { Band, StatedPhase } from './shading.ts';
import { capital, placeFacts, seriesDecimals, type Drawn, type Panel } from './panels.ts';

/** The words of charts in the note's language. */
export function wordsOf(protocol: Pick<Protocol, 'language'>): ChartWords {
  return chartWords(languageOf(protocol.language));
}

/** `20:00 on 14 March 2026`; with `year` false, `20:00 on 14 March`. */
export function momentWords(instant: Instant, protocol: Protocol, year = true): string {
  const words = wordsOf(protocol);
  return words.moment(formatClock(instant, protocol.zone), words.date(wallTimeOf(instant, protocol.zone), year));
}

/** `14 March 2026`, the local date. */
export function dateWords(instant: Instant, protocol: Protocol): string {
  return wordsOf(protocol).date(wallTimeOf(instant, protocol.zone));
}

/** `14 March 2026`, `14 to 15 March 2026`, `28 February to 2 March 2026`. */
export function datesWords(from: Instant, to: Instant, protocol: Protocol): string {
  const first = dateWords(from, protocol).split(' ');
  const last = dateWords(to, protocol).split(' ');
  if (first.join(' ') === last.join(' ')) return last.join(' ');
  while (first.length > 1 && first[first.length - 1] === last[first.length - 1]) first.pop();
  return wordsOf(protocol).datesTo(first.join(' '), last.join(' '));
}

/** A number as a reader of the note's language sees it: comma for languages that write one. */
export function decimalText(value: number, decimals: number, protocol: Pick<Protocol, 'language'> | null): string {
  const text = printedMinus((Math.abs(value) < 0.5 * 10 ** -decimals ? 0 : value).toFixed(decimals));
  return text.replace('.', decimalMarkOf(protocol?.language ?? 'en'));
}

/** `8.21 mg/L`, `25 %`, `7.4` for pH. */
export function amountText(value: number, series: Series, protocol: Protocol, decimals = seriesDecimals(series)): string {
  return amountIn(value, series.unit, decimals, protocol);
}

/** The same for any unit. */
export function amountIn(value: number, unit: Unit, decimals: number, protocol: Pick<Protocol, 'language'>): string {
  return `${decimalText(value, decimals, protocol)}${unit.print === '' || unit.print === '1' || unit.kind === 'ph' ? '' : ` ${unitWords(unit.print, languageOf(protocol.language))}`}`;
}

interface Tally { readonly leftOut: number; readonly doubtful: number; readonly outside: number }

function tally(drawn: readonly Drawn[]): Tally {
  const count = (kinds: readonly string[]): number => drawn.reduce((sum, each) => sum + each.points.filter((point) => kinds.includes(point.kind)).length, 0);
  return { leftOut: count(['left-out']), doubtful: count(['doubtful']), outside: count(['below', 'above']) };
}

/** A time inside a sentence about [from, to]: with its date, the year left out, in a stretch of more than 30 hours. */
function timeWords(instant: Instant, from: Instant, to: Instant, protocol: Protocol): string {
  return to - from > 30 * hour ? momentWords(instant, protocol, false) : wordsOf(protocol).clock(formatClock(instant, protocol.zone));
}

function seriesSentence(drawn: Drawn, panel: Panel, panels: number, protocol: Protocol): string {
  const words = wordsOf(protocol);
  const used = drawn.points.filter((point) => point.segment >= 0);
  const several = panels > 1 || new Set(panel.drawn.map((each) => each.source.what)).size > 1;
  const label = capital(drawn.label);
  const name = words.seriesName(label, several || panel.drawn.length === 1 ? drawn.source.what : null).replace(/(, [^,]+)\1$/, '$1');
  if (used.length === 0) return words.noReading(name);
  const first = used[0]!;
  const last = used[used.length - 1]!;
  let lowest = first;
  let highest = first;
  for (const point of used) {
    if (point.value < lowest.value) lowest = point;
    if (point.value > highest.value) highest = point;
  }
  const { unit, decimals } = drawn.source;
  const amount = (value: number): string => amountIn(value, unit, decimals, protocol);
  const clock = (instant: Instant): string => timeWords(instant, first.time, last.time, protocol);
  if (used.length === 1) return words.oneReading(name, amount(first.value), clock(first.time));
  const widest = used.reduce((most, point) => Math.max(most, point.half ?? 0), 0);
  return words.course({
    name, within: widest > 0 ? amountIn(widest, unit, Math.max(decimals, widest < 0.5 * 10 ** -decimals ? decimals + 1 : decimals), protocol) : null, first: amount(first.value), firstTime: clock(first.time), lowest: amount(lowest.value), lowestTime: clock(lowest.time),
    highest: amount(highest.value), highestTime: clock(highest.time), last: amount(last.value), lastTime: clock(last.time), count: used.length, ...tally([drawn]),
  });
}

export interface ChartFacts {
  readonly note: Note; readonly protocol: Protocol; readonly panels: readonly Panel[];
  readonly from: Instant; readonly to: Instant; readonly bands: readonly Band[]; readonly phases: readonly StatedPhase[];
  readonly events: readonly EventLine[]; readonly limits: readonly LimitLine[];
  readonly facets: FigureOptions['facets'];
}

/** The clock time to the minute: sun times are not known better. */
function wholeMinute(instant: Instant, protocol: Protocol): string {
  return formatClock(Math.round(instant / minute) * minute, protocol.zone);
}

function spansOf(facts: ChartFacts, kind: Band['kind']): (readonly [string, string])[] {
  return facts.bands.filter((band) => band.kind === kind).map((band) => [wholeMinute(band.from, facts.protocol), wholeMinute(band.to, facts.protocol)] as const);
}

/** What the chart shows, in sentences: what and when, then each series' start, lowest, highest and end, then what else is drawn. */
export function alternativeOf(facts: ChartFacts, opening = wordsOf(facts.protocol).lineChart): string {
  const { protocol, panels } = facts;
  const words = wordsOf(protocol);
  const what = words.list([...new Set(panels.map((panel) => words.titleInside(panel.title)))]);
  const sentences = [opening({ what, from: momentWords(facts.from, protocol), to: momentWords(facts.to, protocol), zone: protocol.zone.name })];
  for (const panel of panels) for (const drawn of panel.drawn) sentences.push(seriesSentence(drawn, panel, panels.length, protocol));
  const dark = spansOf(facts, 'dark');
  const twilight = spansOf(facts, 'twilight');
  if (dark.length > 0) sentences.push(words.dark(dark));
  if (twilight.length > 0) sentences.push(words.twilight(twilight));
  if (facts.phases.length > 0) sentences.push(words.phases(facts.phases.map(({ id, from, to }) => ({ id, from: timeWords(from, facts.from, facts.to, protocol), to: timeWords(to, facts.from, facts.to, protocol) }))));
  const events = facts.events.filter((event) => !event.lamp);
  if (events.length > 0) sentences.push(words.events(events.map((event) => ({ label: event.label, time: timeWords(event.at, facts.from, facts.to, protocol) }))));
  for (const limit of new Set(facts.limits.map((each) => each.label))) sentences.push(words.limitDrawn(limit));
  return sentences.join(' ');
}

/** The author's own words, ended like a sentence. */
export const sentence = (text: string): string => (/[.!?…]$/.test(text) ? text : `${text}.`);

/** The caption: the author's sentence first, then what is shown and how to read the marks. */
export function captionOf(facts: ChartFacts, own: string | null, more: readonly string[] = []): Run[] {
  const { protocol, panels } = facts;
  const words = wordsOf(protocol);
  const all = panels.flatMap((panel) => panel.drawn);
  const quantities = [...new Set(all.map((drawn) => drawn.source.what))];
  const places = [...new Set(all.flatMap((drawn) => drawn.source.places))].map((place) => placeFacts(protocol, place));
  const marks = tally(all);
  const sentences: string[] = [];
  if (own !== null) sentences.push(sentence(own));
  sentences.push(words.caption({ quantities: capital(words.list(quantities)), places: words.inPlaces(places), dates: datesWords(facts.from, facts.to, protocol) }));
  if (facts.facets !== null) sentences.push(words.facets[facts.facets]);
  const shades: string[] = [];
  if (facts.bands.some((band) => band.kind === 'dark')) shades.push(words.shadedDark);
  if (facts.bands.some((band) => band.kind === 'twilight')) shades.push(words.shadedTwilight);
  if (facts.phases.length > 0) shades.push(words.framedPhases(facts.phases.map((phase) => phase.id)));
  if (all.some((drawn) => drawn.points.some((point) => point.half !== undefined))) shades.push(words.band);
  if (facts.limits.length > 0) shades.push(words.dashedLimits);
  if (marks.doubtful > 0) shades.push(words.hollow(marks.doubtful));
  if (marks.leftOut > 0) shades.push(words.crosses(marks.leftOut));
  if (marks.outside > 0) shades.push(words.arrows(marks.outside));
  if (all.some((drawn) => new Set(drawn.points.filter((point) => point.segment >= 0).map((point) => point.segment)).size > 1)) shades.push(words.brokenLine);
  if (shades.length > 0) sentences.push(`${capital(shades.join('; '))}.`);
  return [{ kind: 'text', text: [...sentences, ...more].join(' ') }];
}
