// How a formula is said in plain English: noun phrases, comparisons, stretches of time. English phrases have one form for
// every case; the table has the shape that languages with cases need too.

/** A noun phrase in the cases that sentences put it into. */
export interface Phrase {
  readonly nominative: string; readonly accusative: string; readonly dative: string; readonly genitive: string;
  /** Without its article. */
  readonly bare: string;
  /** As the time at which something is: `at 22:30`. */
  readonly at: string;
}

export interface QuantityFacts {
  /** Its name in the closed list; null where it has none there. */
  readonly known: string | null;
  /** Its English name, or what the author calls it. */
  readonly name: string;
  readonly instrument: string | null;
}
export type PlaceOf =
  | { readonly kind: 'room' } | { readonly kind: 'tank'; readonly id: string; readonly label: string }
  | { readonly kind: 'role'; readonly role: 'treatment' | 'control' } | { readonly kind: 'group'; readonly name: string };

export interface CallFacts {
  readonly name: string;
  /** The English template of the catalogue, for the signature that was asked. */
  readonly template: string;
  /** True where the first operand is a tank. */
  readonly ofTank: boolean;
  /** `count` of the readings at which a condition holds. */
  readonly ofCondition: boolean;
  /** A rate with its sign turned round. */
  readonly falling: boolean;
  readonly operands: readonly Phrase[];
  /** Places among the operands that are series of steps, whose article stays. */
  readonly steps: readonly boolean[];
  /** `between … and …`, null without a window. */
  readonly window: string | null;
  readonly options: Readonly<Partial<Record<string, Phrase>>>;
}

/** Words that carry their meaning in one form: numbers, moments, quoted names. */
function plain(text: string): Phrase {
  return { nominative: text, accusative: text, dative: text, genitive: text, bare: text.replace(/^the /u, ''), at: `at ${text}` };
}

const times: Readonly<Record<string, string>> = {
  start: 'the start', end: 'the end', 'light-off': 'lights-off', 'light-on': 'lights-on', sunrise: 'sunrise', sunset: 'sunset', dawn: 'dawn', dusk: 'dusk',
  'standard-pressure': 'one standard atmosphere',
};
const comparisons: Readonly<Record<string, string>> = { '<': 'is less than', '>': 'is more than', '<=': 'is at most', '>=': 'is at least', '==': 'is equal to' };
const timeComparisons: Readonly<Record<string, string>> = { '<': 'is before', '>': 'is after', '<=': 'is not after', '>=': 'is not before', '==': 'is' };
const arithmetic: Readonly<Record<string, string>> = { '+': 'plus', '-': 'minus', '*': 'times', '/': 'divided by' };

function quantityText({ name, instrument }: QuantityFacts): string {
  return instrument === null ? name : `${name} (${instrument})`;
}

function tankText(id: string, label: string): string {
  if (label === id) return `tank ${id}`;
  return /^(?:the|tank)\s/iu.test(label) || /^[A-Z]/u.test(label) ? label : `the ${label}`;
}

function placeText(place: PlaceOf): string {
  switch (place.kind) {
    case 'room': return 'in the room';
    case 'tank': return `in ${tankText(place.id, place.label)}`;
    case 'role': return `in the ${place.role} tanks (their mean)`;
    case 'group': return `in the tanks of group “${place.name}” (their mean)`;
  }
}

/** Options that come with words of their own. */
const optionClauses: Readonly<Record<string, (option: string) => string>> = {
  over: (length) => ` over ${length}`,
  every: (length) => ` in steps of ${length}`,
  dark: (length) => `, with ${length} of darkness`,
  exchange: (times) => `, with ${times} times the surface exchange`,
  stocking: (times) => `, with ${times} times the respiration`,
};

export const plainWords = {
  plain,
  quoted: (text: string): Phrase => plain(`“${text}”`),
  moment: (text: string): Phrase => plain(text),
  afterStart: (length: string): Phrase => plain(`${length} after the start`),
  inUnit: (phrase: Phrase, unit: string): Phrase => plain(`${phrase.nominative}, in ${unit}`),
  time: (id: string): Phrase | null => (times[id] === undefined ? null : plain(times[id])),
  event: (what: string): Phrase => plain(`“${what}”`),
  tank: (id: string, label: string): Phrase => plain(tankText(id, label)),
  quantity: (facts: QuantityFacts): Phrase => plain(`the ${quantityText(facts)}`),
  series: (facts: QuantityFacts, place: PlaceOf): Phrase => plain(`the ${quantityText(facts)} ${placeText(place)}`),
  /** What was named just before, in another place. */
  that: (_named: Phrase, place: PlaceOf): Phrase => plain(`that ${placeText(place)}`),
  /** `night`: the number of the night, null where there is one alone. */
  phase: (id: string, night: string | null): Phrase => {
    const number = night === null ? '' : ` of night ${night}`;
    if (id === 'baseline') return plain(`the baseline${number}`);
    if (id === 'dark' || id === 'recovery') return plain(`the ${id} phase${number}`);
    return plain(`the phase “${id}”`);
  },
  /** The opposite said straight where there is one. `simple` is a comparison. */
  not: (clause: Phrase, of: 'comparison' | 'resolved' | 'other'): Phrase => {
    const text = clause.nominative;
    if (of === 'resolved') return plain(text.replace(/ is more than (?=the instruments’)/u, ' is no more than '));
    const turned = of === 'comparison' ? text.replace(/ is (?=(?:less than|more than|at most|at least|equal to|before|after) )/u, ' is not ') : text;
    return plain(turned === text ? `it is not so that ${text}` : turned);
  },
  minus: (phrase: Phrase): Phrase => plain(`minus ${phrase.nominative}`),
  between: (from: Phrase, to: Phrase): string => `between ${from.nominative} and ${to.nominative}`,
  during: (window: Phrase): string => `during ${window.nominative}`,
  stretch: (from: Phrase, to: Phrase): Phrase => plain(`the time from ${from.nominative} to ${to.nominative}`),
  fromTo: (from: Phrase, to: Phrase): Phrase => plain(`from ${from.nominative} to ${to.nominative}`),
  differenceBetween: (a: Phrase, b: Phrase): Phrase => plain(`the difference between ${a.nominative} and ${b.nominative}`),
  after: (length: Phrase, moment: Phrase): Phrase => plain(`${length.nominative} after ${moment.nominative}`),
  before: (length: Phrase, moment: Phrase): Phrase => plain(`${length.nominative} before ${moment.nominative}`),
  joined: (operator: 'and' | 'or', a: Phrase, b: Phrase): Phrase => plain(`${a.nominative}, ${operator} ${b.nominative}`),
  /** Null for an operator that is none of arithmetic. */
  arithmetic: (operator: string, a: Phrase, b: Phrase): Phrase | null => (arithmetic[operator] === undefined ? null : plain(`${a.nominative} ${arithmetic[operator]} ${b.nominative}`)),
  compare: (operator: string, kind: 'time' | 'word' | 'number', a: Phrase, b: Phrase): Phrase =>
    plain(`${a.nominative} ${kind === 'time' ? timeComparisons[operator]! : kind === 'word' && operator === '==' ? 'is' : comparisons[operator]!} ${b.nominative}`),
  /** Two falls or two rises beside each other. */
  comparedRates: (args: { a: Phrase; b: Phrase; falling: boolean; more: boolean; ofRate: boolean; inPercent: boolean; window: string | null }): Phrase => {
    const manner = args.ofRate ? (args.more ? 'faster' : 'more slowly') : args.more ? 'more' : 'less';
    return plain(`${args.a.nominative} ${args.falling ? 'fell' : 'rose'} ${manner}${args.inPercent ? ' in per cent' : ''} than ${args.b.nominative}${args.window === null ? '' : ` ${args.window}`}`);
  },
  call: ({ name, template, ofCondition, falling, operands, steps, window, options }: CallFacts): Phrase => {
    const filled = (ofCondition ? 'the number of readings at which {1}{window}' : template).replace(/\{(bare )?(\w+)\}/gu, (_, bare: string | undefined, key: string) => {
      if (key === 'window') return window === null ? '' : ` ${window}`;
      if (/^\d$/u.test(key)) {
        const operand = operands[Number(key) - 1];
        if (!operand) return '';
        return !bare ? operand.nominative : steps[Number(key) - 1] ? `of ${operand.nominative}` : operand.bare;
      }
      const option = options[key]?.nominative;
      return option === undefined ? '' : optionClauses[key]?.(option) ?? option;
    });
    const pressure = (name === 'saturation' || name === 'deficit') && operands[1] !== undefined ? `, at ${operands[1].nominative}` : '';
    const said = filled.replace(/ and $/u, '') + pressure;
    return plain(falling ? said.replace(/^the hourly rate of change of /u, 'the hourly rate of fall of ') : said);
  },
};

export type PlainWords = typeof plainWords;
