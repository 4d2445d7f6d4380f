// Oxygen solubility by Weiss: kept only to explain numbers from tables older than 2011.
import { kelvinOffset, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

/**
 * Oxygen solubility at one atmosphere in mL(STP)/L; temperature in °C, 0 to 40; practical salinity 0 to 40.
 * Up to 0.3 % below Benson and Krause. Source: Weiss (1970), Deep-Sea Research 17, 721–735. Outside the range a problem.
 */
export function oxygenSolubilityWeiss(temperature: number, salinity: number): Outcome | WaterProblem {
  const outside = outsideRange(['temperature', temperature, 0, 40, 'degC'], ['salinity', salinity, 0, 40, 'PSU']);
  if (outside) return outside;
  const t = (temperature + kelvinOffset) / 100;
  return {
    value: Math.exp(-173.4292 + 249.6339 / t + 143.3483 * Math.log(t) - 21.8492 * t + salinity * (-0.033096 + 0.014259 * t - 0.0017 * t * t)),
  };
}
