// Concentrations of a known substance: what mass, amount and gas volume in a litre have to do with each other.
import { dimensionless, sameDimension } from './dimension.ts';
import type { Dimension, Substance, Unit } from './types.ts';
import { isAmountOfGas, isVolumeRatio } from './unitTerms.ts';

/** How a unit counts a substance in water; `mass-share` is per kilogram of water, for which the density would be needed. */
export type ConcentrationForm = 'mass' | 'amount' | 'gas-volume' | 'mass-share';

/** Rates and integrals of a concentration count it in the same way. */
const timeless = (dimension: Dimension): Dimension => ({ ...dimension, time: 0 });
const massInVolume: Dimension = { ...dimensionless, mass: 1, length: -3 };
const amountInVolume: Dimension = { ...dimensionless, amount: 1, length: -3 };
const amountInMass: Dimension = { ...dimensionless, amount: 1, mass: -1 };

/** The form of a unit; null for a unit of anything but a concentration, its rate or its integral over time. */
export function concentrationForm(unit: Unit): ConcentrationForm | null {
  const dimension = timeless(unit.dimension);
  if (unit.kind === 'parts-per-million') return 'mass-share';
  if (unit.kind !== 'plain' && unit.kind !== 'as-nitrogen' && unit.kind !== 'as-phosphorus') return null;
  if (sameDimension(dimension, massInVolume)) return 'mass';
  if (unit.kind !== 'plain') return null;
  if (sameDimension(dimension, amountInVolume)) return isAmountOfGas(unit) ? 'gas-volume' : 'amount';
  if (sameDimension(dimension, amountInMass)) return 'mass-share';
  return isVolumeRatio(unit) ? 'gas-volume' : null;
}

/** mol/m³ of the substance in one of the unit (per second for rates); null where the molar mass or volume is not known. */
function molesPerCubicMetre(unit: Unit, substance: Substance): number | null {
  switch (concentrationForm(unit)) {
    case 'mass': {
      const molarMass = substance.molarMass[unit.kind];
      return molarMass === undefined ? null : unit.factor * 1000 / molarMass;
    }
    case 'amount': return unit.factor;
    case 'gas-volume': {
      if (substance.gasDensity === undefined || substance.molarMass.plain === undefined) return null;
      return isAmountOfGas(unit) ? unit.factor : unit.factor * substance.gasDensity * 1000 / substance.molarMass.plain;
    }
    default: return null;
  }
}

/**
 * How many of the second unit are one of the first, where both count the same substance in two ways; null where that is not
 * known. Two ways to count its mass (nitrate as the ion, nitrate as nitrogen) are kept apart: most who mix them do not mean to.
 */
export function concentrationFactor(from: Unit, to: Unit): number | null {
  const { substance } = from;
  if (!substance || substance.name !== to.substance?.name || from.dimension.time !== to.dimension.time) return null;
  if (from.kind !== to.kind && sameDimension(from.dimension, to.dimension)) return null;
  const first = molesPerCubicMetre(from, substance);
  const second = molesPerCubicMetre(to, substance);
  return first === null || second === null ? null : first / second;
}

/** The unit as one of a substance; without one, of none in particular. */
export function unitOf(unit: Unit, substance: Substance | undefined): Unit {
  if (unit.substance === substance) return unit;
  const { substance: _, ...plain } = unit;
  return substance ? { ...plain, substance } : plain;
}

/** The unit of a sum or difference: of the substance that both sides share, or of none. */
export function sharedSubstance(unit: Unit, a: Unit, b: Unit): Unit {
  return unitOf(unit, a.substance && a.substance.name === b.substance?.name ? a.substance : undefined);
}
