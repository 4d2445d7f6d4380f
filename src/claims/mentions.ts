// What can be read out of a claim's words: numbers with units, clock times, dates and durations, each with its place.
import type { Unit } from '../quantities/types.ts';
import type { Duration } from '../time/instant.ts';
import type { Language } from '../words/languages.ts';
import type { DecimalMark } from '../quantities/decimalMark.ts';

/** What the words before a number make of it. */
export interface Qualifier {
  /** `about`, `around`, `nearly`, `~`: 5 % (15 min for times) are allowed. */
  readonly approximate: boolean;
  /** `more than`, `under`: the value must also lie on that side of the number. */
  readonly bound: 'above' | 'at-least' | 'below' | 'at-most' | null;
}

/** The half-width after the `±` of a time, in milliseconds, with the size of its last unit. */
export interface TimeHalfWidth { readonly start: number; readonly end: number; readonly duration: Duration; readonly step: Duration }

/** The language that a mention was read in, for writing another number the same way. */
export interface Spoken { readonly language: Language }

interface Mention extends Qualifier, Spoken {
  /** Offsets in the words: the whole, sign and unit included. */
  readonly start: number;
  readonly end: number;
  /** True when a range word or dash joins it to the next mention: `2.5 to 4.9 %/h`. */
  readonly joinedToNext: boolean;
}

export interface NumberMention extends Mention {
  readonly kind: 'number';
  /** The digits (or the number word) with the sign. */
  readonly valueStart: number;
  readonly valueEnd: number;
  /** In `unit`, as shown. */
  readonly value: number;
  /** Digits after the decimal mark. */
  readonly decimals: number;
  /** The sign as written, or an empty text. */
  readonly sign: string;
  readonly written: 'digits' | 'words';
  readonly mark: DecimalMark;
  /** The thousands mark as written, or an empty text. */
  readonly grouping: string;
  /** null: no unit stands beside it. */
  readonly unit: Unit | null;
  /** True when the unit was taken from the number that follows (`2.5 to 4.9 %/h`). */
  readonly unitFromNext: boolean;
  /** The unit at the end of the list it stands in (`4.9, 3.1 and 2.5 %/h`); used only where a list is claimed. */
  readonly unitInList: Unit | null;
  /** The word that follows in lower case; empty at the end and before a mark. Tells `8.21, then` from `42 gallons`. */
  readonly nextWord: string;
  /** The half-width after `±`, in `unit`. */
  readonly halfWidth: { readonly start: number; readonly end: number; readonly value: number; readonly decimals: number } | null;
}

export interface ClockMention extends Mention {
  readonly kind: 'clock';
  readonly hour: number;
  readonly minute: number;
  /** null when no seconds are shown. */
  readonly second: number | null;
  readonly date: { readonly year: number | null; readonly month: number; readonly day: number } | null;
  readonly offset: Duration | null;
  /** How it is written, for writing another time the same way. */
  readonly style: 'twenty-four' | 'twelve' | 'twelve-hours-only' | 'word';
  /** Place of the clock time alone. */
  readonly valueStart: number;
  readonly valueEnd: number;
  readonly halfWidth: TimeHalfWidth | null;
}

export interface DateMention extends Mention {
  readonly kind: 'date';
  readonly year: number | null;
  readonly month: number;
  readonly day: number;
}

/** Two or more parts: `9 h 30 min`, `two and a half hours`. One part alone is a number with a unit of time. */
export interface DurationMention extends Mention {
  readonly kind: 'duration';
  readonly duration: Duration;
  /** The size of the last unit shown, in milliseconds. */
  readonly step: Duration;
  /** Place of the length of time alone. */
  readonly valueEnd: number;
  readonly halfWidth: TimeHalfWidth | null;
}

/** Digits that cannot be read without guessing: `7,31` in an English note. */
export interface UnclearMention extends Mention {
  readonly kind: 'unclear';
  readonly text: string;
  /** The same digits with the language's decimal mark. */
  readonly suggestion: string;
  readonly unit: Unit | null;
  readonly valueStart: number;
  readonly valueEnd: number;
}

export type AnyMention = NumberMention | ClockMention | DateMention | DurationMention | UnclearMention;
