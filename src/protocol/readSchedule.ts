// The schedule: start, end, lights over the days of the run, and every planned reading time.
import { addDays, daysFromCivil } from '../time/civil.ts';
import { day, minute, type Duration, type Instant, type Zone } from '../time/instant.ts';
import { formatInstant, readClock, readDuration, type Clock } from '../time/text.ts';
import { compatibleInstant, wallTimeOf } from '../time/zone.ts';
import { sunDay } from '../sky/sun.ts';
import { firstClockAfter } from './instants.ts';
import { shorten, type Collector } from './collector.ts';
import type { MapReader } from './mapReader.ts';
import type { TextNode } from './planTree.ts';
import { readInstant, scopeOf } from './timeValues.ts';
import type { Place, Sampling, Schedule, SunDay } from './types.ts';

/** More planned readings than this are taken as a slip (`1 s` for `1 min`). */
const mostSlots = 50_000;
/** Days over which lights and sun are followed. */
const mostDays = 800;

const dayNumber = (instant: Instant, zone: Zone): number => {
  const wall = wallTimeOf(instant, zone);
  return daysFromCivil(wall.year, wall.month, wall.day);
};

interface LightTexts { readonly clocks: readonly Clock[]; readonly dated: readonly Instant[] }

function readLights(reader: MapReader, key: 'light off' | 'light on', start: Instant, zone: Zone, collector: Collector): LightTexts {
  const clocks: Clock[] = [];
  const dated: Instant[] = [];
  for (const node of reader.texts(key)) {
    const clock = readClock(node.value);
    if (clock) clocks.push(clock);
    else {
      const instant = readInstant(node, key, scopeOf(zone, start, { start: [start] }), collector);
      if (instant) dated.push(instant.value);
    }
  }
  return { clocks, dated };
}

/** All times from the day before `from` to the day after `to` when the clocks show one of these times of day. A lamp's timer follows the clock. */
function daily(clocks: readonly Clock[], from: Instant, to: Instant, zone: Zone): Instant[] {
  const wall = wallTimeOf(from, zone);
  const days = Math.min(mostDays, dayNumber(to, zone) - dayNumber(from, zone));
  const result: Instant[] = [];
  for (let offset = -1; offset <= days + 1; offset += 1) for (const clock of clocks) result.push(compatibleInstant(addDays({ ...wall, ...clock }, offset), zone));
  return result;
}

const sorted = (instants: Iterable<Instant>): Instant[] => [...new Set(instants)].sort((a, b) => a - b);

/**
 * Lights of the run. Dated times stand once. A clock time repeats daily: `light off` at every such time from the start
 * to the end, or the first one after the start where none falls inside; `light on` likewise, looked for from the first
 * lights-off. Where the daily clock times show that the lamps are already off at the start (the last switch before it
 * was off), that lights-off before the start is taken in, and the run starts in the dark.
 */
function planLights(off: LightTexts, on: LightTexts, start: Instant, end: Instant | null, zone: Zone): { lightOff: Instant[]; lightOn: Instant[] } {
  const until = end ?? start + day;
  const offTimes = sorted(daily(off.clocks, start, until, zone));
  const onTimes = sorted(daily(on.clocks, start, until, zone));
  const lightOff = [...off.dated];
  if (offTimes.length) {
    const inside = end === null ? offTimes.filter((time) => time >= start).slice(0, 1) : offTimes.filter((time) => time >= start && time <= end);
    const before = offTimes.findLast((time) => time < start);
    const lastOn = [...onTimes, ...on.dated].filter((time) => time <= start).sort((a, b) => a - b).at(-1);
    const startsDark = before !== undefined && lastOn !== undefined && lastOn < before;
    const firstOn = [...onTimes, ...on.dated].filter((time) => time > start).sort((a, b) => a - b)[0];
    const noneInside = before !== undefined && inside.length === 0 && lastOn === undefined && (firstOn === undefined || end === null || firstOn <= end);
    if (startsDark || noneInside) lightOff.push(before);
    if (inside.length) lightOff.push(...inside);
    else if (!startsDark && !noneInside) {
      const next = offTimes.find((time) => time >= start);
      if (next !== undefined) lightOff.push(next);
    }
  }
  const firstOff = lightOff.length ? Math.min(...lightOff) : start;
  const lightOn = [...on.dated];
  if (on.clocks.length) {
    const from = Math.max(start, firstOff);
    const inside = onTimes.filter((time) => time > from && (end !== null ? time <= end : true));
    if (inside.length && end !== null) lightOn.push(...inside);
    else lightOn.push(...on.clocks.map((clock) => compatibleInstant(firstClockAfter(clock, from, zone, true), zone)).sort((a, b) => a - b).slice(0, 1));
  }
  return { lightOff: sorted(lightOff), lightOn: sorted(lightOn) };
}

/** Sun times of every local date from one instant to another. */
function sunOf(place: Place, from: Instant, to: Instant, zone: Zone): SunDay[] {
  if (!place.daylight || !place.latitude || !place.longitude) return [];
  const days = Math.min(mostDays, dayNumber(to, zone) - dayNumber(from, zone));
  const wall = wallTimeOf(from, zone);
  const result: SunDay[] = [];
  for (let offset = 0; offset <= days; offset += 1) {
    const date = addDays({ ...wall, hour: 0, minute: 0, second: 0 }, offset);
    const text = `${String(date.year).padStart(4, '0')}-${String(date.month).padStart(2, '0')}-${String(date.day).padStart(2, '0')}`;
    result.push(inWholeMinutes(sunDay(text, place.latitude.value, place.longitude.value, zone)));
  }
  return result;
}

/** Refraction leaves the sun's times uncertain by about a minute; seconds would be false precision in every text and phase. */
function inWholeMinutes({ date, ...times }: SunDay): SunDay {
  const whole = (instant: Instant | null): Instant | null => (instant === null ? null : Math.round(instant / minute) * minute);
  return { date, dawn: whole(times.dawn), sunrise: whole(times.sunrise), sunset: whole(times.sunset), dusk: whole(times.dusk) };
}

interface Stretch { readonly every: Duration; readonly days: number | null; readonly from: Instant | null; readonly to: Instant | null; readonly node: TextNode }

function readStretch(node: TextNode, start: Instant, names: Readonly<Record<string, readonly Instant[]>>, zone: Zone, collector: Collector): Stretch | null {
  const match = /^\s*(.*?)\s+from\s+(.+?)\s+(?:to|until)\s+(.+?)\s*$/s.exec(node.value);
  const everyText = match ? match[1]! : node.value;
  const every = readDuration(everyText);
  if (every === null || every < 1000) {
    collector.add('bad-duration', node.range, { key: 'every', text: shorten(everyText, 40) });
    return null;
  }
  const days = /^\s*(\d+)\s*(?:d|days?|w|wk|weeks?)\s*$/.test(everyText) ? every / day : null;
  if (!match) return { every, days, from: null, to: null, node };
  const part = (text: string, after: Instant, strictlyAfter: boolean): Instant | null =>
    readInstant({ ...node, value: text }, 'every', scopeOf(zone, after, names, { strictlyAfter }), collector)?.value ?? null;
  const from = part(match[2]!, start, false);
  const to = from === null ? null : part(match[3]!, from, true);
  if (from === null || to === null) return null;
  if (to < from) {
    collector.add('window-backwards', node.range, { key: 'every', text: shorten(node.value, 60) });
    return null;
  }
  return { every, days, from, to, node };
}

/** The times of one stretch, both ends included; whole days keep the clock time. Null when there are too many. */
function slotsOf(stretch: { every: Duration; days: number | null; from: Instant; to: Instant }, zone: Zone): Instant[] | null {
  if ((stretch.to - stretch.from) / stretch.every > mostSlots) return null;
  const result: Instant[] = [];
  const wall = wallTimeOf(stretch.from, zone);
  for (let count = 0; ; count += 1) {
    const slot = stretch.days === null ? stretch.from + count * stretch.every
      : count === 0 ? stretch.from : compatibleInstant(addDays(wall, count * stretch.days), zone);
    if (slot > stretch.to) return result;
    result.push(slot);
  }
}

/** Reads the schedule; null when there is no readable start. */
export function readSchedule(reader: MapReader, place: Place, zone: Zone, collector: Collector): { schedule: Schedule; sun: SunDay[] } | null {
  const startNode = reader.textNode('start');
  const start = startNode && readInstant(startNode, 'start', scopeOf(zone, null, {}), collector);
  if (!startNode || !start) return null;
  const off = readLights(reader, 'light off', start.value, zone, collector);
  const on = readLights(reader, 'light on', start.value, zone, collector);
  const open = planLights(off, on, start.value, null, zone);
  const endNode = reader.textNode('end');
  let end = endNode && readInstant(endNode, 'end', scopeOf(zone, start.value,
    { start: [start.value], 'light-off': open.lightOff.slice(0, 1), 'light-on': open.lightOn.slice(0, 1) }, { strictlyAfter: true }), collector);
  if (endNode && end && end.value <= start.value) {
    collector.add('end-before-start', end.range, { start: formatInstant(start.value, zone), end: formatInstant(end.value, zone) });
    end = null;
  }
  const stop = end ? end.value : null;
  const { lightOff, lightOn } = planLights(off, on, start.value, stop, zone);
  const last = Math.max(stop ?? start.value + day, lightOff.at(-1) ?? 0, stop === null ? (lightOff.at(-1) ?? start.value) + day : 0);
  const sun = sunOf(place, Math.min(start.value, lightOff[0] ?? start.value), Math.min(last, start.value + mostDays * day), zone);
  const names = timesByName({ start: start.value, end: stop, lightOff, lightOn }, sun);
  const sampling: Sampling[] = [];
  const slots: Instant[] = [];
  for (const node of reader.texts('every')) {
    const stretch = readStretch(node, start.value, names, zone, collector);
    if (!stretch) continue;
    const from = stretch.from ?? start.value;
    const to = stretch.to ?? stop;
    if (to === null) continue; // without an end nobody knows how many readings are planned
    const times = slotsOf({ every: stretch.every, days: stretch.days, from, to }, zone);
    if (times === null || slots.length + times.length > mostSlots) {
      collector.add('too-many-slots', node.range, { every: shorten(node.value, 40), most: String(mostSlots) });
      continue;
    }
    sampling.push({ every: stretch.every, from, to, ...(stretch.days === null ? {} : { days: stretch.days }) });
    slots.push(...times);
  }
  return {
    schedule: {
      start: start.value, startRange: start.range, end: stop, sampling, slots: sorted(slots), lightOff, lightOn, range: reader.place,
    },
    sun,
  };
}

export type TimeName = 'start' | 'end' | 'light-off' | 'light-on' | 'sunrise' | 'sunset' | 'dawn' | 'dusk';

/**
 * The instants of each name: those within the run. Lights that go off before it or come on after it count where none
 * falls inside, because they bound the night all the same; sun times outside the run do not.
 */
export function timesByName(schedule: Pick<Schedule, 'start' | 'end' | 'lightOff' | 'lightOn'>, sun: readonly SunDay[]): Record<TimeName, readonly Instant[]> {
  const { start, end } = schedule;
  const stop = end ?? start + day;
  const inside = (times: readonly Instant[]): Instant[] => sorted(times).filter((time) => time >= start && time <= stop);
  const lights = (times: readonly Instant[]): readonly Instant[] => {
    const found = inside(times);
    return found.length ? found : times;
  };
  const sunTimes = (name: 'dawn' | 'sunrise' | 'sunset' | 'dusk'): Instant[] => inside(sun.flatMap((each) => each[name] ?? []));
  return {
    start: [start], end: end === null ? [] : [end], 'light-off': lights(schedule.lightOff), 'light-on': lights(schedule.lightOn),
    dawn: sunTimes('dawn'), sunrise: sunTimes('sunrise'), sunset: sunTimes('sunset'), dusk: sunTimes('dusk'),
  };
}
