// English sentences for remarks in the working of a formula: what a reader should know of how a value came about.
import type { WorkingRemark } from '../remarks.ts';

export type RemarkCode = keyof typeof remarkSentences;
type Arguments = WorkingRemark['args'];
const text = (args: Arguments, name: string): string => String(args[name] ?? '');
const count = (args: Arguments, one: string, many: string): string => (Number(args['count']) === 1 ? `1 ${one}` : `${text(args, 'count')} ${many}`);

export const remarkSentences = {
  'nearest-reading': (args) => `No reading of ${text(args, 'name')} at ${text(args, 'wanted')}; the nearest inside, at ${text(args, 'found')}, was taken.`,
  tie: (args) => `${count(args, 'value is', 'values are')} equal; the first, at ${text(args, 'time')}, was taken.`,
  interpolated: (args) => `Read off the straight line between the readings at ${text(args, 'from')} and ${text(args, 'to')}.`,
  'first-true': (args) => `First true at ${text(args, 'time')}.`,
  'first-false': (args) => `First not true at ${text(args, 'time')}.`,
  'readings-checked': (args) => `Checked at ${count(args, 'reading', 'readings')}.`,
  stretch: (args) => `Between the readings at ${text(args, 'from')} and ${text(args, 'to')}.`,
  'least-squares': (args) => `Least squares line through ${count(args, 'reading', 'readings')}.`,
  'steps-missing': (args) => `${count(args, 'step has', 'steps have')} no value, because a reading is missing.`,
  gap: (args) => `Readings are missing between ${text(args, 'from')} and ${text(args, 'to')}.`,
  'straight-lines': (args) => `${count(args, 'reading', 'readings')} joined by straight lines.`,
  'half-width': (args) => `95 % half-width ${text(args, 'value')}.`,
  'night-fit': (args) => `Fitted to ${count(args, 'reading', 'readings')}: exchange ${text(args, 'exchange')} /h (95 % ${text(args, 'low')} to ${text(args, 'high')}), respiration ${text(args, 'respiration')} mg/L/h, correlation of the two ${text(args, 'correlation')}, scatter ${text(args, 'scatter')} mg/L.`,
  'night-joint': (args) => `Both together at 95 %: exchange ${text(args, 'exchangeLow')} to ${text(args, 'exchangeHigh')} /h with respiration ${text(args, 'respirationLow')} to ${text(args, 'respirationHigh')} mg/L/h; the net loss at the mean deficit of ${text(args, 'deficit')} mg/L is known better: ${text(args, 'net')} ± ${text(args, 'half')} mg/L/h.`,
  'scatter-follows': (args) => `The scatter about the fitted night may follow its neighbours so closely (most credible correlation ${text(args, 'correlation')}) that the interval covers less often than 95 %.`,
  'time-interval': (args) => `95 % interval ${text(args, 'low')} to ${text(args, 'high')}.`,
  'time-open': (args) => `95 % interval from ${text(args, 'low')} on; that the level is never reached cannot be ruled out.`,
  'scatter-alone': () => 'The interval counts the scatter alone: with no accuracy stated, that of the instruments is not known.',
  'balance-open': () => 'No 95 % interval: with other readings of the same scatter the balance might not show.',
  'what-if': (args) => `A prediction, not a reading: darkness of ${text(args, 'dark')}, ${text(args, 'exchange') === '1' ? 'the exchange as fitted' : `the exchange ${text(args, 'exchange')} times as strong`}, ${text(args, 'stocking') === '1' ? 'the respiration as fitted' : `the respiration ${text(args, 'stocking')} times as great`}. It takes every animal, plant and bacterium to go on as in the fitted night.`,
  'beyond-fit': (args) => `The prediction runs ${text(args, 'beyond')} beyond the last fitted reading, with the water's temperature and pressure as they were then.`,
  extrapolated: () => 'A prediction from the fitted night, as if it went on alike.',
  serial: (args) => `95 % interval ${text(args, 'value')}, with the serial correlation of the readings counted in (${text(args, 'correlation')} from one to the next).`,
  'one-tank-a-side': () => 'One tank a side: these two tanks differ so; what the treatment does, replicate tanks must show.',
  'tanks-as-units': (args) => `Each tank counts once: ${text(args, 'treatment')} against ${text(args, 'control')} tanks; the smallest p that an exact test of this design can reach is ${text(args, 'smallest')}.`,
  'tanks-as-units-p': (args) => `Each tank counts once: ${text(args, 'treatment')} against ${text(args, 'control')} tanks. Exact permutation p ${text(args, 'p')}; the smallest that this design can reach is ${text(args, 'smallest')}.`,
  'nearly-random-walk': () => 'The readings may follow one another so closely that the interval covers less often than 95 %.',
  'few-for-serial': (args) => `With only ${count(args, 'reading', 'readings')} it can go unnoticed that they follow one another closely; the interval would then be too narrow, and otherwise it is a little too wide.`,
  'median-slope': (args) => `Median of ${text(args, 'count')} slopes between two readings; 95 % interval ${text(args, 'low')} to ${text(args, 'high')}, readings taken as independent.`,
  'median-slope-alone': (args) => `Median of ${text(args, 'count')} slopes between two readings; too few for an interval.`,
  'gap-parts': (args) => `Of ${text(args, 'difference')} mg/L (mean of ${count(args, 'row', 'rows')}): temperature ${text(args, 'temperature')}, pressure ${text(args, 'pressure')}, salinity ${text(args, 'salinity')}, left ${text(args, 'left')} mg/L.`,
  'ammonia-saline': () => 'In saline water, with the ammonium constant of sea water (Khoo, Culberson and Bates 1977), for a pH as an electrode set in ordinary buffers shows it; a pH on the total scale of oceanography would read about a quarter too low here.',
  'carbon-dioxide-rule': (args) => `At ${text(args, 'time')} the trade's rule of thumb, 3 · KH · 10^(7 − pH), which no published equation stands behind, would give ${text(args, 'rule')} mg/L instead of ${text(args, 'value')}, ${text(args, 'low')} % less: at ${text(args, 'temperature')} °C the equilibrium has ${text(args, 'coefficient')} where the rule has 3.`,
  'fresh-water': () => 'No salinity is stated or measured: computed for fresh water.',
  'pressure-as-read': () => 'Air pressure as read at the place.',
  'pressure-from-sea-level': (args) => `Air pressure turned from sea level to ${text(args, 'elevation')} m by the standard atmosphere.`,
  'saturation-local-pressure': () => 'Saturation at the air pressure of the place (Benson and Krause 1984).',
  'saturation-given-pressure': () => 'Saturation at the pressure given in the formula (Benson and Krause 1984).',
  'salinity-from-conductivity': () => 'Salinity from conductivity and temperature (PSS-78).',
  'salinity-from-specific-gravity': (args) => `Salinity from specific gravity against pure water of ${text(args, 'reference')} °C (EOS-80), the glass not corrected for.`,
  'salinity-from-specific-conductance': () => 'Salinity from specific conductance at 25 °C (Schemel 2001).',
} as const satisfies Readonly<Record<string, (args: Arguments) => string>>;
