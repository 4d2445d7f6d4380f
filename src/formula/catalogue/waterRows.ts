// Published equations of the water, row by row: each input at the same time, converted, with its uncertainty carried through.
import { measureOf } from '../../dataset/readingValue.ts';
import { unitOf } from '../../quantities/concentration.ts';
import { measureByName } from '../../quantities/measures.ts';
import { parseUnit } from '../../quantities/units.ts';
import { combine, exactValue, isFailure, toUnit } from '../../quantities/value.ts';
import type { Unit } from '../../quantities/types.ts';
import { formatNumber } from '../../quantities/format.ts';
import { checkStationPressure, stationPressure } from '../../water/airPressure.ts';
import { substanceOf } from '../../water/concentrations.ts';
import { isWaterProblem, type Outcome, type WaterProblem } from '../../water/outcome.ts';
import { sensitivity } from '../../water/sensitivity.ts';
import type { Call } from '../call.ts';
import { columnValue, joinByTime, mergedParts, pointNumber } from '../seriesValues.ts';
import type { FormulaNumber, SeriesPoint, SeriesValue } from '../types.ts';

export type Row = FormulaNumber | SeriesValue;
/** An input of an equation: its key there, its value, and the unit the equation wants it in. */
export interface EquationInput { readonly key: string; readonly value: Row; readonly unit: Unit }

export const celsius = parseUnit('degC')!;
export const hectopascal = parseUnit('hPa')!;
export const milligrams = parseUnit('mg/L')!;
export const oxygenMilligrams = unitOf(milligrams, substanceOf('dissolved oxygen'));
export const practical = parseUnit('PSU')!;

type Equation = (input: Record<string, number>) => Outcome | WaterProblem;

/** Evaluates an equation on numbers, or at every time at which all series have a value. */
export function evaluateRows(call: Call, inputs: readonly EquationInput[], equation: Equation, unit: Unit, decimals: number): Row | null {
  const allSeries = inputs.filter((input): input is EquationInput & { value: SeriesValue } => input.value.type === 'series');
  if (allSeries.length === 0) {
    const numbers = inputs.map((input) => input.value as FormulaNumber);
    return evaluateOnce(call, inputs, numbers, equation, unit, decimals, null);
  }
  let rows: { time: number; parts: SeriesPoint[] }[] = allSeries[0]!.value.points.map((point) => ({ time: point.time, parts: [point] }));
  let holes = [...(allSeries[0]!.value.holes ?? [])];
  for (const input of allSeries.slice(1)) {
    const left: SeriesValue = { type: 'series', unit: input.value.unit, holes, points: rows.map((row) => row.parts[0]!) };
    const joined = joinByTime(left, input.value);
    const byTime = new Map(rows.map((row) => [row.time, row]));
    rows = joined.pairs.map(([first, other]) => ({ time: first.time, parts: [...byTime.get(first.time)!.parts, other] }));
    holes = joined.holes;
  }
  const points: SeriesPoint[] = [];
  for (const row of rows) {
    let next = 0;
    const numbers = inputs.map((input) => (input.value.type === 'series' ? pointNumber(row.parts[next++]!, input.value.unit) : input.value));
    const result = evaluateOnce(call, inputs, numbers, equation, unit, decimals, row.time);
    if (!result) return null;
    points.push({ time: row.time, value: result.value, contributions: result.contributions, ...mergedParts(row.parts), decimals });
  }
  return { type: 'series', unit, points, holes, content: 'number' };
}

function evaluateOnce(
  call: Call, inputs: readonly EquationInput[], numbers: readonly FormulaNumber[], equation: Equation, unit: Unit, decimals: number, time: number | null,
): FormulaNumber | null {
  const at: Record<string, number> = {};
  const converted: FormulaNumber[] = [];
  for (const [index, input] of inputs.entries()) {
    const number = numbers[index]!;
    const plain = number.unit.symbol === '1' ? exactValue(number.value, input.unit) : toUnit(number, input.unit);
    if (isFailure(plain)) return call.fail('unit-mismatch', { left: number.unit.symbol, right: input.unit.symbol });
    at[input.key] = plain.value;
    converted.push(plain);
  }
  const result = equation(at);
  if (isWaterProblem(result)) return waterFailure(call, result, time);
  const parts = inputs.map((input, index) => {
    const value = converted[index]!;
    const known = value.contributions !== null && value.contributions.size > 0;
    return { value, derivative: known || value.contributions === null ? sensitivity(equation, at, input.key) ?? Number.NaN : 0 };
  });
  return { ...combine(result.value, unit, parts), decimals };
}

/** The problem of an equation in a keeper's words. */
export function waterFailure(call: Call, found: WaterProblem, time: number | null): null {
  const when = time === null ? '' : call.time(time);
  if (found.problem === 'outside-range') {
    const decimals = Math.abs(found.value) < 10 ? 2 : 1;
    return call.fail('outside-equation-range', {
      function: call.name, input: found.input, value: formatNumber(found.value, decimals), low: formatNumber(found.low, 1), high: formatNumber(found.high, 1),
      unit: found.unit, time: when,
    });
  }
  return found.problem === 'not-for-saline-water' ? call.fail('not-for-saline-water', { function: call.name, time: when })
    : call.fail('equation-not-applicable', { function: call.name, about: found.about, time: when });
}

/** Readings of a quantity of the closed list in one place; null when none was measured there. */
export function measuredIn(call: Call, place: string, names: readonly string[]): SeriesValue | null {
  const { protocol, dataset } = call.run.context;
  if (!protocol) return null;
  const columns = [...dataset.series.values()].filter((series) => {
    const what = series.place === place ? measureOf(protocol, series.quantity, series.instrument)?.what?.value : undefined;
    return what !== undefined && names.includes(measureByName(what)?.name ?? '');
  });
  const chosen = columns.sort((a, b) => Number(a.instrument !== null) - Number(b.instrument !== null))[0];
  return chosen ? columnValue(call.run.context, chosen, call.run.includeLeftOut) : null;
}

/** What is needed and not there, with the column that would supply it. */
export function needed(call: Call, place: string, quantity: string | readonly string[], example: string): null {
  return call.fail('quantity-needed', { function: call.name, place, quantity, example });
}

export function temperatureOf(call: Call, tank: string): SeriesValue | null {
  return measuredIn(call, tank, ['water temperature']) ?? needed(call, tank, 'water temperature', `${tank}.T`);
}

/** Salinity of the tank: measured, or as the protocol states it, or fresh water, which the working says. */
export function salinityOf(call: Call, tank: string): Row {
  const measured = measuredIn(call, tank, ['salinity']);
  if (measured) return measured;
  const stated = call.run.context.protocol?.tanks.find((each) => each.id === tank)?.salinity?.value;
  if (stated) return stated;
  call.remark('fresh-water', { tank });
  return exactValue(0, practical);
}

/** Station pressure in hPa for the tank's rows: from the room or the tank, turned from sea level where the protocol says so. */
export function pressureOf(call: Call, tank: string): SeriesValue | null {
  const readings = measuredIn(call, 'room', ['air pressure']) ?? measuredIn(call, tank, ['air pressure']);
  if (!readings) return call.fail('pressure-needed', { function: call.name });
  const { protocol } = call.run.context;
  const origin = readings.origin!;
  const measure = protocol ? measureOf(protocol, origin.quantity, origin.instrument) : null;
  const level = measure?.level?.value;
  const metres = parseUnit('m')!;
  const stated = protocol?.place.elevation?.value;
  const inMetres = stated ? toUnit(stated, metres) : null;
  const elevation = inMetres && !isFailure(inMetres) ? inMetres.value : null;
  if (!level) return call.fail('pressure-level-needed', { quantity: origin.quantity });
  if (level === 'sea' && elevation === null) return call.fail('elevation-needed', { quantity: origin.quantity });
  const points: SeriesPoint[] = [];
  for (const point of readings.points) {
    const plain = toUnit(pointNumber(point, readings.unit), hectopascal);
    if (isFailure(plain)) return call.failure(plain);
    let pressure = plain;
    if (level === 'sea') {
      const station = stationPressure(plain.value, elevation!);
      if (isWaterProblem(station)) return waterFailure(call, station, point.time);
      pressure = combine(station.value, hectopascal, [{ value: plain, derivative: station.value / plain.value }]);
    } else if (elevation !== null) {
      const check = checkStationPressure(plain.value, elevation);
      if (!isWaterProblem(check) && check.verdict === 'impossible') {
        return call.fail('pressure-not-station', {
          quantity: origin.quantity, value: formatNumber(plain.value, 0), time: call.time(point.time), elevation: formatNumber(elevation, 0), expected: formatNumber(check.expected, 0),
        });
      }
    }
    points.push({ ...point, value: pressure.value, contributions: pressure.contributions });
  }
  call.remark(level === 'sea' ? 'pressure-from-sea-level' : 'pressure-as-read', level === 'sea' ? { elevation: formatNumber(elevation!, 0) } : {});
  return { type: 'series', unit: hectopascal, points, holes: readings.holes ?? [], content: 'number' };
}
