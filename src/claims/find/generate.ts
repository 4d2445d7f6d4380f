// Every formula worth trying for a number, computed with bare arithmetic on columns; what does not give the number is
// forgotten at once. The exact value is computed later, for the winners only.
import type { Unit } from '../../quantities/types.ts';
import { differenceUnit, perHour } from '../../quantities/units.ts';
import { hour, type Instant } from '../../time/instant.ts';
import { positionAt, positionFrom, sameKind, summaryOf } from './columns.ts';
import { compared } from './compareColumns.ts';
import { levelFormulas } from './levels.ts';
import { stretchBetween } from './moments.ts';
import { hours, one, percent, timeText, type Search } from './search.ts';
import type { Column, Family, Found, Stretch } from './types.ts';

/** Up to this many readings a column's every pair of times is tried; longer columns only between moments that words or plan name. */
const mostForPairs = 64;

/** All formulas that give the number, not yet ranked. */
export function generate(search: Search): void {
  const { columns } = search;
  const named = namedMoments(search);
  const stretches = stretchesOf(search, named);
  for (const column of columns) {
    single(search, column);
    summaries(search, column, [null, ...stretches]);
    changes(search, column, pairsOf(search, column, named));
    levelFormulas(search, column);
  }
  for (const a of columns) for (const b of columns) if (a !== b && a.place !== b.place && sameKind(a, b) && comparable(a, b)) compared(search, a, b, stretches);
  lengths(search, named);
}

/** The sun's times are tried where the words name them. */
const skyNames = new Set(['sunrise', 'sunset', 'dawn', 'dusk']);

/** Columns of two quantities are set against each other only as they were read: water and air. */
const comparable = (a: Column, b: Column): boolean => a.quantity === b.quantity || !(a.name.includes('(') || b.name.includes('('));

function namedMoments(search: Search): Instant[] {
  const { moments, words } = search;
  const all = new Set<Instant>([...[...moments.names].filter(([, name]) => !skyNames.has(name)).map(([instant]) => instant), ...words.moments.flatMap((each) => each.instants), ...words.stretches.flatMap((each) => [each.from, each.to])]);
  for (const [name, instants] of moments.all) for (const instant of skyNames.has(name) ? [] : instants) if (instant >= moments.start && instant <= moments.end) all.add(instant);
  return [...all].sort((a, b) => a - b);
}

/** Phases, and every stretch between two named moments. */
function stretchesOf(search: Search, named: readonly Instant[]): Stretch[] {
  const { moments, digits } = search;
  const stretches = [...moments.phases];
  const taken = new Set(stretches.map((each) => `${each.from}..${each.to}`));
  for (let i = 0; i < named.length; i += 1) {
    for (let j = i + 1; j < named.length; j += 1) {
      const key = `${named[i]}..${named[j]}`;
      if (taken.has(key) || stretches.length > 400) continue;
      taken.add(key);
      stretches.push(stretchBetween(moments, named[i]!, named[j]!, digits));
    }
  }
  return stretches;
}

function make(column: Column, family: Family, formula: string, value: number, unit: Unit, moments: readonly Instant[] = [], reached?: Instant): Found {
  return { formula, family, places: [column.place], quantity: column.quantity, moments, level: null, value, unit, ...(reached === undefined ? {} : { reached }) };
}

/** Readings at a time, and those at either end. */
function single(search: Search, column: Column): void {
  const { match, push } = search;
  if (!match.fits(column.unit)) return;
  const { times, values, unit, name } = column;
  for (let index = 0; index < times.length; index += 1) {
    if (!match.gives(values[index]!, unit)) continue;
    const time = times[index]!;
    push(make(column, 'reading', `at(${name}, ${timeText(search, time)})`, values[index]!, unit, [time]));
  }
  const [first, last] = [values[0]!, values.at(-1)!];
  if (match.gives(first, unit)) push(make(column, 'first', `first(${name})`, first, unit));
  if (match.gives(last, unit)) push(make(column, 'last', `last(${name})`, last, unit));
}

function summaries(search: Search, column: Column, stretches: readonly (Stretch | null)[]): void {
  const { match, push, words } = search;
  const { unit, name } = column;
  const fits = match.fits(unit);
  const difference = differenceUnit(unit);
  const counts = match.fits(one) && unit.symbol !== '1';
  if (!fits && !match.fits(difference) && !match.fits(perHour(difference)) && !counts) return;
  for (const stretch of stretches) {
    const found = summaryOf(column, stretch);
    if (!found) continue;
    const inside = stretch ? `, ${stretch.text}` : '';
    const moments = stretch ? [stretch.from, stretch.to] : [];
    if (fits) {
      if (match.gives(found.lowest, unit)) push(make(column, 'lowest', `min(${name}${inside})`, found.lowest, unit, moments, found.lowestAt));
      if (match.gives(found.highest, unit)) push(make(column, 'highest', `max(${name}${inside})`, found.highest, unit, moments, found.highestAt));
      if (found.count > 1 && match.gives(found.mean, unit)) push(make(column, 'mean', `mean(${name}${inside})`, found.mean, unit, moments));
    }
    if (counts && match.gives(found.count, one) && words.cues.has('readings')) push(make(column, 'count', `count(${name}${inside})`, found.count, one, moments));
    if (found.count > 1 && match.fits(difference) && match.gives(found.highest - found.lowest, difference) && words.cues.has('range')) {
      push(make(column, 'range', `range(${name}${inside})`, found.highest - found.lowest, difference, moments));
    }
    if (stretch === null || stretch.named) statistics(search, column, stretch);
  }
}

/** Median, deviation and steepest stretches: only where the words ask for them. */
function statistics({ match, push, words }: Search, column: Column, stretch: Stretch | null): void {
  const { times, values, unit, name } = column;
  const rate = perHour(differenceUnit(unit));
  const inside = stretch ? `, ${stretch.text}` : '';
  const moments = stretch ? [stretch.from, stretch.to] : [];
  const from = stretch ? positionFrom(times, stretch.from) : 0;
  let to = from;
  while (to < times.length && (!stretch || times[to]! <= stretch.to)) to += 1;
  if (to - from < 2) return;
  if (words.cues.has('median') && match.fits(unit)) {
    const sorted = values.slice(stretch?.opensAtLightsOff && times[from] === stretch.from ? from + 1 : from, to).sort();
    const middle = sorted.length >> 1;
    const median = sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
    if (match.gives(median, unit)) push(make(column, 'median', `median(${name}${inside})`, median, unit, moments));
  }
  if (match.fits(rate)) {
    let steepest = 0;
    let rising = 0;
    for (let index = from + 1; index < to; index += 1) {
      const slope = (values[index]! - values[index - 1]!) * hour / (times[index]! - times[index - 1]!);
      if (slope < steepest) steepest = slope;
      if (slope > rising) rising = slope;
    }
    if (steepest < 0 && match.gives(-steepest, rate)) push(make(column, 'steepest', `steepest-fall(${name}${inside})`, -steepest, rate, moments));
    if (rising > 0 && match.gives(rising, rate)) push(make(column, 'steepest', `steepest-rise(${name}${inside})`, rising, rate, moments));
  }
}

/** Pairs of readings between which a change is worth trying, as positions in the column. */
function pairsOf(search: Search, column: Column, named: readonly Instant[]): [number, number][] {
  const { times, values } = column;
  const pairs: [number, number][] = [];
  if (times.length <= mostForPairs) {
    for (let i = 0; i < times.length; i += 1) for (let j = i + 1; j < times.length; j += 1) pairs.push([i, j]);
    return pairs;
  }
  const positions = new Set<number>([0, times.length - 1]);
  let lowest = 0;
  let highest = 0;
  for (let index = 1; index < values.length; index += 1) { if (values[index]! < values[lowest]!) lowest = index; if (values[index]! > values[highest]!) highest = index; }
  positions.add(lowest).add(highest);
  for (const instant of named) { const position = positionAt(times, instant); if (position >= 0) positions.add(position); }
  for (const each of search.words.days) {
    for (let position = positionFrom(times, each.from), count = 0; position < times.length && times[position]! <= each.to && count < 50; position += 1, count += 1) positions.add(position);
  }
  const sorted = [...positions].sort((a, b) => a - b);
  for (let i = 0; i < sorted.length; i += 1) for (let j = i + 1; j < sorted.length; j += 1) pairs.push([sorted[i]!, sorted[j]!]);
  return pairs;
}

/** Falls, rises, percentages and rates between two readings. */
function changes(search: Search, column: Column, pairs: readonly [number, number][]): void {
  const { match, push, moments, digits } = search;
  const { times, values, unit, name } = column;
  const difference = differenceUnit(unit);
  const rate = perHour(difference);
  const [byChange, byPercent, byRate] = [match.fits(difference), match.fits(percent) && unit.offset === 0 && unit.kind !== 'ph' && unit.kind !== 'percentage', match.fits(rate)];
  if (!byChange && !byPercent && !byRate) return;
  const scale = unit.factor / difference.factor;
  const seen = new Set<string>();
  const add = (family: Family, formula: (inside: string) => string, value: number, own: Unit, i: number, j: number): void => {
    const whole = i === 0 && j === times.length - 1;
    const [from, to] = [times[i]!, times[j]!];
    const inside = whole && !digits.has(from) && !digits.has(to) ? '' : `, ${stretchBetween(moments, from, to, digits).text}`;
    const text = formula(inside);
    if (seen.has(text)) return;
    seen.add(text);
    push(make(column, family, text, value, own, inside === '' ? [] : [from, to]));
  };
  for (const [i, j] of pairs) {
    const change = values[j]! - values[i]!;
    if (change === 0) continue;
    const size = Math.abs(change) * scale;
    if (byChange && match.gives(size, difference)) add(change < 0 ? 'fall' : 'rise', (inside) => `${change < 0 ? 'fall' : 'rise'}(${name}${inside})`, size, difference, i, j);
    if (byPercent && values[i] !== 0) {
      const share = 100 * Math.abs(change / values[i]!);
      if (match.gives(share, percent)) add(change < 0 ? 'percent-fall' : 'percent-rise', (inside) => `${change < 0 ? 'percent-fall' : 'percent-rise'}(${name}${inside})`, share, percent, i, j);
    }
    if (byRate) {
      const speed = change * scale / ((times[j]! - times[i]!) / hour);
      if (match.gives(speed, rate)) add('rate', (inside) => `rate(${name}${inside})`, speed, rate, i, j);
      else if (speed < 0 && match.gives(-speed, rate)) add('rate', (inside) => `-rate(${name}${inside})`, -speed, rate, i, j);
    }
  }
}

/** Lengths of time between two named moments. */
function lengths({ match, push, moments, digits }: Search, named: readonly Instant[]): void {
  if (!match.fits(hours)) return;
  for (let i = 0; i < named.length; i += 1) {
    for (let j = i + 1; j < named.length; j += 1) {
      const length = (named[j]! - named[i]!) / hour;
      if (!match.gives(length, hours)) continue;
      const stretch = stretchBetween(moments, named[i]!, named[j]!, digits);
      push({ formula: `duration(${stretch.text})`, family: 'duration', places: [], quantity: null, moments: [named[i]!, named[j]!], level: null, value: length, unit: hours });
    }
  }
}
