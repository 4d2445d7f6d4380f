// The substances of the closed list of quantities, with what turns their mass into an amount.
import { measureByName } from '../quantities/measures.ts';
import type { Substance } from '../quantities/types.ts';
import { milligramsPerMillilitre } from './oxygenUnits.ts';
import { molarMass } from './substances.ts';

type MolarMasses = Omit<Substance, 'name'>;

const nitrogenIn = { 'as-nitrogen': molarMass.nitrogen };
const phosphorusIn = { 'as-phosphorus': molarMass.phosphorus };

/**
 * g/mol by how a unit counts the mass. Total and un-ionised ammonia in mg/L stand without one: tests count NH3 or NH4 and do
 * not always say which; as nitrogen they are one.
 */
const known: Readonly<Record<string, MolarMasses>> = {
  'dissolved oxygen': { molarMass: { plain: molarMass.oxygen }, gasDensity: milligramsPerMillilitre },
  'carbon dioxide': { molarMass: { plain: molarMass.carbonDioxide } },
  nitrate: { molarMass: { plain: molarMass.nitrate, ...nitrogenIn } },
  nitrite: { molarMass: { plain: molarMass.nitrite, ...nitrogenIn } },
  'total ammonia': { molarMass: nitrogenIn },
  'un-ionised ammonia': { molarMass: nitrogenIn },
  'total nitrogen': { molarMass: nitrogenIn },
  phosphate: { molarMass: { plain: molarMass.phosphate, ...phosphorusIn } },
  'total phosphorus': { molarMass: phosphorusIn },
  calcium: { molarMass: { plain: molarMass.calcium } },
  magnesium: { molarMass: { plain: molarMass.magnesium } },
};

/** The substance that a quantity of the closed list counts; undefined for quantities that are no concentration. */
export function substanceOf(quantity: string): Substance | undefined {
  const entry = measureByName(quantity);
  return entry?.concentration ? { name: entry.name, ...(known[entry.name] ?? { molarMass: {} }) } : undefined;
}
