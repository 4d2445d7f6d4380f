// English words of the plan card and of the printed plan.
import { lengthWords, listedText } from './grammar.ts';

/** Below, `day` is a date as `2026-04-12`, `date` the same in words. */

/** A wall time as text, `22:00`, and its date in words. */
export interface MomentText { readonly clock: string; readonly date: string }

export interface ScheduleFacts {
  readonly start: MomentText;
  /** null: no end is known. */
  readonly end: (MomentText & { readonly sameDay: boolean; readonly length: string }) | null;
  /** Clock times at which the lamps change; `daily` where they do so on several days. */
  readonly lightsOff: readonly string[]; readonly lightsOn: readonly string[]; readonly daily: boolean;
  readonly stretches: readonly { readonly every: string; readonly between: readonly [string, string] | null }[];
  readonly slots: number;
  /** null: UTC. */
  readonly zone: string | null;
}

export const planWords = {
  thePlan: 'The plan',
  plan: 'Plan',
  expected: 'Expected: ',
  directions: { north: 'N', south: 'S', east: 'E', west: 'W' },
  aboveSeaLevel: (height: string): string => `${height} above sea level`,
  noDaylight: 'no daylight reaches the tanks',
  headings: {
    tanks: 'Tanks', schedule: 'Schedule', equalise: 'Made alike beforehand', stop: 'Ended early if', instruments: 'Instruments', design: 'Design check', cautions: 'Cautions',
  },
  /** A key of a tank as the plan writes it. */
  tankKey: (key: string): string => key,
  role: (role: 'treatment' | 'control'): string => role,
  group: (name: string): string => `group ${name}`,
  waterVolume: 'Water volume',
  asPlanned: '≠ as planned',
  notDeclared: '≠ not declared',
  differs: '≠ differs',
  sideBySide: 'Tanks side by side',
  differIn: (keys: readonly string[]): string => `The tanks are meant to differ in ${listedText(keys)} only.`,
  differUnsaid: 'The plan does not say in what the tanks are meant to differ.',
  /** Labels of tanks behind something that concerns only these. */
  ofTanks: (labels: readonly string[]): string => listedText(labels),

  equalise: {
    done: (how: string): string => `✓ done: ${how}`,
    alsoDone: (how: string): string => `; done: ${how}`,
    noCondition: 'no condition stated',
    acceptedIf: 'accepted if',
    notChecked: '○ not checked: no paired reading yet; ',
    held: '✓ held',
    didNotHold: '✕ did not hold',
    atReadings: (count: number, first: string, last: string): string => `${count === 1 ? 'at one paired reading' : `at ${count} paired readings`}, ${first}${count > 1 ? ` to ${last}` : ''}`,
    widest: (figure: string): string => `; widest figure ${figure}`,
  },

  stop: {
    if: 'If',
    endTheRun: 'end the run',
    crossed: (clock: string, later: number): string => `✕ crossed at ${clock}${later > 0 ? ` and at ${later} later reading${later > 1 ? 's' : ''}` : ''}`,
    notCrossed: '✓ not crossed at any reading',
    noReadings: '○ no readings yet',
    outcome: (text: string): string => `. Outcome: ${text}`,
    alarm: 'STOP: a stop rule is crossed',
    wasCrossed: 'A stop rule was crossed',
    at: (args: { clock: string; day: string; date: string; later: number }): string => ` at ${args.clock} on ${args.day}${args.later > 0 ? `, and at ${args.later} later ${args.later === 1 ? 'reading' : 'readings'}` : ''}.`,
    planSaid: (action: string): string => `The plan said: ${action}`,
    wasDone: (outcome: string): string => `What was done: ${outcome}`,
    writeOutcome: 'Then write under “outcome” in the plan what was done.',
  },

  instruments: {
    caption: 'Measured quantities and instruments',
    heads: ['Quantity', 'Unit', 'Instrument', 'Where', 'Accuracy', 'Resolution', 'Calibrated'],
    bothTanks: 'both tanks', theTank: 'the tank', allTanks: 'all tanks', notStated: 'not stated',
  },

  notes: {
    alternates: 'The tank read first changes from one time to the next.',
    drawn: (seed: string | null): string => `The order of reading is drawn for each time${seed === null ? '' : ` from the seed ${seed}`}.`,
    order: (labels: readonly string[]): string => `Reading order: ${labels.join(', ')}.`,
    sealed: (args: { clock: string; day: string; date: string; changed: boolean }): string => `Sealed at ${args.clock} on ${args.day}${args.changed ? '; changed since, see the design check' : ', unchanged'}.`,
    repeats: (name: string, samePlan: boolean): string => `Repeats ${name}${samePlan ? ' with the same plan' : ''}.`,
  },

  design: { accepted: 'Accepted: ', acceptedByAuthor: 'accepted by the author', fine: 'The design check has nothing to add.' },

  planning: {
    summary: 'What this design can tell apart',
    lead: 'The smallest differences that the instruments resolve (95 %), while an instrument that reads both is off by the same amount in both:',
    figures: (args: { single: string; phase: { readonly readings: number; readonly phase: string; readonly difference: string } | null; change: string }): string =>
      `: between two tanks at one time ${args.single}${args.phase ? `; in the mean of ${args.phase.readings} readings of the ${args.phase.phase} phase ${args.phase.difference}` : ''}; between the changes of two tanks ${args.change}`,
    oneTank: 'With one tank on a side no number of readings can tell the treatment from the tank.',
    tanks: (args: { treatment: number; control: number; deviations: string; smallestP: string }): string =>
      `With ${args.treatment} treatment and ${args.control} control tanks a difference of ${args.deviations} times the spread between tanks treated alike is found four times in five; the smallest p of an exact permutation test is ${args.smallestP}.`,
  },

  preparation: {
    summary: 'Materials and preparation',
    counts: (things: number, steps: number): string => `: ${things} things, ${steps} ${steps === 1 ? 'step' : 'steps'}`,
    atHand: 'At hand',
    beforeFirst: 'Before the first reading',
    every: 'every tank',
    tanks: (count: number, facts: readonly string[]): string => `${count} ${count === 1 ? 'tank' : 'tanks'}${facts.length === 0 ? '' : ` (${facts.join(', ')}${count > 1 ? ' each' : ''})`}`,
    ofWater: (volume: string): string => `${volume} of water`,
    instrumentFor: (instrument: string, quantity: string): string => `${instrument}, for ${quantity}`,
    timer: 'a timer for the lamps',
    nightTools: 'a clock with an alarm, a torch, pencil and a printed plan',
    dayTools: 'a clock, pencil and a printed plan',
    calibrate: (days: number, instruments: readonly string[]): string => `Calibrate within ${days} days of the start: ${listedText(instruments)}; write the date under “calibrated”.`,
    setTimers: 'Set the timers of all lamps to the same times and watch one change.',
    readNamedFirst: 'Read first the tank that the printed plan names for each time; it changes from one to the next.',
    readInOrder: (labels: readonly string[]): string => `Read in this order: ${listedText(labels)}.`,
    haveReady: (action: string): string => `Have at hand what the stop rule asks for: ${action.charAt(0).toLowerCase()}${action.slice(1).replace(/\.$/, '')}.`,
  },

  cautionsList: (titles: readonly string[]): string => `: ${listedText(titles.map((title) => title.charAt(0).toLowerCase() + title.slice(1)))}`,

  schedule: {
    none: 'No schedule is stated.',
    lightsOff: 'lights off', lightsOn: 'lights on', sunrise: 'sunrise', sunset: 'sunset',
    /** Of a day below the timeline: `14 Mar`. */
    shortDay: (date: string): string => date.replace(/^(\d+ \p{L}{3}).*$/u, '$1'),
    phase: (id: string): string => id,
    sentences: (facts: ScheduleFacts): string[] => {
      const { start, end, lightsOff, lightsOn } = facts;
      const clocks = (texts: readonly string[]): string => (texts.length > 3 ? `${texts[0]!} and ${texts.length - 1} other times` : texts.join(' and '));
      const nightly = facts.daily ? ' each day' : '';
      const [off, on] = [clocks(lightsOff), clocks(lightsOn)];
      const stretches = facts.stretches.map(({ every, between }) => `every ${lengthWords(every)}${between === null ? '' : ` from ${between[0]} to ${between[1]}`}`);
      return [
        end === null ? `From ${start.clock} on ${start.date}.` : `From ${start.clock} on ${start.date} to ${end.clock}${end.sameDay ? '' : ` on ${end.date}`} (${end.length}).`,
        ...(off && on ? [`Lights off at ${off} and on at ${on}${nightly}.`] : off ? [`Lights off at ${off}${nightly}.`] : on ? [`Lights on at ${on}${nightly}.`] : []),
        ...(stretches.length > 0 ? [`Readings planned ${stretches.join(', ')}${facts.slots > 0 ? `: ${facts.slots} in all` : ''}.`] : []),
        `Times are ${facts.zone === null ? 'UTC' : `local time in ${facts.zone}`}.`,
      ];
    },
  },

  sheet: {
    title: (title: string): string => `Plan: ${title}`,
    time: 'time', first: 'first', remark: 'remark',
    more: (count: number): string => `and ${count} more in the note`,
    stopAtOnce: 'Stop at once',
    ifThen: (condition: string, action: string | null): string => `If ${condition}: ${action ?? planWords.stop.endTheRun}`,
    takeCare: 'Take care: ',
    cautions: (titles: readonly string[]): string => `${titles.map((title) => title.toLowerCase()).join('; ')}. The plan card tells more; local rules and makers’ manuals go first.`,
    foot: (args: { left: number; stem: string; version: string }): string =>
      `${args.left > 0 ? `${args.left} later readings do not fit on this page: go on on lined paper. ` : ''}Write - for a reading that was not taken; strike a wrong value through so that it stays legible. ${args.stem}, Evenwater ${args.version}.`,
  },
};

export type PlanCardWords = typeof planWords;
