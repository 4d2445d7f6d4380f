// The balance point of a morning: when production begins to outweigh respiration, the exchange at the surface taken out.
import type { Interval } from '../statistics/outcome.ts';
import { studentQuantile } from '../statistics/distributions.ts';
import { risingLevels, type Level } from '../statistics/isotonic.ts';
import { seededRandom } from '../statistics/random.ts';
import type { NightFit, NightRow } from './nightFit.ts';

interface Step { readonly hours: number; readonly length: number; readonly net: number }

/** Between neighbouring rows: change less exchange, mg/L an hour, at the middle of the step. */
function stepsOf(rows: readonly NightRow[], exchange: number): Step[] {
  return rows.slice(1).map((to, index) => {
    const from = rows[index]!;
    const length = to.hours - from.hours;
    const deficit = (from.solubility - from.oxygen + to.solubility - to.oxygen) / 2;
    return { hours: (from.hours + to.hours) / 2, length, net: (to.oxygen - from.oxygen) / length - exchange * deficit };
  });
}

interface Morning {
  readonly steps: readonly Step[];
  /** The net rates up to the height of the day, allowed only to rise. */
  readonly levels: readonly Level[];
}

/**
 * What lies between the height of the day, where the sum of the net rates is greatest after its least, and the first row. Over
 * that stretch the light grows, and the net rate with it: what falls there is scatter. null where the sum is nowhere below its start or
 * never rises again.
 */
function morningOf(rows: readonly NightRow[], exchange: number): Morning | null {
  const steps = stepsOf(rows, exchange);
  const sums = [0];
  for (const step of steps) sums.push(sums.at(-1)! + step.net * step.length);
  const lowest = sums.indexOf(Math.min(...sums));
  const rising = sums.slice(lowest);
  const height = lowest + rising.indexOf(Math.max(...rising));
  if (lowest === 0 || height === lowest) return null;
  const used = steps.slice(0, height);
  return { steps: used, levels: risingLevels(used.map((step) => step.net), used.map((step) => step.length)) };
}

/** Middle of a level's steps, in hours. */
function middleOf(steps: readonly Step[], level: Level): number {
  return steps.slice(level.from, level.to).reduce((sum, step) => sum + step.hours * step.length, 0) / level.weight;
}

/**
 * When the net rate (change less exchange) turns from loss to gain: the net rates between rows, allowed only to rise, joined by
 * straight lines between the middles of their levels. Hours; null where they never turn. Single rates cross zero by their scatter
 * long before the balance where readings are close together, which is why they are levelled first.
 */
export function balanceHours(rows: readonly NightRow[], exchange: number): number | null {
  const morning = morningOf(rows, exchange);
  if (!morning) return null;
  const { steps, levels } = morning;
  const after = levels.findIndex((level) => level.value >= 0);
  const [from, to] = [levels[after - 1], levels[after]];
  if (!from || !to) return null;
  const start = middleOf(steps, from);
  return start + (middleOf(steps, to) - start) * (-from.value / (to.value - from.value));
}

/** The rows with the scatter taken out: each moved to where the levelled rates lead. */
function levelled(rows: readonly NightRow[], exchange: number): readonly NightRow[] {
  const morning = morningOf(rows, exchange);
  if (!morning) return rows;
  const moved = [0];
  for (const level of morning.levels) {
    for (const step of morning.steps.slice(level.from, level.to)) moved.push(moved.at(-1)! + (level.value - step.net) * step.length);
  }
  return rows.map((row, index) => ({ ...row, oxygen: row.oxygen + (moved[index] ?? 0) }));
}

/** Draws of the balance point's interval; always the same ones. */
const draws = 400;

/**
 * 95 % interval, in hours, of the balance point: the exchange drawn from its interval, and about the levelled readings the scatter
 * of the fit, 400 times with a fixed seed (parametric bootstrap). The draws are taken for how far a balance point strays, not for where
 * it lies: their median, which levelling twice pulls towards the middle of the steps, is laid on the balance point found. null where
 * there is none, or where one draw in twenty finds none.
 */
export function balanceInterval(rows: readonly NightRow[], night: NightFit): Interval | null {
  const balance = balanceHours(rows, night.exchange);
  if (balance === null) return null;
  const random = seededRandom('balance point');
  const error = (night.exchangeInterval.high - night.exchangeInterval.low) / 2 / studentQuantile(0.975, night.fit.degreesOfFreedom);
  const smooth = levelled(rows, night.exchange);
  const found: number[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    const exchange = night.exchange + error * random.normal();
    const hours = balanceHours(smooth.map((row) => ({ ...row, oxygen: row.oxygen + night.fit.residualDeviation * random.normal() })), exchange);
    if (hours !== null) found.push(hours);
  }
  if (found.length < 0.95 * draws) return null;
  found.sort((a, b) => a - b);
  const at = (share: number): number => found[Math.min(found.length - 1, Math.floor(share * found.length))]!;
  return { low: balance + at(0.025) - at(0.5), high: balance + at(0.975) - at(0.5) };
}
