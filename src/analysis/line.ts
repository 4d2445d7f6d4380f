// Least squares line through points in time, about the centre of the data so that no digits are lost.
import { hour } from '../time/instant.ts';
import type { TimedValue } from './points.ts';

export interface Line {
  /** Units an hour. */
  readonly slope: number;
  /** Weight of each point in the slope: slope = sum of weight x value. */
  readonly weights: readonly number[];
  /** Value at the mean time. */
  readonly centre: number;
}

/** Ordinary least squares of value on time in hours. null: fewer than two different times. */
export function leastSquaresLine(points: readonly TimedValue[]): Line | null {
  if (points.length < 2) return null;
  const origin = points[0]!.time;
  const hours = points.map((point) => (point.time - origin) / hour);
  const meanHours = hours.reduce((sum, each) => sum + each, 0) / hours.length;
  const meanValue = points.reduce((sum, each) => sum + each.value, 0) / points.length;
  const spread = hours.reduce((sum, each) => sum + (each - meanHours) ** 2, 0);
  if (!(spread > 0)) return null;
  const weights = hours.map((each) => (each - meanHours) / spread);
  const slope = points.reduce((sum, each, index) => sum + weights[index]! * (each.value - meanValue), 0);
  return Number.isFinite(slope) ? { slope, weights, centre: meanValue } : null;
}
