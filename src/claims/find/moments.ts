// The moments and stretches of a note that a formula can name, and how it writes them.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { mappedText } from '../../note/mappedText.ts';
import { namedInstants } from '../../protocol/derived.ts';
import { day, type Instant } from '../../time/instant.ts';
import { formatClock, formatDate } from '../../time/text.ts';
import { utc } from '../../time/zone.ts';
import type { Stretch } from './types.ts';

export interface Moments {
  /** Name by instant, for moments that one name means. */
  readonly names: ReadonlyMap<Instant, string>;
  /** Every instant of each name, the several nights included. */
  readonly all: ReadonlyMap<string, readonly Instant[]>;
  readonly phases: readonly Stretch[];
  readonly start: Instant;
  readonly end: Instant;
  /** True when clock times alone do not tell a moment. */
  readonly long: boolean;
  /** As a formula writes it: the name, or the time. */
  text(instant: Instant): string;
  /** The time as digits, whatever its name. */
  clock(instant: Instant): string;
}

const planned = ['light-off', 'light-on', 'start', 'end', 'sunrise', 'sunset', 'dawn', 'dusk'];

export function momentsOf(context: FormulaContext): Moments {
  const { protocol, dataset } = context;
  const zone = protocol?.zone ?? utc;
  const all = new Map<string, readonly Instant[]>();
  const names = new Map<Instant, string>();
  const eventIds = (protocol?.events ?? []).flatMap((event) => (event.id === null ? [] : [event.id]));
  for (const name of protocol ? [...eventIds, ...planned] : []) {
    const instants = namedInstants(protocol!, name);
    all.set(name, instants);
    const { value } = evaluate(mappedText(name), context);
    const instant = value?.type === 'instant' || value?.type === 'event' ? value.instant : null;
    if (instant !== null && !names.has(instant)) names.set(instant, name);
    if (instant !== null && instants.length === 0) all.set(name, [instant]);
  }
  const start = Math.min(protocol?.schedule?.start ?? Infinity, dataset.times[0] ?? Infinity);
  const end = Math.max(protocol?.schedule?.end ?? -Infinity, dataset.times.at(-1) ?? -Infinity);
  const long = Number.isFinite(start) && Number.isFinite(end) && end - start >= day;
  const written = new Map<Instant, string>();
  const clock = (instant: Instant): string => {
    let text = written.get(instant);
    if (text === undefined) {
      text = long ? `${formatDate(instant, zone)}T${formatClock(instant, zone)}` : formatClock(instant, zone);
      written.set(instant, text);
    }
    return text;
  };
  const phases = (protocol?.phases ?? []).map((phase): Stretch => ({
    from: phase.window.from, to: phase.window.to, text: phase.id, named: true, opensAtLightsOff: /^dark(?:-\d+)?$/u.test(phase.id) || (protocol?.schedule?.lightOff.includes(phase.window.from) ?? false),
  }));
  return { names, all, phases, start, end, long, clock, text: (instant) => names.get(instant) ?? clock(instant) };
}

/** `from..to` as a formula writes it. A moment that the sentence gives as digits stays digits. */
export function stretchBetween(moments: Moments, from: Instant, to: Instant, digits: ReadonlySet<Instant>): Stretch {
  const phase = moments.phases.find((each) => each.from === from && each.to === to);
  if (phase) return phase;
  const text = (instant: Instant): string => (digits.has(instant) ? moments.clock(instant) : moments.text(instant));
  return { from, to, text: `${text(from)}..${text(to)}`, named: moments.names.has(from) && moments.names.has(to), opensAtLightsOff: false };
}
