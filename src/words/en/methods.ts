// English sentences of the methods: design, equal start, light, sampling. Values arrive ready to be placed.
import { say, type Pieces, type Slot } from '../pieces.ts';
import { capital, capitalPieces, counted, lengthWords, listed, listedText, numberWord, phrase, sentence } from './grammar.ts';

const lower = (text: string): string => (/^[A-Z][a-z]/.test(text) && !/^(?:I|[A-Z][a-z]*\.)\s/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

export const designWords = {
  question: <V>(question: string): Pieces<V> => {
    const asked = /^(?:do|does|did|is|are|was|were|can|could|will|would|should|has|have|how|what|which|why|when|where|who|whose)\b/i.test(question.trim());
    return say`The experiment asked: ${capital(sentence(asked ? question.trim().replace(/[.\s]*$/, '').replace(/([^?])$/, '$1?') : question))}`;
  },
  hypothesis: <V>(hypothesis: string): Pieces<V> => say`The hypothesis was: ${capital(sentence(hypothesis))}`,

  /** `place` is empty or a place with its coordinates. */
  comparison: <V>(args: { treated: readonly string[]; controls: readonly string[]; place: Slot<V> | null }): Pieces<V> => {
    const side = (role: string, names: readonly string[]): string => `${counted(names.length, `${role} tank`)}, ${listedText(names)},`;
    const where: Pieces<V> = args.place === null ? [] : say`${' in '}${args.place}`;
    if (args.controls.length === 0) return say`${capital(side('treatment', args.treated))} ${args.treated.length === 1 ? 'was' : 'were'} followed without a control${where}.`;
    const end = where.length > 0 || !side('control', args.controls).endsWith(',') ? side('control', args.controls) : side('control', args.controls).slice(0, -1);
    return say`${capital(side('treatment', args.treated))} ${args.treated.length === 1 ? 'was' : 'were'} compared with ${end}${where}.`;
  },

  observed: <V>(args: { tanks: readonly string[]; place: Slot<V> | null }): Pieces<V> =>
    capitalPieces(say`${listedText(args.tanks)} ${args.tanks.length === 1 ? 'was' : 'were'} followed${args.place === null ? '' : ' in '}${args.place ?? ''}; the plan names no treatment and no control.`),

  place: <V>(args: { name: string; latitude: string; longitude: string; elevation: string }): Pieces<V> => {
    const position = [args.latitude && args.longitude ? `${args.latitude}, ${args.longitude}` : '', args.elevation ? `${args.elevation} above sea level` : ''].filter((each) => each !== '');
    return say`${args.name}${position.length > 0 ? ` (${position.join(', ')})` : ''}`;
  },

  /** Several tanks of one size, or one of them. */
  size: <V>(args: { tanks: Slot<V>; measured: string; volume: Slot<V> | null; depth: string; several: boolean; each: boolean }): Pieces<V> => {
    const volume: Pieces<V> = args.volume === null ? [] : say`${' and held '}${args.volume} of water`;
    const depth = args.depth === '' ? '' : args.volume === null ? ` and was filled to a depth of ${args.depth}` : ` at a depth of ${args.depth}`;
    const fill = args.depth !== '' && args.volume === null && args.several ? ` and were filled to a depth of ${args.depth}` : depth;
    return capitalPieces(say`${args.tanks} ${args.each ? 'each ' : ''}measured ${args.measured}${volume}${fill}.`);
  },

  volumeOnly: <V>(args: { tanks: Slot<V>; volume: Slot<V>; each: boolean }): Pieces<V> => capitalPieces(say`${args.tanks === 'all tanks' ? 'each tank' : args.tanks} ${args.each ? 'each ' : ''}held ${args.volume} of water.`),

  /** One key and what each tank has there; `tanks` is "in the clear tank". */
  difference: <V>(args: { key: string; sides: readonly { readonly text: string; readonly tanks: string }[] }): Pieces<V> =>
    say`${args.key} (${args.sides.map((side) => `${phrase(side.text)} ${side.tanks}`).join('; ')})`,
  differed: <V>(items: readonly Slot<V>[]): Pieces<V> => say`By design the tanks differed in ${listed(items)}.`,
  alsoDiffered: <V>(items: readonly Slot<V>[]): Pieces<V> => say`They also differed in ${listed(items)}, which the plan does not name as intended.`,
  nothingDiffers: <V>(): Pieces<V> => ['The plan names no difference between the tanks.'],
  alike: <V>(items: readonly { readonly key: string; readonly text: string }[]): Pieces<V> =>
    say`They were alike in ${listedText(items.map(({ key, text }) => `${key} (${phrase(text)})`))}.`,
  /** Of the only tank. */
  held: <V>(items: readonly { readonly key: string; readonly text: string }[]): Pieces<V> =>
    say`For the tank the plan names ${listedText(items.map(({ key, text }) => `${key} (${phrase(text)})`))}.`,
  without: <V>(args: { keys: readonly string[]; tanks: number }): Pieces<V> =>
    say`${args.tanks === 1 ? 'The tank held no' : args.tanks === 2 ? 'Neither tank held any' : 'None of the tanks held any'} ${listedText(args.keys, 'or')}.`,
  notStated: 'not stated',
  latitude: (degrees: string, south: boolean): string => `${degrees}° ${south ? 'S' : 'N'}`,
  longitude: (degrees: string, west: boolean): string => `${degrees}° ${west ? 'W' : 'E'}`,
  runningSince: <V>(args: { tanks: string; date: string; several: boolean }): Pieces<V> => capitalPieces(say`${args.tanks} had been running since ${args.date}.`),
};

export const equalWords = {
  /** What ends the time in which the tanks have to be level, as it stands after "up to". */
  end: {
    lightsOff: 'lights-off', firstReading: 'the first reading', run: 'the end',
    event: (args: { time: string; what: string }): string => `${args.time} (${args.what})`,
  },
  opening: <V>(args: { steps: number }): Pieces<V> => say`To let the tanks start alike, the plan set ${counted(args.steps, 'step')}.`,
  /** `number` is null where there is only one step; `rest` says what it asked for and what came of it. */
  step: <V>(args: { number: number | null; step: string; why: string | null; rest: Slot<V> }): Pieces<V> => {
    const name = `“${lower(phrase(args.step))}”${args.why === null ? '' : ` (${lower(phrase(args.why))})`}`;
    return args.number === null ? say`The one step to let the tanks start alike, ${name}, ${args.rest}.` : say`Step ${args.number}, ${name}, ${args.rest}.`;
  },
  done: <V>(done: string): Pieces<V> => {
    if (/^(?:yes|done|true)$/i.test(done)) return ['was taken'];
    if (/^(?:no|false|not done|not yet)$/i.test(done)) return ['was not taken'];
    return [/^\d/.test(done) ? `was taken on ${done}` : `was taken (${phrase(done)})`];
  },
  unknown: <V>(): Pieces<V> => ['carries no date in the plan'],
  /** A condition of the shape |a − b| ≤ x. */
  atMost: <V>(args: { quantity: string; limit: Slot<V>; strict: boolean; checked: number; met: Slot<V> | null; worst: Slot<V> | null; holds: boolean | null; end: string }): Pieces<V> => {
    const asked: Pieces<V> = say`asked for a difference in ${args.quantity} of ${args.strict ? 'less than' : 'at most'} ${args.limit}`;
    const worst: Pieces<V> = args.worst === null ? [] : say` (the largest difference was ${args.worst})`;
    return say`${asked}${outcome<V>({ ...args, noun: 'paired reading' })}${args.holds === null ? [] : worst}`;
  },
  condition: <V>(args: { condition: string; checked: number; met: Slot<V> | null; holds: boolean | null; end: string }): Pieces<V> =>
    say`asked that ${args.condition}${outcome<V>({ ...args, noun: 'reading' })}`,
};

function outcome<V>(args: { checked: number; met: Slot<V> | null; holds: boolean | null; end: string; noun: string }): Pieces<V> {
  if (args.holds === null) return [`; no ${args.noun}s before ${args.end} show whether this was met`];
  const all = args.checked === 1 ? `the one ${args.noun}` : args.checked === 2 ? `both ${args.noun}s` : `all ${numberWord(args.checked)} ${args.noun}s`;
  if (args.holds) return [`, which was met at ${all} up to ${args.end}`];
  return args.met === null ? [`, which was not met at every ${args.noun} up to ${args.end}`] : say`, which was met at ${args.met} of ${args.checked} ${args.checked === 1 ? args.noun : `${args.noun}s`} up to ${args.end}`;
}

export const lightWords = {
  none: <V>(): Pieces<V> => ['The plan names no lights-off.'],
  oneNight: <V>(args: { off: Slot<V>; on: Slot<V> | null }): Pieces<V> =>
    args.on === null ? say`The lights went out at ${args.off}.` : say`The lights went out at ${args.off} and came on again at ${args.on}.`,
  daily: <V>(args: { off: string; on: string | null; nights: number }): Pieces<V> =>
    say`The lights went out at ${args.off}${args.on === null ? '' : ` and came on again at ${args.on}`} on each of ${counted(args.nights, 'night')}.`,
  severalTimes: <V>(args: { off: readonly string[]; on: readonly string[] }): Pieces<V> =>
    say`The lights went out at ${listedText(args.off)}${args.on.length === 0 ? '' : ` and came on at ${listedText(args.on)}`}.`,
  darkUntilSunrise: <V>(args: { sunrise: Slot<V>; length: Slot<V> }): Pieces<V> =>
    say`Daylight reached the tanks, so the dark phase is taken to end at sunrise, ${args.sunrise}, after ${args.length}.`,
  darkCovered: <V>(args: { length: Slot<V> }): Pieces<V> => say`The run covers the first ${args.length} of the dark phase.`,
  darkLength: <V>(args: { length: Slot<V> }): Pieces<V> => say`The dark phase lasted ${args.length}.`,
  noDaylight: <V>(): Pieces<V> => ['No daylight reached the tanks.'],
};

export const samplingWords = {
  planned: <V>(args: { every: readonly string[]; from: string; to: string | null; slots: number }): Pieces<V> =>
    args.slots === 1 ? say`One set of readings was planned, at ${args.from}.`
      : say`Readings were planned ${args.every.length === 1 ? args.every[0]! : 'at set times'} from ${args.from}${args.to === null ? '' : ` to ${args.to}`}, ${numberWord(args.slots)} times in all${args.every.length > 1 ? `: ${args.every.join(', and ')}` : ''}.`,
  every: (length: string): string => `every ${lengthWords(length)}`,
  everyBetween: (length: string, from: string, to: string): string => `every ${lengthWords(length)} from ${from} to ${to}`,
  allTaken: <V>(args: { slots: number }): Pieces<V> => say`Readings were taken at ${args.slots === 1 ? 'that time' : args.slots === 2 ? 'both times' : 'every one of these times'}.`,
  someTaken: <V>(args: { taken: number; slots: number; first: string; last: string }): Pieces<V> =>
    say`Readings were taken at ${args.taken === 1 ? 'one' : numberWord(args.taken)} of these times, ${args.taken === 1 ? `at ${args.first}` : `the first at ${args.first} and the last at ${args.last}`}.`,
  unplanned: <V>(args: { times: number; first: string; last: string }): Pieces<V> =>
    args.times === 1 ? say`One set of readings was taken, at ${args.first}; the plan names no reading times.`
      : say`Readings were taken ${numberWord(args.times)} times, from ${args.first} to ${args.last}; the plan names no reading times.`,
  none: <V>(): Pieces<V> => ['No readings are logged yet.'],
  order: <V>(args: { tanks: readonly string[]; seed: string | null }): Pieces<V> =>
    say`Each time the tanks were to be read in the order ${args.tanks.join(', ')}${args.seed === null ? '' : ` (drawn with seed ${args.seed})`}.`,
  phases: <V>(items: readonly Slot<V>[]): Pieces<V> => say`The run is divided into ${counted(items.length, 'phase')}: ${listed(items)}.`,
  phase: <V>(args: { id: string; window: Slot<V> }): Pieces<V> => say`“${args.id}” (${args.window})`,
  paired: <V>(within: string): Pieces<V> => say`Readings of different tables at most ${within} apart count as taken together.`,
  fromFile: <V>(args: { path: string; hash: string | null; columns: readonly string[] }): Pieces<V> =>
    say`${capital(listedText(args.columns))} ${args.columns.length === 1 ? 'was' : 'were'} read from the data file ${args.path}${args.hash === null ? '' : ` (SHA-256 ${args.hash.slice(0, 12)}…)`}.`,
  zone: <V>(zone: string): Pieces<V> => say`Times are local time (${zone.replace(/_/g, ' ')}).`,
};

export const deviationWords = {
  lateStart: <V>(args: { first: string; planned: string; by: string }): Pieces<V> => say`The first readings were taken at ${args.first}, ${args.by} after the planned start at ${args.planned}.`,
  earlyEnd: <V>(args: { last: string; planned: string }): Pieces<V> => say`The last readings were taken at ${args.last}; the plan runs until ${args.planned}.`,
  missedTimes: <V>(times: readonly string[]): Pieces<V> =>
    say`No readings were taken at the planned ${times.length === 1 ? 'time' : 'times'} ${listedText(times)}.`,
  missedMany: <V>(args: { count: number; first: string; last: string }): Pieces<V> =>
    say`${capital(counted(args.count, 'planned time'))} between ${args.first} and ${args.last} passed without readings.`,
  shifted: <V>(pairs: readonly { readonly planned: string; readonly taken: string }[]): Pieces<V> =>
    say`${pairs.length === 1 ? 'The readings' : 'Readings'} planned for ${listedText(pairs.map(({ planned, taken }) => `${planned} were taken at ${taken}`))}.`,
  extra: <V>(times: readonly string[]): Pieces<V> => say`Further readings, not planned, were taken at ${listedText(times)}.`,
  extraMany: <V>(args: { count: number }): Pieces<V> => say`Further readings, not planned, were taken at ${numberWord(args.count)} other times.`,
};
