// Dissolved oxygen in equilibrium with air, by Benson and Krause: the equation that everything in the notes uses.
import { isWaterProblem, kelvinOffset, outsideRange, standardAtmosphere, type Outcome, type WaterProblem } from './outcome.ts';
import { vapourPressureFresh } from './vapourPressure.ts';

export interface OxygenConditions {
  /** Water temperature, °C: 0 to 40. */
  readonly temperature: number;
  /** Practical salinity: 0 to 40. */
  readonly salinity: number;
  /** Air pressure at the place (station pressure, not reduced to sea level), hPa: 506.625 to 1114.575 (0.5 to 1.1 atm). */
  readonly pressure: number;
}

/** Range of the equation: 0–40 °C, salinity 0–40, 0.5–1.1 atm. */
export const oxygenRange = { temperature: [0, 40], salinity: [0, 40], pressure: [0.5 * standardAtmosphere, 1.1 * standardAtmosphere] } as const;

/**
 * Solubility of oxygen in mg/L in water in equilibrium with moist air.
 *
 *     ln C1 = −139.34411 + 1.575701e5/T − 6.642308e7/T² + 1.243800e10/T³ − 8.621949e11/T⁴
 *     C = C1 · exp(−S(0.017674 − 10.754/T + 2140.7/T²)) · P (1 − u/P)(1 − θP) / ((1 − u)(1 − θ))
 *
 * with T in K, P in atm, θ = 0.000975 − 1.426e-5 t + 6.436e-8 t², u by `vapourPressureFresh`.
 * Source: Benson and Krause (1984), Limnology and Oceanography 29(3), 620–632, equations 24 and 32; fresh water
 * Benson and Krause (1980), L&O 25, 662–671. The tables of USGS and Standard Methods 4500-O rest on it.
 * Stated error at most 0.1 %. Outside 0–40 °C, salinity 0–40, 0.5–1.1 atm a problem, never a value.
 */
export function oxygenSolubility(conditions: OxygenConditions): Outcome | WaterProblem {
  const { temperature, salinity, pressure } = conditions;
  const outside = outsideRange(
    ['temperature', temperature, ...oxygenRange.temperature, 'degC'], ['salinity', salinity, ...oxygenRange.salinity, 'PSU'],
    ['pressure', pressure, ...oxygenRange.pressure, 'hPa'],
  );
  if (outside) return outside;
  const vapour = vapourPressureFresh(temperature);
  if (isWaterProblem(vapour)) return vapour;
  const kelvin = temperature + kelvinOffset;
  const atOneAtmosphere = Math.exp(-139.34411 + 1.575701e5 / kelvin - 6.642308e7 / kelvin ** 2 + 1.2438e10 / kelvin ** 3 - 8.621949e11 / kelvin ** 4);
  const salt = Math.exp(-salinity * (0.017674 - 10.754 / kelvin + 2140.7 / kelvin ** 2));
  const atmospheres = pressure / standardAtmosphere;
  const u = vapour.value;
  const theta = oxygenTheta(temperature);
  const air = atmospheres * (1 - u / atmospheres) * (1 - theta * atmospheres) / ((1 - u) * (1 - theta));
  return { value: atOneAtmosphere * salt * air };
}

/** The second virial term θ of the equation, per atm, at °C. Source: Benson and Krause (1980). */
export function oxygenTheta(temperature: number): number {
  return 0.000975 - 1.426e-5 * temperature + 6.436e-8 * temperature ** 2;
}

/** What 100 % saturation means: equilibrium at the pressure of the place, or at one standard atmosphere. */
export type SaturationConvention = 'local-pressure' | 'one-atmosphere';

/**
 * Oxygen saturation in per cent of `concentration` in mg/L: 100 C / C(t, S, P). The convention is part of the answer and
 * must be named beside it: a value by one atmosphere and one by local pressure are not comparable.
 * Range and source as `oxygenSolubility`; a negative concentration is outside the range.
 */
export function oxygenSaturation(concentration: number, conditions: OxygenConditions, convention: SaturationConvention = 'local-pressure'): Outcome | WaterProblem {
  const outside = outsideRange(['concentration', concentration, 0, 1000, 'mg/L']);
  if (outside) return outside;
  const full = oxygenSolubility(convention === 'one-atmosphere' ? { ...conditions, pressure: standardAtmosphere } : conditions);
  return isWaterProblem(full) ? full : { value: 100 * concentration / full.value };
}

/** The concentration in mg/L that a saturation in per cent stands for. Range and source as `oxygenSolubility`. */
export function oxygenFromSaturation(percent: number, conditions: OxygenConditions, convention: SaturationConvention = 'local-pressure'): Outcome | WaterProblem {
  const outside = outsideRange(['saturation', percent, 0, 10_000, '%']);
  if (outside) return outside;
  const full = oxygenSolubility(convention === 'one-atmosphere' ? { ...conditions, pressure: standardAtmosphere } : conditions);
  return isWaterProblem(full) ? full : { value: percent / 100 * full.value };
}
