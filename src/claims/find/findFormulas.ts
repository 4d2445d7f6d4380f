// Finds the formulas that give a number somebody wrote, the likeliest first. Nothing is guessed: what is ambiguous is shown
// with its score, and a number that nothing gives shows what comes near and which slip would explain it.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import type { Evaluation, FormulaValue } from '../../formula/types.ts';
import { mappedText } from '../../note/mappedText.ts';
import { hour } from '../../time/instant.ts';
import { utc } from '../../time/zone.ts';
import { computedText } from '../computedText.ts';
import { holdsClock } from '../instants.ts';
import type { AnyMention, ClockMention, DurationMention, NumberMention } from '../mentions.ts';
import { canonicalFormula } from './canonical.ts';
import { derivedColumns, readColumns } from './columns.ts';
import { generate } from './generate.ts';
import { matcherOf, type Matcher } from './matches.ts';
import { momentsOf, type Moments } from './moments.ts';
import { momentFormulas, planFormulas } from './planFacts.ts';
import { scoreOf } from './rank.ts';
import { hours, momentsInDigits, type Search } from './search.ts';
import { readSentence } from './sentence.ts';
import { nearFormulas, slipBetween } from './slips.ts';
import { resultFormulas } from './namedResults.ts';
import type { Candidate, Column, Found, SentenceReading } from './types.ts';

/** What the search reads once a note: bare columns and moments. Hold it while plan and readings stand, to search many numbers. */
export interface SearchGround { readonly columns: readonly Column[]; readonly moments: Moments }

export function searchGround(context: FormulaContext): SearchGround {
  return { columns: readColumns(context), moments: momentsOf(context) };
}

export interface FindOptions {
  /** At most so many candidates; 8 unless said. */
  readonly most?: number;
  /** From an earlier search of the same context. */
  readonly ground?: SearchGround;
}

/** Below this score a formula that gives the number does so by accident, and what comes near is shown beside it. */
const accident = 0;
const farBehind = 6;
const mostVerified = 40;

/**
 * Candidates for the number at `mention` in `text` (a paragraph of prose, or a claim's words in their sentence), best first.
 * Every candidate that `gives` was computed exactly; the others come near, or explain the number by a slip.
 */
export function findFormulas(text: string, mention: AnyMention, context: FormulaContext, options: FindOptions = {}): Candidate[] {
  // The words before the number stay outside the claim: `never below 6.9` is found as 6.9.
  const number = unbound(asNumber(mention));
  if ((!number && mention.kind !== 'clock') || !context.protocol) return [];
  const ground = options.ground ?? searchGround(context);
  const most = options.most ?? 8;
  const words = readSentence(text, mention, context, ground.moments);
  const found = new Map<string, Found>();
  const push = (each: Found): void => { if (!found.has(each.formula)) found.set(each.formula, each); };
  const match = number ? matcherOf(number) : null;
  const columns = match ? [...ground.columns, ...derivedColumns(context, ground.columns, match.fits)] : [...ground.columns];
  const search: Search | null = match && { context, moments: ground.moments, columns, words, digits: momentsInDigits(words), match, push };
  if (search) {
    generate(search);
    planFormulas(context, search.match, push);
  } else momentFormulas(context, mention as ClockMention, columns, ground.moments, words, push);
  const gives = (value: FormulaValue): boolean => givesMention(value, mention, match, context);
  resultFormulas(context, gives, found);

  const scored = rank([...found.values()], words, ground);
  const candidates: Candidate[] = [];
  const seen = new Set<string>();
  for (const { found: each, score } of scored.slice(0, mostVerified)) {
    // What stands far behind is an accident; where nothing better is there, a few of them are shown.
    if (candidates.length >= most || (candidates.length >= 3 && score < candidates[0]!.score - farBehind) || (candidates.length > 0 && score < -1 && candidates[0]!.score > 3)) break;
    const key = canonicalFormula(each.formula, context);
    if (seen.has(key)) continue;
    const evaluation = evaluate(mappedText(each.formula), context);
    if (!evaluation.value || !gives(evaluation.value)) continue;
    seen.add(key);
    candidates.push(candidateOf(each.formula, evaluation.value, evaluation, score, context, true, otherTank(each, words)));
  }
  if (search && number && (candidates[0]?.score ?? -Infinity) < accident) {
    const near = nearFormulas(search, number, (all) => rank(all, words, ground));
    for (const { formula, value, evaluation, score, slip } of near) {
      if (!candidates.some((each) => each.formula === formula)) candidates.push(candidateOf(formula, value, evaluation, score, context, false, slip));
    }
  }
  return candidates.sort((a, b) => b.score - a.score).slice(0, most);
}

function rank(all: readonly Found[], words: SentenceReading, ground: SearchGround): { found: Found; score: number }[] {
  const { start, end } = ground.moments;
  return all.map((found, index) => ({ found, score: scoreOf(found, words, start, end), index }))
    .sort((a, b) => b.score - a.score || a.found.formula.length - b.found.formula.length || a.index - b.index);
}

function candidateOf(formula: string, value: FormulaValue, evaluation: Evaluation, score: number, context: FormulaContext, gives: boolean, slip: Candidate['slip']): Candidate {
  return { formula, value, text: computedText(value, evaluation, context), score: Math.round(score * 100) / 100, gives, slip };
}

/** The formula that a claim has, with what it gives and the slip that leads from there to the number; null where it gives nothing. */
export function ownCandidate(formula: string, mention: AnyMention, context: FormulaContext): Candidate | null {
  const evaluation = evaluate(mappedText(formula), context);
  if (!evaluation.value) return null;
  const number = unbound(asNumber(mention));
  const match = number ? matcherOf(number) : null;
  const gives = givesMention(evaluation.value, mention, match, context);
  const slip = !gives && number && match && evaluation.value.type === 'number' ? slipBetween(formula, match.shown(evaluation.value.value, evaluation.value.unit), number, { context, match }) : null;
  return { formula, value: evaluation.value, text: computedText(evaluation.value, evaluation, context), score: 0, gives, slip };
}

/** The sentence names one tank, the number is another's; a tank of the sentence before does not count as named. */
function otherTank(found: Found, words: SentenceReading): Candidate['slip'] {
  const [place] = found.places;
  if (found.places.length !== 1 || place === undefined || place === 'room' || (words.places.get(place) ?? 0) > 0.3) return null;
  return Math.max(0, ...words.places.values()) >= 0.6 ? 'other-tank' : null;
}

const unbound = (number: NumberMention | null): NumberMention | null => (number?.bound ? { ...number, bound: null } : number);

/** A length of time of several parts is looked for in hours. */
function asNumber(mention: AnyMention): NumberMention | null {
  if (mention.kind === 'number') return mention;
  if (mention.kind !== 'duration') return null;
  const duration: DurationMention = mention;
  const length = duration.duration / hour;
  const decimals = -Math.log10(Math.max(1, duration.step) / hour);
  return { kind: 'number', start: mention.start, end: mention.end, joinedToNext: false, approximate: mention.approximate, bound: mention.bound, language: mention.language, valueStart: mention.start, valueEnd: mention.end,
    value: length, decimals, sign: '', written: 'digits', mark: '.', grouping: '', unit: hours, unitFromNext: false, unitInList: null, nextWord: '', halfWidth: null };
}

/** True when the exact value is the number as shown. */
export function givesMention(value: FormulaValue, mention: AnyMention, match: Matcher | null, context: FormulaContext): boolean {
  if (mention.kind === 'clock') return (value.type === 'instant' || value.type === 'event') && holdsClock(mention, value.instant, context.protocol?.zone ?? utc);
  if (!match) return false;
  if (value.type === 'duration') return match.gives(value.duration / hour, hours);
  return value.type === 'number' && match.gives(value.value, value.unit);
}
