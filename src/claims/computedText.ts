// A computed value as the note would show it: decimals from the readings that went in, the language's decimal mark.
import type { FormulaContext } from '../formula/context.ts';
import type { Evaluation, FormulaValue } from '../formula/types.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import { decimalsFor, formatNumber, printedMinus, roundTo } from '../quantities/format.ts';
import type { Unit } from '../quantities/types.ts';
import { differenceUnit, perHour } from '../quantities/units.ts';
import { formatClock, formatDate, formatDuration } from '../time/text.ts';
import { day, minute, type Instant } from '../time/instant.ts';
import { utc } from '../time/zone.ts';
import { decimalMarkOf, type DecimalMark } from '../quantities/decimalMark.ts';
import { claimWords } from '../words/claimWords.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { quantityName } from '../words/quantities.ts';
import { unitWords } from '../words/units.ts';
import { readingsBehind } from './readingsBehind.ts';

/** The text that `?` is filled with, and that a mismatch names. */
export function computedText(value: FormulaValue, evaluation: Evaluation, context: FormulaContext): string {
  const mark = decimalMarkOf(context.protocol?.language ?? 'en');
  const language = languageOf(context.protocol?.language);
  switch (value.type) {
    case 'number': return withUnit(digitsOf(value.value, decimalsOf(value, value.unit, expandedUncertainty(value), evaluation, context), mark), value.unit, language);
    case 'series': return seriesText(value, evaluation, context, mark);
    case 'instant': case 'event': return instantText(value.instant, context);
    case 'window': return claimWords(language).span(instantText(value.from, context), instantText(value.to, context));
    case 'duration': return printedMinus(formatDuration(toMinutes(value.duration, context)));
    case 'truth': return claimWords(language).truths[value.truth ? 1 : 0];
    case 'word': return value.word;
    case 'tank': return context.protocol?.tanks.find((tank) => tank.id === value.id)?.label ?? value.id;
    case 'quantity': return quantityName(context.protocol?.measure.find((each) => each.id === value.id)?.what?.value ?? value.id, language);
  }
}

/** A clock time; with its date where the run's readings span more than a day. */
export function instantText(instant: Instant, context: FormulaContext): string {
  const zone = context.protocol?.zone ?? utc;
  const { times } = context.dataset;
  const start = context.protocol?.schedule?.start ?? times[0];
  const end = context.protocol?.schedule?.end ?? times.at(-1);
  const long = start !== undefined && end !== undefined && end - start > day;
  const shown = toMinutes(instant, context);
  return long ? `${formatDate(shown, zone)} ${formatClock(shown, zone)}` : formatClock(shown, zone);
}

/** Seconds are shown only where the note's own times have them: a sunrise is no better than its minute. */
function toMinutes(time: number, context: FormulaContext): number {
  const fine = context.dataset.times.some((each) => each % minute !== 0) || Math.abs(time) < 5 * minute;
  return fine ? time : Math.round(time / minute) * minute;
}

export function digitsOf(value: number, decimals: number, mark: DecimalMark): string {
  const rounded = roundTo(Math.abs(value), decimals);
  return (rounded !== 0 && value < 0 ? '−' : '') + formatNumber(rounded, decimals, mark);
}

/** `24.9 °C`, `2.9 %`, `17`, `pH 7.2`. */
export function withUnit(digits: string, unit: Unit, language: Language = 'en'): string {
  if (unit.kind === 'ph') return `pH ${digits}`;
  const print = printedUnit(unit);
  return print === '' || unit.symbol === '1' ? digits : `${digits} ${unitWords(print, language)}`;
}

/** As prose writes a unit: a difference of temperatures in °C, not in kelvin. */
export function printedUnit(unit: Unit): string {
  return unit.kind === 'temperature-difference' ? unit.print.replace(/^K\b/, '°C') : unit.print;
}

/**
 * Digits after the decimal mark: those of the readings where the value is in their unit, those that its formula gives where it is
 * a change of theirs per hour, else what the 95 % half-width allows, else two or three significant figures.
 */
function decimalsOf({ value, decimals }: { value: number; decimals?: number }, unit: Unit, halfWidth: number | null, evaluation: Evaluation, context: FormulaContext): number {
  const behind = readingsBehind(evaluation, context);
  if (decimals !== undefined && behind.some(({ series }) => perHour(differenceUnit(series.unit)).symbol === unit.symbol)) return decimals;
  const alike = behind.filter(({ series }) => series.unit.symbol === unit.symbol || differenceUnit(series.unit).symbol === unit.symbol);
  if (alike.length > 0) return Math.max(0, ...alike.map(({ source }) => source.cell.state.decimals));
  if (unit.symbol === '1' && Number.isInteger(value)) return 0;
  return Math.min(decimalsFor(value, halfWidth), Math.max(decimalsFor(value, null), halfWidth === null ? 0 : leastDecimals(halfWidth)));
}

/** Decimals without which a half-width would vanish. */
function leastDecimals(halfWidth: number): number {
  return halfWidth > 0 ? Math.max(0, Math.min(12, -Math.floor(Math.log10(halfWidth) + 1e-9) - 1)) : 0;
}

function seriesText(value: Extract<FormulaValue, { type: 'series' }>, evaluation: Evaluation, context: FormulaContext, mark: DecimalMark): string {
  const values = value.points.map((point) => point.value);
  if (values.length === 0) return '';
  const language = languageOf(context.protocol?.language);
  const least = Math.min(...values);
  const greatest = Math.max(...values);
  const own = value.points.map((point) => point.decimals);
  const decimals = own.every((each) => each !== undefined) ? Math.max(0, ...own) : decimalsOf({ value: Math.abs(least) > Math.abs(greatest) ? least : greatest }, value.unit, null, evaluation, context);
  const low = digitsOf(least, decimals, mark);
  const high = digitsOf(greatest, decimals, mark);
  return withUnit(low === high ? low : claimWords(language).span(low, high), value.unit, language);
}
