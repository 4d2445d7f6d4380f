// What the prompt shows while a row is typed, as data: one line a value, what looks wrong, words that complete.
import type { Message } from '../../edits/edit.ts';
import type { RowPlan } from '../../edits/planRow.ts';
import type { RowInput } from '../../edits/readRowInput.ts';
import { formatNumber } from '../../quantities/format.ts';
import type { Zone } from '../../time/instant.ts';
import { formatClock } from '../../time/text.ts';

export interface ValueLine {
  /** `mat.DO` */
  readonly head: string;
  /** What is typed for it; empty while it is not. */
  readonly text: string;
  readonly unit: string;
  /** `−0.24` since the last reading; empty without one. */
  readonly change: string;
  /** The last reading and its clock time; null when there is none. */
  readonly last: { readonly text: string; readonly clock: string } | null;
  readonly state: 'open' | 'next' | 'good' | 'odd' | 'wrong';
}

export interface RowView {
  readonly lines: readonly ValueLine[];
  readonly errors: readonly Message[];
  readonly warnings: readonly Message[];
  readonly completions: readonly string[];
  readonly complete: boolean;
}

export function rowView(input: RowInput, plan: RowPlan, zone: Zone): RowView {
  const odd = new Set(input.warnings.flatMap((each) => each.at));
  const wrong = new Set(input.errors.flatMap((each) => each.at));
  const next = input.cells.findIndex((cell) => cell.text === '');
  return {
    lines: input.cells.map((cell, at): ValueLine => ({
      head: cell.column.id,
      text: cell.text,
      unit: cell.column.unit?.symbol ?? '',
      change: cell.change === null ? '' : signed(cell.change, Math.max(cell.state?.decimals ?? 0, decimalsOf(cell.last?.text ?? ''))),
      last: cell.last ? { text: cell.last.text, clock: formatClock(cell.last.time, zone) } : null,
      state: wrong.has(at) ? 'wrong' : odd.has(at) ? 'odd' : cell.text !== '' ? 'good' : at === next ? 'next' : 'open',
    })),
    errors: input.errors.map((each) => each.message),
    warnings: input.warnings.map((each) => each.message),
    completions: input.completions,
    complete: input.row !== null && plan.columns.length > 0,
  };
}

const decimalsOf = (text: string): number => /\.(\d+)$/u.exec(text)?.[1]?.length ?? 0;

function signed(value: number, decimals: number): string {
  const text = formatNumber(Math.abs(value), decimals);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
}

/** The text with its last, unfinished word completed and a separator behind it. */
export function completed(typed: string, word: string): string {
  return `${typed.replace(/\S*$/u, '')}${word} `;
}
