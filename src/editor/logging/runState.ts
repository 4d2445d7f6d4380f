// A run that was started: when to speak up, and when to be quiet. Works on plain values, with the time handed in.
import * as z from 'zod/mini';
import type { RowPlan } from '../../edits/planRow.ts';
import { hour, minute, type Instant, type Zone } from '../../time/instant.ts';
import { readClock } from '../../time/text.ts';
import { wallTimeOf } from '../../time/zone.ts';

const runEntry = z.object({
  /** Address of the note. */
  note: z.string(),
  started: z.number(),
  /** Slots for which the keeper was told already. */
  told: z.catch(z.array(z.number()), []),
  /** *Later* was chosen for this slot: not again before that time. */
  later: z.catch(z.nullable(z.object({ slot: z.number(), until: z.number() })), null),
  /** The window that is about to speak. */
  claim: z.catch(z.nullable(z.object({ window: z.string(), until: z.number() })), null),
});

/** A run as every window of the editor sees it. */
export type RunState = Readonly<z.infer<typeof runEntry>>;

/** How long *later* puts a reminder off. */
export const later = 5 * minute;
/** How long a window that is about to speak keeps the others quiet. */
export const claimTime = minute / 2;
/** So long after its last planned time a run ends by itself. */
export const afterEnd = 12 * hour;

export const newRun = (note: string, now: Instant): RunState => ({ note, started: now, told: [], later: null, claim: null });
export const runText = (state: RunState): string => `${JSON.stringify(state)}\n`;

/** Reads what was stored; null for anything else. */
export function readRunState(text: string): RunState | null {
  try {
    return runEntry.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

export type RunMoment =
  | { readonly kind: 'due'; readonly slot: Instant; /** How long it is due by now. */ readonly since: number }
  | { readonly kind: 'waiting'; readonly next: Instant; readonly left: number }
  | { readonly kind: 'over' };

export function momentOf(plan: RowPlan, now: Instant): RunMoment {
  // A slot counts as due from its own minute on, however early it may be logged.
  if (plan.slot !== null && now >= plan.slot) return { kind: 'due', slot: plan.slot, since: now - plan.slot };
  const next = plan.slot ?? plan.next;
  return next === null ? { kind: 'over' } : { kind: 'waiting', next, left: next - now };
}

/** Whether the keeper is to be told of this slot now. */
export function shouldTell(state: RunState, slot: Instant, now: Instant, quiet: boolean): boolean {
  if (quiet) return false;
  if (state.later?.slot === slot) return now >= state.later.until;
  return !state.told.includes(slot);
}

/** The run once the keeper was told of a slot. */
export function toldOf(state: RunState, slot: Instant): RunState {
  return { ...state, told: [...state.told.filter((each) => each !== slot), slot].slice(-200), later: null, claim: null };
}

/** A claim of another window counts until it ends; one far in the future comes from a clock that was set back. */
export function mayClaim(state: RunState, window: string, now: Instant): boolean {
  const { claim } = state;
  return claim === null || claim.window === window || claim.until < now || claim.until > now + 10 * claimTime;
}

/** `23:00-07:00`, also over midnight, in the note's zone. An empty or unreadable setting is never quiet. */
export function isQuiet(setting: string, now: Instant, zone: Zone): boolean {
  const [from, to] = setting.split(/\s*[-–]\s*/u).map((part) => readClock(part.trim()));
  if (!from || !to) return false;
  const { hour: hours, minute: minutes } = wallTimeOf(now, zone);
  const at = hours * 60 + minutes;
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
