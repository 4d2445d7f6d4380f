// Density of fresh and sea water at the surface (EOS-80).
import { outsideRange, type Outcome, type WaterProblem } from './outcome.ts';
import { toScaleOf1968 } from './practicalSalinity.ts';

/** Density in kg/m³ from a temperature `t` in °C on IPTS-68. Source as `waterDensity`; no range check. */
export function densityAtScaleOf1968(salinity: number, t: number): number {
  const fresh = 999.842594 + 6.793952e-2 * t - 9.09529e-3 * t ** 2 + 1.001685e-4 * t ** 3 - 1.120083e-6 * t ** 4 + 6.536332e-9 * t ** 5;
  const linear = 8.24493e-1 - 4.0899e-3 * t + 7.6438e-5 * t ** 2 - 8.2467e-7 * t ** 3 + 5.3875e-9 * t ** 4;
  const threeHalves = -5.72466e-3 + 1.0227e-4 * t - 1.6546e-6 * t ** 2;
  return fresh + linear * salinity + threeHalves * salinity ** 1.5 + 4.8314e-4 * salinity ** 2;
}

/**
 * Density in kg/m³ at one atmosphere of water of practical salinity 0 to 42 at `temperature` in °C, 0 to 40.
 * Source: EOS-80, Millero and Poisson (1981), Deep-Sea Research 28A, 625–629, in Fofonoff and Millard (1983), UNESCO
 * Technical Papers in Marine Science 44. The pressure of a tank's depth changes it by less than 0.01 kg/m³ and is left out.
 * Outside the range a problem.
 */
export function waterDensity(salinity: number, temperature: number): Outcome | WaterProblem {
  return outsideRange(['salinity', salinity, 0, 42, 'PSU'], ['temperature', temperature, 0, 40, 'degC'])
    ?? { value: densityAtScaleOf1968(salinity, toScaleOf1968(temperature)) };
}
