// Practical salinity (PSS-78) from conductivity as it is at the water temperature, and back.
import { bisect, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

const a = [0.008, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081] as const;
const b = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144] as const;
/** Conductivity of standard seawater at 15 °C (IPTS-68), salinity 35, in mS/cm. Source: Culkin and Smith (1980). */
const standardSeawaterConductivity = 42.914;

function series(coefficients: readonly number[], root: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * root + coefficient, 0);
}

function temperatureTerm(t68: number): number {
  return (t68 - 15) / (1 + 0.0162 * (t68 - 15));
}

/** Salinity at ratio Rt by PSS-78, without the correction for low salinity. */
function salinityOfRatio(ratio: number, t68: number): number {
  const root = Math.sqrt(ratio);
  return series(a, root) + temperatureTerm(t68) * series(b, root);
}

/** The correction of Hill, Dauphinee and Woods (1986) below salinity 2, before it is made to meet PSS-78 at 2. */
function hill(ratio: number, t68: number): number {
  const x = 400 * ratio;
  const y = 100 * ratio;
  return salinityOfRatio(ratio, t68) - 0.008 / (1 + 1.5 * x + x * x)
    - (0.0005 * temperatureTerm(t68)) / (1 + Math.sqrt(y) + y + y ** 1.5);
}

function salinityAt(ratio: number, t68: number): number {
  const plain = salinityOfRatio(ratio, t68);
  if (plain >= 2) return plain;
  const ratioAtTwo = bisect((each) => salinityOfRatio(each, t68) - 2, 0.01, 0.2);
  const joint = ratioAtTwo === null ? 1 : 2 / hill(ratioAtTwo, t68);
  return Math.max(0, joint * hill(ratio, t68));
}

function conductivityRatioFactor(ratio: number, t68: number, pressure: number): number {
  const r = 0.6766097 + 2.00564e-2 * t68 + 1.104259e-4 * t68 ** 2 - 6.9698e-7 * t68 ** 3 + 1.0031e-9 * t68 ** 4;
  const compression = 1 + (pressure * (2.07e-5 - 6.37e-10 * pressure + 3.989e-15 * pressure ** 2))
    / (1 + 3.426e-2 * t68 + 4.464e-4 * t68 ** 2 + (4.215e-1 - 3.107e-3 * t68) * ratio);
  return r * compression;
}

/** A temperature of today's scale (ITS-90) on the scale of PSS-78 (IPTS-68). */
export const toScaleOf1968 = (temperature: number): number => 1.00024 * temperature;

/**
 * Practical salinity from a conductivity in mS/cm measured at `temperature` in °C (not compensated to 25 °C) and a sea
 * pressure in dbar (0 at the surface, where a tank is). Temperatures −2 to 35 °C, result 0 to 42.
 * Source: PSS-78, Fofonoff and Millard (1983), UNESCO Technical Papers in Marine Science 44; below salinity 2 with the
 * extension of Hill, Dauphinee and Woods (1986), IEEE Journal of Oceanic Engineering 11(1), scaled to meet PSS-78 at 2.
 * It is the salinity of diluted sea water: for hard tap water it tells the conductivity of sea salt, not the salts that
 * are there. Outside the range a problem.
 */
export function practicalSalinity(conductivity: number, temperature: number, pressure = 0): Outcome | WaterProblem {
  const outside = outsideRange(['conductivity', conductivity, 0, 100, 'mS/cm'], ['temperature', temperature, -2, 35, 'degC'], ['sea pressure', pressure, 0, 10_000, 'dbar']);
  if (outside) return outside;
  const t68 = toScaleOf1968(temperature);
  const ratio = conductivity / standardSeawaterConductivity;
  const value = salinityAt(ratio / conductivityRatioFactor(ratio, t68, pressure), t68);
  return outsideRange(['salinity', value, 0, 42, 'PSU']) ?? { value };
}

/**
 * Conductivity in mS/cm at `temperature` of water of a practical salinity 0 to 42, at the surface: the inverse of
 * `practicalSalinity`, by bisection. Range and source as there.
 */
export function conductivityOfSalinity(salinity: number, temperature: number): Outcome | WaterProblem {
  const outside = outsideRange(['salinity', salinity, 0, 42, 'PSU'], ['temperature', temperature, -2, 35, 'degC']);
  if (outside) return outside;
  if (salinity === 0) return { value: 0 };
  const t68 = toScaleOf1968(temperature);
  const conductivity = bisect((each) => {
    const ratio = each / standardSeawaterConductivity;
    return salinityAt(ratio / conductivityRatioFactor(ratio, t68, 0), t68) - salinity;
  }, 0, 100);
  return conductivity === null ? { problem: 'no-solution', about: 'conductivity' } : { value: conductivity };
}
