// Two columns of one kind against each other: their difference at a time, at its widest, on average; their changes; their extremes.
import type { Unit } from '../../quantities/types.ts';
import { convert, differenceUnit } from '../../quantities/units.ts';
import type { Instant } from '../../time/instant.ts';
import { positionFrom, summaryOf } from './columns.ts';
import { one, percent, timeText, type Search } from './search.ts';
import type { Column, Family, Found, Stretch } from './types.ts';

interface Pair {
  readonly a: Column;
  readonly b: Column;
  readonly difference: Unit;
  /** Of a difference in the first column's unit. */
  readonly scale: number;
  /** A value of the second column in the first one's unit. */
  readonly other: (value: number) => number;
  readonly make: (family: Family, formula: string, value: number, unit: Unit, moments?: readonly Instant[]) => Found;
}

function pairOf(a: Column, b: Column): Pair {
  const difference = differenceUnit(a.unit);
  const [places, quantity] = [[a.place, b.place], a.quantity === b.quantity ? a.quantity : null];
  return {
    a, b, difference, scale: a.unit.factor / difference.factor,
    other: (value) => (a.unit === b.unit ? value : convert(value, b.unit, a.unit)),
    make: (family, formula, value, unit, moments = []) => ({ formula, family, places, quantity, moments, level: null, value, unit }),
  };
}

/** Everything worth trying of two columns; changes and extremes only of one quantity. */
export function compared(search: Search, a: Column, b: Column, stretches: readonly Stretch[]): void {
  const { match, words } = search;
  const pair = pairOf(a, b);
  const same = a.quantity === b.quantity;
  const byDifference = match.fits(pair.difference);
  const byPercent = same && match.fits(percent) && a.unit.offset === 0 && a.unit.kind !== 'ph' && a.unit.kind !== 'percentage';
  const byRatio = same && match.fits(one) && words.cues.has('times');
  if (!byDifference && !byPercent && !byRatio) return;
  differences(search, pair, byDifference, byPercent);
  if (!same) return;
  changesCompared(search, pair, [null, ...stretches], byDifference, byRatio);
  if (byDifference) extremesCompared(search, pair);
}

/** At every time that both columns have, the widest of these, and their mean. */
function differences(search: Search, { a, b, difference, scale, other, make }: Pair, byDifference: boolean, byPercent: boolean): void {
  const { match, push } = search;
  let widest = -Infinity;
  let sum = 0;
  let count = 0;
  let at = 0;
  for (let i = 0; i < a.times.length; i += 1) {
    const time = a.times[i]!;
    while (at < b.times.length && b.times[at]! < time) at += 1;
    if (b.times[at] !== time) continue;
    const second = other(b.values[at]!);
    const gap = (a.values[i]! - second) * scale;
    if (gap > widest) widest = gap;
    sum += gap;
    count += 1;
    if (byDifference && gap > 0 && match.gives(gap, difference)) push(make('difference', `at(${a.name}, ${timeText(search, time)}) - at(${b.name}, ${timeText(search, time)})`, gap, difference, [time]));
    if (byPercent && second !== 0) {
      const share = 100 * (a.values[i]! - second) / second;
      const formula = (): string => `at(percent-difference(${a.name}, ${b.name}), ${timeText(search, time)})`;
      if (match.gives(share, percent)) push(make('percent-difference', formula(), share, percent, [time]));
      else if (match.gives(-share, percent)) push(make('percent-difference', `-${formula()}`, -share, percent, [time]));
    }
  }
  if (count < 2 || !byDifference) return;
  if (match.gives(widest, difference)) push(make('widest', `max(difference(${a.name}, ${b.name}))`, widest, difference));
  if (sum > 0 && match.gives(sum / count, difference)) push(make('mean-difference', `mean(difference(${a.name}, ${b.name}))`, sum / count, difference));
}

/** How much more the one fell or rose than the other, and how many times as much. */
function changesCompared({ match, push }: Search, { a, b, difference, scale, make }: Pair, stretches: readonly (Stretch | null)[], byDifference: boolean, byRatio: boolean): void {
  const factor = b.unit.factor / a.unit.factor;
  for (const stretch of stretches) {
    const [x, y] = [endsOf(a, stretch), endsOf(b, stretch)];
    if (!x || !y) continue;
    const inside = stretch ? `, ${stretch.text}` : '';
    const named = stretch ? [stretch.from, stretch.to] : [];
    const [first, second] = [x.last - x.first, (y.last - y.first) * factor];
    const verb = first < 0 ? 'fall' : 'rise';
    if (byDifference && first * second > 0) {
      const gap = (Math.abs(first) - Math.abs(second)) * scale;
      if (gap > 0 && match.gives(gap, difference)) push(make('compared', `${verb}(${a.name}${inside}) - ${verb}(${b.name}${inside})`, gap, difference, named));
    }
    if (byRatio && second !== 0 && match.gives(first / second, one)) push(make('ratio', `${verb}(${a.name}${inside}) / ${verb}(${b.name}${inside})`, first / second, one, named));
  }
}

function extremesCompared({ match, push }: Search, { a, b, difference, scale, other, make }: Pair): void {
  const [x, y] = [summaryOf(a, null), summaryOf(b, null)];
  if (!x || !y) return;
  for (const [which, name, family] of [['lowest', 'min', 'compared'], ['highest', 'max', 'compared'], ['mean', 'mean', 'mean-difference']] as const) {
    const gap = (x[which] - other(y[which])) * scale;
    if (gap > 0 && match.gives(gap, difference)) push(make(family, `${name}(${a.name}) - ${name}(${b.name})`, gap, difference));
  }
}

function endsOf(column: Column, stretch: Stretch | null): { first: number; last: number } | null {
  const from = stretch ? positionFrom(column.times, stretch.from) : 0;
  let to = stretch ? positionFrom(column.times, stretch.to) : column.times.length - 1;
  if (to >= column.times.length || (stretch && column.times[to]! > stretch.to)) to -= 1;
  return to > from ? { first: column.values[from]!, last: column.values[to]! } : null;
}
