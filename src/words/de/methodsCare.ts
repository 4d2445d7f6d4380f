// German sentences of the methods: what happened to readings, events, instruments, stop rules, what the design can show.
import type { careWords as careEnglish, computingWords as computingEnglish, eventWords as eventEnglish, evidenceWords as evidenceEnglish, instrumentWords as instrumentEnglish, ScatterKind, stopWords as stopEnglish } from '../en/methodsCare.ts';
import { join, say, type Pieces, type Slot } from '../pieces.ts';
import { quoted, quotedSentence, remarked } from './authors.ts';
import { capital, counted, listed, listedText, numberWord } from './grammar.ts';
import { atText, isDate } from './moments.ts';

/** `Ein Messwert fehlt: …`, `Zwei Messwerte fehlen: …`. */
function headed<V>(items: readonly Slot<V>[], one: string, many: string): Pieces<V> {
  const list = items.length <= 2 ? listed(items) : say<V>`${join(items.slice(0, -1), '; ')}; und ${items.at(-1)!}`;
  return say`${capital(counted(items.length, `ein Messwert ${one}`, `Messwerte ${many}`))}: ${list}.`;
}

/** What stood there first, then and at last: `zuerst 7,7 mg/L, dann 7,5 mg/L`. */
const oneAfterAnother = (states: readonly string[]): string => (states.length === 1 ? states[0]! : `zuerst ${states.join(', dann ')}`);

export const careWords: typeof careEnglish = {
  one: ({ what, time, recorded, remark }) => `${what} ${atText(time)}${recorded === null ? '' : `, notiert als ${recorded}`}${remarked(remark)}`,
  missing: (items) => headed(items, 'fehlt', 'fehlen'),
  missingSome: (items) => [`Messwerte fehlen: ${items.join('; ')}.`],
  missingMany: ({ what, count, of }) => `${what} bei ${numberWord(count)} von ${of} Ablesungen`,
  leftOut: (items) => headed(items, 'steht in der Tabelle, blieb aber bei jeder Berechnung außer Betracht', 'stehen in der Tabelle, blieben aber bei jeder Berechnung außer Betracht'),
  doubtful: (items) => headed(items, 'ist als zweifelhaft gekennzeichnet und wurde verwendet', 'sind als zweifelhaft gekennzeichnet und wurden verwendet'),
  corrected: (items) => headed(items, 'wurde berichtigt', 'wurden berichtigt'),
  correction: ({ what, time, states, remark }) => `${what} ${atText(time)}, ${oneAfterAnother(states)}${remarked(remark)}`,
  below: (amount) => `unter ${amount}`,
  above: (amount) => `über ${amount}`,
  word: (word) => `„${word}“`,
  withdrawn: 'zurückgezogen',
  foundLate: 'nicht gemessen',
  outside: (items) => headed(items, 'lag außerhalb des Messbereichs seines Messgeräts', 'lagen außerhalb des Messbereichs ihrer Messgeräte'),
  repeated: ({ count }) => [count === 1 ? 'Ein Messwert ist das Mittel mehrerer unmittelbar aufeinanderfolgender Ablesungen.' : `${capital(numberWord(count))} Messwerte sind Mittel mehrerer unmittelbar aufeinanderfolgender Ablesungen.`],
  timesCorrected: (items) => [`${items.length === 1 ? 'Eine Messzeit wurde' : `${capital(numberWord(items.length))} Messzeiten wurden`} berichtigt: ${items.join('; ')}.`],
  timeCorrection: ({ states, remark }) => `${oneAfterAnother(states)}${remarked(remark)}`,
  clean: () => ['Kein Messwert wurde ausgelassen, berichtigt oder als zweifelhaft gekennzeichnet.'],
};

export const eventWords: typeof eventEnglish = {
  events: (items) => [`Der Plan verzeichnet ${counted(items.length, 'ein Ereignis', 'Ereignisse')}: ${items.join('; ')}.`],
  event: ({ what, time, tanks }) => `${atText(time)} ${quoted(what)}${tanks === null ? '' : ` (betrifft ${tanks})`}`,
};

export const instrumentWords: typeof instrumentEnglish = {
  measured: ({ what, where, unit, instrument, details, read }) => {
    const facts = [...(instrument === null ? [] : [`Messgerät: ${quoted(instrument)}`]), ...details];
    const how = `${unit === '' ? '' : ` in ${unit}`} ${read ? 'gemessen' : 'zu messen'}`;
    return [`${capital(what)}${where === '' ? '' : ` ${where}`} ${read ? 'wurde' : 'war'}${how}${facts.length === 0 ? '' : ` (${facts.join('; ')})`}.`];
  },
  accuracy: (half) => `Genauigkeit ±${half}`,
  noAccuracy: () => 'Genauigkeit nicht angegeben',
  resolution: (step) => `Auflösung ${step}`,
  calibrated: (when) => (isDate(when) ? `kalibriert am ${when}` : `Kalibrierung: ${quoted(when)}`),
  scored: ({ what, where, scale, read }) =>
    [`${capital(what)}${where === '' ? '' : ` ${where}`} ${read ? 'wurde nach Augenschein bewertet' : 'war nach Augenschein zu bewerten'}, als ${listedText(scale.map((word) => `„${word}“`), 'oder')}.`],
  stationPressure: () => ['Der Luftdruck ist der am Ort gemessene, nicht auf Meereshöhe umgerechnet.'],
  seaPressure: ({ elevation }) => [`Der Luftdruck wurde auf Meereshöhe bezogen abgelesen${elevation === '' ? '' : ` und vor der Verwendung auf die Höhe des Standorts (${elevation}) umgerechnet`}.`],
};

const scatterWords: Readonly<Record<ScatterKind, string>> = {
  contrast: 'bei Kontrasten dagegen aus der Streuung der gepaarten Messwerte',
  'contrast-of-tanks': 'bei Kontrasten dagegen aus der Streuung zwischen gleich behandelten Becken',
  slope: 'bei Steigungen aus der Streuung um die Gerade, wenn dafür genug Messwerte da sind',
  night: 'bei angepassten Nächten aus der Streuung um die Anpassung und dem Anteil der Messgeräte',
};

export const computingWords: typeof computingEnglish = {
  definition: ({ name }) => `In den Formeln steht „${name}“ für die Funktion dieses Namens im Funktionsverzeichnis.`,
  opening: () => ['Jede berechnete Zahl trägt ihre Formel.'],
  cited: (source) => source.replace(/ (?:and|&) /g, ' und '),
  defined: ({ definition, citation }) => (citation === null ? [definition] : say`${definition.replace(/[.]$/, '')} (${citation}).`),
  uncertainty: ({ citation, scatter }) =>
    say`Wo eine Tabelle nichts anderes sagt, sind Zahlen nach ± die halben Breiten von 95-%-Intervallen; sie folgen aus der angegebenen Genauigkeit und Auflösung der Messgeräte und der Streuung von Wiederholungen (${citation})${
      scatter.length === 0 ? '' : `, ${listedText(scatter.map((kind) => scatterWords[kind]))}`}.`,
};

export const stopWords: typeof stopEnglish = {
  never: (args) => [`${rule(args)} Das trat nicht ein.`],
  crossed: ({ time, times, outcome, ...args }) => {
    const later = times > 1 ? ` und bei ${counted(times - 1, 'einer späteren Ablesung', 'späteren Ablesungen')}` : '';
    return [`${rule(args)} Das war ${atText(time)}${later} der Fall${outcome === null ? '; was daraufhin geschah, sagt die Notiz nicht.' : `. Ausgang: ${quotedSentence(outcome)}`}`];
  },
  unread: (args) => [rule(args)],
};

function rule(args: { condition: string; action: string | null }): string {
  return `Nach Plan war der Versuch abzubrechen, sobald Folgendes galt: ${args.condition}${args.action === null ? '.' : ` (${quoted(args.action)}).`}`;
}

export const evidenceWords: typeof evidenceEnglish = {
  oneASide: (citation) =>
    say`Die Einheit des Vergleichs ist das Becken: Bei einem Becken je Seite zeigen wiederholte Ablesungen, wie weit diese beiden Becken auseinanderlagen; Wiederholungen des Versuchs sind sie nicht, und sie können die Behandlung nicht von allem anderen trennen, worin sich die beiden Becken unterscheiden (${citation}).`,
  several: ({ treated, controls, citation }) =>
    say`Die Einheit des Vergleichs ist das Becken: ${capital(counted(treated, 'ein behandeltes Becken', 'behandelte Becken'))} und ${counted(controls, 'ein Vergleichsbecken', 'Vergleichsbecken')} zählen als ${treated === 1 ? 'eins' : numberWord(treated)} und ${controls === 1 ? 'eins' : numberWord(controls)}, gleich wie viele Messwerte jedes hat (${citation}).`,
  noControl: () => ['Ohne Vergleichsbecken zeigen die Messwerte, was geschah, nicht, was ohne die Behandlung geschehen wäre.'],
};
