// German sentences for the problems of src/protocol.
import type { protocolCodes } from '../../../problems/codes/protocol.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';
import { list, near, phrase } from '../arguments.ts';
import { everyWords } from '../grammar.ts';
import { yamlReasons } from '../yaml.ts';

/** Kinds of names with their article, alike in the nominative and the accusative. */
const kinds: Readonly<Record<string, string>> = {
  tank: 'ein Becken', group: 'eine Gruppe', quantity: 'eine Größe', fact: 'eine Angabe zum Becken', event: 'ein Ereignis', phase: 'eine Phase',
  measure: 'eine Messgröße', result: 'ein Ergebnis',
};
const kind = (args: MessageArguments, name: string): string => kinds[text(args, name)] ?? text(args, name);

const quoteReasons: Readonly<Record<string, string>> = {
  colon: 'ein Doppelpunkt mit Leerzeichen einen neuen Schlüssel beginnen würde',
  start: 'das erste Zeichen eine eigene Bedeutung hat',
  quote: 'er nach dem schließenden Anführungszeichen weitergeht',
  bracket: 'er nach der schließenden Klammer weitergeht',
  comma: 'ein Komma in Klammern den Wert beendet',
  hash: 'ein Leerzeichen mit # einen Kommentar beginnen würde',
  'no-value': 'ein Komma in Klammern den Wert beendet und dieser Teil keinen Schlüssel hat',
};

const shapes: Readonly<Record<string, string>> = {
  text: 'ein einzelner Text', texts: 'eine Liste wie [a, b]', map: 'Schlüssel mit Werten darunter', maps: 'eine Liste von Zeilen, die mit einem Strich beginnen und Schlüssel haben',
};
const foundShapes: Readonly<Record<string, string>> = { text: 'ein Text', list: 'eine Liste', map: 'eine Gruppe von Schlüsseln' };

export const protocolSentences: Sentences<keyof typeof protocolCodes> = {
  'plan-without-keys': () => 'Der Plan enthält keine Zeilen der Form Schlüssel: Wert; mit „tanks:“, „schedule:“ und „measure:“ beginnen.',
  'yaml-unreadable': (args) => `Dies lässt sich nicht als Teil des Plans lesen, denn ${yamlReasons[text(args, 'reason')] ?? 'es passt nicht zu den Zeilen darum herum'}: „${text(args, 'text')}“.`,
  'tab-indent': (args) => `${text(args, 'lines') === '1' ? 'Diese Zeile ist' : `${text(args, 'lines')} Zeilen sind`} mit Tabulator eingerückt; mit Leerzeichen einrücken.`,
  'bad-indentation': (args) => `Diese Zeile steht unter keiner der Zeilen darüber; sie wird mit ${text(args, 'spaces')} Leerzeichen davor gelesen, also so einrücken oder wie gemeint.`,
  'missing-colon': (args) => `Nach „${text(args, 'key')}“ fehlt ein Doppelpunkt; ${text(args, 'key')}: und dahinter den Wert schreiben.`,
  'colon-needs-space': (args) => `Nach dem Doppelpunkt von „${text(args, 'key')}:“ fehlt ein Leerzeichen.`,
  'unclosed-quote': (args) => `Das Anführungszeichen, das hier beginnt, wird nie geschlossen: ${text(args, 'text')}.`,
  'bracket-unbalanced': (args) => `${text(args, 'extra') === 'yes' ? `Hier steht eine Klammer zu viel: ${text(args, 'text')}` : `Eine Klammer, die in dieser Zeile beginnt, wird nie geschlossen; ${text(args, 'text')} ergänzen`}.`,
  'needs-quotes': (args) => {
    const of = text(args, 'key') ? ` von „${text(args, 'key')}“` : '';
    return `Der Wert${of} muss in Anführungszeichen stehen, weil ${quoteReasons[text(args, 'reason')] ?? 'er Zeichen mit eigener Bedeutung enthält'}: ${text(args, 'text')}.`;
  },
  'formula-needs-quotes': (args) => `Das Komma schneidet diese Formel entzwei; in Anführungszeichen setzen: ${text(args, 'text')}.`,
  'text-after-hash': (args) => `Der Text hinter # wird nicht gelesen: „${text(args, 'text')}“; den Wert in Anführungszeichen setzen oder den Kommentar in eine eigene Zeile.`,
  'alias-refused': (args) => `Anker und Verweise (& und *) gibt es in Plänen nicht: ${text(args, 'text')}; den Text in Anführungszeichen schreiben, oder mit like: die Schlüssel eines anderen Beckens übernehmen.`,
  'duplicate-key': (args) => `„${text(args, 'key')}“ steht hier ein zweites Mal; nur eines von beiden behalten.`,
  'unknown-key': (args) => `Einen Schlüssel „${text(args, 'key')}“ gibt es hier nicht${near(args)}.`,
  'missing-key': (args) => `${text(args, 'of') === 'plan' ? 'Dem Plan' : `Bei „${text(args, 'of')}“`} fehlt der Schlüssel „${text(args, 'key')}“, zum Beispiel ${text(args, 'example')}.`,
  'wrong-type': (args) => `Zu „${text(args, 'key')}“ gehört ${shapes[text(args, 'expected')] ?? text(args, 'expected')}, aber hier steht ${foundShapes[text(args, 'found')] ?? 'etwas anderes'}.`,
  'unknown-value': (args) => `„${text(args, 'text')}“ ist kein Wert für „${text(args, 'key')}“${near(args)}; bekannt sind ${text(args, 'known')}.`,
  'unknown-unit': (args) => `Die Einheit „${text(args, 'unit')}“ ist nicht bekannt${near(args)}.`,
  'unit-does-not-fit': (args) => `„${text(args, 'key')}“ kann nicht in ${text(args, 'unit')} angegeben werden; zum Beispiel ${text(args, 'example')} schreiben.`,
  'unknown-zone': (args) => `Eine Zeitzone „${text(args, 'zone')}“ gibt es nicht${near(args)}; den Namen der Zone schreiben wie in Europe/Amsterdam.`,
  'no-time-zone': () => 'Der Plan nennt keine Zeitzone, deshalb gelten Uhrzeiten als UTC; place: und time zone: ergänzen.',
  'bad-time': (args) => `„${text(args, 'text')}“ lässt sich nicht als Zeit lesen${text(args, 'key') ? ` (bei „${text(args, 'key')}“)` : ''}; 2026-03-14 20:00 schreiben${text(args, 'key') === 'start' ? '' : ', eine Uhrzeit wie 22:00 oder einen Namen wie light-off + 1 h'}.`,
  'time-name-has-several': (args) => `„${text(args, 'name')}“ kommt in diesem Versuch mehrmals vor; angeben, welches gemeint ist: ${text(args, 'names')}.`,
  'time-name-has-none': (args) => `Dieser Plan hat kein ${text(args, 'name')}, deshalb hat „${text(args, 'key')}“ hier keine Zeit.`,
  'plan-time-skipped': (args) => `Die Zeit ${text(args, 'time')} gibt es in ${text(args, 'zone')} nicht, denn die Uhren werden über sie hinweg vorgestellt; eine Zeit schreiben, die es gibt.`,
  'plan-time-repeated': (args) => `Die Zeit ${text(args, 'time')} kommt in ${text(args, 'zone')} zweimal vor, denn die Uhren werden über sie hinweg zurückgestellt; mit dem Abstand von UTC sagen, welche gemeint ist.`,
  'window-backwards': (args) => `${text(args, 'key') === '' ? 'Der Zeitraum' : `„${text(args, 'key')}“`} endet vor dem Beginn: ${phrase(args, 'text')}.`,
  'end-before-start': (args) => `Der Versuch endet (${text(args, 'end')}), bevor er beginnt (${text(args, 'start')}).`,
  'too-many-slots': (args) => `Eine Ablesung ${everyWords(text(args, 'every'))} ergibt mehr als ${text(args, 'most')} Messzeiten; den Abstand und das Ende des Versuchs prüfen.`,
  'bad-duration': (args) => `„${text(args, 'text')}“ lässt sich nicht als Dauer lesen; zum Beispiel 30 min, 1 h oder 9 h 30 min schreiben.`,
  'bad-number': (args) => `„${text(args, 'text')}“ lässt sich nicht als Zahl für „${text(args, 'key')}“ lesen; zum Beispiel ${text(args, 'example')} schreiben.`,
  'bad-quantity': (args) => `„${text(args, 'text')}“ lässt sich nicht als Zahl mit Einheit für „${text(args, 'key')}“ lesen; zum Beispiel ${text(args, 'example')} schreiben.`,
  'bad-size': (args) => `„${text(args, 'text')}“ ist keine Angabe der Maße; Länge x Breite x Höhe mit Einheit schreiben, zum Beispiel 50 x 30 x 32 cm.`,
  'plan-decimal-comma': (args) => `„${text(args, 'text')}“ wird als ${text(args, 'mended')} gelesen; im Plan steht ein Punkt als Dezimalzeichen.`,
  'out-of-range': (args) => `„${text(args, 'key')}“ kann nicht ${text(args, 'text')} sein; zulässig: ${phrase(args, 'range')}.`,
  'water-deeper-than-tank': (args) => `Das Wasser im Becken „${text(args, 'tank')}“ wäre tiefer, als das Becken hoch ist; Maße und Wassertiefe prüfen.`,
  'volume-typed-twice': (args) => `Das Volumen des Beckens „${text(args, 'tank')}“ folgt aus Maßen und Wassertiefe, und diese gelten; das angegebene Volumen streichen oder die Maße.`,
  'reserved-name': (args) => `„${text(args, 'name')}“ ist ein Wort der Notizsprache und kann ${kind(args, 'kind')} nicht benennen; einen anderen Namen wählen.`,
  'bad-name': (args) => `„${text(args, 'name')}“ kann ${kind(args, 'kind')} nicht benennen; ein Name ist ein Buchstabe, gefolgt von Buchstaben, Ziffern und Bindestrichen.`,
  'name-used-twice': (args) => `„${text(args, 'name')}“ heißt schon ${kind(args, 'other')} und kann nicht auch ${kind(args, 'kind')} benennen.`,
  'like-in-a-circle': (args) => `Diese Becken verweisen mit „like“ im Kreis aufeinander: ${list(args, 'tanks').join(' → ')}; in einem davon die Schlüssel ausschreiben.`,
  'unknown-tank': (args) => `In diesem Plan gibt es kein Becken „${text(args, 'name')}“${near(args)}.`,
  'unknown-measure': (args) => `Dieser Plan misst kein „${text(args, 'name')}“${near(args)}.`,
  'criterion-with-level': (args) => `„${text(args, 'criterion')}“ hat eigene Werte, deshalb kann „${text(args, 'key')}“ nicht daneben stehen; eine weitere Grenze mit eigener Quelle angeben.`,
  'unknown-quantity': (args) => `„${text(args, 'what')}“ steht nicht in der Liste der Größen${near(args)}.`,
  'scale-word-twice': (args) => `„${text(args, 'word')}“ steht zweimal in der Skala; jedes Wort ist eine Stufe.`,
  'bad-plan-seal': (args) => `„${text(args, 'text')}“ ist kein Siegel; ein Siegel besteht aus einer Zeit und einer Prüfsumme wie 2026-03-14T19:00+01:00 sha256:9f2c… mit allen 64 Stellen.`,
};
