// Reads the heads of a readings table: `time`, then `tank.quantity@instrument[unit]`, checked against the plan.
import { nearestName } from '../problems/nearest.ts';
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import { measureByName } from '../quantities/measures.ts';
import type { Unit } from '../quantities/types.ts';
import { convertible, nearestUnit, parseUnit } from '../quantities/units.ts';
import type { Token } from './lines.ts';
import { replaceFix, type Complaint, type LocalFix } from './reporter.ts';
import type { ReadingColumn } from './types.ts';

/** A column before its place in the note is known, with what the plan says of it. */
export interface HeadReading {
  readonly column: Omit<ReadingColumn, 'range'>;
  readonly token: Token;
  /** The plan's entry for the quantity; null where the plan has none. */
  readonly measure: MeasuredQuantity | null;
  readonly complaints: readonly Complaint[];
}

/** The `measure` entry of a quantity and instrument: `DO@titration` where the plan has one, else `DO`. */
export function measureFor(protocol: Protocol, quantity: string, instrument: string | null): MeasuredQuantity | null {
  const named = instrument === null ? undefined : protocol.measure.find((entry) => entry.id === `${quantity}@${instrument}`);
  return named ?? protocol.measure.find((entry) => entry.id === quantity) ?? null;
}

/** The unit that the plan gives a quantity: its own, else the usual one of what is measured; null for scales of words. */
export function planUnit(measure: MeasuredQuantity | null): Unit | null {
  if (!measure || measure.scale) return null;
  if (measure.unit) return measure.unit;
  const usual = measure.what ? measureByName(measure.what.value)?.unit ?? null : null;
  return usual === null ? null : parseUnit(usual);
}

/** Parts of a head as typed, or null when it has not the shape `place.quantity`. Offsets are inside the head. */
export function splitHead(text: string): {
  place: string; quantity: string; instrument: string | null; unit: string | null; quantityStart: number; unitStart: number;
} | null {
  const match = /^([^\s.[\]@]+)\.([^\s.[\]@]+)(?:@([^\s.[\]@]+))?(?:\[([^\s[\]]*)\])?$/u.exec(text);
  if (!match) return null;
  const bracket = text.indexOf('[');
  return {
    place: match[1]!, quantity: match[2]!, instrument: match[3] ?? null, unit: match[4] ?? null,
    quantityStart: match[1]!.length + 1, unitStart: bracket < 0 ? text.length : bracket + 1,
  };
}

/** Reads one head. `taken` holds the ids of the columns to its left. */
export function readHead(token: Token, protocol: Protocol, taken: ReadonlySet<string>): HeadReading {
  const range = { start: token.start, end: token.end };
  const parts = splitHead(token.text);
  if (!parts) {
    return {
      column: { id: token.text, place: '', quantity: token.text, instrument: null, unit: null }, token, measure: null,
      complaints: [{ code: 'head-unreadable', range, args: { head: token.text }, fixes: shapeFixes(token, protocol) }],
    };
  }
  const { place, quantity, instrument } = parts;
  const id = `${place}.${quantity}${instrument === null ? '' : `@${instrument}`}`;
  const complaints: Complaint[] = [];
  const places = [...protocol.tanks.map((tank) => tank.id), 'room'];
  const knownPlace = places.includes(place);
  const measure = measureFor(protocol, quantity, instrument);
  if (!knownPlace) complaints.push(unknown(token, 0, place, places, 'tank'));
  if (!measure) {
    const names = [...new Set(protocol.measure.map((entry) => entry.id.split('@')[0]!))];
    complaints.push(unknown(token, parts.quantityStart, quantity, names, 'quantity'));
  }
  if (taken.has(id)) complaints.push({ code: 'column-twice', range, args: { head: id } });
  if (knownPlace && measure && measure.in.length > 0 && !measure.in.some((entry) => entry.value === place)) {
    const planned = measure.in.map((entry) => entry.value);
    const fixes = planned.length === 1
      ? [replaceFix({ start: token.start, end: token.start + place.length }, planned[0]!)] : [];
    complaints.push({ code: 'column-not-planned', range, args: { head: id, quantity, places: planned }, fixes });
  }
  let unit = planUnit(measure);
  if (parts.unit !== null) {
    const at = { start: token.start + parts.unitStart, end: token.start + parts.unitStart + parts.unit.length };
    const typed = parseUnit(parts.unit);
    if (!typed) {
      const near = nearestUnit(parts.unit);
      complaints.push({
        code: 'unknown-unit', range: at, args: { unit: parts.unit, nearest: near ?? '' }, fixes: near === null ? [] : [replaceFix(at, near, { preferred: true })],
      });
      unit = null;
    } else if (unit && !convertible(typed, unit)) {
      complaints.push({ code: 'head-unit-mismatch', range: at, args: { unit: typed.symbol, head: id, planned: unit.symbol }, fixes: [replaceFix(at, unit.symbol)] });
      unit = null;
    } else if (measure?.scale) {
      complaints.push({ code: 'head-unit-mismatch', range: at, args: { unit: typed.symbol, head: id, planned: measure.scale.join(', ') } });
    } else unit = typed;
  }
  return { column: { id, place, quantity, instrument, unit }, token, measure, complaints };
}

function unknown(token: Token, from: number, name: string, names: readonly string[], what: 'tank' | 'quantity'): Complaint {
  const range = { start: token.start + from, end: token.start + from + name.length };
  const near = nearestName(name, names);
  return {
    code: 'column-unknown', range, args: { name, kind: what, known: names },
    fixes: near === null ? [] : [replaceFix(range, near, { preferred: true })],
  };
}

/** For a head that is only a quantity or only lacks its point: the heads that the plan knows. */
function shapeFixes(token: Token, protocol: Protocol): LocalFix[] {
  const bracket = token.text.indexOf('[');
  const name = bracket < 0 ? token.text : token.text.slice(0, bracket);
  const rest = token.text.slice(name.length);
  const measure = protocol.measure.find((entry) => entry.id === name);
  const all = protocol.measure.flatMap((entry) => placesOf(entry, protocol).map((place) => `${place}.${entry.id}`));
  const near = measure ? placesOf(measure, protocol).map((place) => `${place}.${measure.id}`) : [nearestName(name, all)].filter((each) => each !== null);
  return near.slice(0, 6).map((head, index) => replaceFix({ start: token.start, end: token.end }, head + rest, { preferred: index === 0 && near.length === 1 }));
}

/** Where the plan has a quantity measured: the places of its `in`, else every tank. */
export function placesOf(measure: MeasuredQuantity, protocol: Protocol): string[] {
  return measure.in.length > 0 ? measure.in.map((entry) => entry.value) : protocol.tanks.map((tank) => tank.id);
}
