// German sentences for the problems of src/experiment.
import type { experimentCodes } from '../../../problems/codes/experiment.ts';
import { text, type Sentences } from '../../sentences.ts';
import { listed, one } from '../arguments.ts';

export const experimentSentences: Sentences<keyof typeof experimentCodes> = {
  'value-line-unreadable': (args) => `„${text(args, 'line')}“ ist kein benanntes Ergebnis; in der Form „Name = Formel“ schreiben.`,
  'result-name-reserved': (args) => `„${text(args, 'name')}“ hat in Formeln schon eine Bedeutung; dem Ergebnis einen anderen Namen geben.`,
  'result-named-twice': (args) => `„${text(args, 'name')}“ ist zweimal vergeben; eines der beiden Ergebnisse umbenennen.`,
  'equalise-failed': (args) => `„${text(args, 'step')}“ wurde nicht erreicht: ${text(args, 'condition')} gilt nicht um ${listed(args, 'times')}.`,
  'stop-rule-crossed': (args) => `Abbruchregel erreicht um ${text(args, 'time')}: ${text(args, 'condition')}. Im Plan steht: ${text(args, 'do')}. Unter „outcome“ festhalten, was geschehen ist.`,
  'stop-rule-written-up': (args) => `Um ${text(args, 'time')} wurde eine Abbruchregel erreicht (${text(args, 'condition')}); was geschah: ${text(args, 'outcome')}.`,
  'accepted-code-unknown': (args) => `Es gibt keinen Problemcode „${text(args, 'code')}“${text(args, 'nearest') ? `; am nächsten kommt „${text(args, 'nearest')}“` : ''}.`,
  'accepted-cannot-be': (args) => `„${text(args, 'code')}“ ist ein Fehler und kann nicht hingenommen werden; er muss behoben werden.`,
  'template-text': (args) => `„${text(args, 'text')}“ ist eine Anweisung der Vorlage; durch eigene Worte ersetzen oder herausnehmen.`,
  'nothing-read-yet': (args) => (one(args) ? 'Es gibt noch keine Messwerte; eine Formel, eine Abbildung oder ein Beleg wartet auf die ersten.' : `Es gibt noch keine Messwerte; ${text(args, 'count')} Formeln, Abbildungen und Belege warten auf die ersten.`),
};
