// Formulas for what the plan alone gives: sizes, volumes and facts of tanks; and times of lowest, highest and level passed.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { mappedText } from '../../note/mappedText.ts';
import { convert } from '../../quantities/units.ts';
import { utc } from '../../time/zone.ts';
import { fittingUnit } from '../compareNumber.ts';
import { holdsClock } from '../instants.ts';
import type { ClockMention } from '../mentions.ts';
import { firstPast, levelsFor } from './levels.ts';
import type { Matcher } from './matches.ts';
import type { Moments } from './moments.ts';
import type { Column, Family, Found, SentenceReading } from './types.ts';

/** Volumes, sides and facts that are the number. */
export function planFormulas(context: FormulaContext, match: Matcher, push: (found: Found) => void): void {
  for (const tank of context.protocol?.tanks ?? []) {
    const add = (formula: string, family: Family, quantity: string | null): void => {
      const { value } = evaluate(mappedText(formula), context);
      if (value?.type === 'number' && match.gives(value.value, value.unit)) push({ formula, family, places: [tank.id], quantity, moments: [], level: null, value: value.value, unit: value.unit });
    };
    if (tank.size || tank.volume) add(`volume(${tank.id})`, 'volume', null);
    if (tank.size) for (const side of ['length', 'width', 'height'] as const) add(`${side}(${tank.id})`, side, null);
    for (const fact of tank.facts.keys()) add(`${tank.id}.${fact}`, 'fact', fact);
  }
}

/** Moments that a clock time is: named ones, those of the lowest and highest reading, and those at which a level was passed. */
export function momentFormulas(context: FormulaContext, clock: ClockMention, columns: readonly Column[], moments: Moments, words: SentenceReading, push: (found: Found) => void): void {
  const zone = context.protocol?.zone ?? utc;
  const exact: ClockMention = { ...clock, bound: null };
  const add = (formula: string, family: Family, instant: number, column: Column | null, level: Found['level'] = null): void => {
    if (!holdsClock(exact, instant, zone)) return;
    push({ formula, family, places: column ? [column.place] : [], quantity: column?.quantity ?? null, moments: column ? [] : [instant], level, value: instant, unit: null });
  };
  for (const [instant, name] of moments.names) add(name, 'moment', instant, null);
  for (const column of columns) {
    let lowest = 0;
    let highest = 0;
    for (let index = 1; index < column.values.length; index += 1) {
      if (column.values[index]! < column.values[lowest]!) lowest = index;
      if (column.values[index]! > column.values[highest]!) highest = index;
    }
    add(`time-of-min(${column.name})`, 'time-of-lowest', column.times[lowest]!, column);
    add(`time-of-max(${column.name})`, 'time-of-highest', column.times[highest]!, column);
    for (const phase of moments.phases) {
      if (!/^dark/u.test(phase.text)) continue;
      let least = -1;
      for (let index = 0; index < column.times.length; index += 1) {
        const time = column.times[index]!;
        if (time > phase.from && time <= phase.to && (least < 0 || column.values[index]! < column.values[least]!)) least = index;
      }
      if (least >= 0) add(`time-of-min(${column.name}, ${phase.text})`, 'time-of-lowest', column.times[least]!, column);
    }
    for (const level of levelsFor({ context, words }, column)) {
      const at = convert(level.value.value, fittingUnit(level.value.unit, column.unit)!, column.unit);
      const below = firstPast(column, at, 1);
      const above = firstPast(column, at, -1);
      if (below !== null && below !== column.times[0]) add(`first-below(${column.name}, ${level.text})`, 'first-below', below, column, level.value);
      if (above !== null && above !== column.times[0]) add(`first-above(${column.name}, ${level.text})`, 'first-above', above, column, level.value);
    }
  }
}
