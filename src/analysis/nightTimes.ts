// Intervals of times read off a fitted night: when a level is reached, and when production meets respiration.
import { studentQuantile } from '../statistics/distributions.ts';
import type { Interval } from '../statistics/outcome.ts';
import { seededRandom } from '../statistics/random.ts';
import { balanceHours, hoursToLevel, type NightFit, type NightRow } from './nightFit.ts';

/**
 * 95 % interval, in hours, of the time to a level: by first order from the fit's covariance and Student's t. `high` is null
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

/** Draws of the balance point's interval; always the same ones. */
const draws = 400;

/**
 * 95 % interval, in hours, of the balance point: the exchange drawn from its interval and every reading from the scatter about
 * the fit, 400 times with a fixed seed (parametric bootstrap). null where one draw in twenty finds no balance.
 */
export function balanceInterval(rows: readonly NightRow[], night: NightFit): Interval | null {
  const random = seededRandom('balance point');
  const error = (night.exchangeInterval.high - night.exchangeInterval.low) / 2 / studentQuantile(0.975, night.fit.degreesOfFreedom);
  const found: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    const exchange = night.exchange + error * random.normal();
    const hours = balanceHours(rows.map((row) => ({ ...row, oxygen: row.oxygen + night.fit.residualDeviation * random.normal() })), exchange);
    if (hours !== null) found.push(hours);
  }
  if (found.length < 0.95 * draws) return null;
  found.sort((a, b) => a - b);
  const at = (share: number): number => found[Math.min(found.length - 1, Math.floor(share * found.length))]!;
  return { low: at(0.025), high: at(0.975) };
}
