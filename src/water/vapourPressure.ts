// Vapour pressure of water in air that is in equilibrium with it, in the two forms used with oxygen solubility.
import { kelvinOffset, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

/**
 * Vapour pressure of pure water in atm at `temperature` in °C, 0 to 40 °C:
 * ln u = 11.8571 − 3840.70/T − 216961/T². The form printed with the oxygen tables of the USGS Office of Water Quality
 * (memorandum 2011.03, after Benson and Krause 1980); used in `oxygenSolubility`. Outside the range a problem.
 */
export function vapourPressureFresh(temperature: number): Outcome | WaterProblem {
  const outside = outsideRange(['temperature', temperature, 0, 40, 'degC']);
  if (outside) return outside;
  const kelvin = temperature + kelvinOffset;
  return { value: Math.exp(11.8571 - 3840.7 / kelvin - 216961 / kelvin ** 2) };
}

/**
 * Vapour pressure over water of practical salinity 0 to 40 in atm at `temperature` in °C, 0 to 40 °C.
 * Source: Green and Carritt (1967), as given by Benson and Krause (1984), Limnology and Oceanography 29(3), Table 2.
 * At salinity 0 it is 0.1 % below the fresh form, less than 0.0003 mg/L of oxygen at 0.8 to 1.05 atm. Outside the range a problem.
 */
export function vapourPressureSaline(temperature: number, salinity: number): Outcome | WaterProblem {
  const outside = outsideRange(['temperature', temperature, 0, 40, 'degC'], ['salinity', salinity, 0, 40, 'PSU']);
  if (outside) return outside;
  const steam = 373.16;
  const kelvin = temperature + kelvinOffset;
  const exponent = 18.1973 * (1 - steam / kelvin)
    + 3.1813e-7 * (1 - Math.exp(26.1205 * (1 - kelvin / steam)))
    - 0.018726 * (1 - Math.exp(8.03945 * (1 - steam / kelvin)))
    + 5.02802 * Math.log(steam / kelvin);
  return { value: (1 - 0.000537 * salinity) * Math.exp(exponent) };
}
