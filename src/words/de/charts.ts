// German words of charts: captions, text alternatives, labels.
import type { ChartWords, CourseFacts, PlaceFacts } from '../en/charts.ts';
import { counted, dateWords, inTank, listedText, numberWord, tankName } from './grammar.ts';

const inPlace = ({ label, kind }: PlaceFacts): string => (kind === 'tank' ? inTank(label) : kind === 'room' ? 'im Raum' : `in „${label}“`);

export const chartWords: ChartWords = {
  months: ['Jan.', 'Feb.', 'März', 'Apr.', 'Mai', 'Juni', 'Juli', 'Aug.', 'Sep.', 'Okt.', 'Nov.', 'Dez.'],
  dayFormat: '%-d. %b',
  list: (parts) => listedText(parts),
  date: dateWords,
  clock: (clock) => `${clock} Uhr`,
  moment: (clock, date) => `${clock} Uhr am ${date}`,
  datesTo: (first, last) => `${first} bis ${last}`,
  titleInside: (title) => title,
  room: 'Raum',
  inPlaces: (places) => {
    const tanks = places.filter(({ kind }) => kind === 'tank');
    return listedText(tanks.length > 3 ? [`in ${numberWord(tanks.length)} Becken`, ...places.filter(({ kind }) => kind !== 'tank').map(inPlace)] : places.map(inPlace));
  },
  seriesName: (label, quantity) => (quantity === null ? label : `${label}, ${quantity}`),
  noReading: (name) => `${name}: kein Messwert, der zählt.`,
  oneReading: (name, amount, time) => `${name}: ein Messwert, ${amount} um ${time}.`,
  course: (facts: CourseFacts) => {
    const notes = [
      ...(facts.doubtful > 0 ? [`${facts.doubtful} zweifelhaft`] : []), ...(facts.leftOut > 0 ? [`${facts.leftOut} ausgelassen`] : []),
      ...(facts.outside > 0 ? [`${facts.outside} außerhalb des Messbereichs`] : []),
    ];
    return `${facts.name}: beginnt bei ${facts.first} (${facts.firstTime}), tiefster Wert ${facts.lowest} um ${facts.lowestTime}, `
      + `höchster ${facts.highest} um ${facts.highestTime}, endet bei ${facts.last} (${facts.lastTime}); `
      + `${facts.count} Messwerte${notes.length > 0 ? `, ${listedText(notes)}` : ''}${facts.within === null ? '' : `, jeder auf ± ${facts.within} oder besser genau (95 %)`}.`;
  },
  lineChart: ({ what, from, to, zone }) => `Liniendiagramm, ${what}, von ${from} bis ${to} (${zone}).`,
  dark: (spans) => `Dunkel: ${nights(spans)}.`,
  twilight: (spans) => `Bürgerliche Dämmerung ohne Lampen: ${nights(spans)}.`,
  events: (events) => `${events.length === 1 ? 'Ereignis' : 'Ereignisse'}: ${events.map(({ label, time }) => `${label} um ${time}`).join('; ')}.`,
  limitDrawn: (label) => `Eingezeichnete Grenze: ${label}.`,
  caption: ({ quantities, places, dates }) => `${quantities} ${places}, ${dates}.`,
  bare: (text) => text.replace(/^(?:der|die|das) /, ''),
  differenceIn: (quantity) => `${quantity} (Unterschied)`,
  minus: (a, b) => `${a} minus ${b}`,
  band: 'Band: 95-%-Intervall aus Genauigkeit und Auflösung der Messgeräte',
  facets: { tanks: 'Ein Feld je Becken, mit einer Skala je Größe.', quantities: 'Ein Feld je Größe.' },
  shownReadings: ({ what, from, to, zone }) => `Die Messwerte: ${what}, von ${from} bis ${to} (${zone}).`,
  fields: {
    time: 'Zeit', hours: 'Stunden seit Beginn', series: 'Reihe', tank: 'Becken', label: 'Becken', quantity: 'Größe', unit: 'Einheit', phase: 'Phase', doubtful: 'Zweifelhaft',
    value: 'Wert', low: 'Untere Grenze (95 %)', high: 'Obere Grenze (95 %)',
  },
  aggregates: {
    count: 'Messwerte', mean: 'Mittel', median: 'Median', min: 'Tiefster Wert', max: 'Höchster Wert', sum: 'Summe', stdev: 'Standardabweichung', q1: 'Erstes Quartil', q3: 'Drittes Quartil',
    distinct: 'Verschiedene Werte',
  },
  ownChart: ({ marks, channels, rows }) => `Zeichnung von ${rows} Messwerten mit ${listedText(marks.length > 0 ? marks : ['Zeichen'])}`
    + `${channels.length > 0 ? `; ${listedText(channels.map(([channel, field]) => `${channel} zeigt ${field}`))}` : ''}.`,
  ownRows: (rows, without) => `Gezeichnet aus ${rows} ${rows === 1 ? 'Messwert' : 'Messwerten'}`
    + `${without > 0 ? `; ${without} ausgelassene oder außerhalb des Messbereichs liegende ${without === 1 ? 'gehört' : 'gehören'} nicht dazu` : ''}.`,
  shadedDark: 'schattiert: dunkel',
  phases: (phases) => `${phases.length === 1 ? 'Phase' : 'Phasen'} des Plans: ${phases.map((phase) => `${phase.id} von ${phase.from} bis ${phase.to}`).join('; ')}.`,
  framedPhases: (ids) => `eingerahmt: ${ids.length === 1 ? 'die Phase' : 'die Phasen'} ${listedText(ids.map((id) => `„${id}“`))}`,
  shadedTwilight: 'heller schattiert: bürgerliche Dämmerung, Lampen aus',
  dashedLimits: 'quer gestrichelt: Grenzen aus dem Plan',
  hollow: (count) => `hohl: ${count === 1 ? 'ein zweifelhafter Messwert' : 'zweifelhafte Messwerte'}`,
  crosses: (count) => (count === 1 ? 'Kreuz: ein Messwert, der in keine Rechnung eingeht' : 'Kreuze: Messwerte, die in keine Rechnung eingehen'),
  arrows: (count) => (count === 1 ? 'Pfeil: ein Wert außerhalb des Messbereichs' : 'Pfeile: Werte außerhalb des Messbereichs'),
  brokenLine: 'über fehlende Messwerte ist keine Linie gezogen',
  lightsOff: 'Licht aus',
  lightsOn: 'Licht an',
  sides: { 'at least': 'mindestens', 'at most': 'höchstens' },
  limitFor: (bound, whom) => `${bound} für ${whom}`,
  inTanks: (what, labels) => `${what} (${labels.map(tankName).join(', ')})`,
  kinds: { plain: '', doubtful: ' (zweifelhaft)', 'left-out': ' (ausgelassen)', below: ' oder weniger', above: ' oder mehr' },
  timesIn: (zone) => (zone === null ? 'Zeiten in UTC' : `Zeiten in ${zone.name} (UTC${zone.offset}${zone.changed ? ' durchweg; Uhren umgestellt' : ''})`),
};

function nights(spans: readonly (readonly [string, string])[]): string {
  const parts = spans.map(([from, to]) => `${from} bis ${to}`);
  return parts.length <= 3 ? listedText(parts) : `${parts[0]!} und ${counted(parts.length - 1, 'eine spätere Nacht', 'spätere Nächte')}`;
}
