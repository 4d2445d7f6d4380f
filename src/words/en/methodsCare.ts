// English sentences of the methods: what happened to readings, events, instruments, computing, stop rules, what the design can show.
import { join, say, type Pieces, type Slot } from '../pieces.ts';
import { capital, capitalPieces, counted, listed, listedText, numberWord, phrase, sentence, withArticle } from './grammar.ts';

const reason = (remark: string | null): string => (remark === null || remark.trim() === '' ? '' : ` (remark: “${phrase(remark)}”)`);

export const careWords = {
  one: (args: { what: string; time: string; recorded: string | null; remark: string | null }): string =>
    `${args.what} at ${args.time}${args.recorded === null ? '' : `, recorded as ${args.recorded}`}${reason(args.remark)}`,
  missing: <V>(items: readonly Slot<V>[]): Pieces<V> => headed(items, 'reading is missing', 'readings are missing'),
  /** Where some items stand for many readings, so that their number cannot head them. */
  missingSome: <V>(items: readonly string[]): Pieces<V> => [`Readings are missing: ${items.join('; ')}.`],
  missingMany: (args: { what: string; count: number; of: number }): string => `${args.what} at ${numberWord(args.count)} of ${args.of} times`,
  leftOut: <V>(items: readonly Slot<V>[]): Pieces<V> =>
    headed(items, 'reading stays in the table but was left out of every calculation', 'readings stay in the table but were left out of every calculation'),
  doubtful: <V>(items: readonly Slot<V>[]): Pieces<V> => headed(items, 'reading is marked doubtful and was used', 'readings are marked doubtful and were used'),
  corrected: <V>(items: readonly Slot<V>[]): Pieces<V> => headed(items, 'reading was corrected', 'readings were corrected'),
  correction: (args: { what: string; time: string; states: readonly string[]; remark: string | null }): string =>
    `${args.what} at ${args.time}, ${args.states.length > 1 ? `from ${args.states.join(' to ')}` : args.states.join('')}${reason(args.remark)}`,
  below: (amount: string): string => `below ${amount}`,
  above: (amount: string): string => `above ${amount}`,
  word: (word: string): string => `“${word}”`,
  withdrawn: 'withdrawn',
  foundLate: 'not taken',
  outside: <V>(items: readonly Slot<V>[]): Pieces<V> => headed(items, 'reading lay outside the range of its instrument', 'readings lay outside the range of their instruments'),
  repeated: <V>(args: { count: number }): Pieces<V> =>
    say`${capital(counted(args.count, 'reading'))} ${args.count === 1 ? 'is' : 'are'} the mean of repeats taken at once.`,
  timesCorrected: <V>(items: readonly string[]): Pieces<V> => say`${items.length === 1 ? 'One time of reading was' : `${capital(numberWord(items.length))} times of reading were`} corrected: ${listedText(items)}.`,
  timeCorrection: (args: { states: readonly string[]; remark: string | null }): string => `from ${args.states.join(' to ')}${reason(args.remark)}`,
  clean: <V>(): Pieces<V> => ['No reading was left out, corrected or marked doubtful.'],
};

function headed<V>(items: readonly Slot<V>[], one: string, many: string): Pieces<V> {
  const list = items.length <= 2 ? listed(items) : say<V>`${join(items.slice(0, -1), '; ')}; and ${items.at(-1)!}`;
  return say`${capital(numberWord(items.length))} ${items.length === 1 ? one : many}: ${list}.`;
}

export const eventWords = {
  events: <V>(items: readonly string[]): Pieces<V> => say`The plan logs ${items.length === 1 ? 'one event' : `${numberWord(items.length)} events`}: ${items.join('; ')}.`,
  event: (args: { what: string; time: string; tanks: string | null }): string => `${phrase(args.what)} at ${args.time}${args.tanks === null ? '' : ` (${args.tanks})`}`,
};

export const instrumentWords = {
  /** `where` is "in both tanks and the room", or empty. */
  measured: <V>(args: { what: string; where: string; unit: string; instrument: string | null; details: readonly string[]; read: boolean }): Pieces<V> => {
    const unit = args.unit === '' ? '' : ` in ${args.unit}`;
    const by = args.instrument === null ? '' : ` with ${withArticle(args.instrument)}`;
    const details = args.details.length === 0 ? '' : ` (${args.details.join(', ')})`;
    return capitalPieces(say`${args.what} was ${args.read ? '' : 'to be '}measured${unit}${by}${details}${args.where === '' ? '' : ` ${args.where}`}.`);
  },
  accuracy: (half: string): string => `accuracy ±${half}`,
  noAccuracy: (): string => 'accuracy not stated',
  resolution: (step: string): string => `resolution ${step}`,
  calibrated: (when: string): string => (/^\d/.test(when) ? `calibrated on ${when}` : `calibrated ${phrase(when)}`),
  scored: <V>(args: { what: string; where: string; scale: readonly string[]; read: boolean }): Pieces<V> =>
    capitalPieces(say`${args.what} was ${args.read ? '' : 'to be '}scored by eye${args.where === '' ? '' : ` ${args.where}`} as ${listedText(args.scale, 'or')}.`),
  stationPressure: <V>(): Pieces<V> => ['The air pressure is that of the station, not reduced to sea level.'],
  seaPressure: <V>(args: { elevation: string }): Pieces<V> =>
    say`The air pressure was read as reduced to sea level${args.elevation === '' ? '' : ` and brought to the station's elevation of ${args.elevation}`} before use.`,
};

const changeText = 'Changes are the last reading of a window minus its first.';
const percentText = 'Percentage changes are relative to the first reading of the window.';
const steepestText = 'The steepest change is the fastest per hour between neighbouring readings, never across a missing one.';
const stepsText = 'Steps are counted from the first reading of the window; a percentage step is relative to the reading at which it begins.';
const hoursText = 'Hours below or above a level were read off straight lines between the readings.';

/** What the methods say of a function; one sentence may serve several. Functions not named here are defined by the catalogue. */
export const functionWords: Readonly<Record<string, string>> = {
  change: changeText, rise: changeText, fall: changeText,
  'percent-change': percentText, 'percent-rise': percentText, 'percent-fall': percentText,
  rate: 'Rates are the change from the first to the last reading of a window, divided by the hours between them.',
  slope: 'Slopes are those of the least-squares line through the readings of a window.',
  'steepest-fall': steepestText, 'steepest-rise': steepestText, 'time-of-steepest-fall': steepestText, 'time-of-steepest-rise': steepestText,
  steps: stepsText, 'percent-steps': stepsText, 'hours-below': hoursText, 'hours-above': hoursText,
  'first-below': 'The time at which a level was first passed is that of the first reading beyond it.',
  'first-above': 'The time at which a level was first passed is that of the first reading beyond it.',
  interpolate: 'Values between two readings lie on the straight line that joins them.',
  difference: 'Differences between tanks were taken reading by reading, at the times that both have.',
  'percent-difference': 'Percentage differences between tanks are relative to the second tank named in the formula.',
  solubility: 'The solubility of oxygen was computed from the water temperature, station pressure and salinity of the same row.',
  saturation: 'Oxygen saturation is dissolved oxygen in per cent of its solubility at the water temperature, station pressure and salinity of the same row.',
  deficit: 'The oxygen deficit is the solubility at the water temperature, station pressure and salinity of the same row minus the dissolved oxygen.',
  median: 'Medians are the middle reading by size; of an even number of readings, the mean of the middle two.',
  sd: 'Standard deviations are those of a sample.',
};

/** What may have its ± from scatter: a contrast paired in time, one in which each tank counts once, a slope, a fitted night. */
export type ScatterKind = 'contrast' | 'contrast-of-tanks' | 'slope' | 'night';

const scatterWords: Readonly<Record<ScatterKind, string>> = {
  contrast: 'contrasts follow from the scatter of the paired readings',
  'contrast-of-tanks': 'contrasts follow from the scatter between tanks treated alike',
  slope: 'slopes follow from the scatter about the line, where there are readings enough for it',
  night: 'fitted nights follow from the scatter about the fit, with what the instruments add',
};

export const computingWords = {
  definition: (args: { name: string; definition: string }): string => `In the formulas, “${args.name}” stands for: ${args.definition.charAt(0).toLowerCase()}${args.definition.slice(1)}`,
  opening: <V>(): Pieces<V> => ['Every computed figure carries its formula.'],
  /** Author and year of a source: `Benson and Krause 1984`. */
  cited: (source: string): string => source,
  /** `name` as a formula writes it; `definition` a sentence of the catalogue. */
  defined: <V>(args: { definition: string; citation: Slot<V> | null }): Pieces<V> => {
    const text = sentence(args.definition);
    return args.citation === null ? [text] : say`${text.replace(/[.]$/, '')} (${args.citation}).`;
  },
  /** `scatter`: what of the note has its ± from scatter instead. */
  uncertainty: <V>({ citation, scatter }: { citation: Slot<V>; scatter: readonly ScatterKind[] }): Pieces<V> =>
    say`Unless a table says otherwise, figures after ± are 95 % half-widths, from the stated accuracy and resolution of the instruments and the spread of repeats (${citation})${scatter.length === 0 ? '' : `; ${listedText(scatter.map((kind) => `those of ${scatterWords[kind]}`))}`}.`,
};

export const stopWords = {
  /** A rule and what became of it. */
  never: <V>(args: { condition: string; action: string | null }): Pieces<V> => say`${rule(args)} This did not happen.`,
  crossed: <V>(args: { condition: string; action: string | null; time: string; times: number; outcome: string | null }): Pieces<V> =>
    say`${rule(args)} This was so at ${args.time}${args.times > 1 ? `, and at ${counted(args.times - 1, 'later reading')}` : ''}${args.outcome === null ? '; the note does not say what was done.' : `. Outcome: ${capital(sentence(args.outcome))}`}`,
  unread: <V>(args: { condition: string; action: string | null }): Pieces<V> => [rule(args)],
};

function rule(args: { condition: string; action: string | null }): string {
  return `The plan says to stop if ${args.condition}${args.action === null ? '.' : ` (“${phrase(args.action)}”).`}`;
}

export const evidenceWords = {
  oneASide: <V>(citation: Slot<V>): Pieces<V> =>
    say`The tank is the unit of comparison: with one tank a side, repeated readings show how these two tanks differed, but they are no replicates and cannot tell the treatment from anything else in which the two tanks differ (${citation}).`,
  several: <V>(args: { treated: number; controls: number; citation: Slot<V> }): Pieces<V> =>
    say`The tank is the unit of comparison: ${numberWord(args.treated)} treated and ${numberWord(args.controls)} control ${args.controls === 1 ? 'tank' : 'tanks'} count as ${numberWord(args.treated)} and ${numberWord(args.controls)}, however many readings each has (${args.citation}).`,
  noControl: <V>(): Pieces<V> => ['Without a control tank the readings show what happened, not what would have happened without the treatment.'],
};
