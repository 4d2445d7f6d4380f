// What an equation of this room gives: a value, or the typed reason why it has none. Nothing is extrapolated in silence.

export interface Outcome { readonly value: number }

/** An input outside the range in which the equation was published. */
export interface OutsideRange {
  readonly problem: 'outside-range';
  /** The input's name in words: `temperature`. */
  readonly input: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Symbol of the unit of value, low and high. */
  readonly unit: string;
}

/** The equation does not hold for this water, or wants something that was not given. */
export interface NotApplicable {
  readonly problem: 'not-for-saline-water' | 'needs-density' | 'no-such-conversion' | 'no-solution';
  /** The equation or quantity concerned, in words. */
  readonly about: string;
}

export type WaterProblem = OutsideRange | NotApplicable;

export function isWaterProblem(result: object): result is WaterProblem {
  return 'problem' in result;
}

/** The first input outside its range (or not finite), or null. Rows are [name, value, low, high, unit]. */
export function outsideRange(...inputs: readonly (readonly [string, number, number, number, string])[]): OutsideRange | null {
  for (const [input, value, low, high, unit] of inputs) {
    if (!(value >= low && value <= high)) return { problem: 'outside-range', input, value, low, high, unit };
  }
  return null;
}

/** A finite value, or `no-solution`. */
export function outcome(value: number, about: string): Outcome | NotApplicable {
  return Number.isFinite(value) ? { value } : { problem: 'no-solution', about };
}

/** 0 °C in kelvin. */
export const kelvinOffset = 273.15;
/** One standard atmosphere in hPa. */
export const standardAtmosphere = 1013.25;
/** Practical salinity up to which water counts as fresh here (Venice system, 1958: limnetic below 0.5). */
export const freshwaterLimit = 0.5;

/**
 * Where an increasing or decreasing function crosses zero between two bounds, by bisection to the last bit; null where it
 * has one sign at both.
 */
export function bisect(f: (x: number) => number, low: number, high: number): number | null {
  let a = low;
  let b = high;
  const atLow = f(a);
  const atHigh = f(b);
  if (atLow === 0) return a;
  if (atHigh === 0) return b;
  if (!(Math.sign(atLow) * Math.sign(atHigh) < 0)) return null;
  for (let step = 0; step < 200; step += 1) {
    const middle = (a + b) / 2;
    if (middle === a || middle === b) break;
    const value = f(middle);
    if (value === 0) return middle;
    if (Math.sign(value) === Math.sign(atLow)) a = middle; else b = middle;
  }
  return (a + b) / 2;
}
