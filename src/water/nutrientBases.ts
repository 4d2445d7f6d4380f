// Nutrients as the ion, as the element, or by amount: conversions that need to know which substance it is.
import { sameDimension } from '../quantities/dimension.ts';
import type { Unit } from '../quantities/types.ts';
import { outcome, type Outcome, type WaterProblem } from './outcome.ts';
import { molarMass } from './substances.ts';

export type Nutrient = 'nitrate' | 'nitrite' | 'ammonia' | 'ammonium' | 'phosphate';

/** Mass of the ion over the mass of its nitrogen or phosphorus: nitrate 4.42680, phosphate 3.06619. IUPAC atomic weights. */
export function ionPerElement(nutrient: Nutrient): number {
  return molarMass[nutrient] / (nutrient === 'phosphate' ? molarMass.phosphorus : molarMass.nitrogen);
}

/** g/m³ of one mol/m³ counted in the unit, or null where the unit does not count this nutrient. */
function massPerAmount(nutrient: Nutrient, unit: Unit): number | null {
  const { dimension, kind } = unit;
  const shape = { ...dimension, mass: 0, amount: 0 };
  if (!sameDimension(shape, { ...shape, length: -3, time: dimension.time, temperature: 0, current: 0, luminosity: 0 })) return null;
  if (dimension.amount === 1 && dimension.mass === 0) return kind === 'plain' ? 1 : null;
  if (dimension.mass !== 1 || dimension.amount !== 0) return null;
  if (kind === 'plain') return molarMass[nutrient] / 1000;
  const element = nutrient === 'phosphate' ? 'as-phosphorus' : 'as-nitrogen';
  return kind === element ? (nutrient === 'phosphate' ? molarMass.phosphorus : molarMass.nitrogen) / 1000 : null;
}

/**
 * A nutrient's concentration (or its change per time) from one unit and basis into another: mg/L as the ion, mg/L-N or
 * mg/L-P as the element, µmol/L. Molar masses from IUPAC atomic weights. Nitrate asked for as phosphorus, and units that
 * are no concentration, are `no-such-conversion`.
 */
export function convertNutrient(nutrient: Nutrient, value: number, from: Unit, to: Unit): Outcome | WaterProblem {
  const about = `${nutrient} ${from.symbol} ${to.symbol}`;
  const first = massPerAmount(nutrient, from);
  const second = massPerAmount(nutrient, to);
  if (first === null || second === null || from.dimension.time !== to.dimension.time) return { problem: 'no-such-conversion', about };
  return outcome(value * (from.factor / first) / (to.factor / second), about);
}
