// What the search for formulas passes around: columns of bare numbers, formulas with what they are about, and what a sentence says.
import type { FormulaValue } from '../../formula/types.ts';
import type { NumberValue, Unit } from '../../quantities/types.ts';
import type { Instant } from '../../time/instant.ts';
import type { Cue } from '../../words/findWords.ts';

export type Family =
  | 'reading' | 'first' | 'last' | 'lowest' | 'highest' | 'mean' | 'median' | 'deviation' | 'range' | 'fall' | 'rise' | 'percent-fall' | 'percent-rise' | 'rate' | 'slope'
  | 'steepest' | 'difference' | 'widest' | 'mean-difference' | 'percent-difference' | 'compared' | 'ratio' | 'hours-below' | 'hours-above' | 'first-below' | 'first-above'
  | 'time-of-lowest' | 'time-of-highest' | 'moment' | 'duration' | 'elapsed' | 'volume' | 'length' | 'width' | 'height' | 'fact' | 'count' | 'missed' | 'margin' | 'special' | 'result';

/** One tank, group or room and one quantity as bare arrays; only readings that enter calculations. */
export interface Column {
  /** As a formula names it: `mat.DO`, `treatment.DO`, `saturation(mat.DO)`. */
  readonly name: string;
  readonly place: string;
  /** Id of the quantity, or the function for a derived column: `saturation`. */
  readonly quantity: string;
  readonly unit: Unit;
  readonly times: Float64Array;
  readonly values: Float64Array;
}

/** A stretch between two moments, with the way a formula writes it. */
export interface Stretch { readonly from: Instant; readonly to: Instant; readonly text: string; readonly named: boolean; readonly opensAtLightsOff: boolean }

/** A formula that gives the number, before it is ranked. `value` in `unit`, or an instant. */
export interface Found {
  readonly formula: string;
  readonly family: Family;
  readonly places: readonly string[];
  readonly quantity: string | null;
  /** Moments that the formula names. */
  readonly moments: readonly Instant[];
  /** A level that the formula names. */
  readonly level: NumberValue | null;
  readonly value: number;
  readonly unit: Unit | null;
  /** When the lowest or highest reading that the formula asks for was taken. */
  readonly reached?: Instant;
  /** True for a result that the note names: its window is the author's choice. */
  readonly isResult?: boolean;
}

/** A formula offered for a number. */
export interface Candidate {
  readonly formula: string;
  readonly value: FormulaValue;
  /** The value as the note would show it. */
  readonly text: string;
  /** Larger is likelier; comparable between candidates of one number only. */
  readonly score: number;
  /** True when the formula gives the number as shown; else it is only near, or what a slip would have given. */
  readonly gives: boolean;
  /** The typical slip that leads from the formula's value to the number; null when there is none. */
  readonly slip: Slip | null;
}

export type Slip = 'wrong-base' | 'swapped' | 'other-tank' | 'factor-ten' | 'other-scale' | 'sea-level' | 'digits-swapped' | 'sign';

/** A moment that the words name; several instants where a clock time or a name comes on several days. */
export interface NamedMoment { readonly instants: readonly Instant[]; readonly weight: number; readonly digits: boolean }
/** A date: every moment of that day. */
export interface NamedDay { readonly from: Instant; readonly to: Instant; readonly weight: number }
export interface NamedStretch { readonly from: Instant; readonly to: Instant; readonly weight: number }

export interface SentenceReading {
  readonly cues: ReadonlyMap<Cue, number>;
  /** The preposition right before the number: `by`, `to`, `from`, `at`, `of`; empty when there is none. */
  readonly before: string;
  readonly places: ReadonlyMap<string, number>;
  /** Names that stand for the mean over several tanks. */
  readonly groups: ReadonlySet<string>;
  /** The place named last before the number, or the first after it. */
  readonly nearest: string | null;
  readonly quantities: ReadonlyMap<string, number>;
  readonly moments: readonly NamedMoment[];
  readonly days: readonly NamedDay[];
  readonly stretches: readonly NamedStretch[];
  readonly levels: readonly NumberValue[];
}

/** How much a word at a place speaks for the number: its own clause, its sentence, the sentence before. */
export type WeightAt = (start: number, end: number) => number;
