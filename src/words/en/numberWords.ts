// Small English numbers written as words: `half an hour`, `two and a half`, `a quarter`, `twelve`.
import type { NumberWord } from '../numberWords.ts';

const units = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen',
  'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'];
const tens: Readonly<Record<string, number>> = { twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90 };

const small = units.join('|');
const pattern = new RegExp(
  `(?:(?<tens>${Object.keys(tens).join('|')})(?:[- ](?<rest>${units.slice(1, 10).join('|')}))?|(?<unit>${small}))(?<half>\\s+and\\s+a\\s+half)?`
  + `|(?<a>half|a\\s+half|a\\s+quarter|quarter|three[- ]quarters)(?:\\s+of)?(?:\\s+an?(?=\\s+\\p{L}))?|(?<times>once|twice|thrice)|(?<dozen>a\\s+dozen|dozen)|(?<article>an?)(?=\\s+(?:hour|minute|day|second)\\b)`,
  'iyu');

/** The number word that starts at `offset`, or null. `half` alone is 0.5; `half an hour` leaves `hour` to be read as the unit. */
export function numberWordAt(text: string, offset: number): NumberWord | null {
  pattern.lastIndex = offset;
  const match = pattern.exec(text);
  if (!match?.groups) return null;
  const next = text[offset + match[0].length];
  if (next !== undefined && /[\p{L}\p{N}]/u.test(next)) return null;
  const { tens: ten, rest, unit, half, a, times, dozen, article } = match.groups;
  const found = (value: number, decimals: number): NumberWord => ({ length: match[0].length, value, decimals, article: article !== undefined });
  if (ten) return found(tens[ten.toLowerCase()]! + (rest ? units.indexOf(rest.toLowerCase()) : 0) + (half ? 0.5 : 0), half ? 1 : 0);
  if (unit) {
    // `three quarters` is read by the branch for parts; here `three` alone.
    if (/^three$/i.test(unit) && /^three[- ]quarters/i.test(text.slice(offset))) {
      const quarters = /^three[- ]quarters(?:\s+of)?(?:\s+an?(?=\s+\p{L}))?/iu.exec(text.slice(offset))!;
      return { length: quarters[0].length, value: 0.75, decimals: 2, article: false };
    }
    return found(units.indexOf(unit.toLowerCase()) + (half ? 0.5 : 0), half ? 1 : 0);
  }
  if (a) return /quarter/i.test(a) ? found(0.25, 2) : found(0.5, 1);
  if (times) return found({ once: 1, twice: 2, thrice: 3 }[times.toLowerCase()]!, 0);
  if (dozen) return found(12, 0);
  return found(1, 0);
}

/** A whole number up to twelve as a word; null for others. */
export function wordOf(value: number): string | null {
  return Number.isInteger(value) && value >= 0 && value <= 12 ? units[value]! : null;
}
