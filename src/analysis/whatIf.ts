// What a fitted night would have done otherwise: darkness of another length, another surface exchange, another stocking.
// Each answer is a prediction from the fit, with its interval; the water is taken to behave as it did.
import { studentQuantile } from '../statistics/distributions.ts';
import { nightCurve, type NightFit, type NightRow } from './nightFit.ts';

export interface WhatIf {
  /** Hours of darkness from the first row; as fitted where null. Beyond the last row its solubility is kept. */
  readonly dark: number | null;
  /** Surface exchange as a multiple of the fitted one. */
  readonly exchange: number;
  /** Respiration as a multiple of the fitted one. */
  readonly stocking: number;
}

/** Nothing changed: the darkness of the run, its exchange and its stocking once. */
export const asItWas: WhatIf = { dark: null, exchange: 1, stocking: 1 };

/** What the fit's parameters may be moved by, for derivatives: mg/L, per hour, mg/L an hour, and mg/L of solubility. */
export interface Moved { readonly initial: number; readonly exchange: number; readonly respiration: number; readonly solubility: number }
const unmoved: Moved = { initial: 0, exchange: 0, respiration: 0, solubility: 0 };

/** Hours between the points of a predicted curve: five minutes. */
const grid = 1 / 12;

/** The solubility at a time: straight lines between the rows, the last one kept. */
function solubilityAt(rows: readonly NightRow[], hours: number): number {
  const after = rows.findIndex((row) => row.hours >= hours);
  if (after < 0) return rows.at(-1)!.solubility;
  const to = rows[after]!;
  const from = rows[after - 1];
  return from ? from.solubility + (to.solubility - from.solubility) * (hours - from.hours) / (to.hours - from.hours) : to.solubility;
}

/** The predicted curve: points in hours and mg/L. */
export function predictedCurve(rows: readonly NightRow[], night: NightFit, what: WhatIf, moved: Moved = unmoved): { hours: number; oxygen: number }[] {
  const end = what.dark ?? rows.at(-1)!.hours - rows[0]!.hours;
  const count = Math.max(1, Math.ceil(end / grid - 1e-9));
  const points: NightRow[] = Array.from({ length: count + 1 }, (_, index) => {
    const hours = end * index / count;
    return { hours, oxygen: 0, solubility: solubilityAt(rows, rows[0]!.hours + hours) + moved.solubility };
  });
  const curve = nightCurve(points, night.initial + moved.initial, (night.exchange + moved.exchange) * what.exchange, (night.respiration + moved.respiration) * what.stocking);
  return points.map((point, index) => ({ hours: point.hours, oxygen: curve[index]! }));
}

export interface Prediction {
  readonly value: number;
  /** Half the 95 % interval that the scatter about the fit leaves; the instruments' own errors are not in it. */
  readonly halfWidth: number;
}

/**
 * A figure of the predicted curve with its 95 % interval by first order from the covariance of the fit (delta method) and
 * Student's t. `figure` must change smoothly with the curve for the interval to hold.
 */
export function predict(rows: readonly NightRow[], night: NightFit, what: WhatIf, figure: (curve: readonly { hours: number; oxygen: number }[]) => number): Prediction {
  const at = (moved: Moved): number => figure(predictedCurve(rows, night, what, moved));
  const value = at(unmoved);
  const sizes = night.covariance.map((row, place) => Math.sqrt(Math.max(0, row[place]!)) * 0.1 || 1e-6);
  const gradient = [0, 1, 2].map((place) => {
    const size = sizes[place]!;
    const by = (sign: number): Moved => ({ ...unmoved, ...(place === 0 ? { initial: sign * size } : place === 1 ? { exchange: sign * size } : { respiration: sign * size }) });
    return (at(by(1)) - at(by(-1))) / (2 * size);
  });
  let square = 0;
  for (const [a, row] of night.covariance.entries()) for (const [b, each] of row.entries()) square += gradient[a]! * gradient[b]! * each;
  return { value, halfWidth: studentQuantile(0.975, night.fit.degreesOfFreedom) * Math.sqrt(Math.max(0, square)) };
}

/** The least of a curve, in mg/L. */
export const lowest = (curve: readonly { oxygen: number }[]): number => Math.min(...curve.map((point) => point.oxygen));

/** Hours that a curve spends below a level in mg/L, by straight lines between its points. */
export function hoursUnder(curve: readonly { hours: number; oxygen: number }[], level: number): number {
  let total = 0;
  for (let index = 1; index < curve.length; index += 1) {
    const from = curve[index - 1]!;
    const to = curve[index]!;
    const start = level - from.oxygen;
    const end = level - to.oxygen;
    const length = to.hours - from.hours;
    if (start > 0 && end > 0) total += length;
    else if (start > 0) total += length * (start / (start - end));
    else if (end > 0) total += length * (end / (end - start));
  }
  return total;
}
