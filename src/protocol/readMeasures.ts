// What is measured: quantity, unit, instrument, accuracy, scale; and the limits that refer to it.
import { nearestName } from '../problems/nearest.ts';
import { measureByName, nearestMeasure } from '../quantities/measures.ts';
import { convertible, differenceUnit, parseUnit, perHour } from '../quantities/units.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { exactValue } from '../quantities/value.ts';
import { replaceWith, shorten, type Collector } from './collector.ts';
import { criterionByName, criterionNames } from './criteria.ts';
import { MapReader } from './mapReader.ts';
import type { NameBook } from './names.ts';
import type { MapNode, TextNode } from './planTree.ts';
import { readChoice, readQuantity, readSpread, readUnit } from './values.ts';
import type { Expectation, Limit, MeasuredQuantity, Placed } from './types.ts';

/** Reads `measure`. `DO@titration` takes over what and unit from `DO` where it does not say them. */
export function readMeasures(reader: MapReader | null, collector: Collector, names: NameBook): MeasuredQuantity[] {
  const result: MeasuredQuantity[] = [];
  const schema = reader?.schema.entry;
  if (!reader || !schema) return result;
  for (const entry of reader.entries()) {
    if (entry.key === '') continue;
    const base = entry.key.includes('@') ? result.find((each) => each.id === entry.key.split('@')[0]) ?? null : null;
    names.add(entry.key, 'quantity', entry.keyRange);
    const scaled = entry.value.kind === 'map' && entry.value.entries.some((each) => each.key === 'scale');
    const whatText = entry.value.kind === 'map' ? entry.value.entries.find((each) => each.key === 'what')?.value : undefined;
    const known = whatText?.kind === 'text' ? measureByName(whatText.value.trim()) : null;
    const oneUnit = known !== null && (known.unit === null || known.units.length === 1);
    const optional = [...(base ? ['what', 'unit'] : []), ...(scaled || oneUnit ? ['unit'] : [])];
    const map = reader.asMap(entry.value, schema, entry.keyRange, optional);
    if (map) result.push(readMeasure(entry.key, map, base, collector));
    else result.push({ id: entry.key, idRange: entry.keyRange, what: null, unit: null, unitRange: null, with: null, in: [], accuracy: null, resolution: null, calibrated: null, level: null, scale: null });
  }
  return result;
}

function readMeasure(id: string, map: MapReader, base: MeasuredQuantity | null, collector: Collector): MeasuredQuantity {
  const what = readWhat(map, collector) ?? base?.what ?? null;
  const entry = what ? measureByName(what.value) : null;
  const unitNode = map.textNode('unit');
  const scaleNodes = map.texts('scale', true);
  let unit: Unit | null = unitNode ? readUnit(unitNode.value.trim(), unitNode, collector) : base?.unit ?? null;
  if (!unitNode && !unit && entry?.units.length === 1 && entry.unit !== null) unit = parseUnit(entry.unit);
  if (unitNode && unit && entry) {
    const accepted = entry.units.flatMap((symbol) => parseUnit(symbol) ?? []);
    const given = unit;
    if (!accepted.some((each) => convertible(given, each))) {
      collector.add('unit-does-not-fit', unitNode.range, { key: entry.name, unit: given.symbol, example: entry.unit === null ? 'scale: [calm, restless]' : `unit: ${entry.unit}` },
        entry.unit === null ? [] : [replaceWith(unitNode.range, entry.unit)]);
      unit = null;
    }
  }
  const accuracyNode = map.textNode('accuracy');
  const resolutionNode = map.textNode('resolution');
  const levelNode = map.textNode('level');
  const referenceNode = map.textNode('reference temperature');
  const referenceTemperature = referenceNode && readQuantity(referenceNode, collector, { key: 'reference temperature', like: ['degC'], example: '25 degC' });
  const correctedNode = map.textNode('corrected by');
  const correctedBy = correctedNode && readChoice(correctedNode, collector, 'corrected by', ['side by side'] as const);
  const scale = scaleNodes.map((node) => node.value.trim());
  scaleNodes.forEach((node, index) => {
    if (scale.indexOf(scale[index]!) < index) collector.add('scale-word-twice', node.range, { word: scale[index]! });
  });
  return {
    id, idRange: map.place, what, unit, unitRange: unitNode?.range ?? base?.unitRange ?? null, with: map.text('with'),
    in: map.texts('in').map((node) => ({ value: node.value.trim(), range: node.range })),
    accuracy: accuracyNode && readSpread(accuracyNode, collector, 'accuracy', unit, `0.1 ${unit?.symbol ?? 'mg/L'}`),
    resolution: resolutionNode && readSpread(resolutionNode, collector, 'resolution', unit, `0.01 ${unit?.symbol ?? 'mg/L'}`),
    calibrated: map.text('calibrated'), level: levelNode && readChoice(levelNode, collector, 'level', ['station', 'sea'] as const),
    scale: scale.length ? scale : null, ...(correctedBy ? { correctedBy } : {}), ...(referenceTemperature ? { referenceTemperature } : {}),
  };
}

/** The entry of the closed list; another name of it is read as its own name. */
function readWhat(map: MapReader, collector: Collector): Placed<string> | null {
  const node = map.textNode('what');
  if (!node) return null;
  const entry = measureByName(node.value.trim());
  if (entry) return { value: entry.name, range: node.range };
  const nearest = nearestMeasure(node.value.trim());
  collector.add('unknown-quantity', node.range, { what: shorten(node.value, 40), nearest: nearest ?? '' }, nearest ? [replaceWith(node.range, nearest)] : []);
  return null;
}

/** A measured quantity by its short name, or a problem with the nearest. */
function readQuantityId(node: TextNode, measures: readonly MeasuredQuantity[], collector: Collector): Placed<string> | null {
  const id = node.value.trim();
  if (measures.some((each) => each.id === id)) return { value: id, range: node.range };
  const known = measures.map((each) => each.id);
  const nearest = nearestName(id, known);
  collector.add('unknown-measure', node.range, { name: shorten(id, 40), nearest: nearest ?? '', known }, nearest ? [replaceWith(node.range, nearest)] : []);
  return null;
}

/** `for` and `quantity` may be left to the criterion. */
const givenByCriterion = (item: MapNode): readonly string[] => (item.entries.some((entry) => entry.key === 'criterion') ? ['for', 'quantity'] : []);

const milligrams = parseUnit('mg/L');

export function readLimits(reader: MapReader, measures: readonly MeasuredQuantity[], collector: Collector): Limit[] {
  return reader.maps('limits', givenByCriterion).map(({ reader: map, range }) => {
    const criterionNode = map.textNode('criterion');
    const named = criterionNode && (criterionByName(criterionNode.value) ?? criterionByName(readChoice(criterionNode, collector, 'criterion', criterionNames)?.value ?? ''));
    const oxygen = measures.filter((each) => each.what?.value === 'dissolved oxygen' && !each.id.includes('@'));
    const quantityNode = map.textNode('quantity');
    const quantity = quantityNode ? readQuantityId(quantityNode, measures, collector)
      : named && criterionNode && oxygen.length === 1 ? { value: oxygen[0]!.id, range: criterionNode.range } : null;
    if (named && !quantityNode && oxygen.length !== 1) collector.add('missing-key', map.place, { key: 'quantity', of: 'limits', example: `quantity: ${oxygen[0]?.id ?? 'DO'}` });
    const measured = measures.find((each) => each.id === quantity?.value);
    const level = (key: 'at least' | 'at most'): Placed<NumberValue> | null => {
      const node = map.textNode(key);
      const like = measured?.unit ? [measured.unit.symbol] : undefined;
      return node && readQuantity(node, collector, { key, like, unwritten: measured?.unit ?? null, example: `4 ${measured?.unit?.symbol ?? 'mg/L'}` });
    };
    const atLeast = level('at least');
    const atMost = level('at most');
    if (named && criterionNode) {
      if (atLeast || atMost) collector.add('criterion-with-level', (atLeast ?? atMost)!.range, { criterion: named.name, key: atLeast ? 'at least' : 'at most' });
      const fits = measured?.what?.value === 'dissolved oxygen' && (!measured.unit || !milligrams || convertible(measured.unit, milligrams));
      if (measured && !fits) collector.add('unit-does-not-fit', criterionNode.range, { key: 'criterion', unit: measured.unit?.symbol ?? measured.what?.value ?? measured.id, example: 'quantity: DO' });
      const minimum = named.parts.find((each) => each.part === 'minimum');
      return {
        for: map.text('for')?.value ?? named.for, quantity, atMost: null, source: named.source, criterion: named, range,
        atLeast: minimum && milligrams && fits ? { value: exactValue(minimum.atLeast, milligrams), range: criterionNode.range } : null,
      };
    }
    if (!criterionNode && map.entry('at least') === null && map.entry('at most') === null) {
      collector.add('missing-key', map.place, { key: 'at least', of: 'limits', example: `at least: 4 ${measured?.unit?.symbol ?? 'mg/L'}` });
    }
    return { for: map.text('for')?.value ?? '', quantity, atLeast, atMost, source: map.text('source')?.value ?? null, range };
  });
}

/** Reads `expect`: a difference in the quantity's unit, and an amount of it per hour. */
export function readExpectations(reader: MapReader, measures: readonly MeasuredQuantity[], collector: Collector): Expectation[] {
  return reader.maps('expect').flatMap(({ reader: map, range }): Expectation[] => {
    const quantityNode = map.textNode('quantity');
    const quantity = quantityNode && readQuantityId(quantityNode, measures, collector);
    const unit = measures.find((each) => each.id === quantity?.value)?.unit ?? null;
    const effectNode = map.textNode('effect');
    const effect = effectNode && readSpread(effectNode, collector, 'effect', unit, `0.5 ${unit?.symbol ?? 'mg/L'}`);
    const rateNode = map.textNode('rate');
    const rate = rateNode && readRate(rateNode, collector, unit);
    return quantity ? [{ quantity, effect, rate, range }] : [];
  });
}

/** `0.4 mg/L/h`; a rate of another quantity is a problem. */
function readRate(node: TextNode, collector: Collector, unit: Unit | null): NumberValue | null {
  const hourly = unit && perHour(differenceUnit(unit));
  const example = `0.4 ${unit?.symbol ?? 'mg/L'}/h`;
  const rate = readQuantity(node, collector, { key: 'rate', example, positive: true })?.value ?? null;
  if (!rate || !hourly) return rate;
  const fits = convertible(rate.unit, hourly) || convertible(rate.unit, perHour(unit));
  if (!fits) collector.add('unit-does-not-fit', node.range, { key: 'rate', unit: rate.unit.symbol, example });
  return fits ? rate : null;
}
