// English words of what stands round the author's text in the preview and on the page: marks of claims, figures, tables.
import { dateWords } from './grammar.ts';

export const pageWords = {
  date: dateWords,
  figure: (number: number): string => `Figure ${number}.`,
  table: (number: number): string => `Table ${number}.`,
  figureInWords: 'The figure in words',
  needsProtocol: 'This block needs a protocol that can be read.',
  nothingToDraw: 'There is nothing to draw yet.',
  noMethods: 'The methods paragraph appears here once the protocol has tanks, a schedule and measured quantities.',
  noResults: 'The results sentences appear here once there are readings.',
  stepByStep: (rows: number): string => `The readings, step by step (${rows} ${rows === 1 ? 'row' : 'rows'})`,
  cannotBeComputed: 'cannot be computed',

  claim: {
    marks: { computed: 'computed from the readings', condition: 'condition checked', stated: 'stated, not computed', unchecked: 'not checked' },
    standsWhile: (condition: string): string => `stands while ${condition}`,
    mismatch: 'does not match the readings',
    readingsGive: (value: string): string => `the readings give ${value}`,
    notTrue: 'not true of the readings',
    notFilled: 'not filled in yet',
    note: (mark: string, number: number): string => `${mark}, note ${number}`,
  },

  severities: { error: 'Error', warning: 'Warning', information: 'Note', hint: 'Hint' },
  atLine: (severity: string, line: number): string => `${severity}, line ${line}: `,
  toLine: 'Show this line in the editor, and go to it',
  moreProblems: (count: number): string => `and ${count} more`,

  readings: {
    notTaken: 'not taken',
    meanOf: (count: number): string => `mean of ${count}`,
    meanOfReadings: (count: number, readings: string): string => `mean of ${count} readings: ${readings}`,
    leftOut: 'left out',
    leftOutOfAll: 'left out of every calculation',
    doubtful: 'doubtful',
    first: 'first',
    cannotBeRead: 'cannot be read',
    since: (clock: string): string => `since ${clock}`,
    time: 'Time',
    reading: 'reading',
    step: 'step',
    perHour: 'per hour',
    difference: 'Difference',
    treatmentMinusControl: 'treatment − control',
    rowsBetween: (rows: number): string => `… ${rows} rows between are not shown here …`,
    caption: (args: { what: string; unit: string; name: string | null; words: boolean; compares: boolean; differenceUnit: string | null }): string =>
      `${args.what}${args.unit ? ` (${args.unit})` : ''}${args.name ? `, ${args.name}` : ''}: ${args.words ? 'as noted' : `readings, the step since the reading before, and its rate per hour${args.compares ? `; the difference is treatment minus control${args.differenceUnit === null ? '' : ` (${args.differenceUnit})`}` : ''}`}.`,
    none: 'No readings yet.',
    fileNotLoaded: (path: string): string => `Readings of ${path} appear here once the file is loaded.`,
    fileMissing: (path: string): string => `The data file ${path} was not found.`,
    fileEmpty: (path: string): string => `No readings were taken from ${path}.`,
  },

  values: {
    none: 'No named results yet: write one “name = formula” a line.',
    heads: ['Result', 'Value', 'How it is computed'],
    caption: 'Named results. Figures after ± are half of a 95 % interval, from the stated accuracy and resolution of the instruments; for contrasts and slopes from scatter instead, for fitted nights from scatter as well. Times in brackets are the ends of an uneven interval.',
  },

  limits: {
    none: 'The protocol states no limits.',
    heads: { for: 'For', limit: 'Limit', source: 'Source' },
    caption: 'Limits stated in the protocol against what was read. ✓ kept, ✕ crossed; left-out readings take no part.',
    noSource: 'no source given',
    sides: { 'at least': 'at least', 'at most': 'at most' },
    extremes: { min: 'lowest', max: 'highest' },
    /** `data` and the others are HTML that is ready. */
    seen: (args: { extreme: string; data: string; clock: string; date: string | null }): string => `${args.extreme} ${args.data} at ${args.clock}${args.date === null ? '' : `, ${args.date}`}`,
    margin: (data: string, unsure: boolean): string => `margin ${data}${unsure ? ', less than the instrument can tell' : ''}`,
    beyond: (args: { side: 'below' | 'above'; hours: string; first: string }): string => `${args.side} it for ${args.hours}, first at ${args.first}`,
    notAssessable: (needs: number, has: number): string => `○ not assessable: it needs ${needs} days in a row, the readings cover ${has === 0 ? 'none' : has} in full`,
    lowestFrom: (amount: string, date: string): string => `lowest ${amount}, from ${date} on`,
    parts: { minimum: 'minimum', '7-day mean': '7-day mean', '7-day mean minimum': '7-day mean minimum', '30-day mean': '30-day mean' },
    partLimit: (args: { quantity: string; part: string; amount: string }): string => `${args.quantity}, ${args.part} at least ${args.amount}`,
  },

  whatIf: {
    scenarios: {
      asFitted: (length: string): string => `as fitted, ${length} of darkness`,
      longer: (length: string): string => `${length} of darkness`,
      exchange: 'an air pump that doubles the surface exchange',
      stocking: 'half the animals and plants',
    },
    noAnswer: 'no answer',
    head: 'What if',
    lowestOxygen: 'lowest oxygen',
    hoursBelow: (level: string): string => `hours below ${level}`,
    caption: (phase: string | null): string => `Predictions from the fitted night${phase === null ? '' : ` (${phase})`}, with 95 % intervals from the scatter about the fit and from the instruments. They take every animal, plant and bacterium to go on as it did, and the water to keep its temperature: plan with them, do not rely on them.`,
  },
};

export type PageWords = typeof pageWords;
