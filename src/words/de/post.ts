// German words of a published page: head and foot, the working of each number, the data section, card and narration.
import type { PostWords } from '../en/post.ts';
import { counted, dateWords, listedText } from './grammar.ts';

export const postWords: PostWords = {
  date: dateWords,
  quotes: ['„', '“'],
  skip: 'Zum Text springen',
  published: (time) => `veröffentlicht am ${time}`,
  foot: (version) => `Gemacht mit Evenwater ${version}. Jede markierte Zahl und Aussage wurde beim Erstellen dieser Seite an den Messwerten geprüft; eine Marke sagt, was geprüft wurde, nicht, dass die Ursache bewiesen ist.`,
  references: 'Quellen',
  image: (words) => `${words} (Bild)`,
  imageAt: (source) => `Bild ${source}`,

  working: {
    statedAfter: (source) => `Vom Verfasser übernommen, nach ${source}.`,
    statedAlone: 'Vom Verfasser übernommen; ohne Quelle.',
    standsBecause: (condition) => `Steht, weil gilt: ${condition}`,
    about: 'im Text steht „etwa“',
    whichIs: (formula) => `, das ist ${formula},`,
    fromReadings: (count) => ` (aus ${counted(count, 'einem Messwert', 'Messwerten')})`,
    back: (number) => `zurück zu Nummer ${number} im Text`,
    summary: (count, stated) => (stated ? (count === 1 ? 'Woher das kommt' : 'Woher diese Angaben kommen') : count === 1 ? 'Wie das geprüft wurde' : `Wie diese ${count} geprüft wurden`),
    meanings: {
      computed: 'die Zahl im Text ist der Wert der Formel, auf die gezeigten Stellen',
      condition: 'die Bedingung trifft auf die Messwerte zu; das beweist keine Ursache',
      stated: 'aus der genannten Quelle; nicht aus diesen Messwerten berechnet',
      unchecked: 'nichts wurde geprüft',
    },
    heading: 'Wie jede Zahl berechnet wurde',
  },

  data: {
    heading: 'Daten und Plan',
    time: 'Zeit', remark: 'Bemerkung',
    block: (number) => `Block ${number}`,
    caption: ({ name, file, shown }) => `Messwerte wie aufgezeichnet${name ? `, ${name}` : ''}.${file ? ` Aus ${file.path}${file.hash === null ? '' : `, SHA-256 ${file.hash}`}.` : ''}${shown ? ` Die ersten ${shown.first} von ${shown.of} Zeilen.` : ''}`,
    note: 'Notiz', times: 'Zeiten', licence: 'Lizenz', accepted: 'Hingenommen', madeWith: 'Gemacht mit',
    zone: (zone) => (zone === null ? 'UTC' : `Ortszeit in ${zone}`),
    acceptedBy: (codes) => `vom Verfasser, der diese Warnungen angesehen hat und stehen lässt: ${codes.join(', ')}`,
    key: 'In der Tabelle unten geht ein Wert in Klammern in keine Rechnung ein, „a->b“ ist eine Berichtigung, die den ersten Wert behält, „?“ bezeichnet einen zweifelhaften Messwert, „-“ eine nicht gemachte Ablesung, „<“ und „>“ einen Wert außerhalb des Messbereichs und „a/b“ gleichzeitige Wiederholungen.',
    whole: 'Die Notiz, wie sie geschrieben wurde',
    theNote: ' (die Notiz selbst)', aDataFile: ' (eine Datei mit Messwerten)',
    files: 'Diese Seite trägt die Dateien, aus denen sie gemacht ist. Sie lassen sich hier speichern; „evenwater recheck“ prüft die ganze Seite nach:',
  },

  plusMinus: ({ source, figures, compared }) => {
    const head = figures === null ? 'Jedes genannte ±' : `Das ± in ${listedText(figures.map((each) => `„${each}“`))}`;
    if (source === 'instruments') return `${head} folgt allein aus den Messgeräten${compared ? '; wie weit die Becken von selbst auseinanderlaufen, steckt nicht darin' : ''}.`;
    return `${head} folgt aus der Streuung${source === 'both' ? ' und aus den Messgeräten' : ', nicht aus den Messgeräten'}.`;
  },
  limitsOfEvidence: (limits) => `Grenzen der Aussage: ${limits}`,
  answerFault: (words, computed) => `„${words}“${computed === null ? ' lässt sich nicht berechnen' : `: die Messwerte ergeben ${computed}`}`,
  figuresAsPrinted: 'Die Zahlen stehen wie gedruckt: Gesprochen werden nur Deutsch und Englisch.',
  abbreviations: /\b(?:z\. ?B|d\. ?h|u\. ?a|vgl|bzw|ca|etwa|Abb|Nr|St|Dr|evtl|ggf|usw)\.$|\bz\.$|\bd\.$|\bu\.$/u,

  recheck: {
    noNote: 'Der Beitrag trägt keine lesbare Notiz.',
    severalNotes: 'Der Beitrag trägt mehr als eine Notiz.',
    unreadable: (path) => `Die Datei „${path}“ im Beitrag lässt sich nicht entschlüsseln.`,
    altered: (path, found, stated) => `Die Datei „${path}“ im Beitrag wurde verändert: ihre SHA-256 ist ${found}, der Beitrag nennt ${stated === '' ? 'keine' : stated}.`,
    outside: (path) => `Der Beitrag nennt eine Datei „${path}“ außerhalb des Ordners der Notiz; sie wird ausgelassen.`,
    nouns: { number: 'Zahl', words: 'Text', value: 'Wert hinter der Zahl', formula: 'Formel', drawing: 'Zeichnung', markup: 'Auszeichnung' },
    difference: ({ printed, computed, formula }) => `${printed === '' ? 'im Beitrag fehlt es' : `im Beitrag steht „${printed}“`}, ${computed === '' ? 'die Notiz ergibt hier nichts' : `die Notiz ergibt „${computed}“`}${formula === null ? '' : `, aus ${formula}`}.`,
  },
};
