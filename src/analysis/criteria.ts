// The parts of a criterion that run over several days: means of daily means or daily minima. A run that is too short is never
// judged by them.
import type { CriterionPart } from '../protocol/criteria.ts';
import { hour, type Zone } from '../time/instant.ts';
import { formatDate } from '../time/text.ts';
import type { TimedValue } from './points.ts';

/** Days a part needs; 0 for the minimum at all times. */
const daysNeeded: Readonly<Record<CriterionPart, number>> = { 'minimum': 0, '7-day mean': 7, '7-day mean minimum': 7, '30-day mean': 30 };

/** A day counts when its readings are at most this far apart, and from its first and to its last hours. Common practice, no source. */
const widestGap = 6 * hour;

interface Day { readonly date: string; readonly mean: number; readonly lowest: number; readonly counts: boolean }

export type DaysVerdict =
  | { readonly assessable: false; readonly has: number; readonly needs: number }
  /** The lowest of all runs of so many days. */
  | { readonly assessable: true; readonly lowest: number; readonly from: string };

function dayOf(date: string, points: readonly TimedValue[]): Day {
  let area = 0;
  let widest = 0;
  for (let index = 1; index < points.length; index += 1) {
    const length = points[index]!.time - points[index - 1]!.time;
    widest = Math.max(widest, length);
    area += length * (points[index]!.value + points[index - 1]!.value) / 2;
  }
  const span = points.at(-1)!.time - points[0]!.time;
  return {
    date, mean: span > 0 ? area / span : points[0]!.value, lowest: Math.min(...points.map((point) => point.value)),
    counts: span >= 18 * hour && widest <= widestGap,
  };
}

function byDay(points: readonly TimedValue[], zone: Zone): Day[] {
  const days = new Map<string, TimedValue[]>();
  for (const point of points) {
    const date = formatDate(point.time, zone);
    days.set(date, [...(days.get(date) ?? []), point]);
  }
  return [...days].map(([date, each]) => dayOf(date, each));
}

const follows = (before: string, date: string): boolean => Date.parse(`${date}T00:00:00Z`) - Date.parse(`${before}T00:00:00Z`) === 24 * hour;

/**
 * The lowest mean over so many consecutive local days: of the daily means (straight lines between readings) or of the daily
 * minima. Not assessable where no such row of days is covered: a day counts when its readings span 18 hours with gaps of at most six.
 */
export function assessDays(points: readonly TimedValue[], part: Exclude<CriterionPart, 'minimum'>, zone: Zone): DaysVerdict {
  const needs = daysNeeded[part];
  let longest = 0;
  let run: Day[] = [];
  let found: { lowest: number; from: string } | null = null;
  for (const day of byDay(points, zone)) {
    run = !day.counts ? [] : run.length > 0 && follows(run.at(-1)!.date, day.date) ? [...run, day] : [day];
    longest = Math.max(longest, run.length);
    if (run.length < needs) continue;
    const last = run.slice(-needs);
    const mean = last.reduce((sum, each) => sum + (part === '7-day mean minimum' ? each.lowest : each.mean), 0) / needs;
    if (!found || mean < found.lowest) found = { lowest: mean, from: last[0]!.date };
  }
  return found ? { assessable: true, ...found } : { assessable: false, has: longest, needs };
}
