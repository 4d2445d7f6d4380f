// A row that was begun and left: offered again as it was typed, and under the time at which it was typed.
import type { Note } from '../experiment/types.ts';
import type { Instant } from '../time/instant.ts';
import { timeTexts } from './logRow.ts';
import type { RowPlan } from './planRow.ts';
import { readRowInput, typedTime } from './readRowInput.ts';

export interface KeptTyping {
  readonly typed: string;
  /** The time under which it would have been logged. */
  readonly time: Instant;
}

/** What is to be kept of a prompt that is left; null when nothing was typed. */
export function keepTyping(typed: string, note: Note, plan: RowPlan): KeptTyping | null {
  return typed.trim() === '' ? null : { typed, time: readRowInput(typed, note, plan).time };
}

/** The kept text to type on: values that were read at half past two do not become those of three o'clock. */
export function resumeTyping(kept: KeptTyping, note: Note, plan: RowPlan): string {
  const input = readRowInput(kept.typed, note, plan);
  if (input.time === kept.time) return kept.typed;
  const values = input.timeTyped ? kept.typed.trimStart().replace(/^\S+\s*/u, '') : kept.typed;
  const time = timeTexts(note, kept.time).find((text) => typedTime(text, note, plan.now) === kept.time);
  return time === undefined ? values : `${time} ${values}`;
}
