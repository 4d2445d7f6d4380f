// Functions of dissolved oxygen: what the water can hold, how full it is, what is lacking. Benson and Krause (1984).
import { measureOf } from '../../dataset/readingValue.ts';
import { measureByName } from '../../quantities/measures.ts';
import { parseUnit } from '../../quantities/units.ts';
import { isFailure, subtract } from '../../quantities/value.ts';
import { exactValue } from '../../quantities/value.ts';
import { oxygenSolubility } from '../../water/oxygenSolubility.ts';
import { convertOxygen } from '../../water/oxygenUnits.ts';
import { isWaterProblem } from '../../water/outcome.ts';
import type { Call } from '../call.ts';
import { mapSeries } from '../operations.ts';
import { joinByTime, mergedParts, pointNumber } from '../seriesValues.ts';
import type { FormulaValue, SeriesPoint, SeriesValue, WindowValue } from '../types.ts';
import { windowParameter, type FunctionEntry, type Parameter, type Signature } from './entry.ts';
import { celsius, evaluateRows, hectopascal, oxygenMilligrams, practical, pressureOf, salinityOf, temperatureOf, waterFailure, type Row } from './waterRows.ts';
import { between } from '../../analysis/points.ts';
import { combine } from '../../quantities/value.ts';

const percentUnit = parseUnit('%')!;
const source = 'Benson and Krause (1984), Limnology and Oceanography 29(3), 620–632';

function solve(call: Call, temperature: Row, pressure: Row, salinity: Row): Row | null {
  return evaluateRows(call, [
    { key: 'temperature', value: temperature, unit: celsius }, { key: 'pressure', value: pressure, unit: hectopascal }, { key: 'salinity', value: salinity, unit: practical },
  ], (input) => oxygenSolubility({ temperature: input['temperature']!, pressure: input['pressure']!, salinity: input['salinity']! }), oxygenMilligrams, 2);
}

function solubility(call: Call): FormulaValue | null {
  const first = call.operand(0)!;
  if (first.type === 'tank') return solubilityIn(call, first.id, null);
  const salinity = call.operand(2);
  if (!salinity) call.remark('fresh-water', { tank: '' });
  const inputs = [call.operand(0), call.operand(1), salinity] as (Row | undefined)[];
  for (const [index, input] of inputs.entries()) if (input?.type === 'series' && !call.within(input.points, index)) return null;
  return solve(call, inputs[0]!, inputs[1]!, inputs[2] ?? exactValue(0, practical));
}

/** Solubility at the tank's rows: its temperature, the pressure and its salinity of the same row. */
function solubilityIn(call: Call, tank: string, pressure: Row | null): SeriesValue | null {
  const cache = call.run.context.equationCache;
  const key = `solubility ${tank}${call.run.includeLeftOut ? ' with left-out' : ''}`;
  const known = pressure ? undefined : cache.get(key);
  if (known) {
    call.remarks.push(...known.remarks);
    return known.value;
  }
  const before = call.remarks.length;
  const temperature = temperatureOf(call, tank);
  const air = pressure ?? pressureOf(call, tank);
  if (!temperature || !air) return null;
  const salinity = salinityOf(call, tank);
  for (const input of [temperature, air, salinity]) if (input.type === 'series' && !call.within(input.points, 0)) return null;
  const result = solve(call, temperature, air, salinity);
  if (result?.type !== 'series') return null;
  if (!pressure) cache.set(key, { value: result, remarks: call.remarks.slice(before) });
  return result;
}

/** The oxygen column and the solubility at its rows, cut to the window, in mg/L. */
export function oxygenRows(call: Call, pressure: Row | null, stretch: WindowValue | null = null, index = 0): { pairs: [SeriesPoint, SeriesPoint][]; holes: number[] } | null {
  const series = call.series(index);
  const { origin } = series;
  const { protocol } = call.run.context;
  const measured = origin && protocol ? measureOf(protocol, origin.quantity, origin.instrument)?.what?.value : undefined;
  if (!origin || (measured !== undefined && measureByName(measured)?.name !== 'dissolved oxygen')) {
    return call.fail('oxygen-column-needed', { function: call.name, found: call.run.textOf(call.rangeOf(index)) }, call.rangeOf(index));
  }
  const oxygen = series.unit.symbol === oxygenMilligrams.symbol ? series : mapSeries(call.run, series, call.rangeOf(index), (value) => {
    const converted = convertOxygen(value.value, series.unit, oxygenMilligrams);
    if (isWaterProblem(converted)) return waterFailure(call, converted, null);
    const factor = convertOxygen(1, series.unit, oxygenMilligrams);
    return combine(converted.value, oxygenMilligrams, [{ value, derivative: isWaterProblem(factor) ? Number.NaN : factor.value }]);
  });
  const full = solubilityIn(call, origin.place, pressure);
  if (!full || !oxygen) return null;
  const cut = (value: SeriesValue): SeriesValue => (stretch ? { ...value, points: between(value.points, stretch.from, stretch.to) } : value);
  const joined = joinByTime(cut(oxygen), cut(full));
  if (joined.pairs.length === 0) return call.fail('no-joint-rows', { function: call.name, name: call.run.textOf(call.rangeOf(index)) });
  return joined;
}

function rowsInWindow(call: Call): ReturnType<typeof oxygenRows> {
  const stretch = call.window(2);
  if (stretch && !call.points(0, 2, { limits: true })) return null;
  return oxygenRows(call, (call.operand(1) as Row | undefined) ?? null, stretch);
}

function saturation(call: Call): FormulaValue | null {
  const joined = rowsInWindow(call);
  if (!joined) return null;
  const points: SeriesPoint[] = joined.pairs.map(([oxygen, full]) => {
    const c = pointNumber(oxygen, oxygenMilligrams);
    const cs = pointNumber(full, oxygenMilligrams);
    const value = combine(100 * c.value / cs.value, percentUnit, [{ value: c, derivative: 100 / cs.value }, { value: cs, derivative: -100 * c.value / cs.value ** 2 }]);
    return { time: oxygen.time, value: value.value, contributions: value.contributions, ...mergedParts([oxygen, full]), decimals: 1 };
  });
  call.use(points);
  call.remark(call.operand(1) ? 'saturation-given-pressure' : 'saturation-local-pressure');
  return { type: 'series', unit: percentUnit, points, holes: joined.holes, content: 'number' };
}

function deficit(call: Call): FormulaValue | null {
  const joined = rowsInWindow(call);
  if (!joined) return null;
  const points: SeriesPoint[] = [];
  for (const [oxygen, full] of joined.pairs) {
    const value = subtract(pointNumber(full, oxygenMilligrams), pointNumber(oxygen, oxygenMilligrams));
    if (isFailure(value)) return call.failure(value);
    const parts = mergedParts([oxygen, full]);
    // Oxygen below what the meter can tell means a deficit above, and the other way round.
    const limits = parts.flags & 24;
    points.push({ time: oxygen.time, value: value.value, contributions: value.contributions, ...parts, flags: limits === 8 ? (parts.flags & ~24) | 16 : limits === 16 ? (parts.flags & ~24) | 8 : parts.flags });
  }
  call.use(points);
  return { type: 'series', unit: oxygenMilligrams, points, holes: joined.holes, content: 'number' };
}

export const oxygenColumn: Parameter = { name: 'oxygen', type: 'series', about: 'a column of dissolved oxygen of one tank, such as mat.DO' };
const pressureParameter: Parameter = { name: 'pressure', type: 'pressure', optional: true, about: 'an air pressure instead of the readings, such as standard-pressure' };
const oxygenSignature: readonly Signature[] = [{ parameters: [oxygenColumn, pressureParameter, windowParameter], options: [] }];
const mat = 'the oxygen in the mat tank';

export const oxygenFunctions: readonly FunctionEntry[] = [
  {
    name: 'solubility', group: 'oxygen', gives: 'number or series', units: 'mg/L',
    signatures: [
      { parameters: [{ name: 'tank', type: 'tank', about: 'a tank whose temperature is measured' }], options: [], words: 'the oxygen solubility in {1}' },
      {
        parameters: [
          { name: 'temperature', type: 'temperature', about: 'water temperature, such as 24.9 degC or mat.T' },
          { name: 'pressure', type: 'pressure', about: 'station pressure, such as room.P or standard-pressure' },
          { name: 'salinity', type: 'salinity', optional: true, about: 'salinity; fresh water without it' },
        ],
        options: [],
      },
    ],
    definition: 'The oxygen that the water holds in equilibrium with air, at the temperature, station pressure and salinity of the same row.',
    equation: 'C = C₁(T) · exp(−S(0.017674 − 10.754/T + 2140.7/T²)) · P(1 − u/P)(1 − θP) / ((1 − u)(1 − θ)), P in atm', source,
    example: { formula: 'solubility(25 degC, standard-pressure)', on: 'fresh water', gives: '8.26 mg/L' },
    words: 'the oxygen solubility at {1} and {2}',
    evaluate: solubility,
  },
  {
    name: 'saturation', group: 'oxygen', gives: 'series', units: '% of the solubility at the pressure of the place', signatures: oxygenSignature,
    definition: 'Dissolved oxygen in per cent of the solubility at the temperature, station pressure and salinity of the same row.',
    equation: '100 · C / C(T, S, P)', source,
    example: { formula: 'at(saturation(mat.DO), 22:00)', on: mat, gives: '100.1 %' }, words: 'the saturation of {1}{window}',
    evaluate: saturation,
  },
  {
    name: 'deficit', group: 'oxygen', gives: 'series', units: 'mg/L', signatures: oxygenSignature,
    definition: 'How much dissolved oxygen is lacking to the solubility of the same row; negative in supersaturated water.', equation: 'C(T, S, P) − C', source,
    example: { formula: 'max(deficit(mat.DO))', on: mat, gives: '2.58 mg/L' }, words: 'the deficit of {1} to full saturation{window}',
    evaluate: deficit,
  },
];
