// How a formula is said in plain German: every phrase in its cases, so that what stands inside another stands there rightly.
import type { CallFacts, Phrase, PlainWords, PlaceOf, QuantityFacts } from '../en/plainWords.ts';
import { articles, inTank, noun, theTank, withArticle, type Article, type Case, type Noun } from './grammar.ts';
import { calls, type GermanCall } from './plainCalls.ts';
import { quantityNouns } from './quantities.ts';

const cases: readonly Case[] = ['nominative', 'accusative', 'dative', 'genitive'];

/** `zu dem` to `zum`, `in dem` to `im`, `zu der` to `zur`. */
const contracted = (text: string): string => text.replace(/^zu dem /u, 'zum ').replace(/^in dem /u, 'im ').replace(/^zu der /u, 'zur ');

function inCases(form: (wanted: Case) => string, bare: string, at: string | null = null): Phrase {
  const [nominative, accusative, dative, genitive] = cases.map(form) as [string, string, string, string];
  return { nominative, accusative, dative, genitive, bare, at: at ?? contracted(`zu ${dative}`) };
}

/** Words without cases: numbers, moments, quoted names; the genitive is a `von`. */
function plain(text: string, at = `bei ${text}`): Phrase {
  return { nominative: text, accusative: text, dative: text, genitive: `von ${text}`, bare: text, at };
}

const ofNoun = (word: Noun, rest = '', at: string | null = null): Phrase => inCases((wanted) => withArticle(word, wanted) + rest, word.name + rest, at);

const timeNouns: Readonly<Record<string, Phrase>> = {
  start: ofNoun(noun('Beginn', 'der'), '', 'zu Beginn'), end: ofNoun(noun('Ende', 'das', { genitive: 'Endes' }), '', 'am Ende'),
  'light-off': plain('Licht aus'), 'light-on': plain('Licht an'), sunrise: plain('Sonnenaufgang'), sunset: plain('Sonnenuntergang'),
  dawn: ofNoun(noun('Morgendämmerung', 'die'), '', 'bei Beginn der Morgendämmerung'), dusk: ofNoun(noun('Abenddämmerung', 'die'), '', 'am Ende der Abenddämmerung'),
  'standard-pressure': plain('Normdruck'),
};

const phaseNouns: Readonly<Record<string, string>> = { baseline: 'Ausgangsphase', dark: 'Dunkelphase', recovery: 'Erholung' };

function quantityNoun({ known, name, instrument }: QuantityFacts): Noun {
  const found = known === null ? undefined : quantityNouns[known];
  const tail = instrument === null ? '' : ` (${instrument})`;
  return found ? { ...found, tail: found.tail + tail } : noun('Größe', 'die', { tail: ` „${name}“${tail}` });
}

function placeText(place: PlaceOf): string {
  switch (place.kind) {
    case 'room': return 'im Raum';
    case 'tank': return inTank(place.label);
    case 'role': return `in den ${place.role === 'treatment' ? 'Behandlungsbecken' : 'Vergleichsbecken'} (Mittel)`;
    case 'group': return `in den Becken der Gruppe „${place.name}“ (Mittel)`;
  }
}

/** What follows a relative clause at the start of a sentence is set off. */
const closed = (text: string): string => (/, (?:für die|ab dem|zu dem|die|den) /u.test(text) ? `${text},` : text);

const numbers: Readonly<Record<string, readonly [string, Case]>> = {
  '<': ['ist kleiner als', 'nominative'], '>': ['ist größer als', 'nominative'], '<=': ['ist höchstens', 'nominative'], '>=': ['ist mindestens', 'nominative'], '==': ['ist gleich', 'dative'],
};
const moments: Readonly<Record<string, readonly [string, Case]>> = {
  '<': ['liegt vor', 'dative'], '>': ['liegt nach', 'dative'], '<=': ['liegt nicht nach', 'dative'], '>=': ['liegt nicht vor', 'dative'], '==': ['ist', 'nominative'],
};
const arithmetic: Readonly<Record<string, readonly [string, Case]>> = {
  '+': ['plus', 'nominative'], '-': ['minus', 'nominative'], '*': ['mal', 'nominative'], '/': ['geteilt durch', 'accusative'],
};

const short: Readonly<Record<string, Case>> = { nom: 'nominative', acc: 'accusative', dat: 'dative', gen: 'genitive' };

/** Options that come with words of their own. */
const optionClauses: Readonly<Record<string, (option: string) => string>> = {
  over: (length) => ` über ${length}`,
  every: (length) => ` in Schritten von ${length}`,
  dark: (length) => `, bei ${length} Dunkelheit`,
  exchange: (times) => `, beim ${times}-Fachen des Oberflächenaustauschs`,
  stocking: (times) => `, beim ${times}-Fachen der Atmung`,
};

/** Fills `{gen 1}`, `{at 2}`, `{in 1}`, `{where 1}`, `{window}`, `{within}`, `{for}`, and the options of `optionClauses`. */
function filled(template: string, { operands, window, options }: CallFacts): string {
  return template.replace(/\{(?:(\w+) )?(\w+)\}/gu, (_, how: string | undefined, key: string) => {
    if (key === 'window') return window === null ? '' : ` ${window}`;
    if (!/^\d$/u.test(key)) {
      const option = options[key]?.nominative;
      return option === undefined ? '' : optionClauses[key]?.(option) ?? option;
    }
    const operand = operands[Number(key) - 1];
    if (!operand) return '';
    if (how === 'where') return operand.genitive.replace(/^des Sauerstoffgehalts /u, '');
    return how === 'at' ? operand.at : how === 'in' ? contracted(`in ${operand.dative}`) : operand[short[how ?? 'nom'] ?? 'nominative'];
  });
}

/** `im Becken 1, 1 h nach Licht aus`: two numbers side by side are kept apart. */
const followed = (text: string, tail: string): string => `${text}${/\d$/u.test(text) && /^ \d/u.test(tail) ? ',' : ''}${tail}`;

function callPhrase(entry: GermanCall, facts: CallFacts): Phrase {
  if ('clause' in entry) return plain(filled(entry.clause, facts));
  const first = facts.operands[0];
  if ('tail' in entry) return first ? inCases((wanted) => followed(first[wanted], filled(entry.tail, facts)), followed(first.bare, filled(entry.tail, facts))) : plain('…');
  const rest = filled(entry.rest, facts).replace(/ und $/u, '');
  const more = (facts.name === 'saturation' || facts.name === 'deficit') && facts.operands[1] ? `, bei ${facts.operands[1].dative}` : '';
  if ('plural' in entry) {
    const plural: Readonly<Record<Case, string>> = { nominative: 'die', accusative: 'die', dative: 'den', genitive: 'der' };
    return inCases((wanted) => `${plural[wanted]} ${entry.plural}${rest}`, entry.plural + rest);
  }
  return ofNoun(entry.head, rest + more);
}

export const plainWords: PlainWords = {
  plain: (text) => plain(text),
  quoted: (text) => plain(`„${text}“`),
  moment: (text) => plain(`${text} Uhr`, `um ${text} Uhr`),
  afterStart: (length) => plain(`${length} nach Beginn`, `${length} nach Beginn`),
  inUnit: (phrase, unit) => inCases((wanted) => `${phrase[wanted]}, in ${unit}`, `${phrase.bare}, in ${unit}`),
  time: (id) => timeNouns[id] ?? null,
  event: (what) => ofNoun(noun('Ereignis', 'das', { genitive: 'Ereignisses', tail: ` „${what}“` }), '', `beim Ereignis „${what}“`),
  tank: (_id, label) => inCases((wanted) => theTank(label, wanted), theTank(label, 'nominative')),
  quantity: (facts) => ofNoun(quantityNoun(facts)),
  series: (facts, place) => ofNoun(quantityNoun(facts), ` ${placeText(place)}`),
  that: (named, place) => {
    const article = /^(?:der|die|das)(?= )/u.exec(named.nominative)?.[0] as Article | undefined;
    return inCases((wanted) => `${articles[article ?? 'das'][wanted]} ${placeText(place)}`, placeText(place));
  },
  phase: (id, night) => {
    const name = phaseNouns[id];
    const tail = night === null ? '' : ` der Nacht ${night}`;
    return name === undefined ? ofNoun(noun('Phase', 'die', { tail: ` „${id}“` })) : ofNoun(noun(name, 'die', { tail }));
  },
  not: (clause, of) => {
    const text = clause.nominative;
    const turned = of === 'other' ? text : text.replace(/ ist (?=(?:kleiner als|größer als|höchstens|mindestens|gleich) )/u, ' ist nicht ').replace(/ liegt (?=(?:vor|nach) )/u, ' liegt nicht ');
    return plain(turned === text ? `es gilt nicht: ${text}` : turned);
  },
  minus: (phrase) => plain(`minus ${phrase.nominative}`),
  between: (from, to) => `zwischen ${(/ Uhr$/u.test(to.dative) ? from.dative.replace(/ Uhr$/u, '') : from.dative)} und ${to.dative}`,
  during: (window) => `während ${window.genitive}`,
  stretch: (from, to) => ofNoun(noun('Zeit', 'die'), ` zwischen ${from.dative} und ${to.dative}`),
  fromTo: (from, to) => ofNoun(noun('Zeit', 'die'), ` zwischen ${from.dative} und ${to.dative}`),
  differenceBetween: (a, b) => ofNoun(noun('Unterschied', 'der'), ` zwischen ${a.dative} und ${b.dative}`),
  after: (length, moment) => plain(`${length.nominative} nach ${moment.dative}`, `${length.nominative} nach ${moment.dative}`),
  before: (length, moment) => plain(`${length.nominative} vor ${moment.dative}`, `${length.nominative} vor ${moment.dative}`),
  joined: (operator, a, b) => plain(`${a.nominative}, ${operator === 'and' ? 'und' : 'oder'} ${b.nominative}`),
  arithmetic: (operator, a, b) => {
    const found = arithmetic[operator];
    return found === undefined ? null : inCases((wanted) => `${a[wanted]} ${found[0]} ${b[found[1]]}`, `${a.bare} ${found[0]} ${b[found[1]]}`);
  },
  compare: (operator, kind, a, b) => {
    const [verb, wanted] = (kind === 'time' ? moments : numbers)[operator]!;
    return plain(kind === 'word' && operator === '==' ? `${closed(a.nominative)} ist ${b.nominative}` : `${closed(a.nominative)} ${verb} ${b[wanted]}`);
  },
  comparedRates: ({ a, b, falling, more, ofRate, inPercent, window }) => {
    const manner = ofRate ? (more ? 'schneller' : 'langsamer') : more ? 'stärker' : 'weniger';
    return plain(`${closed(a.nominative)} ${falling ? 'fiel' : 'stieg'}${window === null ? '' : ` ${window}`}${inPercent ? ' prozentual' : ''} ${manner} als ${b.nominative}`);
  },
  call: (facts) => {
    const name = facts.ofCondition ? 'count of condition' : facts.falling ? 'rate of fall' : facts.ofTank ? `${facts.name} of tank` : facts.name;
    const entry = calls[name] ?? calls[facts.name];
    return entry ? callPhrase(entry, facts) : plain(facts.name);
  },
};
