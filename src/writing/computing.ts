// The methods' paragraphs on events, instruments, computing and its sources, stop rules, and what the design can show.
import type { Note } from '../experiment/types.ts';
import { nothingRead } from '../experiment/waiting.ts';
import { functionByName, type FunctionEntry } from '../formula/catalogue.ts';
import { scatterFunctions } from '../formula/intervalSource.ts';
import { parseFormula } from '../formula/parse.ts';
import { plainWords } from '../formula/plainWords.ts';
import { everyExpression } from '../claims/formulaShape.ts';
import { mappedText } from '../note/mappedText.ts';
import type { Series } from '../dataset/types.ts';
import type { MeasuredQuantity, Protocol } from '../protocol/types.ts';
import type { NumberValue } from '../quantities/types.ts';
import { withUnit } from '../claims/computedText.ts';
import type { ScatterKind } from '../words/en/methodsCare.ts';
import { inPlaces, inUnits, isLong, momentWords, plannedDate, quantityName, tanksName, valueWords, wordsOf } from './facts.ts';
import { readTimes } from './sampling.ts';
import type { RunPieces } from './figures.ts';
import type { CitationRun } from './types.ts';

/** A source as it is cited in the text: author and year where they can be told, else the whole. */
export function citation(source: string, protocol: Protocol): CitationRun {
  const standard = /^JCGM \d+(?::\d{4})?/.exec(source.trim());
  if (standard) return { kind: 'citation', text: standard[0], source: source.trim() };
  const short = /^([^,(]*?(?:\s(?:and|&)\s[^,(]*?)?)[\s,(]+((?:1[89]|20)\d\d)[a-z]?\b/.exec(source.trim());
  const text = short && short[1]!.trim() !== '' && short[1]!.length < 60 ? `${short[1]!.trim().replace(/(?:,?\s+(?:[A-Z]\.)+)+$/, '')} ${short[2]}` : source.trim();
  return { kind: 'citation', text: wordsOf(protocol).computing.cited(text), source: source.trim() };
}

const hurlbert = 'Hurlbert S.H. 1984. Pseudoreplication and the design of ecological field experiments. Ecological Monographs 54, 187–211.';
export const guide = 'JCGM 100:2008. Evaluation of measurement data: guide to the expression of uncertainty in measurement.';

export function describeEvents(note: Note, protocol: Protocol): RunPieces[] {
  if (protocol.events.length === 0) return [];
  const { events: eventWords } = wordsOf(protocol);
  const long = isLong(protocol, readTimes(note));
  return [eventWords.events([...protocol.events].sort((a, b) => a.at - b.at).map((event) => eventWords.event({
    what: event.what, time: momentWords(event.at, protocol, long), tanks: event.tanks.length === 0 ? null : tanksName(event.tanks.map((each) => each.value), protocol),
  })))];
}

export function describeInstruments(note: Note, protocol: Protocol): RunPieces[] {
  const sentences: RunPieces[] = [];
  const { instruments: instrumentWords } = wordsOf(protocol);
  for (const quantity of protocol.measure) {
    const places = [...new Set([...note.dataset.series.values()].filter((series) => idOf(series) === quantity.id).map((series) => series.place))];
    const where = inPlaces(places.length > 0 ? places : quantity.in.map((each) => each.value), protocol);
    const what = quantityName(quantity.id, protocol);
    const read = places.length > 0;
    if (quantity.scale) { sentences.push(instrumentWords.scored({ what, where, scale: quantity.scale, read })); continue; }
    sentences.push(instrumentWords.measured({ what, where, unit: unitText(quantity, protocol), instrument: quantity.with?.value ?? null, details: detailsOf(quantity, protocol), read }));
    if (quantity.level?.value === 'station') sentences.push(instrumentWords.stationPressure());
    if (quantity.level?.value === 'sea') sentences.push(instrumentWords.seaPressure({ elevation: protocol.place.elevation ? valueWords(protocol.place.elevation.value, protocol) : '' }));
  }
  return sentences;
}

/** The id of the plan's entry that a series was read by: `DO`, `DO@spare`. */
const idOf = (series: Series): string => (series.instrument === null ? series.quantity : `${series.quantity}@${series.instrument}`);

function unitText(quantity: MeasuredQuantity, protocol: Protocol): string {
  return !quantity.unit || quantity.unit.symbol === '1' || quantity.unit.kind === 'ph' ? '' : inUnits(quantity.unit.print.replace(/^\//, '1/'), protocol);
}

function detailsOf(quantity: MeasuredQuantity, protocol: Protocol): string[] {
  const { instruments: instrumentWords } = wordsOf(protocol);
  return [
    quantity.accuracy ? instrumentWords.accuracy(halfText(quantity.accuracy, protocol)) : instrumentWords.noAccuracy(),
    ...(quantity.resolution ? [instrumentWords.resolution(halfText(quantity.resolution, protocol))] : []),
    ...(quantity.calibrated ? [instrumentWords.calibrated(plannedDate(quantity.calibrated.value, protocol))] : []),
  ];
}

/** An accuracy or a step: a difference, so that one of temperature prints in °C. */
function halfText(value: NumberValue, protocol: Protocol): string {
  return inUnits(withUnit(valueWords(value, protocol, { withUnit: false }), value.unit).replace(' /', '/'), protocol);
}

/** Every catalogue function in the note's claims, named results and conditions, in the order of their first use. */
function functionsUsed(note: Note, more: readonly string[] = []): FunctionEntry[] {
  const names = new Set<string>();
  const texts = [
    ...note.syntax.claims.filter((claim) => claim.form !== 'stated').map((claim) => claim.formula.text), ...note.results.map((result) => result.formula.text), ...more,
  ];
  for (const text of texts) {
    const part = { expression: parseFormula(text).expression, text: mappedText(text) };
    for (const each of everyExpression(part, note.context)) if (each.kind === 'call') names.add(each.name);
  }
  return [...names].flatMap((name) => functionByName(name) ?? []);
}

/** Groups whose meaning plain words already give; the others are defined with their source. */
const plainGroups = new Set(['picking', 'arithmetic', 'plan']);
const plainNames = new Set(['min', 'max', 'mean', 'range', 'time-of-min', 'time-of-max', 'all', 'any']);

/** True for a function that the methods explain where it is used. */
export function isExplained(entry: FunctionEntry): boolean {
  return entry.source !== null || (!plainGroups.has(entry.group) && !plainNames.has(entry.name));
}

export function describeComputing(note: Note, protocol: Protocol, more: readonly string[], plusMinus: boolean): RunPieces[] {
  const used = functionsUsed(note, more).filter(isExplained);
  const { computing: computingWords, functions: functionWords } = wordsOf(protocol);
  const seen = new Set<string>();
  const sentences: RunPieces[] = [];
  for (const entry of used) {
    const text = functionWords[entry.name] ?? computingWords.definition({ name: entry.name, definition: entry.definition });
    if (seen.has(text)) continue;
    seen.add(text);
    sentences.push(computingWords.defined({ definition: text, citation: entry.source === null ? null : citation(entry.source, protocol) }));
  }
  if (plusMinus) sentences.push(computingWords.uncertainty({ citation: citation(guide, protocol), scatter: scatterKinds(note, protocol, more) }));
  return sentences;
}

/** What of the note has its ± from scatter. */
function scatterKinds(note: Note, protocol: Protocol, more: readonly string[]): ScatterKind[] {
  const used = new Set(functionsUsed(note, more).map((entry) => entry.name));
  const uses = (kind: keyof typeof scatterFunctions): boolean => scatterFunctions[kind].some((name) => used.has(name));
  const contrast = (['treatment', 'control'] as const).every((role) => tanksOfRole(protocol, role) > 1) ? 'contrast-of-tanks' : 'contrast';
  return [...(uses('contrast') ? [contrast] as const : []), ...(['slope', 'night'] as const).filter(uses)];
}

function tanksOfRole(protocol: Protocol, role: string): number {
  return protocol.tanks.filter((tank) => tank.role?.value === role).length;
}

export function describeStopRules(note: Note, protocol: Protocol): RunPieces[] {
  const long = isLong(protocol, readTimes(note));
  const { stop: stopWords } = wordsOf(protocol);
  return protocol.stopRules.flatMap((rule, index): RunPieces[] => {
    if (!rule.when) return [];
    const condition = plainWords(rule.when.text.trim(), note.context);
    const check = note.stopRules.find((each) => each.rule === index);
    const failed = check?.evaluation?.problems.some((each) => each.severity === 'error') ?? true;
    if (!check || (failed && check.crossedAt.length === 0) || nothingRead(note.dataset)) return [stopWords.unread({ condition, action: rule.do })];
    const [first] = check.crossedAt;
    if (first === undefined) return [stopWords.never({ condition, action: rule.do })];
    const outcome = rule.outcome && rule.outcome.value.trim() !== '' ? rule.outcome.value : null;
    return [stopWords.crossed({ condition, action: rule.do, time: momentWords(first, protocol, long), times: check.crossedAt.length, outcome })];
  });
}

export function describeEvidence(protocol: Protocol): RunPieces[] {
  const treated = tanksOfRole(protocol, 'treatment');
  const controls = tanksOfRole(protocol, 'control');
  if (treated === 0) return [];
  const { evidence: evidenceWords } = wordsOf(protocol);
  if (controls === 0) return [evidenceWords.noControl()];
  return [treated === 1 && controls === 1 ? evidenceWords.oneASide(citation(hurlbert, protocol)) : evidenceWords.several({ treated, controls, citation: citation(hurlbert, protocol) })];
}
