// Times in a formula: clock times and dates as typed, and the times that every plan knows by name.
import { day, type Instant, type WallTime } from '../time/instant.ts';
import { readClock, readDateTime, readDuration } from '../time/text.ts';
import { instantOf, wallTimeOf } from '../time/zone.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { NamedTime } from './names.ts';
import { runOf, type Run } from './run.ts';

/** `22:30`, `2026-03-15T02:30`, `2026-03-15 02:30+01:00`, `+1h30` at its place in the formula. */
export function typedInstant(run: Run, text: string, range: SourceRange): Instant | null {
  if (text.startsWith('+')) return elapsedInstant(run, text, range);
  const dated = /^(\d{4})-(\d{1,2})-(\d{1,2})(.*)$/u.exec(text);
  if (dated) {
    const padded = `${dated[1]}-${dated[2]!.padStart(2, '0')}-${dated[3]!.padStart(2, '0')}${dated[4]}`;
    const read = readDateTime(padded.replace('−', '-'));
    if (!read) return run.fail('instant-unreadable', range, { text });
    if (read.offset !== null) return wallNumber(read.wall) - read.offset;
    return meaning(run, read.wall, range, text);
  }
  return clockInstant(run, text, range);
}

function elapsedInstant(run: Run, text: string, range: SourceRange): Instant | null {
  const schedule = run.context.protocol?.schedule;
  if (!schedule) return run.fail('schedule-needed', range, { name: text });
  const minutes = /^\+(\d+(?:\.\d+)?)$/u.exec(text);
  const duration = minutes ? Number(minutes[1]) * 60_000 : readDuration(text.slice(1));
  if (duration === null || !Number.isFinite(duration)) return run.fail('instant-unreadable', range, { text });
  const instant = schedule.start + Math.round(duration);
  return Math.abs(instant) > 8e15 ? run.fail('instant-unreadable', range, { text }) : instant;
}

/** A time of day: the one within the run. */
function clockInstant(run: Run, text: string, range: SourceRange): Instant | null {
  const split = /^(\d{1,2}:\d{2}(?::\d{2})?)(.*)$/u.exec(text);
  const clock = split ? readClock(split[1]!) : null;
  if (!split || !clock) return run.fail('instant-unreadable', range, { text });
  const offset = split[2] === '' ? null : (readDateTime(`2000-01-01T00:00${split[2]!.replace('−', '-')}`)?.offset ?? null);
  if (split[2] !== '' && offset === null) return run.fail('instant-unreadable', range, { text });
  const stretch = runOf(run.context);
  if (!stretch) return run.fail('schedule-needed', range, { name: text });
  const { times } = run.context.dataset;
  const widest = { from: Math.min(stretch.from, times[0] ?? stretch.from), to: Math.max(stretch.to, times.at(-1) ?? stretch.to) };
  const candidates: Instant[] = [];
  let skipped: Instant | null = null;
  const days = Math.min(4000, Math.ceil((widest.to - widest.from) / day) + 2);
  for (let step = -1; step <= days; step += 1) {
    const date = wallTimeOf(widest.from + step * day, run.zone);
    const wall: WallTime = { year: date.year, month: date.month, day: date.day, ...clock };
    if (offset !== null) {
      candidates.push(wallNumber(wall) - offset);
      continue;
    }
    const found = instantOf(wall, run.zone);
    if (found.kind === 'single') candidates.push(found.instant);
    else if (found.kind === 'repeated') candidates.push(found.earlier, found.later);
    else if (found.after >= widest.from && found.before <= widest.to) skipped = found.after;
  }
  const distinct = [...new Set(candidates)].sort((a, b) => a - b);
  const inRun = distinct.filter((instant) => instant >= stretch.from && instant <= stretch.to);
  const inside = inRun.length > 0 ? inRun : distinct.filter((instant) => instant >= widest.from && instant <= widest.to);
  if (inside.length === 1) return inside[0]!;
  if (inside.length > 1) {
    return run.fail('ambiguous-time', range, { time: text, times: inside.slice(0, 6).map((each) => exact(run, each, inside)) },
      inside.slice(0, 6).map((each) => run.replace(range, exact(run, each, inside))));
  }
  if (skipped !== null) return run.fail('time-skipped', range, { time: text, zone: run.zone.name });
  return run.fail('time-outside-run', range, { time: text, start: run.exactTime(stretch.from), end: run.exactTime(stretch.to) });
}

/** With the offset where the same wall time comes twice. */
function exact(run: Run, instant: Instant, among: readonly Instant[]): string {
  const text = run.exactTime(instant);
  if (!among.some((other) => other !== instant && run.exactTime(other) === text)) return text;
  const minutes = Math.round(run.zone.offsetAt(instant) / 60_000);
  const size = Math.abs(minutes);
  return `${text}${minutes < 0 ? '-' : '+'}${String(Math.floor(size / 60)).padStart(2, '0')}:${String(size % 60).padStart(2, '0')}`;
}

function meaning(run: Run, wall: WallTime, range: SourceRange, text: string): Instant | null {
  const found = instantOf(wall, run.zone);
  if (found.kind === 'single') return found.instant;
  if (found.kind === 'skipped') return run.fail('time-skipped', range, { time: text, zone: run.zone.name });
  const both = [found.earlier, found.later];
  return run.fail('ambiguous-time', range, { time: text, times: both.map((each) => exact(run, each, both)) }, both.map((each) => run.replace(range, exact(run, each, both))));
}

function wallNumber(wall: WallTime): number {
  return Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute, wall.second);
}

/** `start`, `light-off`, `sunrise` and the like. Several within the run are a problem that lists them. */
export function namedTime(run: Run, name: NamedTime, range: SourceRange): Instant | null {
  const { protocol } = run.context;
  const schedule = protocol?.schedule ?? null;
  if (!protocol || !schedule) return run.fail('schedule-needed', range, { name });
  const stretch = runOf(run.context)!;
  if (name === 'start') return schedule.start;
  if (name === 'end') return schedule.end ?? stretch.to;
  const all: (Instant | null)[] = name === 'light-off' ? [...schedule.lightOff] : name === 'light-on' ? [...schedule.lightOn]
    : protocol.sun.map((sunDay) => sunDay[name]);
  const known = [...new Set(all.filter((each): each is Instant => each !== null))].sort((a, b) => a - b);
  const inside = known.filter((each) => each >= stretch.from && each <= stretch.to);
  // Lights that go on just after the last reading still end the night.
  const found = inside.length > 0 ? inside : name === 'light-on' || name === 'light-off' ? known : [];
  if (found.length === 1) return found[0]!;
  if (found.length > 1) {
    return run.fail('ambiguous-time', range, { time: name, times: found.slice(0, 6).map((each) => run.exactTime(each)) },
      found.slice(0, 6).map((each) => run.replace(range, run.exactTime(each))));
  }
  return run.fail('time-not-in-run', range, { name });
}
