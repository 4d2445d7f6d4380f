// Units as German prose writes them, by symbol. Squares and cubes are words of their own: `Quadratzentimeter`.
import type { UnitGrammar } from '../en/unitWords.ts';

const masses = (start: string): string[] => [`${start}gramm`];
const metres = (start: string): string[] => [`${start}meter`, `${start}metern`];
const litres = (start: string): string[] => [`${start}liter`, `${start}litern`];

export const unitWords: Readonly<Record<string, readonly string[]>> = {
  '%': ['Prozent', 'v. H.'], pp: ['Prozentpunkt', 'Prozentpunkte', 'Prozentpunkten'], ppm: ['Teil pro Million', 'Teile pro Million', 'Teilen pro Million'],
  kg: masses('kilo'), g: masses(''), mg: masses('milli'), ug: masses('mikro'), ng: masses('nano'),
  mol: ['Mol'], mmol: ['Millimol'], umol: ['Mikromol'], nmol: ['Nanomol'], eq: ['Äquivalent', 'Äquivalente', 'Äquivalenten'], meq: ['Milliäquivalent', 'Milliäquivalente', 'Milliäquivalenten'],
  m: metres(''), dm: metres('dezi'), cm: metres('zenti'), mm: metres('milli'), um: metres('mikro'), km: metres('kilo'), in: ['Zoll', 'inches', 'inch'], ft: ['Fuß'],
  L: litres(''), dL: litres('dezi'), cL: litres('zenti'), mL: litres('milli'), uL: litres('mikro'),
  s: ['Sekunde', 'Sekunden', 'Sek.', 'Sek'], min: ['Minute', 'Minuten', 'Min.', 'Min'], h: ['Stunde', 'Stunden', 'Std.', 'Std'], d: ['Tag', 'Tage', 'Tagen'], week: ['Woche', 'Wochen'],
  degC: ['Grad Celsius', 'Grad C', 'Grad'], degF: ['Grad Fahrenheit', 'Grad F'], K: ['Kelvin'],
  Pa: ['Pascal'], hPa: ['Hektopascal'], kPa: ['Kilopascal'], mbar: ['Millibar'], bar: ['Bar'], mmHg: ['Millimeter Quecksilbersäule'], atm: ['Atmosphäre', 'Atmosphären'],
  S: ['Siemens'], mS: ['Millisiemens'], uS: ['Mikrosiemens'], dS: ['Dezisiemens'], V: ['Volt'], mV: ['Millivolt'], W: ['Watt'], mW: ['Milliwatt'], kW: ['Kilowatt'],
  J: ['Joule'], kJ: ['Kilojoule'], Wh: ['Wattstunde', 'Wattstunden'], kWh: ['Kilowattstunde', 'Kilowattstunden'], lx: ['Lux'], klx: ['Kilolux'], lm: ['Lumen'],
  'pH-difference': ['pH-Einheit', 'pH-Einheiten', 'pH-Stufe', 'pH-Stufen'], dKH: ['Grad Karbonathärte', 'Grad KH', '°KH'], dGH: ['Grad Gesamthärte', 'Grad deutscher Härte', 'Grad dH', 'Grad GH', '°dH', '°GH'],
  ppt: ['Promille', 'Teile pro Tausend'],
};

export const unitGrammar: UnitGrammar = {
  powers: /^(quadrat|kubik)(?=\p{L})/u,
  square: 'quadrat',
  /** Between a unit and what it is counted by, whatever it is; and words that do so before a time alone. */
  per: /^(?:\s+(pro|je)\s+|\s+(in\s+der|in\s+einer|die|jede|alle|und)\s+|\s?\/\s?)/iu,
  perAny: /^(?:pro|je)$/iu,
  /** A time after such a word that is none of a rate: `24,5 °C eine Stunde nach dem Ausfall`. */
  notRate: /^\s+(?:nach|vor|später|früher|danach|davor|lang)(?![\p{L}])/iu,
  reciprocal: /^(?:pro|je)\s+/iu,
  counted: /^(?:Kiemenschläge[n]?|Schläge[n]?|Mal|Tropfen)(?![\p{L}\d])/iu,
  basis: /^\s+(?:(?:als|as)\s+(?:(?:Nitrat|Nitrit|Ammonium|Ammoniak|Phosphat)[- ]?)?(Stickstoff|N|Phosphor|P|Calciumcarbonat|CaCO3|CaCO₃)|(?:Nitrat|Nitrit|Ammonium|Ammoniak)-?(Stickstoff|N)|(?:NO[23]|NH[34]|PO4)-(N|P)|(CaCO3|CaCO₃))(?![\p{L}\d])/iu,
  phosphorus: /^p/iu, nitrogen: /^(?:n|stick)/iu,
};
