// The tanks: their keys typed, `like` followed, and every key's text kept for telling tanks apart.
import { nearestName } from '../problems/nearest.ts';
import { compare } from '../quantities/value.ts';
import { replaceWith, shorten, type Collector } from './collector.ts';
import type { MapReader } from './mapReader.ts';
import { MapReader as Reader } from './mapReader.ts';
import type { MapEntry, MapNode, TreeNode } from './planTree.ts';
import { isName, type NameBook } from './names.ts';
import { schemaKey, type SchemaKey } from './schema.ts';
import { readChoice, readQuantity, readSize } from './values.ts';
import type { Placed, Tank } from './types.ts';

const notTakenOver = ['role', 'group', 'label', 'like'];

/** A value on one line, as text. */
function writtenText(node: TreeNode): string {
  if (node.kind === 'text') return node.value.replace(/\s+/g, ' ').trim();
  if (node.kind === 'list') return node.items.map(writtenText).join(', ');
  return node.entries.map((entry) => `${entry.key}: ${writtenText(entry.value)}`).join(', ');
}

interface RawTank { readonly id: string; readonly entry: MapEntry; readonly reader: MapReader; readonly like: Placed<string> | null }

/** A tank is like another one that is like another one… no further than this. */
const longestChain = 50;

/** Tanks from the given one along `like`; `circle` when it leads back to itself or never seems to end. */
function chainOf(tank: RawTank, all: ReadonlyMap<string, RawTank>): { chain: RawTank[]; circle: boolean } {
  const chain = [tank];
  for (let next = tank.like && all.get(tank.like.value); next; next = next.like && all.get(next.like.value)) {
    if (chain.includes(next) || chain.length >= longestChain) return { chain: [...chain, next], circle: true };
    chain.push(next);
  }
  return { chain, circle: false };
}

/** Entries of a tank with those taken over from the tanks it is like; in a circle only its own. */
function resolvedEntries(tank: RawTank, all: ReadonlyMap<string, RawTank>): MapEntry[] {
  const { chain, circle } = chainOf(tank, all);
  if (circle) return tank.reader.entries();
  return chain.reduceRight<MapEntry[]>((taken, each) => overlay(taken, each.reader.entries()), []);
}

/** A tank's own entries over those it takes over. Facts are taken over one by one. */
function overlay(taken: readonly MapEntry[], own: readonly MapEntry[]): MapEntry[] {
  const merged = new Map(taken.filter((entry) => !notTakenOver.includes(entry.key)).map((entry) => [entry.key, entry]));
  for (const entry of own) {
    const before = merged.get(entry.key);
    if (entry.key === 'facts' && before?.value.kind === 'map' && entry.value.kind === 'map') {
      const facts = new Map(before.value.entries.map((each) => [each.key, each]));
      for (const each of entry.value.entries) facts.set(each.key, each);
      merged.set('facts', { ...entry, value: { ...entry.value, entries: [...facts.values()] } });
    } else merged.set(entry.key, entry);
  }
  return [...merged.values()];
}

/** Reads `tanks`. Names that cannot be used are reported and the tank is kept, so that its readings still have a place. */
export function readTanks(reader: MapReader | null, collector: Collector, names: NameBook): Tank[] {
  if (!reader) return [];
  const schema = schemaKey(reader.schema, 'TANK');
  if (!schema) return [];
  const raw = new Map<string, RawTank>();
  for (const entry of reader.entries()) {
    if (entry.key === '') continue;
    names.add(entry.key, 'tank', entry.keyRange);
    const map: MapNode = entry.value.kind === 'map' ? entry.value : { kind: 'map', entries: [], range: entry.value.range };
    if (entry.value.kind !== 'map' && !(entry.value.kind === 'text' && entry.value.value.trim() === '')) reader.wrongType(entry.value, entry.key, 'map');
    const tank = new Reader(map, schema, entry.keyRange, collector);
    raw.set(entry.key, { id: entry.key, entry, reader: tank, like: tank.text('like') });
  }
  for (const tank of raw.values()) checkLike(tank, raw, collector);
  return [...raw.values()].map((tank, index) => readTank(tank, index, raw, schema, collector, names));
}

function checkLike(tank: RawTank, all: ReadonlyMap<string, RawTank>, collector: Collector): void {
  if (!tank.like) return;
  if (!all.has(tank.like.value)) {
    reportUnknownTank(tank.like, [...all.keys()].filter((id) => id !== tank.id), collector);
    return;
  }
  const { chain, circle } = chainOf(tank, all);
  if (circle && (chain.at(-1) === tank || chain.length > longestChain)) collector.add('like-in-a-circle', tank.like.range, { tanks: chain.slice(0, 8).map((each) => each.id) });
}

export function reportUnknownTank(name: Placed<string>, known: readonly string[], collector: Collector): void {
  const nearest = nearestName(name.value, known);
  collector.add('unknown-tank', name.range, { name: shorten(name.value, 40), nearest: nearest ?? '', known }, nearest ? [replaceWith(name.range, nearest)] : []);
}

function readTank(raw: RawTank, index: number, all: ReadonlyMap<string, RawTank>, schema: SchemaKey, collector: Collector, names: NameBook): Tank {
  const entries = resolvedEntries(raw, all);
  const own = new Set(raw.reader.entries());
  // Keys taken over were checked where they stand: their problems are not said twice.
  const quiet = { add: () => undefined, problems: [] } as unknown as Collector;
  const node: MapNode = { kind: 'map', entries, range: raw.reader.node.range };
  const merged = new Reader(node, schema, raw.entry.keyRange, quiet);
  const at = <Value>(key: string, read: (reader: MapReader, to: Collector) => Value | null): Value | null => {
    const entry = merged.entry(key);
    if (!entry) return null;
    const isOwn = own.has(entry) || entry.key === 'facts';
    return read(isOwn ? raw.reader : merged, isOwn ? collector : quiet);
  };
  const quantity = (key: string, like: readonly string[], example: string): Placed<Tank['waterDepth'] & object> | null => at(key, (reader, to) => {
    const text = reader.textNode(key);
    return text && readQuantity(text, to, { key, like, positive: true, example });
  });
  const words = (key: string): Placed<string> | null => at(key, (reader) => reader.text(key));
  const role = at('role', (reader, to) => {
    const text = reader.textNode('role');
    return text && readChoice(text, to, 'role', ['treatment', 'control'] as const);
  });
  const group = words('group');
  if (group) names.add(group.value, 'group', group.range);
  const size = at('size', (reader, to) => {
    const text = reader.textNode('size');
    return text && readSize(text, to);
  });
  const depth = quantity('water depth', ['cm'], '28 cm');
  if (size && depth && own.size > 0) {
    const deeper = compare(depth.value, size.height);
    if (deeper === 1 && (own.has(merged.entry('water depth')!) || own.has(merged.entry('size')!))) collector.add('water-deeper-than-tank', depth.range, { tank: raw.id });
  }
  const volume = quantity('volume', ['L'], '42 L');
  if (volume && size && depth && own.has(merged.entry('volume')!)) collector.add('volume-typed-twice', volume.range, { tank: raw.id });
  const salinity = at('salinity', (reader, to) => {
    const text = reader.textNode('salinity');
    return text && readQuantity(text, to, { key: 'salinity', like: ['g/kg', 'PSU', 'ppt', 'SG', 'g/L', 'mS/cm'], example: '0.2 g/kg' });
  });
  const facts = readFacts(merged, raw.reader, collector, quiet);
  const written = new Map<string, Placed<string>>();
  for (const entry of entries) {
    if (entry.key === 'facts' && entry.value.kind === 'map') {
      for (const fact of entry.value.entries) written.set(fact.key, { value: writtenText(fact.value), range: fact.value.range });
    } else if (writtenText(entry.value) !== '') written.set(entry.key, { value: writtenText(entry.value), range: entry.value.range });
  }
  return {
    id: raw.id, idRange: raw.entry.keyRange, index, role, group, label: words('label')?.value ?? raw.id, size, waterDepth: depth?.value ?? null,
    volume: volume?.value ?? null, runningSince: words('running since'), plants: words('plants'), animals: words('animals'),
    equipment: words('equipment'), salinity, facts, like: raw.like, written,
  };
}

function readFacts(merged: MapReader, own: MapReader, collector: Collector, quiet: Collector): Map<string, Placed<NonNullable<Tank['waterDepth']>>> {
  const facts = new Map<string, Placed<NonNullable<Tank['waterDepth']>>>();
  const entry = merged.entry('facts');
  if (!entry) return facts;
  const ownFacts = own.entry('facts');
  if (entry.value.kind !== 'map') {
    if (ownFacts) own.wrongType(entry.value, 'facts', 'map');
    return facts;
  }
  const ownEntries = new Set(ownFacts?.value.kind === 'map' ? ownFacts.value.entries : []);
  const seen = new Set<string>();
  for (const fact of entry.value.entries) {
    const to = ownEntries.has(fact) ? collector : quiet;
    if (seen.has(fact.key)) { to.add('duplicate-key', fact.keyRange, { key: fact.key }); continue; }
    seen.add(fact.key);
    if (!isName(fact.key)) {
      const tidy = fact.key.trim().replace(/[^\p{L}\p{N}]+/gu, '-');
      to.add('bad-name', fact.keyRange, { name: shorten(fact.key, 40), kind: 'fact' }, isName(tidy) ? [replaceWith(fact.keyRange, tidy)] : []);
      continue;
    }
    const text = fact.value.kind === 'text' ? fact.value : null;
    if (!text) { to.add('wrong-type', fact.value.range, { key: fact.key, expected: 'text', found: fact.value.kind }); continue; }
    const value = readQuantity(text, to, { key: fact.key, example: '120 g' });
    if (value) facts.set(fact.key, value);
  }
  return facts;
}
