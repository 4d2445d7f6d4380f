// How generated prose names things: tanks, quantities, series, times, dates. Their words are those of the note's language.
import type { Series } from '../dataset/types.ts';
import { measureByName } from '../quantities/measures.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { formatNumber, formatValue, type FormatOptions } from '../quantities/format.ts';
import type { NumberValue } from '../quantities/types.ts';
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import { formatClock, formatDate, formatDuration, readClock, readDate } from '../time/text.ts';
import { day, type Duration, type Instant } from '../time/instant.ts';
import { wallTimeOf } from '../time/zone.ts';
import type { Place, Places } from '../words/en/names.ts';
import { languageOf } from '../words/languages.ts';
import { unitWords } from '../words/units.ts';
import { writingWords, type WritingWords } from '../words/writing.ts';

/** The words of the note's language. */
export function wordsOf(protocol: Pick<Protocol, 'language'>): WritingWords {
  return writingWords(protocol.language);
}

/** A unit, or an amount with its unit, in the words of the note's language where it has a word in it. */
export function inUnits(text: string, protocol: Pick<Protocol, 'language'> | null): string {
  return unitWords(text, languageOf(protocol?.language));
}

/** A value with its unit and the decimal mark of the note's language. */
export function valueWords(value: NumberValue, protocol: Protocol, options: FormatOptions = {}): string {
  return inUnits(formatValue(value, { decimalMark: decimalMarkOf(protocol.language), ...options }), protocol);
}

export function numberWords(value: number, decimals: number, protocol: Protocol): string {
  return formatNumber(value, decimals, decimalMarkOf(protocol.language));
}

/** Digits written with a point, with the decimal mark of the note's language. */
export function withMark(digits: string, protocol: Protocol): string {
  return digits.replace(/(\d)\.(?=\d)/g, `$1${decimalMarkOf(protocol.language)}`);
}

export function durationWords(duration: Duration, protocol: Protocol): string {
  return withMark(formatDuration(duration), protocol);
}

function placeOf(place: string, protocol: Protocol): Place {
  if (place === 'room') return 'room';
  const tank = protocol.tanks.find((each) => each.id === place);
  return tank ? { id: tank.id, label: tank.label } : { name: place };
}

function placesOf(ids: readonly string[], protocol: Protocol): Places {
  return { all: protocol.tanks.length > 1 && protocol.tanks.every((tank) => ids.includes(tank.id)), places: ids.map((id) => placeOf(id, protocol)) };
}

/** `the floating-mat tank`, `the room`. */
export function placeName(place: string, protocol: Protocol): string {
  return wordsOf(protocol).names.place(placeOf(place, protocol));
}

/** `in the floating-mat tank`. */
export function inPlace(place: string, protocol: Protocol): string {
  return wordsOf(protocol).names.inPlace(placeOf(place, protocol));
}

/** `both tanks`, `all tanks`, or the names. */
export function tanksName(ids: readonly string[], protocol: Protocol): string {
  return wordsOf(protocol).names.places(placesOf(ids, protocol));
}

/** `in both tanks`, `in both tanks and the room`; empty for no place. */
export function inPlaces(ids: readonly string[], protocol: Protocol): string {
  const tanks = ids.filter((id) => id !== 'room');
  const groups = [...(tanks.length > 0 ? [tanks] : []), ...(ids.includes('room') ? [['room']] : [])];
  return wordsOf(protocol).names.inPlaces(groups.map((group) => placesOf(group, protocol)));
}

function quantityEntry(id: string, protocol: Protocol): MeasuredQuantity | null {
  return protocol.measure.find((each) => each.id === id) ?? null;
}

/** `dissolved oxygen`. */
export function quantityName(id: string, protocol: Protocol): string {
  const what = quantityEntry(id, protocol)?.what?.value;
  const entry = what === undefined ? null : measureByName(what);
  return wordsOf(protocol).names.quantity({ known: entry?.name ?? null, print: entry?.print ?? what ?? id });
}

/** `dissolved oxygen in the floating-mat tank`, `air pressure in the room`. */
export function seriesName(series: Pick<Series, 'place' | 'quantity' | 'instrument'>, protocol: Protocol): string {
  return wordsOf(protocol).names.series({ what: quantityName(series.quantity, protocol), instrument: series.instrument, where: placeOf(series.place, protocol) });
}

/** True when a clock time alone could mean two moments of the run. */
export function isLong(protocol: Protocol, times: readonly Instant[]): boolean {
  const from = Math.min(protocol.schedule?.start ?? Infinity, times[0] ?? Infinity);
  const to = Math.max(protocol.schedule?.end ?? -Infinity, times.at(-1) ?? -Infinity);
  return to - from > day;
}

/** `06:30`; in a run of more than a day `06:30 on 15 March`. */
export function momentWords(instant: Instant, protocol: Protocol, long: boolean): string {
  const { names } = wordsOf(protocol);
  return names.moment(formatClock(instant, protocol.zone), long ? names.date(wallTimeOf(instant, protocol.zone), false) : null);
}

/** `20:00 on 14 March 2026`. */
export function datedMoment(instant: Instant, protocol: Protocol): string {
  return wordsOf(protocol).names.moment(formatClock(instant, protocol.zone), dateOf(instant, protocol));
}

/** A time as formulas show it (`06:30`, `2026-03-15 06:30`) in words; any other text stays. */
export function timeInWords(text: string, protocol: Protocol): string {
  const { names } = wordsOf(protocol);
  const [clock = '', date] = text.split(' ').reverse();
  if (readClock(clock) === null || (date !== undefined && readDate(date) === null)) return text;
  return names.moment(clock, date === undefined ? null : names.date(readDate(date)!, false));
}

export function dateOf(instant: Instant, protocol: Protocol): string {
  return wordsOf(protocol).names.date(wallTimeOf(instant, protocol.zone));
}

export function sameDate(a: Instant, b: Instant, protocol: Protocol): boolean {
  return formatDate(a, protocol.zone) === formatDate(b, protocol.zone);
}

/** A date of the plan in words; other text stays as it is. */
export function plannedDate(text: string, protocol: Protocol): string {
  const date = readDate(text);
  return date ? wordsOf(protocol).names.date(date) : text.trim();
}
