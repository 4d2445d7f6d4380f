// What a new note draws on: the quantities that keepers measure, with an instrument of a usual kind.
// Accuracies are those that makers of such instruments usually state; the note tells its author to put in their own.
import { measureByName } from '../quantities/measures.ts';

/** One line of `measure`, without `in`. */
export interface LibraryMeasure { readonly id: string; readonly what: string; readonly rest: string; readonly room: boolean }

const inTanks = (id: string, what: string, rest: string): LibraryMeasure => ({ id, what, rest, room: false });
const inRoom = (id: string, what: string, rest: string): LibraryMeasure => ({ id, what, rest, room: true });

export const libraryMeasures: readonly LibraryMeasure[] = [
  inTanks('DO', 'dissolved oxygen', 'unit: mg/L, with: optical oxygen meter, accuracy: 0.1 mg/L, resolution: 0.01 mg/L'),
  inTanks('T', 'water temperature', 'unit: degC, with: thermometer, accuracy: 0.2 degC, resolution: 0.1 degC'),
  inTanks('pH', 'pH', 'unit: pH, with: pH meter, accuracy: 0.05 pH, resolution: 0.01 pH'),
  inTanks('KH', 'carbonate hardness', 'unit: dKH, with: drop test, accuracy: 0.5 dKH, resolution: 0.5 dKH'),
  inTanks('GH', 'general hardness', 'unit: dGH, with: drop test, accuracy: 1 dGH, resolution: 1 dGH'),
  inTanks('TAN', 'total ammonia', 'unit: mg/L-N, with: colour test, accuracy: 0.1 mg/L-N, resolution: 0.05 mg/L-N'),
  inTanks('NO2', 'nitrite', 'unit: mg/L-N, with: colour test, accuracy: 0.05 mg/L-N, resolution: 0.02 mg/L-N'),
  inTanks('NO3', 'nitrate', 'unit: mg/L, with: colour test, accuracy: 5 mg/L, resolution: 2 mg/L'),
  inTanks('PO4', 'phosphate', 'unit: mg/L, with: colour test, accuracy: 0.1 mg/L, resolution: 0.05 mg/L'),
  inTanks('CO2', 'carbon dioxide', 'unit: mg/L, with: drop test, accuracy: 5 mg/L, resolution: 2 mg/L'),
  inTanks('SAL', 'salinity', 'unit: PSU, with: refractometer, accuracy: 0.5 PSU, resolution: 0.5 PSU'),
  inTanks('EC', 'specific conductance', 'unit: uS/cm, with: conductivity meter, accuracy: 2 %, resolution: 1 uS/cm'),
  inTanks('level', 'water level', 'unit: mm, with: steel ruler on the glass, accuracy: 1 mm, resolution: 0.5 mm'),
  inTanks('mood', 'behaviour', 'with: watched for two minutes, scale: [calm, restless, surface, gasping]'),
  inTanks('gill', 'respiratory rate', 'unit: /min, with: stopwatch and counter, accuracy: 4/min, resolution: 1/min'),
  inTanks('PAR', 'light', 'unit: umol/m2/s, with: light meter, accuracy: 5 %, resolution: 1 umol/m2/s'),
  inRoom('P', 'air pressure', 'unit: hPa, with: barometer, in: room, accuracy: 1 hPa, resolution: 0.1 hPa, level: station'),
  inRoom('air', 'air temperature', 'unit: degC, with: room thermometer, in: room, accuracy: 0.5 degC, resolution: 0.1 degC'),
  inRoom('RH', 'relative humidity', 'unit: "%", with: hygrometer, in: room, accuracy: 3 pp, resolution: 1 pp'),
];

/** A quantity by its short name or by any name of the closed list; null when the library has none. */
export function libraryMeasure(name: string): LibraryMeasure | null {
  const wanted = name.trim();
  const byId = libraryMeasures.find((each) => each.id === wanted) ?? libraryMeasures.find((each) => each.id.toLowerCase() === wanted.toLowerCase());
  if (byId) return byId;
  const entry = measureByName(wanted);
  return entry ? libraryMeasures.find((each) => each.what === entry.name) ?? null : null;
}
