// Dimension algebra: exponents of the base dimensions, added, scaled and compared.
// Base units: kg, m, s, K (difference), mol, A, cd.
import type { Dimension } from './types.ts';

export const dimensionless: Dimension = { mass: 0, length: 0, time: 0, temperature: 0, amount: 0, current: 0, luminosity: 0 };

/** A dimension from the exponents that are not 0. */
export function dimension(exponents: Partial<Dimension>): Dimension {
  return { ...dimensionless, ...exponents };
}

/** The dimension of a · b^power. */
export function multiplyDimensions(a: Dimension, b: Dimension, power = 1): Dimension {
  return {
    mass: a.mass + b.mass * power, length: a.length + b.length * power, time: a.time + b.time * power,
    temperature: a.temperature + b.temperature * power, amount: a.amount + b.amount * power,
    current: a.current + b.current * power, luminosity: a.luminosity + b.luminosity * power,
  };
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.mass === b.mass && a.length === b.length && a.time === b.time && a.temperature === b.temperature
    && a.amount === b.amount && a.current === b.current && a.luminosity === b.luminosity;
}

export function isDimensionless(a: Dimension): boolean {
  return sameDimension(a, dimensionless);
}

/** True for a dimension that is a power of time alone (h, /h, s2) or none at all. */
export function isTimeOnly(a: Dimension): boolean {
  return sameDimension({ ...a, time: 0 }, dimensionless);
}
