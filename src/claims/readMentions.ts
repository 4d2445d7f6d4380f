// Reads every number with its unit, clock time, date and duration out of a claim's words, from left to right.
// Digits glued to letters (`tank2`, `O2`) are no numbers; a minus is a sign only after a space or an opening mark.
import { convert, isTimeUnit, matchPrintedUnit, parseUnit, perHour } from '../quantities/units.ts';
import type { Unit } from '../quantities/types.ts';
import { invisibleCharacter } from '../note/touchedClaims.ts';
import { hour, minute } from '../time/instant.ts';
import { clockAt, dateAt } from './clockMentions.ts';
import { decimalMarkOf, type DecimalMark } from '../quantities/decimalMark.ts';
import { claimWords, type ClaimWords } from '../words/claimWords.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { withoutMarkup, withoutNames } from './markup.ts';
import type { AnyMention, DurationMention, NumberMention, TimeHalfWidth, UnclearMention } from './mentions.ts';
import { plusMinus, timeHalfWidthAt } from './plusMinus.ts';
import { qualifierBefore } from './qualifiers.ts';

const space = '[\\s\\u00a0\\u202f\\u2009]';
const gap = new RegExp(`${space}*`, 'y');
const digits: Readonly<Record<DecimalMark, RegExp>> = {
  '.': /(\d{1,3}(?:[,'’\u00a0\u202f\u2009]\d{3})+(?!\d)|\d+)(\.\d+)?|(\.\d+)/y,
  ',': /(\d{1,3}(?:[.'’\u00a0\u202f\u2009]\d{3})+(?!\d)|\d+)(,\d+)?/y,
};
const power = /\s*[×x·]\s*10(?:\^?([−-]?\d{1,2})|([⁻⁺]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+))/y;
/** `9h30`, as clocks and stopwatches print it. */
const tightDuration = /(\d{1,3})h(\d{2})(?:\s?min)?(?![\p{L}\p{N}])/uy;
const fractions: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75, '⅓': 1 / 3, '⅔': 2 / 3 };
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function match(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

/** The note's language and the words and patterns of it. */
interface Speech {
  readonly tag: string;
  readonly language: Language;
  readonly words: ClaimWords;
  readonly perHour: RegExp;
  readonly percentagePoints: RegExp;
  readonly joins: RegExp;
  readonly betweenParts: RegExp;
  /** Number words are read in languages that we have them of. */
  readonly numberWords: boolean;
}

const speeches = new Map<string, Speech>();

function speechOf(tag: string): Speech {
  const known = speeches.get(tag);
  if (known) return known;
  const language = languageOf(tag);
  const words = claimWords(language);
  const speech: Speech = {
    tag, language, words,
    perHour: new RegExp(`(?:${space}*/${space}*h(?:our|r)?|${space}+(?:${words.perHour}))(?![\\p{L}\\p{N}])(?!\\s+(?:${words.notPerHour})(?![\\p{L}]))`, 'iuy'),
    percentagePoints: new RegExp(`${words.percentagePoints}(?![\\p{L}\\p{N}])`, 'iuy'),
    joins: new RegExp(`^${space}*(?:${words.joins})${space}*$`, 'u'), betweenParts: new RegExp(`^(?:\\s*,?\\s*${words.and})$`, 'u'),
    numberWords: tag.toLowerCase().startsWith(language),
  };
  speeches.set(tag, speech);
  return speech;
}

const isLetter = (character: string | undefined): boolean => character !== undefined && /[\p{L}_]/u.test(character);
const isDigit = (character: string | undefined): boolean => character !== undefined && /\d/.test(character);
/** Digits of other kinds (`１`, `²`, `٥`) and characters without a width: what stands against them is a part of something else. */
const isStrange = (character: string | undefined): boolean => character !== undefined && fractions[character] === undefined && /[^\P{N}\d]/u.test(character);
const touches = (character: string | undefined): boolean => character !== undefined && (isStrange(character) || invisibleCharacter.test(character));

export interface ReadOptions {
  /** The note's language, which gives the decimal mark. */
  readonly language: string;
  /** Names with numbers in them (labels of tanks) that are not to be read as numbers. */
  readonly names?: readonly string[];
}

/** Every mention in the order of the words. Offsets are those of `words`. */
export function readMentions(words: string, { language, names = [] }: ReadOptions): AnyMention[] {
  const text = withoutNames(withoutMarkup(words), names);
  const mark = decimalMarkOf(language);
  const speech = speechOf(language);
  const found: AnyMention[] = [];
  let offset = 0;
  while (offset < text.length) {
    const mention = mentionAt(text, offset, mark, speech, found.at(-1) ?? null);
    if (mention === null) { offset = nextStart(text, offset); continue; }
    if (mention !== 'skip') { found.push(mention.mention); offset = mention.mention.end; } else offset = nextStart(text, offset);
  }
  return joinRanges(text, joinDurations(text, found, mark, speech), speech);
}

/** Past the run of letters and digits that starts here, or one character. */
function nextStart(text: string, offset: number): number {
  let end = offset;
  while (end < text.length && /[\p{L}\p{N}_]/u.test(text[end]!)) end += 1;
  return end === offset ? offset + 1 : end;
}

/** True where a number may not start: within a word, after `^`, or after a hyphen that hangs on a letter (`dark-1`, `mat-2`). */
function glued(text: string, offset: number): boolean {
  const before = text[offset - 1];
  if (isLetter(before) || isDigit(before) || touches(before) || before === '^') return true;
  if ((before === '.' || before === ',' || before === '/') && isDigit(text[offset - 2])) return true;
  return (before === '-' || before === '−' || before === '.') && isLetter(text[offset - 2]);
}

function mentionAt(text: string, offset: number, mark: DecimalMark, speech: Speech, previous: AnyMention | null): { mention: AnyMention } | 'skip' | null {
  const character = text[offset]!;
  const signed = /[+\-−–]/.test(character) && (isDigit(text[offset + 1]) || (mark === '.' && text[offset + 1] === '.' && isDigit(text[offset + 2])));
  if (signed) return signAllowed(text, offset, previous) ? numberAt(text, offset, offset + 1, mark, speech) : null;
  if (!/[\p{L}\d.½¼¾⅓⅔]/u.test(character) || glued(text, offset)) return null;
  const time = dateAt(text, offset, speech.words) ?? clockAt(text, offset, speech.words);
  if (time) return { mention: { ...time, ...qualifierBefore(text, time.start, speech.tag), ...(time.kind === 'clock' ? halfWidthOfClock(text, time.end, mark, speech) : {}) } };
  const tight = match(tightDuration, text, offset);
  if (tight && Number(tight[2]) < 60) {
    const mention: DurationMention = { ...qualifierBefore(text, offset, speech.tag), kind: 'duration', joinedToNext: false, start: offset,
      duration: Number(tight[1]) * hour + Number(tight[2]) * minute, step: minute, valueEnd: offset + tight[0].length, ...halfWidthOfTime(text, offset + tight[0].length, mark, speech) };
    return { mention };
  }
  if (isDigit(character) || character === '.' || fractions[character] !== undefined) return numberAt(text, offset, offset, mark, speech);
  return speech.numberWords ? wordNumberAt(text, offset, speech) : null;
}

function signAllowed(text: string, offset: number, previous: AnyMention | null): boolean {
  const before = text[offset - 1];
  const open = before === undefined || /[\s\u00a0\u202f\u2009(~≈<>≤≥"'“‘=:;]/.test(before);
  // An en dash after a number is a range even with a space before it: `2 –3`.
  return open && !(text[offset] === '–' && previous !== null && /^\s*$/.test(text.slice(previous.end, offset)));
}

interface Digits { readonly end: number; readonly value: number; readonly decimals: number; readonly grouping: string; readonly unclear: string | null }

function digitsAt(text: string, offset: number, mark: DecimalMark): Digits | null {
  const lone = fractions[text[offset] ?? ''];
  if (lone !== undefined) return { end: offset + 1, value: lone, decimals: lone === 0.5 ? 1 : 2, grouping: '', unclear: null };
  const shown = match(digits[mark], text, offset);
  if (!shown) return null;
  let end = offset + shown[0].length;
  const other = mark === '.' ? ',' : '.';
  const whole = shown[1] ?? '';
  const grouping = whole.replace(/\d/g, '')[0] ?? '';
  const decimalText = shown[2] ?? shown[3] ?? '';
  if ((text[end] === other || text[end] === mark) && isDigit(text[end + 1])) {
    // `7,31` in an English note, or `15.03.2026`: nothing is guessed.
    const rest = /^[\d.,]*\d/.exec(text.slice(offset))![0];
    return { end: offset + rest.length, value: 0, decimals: 0, grouping, unclear: rest };
  }
  let value = Number(`${whole.replace(/\D/g, '')}.${decimalText.slice(1) || '0'}`);
  let decimals = Math.max(0, decimalText.length - 1);
  const fraction = fractions[text[end] ?? ''];
  if (fraction !== undefined && decimals === 0) { value += fraction; decimals = fraction === 0.5 ? 1 : 2; end += 1; }
  const exponent = match(power, text, end);
  if (exponent) {
    const written = exponent[1]?.replace('−', '-')
      ?? exponent[2]!.replace('⁻', '-').replace('⁺', '').replace(/[⁰-⁹¹²³]/g, (each) => String(superscripts.indexOf(each)));
    const size = Number(written);
    value = Number(`${value}e${size}`);
    decimals -= size;
    end += exponent[0].length;
  }
  return { end, value, decimals, grouping, unclear: null };
}

function numberAt(text: string, start: number, digitsStart: number, mark: DecimalMark, speech: Speech): { mention: NumberMention | UnclearMention } | 'skip' {
  const shown = digitsAt(text, digitsStart, mark);
  if (!shown) return 'skip';
  const sign = text.slice(start, digitsStart);
  const qualifier = qualifierBefore(text, start, speech.tag);
  const next = text[shown.end];
  const unit = unitAt(text, shown.end, speech);
  // Letters right behind the digits must be a unit (`30min`, `0.24mg/L`), else this is a word such as `2nd` or `3D`.
  if (isLetter(next) && !(unit && unit.from === shown.end)) return 'skip';
  if (isStrange(next) || (next === '/' && isDigit(text[shown.end + 1]))) return 'skip';
  if (shown.unclear !== null) {
    const one = shown.unclear.replace(/[.,]/g, '').length === shown.unclear.length - 1;
    if (!one) return { mention: { ...qualifier, kind: 'unclear', joinedToNext: false, start, end: shown.end, text: shown.unclear, suggestion: '', unit: null, valueStart: start, valueEnd: shown.end } };
    return { mention: { ...qualifier, kind: 'unclear', joinedToNext: false, start, end: unit?.end ?? shown.end, text: sign + shown.unclear,
      suggestion: sign + shown.unclear.replace(/[.,]/, mark), unit: unit?.unit ?? null, valueStart: start, valueEnd: shown.end } };
  }
  const negative = sign !== '' && sign !== '+';
  const half = halfWidthAt(text, shown.end, mark, speech) ?? (unit ? halfWidthAt(text, unit.end, mark, speech) : null);
  const own = half && half.from === shown.end ? half.unit : unit?.unit ?? null;
  const shownUnit = own ?? unitBefore(text, start, speech);
  return { mention: {
    ...qualifier, kind: 'number', joinedToNext: false, start, end: Math.max(half?.end ?? 0, unit?.end ?? 0, shown.end), valueStart: start, valueEnd: shown.end,
    value: negative ? 0 - shown.value : shown.value, decimals: shown.decimals, sign, written: 'digits', mark, grouping: shown.grouping,
    unit: shownUnit, unitFromNext: false, unitInList: null, nextWord: wordAfter(text, Math.max(half?.end ?? 0, unit?.end ?? 0, shown.end)),
    halfWidth: half && { start: half.start, end: half.digitsEnd, value: half.value * half.scale(shownUnit), decimals: half.decimals },
  } };
}

/** The same behind a clock time, with the word that may follow it. */
function halfWidthOfClock(text: string, end: number, mark: DecimalMark, speech: Speech): { halfWidth: TimeHalfWidth | null; end: number } {
  const word = speech.words.afterClock?.exec(text.slice(end, end + 8))?.[0].length ?? 0;
  const found = halfWidthOfTime(text, end + word, mark, speech);
  return found.halfWidth === null ? { halfWidth: null, end } : found;
}

/** The half-width of a time and the end that it gives the whole. */
function halfWidthOfTime(text: string, end: number, mark: DecimalMark, speech: Speech): { halfWidth: TimeHalfWidth | null; end: number } {
  return timeHalfWidthAt(text, end, mark, speech.language) ?? { halfWidth: null, end };
}

interface HalfWidth { readonly from: number; readonly start: number; readonly digitsEnd: number; readonly end: number; readonly value: number; readonly decimals: number; readonly unit: Unit | null; scale(unit: Unit | null): number }

function halfWidthAt(text: string, offset: number, mark: DecimalMark, speech: Speech): HalfWidth | null {
  const sign = match(plusMinus, text, offset);
  if (!sign) return null;
  const start = offset + sign[0].length;
  if (!isDigit(text[start])) return null;
  const shown = digitsAt(text, start, mark);
  if (!shown || shown.unclear !== null) return null;
  let end = shown.end;
  let unit = unitAt(text, end, speech);
  if (unit) end = unit.end;
  const closing = /^\s*\)/.exec(text.slice(end));
  if (closing) {
    end += closing[0].length;
    if (!unit) { unit = unitAt(text, end, speech); if (unit) end = unit.end; }
  }
  const own = unit?.unit ?? null;
  return { from: offset, start, digitsEnd: shown.end, end, value: shown.value, decimals: shown.decimals, unit: own,
    scale: (other) => (own && other ? own.factor / other.factor : 1) };
}

function wordAfter(text: string, offset: number): string {
  return /^[\s\u00a0\u202f\u2009-]*([\p{L}°%‰]+)/u.exec(text.slice(offset, offset + 40))?.[1]?.toLowerCase() ?? '';
}

/** `pH 7.2`: the unit stands before the number. */
function unitBefore(text: string, start: number, { words }: Speech): Unit | null {
  return words.pHBefore.test(text.slice(Math.max(0, start - 30), start)) ? parseUnit('pH') : null;
}

/** The printed unit after a number: after spaces, or after the hyphen of `a 2-hour window`. */
function unitAt(text: string, offset: number, speech: Speech): { unit: Unit; from: number; end: number } | null {
  let from = offset + (match(gap, text, offset)?.[0].length ?? 0);
  if (from === offset && text[offset] === '-' && isLetter(text[offset + 1])) from += 1;
  const points = match(speech.percentagePoints, text, from);
  const printed = points ? { unit: parseUnit('pp'), length: points[0].length } : matchPrintedUnit(text, from, speech.language);
  if (!printed?.unit) return null;
  let end = from + printed.length;
  const shown = text.slice(from, end);
  if (isLetter(text[end]) && isLetter(text[end - 1])) return null;
  if (isDigit(text[end]) && isLetter(text[end - 1])) return null;
  // `in` and `a` are words far more often than inches or years.
  if (speech.words.notUnits.test(shown) && /^\s+\p{L}/u.test(text.slice(end))) return null;
  const rate = match(speech.perHour, text, end);
  if (rate && !/\/\s*h|hour|stunde/i.test(shown)) {
    end += rate[0].length;
    return { unit: perHour(printed.unit), from, end };
  }
  return { unit: printed.unit, from, end };
}

function wordNumberAt(text: string, offset: number, speech: Speech): { mention: NumberMention } | null {
  const word = speech.words.numberWordAt(text, offset);
  if (!word) return null;
  const valueEnd = offset + word.length;
  let unit = unitAt(text, valueEnd, speech);
  if (word.article && !unit) return null;
  let { value, decimals } = word;
  let end = unit?.end ?? valueEnd;
  const andHalf = unit ? speech.words.andHalf.exec(text.slice(end)) : null;
  if (andHalf) { value += 0.5; decimals = 1; end += andHalf[0].length; }
  if (speech.words.counts.test(text.slice(end)) && !unit) unit = null;
  return { mention: { ...qualifierBefore(text, offset, speech.tag), kind: 'number', joinedToNext: false, start: offset, end, valueStart: offset, valueEnd,
    value, decimals, sign: '', written: 'words', mark: '.', grouping: '', unit: unit?.unit ?? null, unitFromNext: false, unitInList: null, nextWord: wordAfter(text, end), halfWidth: null } };
}

/** `9 h 30 min` is one duration. */
function joinDurations(text: string, mentions: readonly AnyMention[], mark: DecimalMark, speech: Speech): AnyMention[] {
  const hourUnit = parseUnit('h');
  if (!hourUnit) return [...mentions];
  const hours = (mention: NumberMention): number | null =>
    mention.unit && isTimeUnit(mention.unit) ? convert(mention.value, mention.unit, hourUnit) : null;
  const result: AnyMention[] = [];
  for (const mention of mentions) {
    const last = result.at(-1);
    // A further part of the half-width behind a `±`.
    if (last && mention.start < last.end) continue;
    const between = last ? text.slice(last.end, mention.start) : '';
    if (mention.kind === 'number' && mention.sign === '' && last && speech.betweenParts.test(between)) {
      const first = last.kind === 'duration' ? last.duration : last.kind === 'number' && last.decimals === 0 && hours(last) !== null ? Math.round(hours(last)! * hour) : null;
      const step = last.kind === 'duration' ? last.step : last.kind === 'number' && last.unit ? Math.round(convert(1, last.unit, hourUnit) * hour) : 0;
      const loneMinutes = between === '' || (/^\s$/.test(between) && mention.valueEnd - mention.valueStart === 2 && mention.nextWord === '');
      const bare = mention.unit === null && loneMinutes && step === hour && mention.value < 60 && mention.decimals === 0;
      const size = bare ? mention.value / 60 : hours(mention);
      const own = bare ? minute : mention.unit ? Math.round(convert(1, mention.unit, hourUnit) * hour) : 0;
      if (first !== null && size !== null && own > 0 && own < step) {
        const valueEnd = endOfPart(text, mention, speech);
        const { halfWidth, end } = mention.halfWidth ? halfWidthOfTime(text, valueEnd, mark, speech) : { halfWidth: null, end: mention.end };
        const joined: DurationMention = { kind: 'duration', start: last.start, end, valueEnd, halfWidth, approximate: last.approximate, bound: last.bound, language: last.language, joinedToNext: false,
          duration: first + Math.round(size * hour), step: Math.max(1, Math.round(own / 10 ** Math.max(0, mention.decimals))) };
        result[result.length - 1] = joined;
        continue;
      }
    }
    result.push(mention);
  }
  return result;
}

/** Where a number with its unit ends, before its half-width. */
function endOfPart(text: string, mention: NumberMention, speech: Speech): number {
  return mention.halfWidth === null ? mention.end : unitAt(text, mention.valueEnd, speech)?.end ?? mention.valueEnd;
}

/** Marks the first of each range, and lends it the unit of the second where it has none. */
function joinRanges(text: string, mentions: readonly AnyMention[], { joins, words }: Speech): AnyMention[] {
  const result = [...mentions];
  for (let index = result.length - 2; index >= 0; index -= 1) {
    const first = result[index]!;
    const second = result[index + 1]!;
    const between = text.slice(first.end, second.start);
    const kinds = first.kind === second.kind || (first.kind !== 'number' && first.kind !== 'unclear' && second.kind !== 'number' && second.kind !== 'unclear');
    const joined = kinds && (joins.test(between) || (words.andAlone.test(between) && words.betweenBefore.test(text.slice(0, first.start))));
    if (joined) result[index] = { ...first, joinedToNext: true };
    const listed = words.listed.test(between);
    const now = result[index]!;
    const lent = second.kind === 'number' ? second.unit ?? second.unitInList : null;
    if (now.kind === 'number' && now.unit === null && now.halfWidth === null && lent !== null && lent.kind !== 'ph') {
      if (joined && second.kind === 'number' && second.unit !== null) result[index] = { ...now, unit: lent, unitFromNext: true };
      else if (listed || joined) result[index] = { ...now, unitInList: lent };
    }
    const qualified = result[index]!;
    if (joined && qualified.approximate && !second.approximate) result[index + 1] = { ...second, approximate: true };
  }
  return result;
}
