// Explains a difference of oxygen between two tanks: the part that temperature, pressure and salinity account for, and the rest.
import { explainGap, type Gap } from '../../analysis/gap.ts';
import { formatNumber } from '../../quantities/format.ts';
import { combine, isFailure, toUnit } from '../../quantities/value.ts';
import type { NumberValue } from '../../quantities/types.ts';
import type { Call } from '../call.ts';
import { joinByTime, pointNumber } from '../seriesValues.ts';
import type { FormulaValue, SeriesPoint, SeriesValue } from '../types.ts';
import { windowParameter, type FunctionEntry, type Signature } from './entry.ts';
import { oxygenRows } from './oxygen.ts';
import { celsius, hectopascal, oxygenMilligrams, pressureOf, salinityOf, temperatureOf, type Row } from './waterRows.ts';

interface Side { readonly byTime: ReadonlyMap<number, readonly [SeriesPoint, SeriesPoint]>; readonly at: (time: number, what: 'temperature' | 'pressure' | 'salinity') => number }

function sideOf(call: Call, index: number): Side | null {
  const joined = oxygenRows(call, null, call.window(2), index);
  const place = call.series(index).origin?.place;
  if (!joined || place === undefined || !call.within(joined.pairs.map(([oxygen]) => oxygen), index)) return null;
  const inputs: Record<string, Row | null> = { temperature: temperatureOf(call, place), pressure: pressureOf(call, place), salinity: salinityOf(call, place) };
  const units: Record<string, typeof celsius> = { temperature: celsius, pressure: hectopascal };
  const at = (time: number, what: string): number => {
    const input = inputs[what];
    if (!input) return Number.NaN;
    const value = input.type === 'series' ? pointOf(input, time) : input;
    if (!value) return Number.NaN;
    const unit = units[what];
    const plain = unit ? toUnit(value, unit) : value;
    return isFailure(plain) ? Number.NaN : plain.value;
  };
  return { byTime: new Map(joined.pairs.map((pair) => [pair[0].time, pair])), at };
}

function pointOf(series: SeriesValue, time: number): NumberValue | null {
  const point = series.points.find((each) => each.time === time);
  return point ? pointNumber(point, series.unit) : null;
}

function gap(call: Call, part: 'explained' | 'left'): FormulaValue | null {
  const one = sideOf(call, 0);
  const other = sideOf(call, 1);
  if (!one || !other) return null;
  const times = joinByTime(call.series(0), call.series(1)).pairs.map(([point]) => point.time).filter((time) => one.byTime.has(time) && other.byTime.has(time));
  if (times.length === 0) return call.fail('no-joint-rows', { function: call.name, name: `${call.run.textOf(call.rangeOf(0))} and ${call.run.textOf(call.rangeOf(1))}` });
  const sums: Record<keyof Gap, number> = { difference: 0, temperature: 0, pressure: 0, salinity: 0, left: 0 };
  const parts: { value: NumberValue; derivative: number }[] = [];
  let value = 0;
  for (const time of times) {
    const a = one.byTime.get(time)!;
    const b = other.byTime.get(time)!;
    call.use([a[0], b[0]]);
    const [c1, s1, c2, s2] = [a[0], a[1], b[0], b[1]].map((point) => pointNumber(point, oxygenMilligrams)) as [NumberValue, NumberValue, NumberValue, NumberValue];
    const step = s1.value - s2.value;
    const saturation = (c1.value / s1.value + c2.value / s2.value) / 2;
    const explained = saturation * step;
    value += (part === 'explained' ? explained : c1.value - c2.value - explained) / times.length;
    const sign = part === 'explained' ? 1 : -1;
    const own = part === 'left' ? 1 : 0;
    parts.push(
      { value: c1, derivative: (sign * step / (2 * s1.value) + own) / times.length }, { value: c2, derivative: (sign * step / (2 * s2.value) - own) / times.length },
      { value: s1, derivative: sign * (saturation - c1.value * step / (2 * s1.value ** 2)) / times.length },
      { value: s2, derivative: sign * (-saturation - c2.value * step / (2 * s2.value ** 2)) / times.length },
    );
    const row = explainGap(
      { oxygen: c1.value, temperature: one.at(time, 'temperature'), pressure: one.at(time, 'pressure'), salinity: one.at(time, 'salinity') },
      { oxygen: c2.value, temperature: other.at(time, 'temperature'), pressure: other.at(time, 'pressure'), salinity: other.at(time, 'salinity') },
    );
    for (const key of Object.keys(sums) as (keyof Gap)[]) sums[key] += row ? row[key] / times.length : Number.NaN;
  }
  if (Object.values(sums).every(Number.isFinite)) {
    call.remark('gap-parts', Object.fromEntries([...Object.entries(sums).map(([key, each]) => [key, formatNumber(each, 2)]), ['count', times.length]]));
  }
  return { ...combine(value, oxygenMilligrams, parts), decimals: 2 };
}

const signature: readonly Signature[] = [{
  parameters: [
    { name: 'oxygen', type: 'series', about: 'a column of dissolved oxygen of one tank, such as mat.DO' },
    { name: 'other', type: 'series', about: 'that of another tank, such as open.DO' },
    { ...windowParameter, about: 'a stretch of time; all rows that both tanks have without one' },
  ],
  options: [],
}];
const source = 'Benson and Krause (1984), Limnology and Oceanography 29(3), 620–632, for the solubility';
const on = 'the oxygen and temperature of both tanks at 05:00';

export const gapFunctions: readonly FunctionEntry[] = [
  {
    name: 'gap-explained', group: 'comparison', gives: 'number', units: 'mg/L', signatures: signature,
    definition: 'How much of the mean difference of oxygen between two tanks goes with their temperature, pressure and salinity, because the water of one can hold more; the working gives each part.',
    equation: 'mean of s̄ · (Cs₁ − Cs₂), s = C / Cs', source,
    example: { formula: 'gap-explained(mat.DO, open.DO, 02:00..02:00)', on: 'the oxygen and temperature of both tanks at 02:00', gives: '-0.01 mg/L' },
    words: 'the part of the difference of {1} from {2} that temperature, pressure and salinity explain{window}',
    evaluate: (call) => gap(call, 'explained'),
  },
  {
    name: 'gap-left', group: 'comparison', gives: 'number', units: 'mg/L', signatures: signature,
    definition: 'How much of the mean difference of oxygen between two tanks is left when what their temperature, pressure and salinity explain is taken out.',
    equation: 'mean of (C₁ − C₂) − s̄ · (Cs₁ − Cs₂)', source,
    example: { formula: 'gap-left(mat.DO, open.DO, 05:00..05:00)', on, gives: '-2.26 mg/L' },
    words: 'the difference of {1} from {2} that temperature, pressure and salinity do not explain{window}',
    evaluate: (call) => gap(call, 'left'),
  },
];
