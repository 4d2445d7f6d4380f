// Units as notes and instruments write them: reading, converting, differences and rates, near misses.
// Two units convert within one dimension and one kind, or where both count one known substance (concentration.ts).
import type { Kind, Unit } from './types.ts';
import { atoms, commonUnits } from './atoms.ts';
import { concentrationFactor, unitOf } from './concentration.ts';
import { isTimeOnly, sameDimension } from './dimension.ts';
import { buildUnit, differenceAtom, parseTerms, termsOf } from './unitTerms.ts';
import { matchPrintedUnit } from './printedUnits.ts';
import { editDistance } from '../problems/nearest.ts';

export { matchPrintedUnit };

/** One line of the table of units, for completion, hover and the reference. */
export interface UnitEntry {
  readonly symbol: string;
  readonly unit: Unit;
  /** Words of prose that are read as this unit; empty for a composed unit. */
  readonly names: readonly string[];
  /** What it measures: `pressure`. */
  readonly of: string;
  readonly remark: string | null;
}

/**
 * Reads a unit: `mg/L`, `mg/l`, `µmol/L`, `mg·L-1`, `°C`, `mg/L-N`, `mg/L as N`, `%/h`, `degC/h` (a rate of a temperature
 * difference), `/min`, `millilitres per hour`. null for anything else, and for units that could mean two things (`gal`).
 */
export function parseUnit(text: string): Unit | null {
  return knownUnits.get(text) ?? readUnit(text);
}

function readUnit(text: string): Unit | null {
  if (text.length === 0 || text.length > 80) return null;
  const terms = parseTerms(text);
  if (terms) return buildUnit(terms);
  const printed = matchPrintedUnit(text, 0);
  return printed && text.slice(printed.length).trim() === '' ? printed.unit : null;
}

function entry(symbol: string): UnitEntry[] {
  const unit = readUnit(symbol);
  if (!unit) return [];
  const atom = atoms.find((each) => each.symbol === symbol);
  return [{ symbol, unit, names: atom?.words ?? [], of: atom?.of ?? ofComposed(unit), remark: atom?.remark ?? null }];
}

function ofComposed(unit: Unit): string {
  const { mass, length, time, amount, current, luminosity } = unit.dimension;
  const is = (m: number, l: number, t: number, a: number): boolean => mass === m && length === l && time === t && amount === a && current === 0 && luminosity === 0;
  const basis = { 'as-nitrogen': ' as nitrogen', 'as-phosphorus': ' as phosphorus', 'as-calcium-carbonate': ' as calcium carbonate' }[unit.kind as string] ?? '';
  if (unit.kind === 'alkalinity' || unit.kind === 'as-calcium-carbonate') return `alkalinity${basis}`;
  if (unit.kind === 'percentage' || unit.kind === 'percentage-points' || unit.kind === 'temperature-difference') return 'rate of change';
  if (is(1, -3, 0, 0) || is(0, -3, 0, 1)) return `concentration${basis}`;
  if (is(1, -3, -1, 0) || is(0, -3, -1, 1)) return `change of concentration${basis}`;
  if (is(-1, 0, 0, 1)) return 'content';
  if (current === 2) return 'conductivity';
  if (is(0, -2, -1, 1)) return 'photosynthetic light';
  if (is(1, 0, -3, 0)) return 'irradiance';
  if (is(0, 2, 0, 0)) return 'area';
  if (is(0, 3, 0, 0)) return 'volume';
  if (is(0, 3, -1, 0)) return 'flow';
  if (is(0, 0, -1, 0)) return 'frequency';
  return 'rate of change';
}

/** Every unit of the table: the symbols, then the composed units in common use. */
export const unitTable: readonly UnitEntry[] = [...atoms.map((each) => each.symbol), ...commonUnits].flatMap(entry);

const knownUnits: ReadonlyMap<string, Unit> = new Map(unitTable.map(({ symbol, unit }) => [symbol, unit]));

/** The known unit that a mistyped one is nearest to (`mg/K` may be `mg/L`), or null when none is near. */
export function nearestUnit(text: string): string | null {
  const tidy = text.trim();
  if (tidy === '') return null;
  if (/^(?:gal|gals|gallons?)$/iu.test(tidy)) return 'galUS';
  const wanted = tidy.toLowerCase();
  let best: string | null = null;
  let bestDistance = Math.min(2, Math.max(1, Math.floor(tidy.length / 2))) + 1;
  for (const { symbol, names } of unitTable) {
    if (symbol === '1') continue;
    for (const name of [symbol, ...names.filter((word) => word.length > 4)]) {
      const distance = editDistance(wanted, name.toLowerCase());
      if (distance < bestDistance) { best = symbol; bestDistance = distance; }
    }
  }
  return best;
}

function kindsMeet(a: Kind, b: Kind): boolean {
  if (a === b) return true;
  const [other, carbonate] = a === 'as-calcium-carbonate' ? [b, a] : [a, b];
  return carbonate === 'as-calcium-carbonate' && (other === 'alkalinity' || other === 'hardness');
}

/**
 * True when a value in one unit can be written in the other: one dimension and one kind, or two ways to count one known
 * substance in water. mg/L as CaCO3 counts both
 * alkalinity and hardness, so it meets dKH and dGH, which do not meet each other.
 */
export function convertible(a: Unit, b: Unit): boolean {
  return (sameDimension(a.dimension, b.dimension) && kindsMeet(a.kind, b.kind)) || concentrationFactor(a, b) !== null;
}

/** How many of the second unit a difference of one of the first is. */
export function conversionFactor(from: Unit, to: Unit): number {
  const sameScale = sameDimension(from.dimension, to.dimension) && kindsMeet(from.kind, to.kind);
  return (sameScale ? null : concentrationFactor(from, to)) ?? from.factor / to.factor;
}

/**
 * A value in another unit, to 15 significant digits, so that 25 degC is 77 degF and not 77.00000000000001.
 * Only for units that are `convertible`; for others the answer is NaN: ask first.
 */
export function convert(value: number, from: Unit, to: Unit): number {
  if (from.symbol === to.symbol) return value;
  if (!convertible(from, to)) return Number.NaN;
  const sameScale = sameDimension(from.dimension, to.dimension) && kindsMeet(from.kind, to.kind);
  const converted = sameScale ? (value * from.factor + from.offset - to.offset) / to.factor : value * conversionFactor(from, to);
  return Number.isFinite(converted) ? Number(converted.toPrecision(15)) : converted;
}

/** The unit of the difference of two values: degC to K, degF to degF-difference, % to pp, pH to pH-difference, others unchanged. */
export function differenceUnit(unit: Unit): Unit {
  if (unit.kind !== 'temperature' && unit.kind !== 'ph' && unit.kind !== 'percentage') return unit;
  return buildUnit(termsOf(unit).map((term) => ({ ...term, atom: differenceAtom(term.atom) }))) ?? unit;
}

/** The unit of a change per hour. Of degC it is K/h, of pH pH-difference/h; of % it stays %/h (use `differenceUnit` first for pp/h). */
export function perHour(unit: Unit): Unit {
  const hour = parseTerms('/h') ?? [];
  return unitOf(buildUnit([...termsOf(unit), ...hour]) ?? unit, unit.substance);
}

/** True for a unit in which zero means none of it, so that ratios and percent changes have a meaning. */
export function hasTrueZero(unit: Unit): boolean {
  return unit.kind !== 'temperature' && unit.kind !== 'ph' && unit.kind !== 'specific-gravity';
}

/** True for a plain length of time: s, min, h, d. */
export function isTimeUnit(unit: Unit): boolean {
  return unit.kind === 'plain' && unit.dimension.time === 1 && isTimeOnly(unit.dimension);
}
