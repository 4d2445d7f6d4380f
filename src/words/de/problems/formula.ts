// German sentences for the problems of src/formula.
import type { formulaCodes } from '../../../problems/codes/formula.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';
import { list, listed, near, one, phrase, quantities, quoted } from '../arguments.ts';
import { capital } from '../grammar.ts';
import { quantityNouns } from '../quantities.ts';

const at = (args: MessageArguments): string => (text(args, 'time') === '' ? '' : ` um ${text(args, 'time')}`);
const either = (args: MessageArguments, name: string): string => listed(args, name, 'oder');
const ppmMeant = (args: MessageArguments): string => ([text(args, 'left'), text(args, 'right')].includes('ppm') ? ' Wo laut Anleitung des Messgeräts ppm für mg/L steht, im Plan mg/L schreiben.' : '');

/** `Salzgehalt`; two units as `µmol/kg in mg/L`. */
const conversion = (args: MessageArguments): string => (quantityNouns[text(args, 'about')]?.name ?? text(args, 'about').replace(' ', ' in '));

/** What an equation takes in, with its preposition. A test holds that none is missing. */
export const inputs: Readonly<Record<string, string>> = {
  temperature: 'eine Temperatur', pressure: 'einen Luftdruck', salinity: 'einen Salzgehalt', elevation: 'eine Höhe', pH: 'einen pH-Wert', alkalinity: 'eine Alkalinität',
  'carbonate hardness': 'eine Karbonathärte', 'general hardness': 'eine Gesamthärte', calcium: 'einen Calciumgehalt', magnesium: 'einen Magnesiumgehalt',
  concentration: 'eine Konzentration', conductivity: 'eine Leitfähigkeit', 'specific conductance': 'eine Leitfähigkeit bei 25 °C', 'specific gravity': 'eine relative Dichte',
  'reference temperature': 'eine Bezugstemperatur', saturation: 'eine Sättigung', 'sea pressure': 'einen Wasserdruck', 'total ammonia': 'einen Gesamtammoniumgehalt',
};

export const formulaSentences: Sentences<keyof typeof formulaCodes> = {
  'formula-empty': () => 'Hier steht keine Formel; schreiben, woraus die Zahl berechnet wird.',
  'formula-syntax': (args) => `Die Formel ist nicht lesbar: Erwartet wird ${phrase(args, 'expected')}, ${text(args, 'found') === '' ? 'aber sie endet hier' : `gefunden wurde „${text(args, 'found')}“`}.`,
  'formula-too-long': (args) => `Die Formel ist länger als ${text(args, 'limit')} Zeichen; in benannte Ergebnisse aufteilen.`,
  'formula-too-deep': () => 'Die Formel ist zu tief verschachtelt; in benannte Ergebnisse aufteilen.',
  'formula-chained': () => 'Vergleiche lassen sich nicht aneinanderreihen; zwei davon mit „and“ verbinden.',
  'parenthesis-not-closed': () => 'Diese Klammer wird nicht geschlossen.',
  'operator-needs-spaces': (args) => `Um „${text(args, 'operator')}“ gehören Leerzeichen, denn Namen können Bindestriche enthalten.`,
  'number-too-large': (args) => `${text(args, 'text')} ist zu groß zum Rechnen.`,
  'instant-unreadable': (args) => `„${text(args, 'text')}“ ist keine Zeit; 22:30, 2026-03-15 02:30 oder +1h30 schreiben.`,
  'unknown-name': (args) => `Nichts in dieser Notiz heißt „${text(args, 'name')}“${near(args)}.`,
  'unknown-function': (args) => `Eine Funktion „${text(args, 'name')}“ gibt es nicht${near(args)}.`,
  'function-without-operands': (args) => `„${text(args, 'name')}“ ist eine Funktion; in Klammern angeben, worauf sie angewandt wird, wie ${text(args, 'name')}(mat.DO).`,
  'wrong-argument': (args) => `Zu „${text(args, 'function')}“ gehört ${phrase(args, 'expected')}; hier steht ${phrase(args, 'found')}.`,
  'missing-argument': (args) => `Bei „${text(args, 'function')}“ fehlt „${text(args, 'argument')}“: ${phrase(args, 'expected')}. Die Schreibweise ist ${text(args, 'signature')}.`,
  'too-many-arguments': (args) => `„${text(args, 'function')}“ kann damit nichts anfangen; die Schreibweise ist ${text(args, 'signature')}.`,
  'option-unknown-here': (args) => (text(args, 'options') === '' ? `„${text(args, 'function')}“ kennt kein „${text(args, 'option')} …“.`
    : `„${text(args, 'function')}“ kennt kein „${text(args, 'option')} …“; bekannt ist ${quoted(args, 'options')}.`),
  'operands-do-not-fit': (args) => (text(args, 'right') === '' ? `„${text(args, 'operator')}“ ist hier nicht möglich (${phrase(args, 'left')}).`
    : `„${text(args, 'operator')}“ ist dazwischen nicht möglich: ${phrase(args, 'left')} und ${phrase(args, 'right')}.`),
  'unit-mismatch': (args) => `${typeof args['left'] === 'object' ? capital(phrase(args, 'left')) : text(args, 'left')} und ${phrase(args, 'right')} messen nicht dasselbe.`,
  'substance-needed': (args) => `Zwischen ${text(args, 'left')} und ${text(args, 'right')} lässt sich nur umrechnen, wenn der Wert zu einem einzigen Stoff mit bekannter molarer Masse gehört; das ist hier nicht so.`,
  'density-needed': (args) => `Zwischen ${text(args, 'left')} und ${text(args, 'right')} lässt sich nur mit der Dichte des Wassers umrechnen, und die ist hier nicht bekannt; beides in einer Einheit angeben.${ppmMeant(args)}`,
  'no-true-zero': (args) => `${text(args, 'unit') === 'pH' ? 'Ein pH-Wert' : `Ein Wert in ${text(args, 'unit').replace('deg', '°')}`} hat keine Prozente und kein Vielfaches, denn null heißt hier nicht „nichts“; stattdessen die Differenz angeben.`,
  'zero-base': (args) => (text(args, 'time') === '' ? 'Hier würde durch null geteilt.' : `Der Messwert um ${text(args, 'time')} ist null, Prozente davon haben keinen Wert.`),
  'not-finite': () => 'Das Ergebnis wäre keine endliche Zahl.',
  'plain-number-needed': (args) => `„${text(args, 'function')}“ gilt für reine Zahlen, nicht für ${text(args, 'unit')}; zuvor durch einen Wert in derselben Einheit teilen.`,
  'negative-not-possible': (args) => `„${text(args, 'function')}“ hat für eine negative Zahl${text(args, 'function') === 'ln' ? ' oder null' : ''} keinen Wert.`,
  'decimals-unreadable': (args) => `„${text(args, 'found')}“ ist keine Anzahl von Dezimalstellen; eine ganze Zahl von 0 bis 12 schreiben.`,
  'no-readings': (args) => `Von ${text(args, 'name')} gibt es noch keinen Messwert.`,
  'no-column': (args) => `Eine Spalte „${text(args, 'name')}“ wurde nicht aufgezeichnet${text(args, 'columns') === '' ? '' : `; es gibt ${quoted(args, 'columns')}`}.`,
  'several-instruments': (args) => `„${text(args, 'name')}“ wurde mit mehreren Messgeräten aufgezeichnet; angeben, welches gemeint ist: ${either(args, 'columns')}.`,
  'group-empty': (args) => `Zu „${text(args, 'name')}“ gehört kein Becken.`,
  'quantity-after-group': (args) => `Nach „${text(args, 'name')}“ gehört ein Punkt und eine Größe, wie ${text(args, 'name')}.DO.`,
  'empty-window': (args) => `Von ${text(args, 'name')} gibt es zwischen ${text(args, 'from')} und ${text(args, 'to')} keinen Messwert.`,
  'too-few-readings': (args) => `„${text(args, 'function')}“ braucht mindestens ${text(args, 'least')} Messwerte von ${text(args, 'name')}, aber hier ${one(args) ? 'ist nur einer' : `sind nur ${text(args, 'count')}`}.`,
  'no-reading-at-time': (args) => `Um ${text(args, 'time')} gibt es keinen ${args['dropped'] === 'yes' ? 'verwendbaren ' : ''}Messwert von ${text(args, 'name')}; ${list(args, 'neighbours').length > 1 ? 'die nächsten sind' : 'der nächste ist'} um ${listed(args, 'neighbours')}.`,
  'reading-far-from-end': (args) => `Der Messwert von ${text(args, 'name')}, der ${text(args, 'wanted')} am nächsten liegt, ist von ${text(args, 'found')}, also ${text(args, 'distance')} entfernt; die Änderung umfasst nur die Messwerte.`,
  'outside-readings': (args) => `${text(args, 'time')} liegt außerhalb der Messwerte von ${text(args, 'name')} (${text(args, 'first')} bis ${text(args, 'last')}).`,
  'gap-bridged': (args) => `Von ${text(args, 'from')} bis ${text(args, 'to')} fehlen Messwerte; dort wurde eine gerade Linie gezogen.`,
  'censored-value': (args) => `Der Messwert von ${text(args, 'name')} um ${text(args, 'time')} liegt außerhalb des Messbereichs, deshalb hat „${text(args, 'function')}“ keinen Wert; einen Zeitraum ohne ihn wählen.`,
  'too-many-readings': (args) => `${text(args, 'function')} vergleicht je zwei Messwerte; ${text(args, 'name')} hat ${text(args, 'count')}, höchstens ${text(args, 'most')} sind möglich: einen kürzeren Zeitraum angeben.`,
  'replicates-needed': (args) => `${text(args, 'function')} braucht mindestens zwei Behandlungsbecken und zwei Vergleichsbecken; der Plan hat ${text(args, 'treatment')} und ${text(args, 'control')}.`,
  'too-many-tanks': (args) => `${text(args, 'function')} zählt alle Aufteilungen der Becken durch; ${text(args, 'count')} Becken sind zu viele.`,
  'no-neighbours': (args) => `Von ${text(args, 'name')} folgen hier keine zwei Messwerte aufeinander, zwischen denen keiner fehlt.`,
  'no-stretch': (args) => `Von ${text(args, 'name')} liegen keine zwei Messwerte ${text(args, 'length')} auseinander, zwischen denen keiner fehlt.`,
  'ambiguous-time': (args) => `${text(args, 'time')} kommt in diesem Versuch mehrmals vor; ${either(args, 'times')} schreiben.`,
  'ambiguous-phase': (args) => `Der Versuch hat mehrere Phasen „${text(args, 'name')}“; ${either(args, 'phases')} schreiben.`,
  'no-such-phase': (args) => `Dieser Versuch hat keine Phase „${text(args, 'name')}“; der Zeitplan nennt kein Licht aus, aus dem sie folgen würde.`,
  'time-outside-run': (args) => `${text(args, 'time')} liegt außerhalb des Versuchs (${text(args, 'start')} bis ${text(args, 'end')}).`,
  'time-not-in-run': (args) => `„${text(args, 'name')}“ kommt in diesem Versuch nicht vor.`,
  'schedule-needed': (args) => `„${text(args, 'name')}“ braucht im Plan einen Zeitplan mit Beginn.`,
  'level-not-reached': (args) => `Kein Messwert von ${text(args, 'name')} liegt hier ${text(args, 'side') === 'below' ? 'unter' : 'über'} ${text(args, 'level')}.`,
  'never-settled': (args) => `${text(args, 'name')} bleibt nie ${text(args, 'length')} lang innerhalb von ${text(args, 'within')} mit drei Messwerten darin.`,
  'never-turns': (args) => `${text(args, 'name')} steigt nach dem tiefsten Messwert nicht weiter an, als das Messgerät unterscheiden kann.`,
  'accuracy-needed': (args) => `„${text(args, 'function')}“ braucht die Genauigkeit jedes Messgeräts hinter ${text(args, 'name')}; unter measure bei dem Eintrag accuracy: ergänzen.`,
  'all-or-any': () => 'Diese Bedingung gilt bei manchen Messwerten oder bei keinem; all(…) oder any(…) darum schreiben.',
  'condition-needed': (args) => `Hier wird eine Bedingung gebraucht wie mat.DO < 3 mg/L; gefunden wurde ${phrase(args, 'found')}.`,
  'formula-not-a-value': (args) => `Eine Formel ergibt einen Wert, aber hier steht ${phrase(args, 'found')}; zum Beispiel mat.DO oder volume(mat) schreiben.`,
  'word-not-in-scale': (args) => `„${text(args, 'word')}“ ist kein Wort der Skala von ${text(args, 'quantity')}: ${either(args, 'scale')}.`,
  'result-failed': (args) => `Das Ergebnis „${text(args, 'name')}“ ist nicht berechenbar; siehe das Problem an seiner eigenen Formel.`,
  'result-circle': (args) => `„${text(args, 'name')}“ verweist auf sich selbst zurück.`,
  'tank-fact-missing': (args) => `Im Plan fehlt beim Becken „${text(args, 'tank')}“ die Angabe „${text(args, 'key')}“, die „${text(args, 'function')}“ braucht.`,
  'quantity-needed': (args) => `„${text(args, 'function')}“ braucht vom Becken „${text(args, 'place')}“: ${quantities(args, 'quantity', 'oder')}; in einer Spalte wie ${text(args, 'example')} aufzeichnen.`,
  'pressure-needed': (args) => `„${text(args, 'function')}“ braucht den Luftdruck; in einer Spalte wie room.P aufzeichnen, oder standard-pressure angeben, wenn eine Atmosphäre gemeint ist.`,
  'pressure-level-needed': (args) => `Der Plan sagt nicht, ob ${text(args, 'quantity')} der Druck am Ort ist oder auf Meereshöhe umgerechnet; level: station oder level: sea ergänzen.`,
  'elevation-needed': (args) => `${text(args, 'quantity')} ist auf Meereshöhe umgerechnet; die Höhe des Ortes ergänzen, damit der Druck dort bestimmt werden kann.`,
  'pressure-not-station': (args) => `${text(args, 'value')} hPa um ${text(args, 'time')} kann nicht der Druck auf ${text(args, 'elevation')} m sein, wo etwa ${text(args, 'expected')} hPa üblich sind; ist er auf Meereshöhe umgerechnet, level: sea schreiben.`,
  'exchange-not-identified': (args) => `„${text(args, 'function')}“ hat keine Antwort: Diese ${text(args, 'count')} Messwerte trennen Atmung und Oberflächenaustausch nicht; bekannt ist nur die Abnahme insgesamt${text(args, 'decline') === '' ? '' : ` (${text(args, 'decline')})`}.`,
  'level-never-reached': (args) => `Die angepasste Nacht kommt bei ${text(args, 'equilibrium')} mg/L zur Ruhe und erreicht ${text(args, 'level')} nie.`,
  'prediction-below-nothing': (args) => `${text(args, 'function')} fiele hier unter null, wo die angepasste Nacht nicht mehr gilt; nach einer kürzeren Dunkelheit oder kleinerem Besatz fragen.`,
  'no-balance': (args) => `In diesen Messwerten von ${text(args, 'name')} überwiegt die Sauerstofferzeugung die Atmung noch nicht.`,
  'oxygen-column-needed': (args) => `Zu „${text(args, 'function')}“ gehört der gelöste Sauerstoff eines Beckens wie mat.DO; hier steht ${text(args, 'found')}.`,
  'no-joint-rows': (args) => `„${text(args, 'function')}“ findet keine Zeile, in der ${text(args, 'name')}, Wassertemperatur und Luftdruck zusammen abgelesen wurden.`,
  'outside-equation-range': (args) => `„${text(args, 'function')}“ gilt für ${inputs[text(args, 'input')] ?? text(args, 'input')} von ${text(args, 'low')} bis ${text(args, 'high')} ${text(args, 'unit')}, hier${at(args)} ist es ${text(args, 'value')}.`,
  'not-for-saline-water': (args) => `„${text(args, 'function')}“ gilt für Süßwasser, und dieses Wasser ist${at(args)} salzig.`,
  'equation-not-applicable': (args) => `„${text(args, 'function')}“ ist${at(args)} nicht berechenbar: Für die Umrechnung (${conversion(args)}) ist hier zu wenig bekannt.`,
  'reference-temperature-needed': (args) => `Für den Salzgehalt aus ${text(args, 'quantity')} wird die Temperatur gebraucht, die auf der Senkspindel steht; im Plan angeben, zum Beispiel „reference temperature: 25 degC“ bei ${text(args, 'quantity')}.`,
};
