// Instants and windows as the plan writes them: `22:00`, `2026-03-15 06:30`, `light-off + 3 h`, `20:00..21:00`.
// A clock time alone is the first one at or after a given instant.
import { nearestName } from '../problems/nearest.ts';
import { addDays, atMidnight, wallNumber } from '../time/civil.ts';
import { day, second, type Instant, type WallTime, type Zone } from '../time/instant.ts';
import { formatInstant, readClock, readDate, readDateTime, readDuration, type Clock } from '../time/text.ts';
import { compatibleInstant, instantOf, wallTimeOf } from '../time/zone.ts';
import type { Window } from './types.ts';

export interface InstantScope {
  readonly zone: Zone;
  /** Clock times alone are looked for from here. Null: they have no meaning yet. */
  readonly after: Instant | null;
  /** A clock time equal to `after` means the next day. */
  readonly strictlyAfter?: boolean;
  /** Instants of a name; empty: known, but it has none in this run; null: no such name. */
  names(name: string): readonly Instant[] | null;
  readonly knownNames: readonly string[];
  /** A date without a time means its first moment (`first`), its last second (`last`), or is a fault. */
  readonly dates?: 'first' | 'last';
}

export type InstantFault =
  | { readonly code: 'bad-time'; readonly args: Readonly<Record<string, string>> }
  | { readonly code: 'bad-time-name'; readonly args: Readonly<Record<string, string>>; readonly replacement: string | null }
  | { readonly code: 'time-name-has-several'; readonly args: { readonly name: string; readonly names: readonly string[] } }
  | { readonly code: 'time-name-has-none'; readonly args: { readonly name: string } }
  | { readonly code: 'plan-time-skipped' | 'plan-time-repeated'; readonly args: Readonly<Record<string, string>>; readonly replacements: readonly string[] };

/** The instant, the fault, or both: a time in a repeated hour is read as the earlier one. */
export interface InstantReading { readonly instant: Instant | null; readonly fault: InstantFault | null }

const fault = (found: InstantFault, instant: Instant | null = null): InstantReading => ({ instant, fault: found });

/** The instant of a wall time, with a fault in the hour that clocks skip or repeat. */
function ofWall(wall: WallTime, zone: Zone, text: string): InstantReading {
  const meaning = instantOf(wall, zone);
  if (meaning.kind === 'single') return { instant: meaning.instant, fault: null };
  const choices = meaning.kind === 'skipped' ? [meaning.before, meaning.after] : [meaning.earlier, meaning.later];
  const replacements = choices.map((instant) => formatInstant(instant, zone));
  return meaning.kind === 'skipped'
    ? fault({ code: 'plan-time-skipped', args: { time: text, zone: zone.name }, replacements }, meaning.after)
    : fault({ code: 'plan-time-repeated', args: { time: text, zone: zone.name }, replacements }, meaning.earlier);
}

/** The first time at or after `after` when the clocks show this time of day. */
export function firstClockAfter(clock: Clock, after: Instant, zone: Zone, strictly = false): WallTime {
  const date = wallTimeOf(after, zone);
  for (let days = -1; days <= 2; days += 1) {
    const wall = addDays({ ...date, ...clock }, days);
    const meaning = instantOf(wall, zone);
    const latest = meaning.kind === 'repeated' ? meaning.later : compatibleInstant(wall, zone);
    if (strictly ? latest > after : latest >= after) return wall;
  }
  return addDays({ ...date, ...clock }, 1);
}

/** A length of whole days keeps the clock time when clocks change; any other is elapsed time. */
export function shift(instant: Instant, text: string, sign: 1 | -1, zone: Zone): Instant | null {
  const duration = readDuration(text);
  if (duration === null) return null;
  const days = /^\s*(\d+)\s*(?:d|days?|w|wk|weeks?)\s*$/.test(text) ? duration / day : null;
  if (days === null) return instant + sign * duration;
  const moved = addDays(wallTimeOf(instant, zone), sign * days);
  return compatibleInstant(moved, zone) + (instant % second);
}

/** Reads an instant: a base, then any number of ` + duration` and ` - duration`. `+1h30` alone counts from the start. */
export function readInstantText(text: string, scope: InstantScope): InstantReading {
  const trimmed = text.trim();
  const bad = (): InstantReading => fault({ code: 'bad-time', args: { text: trimmed.slice(0, 60) } });
  if (trimmed === '') return bad();
  if (/^\+\s*\d/.test(trimmed)) {
    const start = scope.names('start')?.[0];
    const rest = trimmed.slice(1).trim();
    const moved = start === undefined ? null : shift(start, /^\d+$/.test(rest) ? `${rest} min` : rest, 1, scope.zone);
    return moved === null ? bad() : { instant: moved, fault: null };
  }
  const parts = trimmed.split(/\s+([+\-−])\s*(?=\d)/);
  // A date's offset may stand behind a space: `2026-03-29 02:30 +01:00`.
  if (parts.length >= 3 && /^\d\d:\d\d$/.test(parts[2]!)) parts.splice(0, 3, `${parts[0]}${parts[1]}${parts[2]}`);
  const base = readBase(parts[0]!, scope);
  let { instant } = base;
  for (let i = 1; i < parts.length && instant !== null; i += 2) {
    instant = shift(instant, parts[i + 1]!, parts[i] === '+' ? 1 : -1, scope.zone);
    if (instant === null) return bad();
  }
  return { instant, fault: base.fault };
}

function readBase(text: string, scope: InstantScope): InstantReading {
  const { zone } = scope;
  const clock = readClock(text);
  if (clock) {
    if (scope.after === null) return fault({ code: 'bad-time', args: { text } });
    return ofWall(firstClockAfter(clock, scope.after, zone, scope.strictlyAfter), zone, text);
  }
  const dated = readDateTime(text);
  if (dated) {
    if (dated.offset !== null) return { instant: wallNumber(dated.wall) - dated.offset, fault: null };
    return ofWall(dated.wall, zone, text);
  }
  const date = readDate(text);
  if (date && scope.dates) {
    const midnight = atMidnight(date);
    return { instant: scope.dates === 'first' ? compatibleInstant(midnight, zone) : compatibleInstant(addDays(midnight, 1), zone) - second, fault: null };
  }
  const name = text.trim();
  if (/^\p{L}[\p{L}\p{N}-]*$/u.test(name)) {
    const instants = scope.names(name);
    if (instants === null) {
      const nearest = nearestName(name, scope.knownNames);
      return fault({ code: 'bad-time-name', args: { name, nearest: nearest ?? '' }, replacement: nearest });
    }
    if (instants.length === 0) return fault({ code: 'time-name-has-none', args: { name } });
    if (instants.length > 1) return fault({ code: 'time-name-has-several', args: { name, names: instants.map((_, index) => `${name}-${index + 1}`) } });
    return { instant: instants[0]!, fault: null };
  }
  return fault({ code: 'bad-time', args: { text: text.slice(0, 60) } });
}

/** `A..B`: clock times in B are looked for from A. `phase` gives the window of a name that stands alone. */
export function readWindowText(text: string, scope: InstantScope, phase: (name: string) => Window | null = () => null): { window: Window | null; faults: InstantFault[] } {
  const dots = text.indexOf('..');
  if (dots < 0) {
    const window = phase(text.trim());
    if (window) return { window, faults: [] };
    const date = readDate(text);
    if (date) {
      const from = readInstantText(text, { ...scope, dates: 'first' }).instant;
      const to = readInstantText(text, { ...scope, dates: 'last' }).instant;
      if (from !== null && to !== null) return { window: { from, to }, faults: [] };
    }
    return { window: null, faults: [{ code: 'bad-time', args: { text: text.trim().slice(0, 60) } }] };
  }
  const from = readInstantText(text.slice(0, dots), { ...scope, dates: 'first' });
  const to = readInstantText(text.slice(dots + 2), { ...scope, after: from.instant ?? scope.after, strictlyAfter: from.instant !== null, dates: 'last' });
  const faults = [from.fault, to.fault].filter((each) => each !== null);
  return { window: from.instant === null || to.instant === null ? null : { from: from.instant, to: to.instant }, faults };
}
