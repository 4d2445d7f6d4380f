// What looks wrong in a row before it is logged: a value its column cannot have, a jump, swapped columns, a slipped unit,
// more oxygen than the water holds. Only warnings: the keeper knows what the meter showed.
import type { Note } from '../experiment/types.ts';
import { isUsable } from '../dataset/series.ts';
import { convert, convertible, parseUnit } from '../quantities/units.ts';
import { plausibleRange, slippedUnit } from '../readings/plausible.ts';
import type { Instant } from '../time/instant.ts';
import { hour } from '../time/instant.ts';
import { oxygenSolubility } from '../water/oxygenSolubility.ts';
import type { Message } from './edit.ts';
import { lastReading, type PlannedColumn } from './planRow.ts';

export interface TypedValue { readonly column: PlannedColumn; readonly value: number | null; readonly text: string }
/** A message and the positions (in the typed order) of the values it is about. */
export interface Suspicion { readonly message: Message; readonly at: readonly number[] }

const short = (value: number): string => String(Number(value.toPrecision(4)));

/** Everything that looks wrong in the typed values, at the time they are to be logged. */
export function suspicions(values: readonly TypedValue[], note: Note, time: Instant): Suspicion[] {
  const found: Suspicion[] = [];
  const odd = new Set<number>();
  values.forEach(({ column, value, text }, at) => {
    const range = value === null ? null : plausibleRange(column.measure, column.unit);
    if (!range || value === null || (value >= range.low && value <= range.high)) return;
    odd.add(at);
    const perhaps = slippedUnit(value, column.measure, column.unit);
    const args = { head: column.id, text, unit: column.unit!.print, low: short(range.low), high: short(range.high), perhaps: perhaps === null ? '' : parseUnit(perhaps)?.print ?? perhaps };
    found.push({ message: { code: perhaps === null ? 'out-of-range' : 'unit-slip', args }, at: [at] });
  });
  values.forEach((typed, at) => {
    if (odd.has(at) || typed.value === null) return;
    const before = lastReading(typed.column, time);
    if (!before) return;
    const reach = usualStep(typed.column, time);
    if (reach === null || Math.abs(toSeries(typed) - before.value) <= reach) return;
    odd.add(at);
    found.push({ message: { code: 'jump', args: { head: typed.column.id, before: before.text, text: typed.text } }, at: [at] });
  });
  const swaps = swapped(values, odd, time);
  const explained = new Set(swaps.flatMap((swap) => swap.at));
  return [...swaps, ...found.filter((each) => !each.at.every((at) => explained.has(at))), ...oversaturated(values, odd, note, time)];
}

/** A typed value in the unit of its series. */
function toSeries({ column, value }: TypedValue): number {
  const { series, unit } = column;
  return series && unit && value !== null && unit.symbol !== series.unit.symbol && convertible(unit, series.unit) ? convert(value, unit, series.unit) : value ?? 0;
}

/**
 * How far a reading may lie from the one before: five times the ninth decile of the steps so far (for as much longer a
 * pause as it is, at most four intervals), at least a fiftieth of the plausible range; a tenth of that range before four readings.
 */
export function usualStep(column: PlannedColumn, time: Instant): number | null {
  const { series } = column;
  const range = series ? plausibleRange(column.measure, series.unit) : null;
  if (!series) return null;
  const span = range ? range.high - range.low : null;
  const steps: number[] = [];
  const gaps: number[] = [];
  let before = -1;
  for (let index = 0; index < series.times.length && series.times[index]! < time; index += 1) {
    if (!isUsable(series, index)) continue;
    if (before >= 0) {
      steps.push(Math.abs(series.values[index]! - series.values[before]!));
      gaps.push(series.times[index]! - series.times[before]!);
    }
    before = index;
  }
  if (steps.length < 3) return span === null ? null : span / 10;
  const usualGap = [...gaps].sort((a, b) => a - b)[gaps.length >> 1]! || hour;
  const pause = Math.min(4, Math.max(1, (time - series.times[before]!) / usualGap));
  const large = [...steps].sort((a, b) => a - b)[Math.min(steps.length - 1, Math.floor(steps.length * 0.9))]!;
  return Math.max(5 * large * pause, span === null ? 0 : span / 50);
}

/** Pairs of values that each fit where the other stands, one of them at least being odd where it is. */
function swapped(values: readonly TypedValue[], odd: ReadonlySet<number>, time: Instant): Suspicion[] {
  const found: Suspicion[] = [];
  const used = new Set<number>();
  const misfit = (value: TypedValue, column: PlannedColumn): number | null => {
    const before = lastReading(column, time);
    const range = column.series ? plausibleRange(column.measure, column.series.unit) : null;
    const reach = usualStep(column, time) ?? (range ? (range.high - range.low) / 10 : null);
    return !before || reach === null || reach <= 0 || value.value === null ? null : Math.abs(value.value - before.value) / reach;
  };
  for (const one of odd) {
    for (let other = 0; other < values.length; other += 1) {
      if (other === one || used.has(one) || used.has(other)) continue;
      const here = [misfit(values[one]!, values[one]!.column), misfit(values[other]!, values[other]!.column)];
      const there = [misfit(values[one]!, values[other]!.column), misfit(values[other]!, values[one]!.column)];
      if ([...here, ...there].some((each) => each === null)) continue;
      if (there.every((each) => each! <= 1) && here[0]! + here[1]! > 2 * (there[0]! + there[1]!) + 1) {
        used.add(one).add(other);
        found.push({ message: { code: 'swapped', args: { head: values[one]!.column.id, other: values[other]!.column.id } }, at: [one, other] });
      }
    }
  }
  return found;
}

/** Dissolved oxygen above twice saturation, or above 1.3 times in the dark, with the temperature and pressure at hand. */
function oversaturated(values: readonly TypedValue[], odd: ReadonlySet<number>, note: Note, time: Instant): Suspicion[] {
  const found: Suspicion[] = [];
  const { protocol } = note;
  const [milligrams, celsius, hectopascal] = [parseUnit('mg/L'), parseUnit('degC'), parseUnit('hPa')];
  if (!protocol || !milligrams || !celsius || !hectopascal) return found;
  const measured = (typed: TypedValue): string => typed.column.measure?.what?.value ?? '';
  const sound = (typed: TypedValue): boolean => typed.value !== null && !odd.has(values.indexOf(typed));
  const inUnit = (typed: TypedValue, unit: typeof celsius): number | null => (
    typed.value !== null && typed.column.unit && convertible(typed.column.unit, unit) ? convert(typed.value, typed.column.unit, unit) : null);
  const dark = protocol.phases.some((phase) => /^dark(?:-\d+)?$/u.test(phase.id) && time > phase.window.from && time < phase.window.to);
  const limit = dark ? 130 : 200;
  values.forEach((typed, at) => {
    if (measured(typed) !== 'dissolved oxygen') return;
    const oxygen = inUnit(typed, milligrams);
    const water = values.find((each) => each.column.place === typed.column.place && measured(each) === 'water temperature' && sound(each));
    const air = values.find((each) => measured(each) === 'air pressure' && each.column.measure?.level?.value !== 'sea' && sound(each));
    const temperature = water ? inUnit(water, celsius) : null;
    if (oxygen === null || temperature === null) return;
    const salinity = protocol.tanks.find((tank) => tank.id === typed.column.place)?.salinity?.value.value ?? 0;
    const full = oxygenSolubility({ temperature, salinity, pressure: (air ? inUnit(air, hectopascal) : null) ?? 1013.25 });
    if (!('value' in full) || full.value <= 0) return;
    const percent = 100 * oxygen / full.value;
    if (percent > limit) found.push({ message: { code: 'saturation', args: { head: typed.column.id, percent: percent.toFixed(0) } }, at: [at] });
  });
  return found;
}
