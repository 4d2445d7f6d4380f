// What a formula can be and what it can give.
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import type { Duration, Instant } from '../time/instant.ts';
import type { Window } from '../protocol/types.ts';
import type { TimeInterval } from './timeIntervals.ts';

/** Ranges inside a formula are relative to the formula's own text. */
export type Expression =
  | { readonly kind: 'number'; readonly value: number; readonly unit: string | null; readonly unitRange: SourceRange | null; readonly range: SourceRange }
  | { readonly kind: 'duration'; readonly duration: Duration; readonly range: SourceRange }
  | { readonly kind: 'instant'; readonly text: string; readonly range: SourceRange }
  | { readonly kind: 'word'; readonly text: string; readonly range: SourceRange }
  | { readonly kind: 'reference'; readonly parts: readonly string[]; readonly instrument: string | null; readonly range: SourceRange }
  | { readonly kind: 'call'; readonly name: string; readonly nameRange: SourceRange; readonly operands: readonly Expression[];
      readonly options: readonly { readonly name: string; readonly nameRange: SourceRange; readonly value: Expression }[]; readonly range: SourceRange }
  | { readonly kind: 'binary'; readonly operator: '+' | '-' | '*' | '/' | '<' | '>' | '<=' | '>=' | '==' | 'and' | 'or' | '..';
      readonly operatorRange: SourceRange; readonly left: Expression; readonly right: Expression; readonly range: SourceRange }
  | { readonly kind: 'unary'; readonly operator: '-' | 'not'; readonly operand: Expression; readonly range: SourceRange }
  | { readonly kind: 'convert'; readonly operand: Expression; readonly unit: string; readonly unitRange: SourceRange; readonly range: SourceRange }
  | { readonly kind: 'error'; readonly range: SourceRange };

/** A number with the digits that the readings behind it had after the decimal mark, where readings went in. */
export interface FormulaNumber extends NumberValue { readonly decimals?: number }

export interface SeriesPoint {
  readonly time: Instant;
  /** In the series' unit; 1 or 0 for a truth; the place in the scale for a word. For `below` and `above` the limit. */
  readonly value: number;
  /** Bits of src/dataset/types.ts. `below` or `above` on a truth: the reading lies outside the instrument's range and cannot tell. */
  readonly flags: number;
  readonly contributions: NumberValue['contributions'];
  readonly decimals?: number;
  /** Places in the note of the readings behind the point. */
  readonly readings?: readonly SourceRange[];
}

export interface SeriesValue {
  readonly type: 'series';
  readonly unit: Unit;
  /** Sorted by time, one a time. */
  readonly points: readonly SeriesPoint[];
  /** What the points hold; `number` unless said. */
  readonly content?: 'number' | 'truth' | 'word';
  /** The words of the scale, for `word`. */
  readonly scale?: readonly string[];
  /** Times at which a value is missing or left out, sorted. */
  readonly holes?: readonly Instant[];
  /** The column the points come from; absent for computed series. */
  readonly origin?: { readonly place: string; readonly quantity: string; readonly instrument: string | null };
}

export interface WindowValue extends Window {
  readonly type: 'window';
  /** The end was written as a time of day or date, so that changes need a reading exactly then. */
  readonly fromWritten?: boolean;
  readonly toWritten?: boolean;
  /** Name of the phase. */
  readonly phase?: string;
  /** A dark phase: the reading at lights-off counts to the phase before in counts and means. */
  readonly opensAtLightsOff?: boolean;
}

/** `interval`: the 95 % interval, where the time was computed and one is known. */
export interface InstantValue { readonly type: 'instant'; readonly instant: Instant; readonly written?: boolean; readonly interval?: TimeInterval }
export interface DurationValue { readonly type: 'duration'; readonly duration: Duration; readonly interval?: TimeInterval }

export type FormulaValue =
  | FormulaNumber
  | InstantValue
  | DurationValue
  | { readonly type: 'truth'; readonly truth: boolean }
  | WindowValue
  | SeriesValue
  | { readonly type: 'event'; readonly id: string; readonly instant: Instant }
  | { readonly type: 'word'; readonly word: string }
  | { readonly type: 'tank'; readonly id: string }
  | { readonly type: 'quantity'; readonly id: string };

/** How a value came about, for hover, the appendix of a post, and the methods. */
export interface WorkingStep {
  /** The part of the formula, as text. */
  readonly formula: string;
  /** Its value as text with unit. */
  readonly value: string;
  /** Ranges in the note of the readings used. */
  readonly readings: readonly SourceRange[];
  /** Name of a catalogue entry, or null for plain arithmetic. */
  readonly function: string | null;
  /** Something a reader should know: nearest reading used, a tie, a gap. Already in words by {code, args}. */
  readonly remarks: readonly { readonly code: string; readonly args: Readonly<Record<string, string | number>> }[];
}

export interface Evaluation {
  /** null when a problem of error severity stands in the way. */
  readonly value: FormulaValue | null;
  /** With ranges in the note's text. */
  readonly problems: readonly Problem[];
  readonly working: readonly WorkingStep[];
}
