// German sentences for the problems of src/note.
import type { noteCodes } from '../../../problems/codes/note.ts';
import { text, type Sentences } from '../../sentences.ts';

const cuts: Readonly<Record<string, string>> = {
  'table-bar': 'vom | der Tabelle in zwei Teile geschnitten', heading: 'vom Ende der Überschrift abgeschnitten', paragraph: 'vom Ende des Absatzes abgeschnitten',
};

export const noteSentences: Sentences<keyof typeof noteCodes> = {
  'protocol-missing': () => 'Diese Notiz hat keinen Block „protocol“, deshalb kann nichts darin geprüft werden; einen hinzufügen, der Becken, Zeitplan und Messgrößen nennt.',
  'second-protocol': (args) => `Eine Notiz hat nur einen Block „protocol“, und der steht in Zeile ${text(args, 'line')}; diesen Plan in eine eigene Notiz verschieben.`,
  'near-miss-block': (args) => `\`${text(args, 'found')}\` ist kein Blockwort, deshalb erscheint dies als bloßer Code; gemeint ist vielleicht \`${text(args, 'word')}\`.`,
  'block-indented': (args) => `Dieser Block „${text(args, 'word')}“ ist so weit eingerückt, dass Markdown ihn als Code liest; weiter nach links rücken.`,
  'fence-not-closed': (args) => text(args, 'word') === ''
    ? 'Dieser Block wird nie geschlossen und nimmt alles Folgende auf; mit einer Zeile aus denselben Zeichen schließen.'
    : `Dieser Block „${text(args, 'word')}“ wird nicht geschlossen, bevor der nächste beginnt; mit einer Zeile aus denselben Zeichen schließen.`,
  'block-name-twice': (args) => `Ein Block „${text(args, 'word')}“ mit dem Namen ${text(args, 'name')} steht schon in Zeile ${text(args, 'line')}; diesem einen anderen Namen geben.`,
  'claim-not-closed': (args) => `Dem Beleg „${text(args, 'words')}“ fehlt die schließende Klammer, deshalb wird er nicht geprüft; hinter die Formel ein } setzen.`,
  'claim-cut': (args) => `Der Beleg „${text(args, 'words')}“ wird ${cuts[text(args, 'by')] ?? 'in zwei Teile geschnitten'} und deshalb nicht geprüft; in einem Stück lassen.`,
  'claim-in-number': (args) => `In „${text(args, 'words')}“ steht eine Ziffer oder ein Vorzeichen direkt am Beleg, sodass eine andere Zahl zu lesen ist als die geprüfte; ein Leerzeichen dazwischen setzen oder die ganze Zahl in die Klammern nehmen.`,
  'claim-in-image-text': (args) => `Der Beleg „${text(args, 'words')}“ steht im Text eines Bildes, wo nichts geprüft wird; die Zahl in den Fließtext setzen.`,
  'claim-in-html': (args) => `Der Beleg „${text(args, 'words')}“ steht in einem HTML-Block, wo nichts geprüft wird; in den Fließtext setzen.`,
  'claim-wants-spaces': (args) => `„${text(args, 'words')}“ wird nicht geprüft, denn in einem Beleg steht auf beiden Seiten des Gleichheitszeichens ein Leerzeichen.`,
  'claim-without-words': () => 'Dieser Beleg zeigt im Text nichts; vor das Gleichheitszeichen die Zahl setzen oder ein ?, das ausgefüllt wird.',
};
