// Time zones: the rules of an IANA zone read once into a table of transitions, then integers only.
// The one file that knows the Temporal library.
import { Temporal } from 'temporal-polyfill/implementation';
import { civilFromDays, daysFromCivil, firstYear, lastYear, wallFromNumber, wallNumber } from './civil.ts';
import { day, hour, minute, type Duration, type Instant, type WallMeaning, type WallTime, type Zone } from './instant.ts';

/** Coordinated universal time. */
export const utc: Zone = { name: 'UTC', offsetAt: () => 0 };

/** Moments from which an offset holds, in rising order; the first entry holds for all of the year before the second. */
interface TransitionTable { readonly from: readonly Instant[]; readonly offset: readonly Duration[] }

function offsetOf(zoned: Temporal.ZonedDateTime): Duration {
  return Math.round(zoned.offsetNanoseconds / 1_000_000);
}

/** The transitions of one year of UTC. */
function readYear(year: number, zone: string): TransitionTable {
  const start = Temporal.Instant.fromEpochMilliseconds(daysFromCivil(year, 1, 1) * day).toZonedDateTimeISO(zone);
  const end = daysFromCivil(year + 1, 1, 1) * day;
  const from: Instant[] = [-Infinity];
  const offset: Duration[] = [offsetOf(start)];
  let zoned: Temporal.ZonedDateTime | null = start.getTimeZoneTransition('next');
  while (zoned && zoned.epochMilliseconds < end) {
    from.push(zoned.epochMilliseconds);
    offset.push(offsetOf(zoned));
    zoned = zoned.getTimeZoneTransition('next');
  }
  return { from, offset };
}

/**
 * The zone of an IANA name (`Europe/Amsterdam`), `UTC`, or a fixed offset (`+01:00`); null when nothing is known of it.
 * Rules hold for the years 1970 to 2100; outside them the nearest known offset is used.
 * The table is read year by year as it is asked for, and kept inside the returned zone.
 */
export function loadZone(name: string): Zone | null {
  const trimmed = name.trim();
  if (trimmed === 'UTC' || trimmed === 'Etc/UTC' || trimmed === 'Z') return utc;
  const fixed = /^([+-])(\d\d):(\d\d)$/.exec(trimmed);
  if (fixed) {
    const size = Number(fixed[2]) * hour + Number(fixed[3]) * minute;
    if (size > 14 * hour || Number(fixed[3]) > 59) return null;
    const offset = fixed[1] === '-' ? 0 - size : size;
    return { name: trimmed, offsetAt: () => offset };
  }
  if (!/^[A-Za-z][A-Za-z0-9_+\-/]*$/.test(trimmed)) return null;
  let identifier: string;
  try {
    identifier = Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(trimmed).timeZoneId;
  } catch {
    return null; // the library's only way to say that it does not know the zone
  }
  const years = new Map<number, TransitionTable>();
  // The span between two transitions that was asked for last: the rows of a file mostly lie in one.
  let span = { from: Infinity, to: -Infinity, offset: 0 };
  return {
    name: identifier,
    offsetAt(instant) {
      if (instant >= span.from && instant < span.to) return span.offset;
      const year = !Number.isFinite(instant) ? firstYear : Math.min(lastYear, Math.max(firstYear, civilFromDays(Math.floor(instant / day)).year));
      let table = years.get(year);
      if (!table) years.set(year, table = readYear(year, identifier));
      let index = table.from.length - 1;
      while (index > 0 && table.from[index]! > instant) index -= 1;
      span = {
        from: Math.max(table.from[index]!, daysFromCivil(year, 1, 1) * day),
        to: Math.min(table.from[index + 1] ?? Infinity, daysFromCivil(year + 1, 1, 1) * day), offset: table.offset[index]!,
      };
      return span.offset;
    },
  };
}

/** What the clocks of the zone show at the instant. */
export function wallTimeOf(instant: Instant, zone: Zone): WallTime {
  return wallFromNumber(instant + zone.offsetAt(instant));
}

/** The instant or instants at which the clocks of the zone show the wall time. */
export function instantOf(wall: WallTime, zone: Zone): WallMeaning {
  const number = wallNumber(wall);
  // No zone is more than 14 h from UTC and none changes twice within two days, so these two offsets are all there are.
  const earlierOffset = zone.offsetAt(number - 15 * hour);
  const laterOffset = zone.offsetAt(number + 15 * hour);
  const first = number - earlierOffset;
  const second = number - laterOffset;
  const firstFits = zone.offsetAt(first) === earlierOffset;
  const secondFits = zone.offsetAt(second) === laterOffset;
  if (first === second) return { kind: 'single', instant: first };
  if (firstFits && secondFits) return { kind: 'repeated', earlier: Math.min(first, second), later: Math.max(first, second) };
  if (firstFits) return { kind: 'single', instant: first };
  if (secondFits) return { kind: 'single', instant: second };
  // Clocks were put forward over it: read with the later and with the earlier offset.
  return { kind: 'skipped', before: Math.min(first, second), after: Math.max(first, second) };
}

/** One instant of a wall time: the earlier of two; in a skipped hour the time as much later as clocks were put forward. */
export function compatibleInstant(wall: WallTime, zone: Zone): Instant {
  const meaning = instantOf(wall, zone);
  return meaning.kind === 'single' ? meaning.instant : meaning.kind === 'repeated' ? meaning.earlier : meaning.after;
}

/** Names of zones that the host knows; used to offer the nearest one. */
export function zoneNames(): readonly string[] {
  return ['UTC', ...Intl.supportedValuesOf('timeZone')];
}
