// From a protocol block to the plan as typed facts, with every problem at its place.
// A part that cannot be read is reported and left out; the rest stands.
import { nearestName } from '../problems/nearest.ts';
import type { Problem, SourceRange } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { MappedText } from '../note/mappedText.ts';
import type { Block } from '../note/syntax.ts';
import type { Instant, Zone } from '../time/instant.ts';
import { Collector, replaceWith, shorten } from './collector.ts';
import { MapReader } from './mapReader.ts';
import { NameBook } from './names.ts';
import { derivedPhases, nightsOf } from './phases.ts';
import { readTree, type TextNode } from './planTree.ts';
import { readExpectations, readLimits, readMeasures } from './readMeasures.ts';
import { readPlace } from './readPlace.ts';
import { readSchedule, timesByName } from './readSchedule.ts';
import { readTanks, reportUnknownTank } from './readTanks.ts';
import { protocolSchema, schemaAt } from './schema.ts';
import { readInstant, readWindow, scopeOf } from './timeValues.ts';
import { readDurationText } from './values.ts';
import type { EqualiseStep, Phase, Placed, PlanEvent, Protocol, Schedule, StopRule, Tank } from './types.ts';

/**
 * Reads the plan. `protocol` is null only when the block holds no map of keys at all.
 * Places in the plan and in its problems are offsets in the note's text.
 */
export function readProtocol(block: Block): { protocol: Protocol | null; problems: Problem[] } {
  const collector = new Collector();
  const range = toDocumentRange(block.content, { start: 0, end: block.content.text.length });
  const tree = readTree(block.content, collector);
  if (tree?.kind !== 'map') {
    collector.add('plan-without-keys', tree?.range ?? block.infoRange, {});
    return { protocol: null, problems: collector.problems };
  }
  const reader = new MapReader(tree, protocolSchema, block.infoRange, collector);
  return { protocol: readPlan(reader, range, collector), problems: collector.problems };
}

function readPlan(reader: MapReader, range: SourceRange, collector: Collector): Protocol {
  const names = new NameBook(collector);
  const { place, zone, zoneNamed } = readPlace(reader.map('place'), collector);
  if (!zoneNamed && reader.entry('schedule')) {
    collector.add('no-time-zone', reader.entry('place') ? reader.keyRange('place') : reader.keyRange('schedule'), {});
  }
  const tanks = readTanks(reader.map('tanks'), collector, names);
  const measure = readMeasures(reader.map('measure'), collector, names);
  const tankIds = tanks.map((tank) => tank.id);
  for (const quantity of measure) {
    for (const where of quantity.in) if (where.value !== 'room' && !tankIds.includes(where.value)) reportUnknownTank(where, [...tankIds, 'room'], collector);
  }
  for (const tank of tanks) {
    for (const [name, fact] of tank.facts) {
      const quantity = measure.find((each) => each.id === name);
      // `mat.DO` could not tell a fact from a reading. A fact taken over is reported where it stands.
      if (quantity && fact.range.start >= tank.idRange.start) collector.add('name-used-twice', fact.range, { name, kind: 'fact', other: 'quantity' }, [], [{ range: quantity.idRange, message: 'first-used-here', args: { name } }]);
    }
  }
  const scheduleReader = reader.map('schedule');
  const planned = scheduleReader && readSchedule(scheduleReader, place, zone, collector);
  const schedule = planned?.schedule ?? null;
  const sun = planned?.sun ?? [];
  const known = schedule ? timesByName(schedule, sun) : {};
  const events = readEvents(reader, zone, schedule, known, tankIds, names, collector);
  const withEvents = { ...known, ...Object.fromEntries(events.flatMap((event) => (event.id === null ? [] : [[event.id, [event.at]]]))) };
  const derived = schedule ? derivedPhases(schedule.start, schedule.end, nightsOf(schedule.start, schedule.end, schedule.lightOff, schedule.lightOn, sun)) : [];
  const typed = readPhases(reader, zone, schedule, withEvents, derived, names, collector);
  const pairNode = reader.textNode('pair within');
  const publishedNode = reader.textNode('published');
  const orderRule = readOrderRule(reader, tankIds);
  const expect = readExpectations(reader, measure, collector);
  const seal = reader.text('sealed');
  if (seal && !/^\S+\s+sha256:\s*\S+$/.test(seal.value)) collector.add('bad-plan-seal', seal.range, { text: shorten(seal.value, 40) });
  return {
    range, title: reader.text('title'), question: reader.text('question'), hypothesis: reader.text('hypothesis'), by: reader.text('by'),
    language: readLanguage(reader, collector), licence: reader.text('licence'), place, zone, tanks, differs: readDiffers(reader, tanks, collector), schedule, events, measure,
    equalise: readEqualise(reader), phases: [...typed, ...derived], limits: readLimits(reader, measure, collector), stopRules: readStopRules(reader),
    order: orderRule ? [] : readTankList(reader, 'order', tankIds, collector), seed: reader.text('seed'),
    answer: reader.text('answer'), published: publishedNode && readInstant(publishedNode, 'published', scopeOf(zone, schedule?.start ?? null, known), collector),
    ...(orderRule ? { orderRule } : {}), ...(expect.length > 0 ? { expect } : {}),
    pairWithin: (pairNode && readDurationText(pairNode, collector, 'pair within')?.value) || 0,
    repeats: reader.text('repeats'), accepted: placedTexts(reader.texts('accepted', true)), sealed: seal, sun,
  };
}

const placedTexts = (nodes: readonly TextNode[]): Placed<string>[] => nodes.map((node) => ({ value: node.value.trim(), range: node.range }));

function readLanguage(reader: MapReader, collector: Collector): string {
  const node = reader.textNode('language');
  if (!node) return 'en';
  const text = node.value.trim();
  if (/^[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/.test(text)) return text;
  collector.add('unknown-value', node.range, { key: 'language', text: shorten(text, 40), known: ['en', 'nl', 'de', 'fr'], nearest: '' });
  return 'en';
}

function readDiffers(reader: MapReader, tanks: readonly Tank[], collector: Collector): Placed<string>[] {
  const keys = new Set((schemaAt(['tanks', 'TANK'])?.keys ?? []).map((key) => key.key).filter((key) => !['role', 'group', 'label', 'like', 'facts'].includes(key)));
  for (const tank of tanks) for (const fact of tank.facts.keys()) keys.add(fact);
  const result: Placed<string>[] = [];
  for (const each of placedTexts(reader.texts('differs', true))) {
    if (keys.has(each.value)) { result.push(each); continue; }
    const nearest = nearestName(each.value, keys);
    collector.add('unknown-value', each.range, { key: 'differs', text: shorten(each.value, 40), known: [...keys], nearest: nearest ?? '' }, nearest ? [replaceWith(each.range, nearest)] : []);
  }
  return result;
}

function readTankList(reader: MapReader, key: string, tankIds: readonly string[], collector: Collector): Placed<string>[] {
  return placedTexts(reader.texts(key, true)).filter((each) => {
    if (tankIds.includes(each.value)) return true;
    reportUnknownTank(each, tankIds, collector);
    return false;
  });
}

/** `order: alternate` or `order: random`, where no tank has that name. */
function readOrderRule(reader: MapReader, tankIds: readonly string[]): Placed<'alternate' | 'random'> | null {
  const node = reader.entry('order')?.value;
  const word = node?.kind === 'text' ? node.value.trim() : '';
  return node && (word === 'alternate' || word === 'random') && !tankIds.includes(word) ? { value: word, range: node.range } : null;
}

function readEvents(
  reader: MapReader, zone: Zone, schedule: Schedule | null, known: Readonly<Record<string, readonly Instant[]>>, tankIds: readonly string[], names: NameBook, collector: Collector,
): PlanEvent[] {
  const events: PlanEvent[] = [];
  for (const { reader: map, range } of reader.maps('events')) {
    const atNode = map.textNode('at');
    const at = atNode && readInstant(atNode, 'at', scopeOf(zone, schedule?.start ?? null, known), collector);
    const id = map.text('id');
    const usable = id !== null && names.add(id.value, 'event', id.range);
    const tanks = readTankList(map, 'tanks', tankIds, collector);
    if (at) events.push({ id: usable ? id.value : null, at: at.value, atRange: at.range, what: map.text('what')?.value ?? '', tanks, range });
  }
  return events;
}

function readPhases(
  reader: MapReader, zone: Zone, schedule: Schedule | null, known: Readonly<Record<string, readonly Instant[]>>, derived: readonly Phase[], names: NameBook, collector: Collector,
): Phase[] {
  const map = reader.map('phases');
  const phases: Phase[] = [];
  for (const entry of map?.entries() ?? []) {
    const usable = names.add(entry.key, 'phase', entry.keyRange);
    const node = map!.asText(entry.value, entry.key);
    const window = node && node.value.trim() !== '' && readWindow(node, entry.key, scopeOf(zone, schedule?.start ?? null, known),
      (name) => [...phases, ...derived].find((phase) => phase.id === name)?.window ?? null, collector);
    if (usable && window) phases.push({ id: entry.key, window: window.value, typed: { start: entry.keyRange.start, end: window.range.end } });
  }
  return phases.sort((a, b) => a.window.from - b.window.from || a.window.to - b.window.to);
}

const formula = (node: TextNode | null): MappedText | null => (node && node.value.trim() !== '' ? node.mapped : null);

function readEqualise(reader: MapReader): EqualiseStep[] {
  return reader.maps('equalise').map(({ reader: map, range }) => ({
    step: map.text('step')?.value ?? '', why: map.text('why')?.value ?? null, accept: formula(map.textNode('accept')), done: map.text('done'), range,
  }));
}

function readStopRules(reader: MapReader): StopRule[] {
  return reader.maps('stop if').map(({ reader: map, range }) => ({
    when: formula(map.textNode('when')), do: map.text('do')?.value ?? null, outcome: map.text('outcome'), range,
  }));
}
