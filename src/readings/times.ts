// What the time cells of a block mean: clock times take their date from the row above, a day line or the plan's start.
import type { Protocol } from '../protocol/types.ts';
import { addDays, inRange } from '../time/civil.ts';
import { hour, minute, type Duration, type Instant, type WallTime } from '../time/instant.ts';
import { formatOffset, formatDate, formatDuration, readClock, readDateTime, readDuration, readOffset, type CalendarDate, type Clock } from '../time/text.ts';
import { instantOf, wallTimeOf } from '../time/zone.ts';
import type { Token } from './lines.ts';
import { replaceFix, type Complaint, type LocalFix } from './reporter.ts';

/** The longest step over midnight that a clock time may make without a date. */
export const longestStep: Duration = 12 * hour;

export interface TimeCell {
  readonly token: Token;
  /** Date of the last day line between this row and the row above. */
  readonly day: CalendarDate | null;
}

export interface TimeReading {
  /** After the last correction; null when it cannot be told. */
  readonly instant: Instant | null;
  /** Before any correction. */
  readonly first: Instant | null;
  readonly earlier: readonly string[];
  /** True when the cell itself carries its date, or counts from the start. */
  readonly dated: boolean;
  /** True when a clock time went on to the next day without a day line. */
  readonly rolled: boolean;
  readonly complaint: Complaint | null;
}

type Part =
  | { readonly kind: 'full'; readonly wall: WallTime; readonly offset: Duration | null }
  | { readonly kind: 'clock'; readonly clock: Clock; readonly offset: Duration | null }
  | { readonly kind: 'since-start'; readonly after: Duration };

/** One time as written, without corrections; null when it is no time. */
export function readTimePart(text: string): Part | null {
  if (text.startsWith('+')) {
    const after = /^\+\d{1,7}$/u.test(text) ? Number(text.slice(1)) * minute : readDuration(text.slice(1));
    return after === null ? null : { kind: 'since-start', after };
  }
  const full = readDateTime(text);
  if (full) return { kind: 'full', ...full };
  const match = /^(\d{1,2}:\d\d(?::\d\d)?)([Zz]|[+-]\d\d:?\d\d)?$/u.exec(text);
  const clock = match ? readClock(match[1]!) : null;
  if (!match || !clock) return null;
  const offset = match[2] === undefined ? null : readOffset(match[2]);
  return match[2] !== undefined && offset === null ? null : { kind: 'clock', clock, offset };
}

interface Anchor { readonly above: Instant | null; readonly day: CalendarDate | null }
interface Meant { readonly instant: Instant | null; readonly complaint: Complaint | null; readonly rolled?: boolean }

/** Reads the time cells of one block, in order. `before` is the last instant of the block before, if there is one. */
export function readTimes(cells: readonly TimeCell[], protocol: Protocol, before: Instant | null): TimeReading[] {
  let above: Instant | null = null;
  let askedForDate = false;
  const found: TimeReading[] = [];
  for (const { token, day } of cells) {
    if (day) above = null;
    const anchor: Anchor = { above, day };
    const texts = token.text.split('->');
    const meanings: Meant[] = [];
    let offset = token.start;
    let dated = false;
    for (const text of texts) {
      const range = { start: offset, end: offset + text.length };
      const part = readTimePart(text);
      dated = part !== null && part.kind !== 'clock';
      meanings.push(part ? meaning(part, range, anchor, protocol, before) : unreadable(text, range));
      offset = range.end + 2;
    }
    const last = meanings.at(-1)!;
    let complaint = meanings.find((each) => each.complaint)?.complaint ?? null;
    if (complaint?.code === 'time-needs-date' || complaint?.code === 'time-needs-start') {
      if (askedForDate) complaint = null;
      askedForDate = true;
    }
    found.push({ instant: last.instant, first: meanings[0]!.instant, earlier: texts.slice(0, -1), dated, rolled: last.rolled ?? false, complaint });
    if (last.instant !== null) above = last.instant;
    // After a day line whose first row is unreadable the next row still takes the line's date.
    if (last.instant === null && day && above === null) above = startOfDay(day, protocol);
  }
  return found;
}

function startOfDay(date: CalendarDate, protocol: Protocol): Instant {
  const meant = instantOf({ ...date, hour: 0, minute: 0, second: 0 }, protocol.zone);
  return meant.kind === 'single' ? meant.instant : meant.kind === 'repeated' ? meant.earlier : meant.after;
}

function unreadable(text: string, range: { start: number; end: number }): Meant {
  const match = /^(\d{1,2})(?:[.h])?(\d\d)$/u.exec(text);
  const clock = match ? `${match[1]!.padStart(2, '0')}:${match[2]!}` : null;
  const fixes: LocalFix[] = clock !== null && readClock(clock) ? [replaceFix(range, clock, { preferred: true })] : [];
  return { instant: null, complaint: { code: 'time-unreadable', range, args: { text }, fixes } };
}

function meaning(part: Part, range: { start: number; end: number }, anchor: Anchor, protocol: Protocol, before: Instant | null): Meant {
  if (part.kind === 'since-start') {
    if (!protocol.schedule) return { instant: null, complaint: { code: 'time-needs-start', range, args: {} } };
    return kept(protocol.schedule.start + part.after, range, `+${formatDuration(part.after)}`);
  }
  if (part.kind === 'full') return placed(part.wall, part.offset, range, protocol);
  const date = dateOf(part, anchor, protocol, before);
  if (date === null) return { instant: null, complaint: { code: 'time-needs-date', range, args: {} } };
  const meant = placed(date, part.offset, range, protocol);
  if (meant.instant === null || anchor.above === null || meant.instant >= anchor.above) return meant;
  const nextDay = placed(addDays(date, 1), part.offset, range, protocol);
  if (nextDay.instant === null) return nextDay;
  const step = nextDay.instant - anchor.above;
  if (step <= longestStep) return { ...nextDay, rolled: true };
  const withDate = (instant: Instant): string => `${formatDate(instant, protocol.zone)}T${clockText(part.clock)}`;
  return {
    instant: null,
    complaint: {
      code: 'time-goes-back', range,
      args: { time: clockText(part.clock), step: formatDuration(step) },
      fixes: [replaceFix(range, withDate(nextDay.instant)), replaceFix(range, withDate(meant.instant))],
    },
  };
}

function kept(instant: Instant, range: { start: number; end: number }, text: string): Meant {
  return inRange(instant) ? { instant, complaint: null } : { instant: null, complaint: { code: 'time-unreadable', range, args: { text } } };
}

/** The wall time with the date that a clock time takes; null when there is nothing to take it from. */
function dateOf(part: { clock: Clock; offset: Duration | null }, anchor: Anchor, protocol: Protocol, before: Instant | null): WallTime | null {
  if (anchor.day) return { ...anchor.day, ...part.clock };
  if (anchor.above !== null) return { ...wallTimeOf(anchor.above, protocol.zone), ...part.clock };
  const start = protocol.schedule?.start ?? null;
  const nearStart = start === null ? null : nearest(part.clock, start, protocol);
  const nearBefore = before === null ? null : nearest(part.clock, before, protocol);
  if (!nearStart || !nearBefore) return nearBefore?.wall ?? nearStart?.wall ?? null;
  // A block that starts again at the beginning of the run stands beside the block before, it does not follow it.
  return !inRun(nearBefore.instant, protocol) && inRun(nearStart.instant, protocol) ? nearStart.wall : nearBefore.wall;
}

function inRun(instant: Instant, protocol: Protocol): boolean {
  const schedule = protocol.schedule;
  return schedule !== null && instant >= schedule.start && (schedule.end === null || instant <= schedule.end);
}

/** The clock time on the date that brings it nearest to the instant; the later of two. */
function nearest(clock: Clock, to: Instant, protocol: Protocol): { wall: WallTime; instant: Instant } {
  const today = { ...wallTimeOf(to, protocol.zone), ...clock };
  const candidates = [1, 0, -1].map((days) => {
    const wall = addDays(today, days);
    const meant = instantOf(wall, protocol.zone);
    return { wall, instant: meant.kind === 'single' ? meant.instant : meant.kind === 'repeated' ? meant.earlier : meant.after };
  });
  return candidates.reduce((best, each) => (Math.abs(each.instant - to) < Math.abs(best.instant - to) ? each : best));
}

const two = (value: number): string => String(value).padStart(2, '0');
function clockText(clock: Clock): string {
  return `${two(clock.hour)}:${two(clock.minute)}${clock.second === 0 ? '' : `:${two(clock.second)}`}`;
}

/** A wall time in the protocol's zone, or a named problem in the repeated and the skipped hour. */
function placed(wall: WallTime, offset: Duration | null, range: { start: number; end: number }, protocol: Protocol): Meant {
  const written = `${String(wall.year).padStart(4, '0')}-${two(wall.month)}-${two(wall.day)}T${clockText(wall)}`;
  const asUtc = instantOf(wall, { name: 'UTC', offsetAt: () => 0 });
  if (offset !== null) return asUtc.kind === 'single' ? kept(asUtc.instant - offset, range, written) : { instant: null, complaint: null };
  const meant = instantOf(wall, protocol.zone);
  if (meant.kind === 'single') return kept(meant.instant, range, written);
  const offsets = meant.kind === 'repeated'
    ? [protocol.zone.offsetAt(meant.earlier), protocol.zone.offsetAt(meant.later)]
    : [protocol.zone.offsetAt(meant.before), protocol.zone.offsetAt(meant.after)];
  return {
    instant: null,
    complaint: {
      code: meant.kind === 'repeated' ? 'time-ambiguous' : 'time-skipped', range,
      args: { time: clockText(wall), zone: protocol.zone.name },
      fixes: offsets.map((each) => replaceFix(range, written + formatOffset(each))),
    },
  };
}
