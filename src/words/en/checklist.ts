// The words of the reporting checklist: what each item asks for, and what to do where it is missing.
import { checklistFinds } from './checklistFinds.ts';
import { sentencesOf } from './grammar.ts';

export interface ChecklistWords { readonly item: string; readonly missing: string; readonly partly?: string; readonly notApplicable?: string }

const noAnimals = 'No animals are in the tanks.';

export const checklistWords = {
  design: { item: 'Study design: groups, control, experimental unit', missing: 'Give the tanks their roles: treatment and control.' },
  'sample-size': { item: 'Sample size: tanks a group, and how the number was decided', missing: 'Give the tanks their roles, so that their number a side can be said.', partly: 'The number of tanks is stated; say in the text how it was decided.' },
  exclusion: { item: 'Inclusion and exclusion: every reading left out, with its reason', missing: 'There are no readings yet.' },
  randomisation: { item: 'Randomisation and order', missing: 'Say how treatment and reading order were drawn: keys order and seed.', partly: 'The order is stated, not that it was drawn: add the seed of the draw.' },
  blinding: { item: 'Blinding: who knew which tank was which', missing: 'Say in the text who knew which tank was which.' },
  outcomes: { item: 'Outcome measures: what was measured, with what', missing: 'State the measured quantities: key measure.' },
  statistics: { item: 'Statistical methods and unit of analysis', missing: 'Say how the numbers were computed; the methods do it once formulas are in the note.' },
  animals: { item: 'Animals: species, number, size', missing: 'State the animals of every tank: key animals.', partly: 'Species and number are stated; add sex, age or size where it matters.', notApplicable: noAnimals },
  procedures: { item: 'Procedures: what, when, how often, where', missing: 'State the schedule: key schedule.' },
  results: { item: 'Results with size and interval', missing: 'Add a results block.' },
  ethics: { item: 'Ethical statement', missing: 'Say in the text under which rules or permit the animals were kept.', notApplicable: noAnimals },
  housing: { item: 'Housing and husbandry', missing: 'State size and equipment of every tank.' },
  monitoring: { item: 'Monitoring and humane endpoints', missing: 'State when the run ends early: key stop if.', notApplicable: noAnimals },
  generality: { item: 'Generalisability: what the run can and cannot show', missing: 'Give the tanks their roles, so that the limits of the evidence can be said.' },
  registration: { item: 'Protocol fixed before the first reading', missing: 'Seal the plan before the first reading: key sealed.' },
  access: { item: 'Data access', missing: '' },
  interests: { item: 'Funding and interests', missing: 'Say in the text who paid for it and who gains by it, or that nobody does.' },
  volume: { item: 'Volume of water', missing: 'State size and water depth, or volume, of every tank.' },
  source: { item: 'Source and treatment of the water', missing: 'Say in the text where the water comes from and how it was prepared.' },
  flow: { item: 'Filtration, flow and exchange of water', missing: 'State the filter under equipment, and changes of water as events.' },
  temperature: { item: 'Water temperature', missing: 'Measure it, or state it in the text.' },
  ph: { item: 'pH', missing: 'Measure it, or state it in the text.' },
  salinity: { item: 'Conductivity or salinity', missing: 'Measure it, or state it: key salinity.' },
  hardness: { item: 'Hardness and alkalinity', missing: 'Measure them, or state them in the text.' },
  oxygen: { item: 'Dissolved oxygen', missing: 'Measure it, or state it in the text.' },
  nitrogen: { item: 'Ammonia, nitrite, nitrate', missing: 'Measure them, or state them in the text.', notApplicable: noAnimals },
  light: { item: 'Photoperiod and light', missing: 'State when the lamps go off and on: keys light off and light on.', partly: 'The photoperiod is stated; state the strength of the light in the text.' },
  stocking: { item: 'Stocking', missing: 'State number and kind of the animals: key animals.', notApplicable: noAnimals },
  feeding: { item: 'Feed and feeding times', missing: 'State each feeding as an event, or that none was given.', notApplicable: noAnimals },
  acclimation: { item: 'Acclimation: how long the tanks had been running', missing: 'State it: key running since.' },
  instruments: { item: 'Instruments: accuracy and calibration', missing: 'State accuracy and calibration of every instrument: key measure.', partly: 'Some instruments lack their accuracy or the date of their calibration.' },
  sampling: { item: 'Sampling times and place in the tank', missing: 'State the planned times: key every.', partly: 'The times are stated; say in the text at which depth the readings were taken.' },
  pressure: { item: 'Source of the air pressure', missing: 'State whether the pressure is that of the station or of the sea level: key level.', notApplicable: 'No air pressure goes into the results.' },
} as const satisfies Readonly<Record<string, ChecklistWords>>;

export type ChecklistId = keyof typeof checklistWords;

export const checklistStates = { covered: 'covered', partly: 'partly', missing: 'missing', 'not-applicable': 'does not apply' } as const;

export const checklistCaption = (counts: { covered: number; partly: number; missing: number; none: number }): string =>
  `Reporting checklist: ${counts.covered} items covered, ${counts.partly} partly, ${counts.missing} missing, ${counts.none} that do not apply. Numbered items after ARRIVE 2.0; the others after the recommendations on reporting aquatic husbandry.`;

/** The checklist's words as the other tables of generated prose are kept: a language has all of them. */
export const checklistWriting = {
  items: checklistWords as Readonly<Record<ChecklistId, ChecklistWords>>,
  states: checklistStates as Readonly<Record<keyof typeof checklistStates, string>>,
  caption: checklistCaption,
  heads: ['Item', 'State', 'By which sentence, or what is missing'] as readonly string[],
  access: 'The page carries the note, every reading and the plan, to be saved and recomputed.',
  /** A sentence of the author's own prose. */
  inText: (sentence: string): string => `in the text: ${sentence}`,
  /** What the plan states under a key of the tanks. */
  inPlan: (args: { key: string; texts: readonly string[] }): string => `in the plan: ${args.key}: ${args.texts.join('; ')}.`,
  sealed: (date: string): string => `The plan was sealed: ${date}.`,
  quoted: (sentence: string): string => sentence.replace(/^(in the (?:text|plan): )?(.*)$/su, (_, where: string | undefined, said: string) => `${where ?? ''}“${said}”`),
  find: checklistFinds,
  sentences: sentencesOf,
};
