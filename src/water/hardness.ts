// Hardness and alkalinity where the conversion needs the substance; dKH, meq/L and mg/L as CaCO3 convert as units do.
import { outsideRange, type Outcome, type WaterProblem } from './outcome.ts';
import { molarMass } from './substances.ts';

/** mmol/L of CaO in one German degree: 10 mg/L. */
const calciumOxidePerDegree = 10 / molarMass.calciumOxide;

/** Bicarbonate in mg/L that an alkalinity of 0 to 50 meq/L stands for when all of it is bicarbonate (61.017 mg/meq). */
export function bicarbonateOfAlkalinity(alkalinity: number): Outcome | WaterProblem {
  return outsideRange(['alkalinity', alkalinity, 0, 50, 'meq/L']) ?? { value: alkalinity * molarMass.bicarbonate };
}

/** Calcium and magnesium together in mmol/L that a general hardness of 0 to 200 dGH stands for (0.17832 mmol/L a degree). */
export function alkalineEarthsOfHardness(hardness: number): Outcome | WaterProblem {
  return outsideRange(['general hardness', hardness, 0, 200, 'dGH']) ?? { value: hardness * calciumOxidePerDegree };
}

/** General hardness in dGH from calcium and magnesium in mg/L (each 0 to 5000): their amounts added, by atomic weight. */
export function hardnessOf(calcium: number, magnesium: number): Outcome | WaterProblem {
  return outsideRange(['calcium', calcium, 0, 5000, 'mg/L'], ['magnesium', magnesium, 0, 5000, 'mg/L'])
    ?? { value: (calcium / molarMass.calcium + magnesium / molarMass.magnesium) / calciumOxidePerDegree };
}
