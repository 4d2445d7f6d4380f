// The methods against reporting practice: which items are covered, by which sentence, which are missing, which do not apply.
// Items: ARRIVE 2.0 (Percie du Sert et al. 2020, PLoS Biology 18, e3000410), numbers as there; and what the NIH-ORIP workshop
// on reporting aquatic husbandry (2017) asks for.
import type { Note } from '../experiment/types.ts';
import { sealedTime } from '../protocol/planSeal.ts';
import type { Protocol } from '../protocol/types.ts';
import { measureByName } from '../quantities/measures.ts';
import type { ChecklistId } from '../words/en/checklist.ts';
import { saysNone } from '../words/none.ts';
import type { WritingWords } from '../words/writing.ts';
import { dateOf, plannedDate, quantityName, wordsOf } from './facts.ts';
import { paragraphText } from './figures.ts';
import { writeMethods } from './methods.ts';
import { writeResults } from './results.ts';
import { literal } from '../words/literal.ts';

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
  readonly words: WritingWords['checklist'];
  /** By which words a sentence is known. */
  readonly find: WritingWords['checklist']['find'];
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

function factsOf(note: Note, protocol: Protocol): Facts {
  const { checklist: words, names } = wordsOf(protocol);
  const asked = questionText(protocol);
  const topics = writeMethods(note).map((each) => ({ topic: each.topic, sentences: words.sentences(paragraphText(each.runs)).filter((sentence) => !asked.includes(sentence)) }));
  const prose = note.syntax.prose.flatMap((run) => words.sentences(run.text.text));
  const methods = (wanted: readonly string[], having = /(?:)/): string | null => topics.filter((each) => wanted.length === 0 || wanted.includes(each.topic)).flatMap((each) => each.sentences).find((each) => having.test(each)) ?? null;
  return {
    note, protocol, methods, words, find: words.find, animals: protocol.tanks.some((tank) => !saysNone(tank.written.get('animals')?.value)),
    prose: (having) => { const found = prose.find((each) => having.test(each)); return found === undefined ? null : words.inText(found); },
    planned: (key) => { const texts = [...new Set(protocol.tanks.flatMap((tank) => tank.written.get(key)?.value ?? []))]; return texts.length === 0 ? null : words.inPlan({ key: names.tankKey(key), texts }); },
    measured: (quantity) => { const entry = protocol.measure.find((each) => quantity.test(closedName(each.what?.value))); return entry ? methods(['instruments'], literally(quantityName(entry.id, protocol))) : null; },
  };
}

/** Question and hypothesis as the methods quote them: they ask and tell nothing of what was done. */
function questionText(protocol: Protocol): string {
  const { design } = wordsOf(protocol);
  return [protocol.question && design.question(protocol.question.value), protocol.hypothesis && design.hypothesis(protocol.hypothesis.value)].flatMap((each) => each ?? []).join(' ').replace(/\s+/g, ' ');
}

/** The name of a quantity in the closed list, by whichever name the plan calls it. */
function closedName(what: string | undefined): string {
  return what === undefined ? '' : measureByName(what)?.name ?? what;
}

const literally = (text: string): RegExp => new RegExp(literal(text), 'i');

const known = (sentence: string | null, partly = false): Found => ({ sentence, partly });

const rules: readonly (readonly [ChecklistId, number | null, (facts: Facts) => Found])[] = [
  ['design', 1, (f) => known(f.protocol.tanks.some((tank) => tank.role) ? f.methods(['design'], f.find.design) : null)],
  ['sample-size', 2, (f) => (f.protocol.tanks.some((tank) => tank.role) ? known(f.methods(['design'], f.find.comparison), f.prose(f.find.sampleSizeTold) === null) : known(null))],
  ['exclusion', 3, (f) => known(f.methods(['readings'], f.find.leftOut) ?? f.methods(['readings'], f.find.otherCare))],
  ['randomisation', 4, (f) => { const drawn = f.protocol.seed !== null || f.protocol.orderRule?.value === 'random'; const order = f.methods([], f.find.order); return known(drawn || order !== null ? order ?? f.prose(f.find.randomTold) : f.prose(f.find.randomTold), !drawn && order !== null); }],
  ['blinding', 5, (f) => known(f.prose(f.find.blindingTold))],
  ['outcomes', 6, (f) => known(f.methods(['instruments']))],
  ['statistics', 7, (f) => known(f.methods(['computing']) ?? f.methods(['evidence']))],
  ['animals', 8, (f) => (!f.animals ? 'not-applicable' : known(f.methods(['design'], f.find.animals) ?? f.planned('animals'), f.prose(f.find.animalDetailsTold) === null))],
  ['procedures', 9, (f) => known(f.methods(['schedule']))],
  ['results', 10, (f) => { const [first] = f.note.syntax.blocks.some((block) => block.word === 'results') ? writeResults(f.note) : []; return known(first ? f.words.sentences(paragraphText(first.runs))[0] ?? null : null); }],
  ['ethics', 14, (f) => (!f.animals ? 'not-applicable' : known(f.prose(f.find.ethicsTold)))],
  ['housing', 15, (f) => known(f.methods(['design'], f.find.housing))],
  ['monitoring', 16, (f) => { const rule = f.methods(['stop rules']); return rule === null && !f.animals ? 'not-applicable' : known(rule); }],
  ['generality', 18, (f) => known(f.methods(['evidence']))],
  ['registration', 19, (f) => known(f.protocol.sealed ? f.methods([], f.find.sealed) ?? f.words.sealed(sealedDate(f.protocol)) : null)],
  ['access', 20, (f) => known(f.words.access)],
  ['interests', 21, (f) => known(f.prose(f.find.interestsTold))],
  ['volume', null, (f) => known(f.methods(['design'], f.find.volume))],
  ['source', null, (f) => known(f.prose(f.find.sourceTold))],
  ['flow', null, (f) => known(f.methods(['design', 'equal start', 'events'], f.find.flow) ?? f.prose(f.find.flowTold))],
  ['temperature', null, (f) => known(f.measured(/water temperature/i) ?? f.prose(f.find.temperatureTold))],
  ['ph', null, (f) => known(f.measured(/^ph$/i) ?? f.prose(f.find.phTold))],
  ['salinity', null, (f) => known(f.measured(/conductivity|salinity|specific gravity/i) ?? (f.protocol.tanks.some((tank) => tank.salinity) ? f.methods(['design'], f.find.salinity) : null) ?? f.prose(f.find.salinityTold))],
  ['hardness', null, (f) => known(f.measured(/hardness|alkalinity/i) ?? f.prose(f.find.hardnessTold))],
  ['oxygen', null, (f) => known(f.measured(/oxygen/i) ?? f.prose(f.find.oxygenTold))],
  ['nitrogen', null, (f) => { const found = f.measured(/ammoni|nitrite|nitrate/i) ?? f.prose(f.find.nitrogenTold); return found === null && !f.animals ? 'not-applicable' : known(found); }],
  ['light', null, (f) => { const lit = (f.protocol.schedule?.lightOff.length ?? 0) > 0; const strength = f.measured(/light|illuminance/i) ?? f.prose(f.find.lightStrengthTold); return known(lit ? f.methods(['schedule'], f.find.lights) : f.prose(f.find.photoperiodTold), strength === null); }],
  ['stocking', null, (f) => (!f.animals ? 'not-applicable' : known(f.methods(['design'], f.find.animals) ?? f.planned('animals')))],
  ['feeding', null, (f) => { if (!f.animals) return 'not-applicable'; const event = f.protocol.events.find((each) => f.find.feeding.test(each.what)); return known(event ? f.methods(['events'], f.find.feeding) : f.prose(f.find.feedingTold)); }],
  ['acclimation', null, (f) => known(f.methods(['design'], f.find.running) ?? f.prose(f.find.acclimationTold))],
  ['instruments', null, (f) => { const all = f.protocol.measure.filter((each) => !each.scale); const told = all.filter((each) => each.accuracy && each.calibrated); return known(all.some((each) => each.accuracy || each.calibrated) ? f.methods(['instruments'], f.find.accuracy) : null, told.length < all.length); }],
  ['sampling', null, (f) => known(f.protocol.schedule && f.protocol.schedule.slots.length > 0 ? f.methods(['schedule'], f.find.planned) : null, f.prose(f.find.depthTold) === null)],
  ['pressure', null, (f) => { const pressure = f.protocol.measure.find((each) => closedName(each.what?.value) === 'air pressure'); return !pressure && !f.protocol.measure.some((each) => /oxygen/i.test(closedName(each.what?.value))) ? 'not-applicable' : known(pressure?.level ? f.measured(/^air pressure$/) : null); }],
];

/** The date of the seal in words; what stands there, where it is no time. */
function sealedDate(protocol: Protocol): string {
  const at = sealedTime(protocol);
  return at === null ? plannedDate(protocol.sealed!.value.split(/\s/)[0]!, protocol) : dateOf(at, protocol);
}

/** Every item of the checklist, in the order of the guideline; empty without a protocol. */
export function writeChecklist(note: Note): ChecklistItem[] {
  if (!note.protocol) return [];
  const facts = factsOf(note, note.protocol);
  return rules.map(([id, number, rule]): ChecklistItem => {
    const words = facts.words.items[id];
    const found = rule(facts);
    if (found === 'not-applicable') return { id, number, item: words.item, state: 'not-applicable', sentence: null, advice: words.notApplicable ?? null };
    if (found.sentence === null) return { id, number, item: words.item, state: 'missing', sentence: null, advice: words.missing };
    const partly = found.partly === true && words.partly !== undefined;
    return { id, number, item: words.item, state: partly ? 'partly' : 'covered', sentence: found.sentence, advice: partly ? words.partly! : null };
  });
}
