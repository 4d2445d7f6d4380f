// Functions of the water's chemistry: un-ionised ammonia, carbon dioxide, salinity. Each row by its own readings.
import { measureOf } from '../../dataset/readingValue.ts';
import { formatNumber } from '../../quantities/format.ts';
import { unitOf } from '../../quantities/concentration.ts';
import { isFailure, toUnit } from '../../quantities/value.ts';
import { parseUnit } from '../../quantities/units.ts';
import { carbonDioxide, ruleCoefficient } from '../../water/carbonDioxide.ts';
import { substanceOf } from '../../water/concentrations.ts';
import { practicalSalinity } from '../../water/practicalSalinity.ts';
import { salinityOfSpecificConductance } from '../../water/specificConductance.ts';
import { salinityOfSpecificGravity } from '../../water/specificGravity.ts';
import { isSaline, unIonisedAmmonia } from '../../water/unIonisedAmmonia.ts';
import type { Call } from '../call.ts';
import { isWaterProblem } from '../../water/outcome.ts';
import { pointNumber } from '../seriesValues.ts';
import type { FormulaValue, SeriesValue } from '../types.ts';
import type { FunctionEntry, Signature } from './entry.ts';
import { celsius, evaluateRows, measuredIn, milligrams, needed, practical, salinityOf, temperatureOf, type Row } from './waterRows.ts';

const tankSignature: readonly Signature[] = [{ parameters: [{ name: 'tank', type: 'tank', about: 'a tank with the readings the equation needs' }], options: [] }];
const pHUnit = parseUnit('pH')!;
const carbonDioxideMilligrams = unitOf(milligrams, substanceOf('carbon dioxide'));
const milliequivalents = parseUnit('meq/L')!;

function tankOf(call: Call): string { return (call.operand(0) as { id: string }).id; }

function sound(call: Call, inputs: readonly Row[]): boolean {
  return inputs.every((input) => input.type !== 'series' || call.within(input.points, 0));
}

function ammonia(call: Call): FormulaValue | null {
  const tank = tankOf(call);
  const total = measuredIn(call, tank, ['total ammonia']) ?? needed(call, tank, 'total ammonia', `${tank}.TAN`);
  const pH = measuredIn(call, tank, ['pH']) ?? needed(call, tank, 'pH', `${tank}.pH`);
  const temperature = temperatureOf(call, tank);
  if (!total || !pH || !temperature) return null;
  const salinity = salinityOf(call, tank);
  if (!sound(call, [total, pH, temperature, salinity])) return null;
  if (salinity.type === 'series' ? salinity.points.some((point) => isSaline(point.value)) : isSaline(salinity.value)) call.remark('ammonia-saline');
  return evaluateRows(call, [
    { key: 'total', value: total, unit: total.unit }, { key: 'pH', value: pH, unit: pHUnit },
    { key: 'temperature', value: temperature, unit: celsius }, { key: 'salinity', value: salinity, unit: practical },
  ], (input) => unIonisedAmmonia(input['total']!, { pH: input['pH']!, temperature: input['temperature']!, salinity: input['salinity']! }), total.unit, 4);
}

function dissolvedCarbonDioxide(call: Call): FormulaValue | null {
  const tank = tankOf(call);
  const alkalinity = measuredIn(call, tank, ['alkalinity', 'carbonate hardness']) ?? needed(call, tank, 'carbonate hardness', `${tank}.KH`);
  const pH = measuredIn(call, tank, ['pH']) ?? needed(call, tank, 'pH', `${tank}.pH`);
  const temperature = temperatureOf(call, tank);
  if (!alkalinity || !pH || !temperature) return null;
  const salinity = salinityOf(call, tank);
  if (!sound(call, [alkalinity, pH, temperature, salinity])) return null;
  const found = evaluateRows(call, [
    { key: 'alkalinity', value: alkalinity, unit: milliequivalents }, { key: 'pH', value: pH, unit: pHUnit },
    { key: 'temperature', value: temperature, unit: celsius }, { key: 'salinity', value: salinity, unit: practical },
  ], (input) => carbonDioxide({ alkalinity: input['alkalinity']!, pH: input['pH']!, temperature: input['temperature']!, salinity: input['salinity']! }), carbonDioxideMilligrams, 1);
  if (found) remarkRule(call, found, temperature);
  return found;
}

/** The trade's rule of thumb beside the equation, at the first row: what it gives and why it differs. */
function remarkRule(call: Call, found: Row, temperature: SeriesValue): void {
  const first = found.type === 'series' ? found.points[0] : undefined;
  const degrees = first && temperature.points.find((point) => point.time === first.time);
  const inCelsius = degrees && toUnit(pointNumber(degrees, temperature.unit), celsius);
  if (!first || !inCelsius || isFailure(inCelsius)) return;
  const coefficient = ruleCoefficient(inCelsius.value);
  if (isWaterProblem(coefficient)) return;
  call.remark('carbon-dioxide-rule', {
    time: call.time(first.time), value: formatNumber(first.value, 1), rule: formatNumber(first.value * 3 / coefficient.value, 1), coefficient: formatNumber(coefficient.value, 2),
    temperature: formatNumber(inCelsius.value, 1), low: formatNumber(100 * (1 - 3 / coefficient.value), 0),
  });
}

function salinity(call: Call): FormulaValue | null {
  const tank = tankOf(call);
  const measured = measuredIn(call, tank, ['salinity']);
  if (measured) return measured;
  const raw = measuredIn(call, tank, ['conductivity']);
  if (raw) {
    const temperature = temperatureOf(call, tank);
    if (!temperature || !sound(call, [raw, temperature])) return null;
    call.remark('salinity-from-conductivity');
    return evaluateRows(call, [{ key: 'conductivity', value: raw, unit: parseUnit('mS/cm')! }, { key: 'temperature', value: temperature, unit: celsius }],
      (input) => practicalSalinity(input['conductivity']!, input['temperature']!), practical, 2);
  }
  const compensated = measuredIn(call, tank, ['specific conductance']);
  if (compensated) {
    if (!sound(call, [compensated])) return null;
    call.remark('salinity-from-specific-conductance');
    return evaluateRows(call, [{ key: 'conductance', value: compensated, unit: parseUnit('uS/cm')! }], (input) => salinityOfSpecificConductance(input['conductance']!), practical, 2);
  }
  const gravity = measuredIn(call, tank, ['specific gravity']);
  if (gravity) {
    const { protocol } = call.run.context;
    const entry = protocol && gravity.origin ? measureOf(protocol, gravity.origin.quantity, gravity.origin.instrument) : null;
    const stated = entry?.referenceTemperature ? toUnit(entry.referenceTemperature.value, celsius) : null;
    if (!stated || isFailure(stated)) return call.fail('reference-temperature-needed', { quantity: entry?.id ?? 'SG' });
    const temperature = temperatureOf(call, tank);
    if (!temperature || !sound(call, [gravity, temperature])) return null;
    call.remark('salinity-from-specific-gravity', { reference: formatNumber(stated.value, 1) });
    return evaluateRows(call, [{ key: 'gravity', value: gravity, unit: gravity.unit }, { key: 'temperature', value: temperature, unit: celsius }],
      (input) => salinityOfSpecificGravity({ specificGravity: input['gravity']!, temperature: input['temperature']!, reference: stated.value }), practical, 1);
  }
  return needed(call, tank, ['salinity', 'conductivity', 'specific conductance'], `${tank}.cond`);
}

export const waterFunctions: readonly FunctionEntry[] = [
  {
    name: 'un-ionised-ammonia', group: 'water', gives: 'series', units: 'that of the total ammonia', signatures: tankSignature,
    definition: 'The part of the total ammonia that is present as NH3, from the pH, temperature and salinity of the same row.',
    equation: 'NH3 = TAN / (1 + 10^(pKa − pH)), pKa = 0.09018 + 2729.92/T, in saline water + (0.1552 − 0.0003142 t)·I, I = 19.924 S/(1000 − 1.005 S)',
    source: 'Emerson, Russo, Lund and Thurston (1975), Journal of the Fisheries Research Board of Canada 32, 2379–2383; saline: Khoo, Culberson and Bates (1977), Journal of Solution Chemistry 6, 281–290',
    example: { formula: 'first(un-ionised-ammonia(mat))', on: 'total ammonia, pH and temperature of the mat tank', gives: '0.0022 mg/L as N' },
    words: 'the un-ionised ammonia in {1}',
    evaluate: ammonia,
  },
  {
    name: 'carbon-dioxide', group: 'water', gives: 'series', units: 'mg/L', signatures: tankSignature,
    definition: 'Dissolved carbon dioxide from the alkalinity (carbonate hardness), pH and temperature of the same row; for fresh water of pH 6 to 8.3.',
    equation: 'CO2 = 44.01 · alkalinity · 10^(pK1 − pH)', source: 'pK1: Plummer and Busenberg (1982), Geochimica et Cosmochimica Acta 46, 1011–1040',
    example: { formula: 'first(carbon-dioxide(mat))', on: 'carbonate hardness, pH and temperature of the mat tank', gives: '10.7 mg/L' },
    words: 'the carbon dioxide in {1}',
    evaluate: dissolvedCarbonDioxide,
  },
  {
    name: 'salinity', group: 'water', gives: 'series', units: 'PSU', signatures: tankSignature,
    definition: 'The salinity of the tank: as measured, or from the conductivity of the same row.', equation: 'practical salinity scale PSS-78',
    source: 'Fofonoff and Millard (1983), UNESCO Technical Papers in Marine Science 44',
    example: { formula: 'first(salinity(mat))', on: 'the conductivity and temperature of the mat tank', gives: '0.25 PSU' }, words: 'the salinity of {1}',
    evaluate: salinity,
  },
];
