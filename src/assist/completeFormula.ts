// Suggestions inside a formula: names that exist, functions that fit the operand, stretches and moments of the run.
import { functionByName, functions, signatureLabel, type FunctionEntry } from '../formula/catalogue.ts';
import { showValue } from '../formula/show.ts';
import { namedTimes } from '../formula/names.ts';
import { namedInstants } from '../protocol/derived.ts';
import { convertible, parseUnit, unitTable } from '../quantities/units.ts';
import type { Unit } from '../quantities/types.ts';
import { day, type Instant } from '../time/instant.ts';
import { formatClock, formatDate } from '../time/text.ts';
import { describedIn } from '../formula/catalogue/described.ts';
import { unitMeasures, unitRemark } from '../words/quantityHelp.ts';
import type { AskedNote, Asking } from './asking.ts';
import { openCall, type FormulaPlace } from './formulaPlace.ts';
import { functionHelp, quantityHelp, seriesNames, tankHelp } from './knownNames.ts';
import type { Suggestion } from './types.ts';

/** More moments than this are not listed. */
const mostMoments = 200;

const nameBefore = /(?<![\p{L}\p{N}_-])[\p{L}][\p{L}\p{N}_-]*(?:\.(?!\.)[\p{L}\p{N}_-]*)?(?:@[\p{L}\p{N}_-]*)?$/u;
const clockBefore = /(?<![\p{L}\p{N}])(?:\d{4}-\d\d-\d\d(?:[T ]\d{0,2}(?::\d{0,2})?)?|\d{1,2}:\d{0,2}|\d{1,2})$/u;

type Want = 'series' | 'number' | 'instant' | 'window' | 'tank' | 'quantity' | 'truth';

/** Suggestions at the end of `place.before`, which ends at `offset` of the note. */
export function completeFormula(note: AskedNote, place: FormulaPlace, offset: number): Suggestion[] {
  const { before } = place;
  const named = nameBefore.exec(before);
  const clock = named ? null : clockBefore.exec(before);
  const word = named?.[0] ?? clock?.[0] ?? '';
  const range = { start: offset - word.length, end: offset };
  const prior = before.slice(0, before.length - word.length);
  const priorText = prior.trimEnd();
  if (/"[^"]*$/u.test(before.replace(/"[^"]*"/gu, ''))) return [];
  if (/(?:^|[\s(])in$/u.test(priorText) && /\s$/u.test(prior)) return units(range, unitBefore(note, priorText.slice(0, -2)), note.asking);
  if (/\d$/u.test(priorText) && /\s$/u.test(prior) && !/[\p{L}:]\d*$/u.test(priorText)) return units(range, null, note.asking);
  const opensOperand = priorText === '' || /(?:[(,+*/<>=≤≥×·−]|\.\.|(?:^|[\s(])(?:and|or|not))$/u.test(priorText) || (/-$/u.test(priorText) && /[\s(]-\s*$/u.test(prior));
  if (!opensOperand) return named || /\s$/u.test(prior) ? keywords(range, note.asking) : [];
  const wants = wanted(place, before, priorText);
  const all = clock ? moments(note, range, clock[0]) : [
    ...series(note, range, wants, word), ...tanks(note, range, wants), ...quantities(note, range, wants), ...results(note, range, wants),
    ...phases(note, range, wants), ...times(note, range, wants), ...(wants.has('instant') ? moments(note, range, '') : []),
    ...options(before, range, note.asking), ...calls(range, wants, note.asking), ...words(note, range, priorText), ...constants(range, wants),
  ];
  return word.includes('.') ? all.filter((each) => each.label.startsWith(word.slice(0, word.indexOf('.') + 1))) : all;
}

/** What fits at this place, from the operand's type, or from the whole formula's. */
function wanted(place: FormulaPlace, before: string, priorText: string): ReadonlySet<Want> {
  if (/\.\.$/u.test(priorText)) return new Set(['instant']);
  const call = openCall(before);
  const entry = call && functionByName(call.name);
  if (!call || !entry) {
    if (place.wanted === 'instant') return new Set(['instant']);
    if (place.wanted === 'window') return new Set(['window', 'instant']);
    return place.wanted === 'condition' ? new Set(['truth', 'series', 'number']) : new Set(['number', 'series']);
  }
  const wants = new Set<Want>();
  const fresh = openCall(priorText)?.operand.trim() === '';
  for (const signature of entry.signatures) {
    const parameter = signature.parameters[call.index];
    switch (parameter?.type) {
      case undefined: break;
      case 'series': case 'readings': wants.add('series'); break;
      case 'condition': case 'readings or condition': wants.add('series').add('truth'); break;
      case 'number or series': wants.add('number').add('series'); break;
      case 'number': case 'temperature': case 'pressure': case 'salinity': wants.add('number').add('series'); break;
      case 'window': wants.add('window').add('instant'); break;
      default: wants.add(parameter!.type as Want);
    }
  }
  if (!fresh && wants.has('window')) wants.add('instant');
  return wants;
}

function item(label: string, kind: Suggestion['kind'], range: Suggestion['range'], sort: string, rest: Partial<Suggestion> = {}): Suggestion {
  return { label, kind, insert: label, snippet: false, range, detail: '', documentation: '', sort: `${sort}${label}`, ...rest };
}

function series(note: AskedNote, range: Suggestion['range'], wants: ReadonlySet<Want>, word: string): Suggestion[] {
  if (!wants.has('series') && !wants.has('number') && !word.includes('.')) return [];
  const rank = wants.has('series') ? '1' : '3';
  return seriesNames(note).map((each, index) => item(each.name, 'series', range, `${rank}${String(index).padStart(4, '0')}`, { detail: each.detail, documentation: each.documentation }));
}

function tanks(note: AskedNote, range: Suggestion['range'], wants: ReadonlySet<Want>): Suggestion[] {
  if (!wants.has('tank')) return [];
  return (note.protocol?.tanks ?? []).map((tank) => item(tank.id, 'tank', range, '1', { detail: tank.label === tank.id ? tank.role?.value ?? '' : tank.label, documentation: tankHelp(tank) }));
}

function quantities(note: AskedNote, range: Suggestion['range'], wants: ReadonlySet<Want>): Suggestion[] {
  if (!wants.has('quantity')) return [];
  return (note.protocol?.measure ?? []).filter((each) => !each.id.includes('@')).map((each) => item(each.id, 'quantity', range, '1', { detail: each.unit?.print ?? '', documentation: quantityHelp(each, note.asking) }));
}

const onlyPlan = (wants: ReadonlySet<Want>): boolean => wants.size > 0 && [...wants].every((want) => want === 'tank' || want === 'quantity');

function results(note: AskedNote, range: Suggestion['range'], wants: ReadonlySet<Want>): Suggestion[] {
  if (onlyPlan(wants)) return [];
  return note.results.map((result) => item(result.name, 'result', range, '2', {
    detail: result.evaluation.value ? showValue(result.evaluation.value, note.context) : '', documentation: `\`${result.formula.text.trim()}\``,
  }));
}

function phases(note: AskedNote, range: Suggestion['range'], wants: ReadonlySet<Want>): Suggestion[] {
  const { protocol } = note;
  if (!protocol || !wants.has('window')) return [];
  return protocol.phases.map((phase) => item(phase.id, 'phase', range, '1', { detail: `${moment(note, phase.window.from)} – ${moment(note, phase.window.to)}` }));
}

function times(note: AskedNote, range: Suggestion['range'], wants: ReadonlySet<Want>): Suggestion[] {
  const { protocol } = note;
  if (!protocol || !(wants.has('instant') || wants.has('window'))) return [];
  const rank = wants.has('window') ? '3' : '1';
  const named = namedTimes.flatMap((name): Suggestion[] => {
    const found = namedInstants(protocol, name);
    if (found.length === 0) return [];
    const names = found.length === 1 ? [name] : found.map((_, index) => `${name}-${index + 1}`);
    return names.map((each, index) => item(each, 'instant', range, rank, { detail: moment(note, found[index]!), documentation: note.asking.words.timeHelp[name] }));
  });
  const events = protocol.events.flatMap((event) => (event.id === null ? [] : [item(event.id, 'event', range, rank, { detail: moment(note, event.at), documentation: event.what })]));
  return [...named, ...events];
}

/** The moments at which readings were taken, as the note would write them. */
function moments(note: AskedNote, range: Suggestion['range'], typed: string): Suggestion[] {
  const { times: all } = note.dataset;
  const long = isLong(note);
  const list: string[] = [];
  for (const time of all) {
    const text = momentText(note, time, long);
    if (text.startsWith(typed)) list.push(text);
    if (list.length >= mostMoments) break;
  }
  return list.map((text) => item(text, 'instant', range, '4', { detail: note.asking.words.shared.sampled }));
}

const isLong = (note: AskedNote): boolean => { const { times } = note.dataset; return times.length > 1 && times.at(-1)! - times[0]! >= day; };

function momentText(note: AskedNote, time: Instant, long: boolean): string {
  const { zone } = note.protocol!;
  return long ? `${formatDate(time, zone)} ${formatClock(time, zone)}` : formatClock(time, zone);
}

const moment = (note: AskedNote, time: Instant): string => momentText(note, time, isLong(note) || (note.protocol?.schedule?.end ?? 0) - (note.protocol?.schedule?.start ?? 0) > day);

/** Options of the call around the cursor: `every 1 h`. */
function options(before: string, range: Suggestion['range'], { language }: Asking): Suggestion[] {
  const call = openCall(before);
  const english = call && functionByName(call.name);
  const entry = english && describedIn(language, english);
  if (!call || !entry || call.index === 0 || !/^\s*[\p{L}-]*$/u.test(call.operand)) return [];
  const seen = new Map(entry.signatures.flatMap((signature) => signature.options.map((option) => [option.name, option] as const)));
  return [...seen.values()].filter((option) => !new RegExp(`,\\s*${option.name}\\s`, 'u').test(before)).map((option) => item(option.name, 'keyword', range, '0', {
    insert: `${option.name} \${1:${option.type === 'duration' ? '1 h' : '1'}}`, snippet: true, detail: option.about,
  }));
}

const givesWanted: Readonly<Record<FunctionEntry['gives'], readonly Want[]>> = {
  number: ['number'], instant: ['instant'], duration: ['number'], window: ['window'], series: ['series'], truth: ['truth'],
  'number or series': ['number', 'series'], reading: ['number'],
};

function calls(range: Suggestion['range'], wants: ReadonlySet<Want>, asking: Asking): Suggestion[] {
  if (onlyPlan(wants)) return [];
  return functions.flatMap((entry) => {
    const fits = wants.size === 0 || givesWanted[entry.gives].some((gives) => wants.has(gives));
    if (!fits && !wants.has('truth')) return [];
    return [item(entry.name, 'function', range, fits ? '5' : '7', {
      insert: `${entry.name}($0)`, snippet: true, detail: signatureLabel(entry.name, entry.signatures[0]!).slice(entry.name.length), documentation: functionHelp(entry, asking), goesOn: true,
    })];
  });
}

function words(note: AskedNote, range: Suggestion['range'], priorText: string): Suggestion[] {
  if (!/(?:==|[<>]=?|[≤≥])$/u.test(priorText)) return [];
  const scales = (note.protocol?.measure ?? []).filter((each) => each.scale !== null && priorText.includes(`.${each.id}`));
  return scales.flatMap((each) => each.scale!.map((word, index) => item(word, 'word', range, `0${index}`, { detail: each.id })));
}

function constants(range: Suggestion['range'], wants: ReadonlySet<Want>): Suggestion[] {
  return wants.has('number') ? [item('standard-pressure', 'value', range, '8', { detail: '1013.25 hPa' })] : [];
}

function keywords(range: Suggestion['range'], { words }: Asking): Suggestion[] {
  return (['in', 'and', 'or'] as const).map((word) => item(word, 'keyword', range, '9', { insert: `${word} `, documentation: words.keywordHelp[word] }));
}

/** The unit of the series or number that stands before `in`. */
function unitBefore(note: AskedNote, text: string): Unit | null {
  const name = /([\p{L}][\p{L}\p{N}-]*\.[\p{L}\p{N}-]+)\s*$/u.exec(text)?.[1];
  return name ? note.dataset.series.get(name)?.unit ?? null : null;
}

/** Units, those that the value can be written in first or alone. */
export function units(range: Suggestion['range'], like: Unit | null, { language }: Asking, first: readonly string[] = []): Suggestion[] {
  const table = unitTable.filter((entry) => entry.symbol !== '1' && (like === null || convertible(entry.unit, like)));
  const extra = first.filter((symbol) => !table.some((entry) => entry.symbol === symbol) && parseUnit(symbol));
  return [
    ...extra.map((symbol) => item(symbol, 'unit', range, `0${String(first.indexOf(symbol)).padStart(2, '0')}`)),
    ...table.map((entry) => item(entry.symbol, 'unit', range, first.includes(entry.symbol) ? `0${String(first.indexOf(entry.symbol)).padStart(2, '0')}` : '5', {
      detail: [...entry.unit.print === entry.symbol ? [] : [entry.unit.print], unitMeasures(language, entry)].join(' · '),
      documentation: [entry.names.slice(0, 4).join(', '), unitRemark(language, entry)].filter(Boolean).join('\n\n'),
    })),
  ];
}
