// Formulas about levels: the time below or above one, and how far the lowest or highest reading stays from it.
// Levels are those that the sentence, the plan's limits and the named results state.
import { mappedText } from '../../note/mappedText.ts';
import { evaluate } from '../../formula/evaluate.ts';
import type { FormulaContext } from '../../formula/context.ts';
import type { NumberValue } from '../../quantities/types.ts';
import { convert, differenceUnit } from '../../quantities/units.ts';
import { hour, type Instant } from '../../time/instant.ts';
import { fittingUnit, needsNoUnit } from '../compareNumber.ts';
import { hours, type Search } from './search.ts';
import type { Column, Found } from './types.ts';

export interface Level { readonly value: NumberValue; readonly text: string; readonly spoken: boolean }

const levelText = (value: NumberValue): string => (needsNoUnit(value.unit) && value.unit.symbol !== 'pH' ? String(value.value) : `${value.value} ${value.unit.symbol}`);

/** Levels of the sentence, of limits, and of results that are plain quantities, each once. */
export function levelsFor(search: Pick<Search, 'context' | 'words'>, column: Pick<Column, 'unit' | 'quantity'>): Level[] {
  const { context, words } = search;
  const found: Level[] = [];
  const add = (value: NumberValue, text: string, spoken: boolean): void => {
    const unit = fittingUnit(value.unit, column.unit);
    if (!unit || unit.kind !== column.unit.kind) return;
    const level = convert(value.value, unit, column.unit);
    const known = found.findIndex((each) => Math.abs(convert(each.value.value, each.value.unit, column.unit) - level) <= 1e-9 * Math.abs(level));
    if (known < 0) found.push({ value: { ...value, value: value.value }, text, spoken });
    else if (spoken) found[known] = { ...found[known]!, spoken: true };
  };
  for (const { name, value } of constants(context)) add(value, name, false);
  for (const value of words.levels) add(value, levelText(value), true);
  for (const limit of context.protocol?.limits ?? []) {
    if (limit.quantity?.value !== column.quantity) continue;
    for (const value of [limit.atLeast?.value, limit.atMost?.value]) if (value) add(value, levelText(value), false);
  }
  return found;
}

/** Named results that are one quantity: `careful-level = 6 mg/L`. */
function constants(context: FormulaContext): { name: string; value: NumberValue }[] {
  return context.results.flatMap((result) => {
    if (!/^[\s\d.]/u.test(result.formula.text) || /[(+*]/u.test(result.formula.text)) return [];
    const { value } = evaluate(mappedText(result.name), context);
    return value?.type === 'number' ? [{ name: result.name, value }] : [];
  });
}

export function levelFormulas(search: Search, column: Column): void {
  const { match, push } = search;
  const difference = differenceUnit(column.unit);
  const [byTime, byMargin] = [match.fits(hours), match.fits(difference)];
  if (!byTime && !byMargin) return;
  for (const level of levelsFor(search, column)) {
    const at = convert(level.value.value, fittingUnit(level.value.unit, column.unit)!, column.unit);
    const make = (family: Found['family'], formula: string, value: number, unit: Found['unit'], moments: readonly Instant[] = []): Found => (
      { formula, family, places: [column.place], quantity: column.quantity, moments, level: level.value, value, unit });
    if (byTime) {
      const below = timeBelow(column, at, 1);
      const above = timeBelow(column, at, -1);
      if (below > 0 && match.gives(below, hours)) push(make('hours-below', `hours-below(${column.name}, ${level.text})`, below, hours));
      if (above > 0 && match.gives(above, hours)) push(make('hours-above', `hours-above(${column.name}, ${level.text})`, above, hours));
      sinceMoments(search, column, level, at, make);
    }
    if (byMargin) {
      const scale = column.unit.factor / difference.factor;
      let [lowest, highest] = [Infinity, -Infinity];
      for (const value of column.values) { lowest = Math.min(lowest, value); highest = Math.max(highest, value); }
      const gaps: [string, number][] = [[`min(${column.name}) - ${level.text}`, lowest - at], [`${level.text} - max(${column.name})`, at - highest], [`max(${column.name}) - ${level.text}`, highest - at], [`${level.text} - min(${column.name})`, at - lowest]];
      for (const [formula, gap] of gaps) if (gap > 0 && match.gives(gap * scale, difference)) push(make('margin', formula, gap * scale, difference));
    }
  }
}

/** How long after a named moment the level was first passed. */
function sinceMoments({ match, push, moments }: Search, column: Column, level: Level, at: number, make: (family: Found['family'], formula: string, value: number, unit: Found['unit'], moments?: readonly Instant[]) => Found): void {
  for (const [side, name] of [[1, 'first-below'], [-1, 'first-above']] as const) {
    const first = firstPast(column, at, side);
    if (first === null) continue;
    for (const [instant, moment] of moments.names) {
      const since = (first - instant) / hour;
      if (since > 0 && match.gives(since, hours)) push(make('elapsed', `${name}(${column.name}, ${level.text}) - ${moment}`, since, hours, [instant]));
    }
  }
}

/** Time of the first reading below (`side` 1) or above (−1) the level. */
export function firstPast(column: Column, level: number, side: 1 | -1): Instant | null {
  for (let index = 0; index < column.values.length; index += 1) {
    if (side * (level - column.values[index]!) > 1e-9 * Math.abs(level)) return column.times[index]!;
  }
  return null;
}

/** Hours below (`side` 1) or above (−1) the level, readings joined by straight lines. */
function timeBelow(column: Column, level: number, side: 1 | -1): number {
  let total = 0;
  for (let index = 1; index < column.values.length; index += 1) {
    const a = side * (level - column.values[index - 1]!);
    const b = side * (level - column.values[index]!);
    const length = column.times[index]! - column.times[index - 1]!;
    if (a > 0 && b > 0) total += length;
    else if (a > 0 !== b > 0) total += length * Math.max(a, b) / (Math.abs(a) + Math.abs(b) || 1);
  }
  return total / hour;
}
