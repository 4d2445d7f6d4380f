// Numbers, times and dates as they are said aloud in English: 5.83 is "five point eight three".

const small = ['nought', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'];
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];
const ordinals = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth', 'eleventh', 'twelfth', 'thirteenth', 'fourteenth', 'fifteenth', 'sixteenth', 'seventeenth', 'eighteenth', 'nineteenth'];

/** A whole number from 0 to below a thousand million, in words; beyond that its digits. */
export function spokenInteger(value: number): string {
  if (!Number.isInteger(value) || value < 0 || value >= 1e9) return String(value);
  if (value < 20) return value === 0 ? 'zero' : small[value]!;
  if (value < 100) return tens[Math.floor(value / 10)]! + (value % 10 === 0 ? '' : `-${small[value % 10]}`);
  if (value < 1000) return `${small[Math.floor(value / 100)]} hundred${value % 100 === 0 ? '' : ` and ${spokenInteger(value % 100)}`}`;
  const [size, word] = value < 1e6 ? [1000, 'thousand'] : [1e6, 'million'];
  const rest = value % size;
  return `${spokenInteger(Math.floor(value / size))} ${word}${rest === 0 ? '' : `${rest < 100 ? ' and' : ''} ${spokenInteger(rest)}`}`;
}

/** A number as printed (`-0.24`, `5,83`): the digits after the mark one by one. */
function spokenNumber(printed: string): string {
  const [, sign, whole = '0', digits] = /^([-−+]?)(\d+)(?:[.,](\d+))?$/.exec(printed) ?? [];
  if (digits === undefined && sign === undefined) return printed;
  const said = whole.length > 9 ? [...whole].map((digit) => spokenDigit(digit)).join(' ') : spokenInteger(Number(whole));
  const start = sign === '-' || sign === '−' ? 'minus ' : sign === '+' ? 'plus ' : '';
  return `${start}${said}${digits === undefined ? '' : ` point ${[...digits].map(spokenDigit).join(' ')}`}`;
}

const spokenDigit = (digit: string): string => (digit === '0' ? 'zero' : small[Number(digit)]!);

/** A clock time on the twelve-hour dial, with the part of the day. */
export function spokenClock(hour: number, minute: number): string {
  if (minute === 0 && hour === 0) return 'midnight';
  if (minute === 0 && hour === 12) return 'noon';
  const said = minute > 30 ? (hour + 1) % 24 : hour;
  const name = said === 0 ? 'midnight' : said === 12 ? 'noon' : small[said % 12 === 0 ? 12 : said % 12]!;
  const part = said === 0 || said === 12 ? '' : hour < 5 || hour >= 22 ? ' at night' : hour < 12 ? ' in the morning' : hour < 18 ? ' in the afternoon' : ' in the evening';
  const minutes = (count: number): string => (count % 5 === 0 ? spokenInteger(count) : `${spokenInteger(count)} minute${count === 1 ? '' : 's'}`);
  if (minute === 0) return `${name} o'clock${part}`;
  if (minute === 15) return `quarter past ${name}${part}`;
  if (minute === 30) return `half past ${name}${part}`;
  if (minute === 45) return `quarter to ${name}${part}`;
  return minute < 30 ? `${minutes(minute)} past ${name}${part}` : `${minutes(60 - minute)} to ${name}${part}`;
}

export function spokenDate(year: number, month: number, day: number): string {
  const ordinal = day < 20 ? ordinals[day]! : day === 20 ? 'twentieth' : day === 30 ? 'thirtieth' : `${day < 30 ? 'twenty' : 'thirty'}-${ordinals[day % 10]}`;
  return `the ${ordinal} of ${months[month - 1]} ${spokenYear(year)}`;
}

function spokenYear(year: number): string {
  if (year < 1100 || year > 2099 || (year >= 2000 && year < 2010)) return spokenInteger(year);
  const rest = year % 100;
  return `${spokenInteger(Math.floor(year / 100))} ${rest === 0 ? 'hundred' : rest < 10 ? `oh ${small[rest]}` : spokenInteger(rest)}`;
}

export const speech = {
  integer: spokenInteger, number: spokenNumber, clock: spokenClock, date: spokenDate,
  /** What stands behind a clock time and is said with it. */
  afterClock: null as RegExp | null,
  /** A date in words, whose number is an ordinal; its day, month and year. */
  wordedDate: null as RegExp | null,
  dateInWords: (_day: number, _month: string, _year: number | null): string => '',
  /** Units that are said otherwise than by their parts: one of them, several. */
  special: {
    degC: ['degree Celsius', 'degrees Celsius'], degF: ['degree Fahrenheit', 'degrees Fahrenheit'], K: ['degree', 'degrees'], pp: ['percentage point', 'percentage points'],
    dKH: ['degree of carbonate hardness', 'degrees of carbonate hardness'], dGH: ['degree of general hardness', 'degrees of general hardness'], S: ['siemens', 'siemens'], '%': ['per cent', 'per cent'],
    'g/kg': ['gram per kilogram', 'grams per kilogram'], pH: ['', ''], '1': ['', ''],
  } as Readonly<Record<string, readonly [string, string]>>,
  /** The form of a unit's words for one or several. */
  unit: (words: readonly string[], one: boolean): string => (one ? words[0]! : words[1] ?? words[0]!),
  power: { square: (unit: string): string => `square ${unit}`, cubic: (unit: string): string => `cubic ${unit}` },
  /** One of a unit, where the number is said with it. */
  oneOf: (number: string, _unit: string): string => number,
  per: ' per ',
  basis: { N: ' as nitrogen', P: ' as phosphorus', CaCO3: ' as calcium carbonate' } as Readonly<Record<string, string>>,
  plusMinus: 'plus or minus ', about: 'about ', to: ' to ', atMost: 'at most', atLeast: 'at least',
};

export type Speech = typeof speech;
