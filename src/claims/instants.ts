// Whether a clock time or date as shown stands for an instant, in the note's zone.
import { minute, second, day, type Instant, type WallTime, type Zone } from '../time/instant.ts';
import { instantOf, wallTimeOf } from '../time/zone.ts';
import type { ClockMention, DateMention } from './mentions.ts';

/** Every instant that the clock time may mean near `near`: on that local date, the day before and the day after. */
function meanings(clock: ClockMention, near: Instant, zone: Zone): Instant[] {
  const candidates: WallTime[] = [];
  for (const shift of clock.date && clock.date.year !== null ? [0] : [-1, 0, 1]) {
    const around = wallTimeOf(near + shift * day, zone);
    if (clock.date && clock.date.year === null && (around.month !== clock.date.month || around.day !== clock.date.day)) continue;
    const date = clock.date && clock.date.year !== null ? { ...clock.date, year: clock.date.year } : around;
    candidates.push({ year: date.year, month: date.month, day: date.day, hour: clock.hour, minute: clock.minute, second: clock.second ?? 0 });
  }
  return candidates.flatMap((wall) => {
    if (clock.offset !== null) return [Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute, wall.second) - clock.offset];
    const meaning = instantOf(wall, zone);
    return meaning.kind === 'single' ? [meaning.instant] : meaning.kind === 'repeated' ? [meaning.earlier, meaning.later] : [];
  });
}

/** True when the time shown is the instant, to half of the last unit shown; within 15 min where the words say `about`. */
export function holdsClock(clock: ClockMention, instant: Instant, zone: Zone): boolean {
  const allowed = clock.approximate ? 15 * minute : clock.second === null ? minute / 2 : second / 2;
  return meanings(clock, instant, zone).some((candidate) => Math.abs(candidate - instant) <= allowed
    && (clock.bound === null || (clock.bound === 'above' || clock.bound === 'at-least' ? instant >= candidate : instant <= candidate)));
}

export function holdsDate(date: DateMention, instant: Instant, zone: Zone): boolean {
  const wall = wallTimeOf(instant, zone);
  return wall.month === date.month && wall.day === date.day && (date.year === null || date.year === wall.year);
}
