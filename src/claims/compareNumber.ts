// Whether a number as shown agrees with a computed one: unit, rounding, `about`, `more than`, `±`.
import { unitOf } from '../quantities/concentration.ts';
import { isDimensionless } from '../quantities/dimension.ts';
import { conversionFactor, convert, convertible, differenceUnit } from '../quantities/units.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import type { NumberMention, Qualifier } from './mentions.ts';

/** True for units that prose leaves out: counts, pH, salinity, specific gravity. */
export function needsNoUnit(unit: Unit): boolean {
  return isDimensionless(unit.dimension) && (unit.kind === 'plain' || unit.kind === 'ph' || unit.kind === 'ph-difference' || unit.kind === 'salinity' || unit.kind === 'specific-gravity');
}

/**
 * The unit in which a shown number is compared, when it fits the value's dimension and kind; null when it does not fit.
 * `0.8 °C` fits a temperature difference, as prose writes it; `12 %` does not fit percentage points.
 */
export function fittingUnit(shown: Unit | null, value: Unit): Unit | null {
  if (shown === null) return needsNoUnit(value) ? value : null;
  const counted = unitOf(shown, value.substance);
  if (convertible(counted, value)) return counted;
  if (shown.kind === 'temperature' || shown.kind === 'ph') {
    const difference = differenceUnit(shown);
    if (convertible(difference, value)) return difference;
  }
  return null;
}

/** Half a unit of the last decimal shown, plus 1e-9 of the value; 5 % of the value where the words say `about`. */
export function tolerance(decimals: number, actual: number, approximate: boolean): number {
  const rounding = 0.5 * 10 ** -decimals + 1e-9 * Math.abs(actual);
  return approximate ? Math.max(rounding, 0.05 * Math.abs(actual)) : rounding;
}

/** True when the number shown stands for the actual one, both in the unit shown. */
export function holdsNumber(shown: number, decimals: number, actual: number, qualifier: Qualifier): boolean {
  return onBoundSide(shown, actual, qualifier.bound) && Math.abs(shown - actual) <= tolerance(decimals, actual, qualifier.approximate);
}

/** `more than 3` also needs a value above 3; equality is taken within 1e-9 of the larger. */
export function onBoundSide(shown: number, actual: number, bound: Qualifier['bound']): boolean {
  const near = Math.abs(shown - actual) <= 1e-9 * Math.max(Math.abs(shown), Math.abs(actual));
  switch (bound) {
    case null: return true;
    case 'above': return actual > shown && !near;
    case 'below': return actual < shown && !near;
    case 'at-least': return actual >= shown || near;
    case 'at-most': return actual <= shown || near;
  }
}

/** Value and 95 % half-width in another unit; the half-width takes the factor only. */
export function inUnit(value: NumberValue, unit: Unit): { value: number; halfWidth: number | null } {
  const half = expandedUncertainty(value);
  return { value: convert(value.value, value.unit, unit), halfWidth: half === null ? null : half * conversionFactor(value.unit, unit) };
}

/** True when the words show the value without its minus: `fell 0.24` for −0.24. */
export function signLost(mention: NumberMention, actual: number): boolean {
  return actual < 0 && mention.sign === '' && holdsNumber(mention.value, mention.decimals, -actual, { approximate: mention.approximate, bound: null });
}

/** From this part of the value on, rounding changes what a number says: 0 for 0.27, or 1 × 10¹ for 5.83. */
const coarse = 0.2;

/** True when a number that is rightly rounded still says something else than the value, beyond what the value leaves open. */
export function isCoarse(mention: NumberMention, value: NumberValue): boolean {
  if (mention.approximate || mention.bound !== null || mention.written === 'words' || value.unit.kind === 'temperature') return false;
  const { value: actual, halfWidth } = inUnit(value, fittingUnit(mention.unit, value.unit) ?? value.unit);
  const away = Math.abs(mention.value - actual);
  return away > coarse * Math.abs(actual) && away > (halfWidth ?? 0);
}
