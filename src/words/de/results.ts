// German sentences of the generated results. Values arrive ready to be placed; each sentence states one fact.
import type { resultsWords as english } from '../en/results.ts';
import { asPieces, join, say, type Pieces, type Slot } from '../pieces.ts';
import { capital, capitalPieces, counted, listedText, times } from './grammar.ts';
import { at } from './moments.ts';

/** ` im Mittel`, where means of several tanks are compared. */
const onAverage = (means: boolean): string => (means ? ' im Mittel' : '');

/** The last reading time that all tanks have. */
const lastTogether = 'bei der letzten gemeinsamen Ablesung';

const unresolved = (half: string): string => `weniger als die ±${half}, die sich mit den Messgeräten auflösen lassen`;

/** After the first clause "der Wert" is "er". */
function withPronoun<V>(clause: Slot<V>): Pieces<V> {
  return asPieces(clause).map((piece) => (typeof piece === 'string' ? piece.replace(' der Wert', ' er') : piece));
}

export const resultsWords: typeof english = {
  course: (args) => {
    const start = say`${args.what} ${args.where} begann ${at(args.firstTime)} bei ${args.first}`;
    const end = say`endete ${at(args.lastTime)} bei ${args.last}.`;
    if (args.lowestIs === 'first') return capitalPieces(say`${start}, dem niedrigsten Wert, und ${end}`);
    if (args.lowestIs === 'last') return capitalPieces(say`${start} und erreichte bei der letzten Ablesung ${at(args.lastTime)} den niedrigsten Wert, ${args.last}.`);
    return capitalPieces(say`${start}, war ${at(args.lowestTime)} mit ${args.lowest} am niedrigsten und ${end}`);
  },
  steady: ({ what, where, value }) => capitalPieces(say`${what} ${where} lag durchweg bei ${value}.`),
  single: ({ what, where, value, time }) => capitalPieces(say`${what} ${where} wurde einmal gemessen, ${at(time)}: ${value}.`),
  between: ({ what, where, least, greatest }) => capitalPieces(say`${what} ${where} lag zwischen ${least} und ${greatest}.`),
  byInstrument: (what, instrument) => `${what} (Messgerät „${instrument}“)`,

  changed: ({ phase, rose, size, percent, rate }) =>
    say`${phase} ${rose ? 'stieg' : 'fiel'} der Wert um ${size}${percent === null ? '' : say` (${percent})`}${rate === null ? '' : say`, im Mittel um ${rate}`}`,
  unchanged: ({ phase }) => [`${phase} endete der Wert, wo er begann`],
  unresolved: ({ phase, rose, size, half }) => say`${phase} ${rose ? 'stieg' : 'fiel'} der Wert um ${size}, ${unresolved(half)}`,
  clauses: ([first = '', ...others]) => {
    const said = [first, ...others.map(withPronoun)];
    return capitalPieces(say`${join(said, said.length > 2 ? '; ' : ', und ')}.`);
  },
  phase: (id) => {
    const night = /^dark(?:-(\d+))?$/.exec(id);
    if (night) return night[1] ? `in Dunkelphase ${night[1]}` : 'in der Dunkelphase';
    if (id === 'baseline') return 'in der Ausgangsphase';
    const after = /^recovery(?:-(\d+))?$/.exec(id);
    if (after) return after[1] ? `in Erholungsphase ${after[1]}` : 'in der Erholung';
    return `in der Phase „${id}“`;
  },

  apart: (args) => capitalPieces(say`${lastTogether} ${at(args.time)} lag ${args.what} ${args.treated}${onAverage(args.means)} um ${args.size} ${args.above ? 'höher' : 'niedriger'} als ${args.control}${
    args.half === null ? '' : `, ${unresolved(args.half)}`}.`),
  equal: (args) => capitalPieces(say`${lastTogether} ${at(args.time)} war ${args.what} ${args.treated} und ${args.control}${onAverage(args.means)} gleich.`),
  changeApart: (args) => capitalPieces(say`${args.phase} ${args.falls ? 'fiel' : 'stieg'} ${args.what} ${args.treated}${onAverage(args.means)} um ${args.size} ${args.more ? 'mehr' : 'weniger'} als ${args.control}${
    args.half === null ? '' : `, ${unresolved(args.half)}`}.`),
  changeEqual: (args) => capitalPieces(say`${args.phase} änderte sich ${args.what} ${args.treated} und ${args.control} um denselben Betrag.`),
  gapParts: ({ explained, left }) => say`Von diesem Unterschied erklären Temperatur, Luftdruck und Salzgehalt ${explained}; es bleiben ${left}.`,
  gapNothing: ({ left }) => say`Temperatur, Luftdruck und Salzgehalt erklären nichts von diesem Unterschied; es bleiben ${left}.`,
  permutation: ({ phase, p, treated, controls, smallest }) =>
    capitalPieces(say`${phase} beträgt das exakte Permutations-p, jedes Becken einmal gezählt, ${p}; bei ${treated} gegen ${controls} Becken ist kein p unter ${smallest} erreichbar.`),
  instrumentsAlone: (compared) => (compared ? 'In diesem Absatz folgt jedes ± bis hierher allein aus den Messgeräten; wie weit die Becken von selbst auseinanderlaufen, steckt nicht darin.' : 'In diesem Absatz folgt jedes ± allein aus den Messgeräten.'),
  contrast: ({ phase, what, size, interval, tanks }) => {
    const scatter = tanks ? 'der Streuung zwischen gleich behandelten Becken' : 'der Streuung der gepaarten Messwerte';
    const said = interval === 'none' ? 'der Kontrast; für ein Intervall sind es zu wenige Messwerte'
      : interval === 'above' ? `der Kontrast, kleiner als sein ±, das aus ${scatter} folgt` : `der Kontrast, sein ± folgt aus ${scatter}`;
    return capitalPieces(say`${phase} hatte sich der Unterschied (${what}, Behandlung minus Vergleich) gegenüber der Ausgangsphase im Mittel um ${size} verändert: Das ist ${said}.`);
  },
  treated: 'in den Behandlungsbecken',
  controls: 'in den Vergleichsbecken',

  scored: ({ what, where, counts }): Pieces<never> => [`${capital(what)} ${where} wurde ${listedText(counts.map(({ word, count }) => `${times(count)} als „${word}“`))} bewertet.`],
  outside: ({ what, where, count }): Pieces<never> =>
    [`${capital(what)} ${where} lag bei ${counted(count, 'einer Ablesung', 'Ablesungen')} außerhalb des Messbereichs; deshalb werden weder ein niedrigster Wert noch eine Änderung angegeben.`],
  none: () => ['Es sind noch keine Messwerte eingetragen.'],
};
