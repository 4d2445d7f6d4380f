// Reads the words around a number: which tanks, quantities, moments and stretches they name, and what they say happened.
import type { FormulaContext } from '../../formula/context.ts';
import type { NumberValue } from '../../quantities/types.ts';
import type { Cue, FindWords } from '../../words/findWords.ts';
import { plannedNames } from '../claimWords.ts';
import type { AnyMention } from '../mentions.ts';
import { readMentions } from '../readMentions.ts';
import type { Moments } from './moments.ts';
import { readTimes } from './sentenceTimes.ts';
import { readPlaces, readQuantities } from './sentenceNames.ts';
import type { SentenceReading, WeightAt } from './types.ts';
import { formPattern, wordsIn } from './wordForms.ts';

const sentenceEnd = /[.!?]["”)\]]?\s+(?=\S)|\n[ \t>]*\n/g;

/** Where the sentence around a number starts and ends. A point in `9.2` or `a.m.` ends none. */
export function sentenceAround(text: string, start: number, end: number): { start: number; end: number } {
  let from = 0;
  let to = text.length;
  for (const each of text.matchAll(sentenceEnd)) {
    const stop = each.index + each[0].length;
    if (stop <= start) from = stop;
    else if (each.index >= end) { to = each.index + 1; break; }
  }
  return { start: from, end: to };
}

/** Reads the sentence of the number at `mention`, and the one before it with less weight. */
export function readSentence(text: string, mention: { start: number; end: number }, context: FormulaContext, moments: Moments): SentenceReading {
  const say = wordsIn(context);
  const own = sentenceAround(text, mention.start, mention.end);
  const earlier = own.start > 0 ? sentenceAround(text, own.start - 2, own.start - 1).start : 0;
  const words = text.slice(earlier, own.end).toLowerCase();
  const number = { start: mention.start - earlier, end: mention.end - earlier };
  const ownStart = own.start - earlier;
  let clause = { start: ownStart, end: words.length };
  for (const each of words.matchAll(say.clauseEnd)) {
    if (each.index < ownStart) continue;
    if (each.index + each[0].length <= number.start) clause = { ...clause, start: each.index + each[0].length };
    else if (each.index >= number.end) { clause = { ...clause, end: each.index }; break; }
  }
  const weightAt: WeightAt = (start, end) => {
    if (end <= ownStart) return 0.25;
    if (start < number.end && end > number.start) return 0;
    return start >= clause.start && end <= clause.end ? 1 : 0.6;
  };
  const others = readMentions(text.slice(earlier, own.end), { language: context.protocol?.language ?? 'en', names: plannedNames(context) })
    .filter((each) => each.end <= number.start || each.start >= number.end);
  const { places, nearest } = readPlaces(words, { ...number, sentence: ownStart }, weightAt, context);
  return {
    cues: readCues(words, weightAt, say), before: prepositionBefore(words, number.start, say), places, nearest, groups: groupsOf(context),
    quantities: readQuantities(words, weightAt, context), ...readTimes(words, number, others, weightAt, context, moments), levels: levelsIn(others, ownStart),
  };
}

function groupsOf(context: FormulaContext): Set<string> {
  const tanks = context.protocol?.tanks ?? [];
  return new Set(tanks.flatMap((tank) => [tank.group?.value, tank.role?.value].filter((each) => each !== undefined)).filter((name) => !tanks.some((tank) => tank.id === name)));
}

interface CuePattern { readonly cue: Cue; readonly pattern: RegExp }
const cuePatterns = new WeakMap<FindWords, readonly CuePattern[]>();

function cuePatternsOf(say: FindWords): readonly CuePattern[] {
  const known = cuePatterns.get(say) ?? Object.entries(say.cueForms).map(([cue, forms]) => ({ cue: cue as Cue, pattern: formPattern(forms) }));
  cuePatterns.set(say, known);
  return known;
}

function readCues(words: string, weightAt: WeightAt, say: FindWords): Map<Cue, number> {
  const found = new Map<Cue, number>();
  for (const { cue, pattern } of cuePatternsOf(say)) {
    for (const each of words.matchAll(pattern)) {
      const weight = weightAt(each.index, each.index + each[0].length);
      if (weight > (found.get(cue) ?? 0)) found.set(cue, weight);
    }
  }
  return found;
}

/** `by`, `to`, `from`, `at`, `of`: skips `about`, `only`, `as little as` and the sign of a scale. */
function prepositionBefore(words: string, start: number, { beforeNumber, prepositions }: FindWords): string {
  const before = words.slice(Math.max(0, start - 40), start).replace(beforeNumber, '').trimEnd();
  const found = new RegExp(`(?<![\\p{L}])(${Object.keys(prepositions).join('|')})$`, 'u').exec(before)?.[1];
  return found === undefined ? '' : prepositions[found] ?? '';
}

function levelsIn(others: readonly AnyMention[], ownStart: number): NumberValue[] {
  return others.flatMap((each): NumberValue[] => (each.kind === 'number' && each.start >= ownStart && each.unit !== null && each.written === 'digits'
    ? [{ type: 'number', value: each.value, unit: each.unit, contributions: null }] : []));
}
