// The words of a chart: its caption, and the text alternative that tells the same story without the picture.
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Run } from '../writing/types.ts';
import type { Series } from '../dataset/types.ts';
import { hour, minute, type Instant } from '../time/instant.ts';
import { formatClock, formatDate } from '../time/text.ts';
import type { Band } from './shading.ts';
import type { EventLine, LimitLine } from './specification.ts';
import { capital, listWords, placeWords, quantityWords, seriesDecimals, type Drawn, type Panel } from './panels.ts';

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** `20:00 on 14 March 2026`. */
export function momentWords(instant: Instant, protocol: Protocol): string {
  return `${formatClock(instant, protocol.zone)} on ${dateWords(instant, protocol)}`;
}

/** `14 March 2026`, the local date. */
export function dateWords(instant: Instant, protocol: Protocol): string {
  const [year, month, date] = formatDate(instant, protocol.zone).split('-');
  return `${Number(date)} ${months[Number(month) - 1] ?? ''} ${year}`;
}

/** `14 March 2026`, `14 to 15 March 2026`, `28 February to 2 March 2026`. */
export function datesWords(from: Instant, to: Instant, protocol: Protocol): string {
  const first = dateWords(from, protocol).split(' ');
  const last = dateWords(to, protocol).split(' ');
  if (first.join(' ') === last.join(' ')) return last.join(' ');
  while (first.length > 1 && first[first.length - 1] === last[first.length - 1]) first.pop();
  return `${first.join(' ')} to ${last.join(' ')}`;
}

/** A number as a reader of the note's language sees it: comma for languages that write one. */
export function decimalText(value: number, decimals: number, protocol: Pick<Protocol, 'language'> | null): string {
  const text = (Math.abs(value) < 0.5 * 10 ** -decimals ? 0 : value).toFixed(decimals).replace('-', '−');
  return protocol && /^(?:nl|de|fr|es|it|pt|da|sv|nb|nn|no|fi|pl|cs|sk|hu|ro|tr|ru|uk|el|sl|hr|bg|lt|lv|et)\b/.test(protocol.language) ? text.replace('.', ',') : text;
}

/** `8.21 mg/L`, `25 %`, `7.4` for pH. */
export function amountText(value: number, series: Series, protocol: Protocol, decimals = seriesDecimals(series)): string {
  const unit = series.unit.print;
  return `${decimalText(value, decimals, protocol)}${unit === '' || unit === '1' || series.unit.kind === 'ph' ? '' : ` ${unit}`}`;
}

interface Tally { readonly leftOut: number; readonly doubtful: number; readonly censored: number }

function tally(drawn: readonly Drawn[]): Tally {
  const count = (kinds: readonly string[]): number => drawn.reduce((sum, each) => sum + each.points.filter((point) => kinds.includes(point.kind)).length, 0);
  return { leftOut: count(['left-out']), doubtful: count(['doubtful']), censored: count(['below', 'above']) };
}

const plural = (count: number, one: string, many: string): string => (count === 1 ? one : many);

function seriesSentence(drawn: Drawn, panel: Panel, panels: number, protocol: Protocol): string {
  const used = drawn.points.filter((point) => point.segment >= 0);
  const several = panels > 1 || new Set(panel.drawn.map((each) => each.series.quantity)).size > 1;
  const label = capital(drawn.label);
  const name = several || panel.drawn.length === 1 ? `${label}, ${quantityWords(protocol, drawn.series.quantity)}`.replace(/(, [^,]+)\1$/, '$1') : label;
  if (used.length === 0) return `${name}: no reading that counts.`;
  const first = used[0]!;
  const last = used[used.length - 1]!;
  let lowest = first;
  let highest = first;
  for (const point of used) {
    if (point.value < lowest.value) lowest = point;
    if (point.value > highest.value) highest = point;
  }
  const amount = (value: number): string => amountText(value, drawn.series, protocol, drawn.decimals);
  const long = last.time - first.time > 30 * hour;
  const clock = (instant: Instant): string => (long ? momentWords(instant, protocol).replace(/ \d{4}$/, '') : formatClock(instant, protocol.zone));
  if (used.length === 1) return `${name}: one reading, ${amount(first.value)} at ${clock(first.time)}.`;
  const marks = tally([drawn]);
  const notes = [
    ...(marks.doubtful > 0 ? [`${marks.doubtful} doubtful`] : []), ...(marks.leftOut > 0 ? [`${marks.leftOut} left out`] : []),
    ...(marks.censored > 0 ? [`${marks.censored} outside the instrument's range`] : []),
  ];
  return `${name}: starts at ${amount(first.value)} (${clock(first.time)}), lowest ${amount(lowest.value)} at ${clock(lowest.time)}, `
    + `highest ${amount(highest.value)} at ${clock(highest.time)}, ends at ${amount(last.value)} (${clock(last.time)}); `
    + `${used.length} readings${notes.length > 0 ? `, ${listWords(notes)}` : ''}.`;
}

export interface ChartFacts {
  readonly note: Note; readonly protocol: Protocol; readonly panels: readonly Panel[];
  readonly from: Instant; readonly to: Instant; readonly bands: readonly Band[];
  readonly events: readonly EventLine[]; readonly limits: readonly LimitLine[];
}

/** The clock time to the minute: sun times are not known better. */
function wholeMinute(instant: Instant, protocol: Protocol): string {
  return formatClock(Math.round(instant / minute) * minute, protocol.zone);
}

function bandsWords(facts: ChartFacts, kind: Band['kind']): string[] {
  return facts.bands.filter((band) => band.kind === kind)
    .map((band) => `${wholeMinute(band.from, facts.protocol)} to ${wholeMinute(band.to, facts.protocol)}`);
}

/** What the chart shows, in sentences: what and when, then each series' start, lowest, highest and end, then what else is drawn. */
export function alternativeOf(facts: ChartFacts): string {
  const { protocol, panels } = facts;
  const what = listWords([...new Set(panels.map((panel) => panel.title.charAt(0).toLowerCase() + panel.title.slice(1)).map((title) => (/^p[h ]/i.test(title) ? title.replace(/^p/, 'p') : title)))]);
  const sentences = [`Line chart of ${what} from ${momentWords(facts.from, protocol)} to ${momentWords(facts.to, protocol)} (${protocol.zone.name}).`];
  for (const panel of panels) for (const drawn of panel.drawn) sentences.push(seriesSentence(drawn, panel, panels.length, protocol));
  const dark = bandsWords(facts, 'dark');
  const twilight = bandsWords(facts, 'twilight');
  const spans = (parts: readonly string[]): string => (parts.length <= 3 ? listWords(parts) : `${parts[0]!} and ${parts.length - 1} later nights`);
  if (dark.length > 0) sentences.push(`Dark: ${spans(dark)}.`);
  if (twilight.length > 0) sentences.push(`Civil twilight without lamps: ${spans(twilight)}.`);
  const events = facts.events.filter((event) => !event.lamp);
  if (events.length > 0) sentences.push(`${plural(events.length, 'Event', 'Events')}: ${events.map((event) => `${event.label} at ${facts.to - facts.from > 30 * hour ? momentWords(event.at, protocol).replace(/ \d{4}$/, '') : formatClock(event.at, protocol.zone)}`).join('; ')}.`);
  for (const limit of facts.limits) sentences.push(`Limit drawn: ${limit.label}.`);
  return sentences.join(' ');
}

/** The caption: the author's sentence first, then what is shown and how to read the marks. */
export function captionOf(facts: ChartFacts, own: string | null): Run[] {
  const { protocol, panels } = facts;
  const all = panels.flatMap((panel) => panel.drawn);
  const quantities = [...new Set(all.map((drawn) => quantityWords(protocol, drawn.series.quantity)))];
  const places = [...new Set(all.map((drawn) => placeWords(protocol, drawn.series.place)))].map((place) => (place.startsWith('the ') ? place : `the ${place}`));
  const marks = tally(all);
  const sentences: string[] = [];
  if (own !== null) sentences.push(/[.!?…]$/.test(own) ? own : `${own}.`);
  sentences.push(`${capital(listWords(quantities))} in ${places.length > 4 ? `${places.length} places` : listWords(places)}, ${datesWords(facts.from, facts.to, protocol)}.`);
  const shades: string[] = [];
  if (facts.bands.some((band) => band.kind === 'dark')) shades.push('shaded: dark');
  if (facts.bands.some((band) => band.kind === 'twilight')) shades.push('lighter shade: civil twilight, lamps off');
  if (facts.limits.length > 0) shades.push('dashed across: limits stated in the protocol');
  if (marks.doubtful > 0) shades.push(`hollow: ${plural(marks.doubtful, 'a doubtful reading', 'doubtful readings')}`);
  if (marks.leftOut > 0) shades.push(`${plural(marks.leftOut, 'cross: a reading', 'crosses: readings')} left out of every calculation`);
  if (marks.censored > 0) shades.push(`${plural(marks.censored, 'arrow: a value', 'arrows: values')} outside the instrument's range`);
  if (all.some((drawn) => new Set(drawn.points.filter((point) => point.segment >= 0).map((point) => point.segment)).size > 1)) shades.push('a line is not drawn over missing readings');
  if (shades.length > 0) sentences.push(`${capital(shades.join('; '))}.`);
  return [{ kind: 'text', text: sentences.join(' ') }];
}
