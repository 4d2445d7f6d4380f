// Dark hours and twilight as bands behind a chart, from the lights of the schedule and the sun.
import type { Protocol } from '../protocol/types.ts';
import { day, type Instant } from '../time/instant.ts';

export interface Band { readonly from: Instant; readonly to: Instant; readonly kind: 'dark' | 'twilight' }

interface Stretch { readonly from: Instant; readonly to: Instant }

/** Stretches of lamps off inside a window; null when the schedule says nothing about lamps. */
function lampsOff(protocol: Protocol, from: Instant, to: Instant): Stretch[] | null {
  const schedule = protocol.schedule;
  if (!schedule || (schedule.lightOff.length === 0 && schedule.lightOn.length === 0)) return null;
  const changes = [
    ...schedule.lightOff.map((at) => ({ at, off: true })), ...schedule.lightOn.map((at) => ({ at, off: false })),
  ].sort((a, b) => a.at - b.at);
  const stretches: Stretch[] = [];
  let off = changes[0] ? !changes[0].off : false;
  let since = from;
  for (const change of changes) {
    if (change.off === off) continue;
    if (off && change.at > since) stretches.push({ from: since, to: change.at });
    off = change.off;
    since = Math.max(from, change.at);
  }
  if (off && since < to) stretches.push({ from: since, to });
  return stretches.map((each) => ({ from: Math.max(from, each.from), to: Math.min(to, each.to) })).filter((each) => each.to > each.from);
}

/** Daylight and twilight of the days around a window, cut at its ends, in order; null where no sun times are known. */
function sunStretches(protocol: Protocol, from: Instant, to: Instant): { kind: 'day' | 'twilight' | 'dark'; from: Instant; to: Instant }[] | null {
  const marks: { at: Instant; kind: 'day' | 'twilight' | 'dark' }[] = [];
  for (const each of protocol.sun) {
    if (each.dawn !== null) marks.push({ at: each.dawn, kind: 'twilight' });
    if (each.sunrise !== null) marks.push({ at: each.sunrise, kind: 'day' });
    if (each.sunset !== null) marks.push({ at: each.sunset, kind: 'twilight' });
    if (each.dusk !== null) marks.push({ at: each.dusk, kind: 'dark' });
  }
  if (marks.length === 0) return null;
  marks.sort((a, b) => a.at - b.at);
  const stretches: { kind: 'day' | 'twilight' | 'dark'; from: Instant; to: Instant }[] = [];
  const first = marks[0]!;
  // Before the first mark: what the sun does just before it.
  const isDawn = protocol.sun.some((each) => each.dawn === first.at);
  const before = isDawn ? 'dark' : first.kind === 'dark' ? 'twilight' : first.kind === 'twilight' ? 'day' : 'twilight';
  [{ at: Math.min(from, first.at - day), kind: before } as const, ...marks].forEach((mark, index, all) => {
    const end = all[index + 1]?.at ?? Math.max(to, mark.at + day);
    const start = Math.max(from, mark.at);
    if (Math.min(to, end) > start) stretches.push({ kind: mark.kind, from: start, to: Math.min(to, end) });
  });
  return stretches;
}

/**
 * The dark of the tanks in a window: lamps off and no daylight is `dark`, lamps off in civil twilight is `twilight`.
 * Without lamps in the schedule the sun alone decides; without a place the lamps alone; with neither nothing is shaded.
 */
export function bandsOf(protocol: Protocol, from: Instant, to: Instant): Band[] {
  const lamps = lampsOff(protocol, from, to);
  const sun = protocol.place.daylight ? sunStretches(protocol, from, to) : null;
  if (!sun) return (lamps ?? []).map((each) => ({ ...each, kind: 'dark' as const }));
  const bands: Band[] = [];
  for (const stretch of lamps ?? [{ from, to }]) {
    for (const each of sun) {
      if (each.kind === 'day') continue;
      const start = Math.max(stretch.from, each.from);
      const end = Math.min(stretch.to, each.to);
      if (end > start) bands.push({ from: start, to: end, kind: each.kind });
    }
  }
  return bands;
}

/** A phase that the plan states itself, as far as it lies in a window. */
export interface StatedPhase { readonly id: string; readonly from: Instant; readonly to: Instant }

/** Phases under `phases` of the plan; those that follow from the lights are the dark bands. */
export function statedPhases(protocol: Protocol, from: Instant, to: Instant): StatedPhase[] {
  return protocol.phases.filter((phase) => phase.typed !== null)
    .map(({ id, window }) => ({ id, from: Math.max(from, window.from), to: Math.min(to, window.to) })).filter((phase) => phase.to > phase.from);
}
