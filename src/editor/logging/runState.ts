// A run that was started: when to speak up, and when to be quiet. Works on plain values, with the time handed in.
import type { RowPlan } from '../../edits/planRow.ts';
import { minute, type Instant, type Zone } from '../../time/instant.ts';
import { readClock } from '../../time/text.ts';
import { wallTimeOf } from '../../time/zone.ts';

export interface RunState {
  /** Address of the note. */
  readonly note: string;
  readonly started: Instant;
  /** Slots for which the keeper was told already. */
  readonly told: readonly Instant[];
  /** Not before this time: *later* was chosen. */
  readonly laterUntil: Instant | null;
}

/** How long *later* puts a reminder off. */
export const later = 5 * minute;

/** Reads what a window remembered; null for anything else. */
export function readRunState(stored: unknown): RunState | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const { note, started, told, laterUntil } = stored as Record<string, unknown>;
  if (typeof note !== 'string' || typeof started !== 'number') return null;
  return {
    note, started, told: Array.isArray(told) ? told.filter((each): each is number => typeof each === 'number') : [],
    laterUntil: typeof laterUntil === 'number' ? laterUntil : null,
  };
}

export type RunMoment =
  | { readonly kind: 'due'; readonly slot: Instant; /** How long it is due by now; negative: so long until the very minute. */ readonly since: number }
  | { readonly kind: 'waiting'; readonly next: Instant; readonly left: number }
  | { readonly kind: 'over' };

export function momentOf(plan: RowPlan, now: Instant): RunMoment {
  // A slot counts as due from its own minute on, however early it may be logged.
  if (plan.slot !== null && now >= plan.slot) return { kind: 'due', slot: plan.slot, since: now - plan.slot };
  const next = plan.slot ?? plan.next;
  return next === null ? { kind: 'over' } : { kind: 'waiting', next, left: next - now };
}

/** Whether the keeper is to be told now. */
export function shouldTell(state: RunState, moment: RunMoment, now: Instant, quiet: boolean): boolean {
  if (quiet || moment.kind !== 'due') return false;
  if (state.laterUntil !== null) return now >= state.laterUntil;
  return !state.told.includes(moment.slot);
}

/** `23:00-07:00`, also over midnight, in the note's zone. An empty or unreadable setting is never quiet. */
export function isQuiet(setting: string, now: Instant, zone: Zone): boolean {
  const [from, to] = setting.split(/\s*[-–]\s*/u).map((part) => readClock(part.trim()));
  if (!from || !to) return false;
  const { hour, minute: minutes } = wallTimeOf(now, zone);
  const at = hour * 60 + minutes;
  const [start, end] = [from.hour * 60 + from.minute, to.hour * 60 + to.minute];
  return start <= end ? at >= start && at < end : at >= start || at < end;
}

/** `12:05`, `1:02:09`: what is left, in whole seconds. */
export function countdown(left: number): string {
  const seconds = Math.max(0, Math.ceil(left / 1000));
  const two = (value: number): string => String(value).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/** Of several windows on one note one speaks: the one that holds the lease, which ends when it stops renewing it. */
export interface Lease { readonly window: string; readonly until: Instant }
export const leaseTime = 30_000;

export function readLease(text: string): Lease | null {
  try {
    const { window, until } = JSON.parse(text) as Record<string, unknown>;
    return typeof window === 'string' && typeof until === 'number' ? { window, until } : null;
  } catch {
    return null;
  }
}

export function mayTake(lease: Lease | null, window: string, now: Instant): boolean {
  // A lease far in the future comes from a clock that was set back.
  return lease === null || lease.window === window || lease.until < now || lease.until > now + 10 * leaseTime;
}
