// Numbers, times, dates and units as they are said aloud in English: 5.83 mg/L is "five point eight three milligrams per litre".
import { atoms } from '../quantities/atoms.ts';
import { matchPrintedUnit } from '../quantities/printedUnits.ts';

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
export function spokenNumber(printed: string): string {
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

const special: Readonly<Record<string, readonly [string, string]>> = {
  degC: ['degree Celsius', 'degrees Celsius'], degF: ['degree Fahrenheit', 'degrees Fahrenheit'], K: ['degree', 'degrees'], pp: ['percentage point', 'percentage points'],
  dKH: ['degree of carbonate hardness', 'degrees of carbonate hardness'], dGH: ['degree of general hardness', 'degrees of general hardness'], S: ['siemens', 'siemens'], '%': ['per cent', 'per cent'],
  'g/kg': ['gram per kilogram', 'grams per kilogram'], pH: ['', ''], '1': ['', ''],
};

/** A unit symbol in words: `mg/L/h` is "milligrams per litre per hour". Null where a part has no words. */
export function spokenUnit(symbol: string, one: boolean): string | null {
  const whole = special[symbol];
  if (whole) return whole[one ? 0 : 1];
  const basis = /-(N|P|CaCO3)$/.exec(symbol);
  const parts = (basis ? symbol.slice(0, -basis[0].length) : symbol).split('/');
  const said = parts.map((part, index) => {
    const [, name = part, power = ''] = /^(.*?)(2|3)?$/.exec(part) ?? [];
    const own = special[name];
    const words = own ?? (atoms.find((atom) => atom.symbol === name)?.words.filter((word) => /^[a-z -]+$/i.test(word)).slice(0, 2) as string[] | undefined);
    if (!words || words.length === 0) return null;
    return `${power === '2' ? 'square ' : power === '3' ? 'cubic ' : ''}${index > 0 || one ? words[0] : words[1] ?? words[0]}`;
  });
  if (said.some((each) => each === null)) return null;
  const as = basis ? { N: ' as nitrogen', P: ' as phosphorus', CaCO3: ' as calcium carbonate' }[basis[1]!] ?? '' : '';
  return said.filter((each) => each !== '').join(' per ') + as;
}

/** A sentence with its numbers, times, dates and units written as said. */
export function spokenText(text: string): string {
  const pattern = /(?<date>\b(\d{4})-(\d{2})-(\d{2})\b)|(?<clock>\b([01]?\d|2[0-3]):([0-5]\d)(?::[0-5]\d)?\b(?:\s*(am|pm)\b)?)|(?<number>(?<![\p{L}\d_.,-])[-−+]?\d+(?:[.,]\d+)?(?![\p{L}_]*\d))|(?<plusminus>±)|(?<about>~(?=\s?\d))/gu;
  let said = '';
  let at = 0;
  for (let match = pattern.exec(text); match; match = pattern.exec(text)) {
    if (match.index < at) continue;
    said += text.slice(at, match.index);
    at = match.index + match[0].length;
    const groups = match.groups!;
    if (groups['date']) said += spokenDate(Number(match[2]), Number(match[3]), Number(match[4]));
    else if (groups['clock']) {
      const half = match[8];
      const hour = Number(match[6]) % (half ? 12 : 24) + (half === 'pm' ? 12 : 0);
      said += spokenClock(hour, Number(match[7]));
    } else if (groups['plusminus']) said += 'plus or minus ';
    else if (groups['about']) said += 'about ';
    else {
      said += spokenNumber(match[0]);
      const range = /^\s?[–-]\s?(?=\d)/.exec(text.slice(at));
      if (range) { said += ' to '; at += range[0].length; pattern.lastIndex = at; continue; }
      const unit = matchPrintedUnit(text, at);
      const words = unit && /^[^\p{L}]*[\p{L}µ°%‰]/u.test(text.slice(at)) ? spokenUnit(unit.unit.symbol, /^[-−+]?1$/.test(match[0])) : null;
      if (unit && words !== null) { said += words === '' ? '' : ` ${words}`; at += unit.length; }
      else if (/^[\p{L}°%]/u.test(text.slice(at))) said += ' ';
    }
    pattern.lastIndex = at;
  }
  return (said + text.slice(at)).replace(/≤/g, 'at most').replace(/≥/g, 'at least').replace(/\s+/g, ' ').trim();
}
