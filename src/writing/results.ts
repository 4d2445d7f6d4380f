// Factual sentences about the readings: per quantity and tank the course and the changes, then treatment against control.
// Every figure is worked out by its formula, so that it is what a claim with that formula would show.
import type { Note } from '../experiment/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { Protocol } from '../protocol/types.ts';
import { isCensored, isUsable } from '../dataset/series.ts';
import type { Series } from '../dataset/types.ts';
import { measureByName } from '../quantities/measures.ts';
import { smallestSplitP } from '../statistics/permutation.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import { formatClock, formatDate } from '../time/text.ts';
import type { WritingWords } from '../words/writing.ts';
import { inPlace, isLong, momentWords, numberWords, quantityName, wordsOf } from './facts.ts';
import { belowHalfWidth, figure, halfWidthText, numberFigure, paragraph, withHalfWidth, type NumberFigure, type RunPieces } from './figures.ts';
import type { Paragraph, Run } from './types.ts';

/** The results of a note, a paragraph a quantity; empty without a protocol. */
export function writeResults(note: Note): Paragraph[] {
  const { protocol } = note;
  if (!protocol) return [];
  const all = [...note.dataset.series.values()];
  if (!all.some((series) => series.times.some((_, index) => isUsable(series, index, { words: true })))) return [{ topic: 'readings', runs: [{ kind: 'text', text: wordsOf(protocol).results.none<Run>().join('') }] }];
  const quantities = [...new Set([...protocol.measure.map((each) => each.id), ...all.map((series) => series.quantity)])];
  return quantities.flatMap((quantity) => {
    const series = all.filter((each) => each.quantity === quantity);
    const order = (each: Series): number => protocol.tanks.findIndex((tank) => tank.id === each.place);
    const inTanks = series.filter((each) => order(each) >= 0).sort((a, b) => order(a) - order(b));
    const elsewhere = series.filter((each) => order(each) < 0);
    const sides = sidesOf(inTanks, protocol);
    const told = [
      ...inTanks.flatMap((each) => describeCourse(each, note, protocol)),
      ...elsewhere.flatMap((each) => describeRange(each, note, protocol)),
      ...describeComparison(sides, note, protocol),
    ];
    return paragraph(quantityName(quantity, protocol), [...withSource(told, sides !== null, protocol), ...describeContrasts(sides, note, protocol)]) ?? [];
  });
}

/** The sentences, and after them what their ± come from. */
function withSource(sentences: readonly RunPieces[], compared: boolean, protocol: Protocol): RunPieces[] {
  const exact = sentences.some((pieces) => pieces.some((piece) => typeof piece !== 'string' && piece.text.includes('±')));
  return exact ? [...sentences, [wordsOf(protocol).results.instrumentsAlone(compared)]] : [...sentences];
}

const whereOf = (series: Series, protocol: Protocol): { what: string; where: string } =>
  ({ what: series.instrument === null ? quantityName(series.quantity, protocol) : wordsOf(protocol).results.byInstrument(quantityName(series.quantity, protocol), series.instrument), where: inPlace(series.place, protocol) });

function usable(series: Series): number[] {
  return [...series.times.keys()].filter((index) => isUsable(series, index));
}

function describeWords(series: Series, protocol: Protocol): RunPieces[] {
  const scale = protocol.measure.find((each) => each.id === series.quantity)?.scale;
  if (!scale) return [];
  const counts = scale.map((word, place) => ({ word, count: [...series.words].filter((each, index) => each === place && isUsable(series, index, { words: true })).length })).filter((each) => each.count > 0);
  return counts.length === 0 ? [] : [wordsOf(protocol).results.scored({ ...whereOf(series, protocol), counts })];
}

function describeRange(series: Series, note: Note, protocol: Protocol): RunPieces[] {
  if (protocol.measure.find((each) => each.id === series.quantity)?.scale) return describeWords(series, protocol);
  const { results: words } = wordsOf(protocol);
  const where = whereOf(series, protocol);
  const least = numberFigure(`min(${series.id})`, note.context);
  const greatest = numberFigure(`max(${series.id})`, note.context);
  if (!least || !greatest) return [];
  return [least.run.text === greatest.run.text ? words.steady({ ...where, value: least.run }) : words.between({ ...where, least: least.run, greatest: greatest.run })];
}

/** How a formula of this note writes a time: with its date where a clock time could mean two moments. */
function timeFormula(instant: number, note: Note, protocol: Protocol): string {
  const clock = formatClock(instant, protocol.zone);
  return isLong(protocol, note.dataset.times) ? `${formatDate(instant, protocol.zone)} ${clock}` : clock;
}

/** A time of a reading as a figure: its formula is the time itself. */
function moment(instant: number, note: Note, protocol: Protocol): Run | string {
  const long = isLong(protocol, note.dataset.times);
  const text = momentWords(instant, protocol, long);
  const formula = timeFormula(instant, note, protocol);
  const found = figure(formula, note.context);
  return found ? { ...found.run, text } : text;
}

function describeCourse(series: Series, note: Note, protocol: Protocol): RunPieces[] {
  if (protocol.measure.find((each) => each.id === series.quantity)?.scale) return describeWords(series, protocol);
  const { results: words } = wordsOf(protocol);
  const where = whereOf(series, protocol);
  const censored = [...series.times.keys()].filter((index) => isCensored(series, index)).length;
  if (censored > 0) return [words.outside({ ...where, count: censored })];
  const indices = usable(series);
  const { context } = note;
  const bare = series.unit.kind === 'ph';
  const numberOf = (formula: string): NumberFigure | null => {
    const found = numberFigure(formula, context);
    return found && bare ? { ...found, run: { ...found.run, text: found.run.text.replace(/^pH /, '') } } : found;
  };
  const first = numberOf(`first(${series.id})`);
  const last = numberOf(`last(${series.id})`);
  const lowest = numberOf(`min(${series.id})`);
  const greatest = numberOf(`max(${series.id})`);
  if (!first || !last || !lowest || !greatest || indices.length === 0) return [];
  const firstTime = moment(series.times[indices[0]!]!, note, protocol);
  if (indices.length === 1) return [words.single({ ...where, value: first.run, time: firstTime })];
  if (lowest.value.value === greatest.value.value) return [words.steady({ ...where, value: first.run })];
  const lastTime = moment(series.times[indices.at(-1)!]!, note, protocol);
  const lowestIndex = indices.reduce((best, index) => (series.values[index]! < series.values[best]! ? index : best), indices[0]!);
  const lowestTime = figure(`time-of-min(${series.id})`, context);
  const long = isLong(protocol, note.dataset.times);
  const course = words.course<Run>({
    ...where, first: first.run, firstTime, lowest: lowest.run, last: last.run, lastTime,
    lowestTime: lowestTime ? { ...lowestTime.run, text: momentWords(series.times[lowestIndex]!, protocol, long) } : moment(series.times[lowestIndex]!, note, protocol),
    lowestIs: lowestIndex === indices[0] ? 'first' : lowestIndex === indices.at(-1) ? 'last' : 'between',
  });
  const clauses = phasesOf(protocol).map((phase) => describeChange(series, phase, context, words)).filter((clause): clause is RunPieces => clause !== null);
  return clauses.length === 0 ? [course] : [course, words.clauses(clauses)];
}

function phasesOf(protocol: Protocol): string[] {
  return protocol.phases.map((phase) => phase.id);
}

/** The fall or rise over a phase, whichever is above nothing; null where it has no value. */
function directed(make: (name: 'fall' | 'rise') => string, context: FormulaContext): { found: NumberFigure; rose: boolean } | null {
  const fall = numberFigure(make('fall'), context);
  if (!fall) return null;
  if (fall.value.value >= 0) return { found: fall, rose: false };
  const rise = numberFigure(make('rise'), context);
  return rise && { found: rise, rose: true };
}

/** Nothing to the decimals shown, binary crumbs included. */
const isNothing = (found: NumberFigure): boolean => /^[−-]?0(?:[.,]0+)?(?!\d|[.,]\d)/.test(found.run.text);

const isSmall = (found: NumberFigure): boolean => {
  const half = expandedUncertainty(found.value);
  return half !== null && Math.abs(found.value.value) < half;
};

function describeChange(series: Series, phase: string, context: FormulaContext, words: WritingWords['results']): RunPieces | null {
  const change = directed((name) => `${name}(${series.id}, ${phase})`, context);
  if (!change) return null;
  const { found, rose } = change;
  const name = words.phase(phase);
  if (isNothing(found)) return words.unchanged({ phase: name });
  const half = halfWidthText(found, context);
  if (half !== null && isSmall(found)) return words.unresolved({ phase: name, rose, size: belowHalfWidth(found, context), half });
  const percent = numberFigure(`percent-${rose ? 'rise' : 'fall'}(${series.id}, ${phase})`, context);
  const rate = numberFigure(rose ? `rate(${series.id}, ${phase})` : `-rate(${series.id}, ${phase})`, context);
  return words.changed({ phase: name, rose, size: withHalfWidth(found, context), percent: percent?.run ?? null, rate: rate?.run ?? null });
}

/** The series of one quantity in tanks with the treatment and in controls, one of each at least. */
interface TreatedAndControls { readonly treated: readonly [Series, ...Series[]]; readonly controls: readonly [Series, ...Series[]] }

/** null where a side is missing or the quantity is told in words. */
function sidesOf(inTanks: readonly Series[], protocol: Protocol): TreatedAndControls | null {
  const inRole = (role: string): Series[] => inTanks.filter((each) => each.instrument === null && protocol.tanks.find((tank) => tank.id === each.place)?.role?.value === role);
  const [first, ...treated] = inRole('treatment');
  const [other, ...controls] = inRole('control');
  if (!first || !other || protocol.measure.find((each) => each.id === first.quantity)?.scale) return null;
  return { treated: [first, ...treated], controls: [other, ...controls] };
}

/** Phases over which the two sides are compared: the dark ones and those that the author typed. */
function comparedPhases(protocol: Protocol): string[] {
  return protocol.phases.filter((phase) => phase.typed !== null || phase.id.startsWith('dark')).map((phase) => phase.id);
}

/** Treatment against control, the means of several tanks where there are several: the last common reading and the dark or typed phases. */
function describeComparison(compared: TreatedAndControls | null, note: Note, protocol: Protocol): RunPieces[] {
  if (!compared) return [];
  const { treated, controls } = compared;
  const [first] = treated;
  const [other] = controls;
  const { results: words } = wordsOf(protocol);
  const { context } = note;
  const a = treated.length > 1 ? `treatment.${first.quantity}` : first.id;
  const b = controls.length > 1 ? `control.${first.quantity}` : other.id;
  const sides = {
    treated: treated.length > 1 ? words.treated : inPlace(first.place, protocol), control: controls.length > 1 ? words.controls : inPlace(other.place, protocol),
    means: treated.length > 1 || controls.length > 1,
  };
  const what = quantityName(first.quantity, protocol);
  const sentences: RunPieces[] = [];
  const common = commonTimes([...treated, ...controls]).at(-1);
  if (common !== undefined) {
    const at = timeFormula(common, note, protocol);
    const gap = signedFigure(`at(${a}, ${at})`, `at(${b}, ${at})`, context);
    const time = moment(common, note, protocol);
    if (gap && isNothing(gap.found)) sentences.push(words.equal({ ...sides, time, what }));
    else if (gap) {
      sentences.push(words.apart({ ...sides, above: gap.first, time, what, ...sizeOf(gap.found, context) }));
      if (!sides.means) sentences.push(...describeGap(gap.first ? [a, b] : [b, a], first.quantity, at, note, protocol));
    }
  }
  for (const phase of comparedPhases(protocol)) {
    const one = directed((name) => `${name}(${a}, ${phase})`, context);
    if (!one) continue;
    const verb = one.rose ? 'rise' : 'fall';
    const gap = signedFigure(`${verb}(${a}, ${phase})`, `${verb}(${b}, ${phase})`, context);
    if (!gap || (isNothing(gap.found) && isNothing(one.found))) continue;
    const phaseName = words.phase(phase);
    sentences.push(isNothing(gap.found) ? words.changeEqual({ ...sides, phase: phaseName, what })
      : words.changeApart({ ...sides, phase: phaseName, what, more: gap.first, falls: !one.rose, ...sizeOf(gap.found, context) }));
  }
  return sentences;
}

/** What counts the scatter in: the contrast of each compared phase, and with replicate tanks the exact p. */
function describeContrasts(compared: TreatedAndControls | null, note: Note, protocol: Protocol): RunPieces[] {
  if (!compared) return [];
  const { treated: [{ quantity }], treated, controls } = compared;
  const { results: words } = wordsOf(protocol);
  const contrasts = comparedPhases(protocol).flatMap((phase): RunPieces[] => {
    const found = numberFigure(`contrast(${quantity}, ${phase})`, note.context);
    if (!found) return [];
    const half = expandedUncertainty(found.value);
    const interval = half === null || half === 0 ? 'none' : isSmall(found) ? 'above' : 'below';
    return [words.contrast({ phase: words.phase(phase), what: quantityName(quantity, protocol), size: withHalfWidth(found, note.context), interval, tanks: treated.length > 1 && controls.length > 1 })];
  });
  return [...contrasts, ...describeEvidence(quantity, treated.length, controls.length, note, protocol)];
}

/** How much of the oxygen's difference at a time temperature, pressure and salinity account for. */
function describeGap([higher, lower]: readonly [string, string], quantity: string, at: string, note: Note, protocol: Protocol): RunPieces[] {
  if (measureByName(protocol.measure.find((each) => each.id === quantity)?.what?.value ?? '')?.name !== 'dissolved oxygen') return [];
  const explained = numberFigure(`gap-explained(${higher}, ${lower}, ${at}..${at})`, note.context);
  const left = numberFigure(`gap-left(${higher}, ${lower}, ${at}..${at})`, note.context);
  if (!explained || !left) return [];
  const { results: words } = wordsOf(protocol);
  return [isNothing(explained) ? words.gapNothing({ left: left.run }) : words.gapParts({ explained: explained.run, left: left.run })];
}

/** With replicate tanks the exact p of each dark phase, and the smallest that the design can reach. */
function describeEvidence(quantity: string, treated: number, controls: number, note: Note, protocol: Protocol): RunPieces[] {
  if (treated < 2 || controls < 2) return [];
  const { results: words } = wordsOf(protocol);
  return protocol.phases.filter((phase) => /^dark(?:-\d+)?$/.test(phase.id)).flatMap((phase) => {
    const p = numberFigure(`permutation-p(${quantity}, ${phase.id})`, note.context);
    return p ? [words.permutation({ phase: words.phase(phase.id), p: p.run, treated, controls, smallest: numberWords(smallestSplitP(treated, controls), 3, protocol) })] : [];
  });
}

/** The size with its half-width; where it is below that, the size alone and the half-width for the sentence that says so. */
function sizeOf(found: NumberFigure, context: FormulaContext): { size: Run; half: string | null } {
  return isSmall(found) ? { size: belowHalfWidth(found, context), half: halfWidthText(found, context) } : { size: withHalfWidth(found, context), half: null };
}

/** Times at which every series has a usable reading. */
function commonTimes(all: readonly Series[]): number[] {
  const [first, ...others] = all.map((series) => usable(series).map((index) => series.times[index]!));
  const sets = others.map((times) => new Set(times));
  return (first ?? []).filter((time) => sets.every((each) => each.has(time)));
}

/** The difference of two formulas, taken so that it is not below nothing; `first` when the first is the larger. */
function signedFigure(a: string, b: string, context: FormulaContext): { found: NumberFigure; first: boolean } | null {
  const found = numberFigure(`${a} - ${b}`, context);
  if (!found) return null;
  if (found.value.value >= 0) return { found, first: true };
  const turned = numberFigure(`${b} - ${a}`, context);
  return turned && { found: turned, first: false };
}
