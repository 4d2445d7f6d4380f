// Suggests conditions for a sentence without a number: "the open tank hardly changed", "it fell faster than the other".
// Every suggestion is computed; one that is not true is still shown as such, since then the sentence is what needs a look.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { plainWords } from '../../formula/plainWords.ts';
import { mappedText } from '../../note/mappedText.ts';
import { differenceUnit } from '../../quantities/units.ts';
import type { Unit } from '../../quantities/types.ts';
import type { FindWords, StatementCue } from '../../words/findWords.ts';
import { canonicalFormula } from './canonical.ts';
import { levelsFor } from './levels.ts';
import { momentsOf, stretchBetween, type Moments } from './moments.ts';
import { readSentence } from './sentence.ts';
import { formPattern, wordsIn } from './wordForms.ts';
import type { SentenceReading } from './types.ts';

export interface SuggestedCondition {
  readonly formula: string;
  /** In plain words. */
  readonly words: string;
  /** Whether it is true of the readings. */
  readonly holds: boolean;
}

const mostSuggested = 5;
const patterns = new WeakMap<FindWords, ReadonlyMap<StatementCue, RegExp>>();

function patternsOf(say: FindWords): ReadonlyMap<StatementCue, RegExp> {
  const known = patterns.get(say) ?? new Map(Object.entries(say.statementForms).map(([cue, forms]) => [cue as StatementCue, formPattern(forms)]));
  patterns.set(say, known);
  return known;
}

/** Conditions that the sentence seems to state, those that are true first. Empty where none can be made out. */
export function suggestConditions(sentence: string, context: FormulaContext): SuggestedCondition[] {
  if (!context.protocol || context.dataset.series.size === 0) return [];
  const moments = momentsOf(context);
  const lower = sentence.toLowerCase();
  const words = readSentence(sentence, { start: sentence.length, end: sentence.length }, context, moments);
  const says = (cue: StatementCue): boolean => new RegExp(patternsOf(wordsIn(context)).get(cue)!.source, 'u').test(lower);
  const found: SuggestedCondition[] = [];
  const seen = new Set<string>();
  const offer = (formula: string): void => {
    const key = canonicalFormula(formula, context);
    if (seen.has(key)) return;
    seen.add(key);
    const { value } = evaluate(mappedText(formula), context);
    if (value?.type === 'truth') found.push({ formula, words: plainWords(formula, context), holds: value.truth });
  };
  const order = placesInOrder(lower, words, context, moments);
  for (const quantity of quantitiesFor(order, words, context)) conditions({ says, order, quantity, words, context, moments, offer });
  return found.sort((a, b) => Number(b.holds) - Number(a.holds)).slice(0, mostSuggested);
}

interface Statement {
  readonly says: (cue: StatementCue) => boolean;
  readonly order: readonly string[];
  readonly quantity: string;
  readonly words: SentenceReading;
  readonly context: FormulaContext;
  readonly moments: Moments;
  readonly offer: (formula: string) => void;
}

function conditions({ says, order, quantity, words, context, moments, offer }: Statement): void {
  const [first, second] = order.map((place) => `${place}.${quantity}`);
  if (first === undefined) return;
  const inside = stretchText(words, moments);
  const unit = unitOf(order[0]!, quantity, context);
  const difference = unit ? differenceUnit(unit).symbol : '';
  const zero = unit && difference !== '1' ? `0 ${difference}` : '0';
  if (says('steady')) {
    offer(`not resolved(change(${first}${inside}))`);
    if (unit && unit.kind !== 'temperature' && unit.kind !== 'ph') offer(`abs(percent-change(${first}${inside})) < 5 %`);
    if (second) offer(`range(${first}${inside}) < range(${second}${inside})`);
    return;
  }
  for (const level of unit ? levelsFor({ context, words }, { unit, quantity }) : []) {
    if (says('neverBelow')) offer(`min(${first}${inside}) > ${level.text}`);
    if (says('neverAbove')) offer(`max(${first}${inside}) < ${level.text}`);
    if (says('fell') && says('lower') && !says('than')) offer(`min(${first}${inside}) < ${level.text}`);
  }
  if (second === undefined) {
    if (says('fell')) offer(`fall(${first}${inside}) > ${zero}`);
    if (says('rose')) offer(`rise(${first}${inside}) > ${zero}`);
    return;
  }
  const falling = says('fell');
  const rising = says('rose');
  const sign = says('less') || says('slower') ? '<' : '>';
  if (says('later') || says('earlier')) {
    const later = says('later') ? '>' : '<';
    if (words.cues.has('highest')) offer(`time-of-max(${first}) ${later} time-of-max(${second})`);
    else offer(`time-of-min(${first}) ${later} time-of-min(${second})`);
  }
  if (falling && says('faster')) offer(`rate(${first}${inside}) < rate(${second}${inside})`);
  if (falling && says('slower')) offer(`rate(${first}${inside}) > rate(${second}${inside})`);
  if (rising && says('faster')) offer(`rate(${first}${inside}) > rate(${second}${inside})`);
  if (rising && says('slower')) offer(`rate(${first}${inside}) < rate(${second}${inside})`);
  if (words.cues.has('steepest') || says('faster')) offer(`${rising && !falling ? 'steepest-rise' : 'steepest-fall'}(${first}${inside}) > ${rising && !falling ? 'steepest-rise' : 'steepest-fall'}(${second}${inside})`);
  if (falling) offer(`fall(${first}${inside}) ${sign} fall(${second}${inside})`);
  if (rising) offer(`rise(${first}${inside}) ${sign} rise(${second}${inside})`);
  if (says('higher') || says('lower')) {
    const above = says('higher') ? '>' : '<';
    const window = inside === '' ? '' : inside;
    if (words.cues.has('lowest')) offer(`min(${first}${inside}) ${above} min(${second}${inside})`);
    offer(`all(${first} ${above} ${second}${window})`);
    offer(`mean(${first}${inside}) ${above} mean(${second}${inside})`);
    if (falling) offer(`min(${first}${inside}) ${above} min(${second}${inside})`);
  }
}

/** Tanks in the order of the sentence; "the other tank" is the one not named. */
function placesInOrder(lower: string, words: SentenceReading, context: FormulaContext, moments: Moments): string[] {
  const named = [...words.places].filter(([, weight]) => weight >= 0.5).map(([place]) => place);
  const at = (place: string): number => {
    for (let end = 1; end <= lower.length; end += 1) {
      // The first stretch of the sentence from which the place can be told.
      if (/[\p{L}\p{N}]/u.test(lower[end] ?? ' ')) continue;
      if ((readSentence(lower.slice(0, end), { start: end, end }, context, moments).places.get(place) ?? 0) > 0) return end;
    }
    return lower.length;
  };
  const order = named.length < 2 ? named : named.map((place) => ({ place, at: at(place) })).sort((a, b) => a.at - b.at).map((each) => each.place);
  const tanks = context.protocol?.tanks ?? [];
  if (order.length === 1 && tanks.length === 2 && wordsIn(context).otherTank.test(lower)) {
    const other = tanks.find((tank) => tank.id !== order[0]);
    if (other) order.push(other.id);
  }
  return order;
}

function quantitiesFor(order: readonly string[], words: SentenceReading, context: FormulaContext): string[] {
  const logged = [...context.dataset.series.values()].filter((series) => order.length === 0 || order.includes(series.place) || words.groups.has(order[0]!)).map((series) => series.quantity);
  const known = [...new Set(logged)];
  const named = known.filter((quantity) => (words.quantities.get(quantity) ?? 0) >= 0.6);
  return named.length > 0 ? named : known.slice(0, 1);
}

function unitOf(place: string, quantity: string, context: FormulaContext): Unit | null {
  for (const series of context.dataset.series.values()) if (series.quantity === quantity && (series.place === place || context.protocol?.tanks.every((tank) => tank.id !== place))) return series.unit;
  return null;
}

/** `, dark` or `, light-off..22:30`, where the sentence names one stretch or two moments. */
function stretchText(words: SentenceReading, moments: Moments): string {
  const best = [...words.stretches].filter((each) => each.weight >= 0.5).sort((a, b) => b.weight - a.weight || Number(moments.names.has(b.from) && moments.names.has(b.to)) - Number(moments.names.has(a.from) && moments.names.has(a.to)))[0];
  const digits = new Set(words.moments.filter((each) => each.digits).flatMap((each) => each.instants));
  const named = [...new Set(words.moments.filter((each) => each.weight >= 0.6 && each.instants.length === 1).map((each) => each.instants[0]!))].sort((a, b) => a - b);
  if (named.length === 2) return `, ${stretchBetween(moments, named[0]!, named[1]!, digits).text}`;
  return best && !(best.from === moments.start && best.to === moments.end) ? `, ${stretchBetween(moments, best.from, best.to, digits).text}` : '';
}
