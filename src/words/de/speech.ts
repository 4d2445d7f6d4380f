// Numbers, times and dates as they are said aloud in German: 5,83 is "fünf Komma acht drei".
import type { Speech } from '../en/speech.ts';

const small = ['null', 'eins', 'zwei', 'drei', 'vier', 'fünf', 'sechs', 'sieben', 'acht', 'neun', 'zehn', 'elf', 'zwölf', 'dreizehn', 'vierzehn', 'fünfzehn', 'sechzehn', 'siebzehn', 'achtzehn', 'neunzehn'];
const tens = ['', '', 'zwanzig', 'dreißig', 'vierzig', 'fünfzig', 'sechzig', 'siebzig', 'achtzig', 'neunzig'];
const months = ['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni', 'Juli', 'August', 'September', 'Oktober', 'November', 'Dezember'];

/** In front of another word `eins` is `ein`: einundzwanzig, einhundert. */
const joined = (word: string): string => word.replace(/eins$/u, 'ein');

/** A whole number from 0 to below a thousand million, in words; beyond that its digits. */
export function integer(value: number): string {
  if (!Number.isInteger(value) || value < 0 || value >= 1e9) return String(value);
  if (value < 20) return small[value]!;
  if (value < 100) return `${value % 10 === 0 ? '' : `${joined(small[value % 10]!)}und`}${tens[Math.floor(value / 10)]!}`;
  const rest = (size: number): string => (value % size === 0 ? '' : integer(value % size));
  if (value < 1000) return `${joined(small[Math.floor(value / 100)]!)}hundert${rest(100)}`;
  if (value < 1e6) return `${joined(integer(Math.floor(value / 1000)))}tausend${rest(1000)}`;
  const millions = Math.floor(value / 1e6);
  return `${millions === 1 ? 'eine Million' : `${integer(millions)} Millionen`}${value % 1e6 === 0 ? '' : ` ${rest(1e6)}`}`;
}

/** A number as printed (`−0,24`): the digits after the comma one by one. */
function number(printed: string): string {
  const [, sign, whole = '0', digits] = /^([-−+]?)(\d+)(?:[.,](\d+))?$/u.exec(printed) ?? [];
  if (sign === undefined) return printed;
  const said = whole.length > 9 ? [...whole].map((digit) => small[Number(digit)]!).join(' ') : integer(Number(whole));
  const start = sign === '-' || sign === '−' ? 'minus ' : sign === '+' ? 'plus ' : '';
  return `${start}${said}${digits === undefined ? '' : ` Komma ${[...digits].map((digit) => small[Number(digit)]!).join(' ')}`}`;
}

/** `sieben Uhr dreißig`, `ein Uhr`, `Mitternacht`. */
function clock(hour: number, minute: number): string {
  if (hour === 0 && minute === 0) return 'Mitternacht';
  return `${joined(integer(hour))} Uhr${minute === 0 ? '' : ` ${integer(minute)}`}`;
}

/** `zwölften`, `ersten`, `dreißigsten`: as after `am` and `vom`. */
function ordinal(day: number): string {
  const odd: Readonly<Record<number, string>> = { 1: 'ersten', 3: 'dritten', 7: 'siebten', 8: 'achten' };
  return odd[day] ?? `${integer(day)}${day < 20 ? 'ten' : 'sten'}`;
}

const yearWords = (year: number): string => (year >= 1100 && year < 2000 ? `${integer(Math.floor(year / 100))}hundert${year % 100 === 0 ? '' : integer(year % 100)}` : integer(year));
const feminine = /(?:Stunde|Minute|Sekunde|Woche|Atmosphäre|Einheit|Stufe)$/u;
const noun = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

export const speech: Speech = {
  integer, number, clock,
  date: (year, month, day) => `${ordinal(day)} ${months[month - 1]} ${yearWords(year)}`,
  afterClock: /^ Uhr(?!\p{L})/u,
  wordedDate: new RegExp(`(?<!\\d)(\\d{1,2})\\. (${months.join('|')})(?: (\\d{4}))?(?!\\p{L}|\\d)`, 'gu'),
  dateInWords: (day, month, year) => `${ordinal(day)} ${month}${year === null ? '' : ` ${yearWords(year)}`}`,
  special: {
    degC: ['Grad Celsius', 'Grad Celsius'], degF: ['Grad Fahrenheit', 'Grad Fahrenheit'], K: ['Grad', 'Grad'], '%': ['Prozent', 'Prozent'], S: ['Siemens', 'Siemens'],
    dKH: ['Grad Karbonathärte', 'Grad Karbonathärte'], dGH: ['Grad Gesamthärte', 'Grad Gesamthärte'], 'g/kg': ['Gramm pro Kilogramm', 'Gramm pro Kilogramm'], pH: ['', ''], '1': ['', ''],
  },
  // The second form is a plural (`Stunden`, `Tage`) unless it only bends the first (`Metern`).
  unit: (words, one) => noun(one || words[1] === undefined || words[1] === `${words[0]!}n` && !words[0]!.endsWith('e') ? words[0]! : words[1]),
  power: { square: (unit) => `Quadrat${unit.toLowerCase()}`, cubic: (unit) => `Kubik${unit.toLowerCase()}` },
  oneOf: (_number, unit) => (feminine.test(unit) ? 'eine' : 'ein'),
  per: ' pro ',
  basis: { N: ' als Stickstoff', P: ' als Phosphor', CaCO3: ' als Calciumcarbonat' },
  plusMinus: 'plus oder minus ', about: 'etwa ', to: ' bis ', atMost: 'höchstens', atLeast: 'mindestens',
};
