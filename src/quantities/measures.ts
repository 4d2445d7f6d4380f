// The closed list of quantities that a note can measure, with their units, plausible ranges and names in print.
// A plausible range marks a likely slip of the pen, never a limit for animals; `source` says where it comes from.
import { editDistance } from '../problems/nearest.ts';

export type Medium = 'water' | 'air' | 'tank' | 'animals';

export interface MeasureEntry {
  /** As `what:` of the protocol names it. */
  readonly name: string;
  /** Other names that are read as this one, in lower case. */
  readonly alsoCalled: readonly string[];
  /** What it is, in one sentence. */
  readonly means: string;
  /** Default unit's symbol; null for quantities on a scale of words. */
  readonly unit: string | null;
  /** Every accepted unit's symbol, the default first. A unit `convertible` into one of these is accepted too. */
  readonly units: readonly string[];
  /** In the default unit; null where nothing can be said. */
  readonly plausible: readonly [number, number] | null;
  /** Where the plausible range comes from. */
  readonly source: string;
  /** In running text: `dissolved oxygen`, `pH`. */
  readonly print: string;
  readonly medium: Medium;
  /** True for an amount in a volume of water, which dilution lowers. */
  readonly concentration: boolean;
  readonly scale: 'number' | 'word';
  /** False where zero does not mean "none", so that a percent change has no meaning. */
  readonly trueZero: boolean;
}

const practice = 'common practice, no source';

interface MeasureOptions {
  alsoCalled?: readonly string[]; units?: readonly string[]; plausible?: readonly [number, number]; source?: string; print?: string;
  medium?: Medium; concentration?: boolean; trueZero?: boolean;
}

function measure(name: string, unit: string | null, means: string, options: MeasureOptions = {}): MeasureEntry {
  return {
    name, unit, means, alsoCalled: options.alsoCalled ?? [], units: options.units ?? (unit === null ? [] : [unit]), plausible: options.plausible ?? null,
    source: options.source ?? practice, print: options.print ?? name, medium: options.medium ?? 'water', concentration: options.concentration ?? false,
    scale: unit === null ? 'word' : 'number', trueZero: options.trueZero ?? true,
  };
}

const byMass = ['mg/L', 'ug/L', 'g/L'];
const asNitrogen = [...byMass, 'mg/L-N', 'ug/L-N', 'umol/L', 'mmol/L', 'ppm'];
const volumes = ['mL', 'L', 'uL', 'cm3', 'galUS', 'galUK'];
const pressures = ['hPa', 'mbar', 'kPa', 'Pa', 'bar', 'mmHg', 'inHg', 'psi', 'atm'];

export const measures: readonly MeasureEntry[] = [
  measure('dissolved oxygen', 'mg/L', 'Oxygen gas dissolved in the water, by mass or amount in a litre.', {
    alsoCalled: ['do', 'oxygen', 'o2', 'dissolved oxygen concentration', 'oxygen concentration'],
    units: [...byMass, 'umol/L', 'mmol/L', 'umol/kg', 'mL(STP)/L', 'ppm'], plausible: [0, 25], concentration: true,
  }),
  measure('oxygen saturation', '%', 'Dissolved oxygen in per cent of what the water holds in equilibrium with air.', {
    alsoCalled: ['do saturation', 'saturation', 'percent saturation', 'do %', 'oxygen %', 'dissolved oxygen saturation'], plausible: [0, 250],
  }),
  measure('water temperature', 'degC', 'Temperature of the tank water.', {
    alsoCalled: ['temperature', 'temp', 'tank temperature'], units: ['degC', 'degF'], plausible: [0, 40],
    source: 'range of the oxygen solubility equation of Benson and Krause (1984)', trueZero: false,
  }),
  measure('air temperature', 'degC', 'Temperature of the air in the room or above the water.', {
    alsoCalled: ['room temperature'], units: ['degC', 'degF'], plausible: [-10, 50], medium: 'air', trueZero: false,
  }),
  measure('air pressure', 'hPa', 'Pressure of the air: at the place (station) or reduced to sea level, as `level` says.', {
    alsoCalled: ['barometric pressure', 'atmospheric pressure', 'pressure', 'station pressure', 'barometer'], units: pressures,
    plausible: [500, 1090], medium: 'air', source: 'range of the oxygen solubility equation, 0.5 to 1.1 atm, and surface records',
  }),
  measure('relative humidity', '%', 'Humidity of the air in per cent of saturation.', { alsoCalled: ['humidity'], plausible: [0, 100], medium: 'air' }),
  measure('pH', 'pH', 'Acidity of the water.', { alsoCalled: ['acidity'], plausible: [3, 11], print: 'pH', trueZero: false }),
  measure('conductivity', 'uS/cm', 'Electrical conductivity as it is at the water temperature, not compensated.', {
    alsoCalled: ['raw conductivity', 'actual conductivity', 'ec'], units: ['uS/cm', 'mS/cm', 'dS/m', 'S/m'], plausible: [0, 80_000],
  }),
  measure('specific conductance', 'uS/cm', 'Electrical conductivity compensated to 25 °C.', {
    alsoCalled: ['conductivity at 25', 'ec25', 'compensated conductivity'], units: ['uS/cm', 'mS/cm', 'dS/m', 'S/m'], plausible: [0, 70_000],
  }),
  measure('total dissolved solids', 'mg/L', 'Dissolved matter, as a meter estimates it from conductivity.', {
    alsoCalled: ['tds'], units: [...byMass, 'ppm'], plausible: [0, 50_000], concentration: true,
  }),
  measure('salinity', 'PSU', 'Salt content on the practical salinity scale (PSS-78).', {
    alsoCalled: ['practical salinity', 'salt'], units: ['PSU', 'ppt', 'g/kg'], plausible: [0, 42], source: 'range of PSS-78', concentration: true,
  }),
  measure('specific gravity', 'SG', 'Density of the water relative to pure water; the reference temperature is part of the method.', {
    alsoCalled: ['sg', 'relative density'], plausible: [0.995, 1.04], trueZero: false,
  }),
  measure('density', 'kg/m3', 'Mass of the water in a volume.', { units: ['kg/m3', 'g/cm3', 'g/L', 'kg/L', 'g/mL'], plausible: [990, 1040] }),
  measure('alkalinity', 'meq/L', 'Total alkalinity: what the water can take up of acid.', {
    alsoCalled: ['total alkalinity', 'acid capacity', 'acid neutralising capacity'], units: ['meq/L', 'ueq/L', 'dKH', 'mg/L-CaCO3', 'fH'], plausible: [0, 20], concentration: true,
  }),
  measure('carbonate hardness', 'dKH', 'Alkalinity as aquarium test kits print it, in German degrees.', {
    alsoCalled: ['kh', 'dkh'], units: ['dKH', 'meq/L', 'mg/L-CaCO3', 'fH'], plausible: [0, 40], concentration: true,
  }),
  measure('general hardness', 'dGH', 'Calcium and magnesium together, in German degrees.', {
    alsoCalled: ['gh', 'dgh', 'total hardness', 'hardness'], units: ['dGH', 'mg/L-CaCO3', 'fH'], plausible: [0, 60], concentration: true,
  }),
  measure('calcium', 'mg/L', 'Dissolved calcium.', { alsoCalled: ['ca'], units: [...byMass, 'mmol/L', 'ppm'], plausible: [0, 1000], concentration: true }),
  measure('magnesium', 'mg/L', 'Dissolved magnesium.', { alsoCalled: ['mg'], units: [...byMass, 'mmol/L', 'ppm'], plausible: [0, 2000], concentration: true }),
  measure('potassium', 'mg/L', 'Dissolved potassium.', { alsoCalled: ['k'], units: [...byMass, 'mmol/L', 'ppm'], plausible: [0, 1000], concentration: true }),
  measure('iron', 'mg/L', 'Dissolved iron.', { alsoCalled: ['fe'], units: [...byMass, 'umol/L', 'ppm'], plausible: [0, 5], concentration: true }),
  measure('silicate', 'mg/L', 'Dissolved silicate, as the ion.', { alsoCalled: ['silica'], units: [...byMass, 'umol/L', 'ppm'], plausible: [0, 100], concentration: true }),
  measure('nitrate', 'mg/L', 'Nitrate: mg/L is the ion; write mg/L-N for nitrate as nitrogen.', {
    alsoCalled: ['no3'], units: asNitrogen, plausible: [0, 500], concentration: true,
  }),
  measure('nitrite', 'mg/L', 'Nitrite: mg/L is the ion; write mg/L-N for nitrite as nitrogen.', {
    alsoCalled: ['no2'], units: asNitrogen, plausible: [0, 50], concentration: true,
  }),
  measure('total ammonia', 'mg/L-N', 'Ammonia and ammonium together (TAN); the kit says whether as nitrogen.', {
    alsoCalled: ['tan', 'ammonia', 'ammonium', 'total ammonia nitrogen', 'nh3/nh4', 'nh4'], units: ['mg/L-N', 'ug/L-N', ...byMass, 'umol/L', 'mmol/L', 'ppm'], plausible: [0, 50], concentration: true,
  }),
  measure('un-ionised ammonia', 'mg/L-N', 'The part of the total ammonia that is present as NH3, the poisonous form.', {
    alsoCalled: ['free ammonia', 'un-ionized ammonia', 'unionised ammonia', 'unionized ammonia', 'nh3'], units: ['mg/L-N', 'ug/L-N', ...byMass, 'umol/L', 'ppm'], plausible: [0, 10], concentration: true,
  }),
  measure('total nitrogen', 'mg/L-N', 'All nitrogen in the water.', { alsoCalled: ['tn'], units: ['mg/L-N', 'ug/L-N', 'umol/L'], plausible: [0, 200], concentration: true }),
  measure('phosphate', 'mg/L', 'Orthophosphate: mg/L is the ion; write mg/L-P for phosphate as phosphorus.', {
    alsoCalled: ['po4', 'orthophosphate', 'srp'], units: [...byMass, 'mg/L-P', 'ug/L-P', 'umol/L', 'ppm'], plausible: [0, 50], concentration: true,
  }),
  measure('total phosphorus', 'mg/L-P', 'All phosphorus in the water.', { alsoCalled: ['tp'], units: ['mg/L-P', 'ug/L-P', 'umol/L'], plausible: [0, 50], concentration: true }),
  measure('carbon dioxide', 'mg/L', 'Dissolved carbon dioxide.', { alsoCalled: ['co2'], units: [...byMass, 'umol/L', 'mmol/L', 'ppm'], plausible: [0, 200], concentration: true }),
  measure('air carbon dioxide', 'ppm', 'Carbon dioxide in the air of the room.', { alsoCalled: ['room co2'], plausible: [200, 10_000], medium: 'air' }),
  measure('total organic carbon', 'mg/L', 'Organic carbon in the water.', { alsoCalled: ['toc', 'doc', 'dissolved organic carbon'], units: byMass, plausible: [0, 200], concentration: true }),
  measure('chlorine', 'mg/L', 'Free or total chlorine, as the test says.', { units: [...byMass, 'ppm'], plausible: [0, 10], concentration: true }),
  measure('copper', 'ug/L', 'Dissolved copper.', { alsoCalled: ['cu'], units: ['ug/L', 'mg/L', 'ppm'], plausible: [0, 2000], concentration: true }),
  measure('chlorophyll', 'ug/L', 'Chlorophyll a of the algae in the water.', { alsoCalled: ['chlorophyll a'], units: ['ug/L', 'mg/L'], plausible: [0, 2000], concentration: true }),
  measure('redox potential', 'mV', 'Oxidation-reduction potential against the probe\'s reference.', {
    alsoCalled: ['orp', 'redox', 'eh'], units: ['mV', 'V'], plausible: [-500, 800], trueZero: false,
  }),
  measure('turbidity', 'NTU', 'Cloudiness of the water.', { plausible: [0, 1000] }),
  measure('light', 'umol/m2/s', 'Photosynthetically active light (PAR) at the place of measurement.', {
    alsoCalled: ['par', 'ppfd', 'photon flux density'], units: ['umol/m2/s'], plausible: [0, 2500], medium: 'tank',
  }),
  measure('illuminance', 'lx', 'Light as the eye weighs it.', { alsoCalled: ['lux', 'light level', 'brightness'], units: ['lx', 'klx'], plausible: [0, 150_000], medium: 'tank' }),
  measure('irradiance', 'W/m2', 'Light as power on an area.', { plausible: [0, 1400], medium: 'tank' }),
  measure('water level', 'cm', 'Height of the water surface above the bottom or a mark.', {
    alsoCalled: ['level', 'water depth', 'depth'], units: ['cm', 'mm', 'm', 'in'], plausible: [0, 300], medium: 'tank',
  }),
  measure('water volume', 'L', 'Water in the tank.', { alsoCalled: ['volume'], units: ['L', ...volumes.filter((unit) => unit !== 'L')], plausible: [0, 100_000], medium: 'tank' }),
  measure('evaporated volume', 'mL', 'Water lost to the air.', { alsoCalled: ['evaporation', 'water lost'], units: volumes, plausible: [0, 100_000], medium: 'tank' }),
  measure('volume dosed', 'mL', 'Solution or water added.', { alsoCalled: ['dose', 'top-up', 'volume added', 'water added'], units: volumes, plausible: [0, 100_000], medium: 'tank' }),
  measure('mass dosed', 'g', 'Substance or feed added.', { alsoCalled: ['feed', 'food', 'food given', 'feed given'], units: ['g', 'mg', 'kg'], plausible: [0, 100_000], medium: 'tank' }),
  measure('mass', 'g', 'Mass of a plant, an animal or a thing.', { alsoCalled: ['weight', 'wet mass', 'dry mass'], units: ['g', 'mg', 'kg', 'oz', 'lb'], plausible: [0, 1_000_000], medium: 'tank' }),
  measure('biomass', 'g', 'Mass of all animals or plants counted together.', { units: ['g', 'mg', 'kg'], plausible: [0, 1_000_000], medium: 'animals' }),
  measure('length', 'mm', 'Length of an animal, a leaf or a thing.', { alsoCalled: ['body length', 'leaf length', 'height', 'width'], units: ['mm', 'cm', 'm', 'in', 'um'], plausible: [0, 10_000], medium: 'tank' }),
  measure('area', 'cm2', 'Area, for example of a mat or a patch of algae.', { units: ['cm2', 'm2', 'mm2'], plausible: [0, 10_000_000], medium: 'tank' }),
  measure('cover', '%', 'Part of a surface that is covered.', { alsoCalled: ['coverage', 'plant cover', 'surface cover', 'algae cover'], plausible: [0, 100], medium: 'tank' }),
  measure('count', '1', 'Number of animals, eggs, leaves or other things.', { alsoCalled: ['number', 'animals', 'deaths', 'mortality', 'survivors'], plausible: [0, 1_000_000], medium: 'animals' }),
  measure('flow', 'L/h', 'Water moved in a time.', { alsoCalled: ['flow rate', 'pump rate'], units: ['L/h', 'L/min', 'mL/min', 'mL/h', 'm3/h', 'galUS/h', 'galUK/h'], plausible: [0, 100_000], medium: 'tank' }),
  measure('air flow', 'L/h', 'Air given by a pump.', { alsoCalled: ['aeration'], units: ['L/h', 'L/min', 'mL/min'], plausible: [0, 100_000], medium: 'tank' }),
  measure('power', 'W', 'Electrical power drawn.', { units: ['W', 'mW', 'kW'], plausible: [0, 100_000], medium: 'tank' }),
  measure('energy', 'kWh', 'Electrical energy used.', { units: ['kWh', 'Wh', 'kJ', 'J'], plausible: [0, 100_000], medium: 'tank' }),
  measure('respiratory rate', '/min', 'Gill beats of an animal in a minute.', {
    alsoCalled: ['gill beats', 'gill beat rate', 'opercular rate', 'ventilation rate', 'breathing rate'], units: ['/min', '/s', '/h'], plausible: [0, 400], medium: 'animals',
  }),
  measure('event rate', '/h', 'How often something happens: surfacing, feeding strikes, spawning.', {
    alsoCalled: ['surfacing rate', 'frequency'], units: ['/h', '/min', '/d'], plausible: [0, 10_000], medium: 'animals',
  }),
  measure('duration', 'min', 'How long something lasts.', { alsoCalled: ['time spent'], units: ['min', 's', 'h', 'd'], plausible: [0, 1_000_000], medium: 'animals' }),
  measure('behaviour', null, 'What the animals do, in the words of the declared scale.', { alsoCalled: ['behavior', 'activity', 'condition', 'observation'], medium: 'animals' }),
];

const byName: ReadonlyMap<string, MeasureEntry> = new Map([
  ...measures.flatMap((entry) => entry.alsoCalled.map((name) => [name, entry] as const)),
  ...measures.map((entry) => [entry.name.toLowerCase(), entry] as const),
]);

/** The entry by its name or another name of it, letters' case aside; null when it is not in the list. */
export function measureByName(name: string): MeasureEntry | null {
  return byName.get(name.trim().replace(/\s+/gu, ' ').toLowerCase()) ?? null;
}

/** The name that a mistyped one is nearest to (`disolved oxigen`), or null when none is near. */
export function nearestMeasure(name: string): string | null {
  const wanted = name.trim().toLowerCase();
  if (wanted === '') return null;
  let best: string | null = null;
  let bestDistance = Math.max(1, Math.floor(wanted.length / 4)) + 1;
  for (const [known, entry] of byName) {
    if (known.length < 3) continue;
    const distance = editDistance(wanted, known);
    if (distance < bestDistance) { best = entry.name; bestDistance = distance; }
  }
  if (best) return best;
  const containing = wanted.length >= 4 ? measures.find((entry) => entry.name.toLowerCase().includes(wanted) || wanted.includes(entry.name.toLowerCase())) : undefined;
  return containing?.name ?? null;
}
