// A value as text for readers, for machines, and as the JSON of `evenwater ask`.
import { hour } from '../time/instant.ts';
import { formatClock, formatDate, formatDuration, formatInstant } from '../time/text.ts';
import { utc } from '../time/zone.ts';
import { flag } from '../dataset/types.ts';
import { decimalMarkOf, type DecimalMark } from '../quantities/decimalMark.ts';
import { decimalsFor, formatValue } from '../quantities/format.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { unitWords } from '../words/units.ts';
import { valueWords } from '../words/values.ts';
import type { FormulaContext } from './context.ts';
import { runOf } from './run.ts';
import { halfWidthOf, isEven, type TimeInterval } from './timeIntervals.ts';
import type { FormulaNumber, FormulaValue, SeriesPoint, SeriesValue } from './types.ts';

export interface ShowOptions {
  /** Digits after the decimal mark; by default those of the readings that went in, or what the size of the number asks for. */
  readonly decimals?: number;
  /** false leaves the unit out. */
  readonly withUnit?: boolean;
  /** Adds ± and the 95 % half-width, where it is known. */
  readonly withUncertainty?: boolean;
  /** Writes times with their date even within one day. */
  readonly withDate?: boolean;
}

export interface JsonValue {
  readonly type: 'number' | 'instant' | 'duration' | 'truth' | 'window' | 'series' | 'event' | 'word';
  readonly value: unknown;
  readonly unit: string | null;
  /** 95 % half-width in the unit; of an instant in hours. */
  readonly uncertainty: number | null;
  readonly text: string;
}

/** The decimal mark of the note's language. */
export function decimalMark(context: FormulaContext): DecimalMark {
  return decimalMarkOf(context.protocol?.language ?? 'en');
}

const languageIn = (context: FormulaContext): Language => languageOf(context.protocol?.language);
const wordsOf = (context: FormulaContext): ReturnType<typeof valueWords> => valueWords(languageIn(context));

/** Decimals a number is shown with: at least those of the readings that went in. */
export function shownDecimals(value: FormulaNumber): number {
  if (value.decimals !== undefined) return value.decimals;
  return decimalsFor(value.value, expandedUncertainty(value));
}

/** The value as the note would show it: `8.26 mg/L`, `22:30`, `9 h 30 min`, `true`. */
export function showValue(value: FormulaValue, context: FormulaContext, options: ShowOptions = {}): string {
  switch (value.type) {
    case 'number': return showNumber(value, context, options);
    case 'instant': return showTime(value.instant, value.interval, options, (instant) => showInstant(instant, context, options));
    case 'event': return showInstant(value.instant, context, options);
    case 'duration': return showTime(value.duration, value.interval, options, formatDuration);
    case 'truth': return wordsOf(context).truths[value.truth ? 1 : 0];
    case 'window': return wordsOf(context).span(showInstant(value.from, context, options), showInstant(value.to, context, options));
    case 'series': return showSeries(value, context, options);
    case 'word': return value.word;
    case 'tank': case 'quantity': return value.id;
  }
}

function showNumber(value: FormulaNumber, context: FormulaContext, options: ShowOptions): string {
  const unit = printedUnit(value.unit);
  return formatValue({ ...value, unit: { ...unit, print: unitWords(unit.print, languageIn(context)) } }, {
    decimals: options.decimals ?? shownDecimals(value), decimalMark: decimalMark(context), uncertainty: options.withUncertainty ?? false,
    withUnit: options.withUnit ?? true,
  });
}

/** The unit as readers know it: a difference of temperatures is printed in °C, where K would puzzle a keeper. */
export function printedUnit(unit: Unit): Unit {
  return unit.kind === 'temperature-difference' && /^K(?![a-z])/u.test(unit.print) ? { ...unit, print: `°C${unit.print.slice(1)}` } : unit;
}

/** An accuracy or a resolution: `0.1 mg/L`, `0.2 °C`. */
export function instrumentFigure(value: NumberValue): string {
  return formatValue({ ...value, unit: printedUnit(value.unit) }, { uncertainty: false });
}

/** `8 h 38 min ± 25 min`; an uneven interval by its ends, `06:04 (05:41–06:20)`, one without an end as `8 h 38 min (≥ 7 h 50 min)`. */
function showTime(time: number, interval: TimeInterval | undefined, options: ShowOptions, show: (time: number) => string): string {
  const text = show(time);
  if (!options.withUncertainty || interval === undefined) return text;
  const half = halfWidthOf(interval);
  if (half !== null && isEven(interval)) return `${text} ± ${formatDuration(half)}`;
  const low = interval.earlier === null ? null : show(time - interval.earlier);
  const high = interval.later === null ? null : show(time + interval.later);
  if (low !== null && high !== null) return `${text} (${low}–${high})`;
  return low === null && high === null ? text : `${text} (${low === null ? `≤ ${high}` : `≥ ${low}`})`;
}

function showInstant(instant: number, context: FormulaContext, options: ShowOptions): string {
  const zone = context.protocol?.zone ?? utc;
  const stretch = runOf(context);
  const oneDay = stretch !== null && stretch.to - stretch.from <= 24 * hour && instant >= stretch.from - 12 * hour && instant <= stretch.to + 12 * hour;
  return oneDay && !options.withDate ? formatClock(instant, zone) : `${formatDate(instant, zone)} ${formatClock(instant, zone)}`;
}

const mostShown = 24;

function showSeries(series: SeriesValue, context: FormulaContext, options: ShowOptions): string {
  const shown = series.points.slice(0, mostShown).map((point) => `${showInstant(point.time, context, options)} ${pointText(series, point, context, options)}`);
  const rest = series.points.length - shown.length;
  if (series.points.length === 0) return wordsOf(context).noReadings;
  return rest > 0 ? `${shown.join('; ')}; ${wordsOf(context).andMore(rest)}` : shown.join('; ');
}

function pointText(series: SeriesValue, point: SeriesPoint, context: FormulaContext, options: ShowOptions): string {
  if (series.content === 'word') return series.scale?.[point.value] ?? '';
  if (series.content === 'truth') return wordsOf(context).truths[point.value === 1 ? 1 : 0];
  const number: FormulaNumber = { type: 'number', value: point.value, unit: series.unit, contributions: point.contributions, ...(point.decimals === undefined ? {} : { decimals: point.decimals }) };
  const limit = point.flags & flag.below ? '<' : point.flags & flag.above ? '>' : '';
  return limit + showNumber(number, context, options);
}

/** For `<data value>`: an unrounded number, an instant with its offset, a duration in hours, `true`. */
export function machineValue(value: FormulaValue, context: FormulaContext): string {
  const zone = context.protocol?.zone ?? utc;
  switch (value.type) {
    case 'number': return plain(value.value);
    case 'instant': case 'event': return formatInstant(value.instant, zone);
    case 'duration': return plain(value.duration / hour);
    case 'truth': return String(value.truth);
    case 'window': return `${formatInstant(value.from, zone)}/${formatInstant(value.to, zone)}`;
    case 'series': return value.points.map((point) => plain(point.value)).join(' ');
    case 'word': return value.word;
    case 'tank': case 'quantity': return value.id;
  }
}

/** A number without an exponent's surprises: shortest digits that give it back; zero has no sign. */
function plain(value: number): string {
  return Object.is(value, -0) ? '0' : String(value);
}

function plainNumber(value: number): number { return value === 0 ? 0 : value; }

/** The document of `evenwater ask --json`. */
export function jsonValue(value: FormulaValue, context: FormulaContext): JsonValue {
  const zone = context.protocol?.zone ?? utc;
  const text = showValue(value, context);
  const nothing = { unit: null, uncertainty: null, text };
  switch (value.type) {
    case 'number': {
      const half = expandedUncertainty(value);
      return { type: 'number', value: plainNumber(value.value), unit: value.unit.symbol, uncertainty: half, text };
    }
    case 'instant': return { type: 'instant', value: formatInstant(value.instant, zone), ...nothing, ...hoursAround(value.interval) };
    case 'event': return { type: 'event', value: formatInstant(value.instant, zone), ...nothing };
    case 'duration': return { type: 'duration', value: plainNumber(value.duration / hour), ...nothing, unit: 'h', ...hoursAround(value.interval) };
    case 'truth': return { type: 'truth', value: value.truth, ...nothing };
    case 'window': return { type: 'window', value: { from: formatInstant(value.from, zone), to: formatInstant(value.to, zone) }, ...nothing };
    case 'series': return {
      type: 'series', unit: value.content === 'word' || value.content === 'truth' ? null : value.unit.symbol, uncertainty: null, text,
      value: value.points.map((point) => ({ time: formatInstant(point.time, zone), value: jsonPoint(value, point), flags: flagNames(point.flags) })),
    };
    case 'word': return { type: 'word', value: value.word, ...nothing };
    case 'tank': case 'quantity': return { type: 'word', value: value.id, ...nothing };
  }
}

/** Half the 95 % interval of a time, in hours. */
function hoursAround(interval: TimeInterval | undefined): { uncertainty: number | null } {
  const half = halfWidthOf(interval);
  return { uncertainty: half === null ? null : half / hour };
}

function jsonPoint(series: SeriesValue, point: SeriesPoint): number | boolean | string {
  if (series.content === 'word') return series.scale?.[point.value] ?? '';
  return series.content === 'truth' ? point.value === 1 : plainNumber(point.value);
}

const flagWords: readonly (readonly [number, string])[] = [
  [flag.leftOut, 'left-out'], [flag.doubtful, 'doubtful'], [flag.corrected, 'corrected'], [flag.below, 'below'], [flag.above, 'above'], [flag.repeated, 'repeated'],
];

function flagNames(flags: number): string[] {
  return flagWords.filter(([bit]) => (flags & bit) !== 0).map(([, name]) => name);
}
