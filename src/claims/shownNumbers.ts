// Compares every number in a claim's words with the value its formula gives. One outcome a number that does not agree.
import { convert, isTimeUnit, parseUnit } from '../quantities/units.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { durationNumber } from '../formula/operands.ts';
import { halfWidthOf } from '../formula/timeIntervals.ts';
import type { FormulaValue } from '../formula/types.ts';
import { hour, type Duration, type Instant, type Zone } from '../time/instant.ts';
import { claimWords } from '../words/claimWords.ts';
import { fittingUnit, holdsNumber, inUnit, onBoundSide, signLost, tolerance } from './compareNumber.ts';
import { holdsClock, holdsDate } from './instants.ts';
import type { AnyMention, ClockMention, DateMention, DurationMention, NumberMention } from './mentions.ts';
import { clockLike, dateLike, durationLike, numberLike } from './rewrite.ts';

/** A number in the words that does not agree with the value. */
export interface Disagreement {
  /** Place in the words: of the whole mention, and of what the mend replaces. */
  readonly start: number; readonly end: number;
  readonly editStart: number; readonly editEnd: number;
  readonly newText: string;
  readonly kind: 'value' | 'sign-lost' | 'half-width' | 'no-half-width';
}

export interface ShownCheck {
  /** `holds`, `mismatch`, or `no-number`: nothing in the words fits the value's type. */
  readonly state: 'holds' | 'mismatch' | 'no-number';
  readonly disagreements: readonly Disagreement[];
  readonly approximate: boolean;
  /** The mention that is the claimed number (the first of them for a range). */
  readonly claimed: AnyMention | null;
  /** True when the claimed number stands without a unit that it needs. */
  readonly unitMissing: boolean;
}

const none: ShownCheck = { state: 'no-number', disagreements: [], approximate: false, claimed: null, unitMissing: false };

function outcome(claimed: AnyMention, used: readonly AnyMention[], disagreements: readonly Disagreement[], unitMissing = false): ShownCheck {
  return { state: disagreements.length === 0 ? 'holds' : 'mismatch', disagreements, approximate: used.some((each) => each.approximate), claimed, unitMissing };
}

/** Compares the words with a value. Values that are words or names are compared by checkClaim. */
export function checkShown(words: string, mentions: readonly AnyMention[], value: FormulaValue, zone: Zone): ShownCheck {
  switch (value.type) {
    case 'number': return isTimeUnit(value.unit) ? checkTime(mentions, value, zone) : checkNumber(mentions, value);
    case 'duration': return checkTime(mentions, durationNumber(value), zone);
    case 'instant': return checkInstant(words, mentions, value.instant, halfWidthOf(value.interval), zone);
    case 'event': return checkInstant(words, mentions, value.instant, null, zone);
    case 'window': return checkWindow(mentions, value.from, value.to, zone);
    case 'series': return checkSeries(mentions, value.points.map((point) => point.value), value.unit);
    default: return none;
  }
}

const isNumber = (mention: AnyMention): mention is NumberMention => mention.kind === 'number';

interface Fitting { readonly mention: NumberMention; readonly unit: Unit }

/** The numbers that fit; where only bare numbers are there, the first of them, taken in the value's own unit. */
function fittingNumbers(mentions: readonly AnyMention[], unit: Unit): { fitting: Fitting[]; unitMissing: boolean } {
  const numbers = mentions.filter(isNumber);
  const withUnit = numbers.flatMap((mention): Fitting[] => {
    const shown = fittingUnit(mention.unit, unit);
    return shown ? [{ mention, unit: shown }] : [];
  });
  const digits = withUnit.filter(({ mention }) => mention.unit !== null || mention.written === 'digits');
  if (digits.length > 0) return { fitting: digits, unitMissing: false };
  if (withUnit.length > 0) return { fitting: withUnit.slice(0, 1), unitMissing: false };
  const bare = numbers.filter((mention) => mention.unit === null && (mention.nextWord === '' || claimWords(mention.language).links.has(mention.nextWord)));
  const first = bare.find((mention) => mention.written === 'digits');
  if (!first) return { fitting: [], unitMissing: false };
  const following = first.joinedToNext ? bare[bare.indexOf(first) + 1] : undefined;
  return { fitting: [first, ...(following ? [following] : [])].map((mention) => ({ mention, unit })), unitMissing: true };
}

function wrongValue(mention: NumberMention, actual: number): Disagreement {
  return { start: mention.start, end: mention.end, editStart: mention.valueStart, editEnd: mention.valueEnd, newText: numberLike(mention, actual),
    kind: signLost(mention, actual) ? 'sign-lost' : 'value' };
}

function checkNumber(mentions: readonly AnyMention[], value: NumberValue): ShownCheck {
  const { fitting, unitMissing } = fittingNumbers(mentions, value.unit);
  const claimed = fitting[0];
  if (!claimed) return none;
  const disagreements = fitting.flatMap(({ mention, unit }, index) => {
    const actual = inUnit(value, unit);
    // A conversion beside the claimed number may start from the number as shown.
    const shownFirst = index > 0 ? convert(claimed.mention.value, claimed.unit, unit) : actual.value;
    const converted = index > 0 && claimed.unit.symbol !== unit.symbol
      && Math.abs(mention.value - shownFirst) <= tolerance(mention.decimals, shownFirst, mention.approximate) && onBoundSide(mention.value, shownFirst, mention.bound);
    const found: Disagreement[] = converted || holdsNumber(mention.value, mention.decimals, actual.value, mention) ? [] : [wrongValue(mention, actual.value)];
    return [...found, ...checkHalfWidth(mention, actual.halfWidth)];
  });
  return outcome(claimed.mention, fitting.map(({ mention }) => mention), disagreements, unitMissing);
}

function checkHalfWidth(mention: NumberMention, actual: number | null): Disagreement[] {
  const shown = mention.halfWidth;
  if (!shown) return [];
  const place = { start: mention.start, end: mention.end, editStart: shown.start, editEnd: shown.end };
  if (actual === null) return [{ ...place, newText: '', kind: 'no-half-width' }];
  if (Math.abs(shown.value - actual) <= tolerance(shown.decimals, actual, false)) return [];
  const like = { ...mention, decimals: shown.decimals, sign: '', grouping: '', written: 'digits' as const };
  return [{ ...place, newText: numberLike(like, actual), kind: 'half-width' }];
}

/** A length of time: numbers with a unit of time and durations of several parts. */
function checkTime(mentions: readonly AnyMention[], value: NumberValue, zone: Zone): ShownCheck {
  const { value: hours, halfWidth: half } = inUnit(value, parseUnit('h') ?? value.unit);
  const fits = mentions.filter((mention) => mention.kind === 'duration' || (isNumber(mention) && mention.unit !== null && fittingUnit(mention.unit, value.unit) !== null));
  if (fits.length === 0) {
    const clock = mentions.find((mention): mention is ClockMention => mention.kind === 'clock' && mention.style === 'twenty-four' && mention.date === null);
    return clock && zone ? none : checkNumber(mentions, value);
  }
  const disagreements = fits.flatMap((mention): Disagreement[] => {
    if (mention.kind === 'number') {
      const unit = fittingUnit(mention.unit, value.unit) ?? value.unit;
      const actual = inUnit(value, unit);
      return [...(holdsNumber(mention.value, mention.decimals, actual.value, mention) ? [] : [wrongValue(mention, actual.value)]), ...checkHalfWidth(mention, actual.halfWidth)];
    }
    return mention.kind === 'duration' ? checkDuration(mention, hours * hour, half === null ? null : half * hour) : [];
  });
  return outcome(fits[0]!, fits, disagreements);
}

function checkDuration(mention: DurationMention, actual: Duration, half: Duration | null): Disagreement[] {
  const allowed = Math.max(mention.step / 2 + 1e-9 * Math.abs(actual), mention.approximate ? 0.05 * Math.abs(actual) : 0);
  const holds = Math.abs(mention.duration - actual) <= allowed && onBoundSide(mention.duration, actual, mention.bound);
  const wrong: Disagreement = { start: mention.start, end: mention.end, editStart: mention.start, editEnd: mention.valueEnd, newText: durationLike(mention, actual), kind: 'value' };
  return [...(holds ? [] : [wrong]), ...checkTimeHalfWidth(mention, half)];
}

/** The `±` of a time against half its interval, to half of the last unit shown. */
function checkTimeHalfWidth(mention: ClockMention | DurationMention, actual: Duration | null): Disagreement[] {
  const shown = mention.halfWidth;
  if (!shown) return [];
  const place = { start: mention.start, end: mention.end, editStart: shown.start, editEnd: shown.end };
  if (actual === null) return [{ ...place, newText: '', kind: 'no-half-width' }];
  if (Math.abs(shown.duration - actual) <= shown.step / 2 + 1e-9 * actual) return [];
  return [{ ...place, newText: durationLike(shown, actual), kind: 'half-width' }];
}

function checkInstant(words: string, mentions: readonly AnyMention[], instant: Instant, half: Duration | null, zone: Zone): ShownCheck {
  const fits = mentions.filter((mention): mention is ClockMention | DateMention => mention.kind === 'clock' || mention.kind === 'date');
  const claimed = fits[0];
  if (!claimed) return none;
  const disagreements = fits.flatMap((mention): Disagreement[] => {
    if (mention.kind === 'date') {
      return holdsDate(mention, instant, zone) ? [] : [{ start: mention.start, end: mention.end, editStart: mention.start, editEnd: mention.end,
        newText: dateLike(mention, words, instant, zone), kind: 'value' }];
    }
    return [...(holdsClock(mention, instant, zone) ? [] : [wrongClock(mention, instant, zone)]), ...checkTimeHalfWidth(mention, half)];
  });
  return outcome(fits.find((each) => each.kind === 'clock') ?? claimed, fits, disagreements);
}

function wrongClock(mention: ClockMention, instant: Instant, zone: Zone): Disagreement {
  return { start: mention.start, end: mention.end, editStart: mention.valueStart, editEnd: mention.valueEnd, newText: clockLike(mention, instant, zone), kind: 'value' };
}

/** A window is claimed by its two ends, in order. */
function checkWindow(mentions: readonly AnyMention[], from: Instant, to: Instant, zone: Zone): ShownCheck {
  const clocks = mentions.filter((mention): mention is ClockMention => mention.kind === 'clock');
  const [first, second] = clocks;
  if (!first || !second) return none;
  const disagreements = clocks.flatMap((clock, index): Disagreement[] => {
    const instant = index % 2 === 0 ? from : to;
    return holdsClock(clock, instant, zone) ? [] : [wrongClock(clock, instant, zone)];
  });
  return outcome(first, clocks, disagreements);
}

/** A series is claimed by a range (its least and greatest), by one number all share, or by all its values in order. */
function checkSeries(mentions: readonly AnyMention[], values: readonly number[], unit: Unit): ShownCheck {
  if (values.length === 0) return none;
  const listed = mentions.filter(isNumber).flatMap((mention): Fitting[] => {
    const shown = fittingUnit(mention.unit ?? mention.unitInList, unit);
    return shown ? [{ mention, unit: shown }] : [];
  });
  const hasRange = listed.some(({ mention }) => mention.joinedToNext);
  if (!hasRange && listed.length === values.length && values.length > 1) {
    return outcome(listed[0]!.mention, listed.map(({ mention }) => mention), listed.flatMap(({ mention, unit: shown }, index) => {
      const actual = convert(values[index]!, unit, shown);
      return holdsNumber(mention.value, mention.decimals, actual, mention) ? [] : [wrongValue(mention, actual)];
    }));
  }
  const { fitting, unitMissing } = fittingNumbers(mentions, unit);
  const claimed = fitting[0];
  if (!claimed) return none;
  const least = Math.min(...values);
  const greatest = Math.max(...values);
  const disagreements: Disagreement[] = [];
  for (let index = 0; index < fitting.length; index += 1) {
    const { mention, unit: shown } = fitting[index]!;
    const next = fitting[index + 1];
    if (mention.joinedToNext && next) {
      const swapped = mention.value > convert(next.mention.value, next.unit, shown);
      const ends = swapped ? [greatest, least] : [least, greatest];
      [{ mention, unit: shown }, next].forEach((each, side) => {
        const actual = convert(ends[side]!, unit, each.unit);
        if (!holdsNumber(each.mention.value, each.mention.decimals, actual, each.mention)) disagreements.push(wrongValue(each.mention, actual));
      });
      index += 1;
    } else {
      const ends = [least, greatest].map((each) => convert(each, unit, shown));
      if (!ends.every((actual) => holdsNumber(mention.value, mention.decimals, actual, mention))) {
        const low = numberLike(mention, ends[0]!);
        const high = numberLike(mention, ends[1]!);
        disagreements.push({ start: mention.start, end: mention.end, editStart: mention.valueStart, editEnd: mention.valueEnd,
          newText: low === high ? low : claimWords(mention.language).span(low, high), kind: 'value' });
      }
    }
  }
  return outcome(claimed.mention, fitting.map(({ mention }) => mention), disagreements, unitMissing);
}

