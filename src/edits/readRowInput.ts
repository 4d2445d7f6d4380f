// Reads what is typed at the prompt while it is typed: which value goes where, the change since the last reading,
// and what looks wrong. `7.31 24.9 8.28 24.6 1008.1 ; remark`, with an own time in front where wanted.
import type { Note } from '../experiment/types.ts';
import { nearestName } from '../problems/nearest.ts';
import { convert, convertible } from '../quantities/units.ts';
import { readCell } from '../readings/cell.ts';
import { readTimePart } from '../readings/times.ts';
import type { CellState } from '../readings/types.ts';
import { addDays } from '../time/civil.ts';
import { day, hour, minute, type Instant, type WallTime, type Zone } from '../time/instant.ts';
import { formatClock, formatDate, formatDuration } from '../time/text.ts';
import { instantOf, utc, wallTimeOf } from '../time/zone.ts';
import type { Message } from './edit.ts';
import { lastReading, type PlannedColumn, type RowPlan } from './planRow.ts';
import { suspicions, type Suspicion } from './suspicions.ts';

export interface TypedCell {
  readonly column: PlannedColumn;
  /** As it will be written: a decimal point for a comma, the whole word of a scale. Empty: not typed yet. */
  readonly text: string;
  readonly state: CellState | null;
  /** Value minus the last reading, in the column's unit; null when there is none. */
  readonly change: number | null;
  readonly last: { readonly text: string; readonly time: Instant } | null;
}

export interface RowInput {
  readonly time: Instant;
  /** True when the time was typed. */
  readonly timeTyped: boolean;
  /** One a planned column, in the order in which they are typed. */
  readonly cells: readonly TypedCell[];
  readonly remark: string | null;
  /** What stands in the way of logging. */
  readonly errors: readonly { readonly message: Message; readonly at: readonly number[] }[];
  readonly warnings: readonly Suspicion[];
  /** Texts in the order of the table's columns; null until the row is complete. */
  readonly row: readonly string[] | null;
  /** Words that complete the one being typed. */
  readonly completions: readonly string[];
  /** True when a word is being typed that they complete; false when they are all words of the scale. */
  readonly wordBegun: boolean;
}

/**
 * The part of a typed row that can be judged while the rest of it is still being typed: all but the last value, which may
 * be half a number. Behind a separator, and once a remark is begun, every value is whole.
 */
export function settledPart(text: string): string {
  return text.includes(';') ? text : text.replace(/\S+$/u, '');
}

/** Reads the typed text against the plan of the row. Never fails. */
export function readRowInput(text: string, note: Note, plan: RowPlan): RowInput {
  const semicolon = text.indexOf(';');
  const typed = semicolon < 0 ? text : text.slice(0, semicolon);
  const remark = semicolon < 0 ? null : text.slice(semicolon + 1).trim() || null;
  const tokens = typed.split(/\s+/u).map((token) => token.replace(/^(.+),$/u, '$1')).filter((token) => token !== '');
  const errors: { message: Message; at: number[] }[] = [];
  let time = plan.time;
  let timeTyped = false;
  const first = tokens[0];
  if (first !== undefined && (first === 'now' || /^\+|:/u.test(first))) {
    tokens.shift();
    timeTyped = true;
    const meant = first === 'now' ? Math.floor(plan.now / minute) * minute : typedTime(first, note, plan.now);
    if (meant === null) errors.push({ message: { code: 'time-unreadable', args: { text: first } }, at: [] });
    else time = meant;
  }
  const open = tokens.length > 0 && semicolon < 0 && !/\s$/u.test(typed) ? tokens.length - 1 : -1;
  const cells = plan.columns.map((column, at): TypedCell => {
    const token = tokens[at] ?? '';
    const last = lastReading(column, time);
    if (token === '') return { column, text: '', state: null, change: null, last };
    const word = column.words?.find((each) => each.toLowerCase() === token.toLowerCase()) ?? (column.words ? onlyWord(token, column.words) : null);
    const reading = readCell(word ?? token, { scale: column.words });
    const written = reading.withPoints ?? reading.rewrite ?? word ?? token;
    const state = written === (word ?? token) ? reading.state : readCell(written, { scale: column.words }).state;
    if (state.kind === 'unreadable' || reading.thousands) {
      const near = column.words ? nearestName(token, column.words) : null;
      const code = column.words ? 'not-a-word' : 'unreadable';
      if (at !== open || !column.words) errors.push({ message: { code, args: { text: token, head: column.id, words: column.words ?? [], nearest: near ?? '' } }, at: [at] });
    }
    return { column, text: written, state, change: changeOf(column, state, last?.value ?? null), last };
  });
  if (tokens.length > plan.columns.length) errors.push({ message: { code: 'too-many', args: { found: tokens.length, expected: plan.columns.length } }, at: [] });
  const complete = tokens.length === plan.columns.length && errors.length === 0 && cells.every((cell) => cell.state !== null && cell.state.kind !== 'unreadable');
  const values = cells.map((cell) => ({ column: cell.column, value: cell.state?.kind === 'number' ? cell.state.value : null, text: cell.text }));
  const warnings = suspicions(values, note, time);
  const oddTime = errors.length > 0 ? null : doubtfulTime(time, timeTyped ? first ?? '' : null, note, plan.now);
  if (oddTime) warnings.push({ message: oddTime, at: [] });
  const ordered = new Array<string>(plan.columns.length);
  for (const cell of cells) ordered[cell.column.index] = cell.text;
  const words = open >= 0 ? plan.columns[open]?.words ?? [] : plan.columns[tokens.length]?.words ?? [];
  const begun = open >= 0 ? tokens[open]!.toLowerCase() : '';
  return {
    time, timeTyped, cells, remark, errors, warnings, row: complete ? ordered : null,
    completions: words.filter((word) => word.toLowerCase().startsWith(begun) && word.toLowerCase() !== begun), wordBegun: begun !== '',
  };
}

/** The only word of the scale that starts so. */
function onlyWord(begun: string, words: readonly string[]): string | null {
  const found = words.filter((word) => word.toLowerCase().startsWith(begun.toLowerCase()));
  return found.length === 1 ? found[0]! : null;
}

function changeOf(column: PlannedColumn, state: CellState, last: number | null): number | null {
  if (state.kind !== 'number' || state.value === null || last === null || !column.unit || !column.series) return null;
  const { unit } = column.series;
  const before = unit.symbol !== column.unit.symbol && convertible(unit, column.unit) ? convert(last, unit, column.unit) : last;
  // Both have few decimals; their difference is shown without the dust of binary fractions.
  return Number((state.value - before).toPrecision(10));
}

const inWords = (distance: number): string => formatDuration(Math.round(Math.abs(distance) / minute) * minute);

/** A time half a day or more outside the run, or a typed one far from now that is not in a run of a day or less; null when nothing is odd about it. */
function doubtfulTime(time: Instant, typed: string | null, note: Note, now: Instant): Message | null {
  const { schedule, zone = utc } = note.protocol ?? {};
  const outside = schedule?.end == null ? 0 : time > schedule.end ? time - schedule.end : Math.min(0, time - schedule.start);
  if (Math.abs(outside) >= 12 * hour) {
    const text = `${formatDate(time, zone)} ${formatClock(time, zone)}`;
    return { code: 'outside-run', args: { time: text, distance: inWords(outside), side: outside > 0 ? 'after' : 'before' } };
  }
  const far = now - time > day || time - now > 6 * hour;
  return typed !== null && far && !(isShortRun(note) && outside === 0 && time < now) ? { code: 'time-far', args: { time: typed, distance: inWords(time - now) } } : null;
}

/** True for a run in which each clock time comes once. */
function isShortRun(note: Note): boolean {
  const schedule = note.protocol?.schedule;
  return schedule?.end != null && schedule.end - schedule.start < day;
}

/**
 * A typed time; null when it is no time. A clock time is the one in the run when a run of less than a day is over, else the
 * one nearest to now (at most six hours ahead), also in a repeated hour.
 */
export function typedTime(text: string, note: Note, now: Instant): Instant | null {
  const part = readTimePart(text);
  const zone = note.protocol?.zone ?? utc;
  if (!part) return null;
  if (part.kind === 'since-start') return note.protocol?.schedule ? note.protocol.schedule.start + part.after : null;
  if (part.kind === 'full') return nearestOf(meanings(part.wall, part.offset, zone), now);
  const schedule = note.protocol?.schedule;
  if (schedule?.end != null && isShortRun(note) && now > schedule.end) {
    const lastDay = { ...wallTimeOf(schedule.end, zone), ...part.clock };
    const inRun = nearestOf([-1, 0].flatMap((days) => meanings(addDays(lastDay, days), part.offset, zone)).filter((each) => each >= schedule.start && each <= schedule.end!), now);
    if (inRun !== null) return inRun;
  }
  const today = { ...wallTimeOf(now, zone), ...part.clock };
  const near = [-1, 0, 1].flatMap((days) => meanings(addDays(today, days), part.offset, zone));
  // Nobody logs what was not read yet: a clock time well ahead is that of the day before.
  return nearestOf(near.filter((each) => each <= now + 6 * hour), now);
}

function meanings(wall: WallTime, offset: number | null, zone: Zone): Instant[] {
  const meant = instantOf(wall, offset === null ? zone : utc);
  const shift = offset ?? 0;
  return meant.kind === 'single' ? [meant.instant - shift] : meant.kind === 'repeated' ? [meant.earlier, meant.later] : [];
}

function nearestOf(instants: readonly Instant[], now: Instant): Instant | null {
  return instants.reduce<Instant | null>((best, each) => (best === null || Math.abs(each - now) < Math.abs(best - now) ? each : best), null);
}
