// German words of summary tables.
import type { SummaryWords } from '../en/summary.ts';
import { listedText } from './grammar.ts';

const functions: Readonly<Record<string, string>> = {
  at: 'Messwert', interpolate: 'interpoliert', first: 'erster', last: 'letzter', count: 'Messwerte', missing: 'ausgefallen', min: 'tiefster', max: 'höchster', mean: 'Mittel', median: 'Median',
  sd: 'Standardabweichung', range: 'Spannweite', 'time-of-min': 'Zeit des tiefsten', 'time-of-max': 'Zeit des höchsten', change: 'Änderung', rise: 'Anstieg', fall: 'Abfall',
  'percent-change': 'Änderung in Prozent', 'percent-rise': 'Anstieg in Prozent', 'percent-fall': 'Abfall in Prozent', rate: 'Rate von Ende zu Ende', slope: 'Steigung', 'robust-slope': 'robuste Steigung',
  'steepest-fall': 'steilster Abfall', 'steepest-rise': 'steilster Anstieg', 'turning-point': 'Wendepunkt', respiration: 'Atmung', reaeration: 'Oberflächenaustausch',
  'balance-point': 'Kompensationspunkt', 'predicted-min': 'vorhergesagt tiefster',
};

const readingsText = ({ least, most }: { readonly least: number; readonly most: number }): string => (least === most ? `${most} ${most === 1 ? 'Messwert' : 'Messwerte'}` : `${least} bis ${most} Messwerte`);

const countText = ({ least, most }: { readonly least: number; readonly most: number }): string => (least === most ? String(most) : `${least} bis ${most}`);

export const summaryWords: SummaryWords = {
  function: (name) => functions[name] ?? name,
  list: listedText,
  gap: 'Behandlung − Vergleich',
  gapOfMeans: 'Behandlung − Vergleich (Mittel der Becken)',
  time: 'Zeit',
  tank: 'Becken',
  stretch: 'Zeitraum',
  phaseHead: 'Phase',
  phase: (id) => id.replace(/^baseline(?=$|-)/u, 'Ausgangsphase').replace(/^dark(?=$|-)/u, 'Dunkelphase').replace(/^recovery(?=$|-)/u, 'Erholung').replaceAll('-', ' '),
  before: (moment) => `vor ${moment}`,
  after: (moment) => `nach ${moment}`,
  change: 'nachher minus vorher',
  moments: {
    'light-off': '„Licht aus“', 'light-on': '„Licht an“', start: 'dem Beginn', end: 'dem Ende', sunrise: 'Sonnenaufgang', sunset: 'Sonnenuntergang', dawn: 'der Morgendämmerung', dusk: 'der Abenddämmerung',
  },
  event: (what) => `„${what}“`,
  span: (from, to) => `${from} bis ${to}`,
  whole: 'alle Messwerte',
  nothing: 'Es gibt noch nichts zusammenzufassen.',
  noValue: 'kein Wert',
  of: (series, head) => `${series}, ${head}`,
  caption: ({ quantities, rows, moment }) => {
    const by = { phases: 'nach Phasen', windows: 'nach Zeiträumen', tanks: 'nach Becken', times: 'zu gewählten Zeiten', 'before-after': `vor und nach ${moment ?? ''}` }[rows];
    return `${quantities} ${by}.`;
  },
  stretches: (stretches) => {
    const counts = stretches.every((each) => each.readings !== null);
    return `${stretches.map((each, index) => {
      const said = `${each.name === '' ? '' : `${each.name}: `}${each.from} bis ${each.to}`;
      if (!counts) return said;
      return `${said}, ${index === 0 ? `${readingsText(each.readings!)} je Spalte` : countText(each.readings!)}`;
    }).join('; ').replace(/^./u, (letter) => letter.toUpperCase())}.`;
  },
  readings: (count) => `Jede Spalte zählt ${readingsText(count)}.`,
  percentBase: 'Prozente beziehen sich auf den ersten Messwert desselben Zeitraums.',
  lightsOff: 'Der Messwert bei „Licht aus“ dient bei Änderung, tiefstem und höchstem Wert beiden Seiten und zählt bei Mittel und Anzahl zur Zeit davor.',
  sharedMoment: (moment) => `Ein Messwert genau um ${moment} zählt zu beiden Seiten.`,
  uncertainty: 'Zahlen nach ± sind die halbe Breite eines 95-%-Intervalls, aus der angegebenen Genauigkeit und Auflösung der Messgeräte.',
  uncertaintyOfFits: 'Zahlen nach ± sind die halbe Breite eines 95-%-Intervalls: bei angepassten Werten aus der Streuung um die Anpassung, sonst aus der angegebenen Genauigkeit und Auflösung der Messgeräte.',
  contrast: 'Die Änderung von Behandlung − Vergleich ist ein zeitlich gepaarter Kontrast; sein ± rechnet die Streuung der Messwerte ein und wie sehr jeder dem vorigen folgt.',
  contrastOfTanks: 'Die Änderung von Behandlung − Vergleich ist ein Kontrast, in dem jedes Becken einmal zählt.',
};
