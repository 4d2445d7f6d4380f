// Oxygen between mass, amount and gas volume: conversions that need to know the substance.
import { sameDimension } from '../quantities/dimension.ts';
import type { Dimension, Unit } from '../quantities/types.ts';
import { outcome, type Outcome, type WaterProblem } from './outcome.ts';
import { molarMass } from './substances.ts';

/** mg of oxygen in one mL(STP): real molar volume. Source: USGS OWQ memorandum 2011.03. */
export const milligramsPerMillilitre = 1.42905;

const shape = (mass: number, length: number, amount: number): Dimension =>
  ({ mass, length, amount, time: 0, temperature: 0, current: 0, luminosity: 0 });
const massPerVolume = shape(1, -3, 0);
const amountPerVolume = shape(0, -3, 1);
const amountPerMass = shape(-1, 0, 1);
const massPerMass = shape(0, 0, 0);

/** Factor from the unit to mg/L; null where the unit is no oxygen concentration; `density` in kg/m³ where a unit counts per kilogram. */
function toMilligramsPerLitre(unit: Unit, density: number | null): number | 'needs-density' | null {
  if (unit.offset !== 0) return null;
  if (unit.kind === 'parts-per-million') return density === null ? 'needs-density' : unit.factor * density * 1000;
  if (unit.kind !== 'plain') return null;
  if (sameDimension(unit.dimension, massPerVolume)) return unit.factor * 1000;
  if (sameDimension(unit.dimension, amountPerVolume)) return unit.factor * molarMass.oxygen;
  if (sameDimension(unit.dimension, amountPerMass)) return density === null ? 'needs-density' : unit.factor * molarMass.oxygen * density;
  if (sameDimension(unit.dimension, massPerMass) && unit.symbol !== '1') return density === null ? 'needs-density' : unit.factor * density * 1000;
  return null;
}

/**
 * Dissolved oxygen from one unit into another: mg/L, µmol/L, mL(STP)/L, and µmol/kg or ppm (by mass) with the water's
 * density in kg/m³ at its temperature and salinity. 31.9988 g/mol; 1.42905 mg per mL(STP) (USGS OWQ memorandum 2011.03;
 * the ideal-gas factor 1.4276 of some tables is 0.1 % lower). Without a needed density `needs-density`; for other units
 * `no-such-conversion`.
 */
export function convertOxygen(value: number, from: Unit, to: Unit, density: number | null = null): Outcome | WaterProblem {
  const about = `${from.symbol} ${to.symbol}`;
  const first = toMilligramsPerLitre(from, density);
  const second = toMilligramsPerLitre(to, density);
  if (first === null || second === null) return { problem: 'no-such-conversion', about };
  if (first === 'needs-density' || second === 'needs-density') return { problem: 'needs-density', about };
  return outcome(value * first / second, about);
}
