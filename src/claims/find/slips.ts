// For a number that nothing gives: the formulas that the words ask for, with what they give, and the typical slip that leads
// from there to the number that was written.
import { evaluate } from '../../formula/evaluate.ts';
import type { Evaluation, FormulaValue } from '../../formula/types.ts';
import { mappedText } from '../../note/mappedText.ts';
import { convert, parseUnit } from '../../quantities/units.ts';
import type { Unit } from '../../quantities/types.ts';
import { fittingUnit, tolerance } from '../compareNumber.ts';
import type { NumberMention } from '../mentions.ts';
import { generate } from './generate.ts';
import type { Search } from './search.ts';
import { planFormulas } from './planFacts.ts';
import type { Found, Slip } from './types.ts';

export interface Near { readonly formula: string; readonly value: FormulaValue; readonly evaluation: Evaluation; readonly score: number; readonly slip: Slip | null }

const mostLooked = 40;
const mostNear = 5;
/** Slips that hardly come about by accident. */
const telling: ReadonlyMap<Slip, number> = new Map([['digits-swapped', 1.5], ['wrong-base', 1.5], ['sea-level', 1.5], ['other-scale', 1.5], ['sign', 0.5], ['factor-ten', -0.5]]);

/** What the words ask for, whatever it gives; what comes near the number, or comes to it by a slip, first. */
export function nearFormulas(search: Search, number: NumberMention, rank: (found: readonly Found[]) => { found: Found; score: number }[]): Near[] {
  const all = new Map<string, Found>();
  const anything = { ...search.match, gives: (value: number, unit: Unit) => search.match.fits(unit) && Number.isFinite(value) && plausible(search.match.shown(value, unit), number) };
  const push = (each: Found): void => { if (!all.has(each.formula)) all.set(each.formula, each); };
  generate({ ...search, match: anything, push });
  planFormulas(search.context, anything, push);
  const near: Near[] = [];
  for (const { found, score } of rank([...all.values()]).slice(0, mostLooked)) {
    const evaluation = evaluate(mappedText(found.formula), search.context);
    const { value } = evaluation;
    if (value?.type !== 'number') continue;
    const shown = search.match.shown(value.value, value.unit);
    if (!Number.isFinite(shown)) continue;
    const slip = slipBetween(found.formula, shown, number, search);
    const distance = Math.abs(shown - number.value) / Math.max(Math.abs(number.value), Math.abs(shown), 1e-12);
    near.push({ formula: found.formula, value, evaluation, score: score - 2.5 + (slip ? telling.get(slip) ?? 0 : -4 * Math.min(1, distance)), slip });
  }
  return near.sort((a, b) => b.score - a.score).slice(0, mostNear);
}

/** Leaves out what lies more than a factor 120 away: no slip leads there. */
function plausible(shown: number, number: NumberMention): boolean {
  const size = Math.abs(number.value);
  return size === 0 || (Math.abs(shown) < 120 * size && Math.abs(shown) * 120 > size);
}

/** The slip that turns the formula's value (in the number's unit) into the number, null when none does. */
export function slipBetween(formula: string, actual: number, number: NumberMention, search: Pick<Search, 'context' | 'match'>): Slip | null {
  const is = (value: number, decimals = number.decimals): boolean => Math.abs(number.value - value) <= tolerance(decimals, value, false);
  if (actual !== 0 && is(-actual)) return 'sign';
  if (digitsSwapped(number, actual)) return 'digits-swapped';
  const other = swappedEnds(formula, search, is);
  if (other) return other;
  if (seaLevel(formula, search, is)) return 'sea-level';
  if (otherScale(number, actual, is)) return 'other-scale';
  for (const factor of [10, 0.1, 100, 0.01]) if (is(actual * factor, number.decimals)) return 'factor-ten';
  return null;
}

/** `7.13` for `7.31`: two neighbouring digits changed places. */
function digitsSwapped(number: NumberMention, actual: number): boolean {
  const written = Math.abs(number.value).toFixed(Math.max(0, number.decimals));
  const right = Math.abs(actual).toFixed(Math.max(0, number.decimals));
  if (written.length !== right.length || written === right) return false;
  const places = [...written].flatMap((digit, index) => (digit === right[index] ? [] : [index]));
  const [a, b] = places;
  if (places.length !== 2 || a === undefined || b === undefined) return false;
  const near = b === a + 1 || (b === a + 2 && written[a + 1] === '.');
  return near && written[a] === right[b] && written[b] === right[a];
}

/** Per cent of the last reading instead of the first, or the stretch read backwards. */
function swappedEnds(formula: string, { context, match }: Pick<Search, 'context' | 'match'>, is: (value: number) => boolean): Slip | null {
  const percent = /^-?percent-(fall|rise|change)\((.+)\)$/u.exec(formula);
  if (percent) {
    const change = numberOf(`change(${percent[2]})`, context);
    const last = numberOf(`last(${percent[2]})`, context);
    if (change && last && last.value !== 0) {
      const wrong = 100 * change.value * change.unit.factor / (last.value * last.unit.factor);
      if (is(Math.abs(wrong))) return 'wrong-base';
    }
    return null;
  }
  const call = /^(fall|rise)\((.+)\)$/u.exec(formula);
  if (!call) return null;
  const turned = numberOf(`${call[1] === 'fall' ? 'rise' : 'fall'}(${call[2]})`, context);
  return turned && is(match.shown(turned.value, turned.unit)) ? 'swapped' : null;
}

function numberOf(formula: string, context: Search['context']): Extract<FormulaValue, { type: 'number' }> | null {
  const { value } = evaluate(mappedText(formula), context);
  return value?.type === 'number' ? value : null;
}

/** Saturation reckoned with the pressure of the sea level instead of that of the place. */
function seaLevel(formula: string, { context, match }: Pick<Search, 'context' | 'match'>, is: (value: number) => boolean): boolean {
  if (!/saturation\([\w@.-]+\)/u.test(formula)) return false;
  const value = numberOf(formula.replace(/saturation\(([\w@.-]+)\)/gu, 'saturation($1, standard-pressure)'), context);
  return value !== null && is(match.shown(value.value, value.unit));
}

/** The digits are degrees of the other scale. */
function otherScale(number: NumberMention, actual: number, is: (value: number) => boolean): boolean {
  const [celsius, fahrenheit] = [parseUnit('degC'), parseUnit('degF')];
  const { unit } = number;
  if (!unit || !celsius || !fahrenheit || unit.kind !== 'temperature') return false;
  const inCelsius = fittingUnit(unit, celsius) !== null && unit.symbol === celsius.symbol;
  return is(inCelsius ? convert(actual, celsius, fahrenheit) : convert(actual, fahrenheit, celsius));
}
