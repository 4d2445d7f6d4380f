// German words of what stands round the author's text in the preview and on the page: marks of claims, figures, tables.
import type { PageWords } from '../en/page.ts';
import { dateWords } from './grammar.ts';
import { phaseName } from './planCard.ts';

export const pageWords: PageWords = {
  date: dateWords,
  figure: (number) => `Abbildung ${number}.`,
  table: (number) => `Tabelle ${number}.`,
  figureInWords: 'Die Abbildung in Worten',
  needsProtocol: 'Dieser Block braucht einen Plan, der sich lesen lässt.',
  nothingToDraw: 'Noch gibt es nichts zu zeichnen.',
  noMethods: 'Hier steht der Methodenabsatz, sobald der Plan Becken, Zeitplan und Messgrößen hat.',
  noResults: 'Hier stehen die Ergebnissätze, sobald es Messwerte gibt.',
  stepByStep: (rows) => `Die Messwerte Schritt für Schritt (${rows} ${rows === 1 ? 'Zeile' : 'Zeilen'})`,
  cannotBeComputed: 'lässt sich nicht berechnen',

  claim: {
    marks: { computed: 'aus den Messwerten berechnet', condition: 'Bedingung geprüft', stated: 'übernommen, nicht berechnet', unchecked: 'nicht geprüft' },
    standsWhile: (condition) => `steht, solange gilt: ${condition}`,
    mismatch: 'stimmt nicht mit den Messwerten überein',
    readingsGive: (value) => `die Messwerte ergeben ${value}`,
    notTrue: 'trifft auf die Messwerte nicht zu',
    notFilled: 'noch nicht ausgefüllt',
    note: (mark, number) => `${mark}, Anmerkung ${number}`,
  },

  severities: { error: 'Fehler', warning: 'Warnung', information: 'Hinweis', hint: 'Tipp' },
  atLine: (severity, line) => `${severity}, Zeile ${line}: `,
  toLine: 'Diese Zeile im Editor zeigen und zu ihr gehen',
  moreProblems: (count) => `und ${count} weitere`,

  readings: {
    notTaken: 'nicht gemessen',
    meanOf: (count) => `Mittel aus ${count}`,
    meanOfReadings: (count, readings) => `Mittel aus ${count} Messwerten: ${readings}`,
    leftOut: 'ausgelassen',
    leftOutOfAll: 'geht in keine Rechnung ein',
    doubtful: 'zweifelhaft',
    first: 'zuerst',
    cannotBeRead: 'nicht lesbar',
    since: (clock) => `seit ${clock}`,
    time: 'Zeit',
    reading: 'Messwert',
    step: 'Schritt',
    perHour: 'je Stunde',
    difference: 'Unterschied',
    treatmentMinusControl: 'Behandlung − Vergleich',
    rowsBetween: (rows) => `… ${rows} Zeilen dazwischen sind hier nicht gezeigt …`,
    caption: ({ what, unit, name, words, compares, differenceUnit }) =>
      `${what}${unit ? ` (${unit})` : ''}${name ? `, ${name}` : ''}: ${words ? 'wie notiert' : `Messwerte, Schritt seit dem Messwert davor und seine Rate je Stunde${compares ? `; der Unterschied ist Behandlung minus Vergleich${differenceUnit === null ? '' : ` (${differenceUnit})`}` : ''}`}.`,
    none: 'Noch keine Messwerte.',
    fileNotLoaded: (path) => `Die Messwerte aus ${path} stehen hier, sobald die Datei geladen ist.`,
    fileMissing: (path) => `Die Datei ${path} wurde nicht gefunden.`,
    fileEmpty: (path) => `Aus ${path} wurden keine Messwerte übernommen.`,
  },

  values: {
    none: 'Noch keine benannten Ergebnisse: je Zeile eines schreiben, „Name = Formel“.',
    heads: ['Ergebnis', 'Wert', 'Wie es berechnet ist'],
    caption: 'Benannte Ergebnisse. Zahlen nach ± sind die halbe Breite eines 95-%-Intervalls, aus der angegebenen Genauigkeit und Auflösung der Messgeräte; bei Kontrasten und Steigungen stattdessen aus der Streuung, bei angepassten Nächten auch aus ihr. Zeiten in Klammern sind die Enden eines ungleichen Intervalls.',
  },

  limits: {
    none: 'Der Plan nennt keine Grenzen.',
    heads: { for: 'Für', limit: 'Grenze', source: 'Quelle' },
    caption: 'Grenzen aus dem Plan gegen die Messwerte. ✓ eingehalten, ✕ nicht eingehalten; ausgelassene Messwerte zählen nicht.',
    noSource: 'ohne Quelle',
    sides: { 'at least': 'mindestens', 'at most': 'höchstens' },
    extremes: { min: 'tiefster Wert', max: 'höchster Wert' },
    seen: ({ extreme, data, clock, date }) => `${extreme} ${data} um ${clock} Uhr${date === null ? '' : `, ${date}`}`,
    margin: (data, unsure) => `Abstand ${data}${unsure ? ', weniger als das Messgerät unterscheiden kann' : ''}`,
    beyond: ({ side, hours, first }) => `${side === 'below' ? 'darunter' : 'darüber'} für ${hours}, zuerst um ${first}`,
    notAssessable: (needs, has) => `○ nicht beurteilbar: nötig sind ${needs} Tage hintereinander, die Messwerte decken ${has === 0 ? 'keinen' : has} ganz ab`,
    lowestFrom: (amount, date) => {
      const [year, month, day] = date.split('-').map(Number);
      return `tiefster Wert ${amount}, vom ${dateWords({ year: year!, month: month!, day: day! })} an`;
    },
    parts: { minimum: 'Minimum', '7-day mean': 'Mittel über 7 Tage', '7-day mean minimum': 'mittleres Minimum über 7 Tage', '30-day mean': 'Mittel über 30 Tage' },
    partLimit: ({ quantity, part, amount }) => `${quantity}, ${part} mindestens ${amount}`,
  },

  whatIf: {
    scenarios: {
      asFitted: (length) => `wie angepasst, ${length} Dunkelheit`,
      longer: (length) => `${length} Dunkelheit`,
      exchange: 'eine Luftpumpe, die den Oberflächenaustausch verdoppelt',
      stocking: 'halb so viele Tiere und Pflanzen',
    },
    noAnswer: 'keine Antwort',
    head: 'Was wäre, wenn',
    lowestOxygen: 'tiefster Sauerstoffgehalt',
    hoursBelow: (level) => `Stunden unter ${level}`,
    caption: (phase) => `Vorhersagen aus der angepassten Nacht${phase === null ? '' : ` (${phaseName(phase)})`}, mit 95-%-Intervallen aus der Streuung um die Anpassung und aus den Messgeräten. Sie setzen voraus, dass alle Tiere, Pflanzen und Bakterien weitermachen wie bisher und das Wasser seine Temperatur behält: damit planen, sich nicht darauf verlassen.`,
  },
};
