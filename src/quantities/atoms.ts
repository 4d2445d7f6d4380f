// The hand-written table of unit symbols: every symbol that a unit of the note is put together from.
// Factors are exact by definition (SI brochure, 1959 yard and pound, NIST SP 811) unless a remark says otherwise.
import type { Dimension, Kind } from './types.ts';
import { dimension } from './dimension.ts';

export interface Atom {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly kind: Kind;
  readonly factor: number;
  readonly offset: number;
  /** What UCUM has no unit for is written in its units, or as an annotation in braces, which counts as 1. */
  readonly ucum: string;
  readonly print: string;
  /** Other spellings of the symbol, exactly as written. */
  readonly spellings: readonly string[];
  /** Words of prose: singular, plural, other forms. */
  readonly words: readonly string[];
  /** What it measures, for completion and reference. */
  readonly of: string;
  readonly remark: string | null;
}

interface AtomOptions {
  kind?: Kind; offset?: number; ucum?: string; print?: string; spellings?: readonly string[]; words?: readonly string[]; remark?: string;
}

function atom(symbol: string, of: string, exponents: Partial<Dimension>, factor: number, options: AtomOptions = {}): Atom {
  return {
    symbol, of, dimension: dimension(exponents), factor, kind: options.kind ?? 'plain', offset: options.offset ?? 0,
    ucum: options.ucum ?? symbol, print: options.print ?? symbol,
    spellings: options.spellings ?? [], words: options.words ?? [], remark: options.remark ?? null,
  };
}

const volume = { length: 3 };
const pressure = { mass: 1, length: -1, time: -2 };
const power = { mass: 1, length: 2, time: -3 };
const energy = { mass: 1, length: 2, time: -2 };
const voltage = { mass: 1, length: 2, time: -3, current: -1 };
const conductance = { mass: -1, length: -2, time: 3, current: 2 };
const equivalents = { amount: 1, length: -3 };

/** Grams of calcium carbonate in one equivalent: 100.0869 / 2 (IUPAC standard atomic weights). */
export const calciumCarbonatePerEquivalent = 50.04345;
/** Equivalents in one German degree: 10 mg of CaO (56.0774 g/mol) in a litre, two equivalents a mole. */
const germanDegree = (2 * 10) / 56.0774;
/** Micromoles in one millilitre of oxygen at 0 °C and 1 atm: 1.42905 mg / 31.9988 g/mol (real molar volume). */
const oxygenMillilitre = 1.42905 / 31.9988 * 1e-3;

export const atoms: readonly Atom[] = [
  atom('1', 'a plain number', {}, 1, { print: '' }),
  atom('%', 'percentage', {}, 0.01, { kind: 'percentage', spellings: ['percent', 'pct'], words: ['per cent', 'percent'] }),
  atom('pp', 'difference of two percentages', {}, 0.01, {
    kind: 'percentage-points', ucum: '%', spellings: ['%-points'], words: ['percentage point', 'percentage points', 'percent points', 'per cent points'],
    remark: 'A difference of two percentages: 82 % minus 75 % is 7 pp.',
  }),
  atom('ppm', 'parts per million', {}, 1e-6, {
    kind: 'parts-per-million', ucum: '[ppm]', spellings: ['PPM'], words: ['part per million', 'parts per million'],
    remark: 'In dilute fresh water near mg/L, but not taken as mg/L in silence: an instrument that shows ppm may mean either, or a salt factor. Write mg/L where you mean it.',
  }),
  // mass and amount
  atom('kg', 'mass', { mass: 1 }, 1, { spellings: ['KG'], words: ['kilogram', 'kilograms', 'kilogramme', 'kilogrammes'] }),
  atom('g', 'mass', { mass: 1 }, 1e-3, { spellings: ['gr'], words: ['gram', 'grams', 'gramme', 'grammes'] }),
  atom('mg', 'mass', { mass: 1 }, 1e-6, { words: ['milligram', 'milligrams', 'milligramme', 'milligrammes'] }),
  atom('ug', 'mass', { mass: 1 }, 1e-9, { print: 'µg', spellings: ['mcg'], words: ['microgram', 'micrograms'] }),
  atom('ng', 'mass', { mass: 1 }, 1e-12, { words: ['nanogram', 'nanograms'] }),
  atom('oz', 'mass', { mass: 1 }, 0.028349523125, { ucum: '[oz_av]', words: ['ounce', 'ounces'] }),
  atom('lb', 'mass', { mass: 1 }, 0.45359237, { ucum: '[lb_av]', spellings: ['lbs'], words: ['pound', 'pounds'] }),
  atom('mol', 'amount of substance', { amount: 1 }, 1, { words: ['mole', 'moles'] }),
  atom('mmol', 'amount of substance', { amount: 1 }, 1e-3, { words: ['millimole', 'millimoles'] }),
  atom('umol', 'amount of substance', { amount: 1 }, 1e-6, { print: 'µmol', words: ['micromole', 'micromoles'] }),
  atom('nmol', 'amount of substance', { amount: 1 }, 1e-9, { words: ['nanomole', 'nanomoles'] }),
  atom('eq', 'equivalents', { amount: 1 }, 1, { kind: 'alkalinity', words: ['equivalent', 'equivalents'] }),
  atom('meq', 'equivalents', { amount: 1 }, 1e-3, { kind: 'alkalinity', words: ['milliequivalent', 'milliequivalents'] }),
  atom('ueq', 'equivalents', { amount: 1 }, 1e-6, { kind: 'alkalinity', print: 'µeq', words: ['microequivalent', 'microequivalents'] }),
  // length, area, volume
  atom('m', 'length', { length: 1 }, 1, { words: ['metre', 'metres', 'meter', 'meters'] }),
  atom('dm', 'length', { length: 1 }, 0.1, { words: ['decimetre', 'decimetres', 'decimeter', 'decimeters'] }),
  atom('cm', 'length', { length: 1 }, 0.01, { words: ['centimetre', 'centimetres', 'centimeter', 'centimeters'] }),
  atom('mm', 'length', { length: 1 }, 1e-3, { words: ['millimetre', 'millimetres', 'millimeter', 'millimeters'] }),
  atom('um', 'length', { length: 1 }, 1e-6, { print: 'µm', words: ['micrometre', 'micrometres', 'micrometer', 'micrometers'] }),
  atom('km', 'length', { length: 1 }, 1e3, { words: ['kilometre', 'kilometres', 'kilometer', 'kilometers'] }),
  atom('in', 'length', { length: 1 }, 0.0254, { ucum: '[in_i]', print: 'inches', spellings: ['inch', 'inches', '"', '″'], words: ['inch', 'inches'] }),
  atom('ft', 'length', { length: 1 }, 0.3048, { ucum: '[ft_i]', spellings: ['feet', 'foot'], words: ['foot', 'feet'] }),
  atom('L', 'volume', volume, 1e-3, { spellings: ['l', 'ltr', 'Ltr'], words: ['litre', 'litres', 'liter', 'liters'] }),
  atom('dL', 'volume', volume, 1e-4, { spellings: ['dl'], words: ['decilitre', 'decilitres', 'deciliter', 'deciliters'] }),
  atom('cL', 'volume', volume, 1e-5, { spellings: ['cl'], words: ['centilitre', 'centilitres', 'centiliter', 'centiliters'] }),
  atom('mL', 'volume', volume, 1e-6, { spellings: ['ml', 'cc'], words: ['millilitre', 'millilitres', 'milliliter', 'milliliters'] }),
  atom('uL', 'volume', volume, 1e-9, { print: 'µL', spellings: ['ul'], words: ['microlitre', 'microlitres', 'microliter', 'microliters'] }),
  atom('galUS', 'volume', volume, 3.785411784e-3, {
    ucum: '[gal_us]', print: 'gal (US)', spellings: ['gal(US)', 'gal-US', 'galus', 'US-gal', 'USgal', 'gal_us'],
    words: ['US gallon', 'US gallons', 'U.S. gallons', 'US gal', 'gal (US)'],
    remark: 'A plain gal is refused: the US gallon holds 3.785 L, the imperial one 4.546 L.',
  }),
  atom('galUK', 'volume', volume, 4.54609e-3, {
    ucum: '[gal_br]', print: 'gal (UK)', spellings: ['gal(UK)', 'gal-UK', 'galuk', 'UK-gal', 'UKgal', 'gal(imp)', 'gal_br'],
    words: ['imperial gallon', 'imperial gallons', 'UK gallon', 'UK gallons', 'UK gal', 'gal (UK)'],
  }),
  // time
  atom('s', 'time', { time: 1 }, 1, { spellings: ['sec', 'secs', 'second', 'seconds'], words: ['second', 'seconds'] }),
  atom('min', 'time', { time: 1 }, 60, { spellings: ['mins', 'minute', 'minutes'], words: ['minute', 'minutes'] }),
  atom('h', 'time', { time: 1 }, 3600, { spellings: ['hr', 'hrs', 'hour', 'hours'], words: ['hour', 'hours'] }),
  atom('d', 'time', { time: 1 }, 86400, { spellings: ['day', 'days'], words: ['day', 'days'], remark: 'Exactly 24 hours.' }),
  atom('week', 'time', { time: 1 }, 604800, { ucum: 'wk', spellings: ['weeks', 'wk'], words: ['week', 'weeks'], remark: 'Exactly 7 times 24 hours.' }),
  // temperature: degC and degF alone are points on a scale; K, and both inside a rate, are differences
  atom('degC', 'temperature', { temperature: 1 }, 1, {
    kind: 'temperature', ucum: 'Cel', print: '°C', spellings: ['°C', 'C', 'oC', '°c', 'deg-C', 'degc', 'DegC', 'Cel', 'celsius', 'Celsius'],
    words: ['degree Celsius', 'degrees Celsius', 'degrees centigrade', 'degrees C', 'degree C', 'deg C', 'Celsius'],
    remark: 'A point on the scale. A difference of two is in K; inside a rate (degC/h) it is a difference.',
  }),
  atom('degF', 'temperature', { temperature: 1 }, 5 / 9, {
    kind: 'temperature', offset: (-32 * 5) / 9, ucum: '[degF]', print: '°F', spellings: ['°F', 'F', '°f', 'deg-F', 'degf', 'DegF', 'fahrenheit', 'Fahrenheit'],
    words: ['degree Fahrenheit', 'degrees Fahrenheit', 'degrees F', 'degree F', 'deg F', 'Fahrenheit'],
    remark: 'A point on the scale. A difference of two is in degF-difference, or K.',
  }),
  atom('K', 'temperature difference', { temperature: 1 }, 1, {
    kind: 'temperature-difference', spellings: ['degC-difference', 'kelvin'], words: ['kelvin', 'kelvins'],
    remark: 'A temperature difference, as large as one degree Celsius; never the absolute temperature.',
  }),
  atom('degF-difference', 'temperature difference', { temperature: 1 }, 5 / 9, {
    kind: 'temperature-difference', ucum: '(5.K/9)', print: '°F', remark: 'A difference of two temperatures in degrees Fahrenheit.',
  }),
  // pressure
  atom('Pa', 'pressure', pressure, 1, { words: ['pascal', 'pascals'] }),
  atom('hPa', 'pressure', pressure, 100, { spellings: ['hpa', 'HPA'], words: ['hectopascal', 'hectopascals'] }),
  atom('kPa', 'pressure', pressure, 1000, { spellings: ['kpa', 'KPA'], words: ['kilopascal', 'kilopascals'] }),
  atom('mbar', 'pressure', pressure, 100, { spellings: ['mb', 'mBar', 'millibar'], words: ['millibar', 'millibars'] }),
  atom('bar', 'pressure', pressure, 1e5, { words: ['bar', 'bars'] }),
  atom('mmHg', 'pressure', pressure, 133.322387415, {
    ucum: 'mm[Hg]', spellings: ['mm[Hg]', 'mmhg', 'torr', 'Torr'], words: ['millimetre of mercury', 'millimetres of mercury', 'millimeters of mercury'],
    remark: 'Conventional millimetre of mercury, 133.322387415 Pa.',
  }),
  atom('inHg', 'pressure', pressure, 3386.388640341, {
    ucum: "[in_i'Hg]", spellings: ["[in_i'Hg]", 'inhg', '"Hg', 'in-Hg'], words: ['inch of mercury', 'inches of mercury'],
    remark: 'Conventional inch of mercury: 25.4 mmHg.',
  }),
  atom('psi', 'pressure', pressure, 6894.757293168361, { ucum: '[psi]', spellings: ['PSI'], words: ['pound per square inch', 'pounds per square inch'] }),
  atom('atm', 'pressure', pressure, 101325, { words: ['standard atmosphere', 'standard atmospheres', 'atmosphere', 'atmospheres'] }),
  // electricity and light
  atom('S', 'conductance', conductance, 1, { words: ['siemens'] }),
  atom('mS', 'conductance', conductance, 1e-3, { words: ['millisiemens'] }),
  atom('uS', 'conductance', conductance, 1e-6, { print: 'µS', words: ['microsiemens'] }),
  atom('dS', 'conductance', conductance, 0.1, { words: ['decisiemens'] }),
  atom('V', 'voltage', voltage, 1, { words: ['volt', 'volts'] }),
  atom('mV', 'voltage', voltage, 1e-3, { spellings: ['mv'], words: ['millivolt', 'millivolts'] }),
  atom('W', 'power', power, 1, { spellings: ['watt', 'watts'], words: ['watt', 'watts'] }),
  atom('mW', 'power', power, 1e-3, { words: ['milliwatt', 'milliwatts'] }),
  atom('kW', 'power', power, 1e3, { words: ['kilowatt', 'kilowatts'] }),
  atom('J', 'energy', energy, 1, { words: ['joule', 'joules'] }),
  atom('kJ', 'energy', energy, 1e3, { words: ['kilojoule', 'kilojoules'] }),
  atom('Wh', 'energy', energy, 3600, { ucum: 'W.h', words: ['watt hour', 'watt hours', 'watt-hours'] }),
  atom('kWh', 'energy', energy, 3.6e6, { ucum: 'kW.h', words: ['kilowatt hour', 'kilowatt hours', 'kilowatt-hours'] }),
  atom('lx', 'illuminance', { luminosity: 1, length: -2 }, 1, { spellings: ['lux', 'Lux', 'LUX'], words: ['lux'] }),
  atom('klx', 'illuminance', { luminosity: 1, length: -2 }, 1e3, { spellings: ['klux'], words: ['kilolux'] }),
  atom('lm', 'luminous flux', { luminosity: 1 }, 1, { words: ['lumen', 'lumens'] }),
  // water
  atom('pH', 'pH', {}, 1, { kind: 'ph', ucum: '[pH]', print: '', spellings: ['PH', 'ph', 'pH-units'], remark: 'A point on a logarithmic scale. A difference of two is in pH-difference.' }),
  atom('pH-difference', 'difference of two pH values', {}, 1, {
    kind: 'ph-difference', ucum: '{pH-difference}', print: 'pH units', spellings: ['ph-difference'], words: ['pH unit', 'pH units', 'units of pH'],
  }),
  atom('dKH', 'alkalinity', equivalents, germanDegree, {
    kind: 'alkalinity', ucum: '(10.mg{CaO}/L)', print: '°dKH', spellings: ['°dKH', 'DKH', 'dkh', 'KH', '°KH', 'degKH'],
    words: ['degrees of carbonate hardness', 'degree of carbonate hardness', 'degrees KH', 'degree KH', 'degrees dKH'],
    remark: 'German degree of carbonate hardness, 17.848 mg CaCO3 or 0.35665 meq a litre.',
  }),
  atom('dGH', 'general hardness', equivalents, germanDegree, {
    kind: 'hardness', ucum: '(10.mg{CaO}/L)', print: '°dGH', spellings: ['°dGH', 'DGH', 'dgh', 'GH', '°GH', 'degGH', '°dH', 'dH'],
    words: ['degrees of general hardness', 'degree of general hardness', 'degrees GH', 'degree GH', 'degrees dGH'],
    remark: 'German degree of general hardness: 10 mg CaO a litre.',
  }),
  atom('fH', 'hardness or alkalinity', equivalents, 10 / calciumCarbonatePerEquivalent, {
    kind: 'as-calcium-carbonate', ucum: '(10.mg{CaCO3}/L)', print: '°fH', spellings: ['°fH', '°f-H', 'degfH'], remark: 'French degree: 10 mg CaCO3 a litre.',
  }),
  atom('PSU', 'salinity', {}, 1, {
    kind: 'salinity', ucum: '1', spellings: ['psu', 'PSS', 'PSS-78', 'SP'], words: ['practical salinity unit', 'practical salinity units'],
    remark: 'Practical salinity (PSS-78). ppt and g/kg convert 1 to 1, which holds to 0.5 %.',
  }),
  atom('ppt', 'salinity', {}, 1, {
    kind: 'salinity', ucum: '[ppth]', spellings: ['‰', 'PPT', 'g/kg-salt'], words: ['part per thousand', 'parts per thousand', 'per mille'],
    remark: 'Grams of salt in a kilogram of water; taken as PSU, which holds to 0.5 %.',
  }),
  atom('g/kg', 'salinity', {}, 1, { kind: 'salinity', remark: 'Grams of salt in a kilogram of water; taken as PSU, which holds to 0.5 %.', words: ['grams per kilogram'] }),
  atom('SG', 'specific gravity', {}, 1, { kind: 'specific-gravity', ucum: '1', print: '', spellings: ['sg', 's.g.'], remark: 'Needs its reference temperature to be turned into salinity.' }),
  atom('NTU', 'turbidity', {}, 1, { kind: 'turbidity', ucum: '{NTU}', spellings: ['ntu'], words: ['nephelometric turbidity unit', 'nephelometric turbidity units'] }),
  atom('mL(STP)', 'volume of oxygen gas', { amount: 1 }, oxygenMillilitre, {
    ucum: 'mL{STP}', print: 'mL(STP)', spellings: ['ml(STP)', 'mL(stp)', 'ml(stp)', 'mLSTP', 'mlSTP'],
    remark: 'A millilitre of oxygen gas at 0 °C and 1 atm: 1.42905 mg, 44.6595 µmol. For oxygen only.',
  }),
];

/** The units that people meet whole: offered in completion, listed in the reference, used for near misses. */
export const commonUnits: readonly string[] = [
  'mg/L', 'ug/L', 'g/L', 'mmol/L', 'umol/L', 'umol/kg', 'meq/L', 'mL(STP)/L', 'mg/L-N', 'ug/L-N', 'mg/L-P', 'ug/L-P', 'mg/L-CaCO3',
  'mg/L/h', 'umol/L/h', '%/h', 'pp/h', 'K/h', 'hPa/h', 'uS/cm', 'mS/cm', 'S/m', 'umol/m2/s', 'W/m2', 'mol/m2/d',
  'cm2', 'm2', 'cm3', 'm3', 'L/h', 'mL/min', 'L/min', 'mL/d', 'mL/h', '/min', '/h', '/d', 'g/L/d', 'kg/m3', 'g/cm3', 'cm/h', 'mm/d', 'g/d', 'mg/h',
];
