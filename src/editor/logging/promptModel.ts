// The prompt for a row without its editor: what was typed, what may be said about it by now, and what Enter does.
import type { Message } from '../../edits/edit.ts';
import { canBeMended, pendingRow, writePending } from '../../edits/pendingRow.ts';
import type { RowPlan } from '../../edits/planRow.ts';
import { readRowInput, settledPart, type RowInput } from '../../edits/readRowInput.ts';
import type { Note } from '../../experiment/types.ts';
import { completed } from './rowView.ts';

export interface PromptState {
  readonly value: string;
  /** True once typing has paused, or Enter was pressed: the last value is taken for whole. */
  readonly rested: boolean;
  /** The text at which something looked wrong when Enter was pressed; the same text logs at the next Enter. */
  readonly warned: string | null;
  /** Why the note cannot take the whole row that was entered; null until one is refused. */
  readonly refusal: Message | null;
}

/** Milliseconds without a key after which the value being typed is taken for whole. */
export const pause = 600;

/** A prompt that opens, with what was typed before. */
export const opened = (value: string): PromptState => ({ value, rested: value !== '', warned: null, refusal: null });
export const typedInto = (value: string): PromptState => ({ value, rested: false, warned: null, refusal: null });
export const paused = (state: PromptState): PromptState => ({ ...state, rested: true });

/** What the row says so far, and the part of it that may be judged: half a number raises no alarm. */
export function readState(state: PromptState, note: Note, plan: RowPlan): { readonly input: RowInput; readonly judged: RowInput } {
  const input = readRowInput(state.value, note, plan);
  const whole = state.rested ? state.value : settledPart(state.value);
  return { input, judged: whole === state.value ? input : readRowInput(whole, note, plan) };
}

export type Entered = { readonly logs: true } | { readonly logs: false; readonly state: PromptState };

/**
 * What Enter does: logs a whole row (at once, or the second time where something looks wrong), takes the word that is
 * picked, or moves on to the next value. Nothing that was typed is taken away.
 */
export function entered(state: PromptState, note: Note, plan: RowPlan, word: string | null): Entered {
  const { value } = state;
  const stays = (change: Partial<PromptState>): Entered => ({ logs: false, state: { value, rested: true, warned: null, refusal: null, ...change } });
  const input = readRowInput(value, note, plan);
  const row = pendingRow(input, plan, value, '');
  if (row !== null && plan.columns.length > 0) {
    const trial = writePending(note, row);
    // What an author can mend goes on its way: the journal keeps it until then.
    if (!trial.ok && !canBeMended(trial.message)) return stays({ refusal: trial.message });
    return input.warnings.length === 0 || state.warned === value ? { logs: true } : stays({ warned: value });
  }
  if (word !== null) return stays({ value: completed(value, word) });
  const movesOn = input.errors.length === 0 && value !== '' && !value.includes(';') && !/\s$/u.test(value);
  return stays(movesOn ? { value: `${value} ` } : {});
}
