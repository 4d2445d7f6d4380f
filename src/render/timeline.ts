// The schedule drawn to scale: dark and twilight, phases, events and planned readings. Places are percentages, so that
// the drawing fits any width while its text keeps its size.
import type { Protocol } from '../protocol/types.ts';
import { bandsOf } from '../charts/shading.ts';
import { rowsOf, textWidth, cutText } from '../charts/layout.ts';
import { timeTicks } from '../charts/ticks.ts';
import { hour, type Instant } from '../time/instant.ts';
import { dateWords } from '../charts/chartWords.ts';
import { formatClock, formatDuration } from '../time/text.ts';
import { languageOf } from '../words/languages.ts';
import type { MomentText } from '../words/en/planCard.ts';
import { planWords } from '../words/page.ts';
import { element, escapeHtml, type Html } from './html.ts';

/** The width for which labels are kept apart: a phone's. Wider drawings have more room, never less. */
const plannedWidth = 330;

/** End of the plan: the stated end, else the last planned reading, else the last event or lamp change. */
function planEnd(protocol: Protocol): Instant | null {
  const { schedule } = protocol;
  if (!schedule) return null;
  const last = schedule.end ?? schedule.slots[schedule.slots.length - 1] ?? Math.max(...schedule.lightOff, ...schedule.lightOn, ...protocol.events.map((event) => event.at));
  return Number.isFinite(last) && last > schedule.start ? last : null;
}

export function timelineHtml(protocol: Protocol, words: string): Html {
  const { schedule } = protocol;
  const say = planWords(languageOf(protocol.language)).schedule;
  const end = planEnd(protocol);
  if (!schedule || end === null) return '';
  const from = schedule.start;
  const span = end - from;
  const at = (instant: Instant): string => `${(Math.min(1, Math.max(0, (instant - from) / span)) * 100).toFixed(3)}%`;
  const long = (first: Instant, last: Instant): string => `${(Math.max(0, (last - first) / span) * 100).toFixed(3)}%`;
  const inside = (instant: Instant): boolean => instant >= from && instant <= end;

  const marks = [
    ...schedule.lightOff.filter(inside).map((instant) => ({ instant, text: `${say.lightsOff} ${formatClock(instant, protocol.zone)}`, kind: 'lamp' })),
    ...schedule.lightOn.filter(inside).map((instant) => ({ instant, text: `${say.lightsOn} ${formatClock(instant, protocol.zone)}`, kind: 'lamp' })),
    ...sunMarks(protocol, from, end).map((mark) => ({ ...mark, kind: 'sun' })),
    ...protocol.events.filter((event) => inside(event.at)).map((event) => ({ instant: event.at, text: `${event.what} ${formatClock(event.at, protocol.zone)}`, kind: 'event' })),
  ].sort((a, b) => a.instant - b.instant);
  const many = marks.filter((mark) => mark.kind !== 'event').length > 6;
  const labelled = marks.filter((mark) => !many || mark.kind === 'event').slice(0, 10).map((mark) => ({ ...mark, text: cutText(mark.text, 11, plannedWidth - 20) }));
  const rows = rowsOf(labelled.map((mark) => ({ at: ((mark.instant - from) / span) * plannedWidth, width: textWidth(mark.text, 11) + 8 })), plannedWidth, 6);
  const most = Math.max(0, ...rows.map((each) => each.row + 1));
  const top = most * 16 + 4;
  const bar = 26;
  const parts: Html[] = [];
  parts.push(element('rect', { class: 'evenwater-bar', x: 0, y: top, width: '100%', height: bar }));
  for (const band of bandsOf(protocol, from, end)) {
    parts.push(element('rect', { class: `evenwater-band-${band.kind}`, x: at(band.from), y: top, width: long(band.from, band.to), height: bar }));
  }
  const phases = protocol.phases.filter((phase) => phase.window.to > phase.window.from && phase.window.from < end && phase.window.to > from && !/-\d+$/.test(phase.id));
  phases.slice(0, 6).forEach((phase) => {
    const first = Math.max(from, phase.window.from);
    const last = Math.min(end, phase.window.to);
    if (((last - first) / span) * plannedWidth < textWidth(say.phase(phase.id), 11) + 6 || phase.typed !== null) return;
    parts.push(element('text', { class: 'evenwater-phase', x: at((first + last) / 2), y: top + bar / 2 + 4, 'text-anchor': 'middle' }, escapeHtml(say.phase(phase.id))));
  });
  const slots = schedule.slots.filter(inside);
  const thinned = slots.length > 240 ? slots.filter((_, index) => index % Math.ceil(slots.length / 240) === 0) : slots;
  for (const slot of thinned) parts.push(element('line', { class: 'evenwater-slot', x1: at(slot), x2: at(slot), y1: top + bar + 2, y2: top + bar + 9 }));
  labelled.forEach((mark, index) => {
    const place = rows[index]!;
    if (place.row < 0) return;
    const y = top - 7 - place.row * 16;
    parts.push(element('line', { class: `evenwater-mark-${mark.kind}`, x1: at(mark.instant), x2: at(mark.instant), y1: y - 6, y2: top + bar }));
    parts.push(element('text', { class: `evenwater-label-${mark.kind}`, x: at(mark.instant), y: y + 2, dx: place.align === 'left' ? 4 : -4, 'text-anchor': place.align === 'left' ? 'start' : 'end' }, escapeHtml(mark.text)));
  });
  // Phases with names of the author's own stand below the readings, in rows where they overlap.
  const typed = phases.filter((phase) => phase.typed !== null).slice(0, 8);
  const ends: Instant[] = [];
  let below = 0;
  for (const phase of typed) {
    const first = Math.max(from, phase.window.from);
    const last = Math.min(end, phase.window.to);
    const free = ends.findIndex((each) => each <= first);
    const row = free < 0 ? ends.length : free;
    if (row > 3) continue;
    ends[row] = last;
    const y = top + bar + 20 + row * 20;
    below = Math.max(below, (row + 1) * 20 + 4);
    parts.push(element('line', { class: 'evenwater-typed-phase', x1: at(first), x2: at(last), y1: y, y2: y }));
    for (const edge of [first, last]) parts.push(element('line', { class: 'evenwater-typed-phase', x1: at(edge), x2: at(edge), y1: y - 3, y2: y + 3 }));
    const middle = (first + last) / 2;
    const share = (middle - from) / span;
    parts.push(element('text', { class: 'evenwater-phase', x: at(middle), y: y + 12, 'text-anchor': share < 0.08 ? 'start' : share > 0.92 ? 'end' : 'middle' }, escapeHtml(phase.id)));
  }
  const offset = protocol.zone.offsetAt(from);
  const days = span > 72 * hour;
  const ticks = timeTicks(from + offset, end + offset, 6).map((wall) => wall - offset);
  ticks.forEach((tick) => {
    const position = (tick - from) / span;
    const anchor = position < 0.06 ? 'start' : position > 0.94 ? 'end' : 'middle';
    parts.push(element('text', { class: 'evenwater-tick', x: at(tick), y: top + bar + 23 + below, 'text-anchor': anchor }, days ? say.shortDay(dateWords(tick, protocol)) : formatClock(tick, protocol.zone)));
  });
  const height = top + bar + 28 + below;
  return element('div', { class: 'evenwater-timeline' },
    element('svg', { width: '100%', height, role: 'img', 'aria-label': words }, element('title', {}, escapeHtml(words)), ...parts));
}

/** Sunrise and sunset inside a run of at most three days. */
function sunMarks(protocol: Protocol, from: Instant, end: Instant): { instant: Instant; text: string }[] {
  if (end - from > 72 * hour || !protocol.place.daylight) return [];
  const say = planWords(languageOf(protocol.language)).schedule;
  return protocol.sun.flatMap((day) => (['sunrise', 'sunset'] as const).flatMap((name) => {
    const instant = day[name];
    return instant === null || instant < from || instant > end ? [] : [{ instant, text: `${say[name]} ${formatClock(Math.floor(instant / 60_000) * 60_000, protocol.zone)}` }];
  }));
}

/** The schedule in words: from when to when, the lights, the readings planned. */
export function scheduleWords(protocol: Protocol): string {
  const { schedule } = protocol;
  const words = planWords(languageOf(protocol.language)).schedule;
  if (!schedule) return words.none;
  const clock = (instant: Instant): string => formatClock(instant, protocol.zone);
  const moment = (instant: Instant): MomentText => ({ clock: clock(instant), date: dateWords(instant, protocol) });
  const end = planEnd(protocol);
  const clocks = (instants: readonly Instant[]): string[] => [...new Set(instants.filter((each) => end === null || each <= end).map(clock))];
  const start = moment(schedule.start);
  return words.sentences({
    start, end: end === null ? null : { ...moment(end), sameDay: moment(end).date === start.date, length: formatDuration(end - schedule.start) },
    lightsOff: clocks(schedule.lightOff), lightsOn: clocks(schedule.lightOn), daily: schedule.lightOff.length > 1,
    stretches: schedule.sampling.map((each) => ({ every: formatDuration(each.every), between: schedule.sampling.length > 1 ? [clock(each.from), clock(each.to)] : null })),
    slots: schedule.slots.length, zone: protocol.zone.name === 'UTC' ? null : protocol.zone.name,
  }).join(' ');
}
