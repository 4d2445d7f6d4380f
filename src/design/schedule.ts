// The schedule: enough readings before the lights go off, an end behind what is awaited, an interval fine enough.
import { fix, type Problem } from '../problems/problem.ts';
import type { Protocol, Schedule, Window } from '../protocol/types.ts';
import { differenceUnit } from '../quantities/units.ts';
import { formatClock, formatDate, formatDuration } from '../time/text.ts';
import { day, hour, minute, type Duration, type Instant } from '../time/instant.ts';
import { addStretch, replaceInSchedule } from './planEdits.ts';
import { finding, finestInterval, lastMoment, sayTime, shown, type Design } from './finding.ts';

/** A plan that reads less often than this follows days, not a night: its phases of one night need no readings of their own. */
const withinTheDay = 3 * hour;
const leastBaseline = 4;
const leastPhase = 3;

/** Position of the first slot that is not before `instant`; slots are sorted. */
function firstSlot(slots: readonly Instant[], instant: Instant): number {
  let low = 0;
  let high = slots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (slots[middle]! < instant) low = middle + 1; else high = middle;
  }
  return low;
}

const slotsIn = ({ slots }: Schedule, { from, to }: Window): number => firstSlot(slots, to + 1) - firstSlot(slots, from);

/** Intervals that keepers use, the longest first. */
const usual: readonly Duration[] = [60, 30, 20, 15, 10, 5, 2, 1].map((count) => count * minute);

const followsTheDay = (schedule: Schedule): boolean => (finestInterval(schedule) ?? Infinity) <= withinTheDay;

/** Fewer than four readings from the start to the first lights-off, both ends counted. */
export function checkBaseline(design: Design): Problem[] {
  const { protocol, text } = design;
  const { schedule } = protocol;
  const off = schedule?.lightOff[0];
  if (!schedule || off === undefined || schedule.slots.length === 0 || !followsTheDay(schedule)) return [];
  if (off <= schedule.start || off - schedule.start > day) return [];
  const count = slotsIn(schedule, { from: schedule.start, to: off });
  if (count >= leastBaseline) return [];
  const interval = usual.find((each) => each * (leastBaseline - 1) <= off - schedule.start);
  return [finding(design, 'few-readings-before-lights-off', schedule.startRange, { count, needed: leastBaseline, time: sayTime(off, protocol) },
    interval === undefined ? [] : [fix('add-stretch', { every: formatDuration(interval) }, addStretch(text, protocol, `${formatDuration(interval)} from start to light-off`), { preferred: true })])];
}

/** The next light after the last lights-off of the run: lamps or sunrise. Null where the plan names neither. */
function awaitedLight(protocol: Protocol, off: Instant): { name: 'lights-on' | 'sunrise'; at: Instant } | null {
  const on = protocol.schedule?.lightOn.find((instant) => instant > off);
  const rise = protocol.sun.flatMap((each) => each.sunrise ?? []).find((instant) => instant > off);
  if (on === undefined && rise === undefined) return null;
  return rise === undefined || (on !== undefined && on <= rise) ? { name: 'lights-on', at: on! } : { name: 'sunrise', at: rise };
}

/** A night that the run leaves before the light comes back, or without a reading after it. */
export function checkEnd(design: Design): Problem[] {
  const { protocol, text } = design;
  const { schedule } = protocol;
  if (!schedule || schedule.end === null || !followsTheDay(schedule)) return [];
  const end = schedule.end;
  const off = schedule.lightOff.filter((instant) => instant >= schedule.start && instant < end).at(-1);
  const light = off === undefined ? null : awaitedLight(protocol, off);
  if (off === undefined || !light || light.at - off > day) return [];
  if (schedule.slots.some((slot) => slot > light.at)) return [];
  const step = finestInterval(schedule) ?? 30 * minute;
  const later = schedule.start + Math.ceil((light.at + hour - schedule.start) / step) * step;
  const { zone } = protocol;
  return [finding(design, 'run-ends-early', schedule.startRange, { end: sayTime(end, protocol), event: light.name, time: sayTime(light.at, protocol) }, [
    fix('end-at', { time: sayTime(later, protocol) }, replaceInSchedule(text, protocol, 'end', () => `${formatDate(later, zone)} ${formatClock(later, zone)}`), { preferred: true }),
  ])];
}

/** Phases with fewer than three planned readings. The baseline has a rule of its own. */
export function checkPhases(design: Design): Problem[] {
  const { protocol, text } = design;
  const { schedule } = protocol;
  if (!schedule || schedule.slots.length === 0) return [];
  return protocol.phases.flatMap((phase): Problem[] => {
    if (phase.typed === null && (phase.id === 'baseline' || phase.id.startsWith('recovery') || !followsTheDay(schedule))) return [];
    const { from, to } = phase.window;
    if (to <= from || to > lastMoment(schedule)) return [];
    const count = slotsIn(schedule, phase.window);
    if (count >= leastPhase) return [];
    const interval = usual.find((each) => each * (leastPhase - 1) <= to - from);
    const name = phase.typed === null ? 'light-off' : null;
    return [finding(design, 'interval-too-coarse', phase.typed ?? schedule.startRange, { phase: phase.id, length: formatDuration(to - from), count },
      interval === undefined || name === null || protocol.schedule!.lightOff.length !== 1 ? []
        : [fix('add-stretch', { every: formatDuration(interval) }, addStretch(text, protocol, `${formatDuration(interval)} from ${name} to ${name} + ${formatDuration(to - from)}`))])];
  });
}

/** The longest time between neighbouring planned readings. */
function longestGap(schedule: Schedule): Duration {
  let longest = 0;
  schedule.slots.forEach((slot, index) => { if (index > 0) longest = Math.max(longest, slot - schedule.slots[index - 1]!); });
  return longest;
}

/** An interval in which the expected rate covers more than the effect that the run is to show. */
export function checkRate(design: Design): Problem[] {
  const { protocol } = design;
  const { schedule } = protocol;
  if (!schedule || schedule.slots.length < 2) return [];
  return (protocol.expect ?? []).flatMap((expectation): Problem[] => {
    const { rate, effect, quantity } = expectation;
    const unit = protocol.measure.find((each) => each.id === quantity.value)?.unit;
    if (!rate || !effect || !unit) return [];
    // Factors lead to base units, with seconds for time.
    const gap = longestGap(schedule);
    const change = rate.value * rate.unit.factor * (gap / 1000);
    const least = effect.value * effect.unit.factor;
    if (change <= least * (1 + 1e-9)) return [];
    const fine = usual.find((each) => rate.value * rate.unit.factor * (each / 1000) <= least);
    return [finding(design, 'interval-coarse-for-rate', expectation.range, {
      quantity: quantity.value, gap: formatDuration(gap), change: shown(change / unit.factor, differenceUnit(unit), protocol), effect: shown(least / unit.factor, differenceUnit(unit), protocol),
    }, fine === undefined ? [] : [fix('read-every', { every: formatDuration(fine) }, replaceInSchedule(design.text, protocol, 'every', (value) => (value.startsWith('[') ? null : formatDuration(fine))), { preferred: true })])];
  });
}
