// Phases that follow from lights and sun: baseline, dark and recovery, numbered over several nights.
import type { Instant } from '../time/instant.ts';
import type { Phase, SunDay } from './types.ts';

export interface Night { readonly from: Instant; readonly to: Instant }

/** Dark stretches of the run: from each lights-off to the earlier of the next sunrise and the next lights-on, or the run's end. */
export function nightsOf(start: Instant, end: Instant | null, lightOff: readonly Instant[], lightOn: readonly Instant[], sun: readonly SunDay[]): Night[] {
  const nights: Night[] = [];
  for (const off of lightOff) {
    if (end !== null && off >= end) continue;
    const ends = [...lightOn.filter((on) => on > off), ...sun.flatMap((each) => (each.sunrise !== null && each.sunrise > off ? [each.sunrise] : [])), ...(end === null ? [] : [end])];
    if (ends.length === 0) continue;
    const from = Math.max(off, start);
    const to = Math.min(...ends, end ?? Infinity);
    const before = nights.at(-1);
    // Lamps switched off again while it is still dark belong to the night that runs.
    if (to <= from || (before && from < before.to)) continue;
    nights.push({ from, to });
  }
  return nights;
}

/**
 * `baseline` (start to the first lights-off), `dark`, `recovery` (the rest). Over several nights `dark-1`, `recovery-1`,
 * `dark-2`… Without lights-off there are none. Without an end of the run the last recovery is left out.
 */
export function derivedPhases(start: Instant, end: Instant | null, nights: readonly Night[]): Phase[] {
  const phases: Phase[] = [];
  const first = nights[0];
  if (!first) return phases;
  const numbered = nights.length > 1;
  const add = (id: string, from: Instant, to: Instant): void => { phases.push({ id, window: { from, to }, typed: null }); };
  if (first.from > start) add('baseline', start, first.from);
  const rests = nights.map((night, index) => ({ from: night.to, to: nights[index + 1]?.from ?? end })).filter((rest) => rest.to !== null && rest.to > rest.from);
  nights.forEach((night, index) => {
    add(numbered ? `dark-${index + 1}` : 'dark', night.from, night.to);
    const to = nights[index + 1]?.from ?? end;
    if (to !== null && to > night.to) add(rests.length > 1 ? `recovery-${index + 1}` : 'recovery', night.to, to);
  });
  return phases;
}
