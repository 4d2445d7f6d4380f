// German sentences for the problems of src/readings and src/dataset.
import type { readingsCodes } from '../../../problems/codes/readings.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { text, type Sentences } from '../../sentences.ts';
import { listed, many, one } from '../arguments.ts';

function sealSentence(args: MessageArguments): string {
  const head = text(args, 'head');
  const time = text(args, 'time');
  switch (text(args, 'kind')) {
    case 'value': return `${head} um ${time} wurde nach dem Versiegeln geändert; den versiegelten Wert wiederherstellen oder mit -> berichtigen, damit der erste Wert stehen bleibt.`;
    case 'time': return `Die Zeit ${time} wurde nach dem Versiegeln geändert; die versiegelte Zeit wiederherstellen oder mit -> berichtigen.`;
    case 'head': return `${head === '' ? 'Die Reihe der Spalten' : `Die Spalte ${head} oder ihre Einheit`} wurde nach dem Versiegeln geändert; wiederherstellen.`;
    case 'row-added': return `Die Zeile ${time} kam nach dem Versiegeln hinzu; in einem eigenen Block eintragen.`;
    case 'row-removed': return 'Eine Zeile wurde nach dem Versiegeln entfernt; wiederherstellen.';
    default: return 'Diese Tabelle ist nicht mehr so, wie sie versiegelt wurde; die versiegelten Werte wiederherstellen oder mit -> berichtigen.';
  }
}

/** What a list of times or lines leaves out. */
const more = (args: MessageArguments): string => (text(args, 'more') === '' ? '' : ` und ${one(args, 'more') ? 'eine weitere' : `${text(args, 'more')} weitere`}`);

/** `probe.csv, Zeile 4`. */
const lines = (args: MessageArguments): string => `${text(args, 'path')}, ${one(args) ? 'Zeile' : 'Zeilen'} ${text(args, 'lines')}${more(args)}`;

function rowSentence(args: MessageArguments): string {
  const times = one(args) ? 'diese Zeit' : 'diese Zeiten';
  switch (text(args, 'reason')) {
    case 'repeated': return `${lines(args)}: Die Uhren wurden zurückgestellt, ${one(args) ? 'diese Zeit kam' : 'diese Zeiten kamen'} also zweimal vor; die Zeitzone der Datei als Abstand wie +01:00 angeben.`;
    case 'skipped': return `${lines(args)}: Die Uhren wurden über ${times} hinweg vorgestellt; die Zeitzone der Datei als Abstand wie +01:00 angeben.`;
    case 'no-date': return `${lines(args)}: Der Zeit fehlt das Datum; die Spalten für Datum und Uhrzeit mit + verbinden oder die Tabelle in die Notiz einlesen.`;
    case 'no-clock': return `${lines(args)}: Die Zeit ist nur ein Datum.`;
    case 'width': return `${lines(args)}: mehr Zellen als Spaltenköpfe, die Zuordnung ist also unklar; nach einem Dezimalkomma oder einem Komma in einem Text suchen.`;
    default: return `${lines(args)}: Die Zeit ist nicht lesbar.`;
  }
}

export const readingsSentences: Sentences<keyof typeof readingsCodes> = {
  'readings-empty': () => 'Dieser Block „readings“ ist leer; mit den Spaltenköpfen beginnen, time zuerst.',
  'time-column-missing': (args) => `Der erste Spaltenkopf muss time sein, nicht ${text(args, 'head') || 'leer'}.`,
  'head-unreadable': (args) => `${text(args, 'head')} ist kein Spaltenkopf; das Becken (oder room), einen Punkt und die Größe schreiben, wie mat.DO.`,
  'column-unknown': (args) => (text(args, 'kind') === 'tank'
    ? `Der Plan hat kein Becken ${text(args, 'name')}; er hat ${text(args, 'known')}.`
    : `Der Plan misst ${text(args, 'name')} nicht; ${text(args, 'known') ? `unter measure ${text(args, 'known').includes(', ') ? 'stehen' : 'steht'} ${text(args, 'known')}` : 'unter measure ergänzen'}.`),
  'column-twice': (args) => `Die Spalte ${text(args, 'head')} steht hier zweimal; ein zweites Messgerät braucht einen Namen, wie ${text(args, 'head').split('@')[0]!}@titration.`,
  'column-not-planned': (args) => `Nach dem Plan wird ${text(args, 'quantity')} hier gemessen: ${text(args, 'places')}; der Spaltenkopf ${text(args, 'head')} sagt etwas anderes.`,
  'head-unit-mismatch': (args) => `${text(args, 'head')} kann nicht in ${text(args, 'unit')} stehen: Der Plan misst in ${text(args, 'planned')}.`,
  'column-count': (args) => `Diese Zeile hat ${text(args, 'found')} ${one(args, 'found') ? 'Wert' : 'Werte'} für ${text(args, 'expected')} ${one(args, 'expected') ? 'Spalte' : 'Spalten'}; für eine ausgefallene Ablesung - schreiben.`,
  'cell-unreadable': (args) => (text(args, 'words')
    ? `${text(args, 'text')} ist kein Wort der Skala von ${text(args, 'head')}: ${text(args, 'words')}.`
    : `${text(args, 'text')} ist nicht als Messwert von ${text(args, 'head')} lesbar; eine Zahl schreiben, oder - wenn nicht abgelesen wurde.`),
  'thousands-mark': (args) => `${text(args, 'text')} enthält ein Tausenderzeichen oder ein Dezimalkomma; ${listed(args, 'meanings', 'oder')} schreiben.`,
  'decimal-comma': (args) => `${text(args, 'text')} wird als ${text(args, 'value')} gelesen; mit Dezimalpunkt schreiben.`,
  'correction-without-remark': (args) => `${text(args, 'columns')} wurde ohne ein Wort berichtigt; den Grund nach einem ; ans Ende der Zeile schreiben.`,
  'left-out-without-remark': (args) => `${text(args, 'columns')} wurde ohne ein Wort ausgelassen; den Grund nach einem ; ans Ende der Zeile schreiben.`,
  'remark-without-row': () => 'Diese Bemerkung gehört zu keiner Zeile; hinter eine Zeile setzen oder mit # beginnen.',
  'time-unreadable': (args) => `${text(args, 'text')} ist keine Zeit; 20:30 schreiben, 2026-03-15T06:30, oder +90 für Minuten nach dem Beginn.`,
  'time-needs-date': () => 'Der Tag dieser Uhrzeit ist unbekannt: dem Plan einen Beginn geben oder darüber eine Tageszeile wie # 2026-03-16 setzen.',
  'time-needs-start': () => 'Diese Zeit zählt vom Beginn des Zeitplans, und der Plan nennt keinen.',
  'time-wants-date': (args) => `Der Versuch dauert länger als einen Tag: ${text(args, 'time')} eine Tageszeile oder ein volles Datum geben.`,
  'time-goes-back': (args) => `${text(args, 'time')} liegt vor der Zeile darüber, und am nächsten Tag wäre es ${text(args, 'step')} später; das volle Datum schreiben.`,
  'time-ambiguous': (args) => `Die Uhren wurden in ${text(args, 'zone')} zurückgestellt, ${text(args, 'time')} kam also zweimal vor; den Abstand von UTC ergänzen.`,
  'time-skipped': (args) => `Die Uhren wurden in ${text(args, 'zone')} über ${text(args, 'time')} hinweg vorgestellt; den Abstand der abgelesenen Uhr von UTC ergänzen.`,
  'value-implausible': (args) => {
    const perhaps = text(args, 'perhaps');
    const slip = perhaps ? `; vielleicht in ${perhaps}?` : '.';
    const range = `${text(args, 'low')} bis ${text(args, 'high')} ${text(args, 'unit')}`;
    return one(args)
      ? `${text(args, 'text')} liegt weit außerhalb dessen, was bei ${text(args, 'head')} möglich ist (${range})${slip}`
      : `${text(args, 'count')} Messwerte von ${text(args, 'head')}, der erste ${text(args, 'text')}, liegen weit außerhalb dessen, was möglich ist (${range})${slip}`;
  },
  'reading-outside-run': (args) => (one(args)
    ? `Die Ablesung um ${text(args, 'first')} liegt außerhalb des Versuchs.`
    : `${text(args, 'count')} Zeilen liegen außerhalb des Versuchs, die erste um ${text(args, 'first')}, die letzte um ${text(args, 'last')}.`),
  'slots-missed': (args) => `Von ${text(args, 'head')} fehlt der Messwert zu ${text(args, 'missed')} von ${text(args, 'planned')} ${one(args, 'planned') ? 'Messzeit' : 'Messzeiten'}: ${text(args, 'times')}${more(args)}.`,
  'duplicate-reading': (args) => `${text(args, 'columns')} ${many(args, 'columns') ? 'haben' : 'hat'} um ${text(args, 'time')}${Number(args['count']) > 1 ? ` und zu ${Number(args['count']) - 1} weiteren Zeiten` : ''} schon einen Wert; nur einen von beiden behalten.`,
  'times-nearly-pair': (args) => `${text(args, 'count')} Zeiten hier treffen fast die eines früheren Blocks; mit pair within: ${text(args, 'within')} im Plan gälten sie als Paare.`,
  'seal-broken': sealSentence,
  'seal-unreadable': () => 'Dieses Siegel ist nicht lesbar; eine Tabelle hat eine Siegelzeile, so wie der Befehl zum Versiegeln sie schrieb.',
  'data-file-missing': (args) => `Neben dieser Notiz gibt es keine Datei ${text(args, 'path')}; dort ablegen oder den Pfad berichtigen.`,
  'data-file-not-loaded': (args) => `${text(args, 'path')} ist noch nicht gelesen.`,
  'data-file-outside': (args) => `${text(args, 'path') || 'Der Pfad'} liegt nicht im Ordner dieser Notiz; die Datei dorthin kopieren und den Pfad mit Schrägstrichen / schreiben.`,
  'data-file-changed': (args) => `${text(args, 'path')} ist nicht die Datei, die festgehalten wurde; die alte wiederherstellen oder die jetzige festhalten.`,
  'data-file-detected': (args) => `${text(args, 'path')} wurde so gelesen: ${text(args, 'found')}; zum Festlegen in den Block schreiben.`,
  'data-file-layout': (args) => `${text(args, 'path')} lässt sich nicht in Spalten teilen; das Trennzeichen mit delimiter angeben.`,
  'data-file-keys': (args) => {
    const reason = text(args, 'reason');
    if (reason === 'NO_TARGET') return 'Angeben, was diese Spalte der Datei enthält: time, oder ein Becken und eine Größe wie mat.DO.';
    if (reason === 'NO_COLUMNS') return 'Unter columns für jede Spalte der Datei eine Zeile schreiben: Spaltenkopf, Doppelpunkt und was sie enthält.';
    return 'Die Schlüssel dieses Blocks sind nicht lesbar; nach einem fehlenden Doppelpunkt, einer Klammer oder einem Anführungszeichen suchen.';
  },
  'data-file-key-unknown': (args) => `${text(args, 'key')} ist kein Schlüssel eines Blocks „readings“; die Schlüssel sind ${text(args, 'known')}.`,
  'data-file-key-value': (args) => `${text(args, 'text')} ist für ${text(args, 'key')} nicht möglich; möglich ist ${text(args, 'known')}.`,
  'data-file-columns': (args) => `Unter columns angeben, was die Spalten der Datei enthalten: ${text(args, 'known')}.`,
  'data-file-column': (args) => `Die Datei hat keine Spalte ${text(args, 'name')}; sie hat ${text(args, 'known')}.`,
  'data-file-no-time': (args) => `Unter columns angeben, welche Spalte der Datei die Zeit enthält: ${text(args, 'known')}.`,
  'data-file-unit': (args) => `In der Datei steht ${text(args, 'printed')} über ${text(args, 'from')}, gelesen wird ${text(args, 'head')} aber in ${text(args, 'unit')}.`,
  'data-file-rows': rowSentence,
  'data-file-cells': (args) => `${lines(args)}: Dort ist kein Messwert von ${text(args, 'head')} lesbar.`,
  'date-order-unclear': (args) => `Daten wie ${text(args, 'example')} in ${text(args, 'path')} sind auf zwei Weisen lesbar; mit date order angeben, wie: ${listed(args, 'orders', 'oder')}.`,
  'decimal-unclear': (args) => `Die Kommas in ${text(args, 'path')} können Dezimalkommas sein oder zwischen Tausendern stehen; mit decimal angeben: comma oder point.`,
};
