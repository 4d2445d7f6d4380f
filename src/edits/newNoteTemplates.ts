// The templates of a new note: the usual questions of the trade, as plans with gaps that the answers fill. In English;
// src/words/de/newNoteTexts.ts holds the German of every text and name.
// A line that names a quantity the author does not measure is left away (`needs`).
import { blankPlan } from '../words/en/newNote.ts';

/** A line of the plan or of `values`, kept only where all its quantities are measured and all named tanks exist. */
export interface GapLine { readonly needs: readonly string[]; readonly lines: readonly string[] }

const always = (...lines: readonly string[]): GapLine => ({ needs: [], lines });
const needs = (ids: string, ...lines: readonly string[]): GapLine => ({ needs: ids.split(' '), lines });

export interface TankKeys { readonly id: string; readonly label: string; readonly keys: readonly (readonly [string, string])[] }

/**
 * In every text `TREATED` and `CONTROL` stand for the tank's id (or for the role, where a side has several tanks),
 * `EACH` for every tank in turn, `WITH` for what the treatment is called, `DAY` for the first day and `DAY+1` for the next.
 */
export interface Template {
  readonly name: string;
  /** As a list of templates shows it. */
  readonly title: string;
  readonly about: string;
  readonly question: string;
  /** The question where the author names another treatment, `WITH`. */
  readonly questionAbout: string;
  readonly hypothesis: string | null;
  readonly treatment: string;
  /** The key in which the tanks differ; the treated tank's text is the treatment. */
  readonly differs: string;
  readonly withoutTreatment: string;
  readonly treated: TankKeys;
  readonly control: TankKeys | null;
  readonly measure: readonly string[];
  /** Clock times; length and intervals as durations. */
  readonly start: string;
  readonly lightOff: string | null;
  readonly lightOn: string | null;
  readonly length: string;
  readonly every: string;
  /** Denser stretches of `every`, with a shorter interval than the answer's. */
  readonly denser: readonly string[];
  readonly plan: readonly GapLine[];
  readonly values: readonly GapLine[];
  readonly prose: readonly GapLine[];
  readonly figure: readonly string[];
}

const glass: readonly (readonly [string, string])[] = [['size', '60 x 30 x 36 cm'], ['water depth', '30 cm']];

export const templates: readonly Template[] = [
  {
    name: 'overnight-oxygen', title: 'Overnight oxygen', about: 'How low does the oxygen fall between lights-off and morning?',
    question: 'Does a floating mat lower the overnight oxygen minimum?', questionAbout: 'Does WITH change the overnight oxygen minimum?', hypothesis: 'The tank with the mat falls lower and recovers later.',
    treatment: 'floating mat, 80 % of the surface', differs: 'plants', withoutTreatment: 'none',
    treated: { id: 'mat', label: 'floating-mat tank', keys: [...glass, ['animals', '6 ramshorn snails'], ['equipment', 'sponge filter, 25 W heater']] },
    control: { id: 'open', label: 'open-surface tank', keys: [] },
    measure: ['DO', 'T', 'P'], start: '20:00', lightOff: '22:00', lightOn: '08:30', length: '14 h', every: '30 min', denser: ['10 min from light-off to light-off + 1 h'],
    plan: [
      needs('DO', 'expect:', '  - {quantity: DO, effect: 0.5 mg/L, rate: 0.6 mg/L/h}'),
      always('equalise:'),
      needs('T', '  - step: Bring the tanks to one temperature', '    why: Warm water holds less oxygen and everything in it breathes faster', '    accept: abs(TREATED.T - CONTROL.T) <= 0.4 degC'),
      needs('DO', '  - step: Bring the tanks to one oxygen level under the lamp', '    accept: abs(TREATED.DO - CONTROL.DO) <= 0.2 mg/L'),
      always('  - step: Put run-in filter material of one source into each tank', '    why: The bacteria of a filter breathe too'),
      needs('DO', 'limits:', '  - for: animals of a warm-water tank', '    quantity: DO', '    at least: 3 mg/L',
        '    source: US EPA 1986, Ambient Water Quality Criteria for Dissolved Oxygen, EPA 440/5-86-003, Table 1, warm water, other life stages, 1-day minimum'),
      needs('DO', 'stop if:'), needs('DO', '  - when: EACH.DO < 3.5 mg/L', '    do: Switch the air pump on and end the run'),
    ],
    values: [
      needs('DO', 'lowest-TREATED = min(TREATED.DO)', 'lowest-CONTROL = min(CONTROL.DO)'),
      needs('DO', 'night-loss-TREATED = fall(TREATED.DO, light-off..light-on)', 'night-loss-CONTROL = fall(CONTROL.DO, light-off..light-on)'),
      needs('DO', 'lower-by = lowest-CONTROL - lowest-TREATED'),
    ],
    prose: [
      needs('DO', 'The lowest oxygen of the night was {? = lowest-TREATED} with the treatment and {? = lowest-CONTROL} without it, {? = lower-by} apart.', 'Between lights-off and lights-on the treated side lost {? = night-loss-TREATED}, the control {? = night-loss-CONTROL}.'),
    ],
    figure: ['DO'],
  },
  {
    name: 'heater-failure', title: 'Heater failure', about: 'How fast does a tank cool when its heater stops?',
    question: 'How much longer does a tank with a cover glass stay warm after its heater fails?', questionAbout: 'Does WITH change how long a tank stays warm after its heater fails?', hypothesis: 'The covered tank cools more slowly.',
    treatment: 'cover glass, sponge filter, 50 W heater', differs: 'equipment', withoutTreatment: 'sponge filter, 50 W heater',
    treated: { id: 'covered', label: 'covered tank', keys: [...glass, ['plants', 'java fern on wood'], ['animals', 'none']] },
    control: { id: 'bare', label: 'bare tank', keys: [] },
    measure: ['T', 'air'], start: '20:00', lightOff: null, lightOn: null, length: '13 h', every: '1 h', denser: ['20 min from start to start + 4 h'],
    plan: [
      always('events:', '  - {id: heaters-off, at: start + 1 h, what: all heaters unplugged}'),
      always('phases:', '  heated: start..heaters-off', '  cooling: heaters-off..end'),
      needs('T', 'expect:', '  - {quantity: T, effect: 1 degC, rate: 0.8 K/h}'),
      needs('T', 'equalise:', '  - step: Bring the tanks to one temperature', '    accept: abs(TREATED.T - CONTROL.T) <= 0.4 degC'),
      needs('T', 'stop if:'), needs('T', '  - when: EACH.T < 16 degC', '    do: Plug the heaters in again and end the run'),
    ],
    values: [
      needs('T', 'loss-TREATED = fall(TREATED.T, heaters-off..end)', 'loss-CONTROL = fall(CONTROL.T, heaters-off..end)'),
      needs('T', 'half-warmth-CONTROL = first-below(CONTROL.T, 20 degC)'),
    ],
    prose: [needs('T', 'From the failure to the end the treated side lost {? = loss-TREATED}, the control {? = loss-CONTROL}.')],
    figure: ['T', 'air'],
  },
  {
    name: 'nitrification', title: 'Nitrification of a new filter', about: 'How many days until a new filter takes up ammonia and nitrite?',
    question: 'Does a run-in sponge shorten the weeks until a new filter takes up ammonia?', questionAbout: 'Does WITH change how many days pass until a new filter takes up ammonia?', hypothesis: 'With the run-in sponge ammonia and nitrite fall days earlier.',
    treatment: 'new filter with a run-in sponge', differs: 'equipment', withoutTreatment: 'new filter',
    treated: { id: 'seeded', label: 'seeded tank', keys: [...glass, ['plants', 'none'], ['animals', 'none']] },
    control: { id: 'plain', label: 'plain tank', keys: [] },
    measure: ['TAN', 'NO2', 'NO3', 'pH', 'T'], start: '18:00', lightOff: null, lightOn: null, length: '28 d', every: '1 d', denser: [],
    plan: [
      always('events:', '  - {id: dosing, at: start + 1 h, what: ammonium chloride for 2 mg/L-N dosed}'),
      needs('TAN', 'expect:', '  - {quantity: TAN, effect: 0.5 mg/L-N, rate: 0.02 mg/L-N/h}'),
      always('equalise:'),
      needs('T', '  - step: Bring the tanks to one temperature', '    why: Nitrifiers work faster in the warm', '    accept: abs(TREATED.T - CONTROL.T) <= 0.5 degC'),
      needs('pH', '  - step: Fill the tanks with one batch of water', '    accept: abs(TREATED.pH - CONTROL.pH) <= 0.2 pH'),
    ],
    values: [
      needs('TAN', 'ammonia-gone-TREATED = first-below(TREATED.TAN, 0.25 mg/L-N, dosing + 1 h..end)', 'ammonia-gone-CONTROL = first-below(CONTROL.TAN, 0.25 mg/L-N, dosing + 1 h..end)'),
      needs('TAN', 'days-earlier = ammonia-gone-CONTROL - ammonia-gone-TREATED'),
      needs('NO2', 'nitrite-peak-TREATED = max(TREATED.NO2)', 'nitrite-peak-CONTROL = max(CONTROL.NO2)'),
    ],
    prose: [
      needs('TAN', 'Total ammonia was first read below 0.25 mg/L-N {? = days-earlier} earlier with the treatment.'),
      needs('NO2', 'Nitrite rose to {? = nitrite-peak-TREATED} with the treatment and to {? = nitrite-peak-CONTROL} without it.'),
    ],
    figure: ['TAN', 'NO2'],
  },
  {
    name: 'carbon-dioxide', title: 'Carbon dioxide and pH through a light period', about: 'How far do plants raise the pH while the lamp is on?',
    question: 'How far does a dense stand of stem plants raise the pH through a light period?', questionAbout: 'Does WITH change how far the pH rises through a light period?', hypothesis: 'The planted tank rises by more than half a pH.',
    treatment: 'stem plants, two thirds of the ground', differs: 'plants', withoutTreatment: 'none',
    treated: { id: 'planted', label: 'planted tank', keys: [...glass, ['animals', 'none'], ['equipment', 'sponge filter, 25 W heater, lamp of 20 W']] },
    control: { id: 'empty', label: 'unplanted tank', keys: [] },
    measure: ['pH', 'KH', 'T'], start: '08:00', lightOff: null, lightOn: null, length: '13 h', every: '30 min', denser: [],
    plan: [
      always('events:', '  - {id: lamps-on, at: start + 1 h, what: all lamps switched on}', '  - {id: lamps-off, at: start + 12 h, what: all lamps switched off}'),
      always('phases:', '  before: start..lamps-on', '  light: lamps-on..lamps-off', '  after: lamps-off..end'),
      needs('pH', 'expect:', '  - {quantity: pH, effect: 0.3 pH, rate: 0.1 pH/h}'),
      always('equalise:'),
      needs('pH', '  - step: Fill the tanks with one batch of water and let it stand overnight', '    accept: abs(TREATED.pH - CONTROL.pH) <= 0.15 pH'),
      needs('T', '  - step: Bring the tanks to one temperature', '    accept: abs(TREATED.T - CONTROL.T) <= 0.5 degC'),
    ],
    values: [
      needs('pH', 'rise-TREATED = rise(TREATED.pH, lamps-on..lamps-off)', 'rise-CONTROL = rise(CONTROL.pH, lamps-on..lamps-off)'),
      needs('pH', 'highest-TREATED = max(TREATED.pH)'),
    ],
    prose: [needs('pH', 'While the lamps were on the pH of the treated side rose by {? = rise-TREATED}, to {? = highest-TREATED}, that of the control by {? = rise-CONTROL}.')],
    figure: ['pH'],
  },
  {
    name: 'evaporation', title: 'Evaporation and salinity', about: 'How much water goes, and how far does the salinity rise without topping up?',
    question: 'Does a cover glass slow evaporation and the rise of salinity in a small marine tank?', questionAbout: 'Does WITH change evaporation and the rise of salinity in a small marine tank?', hypothesis: 'The covered tank loses less than half as much water.',
    treatment: 'cover glass, powerhead, 50 W heater', differs: 'equipment', withoutTreatment: 'powerhead, 50 W heater',
    treated: { id: 'covered', label: 'covered tank', keys: [...glass, ['plants', 'none'], ['animals', 'none'], ['salinity', '35 g/kg']] },
    control: { id: 'open', label: 'open tank', keys: [] },
    measure: ['SAL', 'level', 'T', 'air', 'RH'], start: '19:00', lightOff: null, lightOn: null, length: '10 d', every: '12 h', denser: [],
    plan: [
      needs('SAL', 'expect:', '  - {quantity: SAL, effect: 1 PSU, rate: 0.02 PSU/h}'),
      always('equalise:'),
      needs('SAL', '  - step: Mix one batch of salt water for all tanks', '    accept: abs(TREATED.SAL - CONTROL.SAL) <= 0.5 PSU'),
      needs('level', '  - step: Fill all tanks to one mark', '    accept: abs(TREATED.level - CONTROL.level) <= 2 mm'),
      needs('T', '  - step: Bring the tanks to one temperature', '    accept: abs(TREATED.T - CONTROL.T) <= 0.5 degC'),
    ],
    values: [
      needs('level', 'sunk-TREATED = fall(TREATED.level)', 'sunk-CONTROL = fall(CONTROL.level)'),
      needs('SAL', 'saltier-TREATED = rise(TREATED.SAL)', 'saltier-CONTROL = rise(CONTROL.SAL)'),
    ],
    prose: [
      needs('level', 'The water of the treated side sank by {? = sunk-TREATED}, that of the control by {? = sunk-CONTROL}.'),
      needs('SAL', 'The salinity rose by {? = saltier-TREATED} with the treatment and by {? = saltier-CONTROL} without it.'),
    ],
    figure: ['SAL', 'level'],
  },
  {
    name: 'behaviour', title: 'Animals\u2019 behaviour on a word scale', about: 'Do the animals behave in another way, judged in words at fixed times?',
    question: 'Are small tetras calmer under floating plants?', questionAbout: 'Does WITH change how calm small tetras are?', hypothesis: 'Under floating plants the fish are noted as calm more often and breathe more slowly.',
    treatment: 'floating plants, half of the surface', differs: 'plants', withoutTreatment: 'none',
    treated: { id: 'shaded', label: 'shaded tank', keys: [...glass, ['animals', '8 ember tetras'], ['equipment', 'sponge filter, 25 W heater, lamp of 10 W']] },
    control: { id: 'bright', label: 'bright tank', keys: [] },
    measure: ['mood', 'gill', 'T'], start: '10:00', lightOff: null, lightOn: null, length: '6 h', every: '15 min', denser: [],
    plan: [
      always('events:', '  - {id: feeding, at: start + 3 h, what: fed one pinch of fine flakes a tank}'),
      needs('T', 'equalise:', '  - step: Bring the tanks to one temperature', '    why: Fish breathe faster in warmer water', '    accept: abs(TREATED.T - CONTROL.T) <= 0.5 degC'),
      needs('mood', 'stop if:'), needs('mood', '  - when: EACH.mood == gasping', '    do: Change a third of the water, switch the air pump on, end the run and call a veterinarian if it lasts'),
    ],
    values: [needs('gill', 'gill-TREATED = mean(TREATED.gill)', 'gill-CONTROL = mean(CONTROL.gill)')],
    prose: [needs('gill', 'On average the fish of the treated side beat their gills {? = gill-TREATED}, those of the control {? = gill-CONTROL}.')],
    figure: ['gill'],
  },
  {
    name: 'blank', title: 'Blank', about: 'Two tanks, one treatment, your own question.',
    question: blankPlan.question, questionAbout: 'Does WITH make a difference?', hypothesis: null,
    treatment: blankPlan.treatment, differs: 'equipment', withoutTreatment: blankPlan.withoutTreatment,
    treated: { id: 'treated', label: 'treated tank', keys: [...glass, ['plants', 'none'], ['animals', 'none']] },
    control: { id: 'plain', label: 'control tank', keys: [] },
    measure: ['T'], start: '18:00', lightOff: null, lightOn: null, length: '4 h', every: '30 min', denser: [],
    plan: [needs('T', 'equalise:', '  - step: Bring the tanks to one temperature', '    accept: abs(TREATED.T - CONTROL.T) <= 0.5 degC')],
    values: [needs('T', 'change-TREATED = change(TREATED.T)', 'change-CONTROL = change(CONTROL.T)')],
    prose: [needs('T', 'The temperature of the treated side changed by {? = change-TREATED}, that of the control by {? = change-CONTROL}.')],
    figure: ['T'],
  },
];

export const templateByName = (name: string): Template | null => templates.find((each) => each.name === name.trim()) ?? null;
