// Finds formulas that give a number somebody wrote: readings at a time, lowest and highest, changes over phases, plan facts.
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import type { FormulaValue } from '../formula/types.ts';
import { mappedText } from '../note/mappedText.ts';
import { convert, convertible, differenceUnit, parseUnit } from '../quantities/units.ts';
import type { Unit } from '../quantities/types.ts';
import { flag, type Series } from '../dataset/types.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { day, hour, type Instant } from '../time/instant.ts';
import { utc } from '../time/zone.ts';
import { fittingUnit, holdsNumber, isTimeUnit } from './compareNumber.ts';
import { holdsClock } from './instants.ts';
import type { AnyMention, NumberMention } from './mentions.ts';

export interface Candidate {
  readonly formula: string;
  readonly value: FormulaValue;
  /** Words near the number that speak for this formula. */
  readonly cues: readonly string[];
}

const mostCandidates = 400;

/** Formulas worth trying for any number of the note, made once. Single readings and their differences are looked up by value. */
export function candidatesOf(context: FormulaContext): Candidate[] {
  const { protocol } = context;
  const found: Candidate[] = [];
  const seen = new Set<string>();
  const add = (formula: string, cues: readonly string[]): void => {
    if (seen.has(formula) || seen.size >= mostCandidates) return;
    seen.add(formula);
    const { value, problems } = evaluate(mappedText(formula), context);
    if (value && !problems.some((each) => each.severity === 'error')) found.push({ formula, value, cues });
  };
  for (const result of context.results) add(result.name, result.name.split('-'));
  for (const name of ['light-off', 'light-on', 'sunrise', 'sunset', 'start', 'end', 'dawn', 'dusk']) add(name, [name.replace('-', ' '), name.replace('light', 'lights'), name.replace('light', 'lamps').replace('-', ' ')]);
  for (const event of protocol?.events ?? []) if (event.id) add(event.id, [...event.id.split('-'), ...event.what.split(/\s+/)]);
  const phases = (protocol?.phases ?? []).map((phase) => phase.id);
  for (const phase of phases) add(`duration(${phase})`, [phase]);
  for (const series of context.dataset.series.values()) {
    const cues = seriesCues(series, context);
    add(`min(${series.id})`, [...cues, 'lowest', 'minimum', 'least', 'low']);
    add(`max(${series.id})`, [...cues, 'highest', 'maximum', 'most', 'peak']);
    add(`mean(${series.id})`, [...cues, 'mean', 'average']);
    add(`time-of-min(${series.id})`, [...cues, 'lowest', 'minimum']);
    add(`time-of-max(${series.id})`, [...cues, 'highest', 'maximum', 'peak']);
    for (const phase of ['', ...phases]) {
      const window = phase === '' ? '' : `, ${phase}`;
      const more = phase === '' ? cues : [...cues, phase, ...(phase.startsWith('dark') ? ['night', 'overnight'] : [])];
      add(`fall(${series.id}${window})`, [...more, 'fell', 'fall', 'lost', 'loss', 'dropped', 'sank', 'declined']);
      add(`rise(${series.id}${window})`, [...more, 'rose', 'rise', 'gained', 'gain', 'climbed']);
      add(`percent-fall(${series.id}${window})`, [...more, 'fell', 'fall', 'lost', 'loss', 'dropped']);
      add(`percent-rise(${series.id}${window})`, [...more, 'rose', 'rise', 'gained', 'gain']);
      add(`rate(${series.id}${window})`, [...more, 'rate', 'hour', 'hourly']);
      if (phase !== '') { add(`min(${series.id}${window})`, [...more, 'lowest', 'minimum']); add(`mean(${series.id}${window})`, [...more, 'mean', 'average']); }
    }
  }
  for (const tank of protocol?.tanks ?? []) {
    for (const name of ['volume', 'length', 'width', 'height']) add(`${name}(${tank.id})`, [tank.id, tank.label, name, { volume: 'litres', length: 'long', width: 'wide', height: 'high' }[name]!]);
    for (const fact of tank.facts.keys()) add(`${tank.id}.${fact}`, [tank.id, tank.label, ...fact.split('-')]);
  }
  return found;
}

function seriesCues(series: Series, context: FormulaContext): string[] {
  const tank = context.protocol?.tanks.find((each) => each.id === series.place);
  const what = context.protocol?.measure.find((each) => each.id === series.quantity)?.what?.value ?? '';
  return [series.place, ...(tank ? [tank.label] : []), series.quantity, ...what.split(/\s+/)];
}

function timeText(instant: Instant, context: FormulaContext): string {
  const zone = context.protocol?.zone ?? utc;
  const { times } = context.dataset;
  const long = times.length > 1 && times.at(-1)! - times[0]! >= day;
  return long ? `${formatDate(instant, zone)}T${formatClock(instant, zone)}` : formatClock(instant, zone);
}

/** Single readings, and differences of two tanks' readings at one time, that are the number. */
function readingCandidates(mention: NumberMention, context: FormulaContext): Candidate[] {
  const found: Candidate[] = [];
  const all = [...context.dataset.series.values()];
  const usable = flag.leftOut | flag.missing | flag.word | flag.below | flag.above;
  for (const series of all) {
    const unit = fittingUnit(mention.unit, series.unit);
    if (!unit || series.unit.kind !== unit.kind || !convertible(unit, series.unit)) continue;
    const cues = seriesCues(series, context);
    series.times.forEach((time, index) => {
      if ((series.flags[index]! & usable) !== 0) return;
      const value = series.values[index]!;
      if (shows(mention, convert(value, series.unit, unit))) {
        const text = timeText(time, context);
        const place = index === 0 ? ['started', 'start', 'began', 'first'] : index === series.times.length - 1 ? ['ended', 'last', 'finally'] : [];
        found.push({ formula: `at(${series.id}, ${text})`, value: { type: 'number', value, unit: series.unit, contributions: null }, cues: [...cues, text, ...place] });
      }
    });
  }
  const difference = (unit: Unit): Unit | null => (mention.unit === null ? null : fittingUnit(mention.unit, differenceUnit(unit)));
  for (const a of all) {
    for (const b of all) {
      if (a === b || a.quantity !== b.quantity || a.place === b.place || a.instrument !== b.instrument) continue;
      const unit = difference(a.unit);
      if (!unit || found.length > 60) continue;
      b.times.forEach((time, j) => {
        const i = a.times.indexOf(time);
        if (i < 0 || ((a.flags[i]! | b.flags[j]!) & usable) !== 0) return;
        const value = (a.values[i]! - b.values[j]!) * a.unit.factor / unit.factor;
        if (value > 0 && a.unit.symbol === b.unit.symbol && shows(mention, value)) {
          const text = timeText(time, context);
          found.push({ formula: `at(${a.id}, ${text}) - at(${b.id}, ${text})`, value: { type: 'number', value, unit, contributions: null },
            cues: ['apart', 'difference', 'above', 'below', 'higher', 'lower', 'more', 'less', 'between', text] });
        }
      });
    }
  }
  return found;
}

/** True when the number is the value as shown, and not so coarsely rounded that many values would be. */
function shows(mention: NumberMention, value: number): boolean {
  const coarse = 0.5 * 10 ** -mention.decimals > 0.02 * Math.abs(value);
  return coarse ? Math.abs(mention.value - value) <= 1e-9 * Math.abs(value) : holdsNumber(mention.value, mention.decimals, value, { approximate: false, bound: null });
}

function gives(candidate: Candidate, mention: AnyMention, context: FormulaContext): boolean {
  const { value } = candidate;
  const zone = context.protocol?.zone ?? utc;
  const exact = { approximate: false, bound: null };
  if (mention.kind === 'clock') return (value.type === 'instant' || value.type === 'event') && holdsClock({ ...mention, ...exact }, value.instant, zone);
  const hours = parseUnit('h');
  if (mention.kind === 'duration') {
    const length = value.type === 'duration' ? value.duration : value.type === 'number' && hours && isTimeUnit(value.unit) ? convert(value.value, value.unit, hours) * hour : null;
    return length !== null && Math.abs(length - mention.duration) <= mention.step / 2;
  }
  if (mention.kind !== 'number') return false;
  if (value.type === 'duration' && hours) {
    const unit = mention.unit && fittingUnit(mention.unit, hours);
    return unit !== null && shows(mention, convert(value.duration / hour, hours, unit));
  }
  if (value.type !== 'number') return false;
  const unit = fittingUnit(mention.unit, value.unit);
  return unit !== null && shows(mention, convert(value.value, value.unit, unit));
}

/**
 * Formulas whose value the mention shows, the likeliest first. `near` is the text around it: words in it that belong to a
 * formula (a tank's label, `lowest`, `fell`) speak for that formula.
 */
export function formulasFor(mention: AnyMention, near: string, candidates: readonly Candidate[], context: FormulaContext): string[] {
  const words = near.toLowerCase();
  const score = (candidate: Candidate): number => candidate.cues.reduce((sum, cue) => sum + (cue.length > 1 && words.includes(cue.toLowerCase()) ? 1 : 0), 0);
  const named = new Set(context.results.map((result) => result.name));
  const given = candidates.filter((candidate) => gives(candidate, mention, context));
  const fitting = [...given.filter((each) => named.has(each.formula)), ...(mention.kind === 'number' ? readingCandidates(mention, context) : []), ...given.filter((each) => !named.has(each.formula))];
  return fitting.map((candidate, index) => ({ formula: candidate.formula, score: score(candidate), index }))
    .sort((a, b) => b.score - a.score || a.index - b.index).slice(0, 5).map((each) => each.formula);
}
