// The methods against reporting practice: which items are covered, by which sentence, which are missing, which do not apply.
// Items: ARRIVE 2.0 (Percie du Sert et al. 2020, PLoS Biology 18, e3000410), numbers as there; and what the NIH-ORIP workshop
// on reporting aquatic husbandry (2017) asks for.
import type { Note } from '../experiment/types.ts';
import type { Protocol } from '../protocol/types.ts';
import { accessSentence, authorsText, checklistWords, planText, type ChecklistId, type ChecklistWords } from '../words/en/checklist.ts';
import { paragraphText } from './figures.ts';
import { writeMethods } from './methods.ts';
import { writeResults } from './results.ts';

export type ChecklistState = 'covered' | 'partly' | 'missing' | 'not-applicable';

export interface ChecklistItem {
  readonly id: ChecklistId;
  /** Number in ARRIVE 2.0; null for what aquatic husbandry adds. */
  readonly number: number | null;
  readonly item: string;
  readonly state: ChecklistState;
  /** The sentence that covers it. */
  readonly sentence: string | null;
  /** What to do about it, or why it does not apply. */
  readonly advice: string | null;
}

interface Facts {
  readonly note: Note;
  readonly protocol: Protocol;
  readonly animals: boolean;
  /** The first sentence of the methods' topics (or of any) with the words. */
  methods(topics: readonly string[], words?: RegExp): string | null;
  /** The first sentence of the author's own text with the words. */
  prose(words: RegExp): string | null;
  /** What the plan states under a key of the tanks, where the methods have no sentence for it. */
  planned(key: string): string | null;
  /** The methods' sentence on a measured quantity whose name has the words. */
  measured(words: RegExp): string | null;
}

/** What a rule finds: the sentence, or that it does not apply; `partly` where the sentence does not say all. */
type Found = { readonly sentence: string | null; readonly partly?: boolean } | 'not-applicable';

const sentencesOf = (text: string): string[] => text.replace(/\s+/g, ' ').trim().split(/(?<=[^\s.][.!?][”"')]?)\s+(?=[\p{Lu}“"(])/u).filter((each) => each !== '');

function factsOf(note: Note, protocol: Protocol): Facts {
  const topics = writeMethods(note).map((each) => ({ topic: each.topic, sentences: sentencesOf(paragraphText(each.runs)) }));
  const prose = note.syntax.prose.flatMap((run) => sentencesOf(run.text.text));
  const methods = (wanted: readonly string[], words = /(?:)/): string | null => topics.filter((each) => wanted.length === 0 || wanted.includes(each.topic)).flatMap((each) => each.sentences).find((each) => words.test(each)) ?? null;
  return {
    note, protocol, methods, animals: protocol.tanks.some((tank) => { const text = tank.written.get('animals')?.value.trim() ?? ''; return text !== '' && !/^(?:none|no|-|–)$/i.test(text); }),
    prose: (words) => { const found = prose.find((each) => words.test(each)); return found === undefined ? null : authorsText + found; },
    planned: (key) => { const texts = [...new Set(protocol.tanks.flatMap((tank) => tank.written.get(key)?.value ?? []))]; return texts.length === 0 ? null : `${planText}${key}: ${texts.join('; ')}.`; },
    measured: (words) => { const entry = protocol.measure.find((each) => words.test(each.what?.value ?? '')); return entry?.what ? methods(['instruments'], new RegExp(entry.what.value.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'i')) : null; },
  };
}

const known = (sentence: string | null, partly = false): Found => ({ sentence, partly });

const rules: readonly (readonly [ChecklistId, number | null, (facts: Facts) => Found])[] = [
  ['design', 1, (f) => known(f.protocol.tanks.some((tank) => tank.role) ? f.methods(['design'], /compared with|observed|tank/) : null)],
  ['sample-size', 2, (f) => (f.protocol.tanks.some((tank) => tank.role) ? known(f.methods(['design'], /compared with|observed/), f.prose(/sample size|number of tanks|replicat/i) === null) : known(null))],
  ['exclusion', 3, (f) => known(f.methods(['readings'], /left out/) ?? f.methods(['readings'], /missing|marked doubtful|corrected/))],
  ['randomisation', 4, (f) => { const drawn = f.protocol.seed !== null || f.protocol.orderRule?.value === 'random'; const order = f.methods([], /\border\b|drawn|seed/i); return known(drawn || order !== null ? order ?? f.prose(/random|drawn by lot/i) : f.prose(/random|drawn by lot/i), !drawn && order !== null); }],
  ['blinding', 5, (f) => known(f.prose(/\bblind(?:ed|ing)?\b|did not know which/i))],
  ['outcomes', 6, (f) => known(f.methods(['instruments']))],
  ['statistics', 7, (f) => known(f.methods(['computing']) ?? f.methods(['evidence']))],
  ['animals', 8, (f) => (!f.animals ? 'not-applicable' : known(f.methods(['design'], /animals/) ?? f.planned('animals'), f.prose(/\b(?:male|female|juvenile|adult|years? old|weeks old|mm long|cm long)\b/i) === null))],
  ['procedures', 9, (f) => known(f.methods(['schedule']))],
  ['results', 10, (f) => { const [first] = f.note.syntax.blocks.some((block) => block.word === 'results') ? writeResults(f.note) : []; return known(first ? sentencesOf(paragraphText(first.runs))[0] ?? null : null); }],
  ['ethics', 14, (f) => (!f.animals ? 'not-applicable' : known(f.prose(/ethic|permit|approv|animal welfare|under (?:the )?licen[cs]e/i)))],
  ['housing', 15, (f) => known(f.methods(['design'], /measured|held|equipment/))],
  ['monitoring', 16, (f) => { const rule = f.methods(['stop rules']); return rule === null && !f.animals ? 'not-applicable' : known(rule); }],
  ['generality', 18, (f) => known(f.methods(['evidence']))],
  ['registration', 19, (f) => known(f.protocol.sealed ? f.methods([], /sealed|fixed before/i) ?? `The plan was sealed: ${f.protocol.sealed.value.split(/\s/)[0]}.` : null)],
  ['access', 20, () => known(accessSentence)],
  ['interests', 21, (f) => known(f.prose(/\bfund(?:ed|ing)\b|conflict of interest|competing interest|paid (?:for )?by/i))],
  ['volume', null, (f) => known(f.methods(['design'], /\bL\b|litre|gal/))],
  ['source', null, (f) => known(f.prose(/tap water|rain ?water|reverse osmosis|osmosis|dechlorinat|well water|source of the water|filled with/i))],
  ['flow', null, (f) => known(f.methods(['design', 'equal start', 'events'], /filter|flow|pump|water change|changed the water/i) ?? f.prose(/filter|flow|water change/i))],
  ['temperature', null, (f) => known(f.measured(/water temperature/i) ?? f.prose(/°C|°F|degrees/))],
  ['ph', null, (f) => known(f.measured(/^ph$/i) ?? f.prose(/\bpH\b/))],
  ['salinity', null, (f) => known(f.measured(/conductivity|salinity|specific gravity/i) ?? (f.protocol.tanks.some((tank) => tank.salinity) ? f.methods(['design'], /salinity/) : null) ?? f.prose(/conductivity|salinity|µS\/cm/i))],
  ['hardness', null, (f) => known(f.measured(/hardness|alkalinity/i) ?? f.prose(/hardness|alkalinity|\bd?[KG]H\b/))],
  ['oxygen', null, (f) => known(f.measured(/oxygen/i) ?? f.prose(/dissolved oxygen/i))],
  ['nitrogen', null, (f) => { const found = f.measured(/ammoni|nitrite|nitrate/i) ?? f.prose(/ammoni|nitrite|nitrate/i); return found === null && !f.animals ? 'not-applicable' : known(found); }],
  ['light', null, (f) => { const lit = (f.protocol.schedule?.lightOff.length ?? 0) > 0; const strength = f.measured(/light|illuminance|PAR/i) ?? f.prose(/\blux\b|\blx\b|µmol\/m2\/s|\bPAR\b/); return known(lit ? f.methods(['schedule'], /lights?\b/i) : f.prose(/photoperiod|lamps? (?:on|off)/i), strength === null); }],
  ['stocking', null, (f) => (!f.animals ? 'not-applicable' : known(f.methods(['design'], /animals/) ?? f.planned('animals')))],
  ['feeding', null, (f) => { if (!f.animals) return 'not-applicable'; const event = f.protocol.events.find((each) => /\bfeed|\bfed\b|food/i.test(each.what)); return known(event ? f.methods(['events'], /\bfeed|\bfed\b|food/i) : f.prose(/\bfeed|\bfed\b|\bfood\b/i)); }],
  ['acclimation', null, (f) => known(f.methods(['design'], /running since|had been running/) ?? f.prose(/acclimat/i))],
  ['instruments', null, (f) => { const all = f.protocol.measure.filter((each) => !each.scale); const told = all.filter((each) => each.accuracy && each.calibrated); return known(all.some((each) => each.accuracy || each.calibrated) ? f.methods(['instruments'], /accuracy|calibrated/) : null, told.length < all.length); }],
  ['sampling', null, (f) => known(f.protocol.schedule && f.protocol.schedule.slots.length > 0 ? f.methods(['schedule'], /Readings were planned|planned/) : null, f.prose(/\bdepth\b|below the surface|middle of the tank|mid-water/i) === null)],
  ['pressure', null, (f) => { const pressure = f.protocol.measure.find((each) => /air pressure/i.test(each.what?.value ?? '')); return !pressure && !f.protocol.measure.some((each) => /oxygen/i.test(each.what?.value ?? '')) ? 'not-applicable' : known(pressure?.level ? f.methods(['instruments'], /air pressure/i) : null); }],
];

/** Every item of the checklist, in the order of the guideline; empty without a protocol. */
export function writeChecklist(note: Note): ChecklistItem[] {
  if (!note.protocol) return [];
  const facts = factsOf(note, note.protocol);
  return rules.map(([id, number, rule]): ChecklistItem => {
    const words: ChecklistWords = checklistWords[id];
    const found = rule(facts);
    if (found === 'not-applicable') return { id, number, item: words.item, state: 'not-applicable', sentence: null, advice: words.notApplicable ?? null };
    if (found.sentence === null) return { id, number, item: words.item, state: 'missing', sentence: null, advice: words.missing };
    const partly = found.partly === true && words.partly !== undefined;
    return { id, number, item: words.item, state: partly ? 'partly' : 'covered', sentence: found.sentence, advice: partly ? words.partly! : null };
  });
}
