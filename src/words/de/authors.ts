// The author's own words inside German sentences: always quoted, never bent.
import { isDate } from './moments.ts';

/** One line without a mark at its end. */
const line = (text: string): string => text.trim().replace(/\s+/g, ' ');

/** Quotes inside quotes become single ones. */
export const inner = (text: string): string => text.replace(/[„“”]([^„“”]*)[“”]/g, '‚$1‘').replace(/"([^"]*)"/g, '‚$1‘');

/** `„optische Sonde“`: a phrase of the plan, without the full stop that it may end with. */
export const quoted = (text: string): string => `„${inner(line(text).replace(/(?<!\b\p{L})[.;]+$/u, ''))}“`;

/** A whole sentence of the plan, with an end mark of its own or one after the quotes. */
export function quotedSentence(text: string): string {
  const own = inner(line(text));
  return /[.!?…]$/.test(own) ? `„${own}“` : `„${own}“.`;
}

/** A date in words as it is, any other text quoted. */
export const quotedUnlessDate = (text: string): string => (isDate(text) ? text : quoted(text));

/** ` (Bemerkung: „Uhr falsch gelesen“)`, or nothing. */
export const remarked = (remark: string | null): string => (remark === null || remark.trim() === '' ? '' : ` (Bemerkung: ${quoted(remark)})`);
