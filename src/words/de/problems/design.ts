// German sentences for the problems of src/design.
import type { designCodes } from '../../../problems/codes/design.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';
import { list, listed, one, quantity, tanks } from '../arguments.ts';
import { capital, inTank, listedText, theTank } from '../grammar.ts';

/** `Mattenbecken: keine Angabe; offenes Becken: Luftpumpe`. */
const sides = (args: MessageArguments): string => list(args, 'sides').map((each) => each.replace(/: $/, ': keine Angabe')).join('; ');

const partNames: Readonly<Record<string, string>> = {
  question: 'Frage', hypothesis: 'Hypothese', place: 'Ort', tanks: 'Becken', differs: '„differs“', schedule: 'Zeitplan', events: 'Ereignisse', measure: 'Messgeräte',
  equalise: 'Angleichungsschritte', phases: 'Phasen', limits: 'Grenzen', stop: 'Abbruchregeln', order: 'Reihenfolge', seed: 'Startwert', pairWithin: 'Paarbildung', expect: 'Erwartungen',
};
const parts = (args: MessageArguments): string => listedText(list(args, 'parts').map((each) => partNames[each] ?? each));

/** A single unit of time has a gender; any other length is a plural. */
const gaps: Readonly<Record<string, string>> = { '1 min': 'In der Minute', '1 h': 'In der Stunde', '1 d': 'An dem Tag' };

const lights: Readonly<Record<string, string>> = { 'lights-on': 'Licht an', sunrise: 'Sonnenaufgang' };

const inTanks = (args: MessageArguments, name: string): string => listedText(list(args, name).map(inTank));

export const designSentences: Sentences<keyof typeof designCodes> = {
  'no-control': (args) => `Kein Becken hat die Rolle „control“, deshalb fehlt der Vergleich für: ${tanks(args, 'tanks')}; einem Becken „role: control“ geben.`,
  'one-tank-per-role': (args) => (text(args, 'both') === 'yes'
    ? 'Mit einem Becken je Seite kann der Versuch zeigen, dass sich diese beiden Becken unterschieden, nicht dass die Behandlung die Ursache war; mit vertauschten Becken wiederholen.'
    : `Auf einer Seite steht nur ein Becken (${tanks(args, 'tanks')}), ein Unterschied kann also an diesem Becken liegen statt an der Behandlung; ein Becken hinzunehmen oder mit vertauschten Becken wiederholen.`),
  'tanks-differ-undeclared': (args) => `Die Becken unterscheiden sich in „${text(args, 'key')}“ (${sides(args)}), was „differs“ nicht nennt; angleichen oder nennen.`,
  'tanks-differ-in-readings': (args) => `Vor der Behandlung lagen ${theTank(text(args, 'tank'), 'nominative')} und ${theTank(text(args, 'other'), 'nominative')} um ${text(args, 'difference')} auseinander (${quantity(args, 'what')}); auf höchstens ${text(args, 'most')} angleichen.`,
  'event-in-one-tank': (args) => `„${text(args, 'what')}“ geschieht nur ${inTanks(args, 'tanks')}; auch ${inTanks(args, 'others')} ausführen oder erst nach dem Versuch.`,
  'common-step': (args) => `Um ${text(args, 'time')} springt ${text(args, 'quantity')} gleichermaßen ${inTanks(args, 'tanks')} (${listed(args, 'steps')}); vor einem Schluss darüber hinweg Sonde und Probe prüfen und als Ereignis festhalten, was getan wurde.`,
  'same-tank-first': (args) => `Mit dem Messgerät „${text(args, 'instrument')}“ wird immer zuerst ${theTank(text(args, 'tank'), 'nominative')} abgelesen; die Reihenfolge von Messzeit zu Messzeit wechseln („order: alternate“ oder „order: random“).`,
  'few-readings-before-lights-off': (args) => `Bis Licht aus um ${text(args, 'time')} ${one(args) ? 'ist nur eine Ablesung' : `sind nur ${text(args, 'count')} Ablesungen`} geplant; mindestens ${text(args, 'needed')} planen.`,
  'run-ends-early': (args) => `Die letzte Ablesung ist vor dem Ende dieser Nacht geplant (${lights[text(args, 'event')] ?? text(args, 'event')} um ${text(args, 'time')}, Ende des Versuchs um ${text(args, 'end')}), deshalb können der tiefste Wert und die Erholung fehlen; später enden.`,
  'interval-too-coarse': (args) => `${text(args, 'count') === '0' ? 'Keine Ablesung fällt' : one(args) ? 'Nur eine Ablesung fällt' : `Nur ${text(args, 'count')} Ablesungen fallen`} in „${text(args, 'phase')}“ (${text(args, 'length')}); dort öfter ablesen.`,
  'interval-coarse-for-rate': (args) => `${gaps[text(args, 'gap')] ?? `In den ${text(args, 'gap')}`} zwischen zwei Ablesungen kann sich ${text(args, 'quantity')} um ${text(args, 'change')} ändern, mehr als die ${text(args, 'effect')}, die der Versuch zeigen soll; öfter ablesen.`,
  'effect-below-instrument': (args) => `Ein Unterschied von ${text(args, 'effect')} bei ${text(args, 'quantity')} liegt unter dem, was das Messgerät zwischen zwei Becken unterscheiden kann (${text(args, 'least')}).`,
  'instrument-without-accuracy': (args) => `Die Genauigkeit des Messgeräts für ${text(args, 'quantity')}${text(args, 'instrument') ? ` („${text(args, 'instrument')}“)` : ''} ist nicht angegeben, deshalb haben seine Messwerte keine Unsicherheit; „accuracy:“ aus der Anleitung ergänzen.`,
  'calibration-old': (args) => `Das Messgerät für ${text(args, 'quantity')} wurde am ${text(args, 'date')} kalibriert, ${text(args, 'days')} Tage vor dem Beginn; neu kalibrieren (höchstens alle ${text(args, 'most')} Tage).`,
  'pressure-level-missing': (args) => `Angeben, für welche Höhe ${text(args, 'quantity')} gilt: „level: station“ für ein Barometer neben den Becken, „level: sea“ für einen Wetterbericht.`,
  'equalise-without-condition': (args) => `„${text(args, 'step')}“ hat keine Bedingung, die sich an den Messwerten zeigt; „accept:“ ergänzen, oder „done:“ mit dem Datum, sobald es getan ist.`,
  'animals-without-stop-rule': (args) => `${capital(inTank(text(args, 'tank')))} leben Tiere (${text(args, 'animals')}), und keine Abbruchregel achtet darauf; unter „stop if“ angeben, wann der Versuch endet und was zu tun ist.`,
  'limit-while-asleep': (args) => `Von ${text(args, 'from')} bis ${text(args, 'to')} (${text(args, 'length')}) sieht niemand nach, und ${text(args, 'quantity')} könnte in dieser Zeit jenseits der Grenze liegen; nachts öfter ablesen oder einen Alarm wachen lassen.`,
  'plan-changed-after-seal': (args) => `Der Plan ist nicht mehr so, wie er${text(args, 'time') ? ` am ${text(args, 'time')}` : ''} versiegelt wurde${text(args, 'parts') ? `; geändert: ${parts(args)}` : ''}; die Methoden sagen es.`,
  'repeat-changed': (args) => `Dieser Plan wiederholt ${text(args, 'name')} mit anderem Datum und mit Änderungen (${parts(args)}); die Methoden sagen es.`,
};
