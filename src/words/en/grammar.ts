// Small rules of English that the generated prose shares: lists, plurals, articles, numbers as words, capital letters.
import { asPieces, type Pieces, type Slot } from '../pieces.ts';

/** `a`, `a and b`, `a, b and c`. */
export function listed<V>(items: readonly Slot<V>[], word = 'and'): Pieces<V> {
  return items.flatMap((item, index) => {
    const before = index === 0 ? [] : [index === items.length - 1 ? ` ${word} ` : ', '];
    return [...before, ...asPieces(item)];
  });
}

/** The same for plain text. */
export function listedText(items: readonly string[], word = 'and'): string {
  return items.length <= 1 ? items.join('') : `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)!}`;
}

const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** Up to twelve as a word. */
export function numberWord(count: number): string {
  return Number.isInteger(count) && count >= 1 && count <= 12 ? words[count]! : String(count);
}

/** `one reading`, `two readings`, `17 readings`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${numberWord(count)} ${count === 1 ? one : many}`;
}

/** `once`, `twice`, `five times`. */
export function times(count: number): string {
  return count === 1 ? 'once' : count === 2 ? 'twice' : `${numberWord(count)} times`;
}

export function capital(text: string): string {
  const first = text.search(/\S/);
  if (first < 0 || /^pH\b/.test(text.slice(first))) return text;
  return text.slice(0, first) + text.charAt(first).toUpperCase() + text.slice(first + 1);
}

/** Capital letter at the start of a row of pieces. */
export function capitalPieces<V>(pieces: Pieces<V>): Pieces<V> {
  const [first, ...rest] = pieces;
  return typeof first === 'string' ? [capital(first), ...rest] : pieces;
}

/** `an optical probe`, `a thermistor`, `test strips`: an article where the words of the plan have none. */
export function withArticle(thing: string): string {
  const text = thing.trim();
  const head = /^(.*?)(?:\s+(?:of|with|from|in|on|for|by)\s|[,(;]|$)/.exec(text)?.[1] ?? text;
  if (text === '' || /^(?:an?|the|one|two|three|four|both|each|every|my|our|his|her|its|their|this|that|no|some)\s/i.test(text) || /^[\d"“']/.test(text)) return text;
  if (/^[A-Z]/.test(text) || (/s$/i.test(head) && !/(?:ss|us|is|lens)$/i.test(head))) return text;
  return `${/^(?:[aeio]|u(?!ni|s[eiu]|ti|r[ai]))/i.test(text) || /^(?:hour|hono)/i.test(text) ? 'an' : 'a'} ${text}`;
}

/** `the floating-mat tank`; a label that has its own article or is a proper name keeps it. */
export function theThing(label: string): string {
  return /^(?:the|an?|my|our)\s/i.test(label) || /^[A-Z][a-z]+$/.test(label) ? label : `the ${label}`;
}

/** Words of the plan inside a sentence: no full stop at the end. */
export function phrase(text: string): string {
  return text.trim().replace(/\s+/g, ' ').replace(/(?<!\b[A-Za-z])[.;]+$/, '');
}

/** A whole sentence of the plan: with a mark at its end. */
export function sentence(text: string): string {
  const trimmed = text.trim().replace(/\s+/g, ' ');
  return /[.!?]["”')]?$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** `14 March 2026`; with `year` false, `14 March`. */
export function dateWords(date: { readonly year: number; readonly month: number; readonly day: number }, year = true): string {
  return `${date.day} ${months[date.month - 1]}${year ? ` ${date.year}` : ''}`;
}

/** Text cut into its sentences. */
export function sentencesOf(text: string): string[] {
  return text.replace(/\s+/g, ' ').trim().split(/(?<=[^\s.][.!?][”"')]?)\s+(?=[\p{Lu}“"(])/u).filter((each) => each !== '');
}

/** A length as `formatDuration` writes it, after `every` or `in the`: `hour`, `minute`, `day`, `30 min`. */
export function lengthWords(length: string): string {
  const units: Readonly<Record<string, string>> = { '1 min': 'minute', '1 h': 'hour', '1 d': 'day', '24 h': 'day' };
  return units[length] ?? length;
}
