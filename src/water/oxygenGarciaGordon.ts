// Oxygen solubility by Garcia and Gordon: the second opinion for `oxygenSolubility`, and the one used at sea.
import { kelvinOffset, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

const a = [5.80871, 3.20291, 4.17887, 5.10006, -9.86643e-2, 3.80369] as const;
const b = [-7.01577e-3, -7.70028e-3, -1.13864e-2, -9.51519e-3] as const;
const c0 = -2.75915e-7;
const aVolume = [2.00907, 3.22014, 4.0501, 4.94457, -2.56847e-1, 3.88767] as const;
const bVolume = [-6.24523e-3, -7.37614e-3, -1.0341e-2, -8.17083e-3] as const;
const c0Volume = -4.88682e-7;

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

function fit(temperature: number, salinity: number, at: readonly number[], bt: readonly number[], c: number): Outcome | WaterProblem {
  const outside = outsideRange(['temperature', temperature, 0, 40, 'degC'], ['salinity', salinity, 0, 42, 'PSU']);
  if (outside) return outside;
  const scaled = Math.log((298.15 - temperature) / (kelvinOffset + temperature));
  return { value: Math.exp(polynomial(at, scaled) + salinity * polynomial(bt, scaled) + c * salinity ** 2) };
}

/**
 * Oxygen solubility at one atmosphere in µmol/kg; temperature in °C, 0 to 40; practical salinity 0 to 42.
 * Source: Garcia and Gordon (1992), Limnology and Oceanography 37, 1307–1312, equation 8 without its misprinted A3·Ts²
 * term, Table 1, fit to the data of Benson and Krause. Outside the range a problem.
 */
export function oxygenSolubilityGarciaGordon(temperature: number, salinity: number): Outcome | WaterProblem {
  return fit(temperature, salinity, a, b, c0);
}

/** The same fit in mL(STP)/L. Range and source as `oxygenSolubilityGarciaGordon`. */
export function oxygenSolubilityGarciaGordonVolume(temperature: number, salinity: number): Outcome | WaterProblem {
  return fit(temperature, salinity, aVolume, bVolume, c0Volume);
}
