// Writes a new number in the style of the one that stands there: decimals, marks, sign, number words, clock style.
import { formatNumber, roundTo } from '../quantities/format.ts';
import { formatDuration } from '../time/text.ts';
import { wallTimeOf } from '../time/zone.ts';
import type { Duration, Instant, Zone } from '../time/instant.ts';
import { claimWords } from '../words/claimWords.ts';
import type { ClockMention, DateMention, NumberMention } from './mentions.ts';

const two = (value: number): string => String(value).padStart(2, '0');

/** `actual` (in the mention's unit) as the mention's own digits would show it. */
export function numberLike(mention: NumberMention, actual: number): string {
  const decimals = Math.min(15, Math.max(0, mention.decimals));
  const rounded = roundTo(Math.abs(actual), decimals);
  const sign = rounded !== 0 && actual < 0 ? (mention.sign === '-' ? '-' : '−') : mention.sign === '+' ? '+' : '';
  if (mention.written === 'words') {
    const word = sign === '' && mention.decimals === 0 ? claimWords(mention.language).wordOf(rounded) : null;
    if (word) return word;
  }
  return sign + grouped(formatNumber(rounded, decimals, mention.mark), mention.grouping, mention.mark);
}

function grouped(digits: string, grouping: string, mark: string): string {
  if (grouping === '') return digits;
  const [whole = '', rest] = digits.split(mark);
  return whole.replace(/\B(?=(?:\d{3})+$)/g, grouping) + (rest === undefined ? '' : mark + rest);
}

export function clockLike(mention: ClockMention, instant: Instant, zone: Zone): string {
  const shown = mention.second === null ? Math.round(instant / 60_000) * 60_000 : Math.round(instant / 1000) * 1000;
  const wall = wallTimeOf(shown, zone);
  const seconds = mention.second === null ? '' : `:${two(wall.second)}`;
  if (mention.style === 'twelve' || mention.style === 'twelve-hours-only') {
    const hour = wall.hour % 12 === 0 ? 12 : wall.hour % 12;
    return `${hour}:${two(wall.minute)}${seconds} ${wall.hour < 12 ? 'am' : 'pm'}`;
  }
  return `${two(wall.hour)}:${two(wall.minute)}${seconds}`;
}

export function dateLike(mention: DateMention, words: string, instant: Instant, zone: Zone): string {
  const { year, month, day } = wallTimeOf(instant, zone);
  if (/^\d{4}-/.test(words.slice(mention.start))) return `${year}-${two(month)}-${two(day)}`;
  const { monthNames, dateLike: say } = claimWords(mention.language);
  return say(day, monthNames[month - 1]!, mention.year === null ? null : year);
}

export function durationLike(mention: { readonly step: Duration }, duration: Duration): string {
  const step = Math.max(1000, mention.step);
  return formatDuration(Math.round(duration / step) * step);
}
