// English sentences of the generated results. Values arrive ready to be placed; each sentence states one fact.
import { join, say, type Pieces, type Slot } from '../pieces.ts';
import { capitalPieces, counted, listedText, numberWord } from './grammar.ts';

/** The two sides of a comparison, "in the floating-mat tank"; `means` where one of them is the mean of several tanks. */
export interface Sides { readonly treated: string; readonly control: string; readonly means: boolean }

const bothSides = (sides: Sides): string => `${sides.treated} and ${sides.control.replace(/^in /, '')}`;

export const resultsWords = {
  /** `where` is "in the floating-mat tank". */
  course: <V>(args: { what: string; where: string; first: Slot<V>; firstTime: Slot<V>; lowest: Slot<V>; lowestTime: Slot<V>; last: Slot<V>; lastTime: Slot<V>; lowestIs: 'first' | 'last' | 'between' }): Pieces<V> => {
    const start: Pieces<V> = say`${args.what} ${args.where} started at ${args.first} (${args.firstTime})`;
    if (args.lowestIs === 'first') return capitalPieces(say`${start}, its lowest value, and ended at ${args.last} (${args.lastTime}).`);
    if (args.lowestIs === 'last') return capitalPieces(say`${start} and was lowest at the last reading, ${args.last} (${args.lastTime}).`);
    return capitalPieces(say`${start}, was lowest, at ${args.lowest}, at ${args.lowestTime} and ended at ${args.last} (${args.lastTime}).`);
  },
  steady: <V>(args: { what: string; where: string; value: Slot<V> }): Pieces<V> => capitalPieces(say`${args.what} ${args.where} stayed at ${args.value} throughout.`),
  single: <V>(args: { what: string; where: string; value: Slot<V>; time: Slot<V> }): Pieces<V> => capitalPieces(say`${args.what} ${args.where} was read once, at ${args.time}: ${args.value}.`),
  between: <V>(args: { what: string; where: string; least: Slot<V>; greatest: Slot<V> }): Pieces<V> => capitalPieces(say`${args.what} ${args.where} lay between ${args.least} and ${args.greatest}.`),

  /** A quantity read with an instrument of its own. */
  byInstrument: (what: string, instrument: string): string => `${what} by ${instrument}`,

  /** One phase. `percent` and `rate` may be absent. */
  changed: <V>(args: { phase: string; rose: boolean; size: Slot<V>; percent: Slot<V> | null; rate: Slot<V> | null }): Pieces<V> =>
    say`${args.phase} it ${args.rose ? 'rose' : 'fell'} by ${args.size}${args.percent === null ? '' : say` (${args.percent})`}${args.rate === null ? '' : say`, ${args.rate} on average`}`,
  unchanged: <V>(args: { phase: string }): Pieces<V> => say`${args.phase} it ended where it began`,
  unresolved: <V>(args: { phase: string; rose: boolean; size: Slot<V>; half: string }): Pieces<V> =>
    say`${args.phase} it ${args.rose ? 'rose' : 'fell'} by ${args.size}, less than the ±${args.half} that the instrument can resolve`,
  clauses: <V>(clauses: readonly Slot<V>[]): Pieces<V> => capitalPieces(say`${clauses.length > 2 ? join(clauses, '; ') : join(clauses, ', and ')}.`),
  phase: (id: string): string => {
    const night = /^dark(?:-(\d+))?$/.exec(id);
    if (night) return night[1] ? `in dark phase ${night[1]}` : 'in the dark phase';
    if (id === 'baseline') return 'over the baseline';
    const after = /^recovery(?:-(\d+))?$/.exec(id);
    if (after) return after[1] ? `in recovery ${after[1]}` : 'in the recovery';
    return `in the phase “${id}”`;
  },

  /** `sides` says whether one tank a side or means of several are compared. */
  apart: <V>(args: Sides & { above: boolean; size: Slot<V>; time: Slot<V>; what: string; half: string | null }): Pieces<V> =>
    capitalPieces(say`at ${args.time}, the last time that ${args.means ? 'all' : 'both'} were read, ${args.what} ${args.treated} was ${args.means ? 'on average ' : ''}${args.size} ${args.above ? 'higher' : 'lower'} than ${args.control}${args.half === null ? '' : `, which is below the ±${args.half} that the instruments can resolve`}.`),
  equal: <V>(args: Sides & { time: Slot<V>; what: string }): Pieces<V> =>
    capitalPieces(say`at ${args.time}, the last time that ${args.means ? 'all' : 'both'} were read, ${args.what} was${args.means ? ' on average' : ''} the same ${bothSides(args)}.`),
  changeApart: <V>(args: Sides & { phase: string; what: string; more: boolean; size: Slot<V>; half: string | null; falls: boolean }): Pieces<V> =>
    capitalPieces(say`${args.phase} ${args.what} ${args.treated} ${args.falls ? 'fell' : 'rose'} ${args.means ? 'on average ' : ''}${args.size} ${args.more ? 'more' : 'less'} than ${args.control}${args.half === null ? '' : `, a difference below the ±${args.half} that the instruments can resolve`}.`),
  changeEqual: <V>(args: Sides & { phase: string; what: string }): Pieces<V> =>
    capitalPieces(say`${args.phase} ${args.what} changed by the same amount ${bothSides(args)}.`),
  gapParts: <V>(args: { explained: Slot<V>; left: Slot<V> }): Pieces<V> =>
    say`Of that difference, temperature, pressure and salinity explain ${args.explained}; ${args.left} is left.`,
  gapNothing: <V>(args: { left: Slot<V> }): Pieces<V> => say`Temperature, pressure and salinity explain nothing of that difference: ${args.left} is left.`,
  permutation: <V>(args: { phase: string; p: Slot<V>; treated: number; controls: number; smallest: string }): Pieces<V> =>
    capitalPieces(say`${args.phase}, with each tank counted once, the exact permutation p is ${args.p}; with ${args.treated} against ${args.controls} tanks no p below ${args.smallest} can be reached.`),
  /** What every ± before it in a paragraph comes from. `compared`: tanks are compared, so that the ± could be taken for more. */
  instrumentsAlone: (compared: boolean): string =>
    (compared ? 'In this paragraph each ± up to here comes from the instruments alone; how far the tanks drift apart by themselves is not in it.' : 'In this paragraph each ± comes from the instruments alone.'),
  /** The contrast of a phase. `interval` says how its ± stands: none, larger than the value, or smaller; `tanks`: each tank counts once. */
  contrast: <V>(args: { phase: string; what: string; size: Slot<V>; interval: 'none' | 'above' | 'below'; tanks: boolean }): Pieces<V> => {
    const scatter = args.tanks ? 'the scatter between tanks treated alike' : 'the scatter of the paired readings';
    const said = args.interval === 'none' ? 'the contrast; the readings are too few for an interval'
      : args.interval === 'above' ? `the contrast, less than its ±, which comes from ${scatter}` : `the contrast, its ± from ${scatter}`;
    return capitalPieces(say`${args.phase} the difference in ${args.what} (treatment minus control) had on average changed by ${args.size} from the baseline: this is ${said}.`);
  },
  treated: 'in the treatment tanks',
  controls: 'in the control tanks',

  scored: <V>(args: { what: string; where: string; counts: readonly { readonly word: string; readonly count: number }[] }): Pieces<V> =>
    capitalPieces(say`${args.what} ${args.where} was scored ${listedText(args.counts.map(({ word, count }) => `“${word}” ${count === 1 ? 'once' : count === 2 ? 'twice' : `${numberWord(count)} times`}`))}.`),
  outside: <V>(args: { what: string; where: string; count: number }): Pieces<V> =>
    capitalPieces(say`${args.what} ${args.where} lay outside the range of the instrument at ${counted(args.count, 'reading')}, so no lowest value or change is given.`),
  none: <V>(): Pieces<V> => ['No readings are logged yet.'],
};
