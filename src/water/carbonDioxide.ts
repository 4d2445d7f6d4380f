// Dissolved carbon dioxide from pH and alkalinity, and the trade's rule of thumb beside it with the reason they differ.
import { convert, parseUnit } from '../quantities/units.ts';
import { freshwaterLimit, kelvinOffset, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';
import { molarMass } from './substances.ts';

/**
 * pK1 of carbonic acid in fresh water; temperature in °C, 0 to 50:
 * 356.3094 + 0.06091964 T − 21834.37/T − 126.8339 log10 T + 1684915/T².
 * Source: Plummer and Busenberg (1982), Geochimica et Cosmochimica Acta 46, 1011–1040. The coefficients were not read in
 * the original; their values agree with a published table (6.58 at 0 °C to 6.33 at 30 °C), which the tests hold.
 */
export function carbonicAcidity(temperature: number): Outcome | WaterProblem {
  const outside = outsideRange(['temperature', temperature, 0, 50, 'degC']);
  if (outside) return outside;
  const t = temperature + kelvinOffset;
  return { value: 356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * Math.log10(t) + 1684915 / t ** 2 };
}

export interface CarbonateConditions {
  /** Carbonate alkalinity, meq/L: 0 to 20. Kits measure total alkalinity: borate, phosphate and humic acids make it read high. */
  readonly alkalinity: number;
  /** 6 to 8.3. An error of 0.1 is 26 % of the answer. */
  readonly pH: number;
  /** °C: 0 to 50. */
  readonly temperature: number;
  /** Practical salinity; above 0.5 the equation does not apply. */
  readonly salinity: number;
}

/**
 * Carbon dioxide in mg/L: 44.0095 · alkalinity · 10^(pK1 − pH), alkalinity in meq/L.
 * The carbonate equilibrium with all alkalinity as bicarbonate, which holds for pH 6 to 8.3 in fresh water; pK1 as
 * `carbonicAcidity`. Outside the ranges a problem; above salinity 0.5 `not-for-saline-water`.
 */
export function carbonDioxide(conditions: CarbonateConditions): Outcome | WaterProblem {
  const { alkalinity, pH, temperature, salinity } = conditions;
  const outside = outsideRange(['alkalinity', alkalinity, 0, 20, 'meq/L'], ['pH', pH, 6, 8.3, 'pH'], ['salinity', salinity, 0, 1000, 'PSU']);
  if (outside) return outside;
  if (salinity > freshwaterLimit) return { problem: 'not-for-saline-water', about: 'carbon dioxide' };
  const acidity = carbonicAcidity(temperature);
  return 'problem' in acidity ? acidity : { value: molarMass.carbonDioxide * alkalinity * 10 ** (acidity.value - pH) };
}

/**
 * What stands at a temperature in place of the 3 of the trade's rule of thumb, CO2 in mg/L = 3 · KH in dKH · 10^(7 − pH). No published
 * equation stands behind the rule. It reads 15 % (25 °C) to 21 % (20 °C) low: the coefficient was once fitted with KH in mg/L as CaCO3
 * divided by the molar mass of bicarbonate (50.04/61.02). Range and source as `carbonicAcidity`.
 */
export function ruleCoefficient(temperature: number): Outcome | WaterProblem {
  const acidity = carbonicAcidity(temperature);
  if ('problem' in acidity) return acidity;
  const equivalents = parseUnit('meq/L');
  const degrees = parseUnit('dKH');
  if (!equivalents || !degrees) return { problem: 'no-such-conversion', about: 'meq/L dKH' };
  return { value: molarMass.carbonDioxide * convert(1, degrees, equivalents) * 10 ** (acidity.value - 7) };
}
