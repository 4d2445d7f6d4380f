// Rounding and printing. Values are computed unrounded and rounded once, here, on the way to a reader.
// Ties go away from zero, on the decimal digits that the number prints with (ISO 80000-1, Annex B, rule B).
import type { NumberValue } from './types.ts';
import { expandedUncertainty } from './value.ts';

/** Shortest decimal digits that give the number back: 1.005 is digits `1005`, exponent −3. */
function decimalDigits(size: number): { digits: string; exponent: number } {
  const [mantissa = '0', power = '0'] = size.toString().split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  return { digits: whole + fraction, exponent: Number(power) - fraction.length };
}

/** Digits of |value| at `decimals` places, half away from zero, as a whole number's digits. */
function roundedDigits(size: number, decimals: number): string {
  const { digits, exponent } = decimalDigits(size);
  const drop = -exponent - decimals;
  if (drop <= 0) return (digits + '0'.repeat(-drop)).replace(/^0+(?=\d)/u, '');
  if (drop > digits.length) return '0';
  const kept = digits.slice(0, digits.length - drop) || '0';
  const up = digits.charCodeAt(digits.length - drop) >= 53; // '5'
  return (up ? (BigInt(kept) + 1n).toString() : kept).replace(/^0+(?=\d)/u, '');
}

/**
 * Rounds to `decimals` digits after the decimal mark (negative: to tens, hundreds). Half goes away from zero, judged on the
 * shortest decimal form that gives the number back, which is what a person sees: 1.005 to 2 decimals is 1.01 though its
 * binary value lies a hair below. Rule: ISO 80000-1, Annex B, rule B. Zero has no sign. A value that is not finite stays.
 */
export function roundTo(value: number, decimals: number): number {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e21) return value;
  const digits = roundedDigits(Math.abs(value), decimals);
  const rounded = Number(`${digits}e${-decimals}`);
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

/**
 * The rounded value (rule of `roundTo`) with exactly `decimals` digits after the decimal mark; negative `decimals` count as
 * 0. The sign is a hyphen-minus, as it is typed in a note; zero has none. A value that is not finite gives `?`.
 */
export function formatNumber(value: number, decimals: number, decimalMark: '.' | ',' = '.'): string {
  if (!Number.isFinite(value)) return '?';
  const places = Math.min(Math.max(Math.trunc(decimals), 0), 15);
  if (Math.abs(value) >= 1e21) return String(value);
  const digits = roundedDigits(Math.abs(value), places).padStart(places + 1, '0');
  const text = places === 0 ? digits : `${digits.slice(0, -places)}${decimalMark}${digits.slice(-places)}`;
  return value < 0 && /[1-9]/u.test(digits) ? `-${text}` : text;
}

/** The text with the minus of print (U+2212) at its front, where it begins with the hyphen-minus of `formatNumber`. */
export function printedMinus(text: string): string {
  return text.replace(/^-/u, '−');
}

/** Never more decimals than this, whatever the uncertainty says. */
const mostDecimals = 6;

/** The decimals that a number itself has; what binary arithmetic adds behind the twelfth digit does not count. */
function ownDecimals(size: number): number {
  return Math.max(0, -decimalDigits(Number(size.toPrecision(12))).exponent);
}

/** Decimals that show two significant digits of a size above 0; below 0 for tens. */
export const secondDigit = (size: number): number => 1 - Math.floor(Math.log10(size) + 1e-9);

/**
 * Decimals of a change per hour between two readings: those of the readings; beyond them no zeros at the end, and no more than the
 * smallest change that the readings can show over these hours, or a second significant digit, asks for. Of a value with a
 * half-width, no more than two significant digits of it ask for (GUM 7.2.6).
 * @param decimals of the readings
 * @param hours between them, above 0
 */
export function rateDecimals(rate: number, decimals: number, hours: number, halfWidth: number | null): number {
  const size = Math.abs(rate);
  const smallest = Math.max(0, Math.ceil(decimals + Math.log10(hours) - 1e-9));
  const finer = size > 0 && Number.isFinite(size) ? Math.min(ownDecimals(size), Math.max(smallest, secondDigit(size))) : 0;
  const wanted = Math.min(Math.max(decimals, finer), mostDecimals);
  return halfWidth !== null && halfWidth > 0 ? Math.min(wanted, decimalsFor(rate, halfWidth)) : wanted;
}

/**
 * How many decimals to print. With a half-width: so that it shows two significant digits (GUM 7.2.6), which the value then
 * matches. Without one (null or 0): three significant digits, one decimal from 100 on, and never more digits than the
 * number itself has.
 */
export function decimalsFor(value: number, halfWidth: number | null): number {
  if (halfWidth !== null && halfWidth > 0 && Number.isFinite(halfWidth)) {
    const decimals = 1 - Math.floor(Math.log10(halfWidth));
    const afterRounding = roundTo(halfWidth, decimals);
    const places = afterRounding > 0 ? 1 - Math.floor(Math.log10(afterRounding) + 1e-12) : decimals;
    return Math.min(Math.max(places, 0), mostDecimals);
  }
  const size = Math.abs(value);
  if (!(size > 0) || !Number.isFinite(size)) return 0;
  const own = ownDecimals(size);
  const wanted = size >= 10_000 ? 0 : size >= 100 ? 1 : Math.min(2 - Math.floor(Math.log10(size)), mostDecimals);
  return Math.min(own, Math.max(wanted, 0));
}

export interface FormatOptions {
  /** Digits after the decimal mark; otherwise `decimalsFor` decides. */
  readonly decimals?: number;
  readonly decimalMark?: '.' | ',';
  /** Adds `± ` and the 95 % half-width where it is known and not 0. */
  readonly uncertainty?: boolean;
  /** false leaves the unit out. */
  readonly withUnit?: boolean;
}

/** `8.26 mg/L`, `76.1 ± 3.0 %`, `24.9 °C`, `82/min`, `7.2` for a pH. */
export function formatValue(value: NumberValue, options: FormatOptions = {}): string {
  const halfWidth = expandedUncertainty(value);
  const decimals = options.decimals ?? decimalsFor(value.value, halfWidth);
  let text = formatNumber(value.value, decimals, options.decimalMark);
  if (options.uncertainty && halfWidth !== null && halfWidth > 0) text += ` ± ${formatNumber(halfWidth, decimals, options.decimalMark)}`;
  const { print } = value.unit;
  if (options.withUnit === false || print === '') return text;
  return print.startsWith('/') ? text + print : `${text} ${print}`;
}
