// The methods' paragraphs on light, sampling planned and done, and departures from the plan.
import type { Note } from '../experiment/types.ts';
import type { Protocol, Schedule } from '../protocol/types.ts';
import { flag } from '../dataset/types.ts';
import { minute, type Instant } from '../time/instant.ts';
import { formatClock } from '../time/text.ts';
import { datedMoment, durationWords, isLong, momentWords, placeName, sameDate, seriesName, wordsOf } from './facts.ts';
import { figure, timeFigure, type RunPieces } from './figures.ts';

export function describeLight(note: Note, protocol: Protocol): RunPieces[] {
  const { schedule } = protocol;
  if (!schedule) return [];
  const { light: lightWords, names } = wordsOf(protocol);
  const sentences: RunPieces[] = [];
  const { lightOff, lightOn } = schedule;
  const clocks = (instants: readonly Instant[]): string[] => [...new Set(instants.map((each) => names.moment(formatClock(each, protocol.zone), null)))];
  const [off] = lightOff;
  const nights = protocol.phases.filter((phase) => phase.typed === null && /^dark(?:-\d+)?$/.test(phase.id));
  if (off === undefined) sentences.push(lightWords.none());
  else if (lightOff.length === 1) {
    const on = lightOn.filter((each) => each > off && (schedule.end === null || each <= schedule.end));
    const offRun = timeFigure('light-off', note.context, protocol) ?? momentWords(off, protocol, false);
    const onRun = on.length === 0 ? null : on.length === 1 && lightOn.length === 1 ? timeFigure('light-on', note.context, protocol) ?? momentWords(on[0]!, protocol, false) : momentWords(on[0]!, protocol, false);
    sentences.push(lightWords.oneNight({ off: offRun, on: onRun }));
    const [dark] = nights;
    const length = dark ? figure(`duration(${dark.id})`, note.context)?.run : undefined;
    if (dark && length) {
      const endsAtSunrise = protocol.sun.some((each) => each.sunrise === dark.window.to) && !lightOn.includes(dark.window.to);
      const sunrise = endsAtSunrise ? timeFigure('sunrise', note.context, protocol) ?? momentWords(dark.window.to, protocol, false) : null;
      if (dark.window.to === schedule.end && !endsAtSunrise && !lightOn.includes(dark.window.to)) sentences.push(lightWords.darkCovered({ length }));
      else sentences.push(sunrise ? lightWords.darkUntilSunrise({ sunrise, length }) : lightWords.darkLength({ length }));
    }
  } else if (clocks(lightOff).length === 1 && clocks(lightOn).length <= 1) {
    sentences.push(lightWords.daily({ off: clocks(lightOff)[0]!, on: clocks(lightOn)[0] ?? null, nights: lightOff.length }));
  } else {
    sentences.push(lightWords.severalTimes({ off: lightOff.map((each) => momentWords(each, protocol, true)), on: lightOn.map((each) => momentWords(each, protocol, true)) }));
  }
  if (!protocol.place.daylight) sentences.push(lightWords.noDaylight());
  return sentences;
}

/** Times with at least one value (of any state) in some column. */
export function readTimes(note: Note): Instant[] {
  const times = new Set<Instant>();
  for (const series of note.dataset.series.values()) series.times.forEach((time, index) => { if ((series.flags[index]! & flag.missing) === 0) times.add(time); });
  return [...times].sort((a, b) => a - b);
}

export function describeSampling(note: Note, protocol: Protocol): RunPieces[] {
  const { schedule } = protocol;
  const taken = readTimes(note);
  const sentences: RunPieces[] = [];
  const { names, sampling: samplingWords } = wordsOf(protocol);
  const date = (instant: Instant): string => datedMoment(instant, protocol);
  const clock = (instant: Instant): string => momentWords(instant, protocol, false);
  const long = isLong(protocol, taken);
  const [first] = taken;
  const last = taken.at(-1);
  if (schedule && schedule.slots.length > 0) {
    const ends = { from: schedule.slots[0]!, to: schedule.end ?? schedule.slots.at(-1)! };
    const every = schedule.sampling.map((each) => (each.from <= ends.from && each.to >= ends.to ? samplingWords.every(durationWords(each.every, protocol))
      : samplingWords.everyBetween(durationWords(each.every, protocol), momentWords(each.from, protocol, long), momentWords(each.to, protocol, long))));
    const from = schedule.slots[0]!;
    const to = schedule.slots.at(-1)!;
    sentences.push(samplingWords.planned({ every, from: date(from),
      to: to === from ? null : sameDate(from, to, protocol) ? clock(to) : date(to), slots: schedule.slots.length }));
    const planned = new Set(schedule.slots);
    const kept = taken.filter((time) => planned.has(time));
    if (first === undefined || last === undefined) sentences.push(samplingWords.none());
    else if (kept.length === schedule.slots.length) sentences.push(samplingWords.allTaken({ slots: kept.length }));
    else if (kept.length > 0) sentences.push(samplingWords.someTaken({ taken: kept.length, slots: schedule.slots.length, first: momentWords(kept[0]!, protocol, long), last: momentWords(kept.at(-1)!, protocol, long) }));
  } else if (first !== undefined && last !== undefined) {
    sentences.push(samplingWords.unplanned({ times: taken.length, first: date(first), last: sameDate(first, last, protocol) ? clock(last) : date(last) }));
  } else sentences.push(samplingWords.none());
  if (protocol.order.length > 1) {
    sentences.push(samplingWords.order({ tanks: protocol.order.map((each) => placeName(each.value, protocol)), seed: protocol.seed?.value ?? null }));
  }
  if (protocol.pairWithin > 0) sentences.push(samplingWords.paired(durationWords(protocol.pairWithin, protocol)));
  const typed = protocol.phases.filter((phase) => phase.typed !== null);
  if (typed.length > 0) {
    sentences.push(samplingWords.phases(typed.map((phase) => samplingWords.phase({
      id: phase.id, window: timeFigure(phase.id, note.context, protocol) ?? names.span(momentWords(phase.window.from, protocol, long), momentWords(phase.window.to, protocol, long)),
    }))));
  }
  for (const table of note.tables) {
    if (!table.file || table.columns.length === 0) continue;
    sentences.push(samplingWords.fromFile({ path: table.file.path, hash: table.file.sha256, columns: table.columns.map((column) => seriesName(column, protocol)) }));
  }
  if (protocol.zone.name !== 'UTC' || taken.length > 0) sentences.push(samplingWords.zone(protocol.zone.name));
  return sentences;
}

const mostNamed = 8;

/** How the times of readings depart from the plan: late start, early end, missed, shifted and further readings. */
export function describeDeviations(note: Note, protocol: Protocol): RunPieces[] {
  const { schedule } = protocol;
  const taken = readTimes(note);
  const [first] = taken;
  const last = taken.at(-1);
  if (!schedule || schedule.slots.length === 0 || first === undefined || last === undefined) return [];
  const long = isLong(protocol, taken);
  const say = (instant: Instant): string => momentWords(instant, protocol, long);
  const { deviations: deviationWords } = wordsOf(protocol);
  const sentences: RunPieces[] = [];
  const slots = schedule.slots;
  const { shifted, extra } = matchTimes(schedule, taken);
  const used = new Set([...taken, ...shifted.map((each) => each.slot)]);
  const start = slots[0]!;
  if (first > start) sentences.push(deviationWords.lateStart({ first: say(first), planned: say(start), by: durationWords(Math.round((first - start) / minute) * minute || first - start, protocol) }));
  const missed = slots.filter((slot) => slot > first && slot < last && !used.has(slot));
  if (missed.length > mostNamed) sentences.push(deviationWords.missedMany({ count: missed.length, first: say(missed[0]!), last: say(missed.at(-1)!) }));
  else if (missed.length > 0) sentences.push(deviationWords.missedTimes(missed.map(say)));
  const late = shifted.filter((each) => each.slot !== start || first <= start);
  if (late.length > 0) sentences.push(deviationWords.shifted(late.slice(0, mostNamed).map((each) => ({ planned: say(each.slot), taken: say(each.taken) }))));
  if (extra.length > mostNamed) sentences.push(deviationWords.extraMany({ count: extra.length }));
  else if (extra.length > 0) sentences.push(deviationWords.extra(extra.map(say)));
  const planned = slots.at(-1)!;
  if (last < planned && !shifted.some((each) => each.slot === planned)) sentences.push(deviationWords.earlyEnd({ last: say(last), planned: say(planned) }));
  return sentences;
}

/** Readings off the planned times: those nearest to an unread slot, within half the step to its neighbours, belong to it. */
function matchTimes(schedule: Schedule, taken: readonly Instant[]): { shifted: { slot: Instant; taken: Instant }[]; extra: Instant[] } {
  const { slots } = schedule;
  const planned = new Set(slots);
  const read = new Set(taken);
  const shifted: { slot: Instant; taken: Instant }[] = [];
  const extra: Instant[] = [];
  for (const time of taken) {
    if (planned.has(time)) continue;
    let best: Instant | null = null;
    for (const slot of slots) if (best === null || Math.abs(slot - time) < Math.abs(best - time)) best = slot;
    const index = best === null ? -1 : slots.indexOf(best);
    const step = Math.min(...[slots[index - 1], slots[index + 1]].filter((each): each is number => each !== undefined).map((each) => Math.abs(each - best!)), Infinity);
    const free = best !== null && !read.has(best) && !shifted.some((each) => each.slot === best);
    if (best !== null && free && Math.abs(best - time) < step / 2) shifted.push({ slot: best, taken: time });
    else extra.push(time);
  }
  return { shifted, extra };
}

