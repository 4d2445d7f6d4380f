// Ticks that people can read: round numbers on a value axis, round clock times on a time axis.
import { day, hour, minute, type Instant } from '../time/instant.ts';

export interface Axis { readonly low: number; readonly high: number; readonly ticks: readonly number[]; readonly decimals: number }

/** A value axis a little wider than [low, high], with about `count` round ticks inside it. */
export function valueAxis(low: number, high: number, count: number): Axis {
  const spread = high - low > 0 ? high - low : Math.max(Math.abs(high) * 0.02, 0.1);
  const margin = spread * 0.06;
  const from = high - low > 0 ? low - margin : low - spread / 2;
  const to = high - low > 0 ? high + margin : high + spread / 2;
  const rough = spread / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 2.5, 5, 10].find((each) => each * power >= rough * 0.999) ?? 10) * power;
  const decimals = Math.max(0, Math.min(8, Math.ceil(-Math.log10(step) - 1e-9) + (Math.abs(step / power - 2.5) < 1e-9 ? 1 : 0)));
  const round = (value: number): number => Number(value.toFixed(decimals + 2));
  const ticks: number[] = [];
  for (let at = Math.ceil(from / step - 1e-9); at * step <= to + step * 1e-9 && ticks.length < 40; at += 1) ticks.push(round(at * step));
  return { low: round(from), high: round(to), ticks, decimals };
}

const steps = [minute, 2 * minute, 5 * minute, 10 * minute, 15 * minute, 30 * minute, hour, 2 * hour, 3 * hour, 6 * hour, 12 * hour,
  day, 2 * day, 7 * day, 14 * day, 28 * day, 91 * day, 182 * day, 365 * day];

/** Clock times between two wall-clock numbers, at most `count` of them, on round hours or days. */
export function timeTicks(from: Instant, to: Instant, count: number): number[] {
  const step = steps.find((each) => (to - from) / each <= count) ?? Math.ceil((to - from) / count / day) * day;
  const ticks: number[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to && ticks.length < 60; at += step) ticks.push(at);
  return ticks;
}
