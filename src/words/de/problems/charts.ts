// German sentences for the problems of figure, summary and limits blocks.
import type { chartsCodes } from '../../../problems/codes/charts.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { phraseIn } from '../../phrases.ts';
import { text, type Sentences } from '../../sentences.ts';
import { capital, inTank, withArticle } from '../grammar.ts';
import { phrases } from '../phrases.ts';
import { phaseName } from '../planCard.ts';
import { quantityNouns } from '../quantities.ts';
import { summaryWords } from '../summary.ts';
import { yamlReasons } from '../yaml.ts';

const meant = (nearest: string): string => `; gemeint ist vielleicht „${nearest}“.`;

/** Why a key of a specification of one's own is not allowed. */
const refusals: Readonly<Record<string, string>> = {
  loads: 'eine Zeichnung lädt nichts; ihre Daten sind die Messwerte dieser Notiz',
  code: 'eine Zeichnung enthält keinen Programmtext, keine Ausdrücke und keine Bedienelemente; filter, aggregate, timeUnit und bin mit einfachen Werten verwenden',
  links: 'eine Zeichnung führt nirgendwohin',
  settings: 'Farben, Schriften und Einstellungen sind die der Notiz',
  format: 'Zahlen und Zeiten werden wie in der übrigen Notiz geschrieben',
  axis: 'bei zwei Skalen auf einem Achsenpaar kreuzen sich Linien, wo der Zeichner es will; stattdessen facets: quantities verwenden',
  size: 'ihre Größe wäre vor dem Zeichnen nicht bekannt; facets: tanks oder facets: quantities verwenden oder je eine Abbildung',
  words: 'die Worte unter „title“, „caption“ und „alt“ der Abbildung schreiben',
};

function specWants(args: MessageArguments): string {
  const known = text(args, 'known');
  const [low = '', high = ''] = known.split(', ');
  switch (text(args, 'wants')) {
    case 'keys': return `Schlüssel schreiben: ${known}`;
    case 'list': return 'eine nicht zu lange Liste schreiben, etwa [1, 2]';
    case 'text': return 'einen kurzen Text schreiben';
    case 'number': return `eine Zahl von ${low} bis ${high} schreiben`;
    case 'colour': return 'eine Farbe mit ihrem englischen Namen oder als #1f77b4 schreiben';
    case 'field': return `die Daten haben die Felder ${known}`;
    case 'name': return 'einen Namen aus Buchstaben und Ziffern schreiben, der mit einem Buchstaben beginnt';
    case 'mark': return 'nötig ist „mark“ oder ein „layer“ mit einem';
    default: return `möglich ist ${known.replace(/, (?=[^,]*$)/, ' oder ')}`;
  }
}

/** `Zum Sauerstoffgehalt im Moosbecken`; a computed series by its formula. */
function emptySeries(args: MessageArguments): string {
  const known = quantityNouns[text(args, 'quantity')];
  if (!known) return `Zu „${text(args, 'series')}“`;
  const place = text(args, 'tank') ? ` ${inTank(text(args, 'tank'))}` : text(args, 'series').startsWith('room.') ? ' im Raum' : '';
  return `${capital(`zu ${withArticle(known, 'dative')}`.replace(/^zu dem /u, 'zum ').replace(/^zu der /u, 'zur '))}${place}`;
}

const ofMoment = (args: MessageArguments): boolean => ['at', 'interpolate'].includes(text(args, 'function'));

/** `in der Erholung`, `um 22:00 Uhr`, `bei „Licht aus“`, `im Zeitraum 22:00..02:00`; nothing where a row is a tank. */
function emptyRow(args: MessageArguments): string {
  const row = text(args, 'row');
  if (text(args, 'of') === 'tank') return '';
  if (text(args, 'of') === 'phase') return ` in der ${phaseName(row)}`;
  return ofMoment(args) ? ` ${/\d$/u.test(row) ? `um ${row} Uhr` : `bei ${summaryWords.moments[row] ?? `„${row}“`}`}` : ` im Zeitraum ${row}`;
}

/** Why the readings give no value for a cell of the table. */
const emptyCells: Readonly<Record<string, string>> = {
  'no-readings': 'es wurde nichts abgelesen', 'empty-window': 'in dieser Zeit wurde nichts abgelesen', 'too-few-readings': 'in dieser Zeit wurde zu wenig abgelesen',
  'no-reading-at-time': 'zu diesem Zeitpunkt wurde nichts abgelesen', 'outside-readings': 'der Zeitpunkt liegt außerhalb der Messwerte',
  'censored-value': 'ein Messwert liegt außerhalb des Messbereichs', 'zero-base': 'der erste Messwert ist null, davon gibt es keinen Prozentsatz',
};

export const chartsSentences: Sentences<keyof typeof chartsCodes> = {
  'block-unreadable': (args) => `Der Block „${text(args, 'block')}“ ist in seiner Zeile ${text(args, 'line')} nicht lesbar: ${yamlReasons[text(args, 'reason')] ?? 'es passt nicht zu den Zeilen darum herum'}.`,
  'option-unknown': (args) => `Ein Block „${text(args, 'block')}“ hat keine Angabe „${text(args, 'option')}“`
    + `${text(args, 'nearest') ? meant(text(args, 'nearest')) : text(args, 'known') ? `; bekannt sind ${text(args, 'known')}.` : '; er hat gar keine.'}`,
  'option-value': (args) => `Bei „${text(args, 'option')}“ ist möglich: ${text(args, 'known').replace(/, (?=[^,]*$)/, ' oder ')}.`,
  'series-unknown': (args) => `Es gibt keine Messwerte mit dem Namen „${text(args, 'name')}“`
    + `${text(args, 'nearest') ? meant(text(args, 'nearest')) : text(args, 'known') ? `; die Notiz hat ${text(args, 'known')}.` : '; die Notiz hat keine Messwerte.'}`,
  'figure-time-unreadable': (args) => `„${text(args, 'text')}“ nach „${text(args, 'option')}“ ist keine Zeit dieses Versuchs; eine Uhrzeit, ein Datum mit Uhrzeit oder einen Namen wie light-off schreiben.`,
  'figure-empty': (args) => `Es gibt nichts zu zeichnen: Im gezeigten Zeitraum liegt kein Messwert von ${text(args, 'shown') || 'irgendeinem Becken'}.`,
  'second-axis': (args) => `Eine Abbildung hat kein „${text(args, 'option')}“; bei zwei Skalen auf einem Achsenpaar kreuzen sich Linien, wo der Zeichner es will. Alle Reihen unter „show“ setzen: Jede Einheit bekommt ihr eigenes Feld, mit „facets: quantities“ jede Größe.`,
  'series-needed': (args) => `„${text(args, 'formula')}“ ist ${phraseIn(phrases, args, 'found')}; Messwerte nennen oder eine Formel, die an jedem Messwert einen Wert hat.`,
  'option-not-here': (args) => `„${text(args, 'option')}“ hat neben ${text(args, 'rows') === 'phases' ? 'Zeilen für Phasen' : 'einer Liste von Zeilen'} keine Bedeutung; entfernen oder die Zeiträume als Zeilen schreiben.`,
  'uncertainty-unknown': (args) => `Für ${text(args, 'series')} ist keine Genauigkeit angegeben, deshalb lässt sich kein Unsicherheitsband zeichnen; „accuracy“ unter „measure“ ergänzen.`,
  'spec-key': (args) => `Eine eigene Zeichenvorschrift hat hier kein „${text(args, 'key')}“${text(args, 'nearest') ? meant(text(args, 'nearest')) : `; bekannt sind ${text(args, 'known')}.`}`,
  'spec-value': (args) => `${text(args, 'value') ? `„${text(args, 'value')}“ ist hier nicht möglich` : 'Hier fehlt etwas oder ist von falscher Art'}; ${specWants(args)}.`,
  'spec-refused': (args) => `„${text(args, 'key')}“ ist in einer eigenen Zeichenvorschrift nicht erlaubt: ${refusals[text(args, 'reason')] ?? 'es tut mehr als zeichnen'}.`,
  'spec-too-many': (args) => `Eine eigene Zeichenvorschrift nimmt höchstens ${text(args, 'most')} Messwerte, hier sind es ${text(args, 'rows')}; mit „from“ und „to“ eingrenzen oder unter „show“ weniger Reihen nennen.`,
  'summary-empty': (args) => `Es gibt nichts zusammenzufassen: ${text(args, 'of') ? `für ${text(args, 'of')} wurde keine Zahl abgelesen` : 'die Notiz hat keine Messwerte'}.`,
  'summary-function': (args) => (text(args, 'exists') === 'yes'
    ? `„${text(args, 'function')}“ kann nicht in einer Tabelle für ${text(args, 'rows') === 'times' ? 'einzelne Zeitpunkte' : 'Zeiträume'} stehen; möglich sind ${text(args, 'known')}.`
    : `Es gibt keine Funktion „${text(args, 'function')}“; in so einer Tabelle möglich sind ${text(args, 'known')}.`),
  'summary-no-phases': () => 'Der Plan hat keine Phasen, weil er weder Lichtzeiten noch „phases“ nennt; eine Zeile je Becken bilden oder Zeiträume als Zeilen schreiben.',
  'summary-moment': (args) => `${text(args, 'text') ? `„${text(args, 'text')}“ ist kein Zeitpunkt dieses Versuchs` : 'Der Zeitpunkt zwischen vorher und nachher fehlt'}; hinter before-after schreiben, zum Beispiel before-after light-off.`,
  'summary-row': (args) => `„${text(args, 'text')}“ ist weder ein Zeitpunkt noch ein Zeitraum; eine Uhrzeit, eine Phase oder einen Zeitraum wie light-off..02:00 schreiben.`,
  'summary-rows-mixed': (args) => `Zeitpunkte (${text(args, 'times')}) und Zeiträume (${text(args, 'stretches')}) passen nicht in eine Tabelle; zwei daraus machen.`,
  'summary-cell-empty': (args) => `${emptySeries(args)} fehlt${emptyRow(args)} der Wert „${summaryWords.function(text(args, 'function'))}“: ${emptyCells[text(args, 'reason')] ?? 'die Messwerte lassen es nicht zu'}.`,
  'words-not-summed': (args) => `${text(args, 'series')} ist in Worten festgehalten, und die haben kein Mittel; die Werte stehen in der Messtabelle.`,
  'words-not-drawn': (args) => `${text(args, 'series')} ist in Worten festgehalten und wird nicht als Linie gezeichnet; die Werte stehen in der Messtabelle.`,
  'no-limits-stated': () => 'Der Plan nennt keine Grenzen, deshalb hat dieser Block nichts zu vergleichen; unter „limits“ im Plan angeben oder den Block entfernen.',
};
