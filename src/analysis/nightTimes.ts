// The interval of the time at which a fitted night reaches a level.
import { studentQuantile } from '../statistics/distributions.ts';
import { hoursToLevel, type NightFit } from './nightFit.ts';

/**
 * 95 % interval, in hours from the first row, of the time to a level in mg/L: by first order from the fit's covariance and Student's t. `high` is null
 * where the level may never be reached.
 */
export function timeToInterval(night: NightFit, level: number): { readonly low: number; readonly high: number | null } | null {
  const value = hoursToLevel(night, level);
  if (value === null) return null;
  const meanSolubility = night.equilibrium + night.respiration / night.exchange;
  const at = (initial: number, exchange: number, respiration: number): number | null =>
    hoursToLevel({ ...night, initial, exchange, respiration, equilibrium: meanSolubility - respiration / exchange }, level);
  const parameters = [night.initial, night.exchange, night.respiration] as const;
  const gradient: number[] = [];
  for (const place of [0, 1, 2]) {
    const size = 0.05 * Math.sqrt(Math.max(0, night.covariance[place]![place]!)) || 1e-6;
    const moved = (sign: number): number | null => at(parameters[0] + (place === 0 ? sign * size : 0), parameters[1] + (place === 1 ? sign * size : 0), parameters[2] + (place === 2 ? sign * size : 0));
    const above = moved(1);
    const below = moved(-1);
    if (above === null || below === null) return { low: 0, high: null };
    gradient.push((above - below) / (2 * size));
  }
  let square = 0;
  for (const [a, row] of night.covariance.entries()) for (const [b, each] of row.entries()) square += gradient[a]! * gradient[b]! * each;
  const half = studentQuantile(0.975, night.fit.degreesOfFreedom) * Math.sqrt(Math.max(0, square));
  return { low: Math.max(0, value - half), high: half > value ? null : value + half };
}
