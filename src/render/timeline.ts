// The schedule drawn to scale: dark and twilight, phases, events and planned readings. Places are percentages, so that
// the drawing fits any width while its text keeps its size.
import type { Protocol, Schedule } from '../protocol/types.ts';
import { bandsOf } from '../charts/shading.ts';
import { rowsOf, textWidth, cutText } from '../charts/layout.ts';
import { timeTicks } from '../charts/ticks.ts';
import { hour, minute, type Instant } from '../time/instant.ts';
import { dateWords } from '../charts/chartWords.ts';
import { formatClock, formatDuration } from '../time/text.ts';
import { languageOf } from '../words/languages.ts';
import type { MomentText } from '../words/en/planCard.ts';
import { planWords, type PlanCardWords } from '../words/page.ts';
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

/** Height of the bar, and of a row of labels above it. */
const barHeight = 26;
const labelRow = 16;

/** The plan's time as it is drawn: from when to when, and where the bar begins below the labels. */
interface Stretch { readonly protocol: Protocol; readonly from: Instant; readonly end: Instant; readonly say: PlanCardWords['schedule'] }
interface Bar extends Stretch { readonly top: number }

const shareOf = ({ from, end }: Stretch, instant: Instant): number => (instant - from) / (end - from);
const percent = (share: number): string => `${(share * 100).toFixed(3)}%`;
const at = (stretch: Stretch, instant: Instant): string => percent(Math.min(1, Math.max(0, shareOf(stretch, instant))));
const isInside = ({ from, end }: Stretch) => (instant: Instant): boolean => instant >= from && instant <= end;

/** A text at an instant, turned inwards where it stands nearer to an edge than `edge`, a share of the width. */
const anchorAt = (stretch: Stretch, instant: Instant, edge: number): string => {
  const share = shareOf(stretch, instant);
  return share < edge ? 'start' : share > 1 - edge ? 'end' : 'middle';
};

interface Mark { readonly instant: Instant; readonly text: string; readonly kind: 'lamp' | 'sun' | 'event' }
interface PlacedMark extends Mark { readonly row: number; readonly align: 'left' | 'right' }

export function timelineHtml(protocol: Protocol, words: string): Html {
  const { schedule } = protocol;
  const end = planEnd(protocol);
  if (!schedule || end === null) return '';
  const stretch: Stretch = { protocol, from: schedule.start, end, say: planWords(languageOf(protocol.language)).schedule };
  const marks = placedMarks(stretch, schedule);
  const bar: Bar = { ...stretch, top: Math.max(0, ...marks.map((each) => each.row + 1)) * labelRow + 4 };
  const named = namedPhases(bar);
  const height = bar.top + barHeight + 28 + named.height;
  return element('div', { class: 'evenwater-timeline' },
    element('svg', { width: '100%', height, role: 'img', 'aria-label': words }, element('title', {}, escapeHtml(words)),
      ...bandParts(bar), ...phaseParts(bar), ...slotParts(bar, schedule.slots), ...markParts(bar, marks), ...named.parts, ...tickParts(bar, named.height)));
}

/** Lamps, sun and events with their labels in rows; of many nights the events alone. */
function placedMarks(stretch: Stretch, schedule: Schedule): PlacedMark[] {
  const { protocol, say } = stretch;
  const inside = isInside(stretch);
  const lamps = (instants: readonly Instant[], text: string): Mark[] => instants.filter(inside).map((instant) => ({ instant, text: `${text} ${formatClock(instant, protocol.zone)}`, kind: 'lamp' }));
  const marks: Mark[] = [
    ...lamps(schedule.lightOff, say.lightsOff), ...lamps(schedule.lightOn, say.lightsOn), ...sunMarks(stretch),
    ...protocol.events.filter((event) => inside(event.at)).map((event): Mark => ({ instant: event.at, text: `${event.what} ${formatClock(event.at, protocol.zone)}`, kind: 'event' })),
  ].sort((a, b) => a.instant - b.instant);
  const many = marks.filter((mark) => mark.kind !== 'event').length > 6;
  const labelled = marks.filter((mark) => !many || mark.kind === 'event').slice(0, 10).map((mark) => ({ ...mark, text: cutText(mark.text, 11, plannedWidth - 20) }));
  const rows = rowsOf(labelled.map((mark) => ({ at: shareOf(stretch, mark.instant) * plannedWidth, width: textWidth(mark.text, 11) + 8 })), plannedWidth, 6);
  return labelled.map((mark, index) => ({ ...mark, ...rows[index]! }));
}

/** Sunrise and sunset inside a run of at most three days. */
function sunMarks(stretch: Stretch): Mark[] {
  const { protocol, from, end, say } = stretch;
  if (end - from > 72 * hour || !protocol.place.daylight) return [];
  return protocol.sun.flatMap((day) => (['sunrise', 'sunset'] as const).flatMap((name): Mark[] => {
    const instant = day[name];
    return instant === null || !isInside(stretch)(instant) ? [] : [{ instant, text: `${say[name]} ${formatClock(Math.floor(instant / minute) * minute, protocol.zone)}`, kind: 'sun' }];
  }));
}

function bandParts(bar: Bar): Html[] {
  const { protocol, from, end, top } = bar;
  return [
    element('rect', { class: 'evenwater-bar', x: 0, y: top, width: '100%', height: barHeight }),
    ...bandsOf(protocol, from, end).map((band) => element('rect', {
      class: `evenwater-band-${band.kind}`, x: at(bar, band.from), y: top, width: percent(Math.max(0, (band.to - band.from) / (end - from))), height: barHeight,
    })),
  ];
}

/** The phases of the plan that fall into the drawing, cut to it. Those of single nights are left out. */
function phasesIn({ protocol, from, end }: Bar): { id: string; typed: boolean; first: Instant; last: Instant }[] {
  return protocol.phases.filter(({ id, window }) => window.to > window.from && window.from < end && window.to > from && !/-\d+$/.test(id))
    .map(({ id, typed, window }) => ({ id, typed: typed !== null, first: Math.max(from, window.from), last: Math.min(end, window.to) }));
}

/** The names of the usual phases, in the bar where there is room. */
function phaseParts(bar: Bar): Html[] {
  return phasesIn(bar).slice(0, 6).flatMap(({ id, typed, first, last }) => {
    const name = bar.say.phase(id);
    if (typed || ((last - first) / (bar.end - bar.from)) * plannedWidth < textWidth(name, 11) + 6) return [];
    return [element('text', { class: 'evenwater-phase', x: at(bar, (first + last) / 2), y: bar.top + barHeight / 2 + 4, 'text-anchor': 'middle' }, escapeHtml(name))];
  });
}

/** Planned readings, at most 240 of them. */
function slotParts(bar: Bar, planned: readonly Instant[]): Html[] {
  const slots = planned.filter(isInside(bar));
  const thinned = slots.length > 240 ? slots.filter((_, index) => index % Math.ceil(slots.length / 240) === 0) : slots;
  const y = bar.top + barHeight;
  return thinned.map((slot) => element('line', { class: 'evenwater-slot', x1: at(bar, slot), x2: at(bar, slot), y1: y + 2, y2: y + 9 }));
}

function markParts(bar: Bar, marks: readonly PlacedMark[]): Html[] {
  return marks.filter((mark) => mark.row >= 0).flatMap(({ instant, text, kind, row, align }) => {
    const x = at(bar, instant);
    const y = bar.top - 7 - row * labelRow;
    return [
      element('line', { class: `evenwater-mark-${kind}`, x1: x, x2: x, y1: y - 6, y2: bar.top + barHeight }),
      element('text', { class: `evenwater-label-${kind}`, x, y: y + 2, dx: align === 'left' ? 4 : -4, 'text-anchor': align === 'left' ? 'start' : 'end' }, escapeHtml(text)),
    ];
  });
}

/** Phases with names of the author's own stand below the readings, in rows where they overlap. */
function namedPhases(bar: Bar): { parts: Html[]; height: number } {
  const parts: Html[] = [];
  const ends: Instant[] = [];
  for (const { id, first, last } of phasesIn(bar).filter((phase) => phase.typed).slice(0, 8)) {
    const free = ends.findIndex((each) => each <= first);
    const row = free < 0 ? ends.length : free;
    if (row > 3) continue;
    ends[row] = last;
    const y = bar.top + barHeight + 20 + row * 20;
    const middle = (first + last) / 2;
    const line = (from: Instant, to: Instant, y1: number, y2: number): Html => element('line', { class: 'evenwater-typed-phase', x1: at(bar, from), x2: at(bar, to), y1, y2 });
    parts.push(line(first, last, y, y), line(first, first, y - 3, y + 3), line(last, last, y - 3, y + 3));
    parts.push(element('text', { class: 'evenwater-phase', x: at(bar, middle), y: y + 12, 'text-anchor': anchorAt(bar, middle, 0.08) }, escapeHtml(id)));
  }
  return { parts, height: ends.length === 0 ? 0 : ends.length * 20 + 4 };
}

/** Clock times below it all; days where the run is longer than three. */
function tickParts(bar: Bar, below: number): Html[] {
  const { protocol, from, end, say } = bar;
  const offset = protocol.zone.offsetAt(from);
  const days = end - from > 72 * hour;
  return timeTicks(from + offset, end + offset, 6).map((wall) => wall - offset).map((tick) => element('text', {
    class: 'evenwater-tick', x: at(bar, tick), y: bar.top + barHeight + 23 + below, 'text-anchor': anchorAt(bar, tick, 0.06),
  }, days ? say.shortDay(dateWords(tick, protocol)) : formatClock(tick, protocol.zone)));
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
