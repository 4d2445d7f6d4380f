// How generated prose names things: tanks, quantities, series, times, dates.
import type { Series } from '../dataset/types.ts';
import { measureByName } from '../quantities/measures.ts';
import type { MeasuredQuantity, Protocol, Tank } from '../protocol/types.ts';
import { readDate } from '../time/text.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { day, type Instant } from '../time/instant.ts';
import { wallTimeOf } from '../time/zone.ts';
import { dateWords, listedText, theThing } from '../words/en/grammar.ts';

/** `the floating-mat tank`. */
export function tankName(tank: Tank): string {
  return theThing(tank.label === tank.id && !/tank|pond|jar|bowl|vat/i.test(tank.id) ? `tank ${tank.id}` : tank.label).replace(/^the tank (?=\S+$)/, 'tank ');
}

export function placeName(place: string, protocol: Protocol): string {
  if (place === 'room') return 'the room';
  const tank = protocol.tanks.find((each) => each.id === place);
  return tank ? tankName(tank) : place;
}

export function quantityEntry(id: string, protocol: Protocol): MeasuredQuantity | null {
  return protocol.measure.find((each) => each.id === id) ?? null;
}

/** `dissolved oxygen`. */
export function quantityName(id: string, protocol: Protocol): string {
  const what = quantityEntry(id, protocol)?.what?.value;
  return what === undefined ? id : measureByName(what)?.print ?? what;
}

/** `dissolved oxygen in the floating-mat tank`, `air pressure in the room`. */
export function seriesName(series: Pick<Series, 'place' | 'quantity' | 'instrument'>, protocol: Protocol): string {
  const by = series.instrument === null ? '' : ` by ${series.instrument}`;
  return `${quantityName(series.quantity, protocol)}${by} in ${placeName(series.place, protocol)}`;
}

/** True when a clock time alone could mean two moments of the run. */
export function isLong(protocol: Protocol, times: readonly Instant[]): boolean {
  const from = Math.min(protocol.schedule?.start ?? Infinity, times[0] ?? Infinity);
  const to = Math.max(protocol.schedule?.end ?? -Infinity, times.at(-1) ?? -Infinity);
  return to - from > day;
}

/** `06:30`; in a run of more than a day `06:30 on 15 March`. */
export function momentWords(instant: Instant, protocol: Protocol, long: boolean): string {
  const clock = formatClock(instant, protocol.zone);
  return long ? `${clock} on ${dateWords(wallTimeOf(instant, protocol.zone), false)}` : clock;
}

export function dateOf(instant: Instant, protocol: Protocol): string {
  return dateWords(wallTimeOf(instant, protocol.zone));
}

export function sameDate(a: Instant, b: Instant, protocol: Protocol): boolean {
  return formatDate(a, protocol.zone) === formatDate(b, protocol.zone);
}

/** A date of the plan in words; other text stays as it is. */
export function plannedDate(text: string): string {
  const date = readDate(text);
  return date ? dateWords(date) : text.trim();
}

/** `both tanks`, `all three tanks`, or the names. */
export function tanksName(ids: readonly string[], protocol: Protocol): string {
  const all = protocol.tanks.length > 1 && protocol.tanks.every((tank) => ids.includes(tank.id));
  if (all) return protocol.tanks.length === 2 ? 'both tanks' : 'all tanks';
  return listedText(ids.map((id) => placeName(id, protocol)));
}
