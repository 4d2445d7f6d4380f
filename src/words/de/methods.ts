// German sentences of the methods: design, equal start, light, sampling. Values arrive ready to be placed.
import type { designWords as designEnglish, deviationWords as deviationEnglish, equalWords as equalEnglish, lightWords as lightEnglish, samplingWords as samplingEnglish } from '../en/methods.ts';
import { say, type Pieces, type Slot } from '../pieces.ts';
import { quoted, quotedSentence, quotedUnlessDate } from './authors.ts';
import { capital, capitalPieces, counted, everyWords, listed, listedText, numberWord, times } from './grammar.ts';
import { at, atAll, atText, fromTo, isDate, until } from './moments.ts';
import { accusative, apposed, dative, withoutArticle } from './names.ts';

const notStated = 'nicht angegeben';
const atPlace = <V>(place: Slot<V> | null): Pieces<V> => (place === null ? [] : say` am Standort ${place}`);

export const designWords: typeof designEnglish = {
  question: (question) => [`Die Frage des Versuchs lautete: ${quotedSentence(question)}`],
  hypothesis: (hypothesis) => [`Die Vermutung war: ${quotedSentence(hypothesis)}`],

  comparison: ({ treated, controls, place }) => {
    const start = `${capital(counted(treated.length, 'ein Behandlungsbecken', 'Behandlungsbecken'))}, ${listedText(treated.map(apposed))}, ${treated.length === 1 ? 'wurde' : 'wurden'}`;
    if (controls.length === 0) return say`${start}${atPlace(place)} ohne Vergleichsbecken beobachtet.`;
    return say`${start}${atPlace(place)} mit ${counted(controls.length, 'einem Vergleichsbecken', 'Vergleichsbecken')}, ${listedText(controls.map(dative).map(apposed))}, verglichen.`;
  },
  observed: ({ tanks, place }) =>
    capitalPieces(say`${listedText(tanks)} ${tanks.length === 1 ? 'wurde' : 'wurden'}${atPlace(place)} beobachtet; der Plan nennt weder Behandlung noch Vergleich.`),
  place: ({ name, latitude, longitude, elevation }) => {
    const position = [latitude && longitude ? `${latitude}, ${longitude}` : '', elevation ? `${elevation} über dem Meeresspiegel` : ''].filter((each) => each !== '');
    return [`${name}${position.length > 0 ? ` (${position.join(', ')})` : ''}`];
  },

  size: ({ tanks, measured, volume, depth, several }) => {
    const filled = depth === '' ? '' : volume === null ? ` und ${several ? 'waren' : 'war'} ${depth} hoch mit Wasser gefüllt` : ` bei ${depth} Wassertiefe`;
    const held = volume === null ? say`${filled}` : say` und ${several ? 'enthielten' : 'enthielt'}${filled}${several ? ' je' : ''} ${volume} Wasser`;
    return capitalPieces(say`${tanks} ${several ? 'maßen je' : 'maß'} ${measured}${held}.`);
  },
  volumeOnly: ({ tanks, volume, each }) => {
    const several = each || /^(?:beide|alle) /.test(String(tanks));
    return capitalPieces(say`${tanks} ${several ? 'enthielten je' : 'enthielt'} ${volume} Wasser.`);
  },

  difference: ({ key, sides }) => [`${key} (${sides.map((side) => `${side.text === notStated ? notStated : quotedUnlessDate(side.text)} ${side.tanks}`).join('; ')})`],
  differed: (items) => say`Nach Plan unterschieden sich die Becken in ${counted(items.length, 'einem Punkt', 'Punkten')}: ${listed(items)}.`,
  alsoDiffered: (items) => say`Sie unterschieden sich auch in ${items.length === 1 ? 'einem Punkt, den' : `${numberWord(items.length)} Punkten, die`} der Plan nicht als beabsichtigt nennt: ${listed(items)}.`,
  nothingDiffers: () => ['Der Plan nennt keinen Unterschied zwischen den Becken.'],
  alike: (items) => [`Gleich war in allen Becken: ${listedText(items.map(({ key, text }) => `${key} (${quoted(text)})`))}.`],
  held: (items) => [`Der Plan nennt zum Becken: ${listedText(items.map(({ key, text }) => `${key} (${quoted(text)})`))}.`],
  without: ({ keys, tanks }) => {
    const things = keys.map((key) => (key === 'Salzgehalt' ? 'Salz' : key));
    if (tanks === 1) return [`Das Becken war ohne ${listedText(things)}.`];
    return [`${tanks === 2 ? 'Keines der beiden Becken' : 'Keines der Becken'} enthielt ${listedText(things, 'oder')}.`];
  },
  notStated,
  latitude: (degrees, south) => `${degrees}° ${south ? 'S' : 'N'}`,
  longitude: (degrees, west) => `${degrees}° ${west ? 'W' : 'O'}`,
  runningSince: ({ tanks, date, several }) =>
    [isDate(date) ? `${capital(tanks)} ${several ? 'waren' : 'war'} seit dem ${date} in Betrieb.` : `Laut Plan ${several ? 'waren' : 'war'} ${tanks} in Betrieb: ${quoted(date)}.`],
};

export const equalWords: typeof equalEnglish = {
  end: {
    lightsOff: 'bis Licht aus', firstReading: 'bis zur ersten Ablesung', run: 'bis zum Ende',
    event: ({ time, what }) => `${until(time)} (${quoted(what)})`,
  },
  opening: ({ steps }) => [`Zum Angleichen der Becken sah der Plan ${counted(steps, 'einen Schritt', 'Schritte')} vor.`],
  step: ({ number, step, why, rest }) => {
    const name = `${quoted(step)}${why === null ? '' : ` (Grund: ${quoted(why)})`}`;
    return number === null ? say`Der einzige Schritt zum Angleichen der Becken, ${name}, ${rest}.` : say`Schritt ${number}, ${name}, ${rest}.`;
  },
  done: (done) => {
    if (/^(?:yes|done|true|ja|erledigt)$/i.test(done)) return ['wurde ausgeführt'];
    if (/^(?:no|false|not done|not yet|nein|noch nicht)$/i.test(done)) return ['wurde nicht ausgeführt'];
    return [isDate(done) ? `wurde am ${done} ausgeführt` : `wurde ausgeführt (${quoted(done)})`];
  },
  unknown: () => ['trägt im Plan kein Datum'],
  atMost: (args) => {
    const asked = say`verlangte für ${accusative(args.quantity)} ${args.strict ? 'weniger als' : 'höchstens'} ${args.limit} Unterschied`;
    const worst = args.worst === null || args.holds === null ? [] : say` (größter Unterschied: ${args.worst})`;
    return say`${asked}${outcome({ ...args, one: 'gemeinsamen Ablesung', many: 'gemeinsamen Ablesungen' })}${worst}`;
  },
  condition: (args) => say`verlangte Folgendes: ${args.condition}${outcome({ ...args, one: 'Ablesung', many: 'Ablesungen' })}`,
};

/** `one` and `many` in the dative. */
function outcome<V>(args: { checked: number; met: Slot<V> | null; holds: boolean | null; end: string; one: string; many: string }): Pieces<V> {
  const { checked, met, holds, end, one, many } = args;
  if (holds === null) return [`; ob das ${end} erfüllt war, zeigt keine ${one.replace(/en (?=\p{Lu})/u, 'e ')}`];
  const all = checked === 1 ? `der einen ${one}` : checked === 2 ? `beiden ${many}` : `allen ${numberWord(checked)} ${many}`;
  if (holds) return [`; das war bei ${all} ${end} erfüllt`];
  return met === null ? [`; das war ${end} nicht bei jeder ${one} erfüllt`] : say`; das war ${end} bei ${met} von ${checked} ${checked === 1 ? one : many} erfüllt`;
}

export const lightWords: typeof lightEnglish = {
  none: () => ['Der Plan nennt keine Zeit für Licht aus.'],
  oneNight: ({ off, on }) => say`Das Licht ging ${at(off)} aus${on === null ? '' : say` und ${at(on)} wieder an`}.`,
  daily: ({ off, on, nights }) => [`${nights === 2 ? 'In beiden Nächten' : `In jeder der ${numberWord(nights)} Nächte`} ging das Licht ${atText(off)} aus${on === null ? '' : ` und ${atText(on)} wieder an`}.`],
  severalTimes: ({ off, on }) => [`Das Licht ging ${atAll(off)} aus${on.length === 0 ? '' : ` und ${atAll(on)} an`}.`],
  darkUntilSunrise: ({ sunrise, length }) => say`Am Standort gab es Tageslicht; als Ende der Dunkelphase gilt deshalb der Sonnenaufgang ${at(sunrise)}, nach ${length}.`,
  darkCovered: ({ length }) => say`Der Versuch umfasst die ersten ${length} der Dunkelphase.`,
  darkLength: ({ length }) => say`Die Dunkelphase dauerte ${length}.`,
  noDaylight: () => ['Am Standort gab es kein Tageslicht.'],
};


export const samplingWords: typeof samplingEnglish = {
  planned: ({ every: steps, from, to, slots }) => {
    if (slots === 1 || to === null) return [`Geplant war eine Ablesung ${atText(from)}.`];
    const how = steps.length === 1 ? `, ${steps[0]!}` : ' zu festen Zeiten';
    return [`Geplant waren ${numberWord(slots)} Ablesungen${how} ${fromTo(from, to)}${steps.length > 1 ? `: ${steps.join(' und ')}` : ''}.`];
  },
  every: everyWords,
  everyBetween: (length, from, to) => `${everyWords(length)} ${fromTo(from, to)}`,
  allTaken: ({ slots }) => [`Gemessen wurde zu ${slots === 1 ? 'dieser Zeit' : slots === 2 ? 'beiden Zeiten' : 'jeder dieser Zeiten'}.`],
  someTaken: ({ taken, first, last }) =>
    [taken === 1 ? `Davon wurde eine vorgenommen, ${atText(first)}.` : `Davon wurden ${numberWord(taken)} vorgenommen, die erste ${atText(first)}, die letzte ${atText(last)}.`],
  unplanned: (args) => [`Gemessen wurde ${times(args.times)}, ${args.times === 1 ? atText(args.first) : fromTo(args.first, args.last)}; der Plan nennt keine Messzeiten.`],
  none: () => ['Es sind noch keine Messwerte eingetragen.'],
  order: ({ tanks, seed }) => [`Bei jeder Ablesung war diese Reihenfolge der Becken einzuhalten: ${tanks.map(withoutArticle).join(', ')}${seed === null ? '' : ` (ausgelost mit dem Startwert ${seed})`}.`],
  phases: (items) => say`Der Versuch hat ${counted(items.length, 'eine Phase', 'Phasen')}: ${listed(items)}.`,
  phase: ({ id, window }) => say`„${id}“ (${window})`,
  paired: (within) => [`Messwerte verschiedener Tabellen, die höchstens ${within} auseinanderliegen, gelten als zusammen gemessen.`],
  fromFile: ({ path, hash, columns }) =>
    [`${capital(listedText(columns))} ${columns.length === 1 ? 'wurde' : 'wurden'} aus der Datendatei ${path} gelesen${hash === null ? '' : ` (SHA-256 ${hash.slice(0, 12)}…)`}.`],
  zone: (zone) => [`Alle Zeiten sind Ortszeiten (${zone.replace(/_/g, ' ')}).`],
};

export const deviationWords: typeof deviationEnglish = {
  lateStart: ({ first, planned, by }) => [`Die erste Ablesung fand ${atText(first)} statt, ${by} nach dem geplanten Beginn ${atText(planned)}.`],
  earlyEnd: ({ last, planned }) => [`Die letzte Ablesung fand ${atText(last)} statt; der Plan reicht ${until(planned)}.`],
  missedTimes: (moments) => [`${capital(counted(moments.length, 'eine geplante Ablesung entfiel', 'geplante Ablesungen entfielen'))}: ${atAll(moments)}.`],
  missedMany: ({ count, first, last }) => [`${capital(counted(count, 'eine geplante Ablesung entfiel', 'geplante Ablesungen entfielen'))}, die erste ${atText(first)}, die letzte ${atText(last)}.`],
  shifted: (pairs) => {
    const [only] = pairs;
    if (pairs.length === 1 && only) return [`Die ${atText(only.planned)} geplante Ablesung fand ${atText(only.taken)} statt.`];
    return [`${capital(numberWord(pairs.length))} Ablesungen fanden zu einer anderen Zeit statt als geplant: ${listedText(pairs.map(({ planned, taken }) => `${atText(taken)} statt ${atText(planned)}`))}.`];
  },
  extra: (moments) => [moments.length === 1 ? `Eine weitere, nicht geplante Ablesung fand ${atAll(moments)} statt.` : `Weitere, nicht geplante Ablesungen fanden ${atAll(moments)} statt.`],
  extraMany: ({ count }) => [`${capital(numberWord(count))} weitere Ablesungen waren nicht geplant.`],
};
