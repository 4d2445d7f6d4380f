// Moments in German: `18:00 Uhr`, in a run of more than a day `1. September um 18:00 Uhr`, and the prepositions that they take.
import { say, type Pieces, type Slot } from '../pieces.ts';
import { listedText } from './grammar.ts';

const dated = /^(\d{1,2}\. \p{Lu}.*?) um (\S+) Uhr$/u;

/** The text that a slot begins with; a computed value is read by its `text`. */
function shown(slot: Slot<unknown>): string {
  if (Array.isArray(slot)) return shown((slot as Pieces<unknown>)[0] ?? '');
  return typeof slot === 'object' && slot !== null && 'text' in slot ? String(slot.text) : String(slot);
}

const isDated = (moment: Slot<unknown>): boolean => /^\d{1,2}\. /.test(shown(moment));
const bare = (moment: string): string => moment.replace(/ Uhr$/, '');
/** `1. September, 18:00 Uhr`. */
const short = (moment: string): string => moment.replace(dated, '$1, $2 Uhr');

/** `um 18:00 Uhr`, `am 1. September um 18:00 Uhr`. */
export function at<V>(moment: Slot<V>): Pieces<V> {
  return say`${isDated(moment) ? 'am' : 'um'} ${moment}`;
}

export const atText = (moment: string): string => `${isDated(moment) ? 'am' : 'um'} ${moment}`;

/** `um 21:00, 22:00 und 23:00 Uhr`. */
export function atAll(moments: readonly string[]): string {
  return moments.some(isDated) ? listedText(moments.map(atText)) : `um ${listedText(moments.map(bare))} Uhr`;
}

/** `bis 10:00 Uhr`, `bis zum 15. März, 10:00 Uhr`. */
export const until = (moment: string): string => (isDated(moment) ? `bis zum ${short(moment)}` : `bis ${moment}`);

/** `von 20:00 bis 23:00 Uhr`, `am 14. März 2026 von 20:00 bis 23:00 Uhr`, `vom 14. März, 20:00 Uhr, bis zum 15. März, 10:00 Uhr`. */
export function fromTo(from: string, to: string): string {
  const start = dated.exec(from);
  if (!start) return `von ${bare(from)} ${until(to)}`;
  return isDated(to) ? `vom ${short(from)}, ${until(to)}` : `am ${start[1]!} von ${start[2]!} bis ${to}`;
}

/** The same without prepositions, for brackets: `20:00 bis 23:00 Uhr`. */
export function span(from: string, to: string): string {
  return isDated(from) ? `${short(from)}, bis ${short(to)}` : `${bare(from)} bis ${short(to)}`;
}

/** True for a date in words: `14. März 2026`. */
export const isDate = (text: string): boolean => /^\d{1,2}\. \p{Lu}\p{Ll}+(?: \d{4})?$/u.test(text);
