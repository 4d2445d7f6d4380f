// What the prompt shows while a row is typed, as data: one line a value, what looks wrong, words that complete.
import type { Message } from '../../edits/edit.ts';
import type { RowPlan } from '../../edits/planRow.ts';
import type { RowInput, TypedCell } from '../../edits/readRowInput.ts';
import { formatNumber } from '../../quantities/format.ts';
import type { Zone } from '../../time/instant.ts';
import { formatClock } from '../../time/text.ts';

export interface ValueLine {
  /** `mat.DO` */
  readonly head: string;
  /** What prose calls the tank: `floating-mat tank`. */
  readonly place: string;
  /** What is typed for it; empty while it is not. */
  readonly text: string;
  /** As a reader sees it: `°C`; empty for a pH, a plain number and words. */
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
  /** True when a word is begun that the first completion completes. */
  readonly wordBegun: boolean;
  readonly complete: boolean;
  /** Values typed so far. */
  readonly filled: number;
  /** Clock time at which the row is logged. */
  readonly clock: string;
}

/**
 * @param input everything that is typed
 * @param judged the part of it that may be judged by now; the same as `input` once typing has paused
 */
export function rowView(input: RowInput, judged: RowInput, plan: RowPlan, zone: Zone): RowView {
  const odd = new Set(judged.warnings.flatMap((each) => each.at));
  const wrong = new Set(judged.errors.flatMap((each) => each.at));
  const next = input.cells.findIndex((cell) => cell.text === '');
  const filled = input.cells.filter((cell) => cell.text !== '').length;
  const errors = judged.errors.map((each) => each.message);
  // A remark ends the values; whoever begins it early is told.
  if (judged.remark !== null && errors.length === 0 && filled < plan.columns.length) errors.push({ code: 'too-few', args: { found: filled, expected: plan.columns.length } });
  return {
    lines: input.cells.map((cell, at): ValueLine => ({
      head: cell.column.id, place: cell.column.label, text: cell.text, unit: cell.column.unit?.print ?? '', change: changeOf(cell),
      last: cell.last ? { text: cell.last.text, clock: formatClock(cell.last.time, zone) } : null,
      state: wrong.has(at) ? 'wrong' : odd.has(at) ? 'odd' : isWhole(cell) ? 'good' : cell.text !== '' || at === next ? 'next' : 'open',
    })),
    errors, warnings: judged.warnings.map((each) => each.message), completions: input.completions, wordBegun: input.wordBegun,
    complete: input.row !== null && plan.columns.length > 0, filled, clock: formatClock(input.time, zone),
  };
}

/** False while a word is only begun. */
const isWhole = (cell: TypedCell): boolean => cell.text !== '' && cell.state?.kind !== 'unreadable';

const decimalsOf = (text: string): number => /\.(\d+)$/u.exec(text)?.[1]?.length ?? 0;

function changeOf(cell: TypedCell): string {
  return cell.change === null ? '' : signed(cell.change, Math.max(cell.state?.decimals ?? 0, decimalsOf(cell.last?.text ?? '')));
}

function signed(value: number, decimals: number): string {
  const text = formatNumber(Math.abs(value), decimals);
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
}

/** The text with its last, unfinished word completed and a separator behind it. */
export function completed(typed: string, word: string): string {
  return `${typed.replace(/\S*$/u, '')}${word} `;
}
