// The part of total ammonia that is un-ionised (NH3), in fresh water.
import { freshwaterLimit, kelvinOffset, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

/**
 * pKa of ammonium at zero ionic strength: 0.09018 + 2729.92/T; temperature in °C, 0 to 50.
 * Source: Emerson, Russo, Lund and Thurston (1975), Journal of the Fisheries Research Board of Canada 32, 2379–2383.
 * Outside the range a problem.
 */
export function ammoniumAcidity(temperature: number): Outcome | WaterProblem {
  return outsideRange(['temperature', temperature, 0, 50, 'degC']) ?? { value: 0.09018 + 2729.92 / (temperature + kelvinOffset) };
}

export interface AmmoniaConditions {
  /** °C: 0 to 50. */
  readonly temperature: number;
  /** 4 to 12. */
  readonly pH: number;
  /** Practical salinity; above 0.5 the equation does not apply. */
  readonly salinity: number;
}

/**
 * Fraction (0 to 1) of total ammonia present as NH3: f = 1/(1 + 10^(pKa − pH)).
 * Source: Emerson et al. (1975), as `ammoniumAcidity`; tables in Thurston, Russo and Emerson (1979), EPA-600/3-79-091.
 * For fresh water only: in sea water it reads 20 to 25 % too high, so above salinity 0.5 it answers
 * `not-for-saline-water`. Outside 0–50 °C or pH 4–12 a problem.
 */
export function unIonisedFraction(conditions: AmmoniaConditions): Outcome | WaterProblem {
  const { temperature, pH, salinity } = conditions;
  const outside = outsideRange(['temperature', temperature, 0, 50, 'degC'], ['pH', pH, 4, 12, 'pH'], ['salinity', salinity, 0, 1000, 'PSU']);
  if (outside) return outside;
  if (salinity > freshwaterLimit) return { problem: 'not-for-saline-water', about: 'un-ionised ammonia' };
  const acidity = ammoniumAcidity(temperature);
  return 'problem' in acidity ? acidity : { value: 1 / (1 + 10 ** (acidity.value - pH)) };
}

/** Un-ionised ammonia in the unit and on the basis (as nitrogen, as ion) of `total`. Range and source as `unIonisedFraction`. */
export function unIonisedAmmonia(total: number, conditions: AmmoniaConditions): Outcome | WaterProblem {
  const outside = outsideRange(['total ammonia', total, 0, 1e6, 'mg/L']);
  if (outside) return outside;
  const fraction = unIonisedFraction(conditions);
  return 'problem' in fraction ? fraction : { value: total * fraction.value };
}
