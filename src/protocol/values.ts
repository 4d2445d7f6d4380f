// Typed readers for the plan's texts: numbers, quantities with units, sizes, durations, choices.
// Each says what it could not read and gives null; nothing is guessed.
import { nearestName } from '../problems/nearest.ts';
import { fix } from '../problems/problem.ts';
import { convertible, differenceUnit, nearestUnit, parseUnit } from '../quantities/units.ts';
import type { NumberValue, Unit } from '../quantities/types.ts';
import { readDuration } from '../time/text.ts';
import type { Duration } from '../time/instant.ts';
import { replaceWith, shorten, type Collector } from './collector.ts';
import type { TextNode } from './planTree.ts';
import type { Placed } from './types.ts';

const numberPattern = '[+\\-−]?\\d+(?:[.,]\\d+)?(?:[eE][+-]?\\d+)?';

/** A number with a decimal point; a decimal comma is a problem with a fix and is read all the same. */
function readNumber(text: string, node: TextNode, collector: Collector): number | null {
  const plain = text.replace('−', '-');
  if (plain.includes(',')) {
    const mended = node.value.replace(text, plain.replace(',', '.'));
    collector.add('plan-decimal-comma', node.range, { text: shorten(node.value, 40), mended }, [replaceWith(node.range, mended, { safe: true })]);
  }
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** A unit by name, with the nearest one as fix. `offset` is where it starts in the node's text. */
export function readUnit(text: string, node: TextNode, collector: Collector): Unit | null {
  const unit = parseUnit(text);
  if (unit) return unit;
  const nearest = nearestUnit(text);
  const mended = nearest === null ? null : node.value.trim() === text ? nearest : node.value.replace(new RegExp(`${escape(text)}\\s*$`), () => nearest);
  collector.add('unknown-unit', node.range, { unit: shorten(text, 40), nearest: nearest ?? '' }, mended === null ? [] : [replaceWith(node.range, mended)]);
  return null;
}

const escape = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

export interface QuantityOptions {
  readonly key: string;
  /** Units that the quantity may have: convertible to one of these. */
  readonly like?: readonly string[];
  readonly positive?: boolean;
  /** The unit of a number without one, where that unit is printed as nothing: pH, specific gravity, counts. */
  readonly unwritten?: Unit | null;
  readonly example: string;
}

export function quantityOf(value: number, unit: Unit): NumberValue {
  return { type: 'number', value, unit, contributions: null };
}

/** `28 cm`, `±0.1 mg/L`, `2 %`. */
export function readQuantity(node: TextNode, collector: Collector, options: QuantityOptions): Placed<NumberValue> | null {
  const match = new RegExp(`^\\s*(?:±|\\+/-|\\+-)?\\s*(${numberPattern})\\s*(.*?)\\s*$`, 's').exec(node.value);
  const bad = (): null => {
    collector.add('bad-quantity', node.range, { key: options.key, text: shorten(node.value, 40), example: options.example });
    return null;
  };
  if (!match) return bad();
  const unitText = match[2]!;
  const unwritten = options.unwritten?.print === '' ? options.unwritten : null;
  if (unitText === '' && !unwritten && !(options.like?.includes('1') ?? options.like === undefined)) return bad();
  const unit = unitText === '' ? unwritten ?? parseUnit('1') : readUnit(unitText, node, collector);
  if (!unit) return unitText === '' ? bad() : null;
  const value = readNumber(match[1]!, node, collector);
  if (value === null) return bad();
  if (options.like && !options.like.some((symbol) => { const wanted = parseUnit(symbol); return wanted !== null && convertible(unit, wanted); })) {
    collector.add('unit-does-not-fit', node.range, { key: options.key, unit: unitText || '1', example: options.example });
    return null;
  }
  if (options.positive && !(value > 0)) {
    collector.add('out-of-range', node.range, { key: options.key, text: shorten(node.value, 40), range: ['range-above', '0'] });
    return null;
  }
  return { value: quantityOf(value, unit), range: node.range };
}

/**
 * An accuracy or resolution: a difference in the measured unit, or `%` of the reading. `0.2 degC` becomes a difference of
 * 0.2 K; a pH, printed without a unit, may be written without one: `0.05`.
 */
export function readSpread(node: TextNode, collector: Collector, key: string, unit: Unit | null, example: string): NumberValue | null {
  const bare = /^\s*(?:±|\+\/-|\+-)?\s*\d+(?:[.,]\d+)?\s*$/.test(node.value);
  if (bare && unit && unit.print !== '') {
    collector.add('bad-quantity', node.range, { key, text: shorten(node.value, 40), example: `${node.value.trim()} ${unit.symbol}` },
      [fix('replace-with', { text: `${node.value.trim()} ${unit.symbol}` }, [{ range: node.range, newText: `${node.value.trim()} ${unit.symbol}` }], { preferred: true })]);
    return null;
  }
  const placed = readQuantity(node, collector, { key, example, unwritten: unit });
  if (!placed) return null;
  const { value } = placed;
  // Only a count is exact: an instrument's accuracy of 0 would make every difference a finding.
  const least = (key === 'accuracy' || key === 'resolution') && unit?.symbol !== '1' ? 'range-above' : 'range-at-least';
  if (value.value < 0 || (value.value === 0 && least === 'range-above')) {
    collector.add('out-of-range', node.range, { key, text: shorten(node.value, 40), range: [least, '0'] });
    return null;
  }
  if (value.unit.kind === 'percentage') return value;
  const difference = differenceUnit(value.unit);
  if (unit && !convertible(difference, differenceUnit(unit))) {
    collector.add('unit-does-not-fit', node.range, { key, unit: value.unit.symbol, example });
    return null;
  }
  return quantityOf(value.value, difference);
}

/** `50 x 30 x 32 cm`, `50 cm × 30 cm × 32 cm`. */
export function readSize(node: TextNode, collector: Collector): { length: NumberValue; width: NumberValue; height: NumberValue } | null {
  const part = `(${numberPattern})\\s*([\\p{L}"″]*)`;
  const match = new RegExp(`^\\s*${part}\\s*[x×*]\\s*${part}\\s*[x×*]\\s*${part}\\s*$`, 'u').exec(node.value);
  const bad = (): null => {
    collector.add('bad-size', node.range, { text: shorten(node.value, 40) });
    return null;
  };
  // `x` directly behind a number would be read as its unit: `50x30x32 cm`.
  const tight = match ? null : new RegExp(`^\\s*(${numberPattern})\\s*[x×*]\\s*(${numberPattern})\\s*[x×*]\\s*(${numberPattern})\\s*([\\p{L}]*)\\s*$`, 'u').exec(node.value);
  const parts = match ? [[match[1]!, match[2]!], [match[3]!, match[4]!], [match[5]!, match[6]!]]
    : tight ? [[tight[1]!, ''], [tight[2]!, ''], [tight[3]!, tight[4]!]] : null;
  if (!parts || parts[2]![1] === '') return bad();
  const lastUnit = parts[2]![1]!;
  const values: NumberValue[] = [];
  for (const [number, unitText] of parts) {
    const unit = readUnit(unitText === '' ? lastUnit : unitText!, node, collector);
    if (!unit) return null;
    const metre = parseUnit('cm');
    if (metre && !convertible(unit, metre)) {
      collector.add('unit-does-not-fit', node.range, { key: 'size', unit: unitText || lastUnit, example: '50 x 30 x 32 cm' });
      return null;
    }
    const value = readNumber(number!, node, collector);
    if (value === null) return bad();
    if (!(value > 0)) {
      collector.add('out-of-range', node.range, { key: 'size', text: shorten(node.value, 40), range: ['range-above', '0'] });
      return null;
    }
    values.push(quantityOf(value, unit));
  }
  return { length: values[0]!, width: values[1]!, height: values[2]! };
}

/** `52.51`, `52.51 N`, `6.09° W`. */
export function readCoordinate(node: TextNode, collector: Collector, key: 'latitude' | 'longitude'): Placed<number> | null {
  const limit = key === 'latitude' ? 90 : 180;
  const letters = key === 'latitude' ? 'NS' : 'EW';
  const match = new RegExp(`^\\s*(${numberPattern})\\s*°?\\s*([${letters}])?\\s*$`, 'i').exec(node.value);
  const size = match ? readNumber(match[1]!, node, collector) : null;
  if (!match || size === null) {
    collector.add('bad-number', node.range, { key, text: shorten(node.value, 40), example: key === 'latitude' ? '52.51' : '6.09' });
    return null;
  }
  const value = /[SW]/i.test(match[2] ?? '') ? 0 - size : size;
  if (Math.abs(value) > limit) {
    collector.add('out-of-range', node.range, { key, text: shorten(node.value, 40), range: ['range-degrees', `-${limit}`, String(limit)] });
    return null;
  }
  return { value, range: node.range };
}

export function readDurationText(node: TextNode, collector: Collector, key: string): Placed<Duration> | null {
  const value = readDuration(node.value);
  if (value === null) {
    collector.add('bad-duration', node.range, { key, text: shorten(node.value, 40) });
    return null;
  }
  return { value, range: node.range };
}

/** One of a few words; another word is a problem with the nearest as fix. */
export function readChoice<Word extends string>(node: TextNode, collector: Collector, key: string, words: readonly Word[]): Placed<Word> | null {
  const text = node.value.trim();
  const found = words.find((word) => word === text);
  if (found) return { value: found, range: node.range };
  const nearest = nearestName(text, words);
  collector.add('unknown-value', node.range, { key, text: shorten(text, 40), known: words, nearest: nearest ?? '' }, nearest ? [replaceWith(node.range, nearest)] : []);
  return null;
}
