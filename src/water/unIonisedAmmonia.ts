// The part of total ammonia that is un-ionised (NH3), in fresh and in saline water.
import { freshwaterLimit, kelvinOffset, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

/**
 * pKa of ammonium at zero ionic strength: 0.09018 + 2729.92/T; temperature in °C, 0 to 50.
 * Source: Emerson, Russo, Lund and Thurston (1975), Journal of the Fisheries Research Board of Canada 32, 2379–2383.
 * Outside the range a problem.
 */
export function ammoniumAcidity(temperature: number): Outcome | WaterProblem {
  return outsideRange(['temperature', temperature, 0, 50, 'degC']) ?? { value: 0.09018 + 2729.92 / (temperature + kelvinOffset) };
}

/**
 * pKa of ammonium in sea water and its dilutions: that at zero ionic strength + (0.1552 − 0.0003142 t)·I, with the formal ionic strength
 * I = 19.924 S/(1000 − 1.005 S) mol/kg; temperature t in °C, 5 to 40; practical salinity S, 0 to 45.
 * Source: Khoo, Culberson and Bates (1977), Journal of Solution Chemistry 6, 281–290 (the relation as its abstract prints it); I as in
 * DOE (1994), Handbook of methods for the carbon dioxide system. The pKa goes with a pH as electrodes set in ordinary buffers show
 * it, not with the total scale of oceanography. Outside the ranges a problem.
 */
export function ammoniumAcidityInSeaWater(temperature: number, salinity: number): Outcome | WaterProblem {
  const outside = outsideRange(['temperature', temperature, 5, 40, 'degC'], ['salinity', salinity, 0, 45, 'PSU']);
  if (outside) return outside;
  const pure = ammoniumAcidity(temperature);
  if ('problem' in pure) return pure;
  const strength = 19.924 * salinity / (1000 - 1.005 * salinity);
  return { value: pure.value + (0.1552 - 0.0003142 * temperature) * strength };
}

export interface AmmoniaConditions {
  /** °C: 0 to 50; in saline water 5 to 40. */
  readonly temperature: number;
  /** 4 to 12. */
  readonly pH: number;
  /** Practical salinity, 0 to 45; above 0.5 the water counts as saline. */
  readonly salinity: number;
}

/**
 * Fraction (0 to 1) of total ammonia present as NH3: f = 1/(1 + 10^(pKa − pH)).
 * Source: in fresh water Emerson et al. (1975), as `ammoniumAcidity`; tables in Thurston, Russo and Emerson (1979), EPA-600/3-79-091;
 * in saline water Khoo et al. (1977), as `ammoniumAcidityInSeaWater`: a fifth less in sea water. Outside the ranges a problem.
 */
export function unIonisedFraction(conditions: AmmoniaConditions): Outcome | WaterProblem {
  const { temperature, pH, salinity } = conditions;
  const outside = outsideRange(['temperature', temperature, 0, 50, 'degC'], ['pH', pH, 4, 12, 'pH'], ['salinity', salinity, 0, 45, 'PSU']);
  if (outside) return outside;
  const acidity = isSaline(salinity) ? ammoniumAcidityInSeaWater(temperature, salinity) : ammoniumAcidity(temperature);
  return 'problem' in acidity ? acidity : { value: 1 / (1 + 10 ** (acidity.value - pH)) };
}

/** Above practical salinity 0.5 (`freshwaterLimit`) the salts count. */
export function isSaline(salinity: number): boolean {
  return salinity > freshwaterLimit;
}

/** Un-ionised ammonia in the unit and on the basis (as nitrogen, as ion) of `total`. Range and source as `unIonisedFraction`. */
export function unIonisedAmmonia(total: number, conditions: AmmoniaConditions): Outcome | WaterProblem {
  const outside = outsideRange(['total ammonia', total, 0, 1e6, 'mg/L']);
  if (outside) return outside;
  const fraction = unIonisedFraction(conditions);
  return 'problem' in fraction ? fraction : { value: total * fraction.value };
}
