// Sunrise, sunset and civil twilight of one local date at a place. The one file that knows the sun library.
import { getTimes } from 'suncalc';
import { addDays, atMidnight } from '../time/civil.ts';
import { day, hour, second, type Instant, type Zone } from '../time/instant.ts';
import { readDate } from '../time/text.ts';
import { compatibleInstant } from '../time/zone.ts';

/** Sun times of one local date; null where the sun does not cross that height on that date. */
export interface SunTimes {
  readonly date: string;
  readonly dawn: Instant | null; readonly sunrise: Instant | null;
  readonly sunset: Instant | null; readonly dusk: Instant | null;
}

/**
 * Sun times of the local civil date `date` (`2026-03-15`), from local midnight to local midnight.
 * Latitude north and longitude east in degrees. Sunrise and sunset: upper limb on a sea-level horizon with
 * 34' of refraction (-0.833 degrees); dawn and dusk: civil twilight (-6 degrees). Whole seconds; real refraction
 * limits any of them to about a minute. In polar day or night, and for a date that does not exist, all null.
 * Source: J. Meeus, Astronomical Algorithms (2nd ed. 1998), chapters 15 and 25, as computed by suncalc.
 */
export function sunDay(date: string, latitude: number, longitude: number, zone: Zone): SunTimes {
  const none: SunTimes = { date, dawn: null, sunrise: null, sunset: null, dusk: null };
  const civil = readDate(date);
  if (!civil || !(Math.abs(latitude) <= 90) || !(Math.abs(longitude) <= 180)) return none;
  const midnight = atMidnight(civil);
  const from = compatibleInstant(midnight, zone);
  const to = compatibleInstant(addDays(midnight, 1), zone);
  // A local date may touch three of the library's solar days; each event is the first that falls inside the date.
  const solarDays = [-1, 0, 1].map((offset) => getTimes(new Date(from + 12 * hour + offset * day), latitude, longitude));
  const pick = (name: 'dawn' | 'sunrise' | 'sunset' | 'dusk'): Instant | null => {
    for (const times of solarDays) {
      const time = times[name]?.getTime();
      if (time === undefined || Number.isNaN(time)) continue;
      const rounded = Math.round(time / second) * second;
      if (rounded >= from && rounded < to) return rounded;
    }
    return null;
  };
  return { date, dawn: pick('dawn'), sunrise: pick('sunrise'), sunset: pick('sunset'), dusk: pick('dusk') };
}
