// The methods' paragraph on the plan itself: sealed or changed since, a repeat of which run, and the order of reading.
import type { Protocol } from '../protocol/types.ts';
import type { Note } from '../experiment/types.ts';
import { planDeviations, repeatFacts, sealedTime } from '../protocol/planSeal.ts';
import { formatClock } from '../time/text.ts';
import { dateOf, wordsOf } from './facts.ts';
import type { RunPieces } from './figures.ts';
import { readTimes } from './sampling.ts';

/** Deviations of a sealed plan, and what a repeat changed: every reader is told. */
export function describePlanHistory(note: Note, protocol: Protocol): RunPieces[] {
  return [...describeSeal(note, protocol), ...describeRepeat(protocol)].map((sentence): RunPieces => [sentence]);
}

function describeSeal(note: Note, protocol: Protocol): string[] {
  if (!protocol.sealed) return [];
  const { names, plan: planWords } = wordsOf(protocol);
  const at = sealedTime(protocol);
  const time = at === null ? '' : names.dateAndClock(dateOf(at, protocol), formatClock(at, protocol.zone));
  const deviations = planDeviations(protocol);
  if (deviations) return [planWords.changed({ time, parts: deviations.parts })];
  if (at === null) return [];
  const [first] = readTimes(note);
  return [planWords.kept({ time, before: first !== undefined && at <= first })];
}

function describeRepeat(protocol: Protocol): string[] {
  const repeat = repeatFacts(protocol);
  if (!repeat) return [];
  const { plan: planWords } = wordsOf(protocol);
  const head = planWords.repeats({ name: repeat.name, digest: repeat.digest?.slice(0, 12) ?? '' });
  if (repeat.changed === null) return [planWords.repeatsPlain(head)];
  return [repeat.changed.length === 0 ? planWords.repeatsAlike(head) : planWords.repeatsOther(head, repeat.changed)];
}

/** How the order of reading changed from time to time. */
export function describeOrder(protocol: Protocol): RunPieces[] {
  if (protocol.tanks.length < 2) return [];
  const { plan: planWords } = wordsOf(protocol);
  switch (protocol.orderRule?.value) {
    case 'alternate': return [[planWords.alternating()]];
    case 'random': return [[planWords.drawn(protocol.seed?.value ?? '')]];
    default: return []; // a listed order is told with the sampling
  }
}
