// How well a formula agrees with the words around the number. Simple formulas lead; every word that speaks for a formula adds,
// every moment, tank or happening that the words name and the formula lacks takes away.
import type { NumberValue } from '../../quantities/types.ts';
import type { Cue } from '../../words/findWords.ts';
import { sameLevel } from './matches.ts';
import type { Family, Found, SentenceReading } from './types.ts';

type CueWeights = Partial<Record<Cue, number>>;

/** What each family of formulas hopes to hear, and how far it stands behind a plain reading when nothing is heard. */
const families: Readonly<Record<Family, { readonly behind: number; readonly hears: CueWeights }>> = {
  reading: { behind: 0, hears: { level: 0.8 } },
  first: { behind: 0.2, hears: { first: 2, level: 0.5 } },
  last: { behind: 0.2, hears: { last: 2, level: 0.5 } },
  lowest: { behind: 1, hears: { lowest: 3.5, level: 0.3 } },
  highest: { behind: 1.4, hears: { highest: 3.9, level: 0.3 } },
  mean: { behind: 1.4, hears: { mean: 3.9 } },
  median: { behind: 1, hears: { median: 3.5 } },
  deviation: { behind: 1.2, hears: { deviation: 3.5 } },
  range: { behind: 1.2, hears: { range: 3 } },
  fall: { behind: 1.3, hears: { fall: 3.5 } },
  rise: { behind: 1.3, hears: { rise: 3.5 } },
  'percent-fall': { behind: 0, hears: { fall: 2.5, percent: 0.5 } },
  'percent-rise': { behind: 0, hears: { rise: 2.5, percent: 0.5 } },
  rate: { behind: 0.2, hears: { perHour: 1, fall: 0.8, rise: 0.8, mean: 0.6 } },
  slope: { behind: 1, hears: { slope: 3.5 } },
  steepest: { behind: 0.5, hears: { steepest: 3.5, perHour: 0.3 } },
  difference: { behind: 0.5, hears: { difference: 3 } },
  widest: { behind: 1, hears: { widest: 4, difference: 1 } },
  'mean-difference': { behind: 1.6, hears: { mean: 2, difference: 2 } },
  'percent-difference': { behind: 1.2, hears: { difference: 2.5, share: 1 } },
  compared: { behind: 2, hears: { difference: 2, fall: 0.7, rise: 0.7, lowest: 0.7, highest: 0.7 } },
  ratio: { behind: 1, hears: { times: 3 } },
  'hours-below': { behind: 0.8, hears: { spent: 2, below: 2 } },
  'hours-above': { behind: 0.9, hears: { spent: 2, above: 2 } },
  'first-below': { behind: 0.8, hears: { crossed: 2, below: 2 } },
  'first-above': { behind: 0.8, hears: { crossed: 2, above: 2 } },
  'time-of-lowest': { behind: 0.4, hears: { lowest: 3, moment: 0.3 } },
  'time-of-highest': { behind: 0.4, hears: { highest: 3, moment: 0.3 } },
  moment: { behind: 0.2, hears: { moment: 0.5 } },
  duration: { behind: 0.2, hears: { duration: 2 } },
  elapsed: { behind: 1, hears: { later: 1.5, crossed: 1, below: 0.5 } },
  volume: { behind: 0.2, hears: { volume: 2 } },
  length: { behind: 0.2, hears: { length: 2 } },
  width: { behind: 0.2, hears: { width: 2 } },
  height: { behind: 0.2, hears: { height: 2 } },
  fact: { behind: 0.2, hears: {} },
  count: { behind: 1, hears: { readings: 3 } },
  missed: { behind: 1, hears: { missed: 3 } },
  margin: { behind: 1.3, hears: { margin: 3, below: 0.5, above: 0.5 } },
  special: { behind: 1.2, hears: { respiration: 3, exchange: 3 } },
  result: { behind: 0.6, hears: {} },
};

/** Words so telling that a formula which does not answer them steps back. */
const telling: readonly (readonly [Cue, number])[] = [
  ['lowest', 1.5], ['highest', 1.5], ['mean', 2], ['median', 2], ['deviation', 2], ['steepest', 2], ['slope', 2], ['difference', 1.2], ['fall', 0.8], ['rise', 0.8], ['times', 0.5], ['range', 0.8], ['spent', 0.4], ['widest', 0.4],
];

const levelFamilies = new Set<Family>(['reading', 'first', 'last', 'lowest', 'highest', 'mean', 'median']);
const changeFamilies = new Set<Family>(['fall', 'rise', 'percent-fall', 'percent-rise', 'difference', 'widest', 'compared', 'margin', 'range', 'mean-difference', 'percent-difference']);
const summaryFamilies = new Set<Family>(['lowest', 'highest', 'mean', 'median', 'steepest', 'slope', 'range', 'deviation', 'count']);

export function scoreOf(found: Found, words: SentenceReading, start: number, end: number): number {
  return familyScore(found, words) + placeScore(found, words) + quantityScore(found, words) + timeScore(found, words, start, end) + levelScore(found, words);
}

function familyScore(found: Found, words: SentenceReading): number {
  const { behind, hears } = families[found.family];
  let score = -behind;
  for (const [cue, weight] of Object.entries(hears)) score += weight * (words.cues.get(cue as Cue) ?? 0);
  const isLevel = levelFamilies.has(found.family);
  const isChange = changeFamilies.has(found.family);
  // "fell by 0.3" is a change, "fell to 7.9" a reading; a percentage of saturation is a level too.
  const saysLevel = words.before === 'to' || words.before === 'from' || words.before === 'at';
  for (const [cue, weight] of telling) {
    if (hears[cue] !== undefined) continue;
    if (isLevel && saysLevel && (cue === 'fall' || cue === 'rise')) continue;
    if (found.family === 'steepest' && (cue === 'fall' || cue === 'rise' || cue === 'highest')) continue;
    // A group's column is a mean already.
    if (cue === 'mean' && found.places.some((place) => words.groups.has(place))) continue;
    if (found.family === 'widest' && (cue === 'highest' || cue === 'lowest')) continue;
    score -= weight * (words.cues.get(cue) ?? 0);
  }
  if (saysLevel) score += isLevel ? 1.2 : isChange ? -2 : 0;
  if (words.before === 'by') score += isChange ? 1.2 : isLevel ? -1.5 : 0;
  if (found.family === 'first' && words.before === 'from') score += 0.5;
  return score;
}

/** True when the words say what the formula's family hopes to hear most. */
function heard(found: Found, words: SentenceReading): boolean {
  return Object.entries(families[found.family].hears).some(([cue, weight]) => weight > 1 && (words.cues.get(cue as Cue) ?? 0) >= 0.6);
}

function placeScore(found: Found, words: SentenceReading): number {
  if (found.places.length === 0) return 0;
  const { places, nearest } = words;
  const strongest = Math.max(0, ...places.values());
  let score = 0;
  for (const place of found.places) {
    const weight = places.get(place) ?? 0;
    score += weight > 0 ? 1.8 * weight : place === 'room' ? -1.2 : -2 * strongest;
  }
  score /= Math.sqrt(found.places.length);
  if (found.places.length === 1 && nearest === found.places[0]) score += 0.9;
  // The first operand of a difference is the tank that is said to be higher, most often the one named first or last.
  const unused = [...places].filter(([place, weight]) => !found.places.includes(place) && weight >= 0.6);
  if (found.places.length === 1 && unused.length > 0 && words.cues.has('difference')) score -= 0.4 * unused.length;
  return score;
}

function quantityScore(found: Found, words: SentenceReading): number {
  if (found.quantity === null) return 0;
  const weight = words.quantities.get(found.quantity) ?? 0;
  const derived = ['saturation', 'deficit', 'solubility', 'carbon-dioxide', 'un-ionised-ammonia'].includes(found.quantity);
  if (weight > 0) return 1.5 * weight;
  if (derived) return -2.2;
  const others = Math.max(0, ...words.quantities.values());
  return -1.2 * others;
}

function timeScore(found: Found, words: SentenceReading, start: number, end: number): number {
  let score = 0;
  const within = (instant: number): number => {
    let weight = 0;
    for (const moment of words.moments) if (moment.weight > weight && moment.instants.includes(instant)) weight = moment.weight;
    for (const each of words.days) if (each.weight > weight && instant >= each.from && instant <= each.to) weight = each.weight;
    return weight;
  };
  const isSummary = summaryFamilies.has(found.family);
  const [from, to] = found.moments.length === 2 ? [found.moments[0]!, found.moments[1]!] : [null, null];
  let stretchWeight = 0;
  for (const stretch of words.stretches) if (stretch.from === from && stretch.to === to && stretch.weight > stretchWeight) stretchWeight = stretch.weight;
  if (from === null && found.moments.length === 0) for (const stretch of words.stretches) if (stretch.from === start && stretch.to === end) stretchWeight = Math.max(stretchWeight, stretch.weight);
  for (const instant of found.moments) {
    const weight = Math.max(within(instant), stretchWeight);
    const edge = instant === start || instant === end;
    score += weight > 0 ? 1.8 * weight - 0.3 : found.isResult ? -0.3 : edge ? -1 : -1.7;
  }
  if (found.moments.length === 2) score = score * 0.8 + (stretchWeight > 0 ? 0.8 * stretchWeight : 0);
  if (isSummary && !found.isResult && found.moments.length === 2 && (stretchWeight === 0 || !heard(found, words))) score -= 1;
  // Moments in the words that the formula leaves out; "the lowest came at 06:00" is answered by when it was read.
  const covers = (instants: readonly number[]): boolean => instants.some((instant) => found.moments.includes(instant) || instant === found.reached) || (found.family === 'first' && instants.includes(start)) || (found.family === 'last' && instants.includes(end));
  for (const moment of words.moments) {
    if (covers(moment.instants)) continue;
    const wholeEdge = found.moments.length === 0 && moment.instants.every((instant) => instant === start || instant === end);
    score -= (wholeEdge ? 0.1 : moment.digits ? 1.4 : 0.5) * moment.weight * (moment.weight < 0.5 ? 0.5 : 1);
  }
  for (const each of words.days) {
    if (found.moments.some((instant) => instant >= each.from && instant <= each.to)) continue;
    score -= 1.4 * each.weight;
  }
  return score;
}

function levelScore(found: Found, words: SentenceReading): number {
  if (found.level === null) return 0;
  const level: NumberValue = found.level;
  return words.levels.some((each) => sameLevel(each, level)) ? 2 : -0.6;
}
