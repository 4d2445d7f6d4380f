// Small German numbers written as words: `zwei`, `eine halbe`, `anderthalb`, `zweieinhalb`, `eine Viertel|stunde`, `zweimal`.
import type { NumberWord } from '../numberWords.ts';

const units = ['null', 'eins', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn', 'elf', 'zwölf', 'dreizehn', 'vierzehn', 'fünfzehn', 'sechzehn',
  'siebzehn', 'achtzehn', 'neunzehn'];
const tens: Readonly<Record<string, number>> = { zwanzig: 20, dreißig: 30, vierzig: 40, fünfzig: 50, sechzig: 60, siebzig: 70, achtzig: 80, neunzig: 90 };
const ones = ['ein', ...units.slice(2, 10)];
const article = 'ein(?:e[mnrs]?)?';

const pattern = new RegExp(
  `(?:(?<rest>${ones.join('|')})und)?(?<tens>${Object.keys(tens).join('|')})`
  + `|(?<half>(?:(?<halves>${ones.join('|')})einhalb|anderthalb)(?:e[mnrs]?)?)`
  + '|(?<three>(?:drei ?viertel))(?=\\s?stunde|\\s|$)'
  + `|(?:(?:${article}|der|die)\\s+)?(?<quarter>viertel)(?=\\s?stunde|\\s|$)`
  + `|(?:(?:${article}|der|die)\\s+)?(?<a>halbe[mnrs]?|hälfte)`
  + `|(?<times>(?:${ones.join('|')}|zehn|elf|zwölf)mal)|(?<dozen>(?:${article}\\s+)?dutzend)`
  + `|(?<unit>${[...units].reverse().join('|')})|(?<article>${article})(?=\\s+(?:stunde|minute|tag|sekunde|woche)(?:e?n)?(?!\\p{L}))`,
  'iyu');

/** The number word that starts at `offset`, or null. `eine Viertelstunde` leaves `stunde` to be read as the unit. */
export function numberWordAt(text: string, offset: number): NumberWord | null {
  pattern.lastIndex = offset;
  const match = pattern.exec(text);
  if (!match?.groups) return null;
  const { rest, tens: ten, half, halves, three, quarter, a, times, dozen, unit, article: one } = match.groups;
  const next = text[offset + match[0].length];
  if (next !== undefined && /[\p{L}\p{N}]/u.test(next) && !three && !quarter) return null;
  const found = (value: number, decimals: number): NumberWord => ({ length: match[0].length, value, decimals, article: one !== undefined });
  const oneOf = (word: string): number => ones.indexOf(word.toLowerCase()) + 1;
  if (ten) return found(tens[ten.toLowerCase()]! + (rest ? oneOf(rest) : 0), 0);
  if (half) return found((halves ? oneOf(halves) : 1) + 0.5, 1);
  if (three) return found(0.75, 2);
  if (quarter) return found(0.25, 2);
  if (a) return found(0.5, 1);
  if (times) {
    const word = times.slice(0, -3).toLowerCase();
    return found(oneOf(word) || units.indexOf(word), 0);
  }
  if (dozen) return found(12, 0);
  return found(unit ? units.indexOf(unit.toLowerCase()) : 1, 0);
}

/** A whole number from two to twelve as a word; null for others: one has a gender. */
export function wordOf(value: number): string | null {
  return Number.isInteger(value) && value >= 2 && value <= 12 ? units[value]! : null;
}
