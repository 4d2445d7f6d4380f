// One search for the formulas behind a number: what it looks in, and what it does with what it finds.
import type { FormulaContext } from '../../formula/context.ts';
import type { Unit } from '../../quantities/types.ts';
import { parseUnit } from '../../quantities/units.ts';
import type { Instant } from '../../time/instant.ts';
import type { Matcher } from './matches.ts';
import type { Moments } from './moments.ts';
import type { Column, Found, SentenceReading } from './types.ts';

export interface Search {
  readonly context: FormulaContext;
  readonly moments: Moments;
  readonly columns: readonly Column[];
  readonly words: SentenceReading;
  /** Moments that the words give in digits: a formula then writes them so too. */
  readonly digits: ReadonlySet<Instant>;
  readonly match: Matcher;
  readonly push: (found: Found) => void;
}

export const hours: Unit = parseUnit('h')!;
export const percent: Unit = parseUnit('%')!;
export const one: Unit = parseUnit('1')!;

export function momentsInDigits({ moments }: SentenceReading): Set<Instant> {
  return new Set(moments.filter((each) => each.digits).flatMap((each) => each.instants));
}

/** A moment as a formula writes it: `light-off`, or `22:00` where the words do. */
export function timeText({ digits, moments }: Search, time: Instant): string {
  return digits.has(time) ? moments.clock(time) : moments.text(time);
}
