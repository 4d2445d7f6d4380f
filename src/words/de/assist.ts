// German words of the editor's own help.
import type * as english from '../en/assist.ts';
import { quantityName } from './arguments.ts';

type SameKeys<T> = Readonly<Record<keyof T, string>>;

export const blockHelp: SameKeys<typeof english.blockHelp> = {
  protocol: 'Der Plan: Frage, Ort, Becken, Zeitplan und was gemessen wird.',
  readings: 'Eine Messtabelle: `time`, dann eine Spalte für jedes Becken und jede Größe.',
  values: 'Benannte Ergebnisse, je Zeile eines: `Name = Formel`.',
  figure: 'Ein Diagramm von Messwerten oder von dem, was aus ihnen berechnet wird.',
  summary: 'Eine berechnete Tabelle: nach Phasen, nach Becken, zu gewählten Zeiten, vorher und nachher.',
  limits: 'Die Grenzen des Plans, mit den Messwerten verglichen.',
  methods: 'Der Absatz über die Methoden, aus Plan und Messwerten geschrieben.',
  results: 'Sachliche Sätze, aus den Messwerten geschrieben.',
};

export const claimHelp: SameKeys<typeof english.claimHelp> = {
  fill: 'Eine Zahl, die berechnet und ausgefüllt wird.',
  value: 'Eine Zahl, die ihrer Formel entsprechen muss.',
  condition: 'Wörter, die gelten, solange eine Bedingung wahr ist.',
  stated: 'Etwas mit seiner Quelle Übernommenes, nicht Berechnetes.',
};

export const keywordHelp: SameKeys<typeof english.keywordHelp> = {
  in: 'Der Wert in einer anderen Einheit. Bei einem bekannten Stoff auch von der Masse zur Stoffmenge oder zum Gasvolumen in einem Liter: `min(mat.DO) in umol/L`.',
  and: 'Beide Bedingungen sind wahr.',
  or: 'Mindestens eine Bedingung ist wahr.',
  not: 'Die Bedingung ist nicht wahr.',
  '..': 'Ein Zeitraum von einem Zeitpunkt bis zu einem anderen.',
};

export const timeHelp: SameKeys<typeof english.timeHelp> = {
  start: 'Beginn des Zeitplans.', end: 'Ende des Zeitplans.', 'light-off': 'Licht aus.', 'light-on': 'Licht an.',
  sunrise: 'Sonnenaufgang am Ort.', sunset: 'Sonnenuntergang am Ort.', dawn: 'Beginn der bürgerlichen Dämmerung am Morgen.', dusk: 'Ende der bürgerlichen Dämmerung am Abend.',
};

export const optionHelp: SameKeys<typeof english.optionHelp> = {
  'figure.show': 'Was gezeichnet wird: `mat.DO`, eine Größe für alle Becken, ein Becken oder eine Formel, die eine Reihe ergibt, etwa `mat.DO - open.DO` oder `saturation(mat.DO)`.',
  'figure.from': 'Wo das Diagramm beginnt.', 'figure.to': 'Wo das Diagramm endet.',
  'figure.facets': '`tanks`: ein kleines Feld je Becken, mit einer Skala je Größe. `quantities`: ein Feld je Größe. Eine zweite Achse gibt es nicht.',
  'figure.uncertainty': '`yes` zeichnet das 95-%-Intervall, das die Genauigkeit der Messgeräte lässt, als Band.',
  'figure.title': 'Titel des Diagramms.', 'figure.caption': 'Wörter vor der erzeugten Bildunterschrift.', 'figure.alt': 'Wörter vor dem erzeugten Alternativtext.',
  'figure.spec': 'Eigenes Vega-Lite: `mark` und `encoding` (oder `layer`) und `transform`, in einer geschlossenen Auswahl, über die Daten `readings`. Zeilen sind die Messwerte, die zählen; Felder: `time`, `hours`, `series`, `tank`, `label`, `quantity`, `value`, `unit`, `low`, `high`, `phase`, `doubtful`.',
  'summary.of': 'Was zusammengefasst wird: `mat.DO`, eine Größe für alle Becken, ein Becken oder eine Formel, die eine Reihe ergibt. Ohne Angabe alle Messwerte.',
  'summary.rows': '`phases` (wie ohne Angabe), `tanks`, eine Liste von Zeitpunkten `[22:00, 02:00]` oder Zeiträumen `[baseline, 22:00..02:00]`, oder `before-after light-off` mit einem beliebigen Zeitpunkt.',
  'summary.show': 'Funktionen, die die Spalten ergeben, etwa `[min, mean, max]`; ohne Angabe tiefster Wert und Mittel. Für Zeitpunkte `at` oder `interpolate`.',
  'summary.from': 'Wo die Zeilen der Becken oder die Zeit davor beginnen.', 'summary.to': 'Wo die Zeilen der Becken oder die Zeit danach enden.', 'summary.caption': 'Wörter vor der erzeugten Tabellenüberschrift.',
  'limits.for': 'Wessen Grenzen gezeigt werden.',
  'methods.checklist': '`yes` fügt die Checkliste des Berichts hinzu.',
};

export const fileKeyHelp: SameKeys<typeof english.fileKeyHelp> = {
  from: 'Die Datendatei, im Ordner der Notiz oder darunter.', columns: 'Was jede Spalte der Datei enthält.', 'time zone': 'Die Zeitzone der Uhrzeiten in der Datei.',
  sha256: 'Hält die Datei fest: Eine geänderte Datei fällt dann auf.', delimiter: 'Was zwischen den Zellen steht.', decimal: 'Das Dezimalzeichen der Datei.',
  'date order': 'Die Reihenfolge von Tag, Monat und Jahr.', 'header line': 'Die Zeile mit den Spaltennamen, von 1 an gezählt.', encoding: 'Wie die Zeichen der Datei codiert sind.',
};

export const shared: SameKeys<typeof english.shared> = {
  gives: 'Ergibt', source: 'Quelle', example: 'Beispiel', meanOver: 'Mittel über', sampled: 'hier wurde abgelesen', next: 'nächste Messzeit', newName: 'ein neuer Eintrag',
};

export const fillers: SameKeys<typeof english.fillers> = {
  question: 'Was soll der Versuch zeigen?', place: 'Ort', instrument: 'Messgerät', series: 'Becken.Größe', name: 'Name', formula: 'Formel', number: 'Zahl',
  words: 'Wörter', source: 'Quelle', tank: 'Becken', label: 'Bezeichnung', plants: 'Wassersalat', plantless: 'keine',
};

export const severities: SameKeys<typeof english.severities> = { error: 'Fehler', warning: 'Warnung', information: 'Hinweis', hint: 'Tipp' };

export const renameRefusals: typeof english.renameRefusals = {
  'no-name': () => 'Nur Becken, Gruppen, Größen, Angaben zum Becken, Ereignisse, Phasen und benannte Ergebnisse lassen sich umbenennen.',
  'built-in': ({ name }) => `„${name}“ ist ein Wort der Notizsprache und behält seinen Namen.`,
  function: ({ name }) => `„${name}“ ist eine Funktion und behält ihren Namen.`,
  'sealed-readings': ({ name }) => `„${name}“ steht in einer versiegelten Messtabelle; ein neuer Name würde das Siegel brechen.`,
  'sealed-plan': ({ name }) => `„${name}“ steht in einem versiegelten Plan; ein neuer Name gälte als Abweichung.`,
  'not-a-name': ({ name }) => `„${name}“ kann kein Name sein: erst ein Buchstabe, dann Buchstaben, Ziffern und Bindestriche.`,
  reserved: ({ name }) => `„${name}“ ist ein Wort der Notizsprache; ein anderes wählen.`,
  taken: ({ name, other }) => `„${name}“ ist in dieser Notiz schon vergeben${other ? ` (${nameKinds[other]})` : ''}.`,
};

export const nameKinds: SameKeys<typeof english.nameKinds> = {
  tank: 'Becken', group: 'Gruppe von Becken', quantity: 'Größe', fact: 'Angabe zum Becken', event: 'Ereignis', phase: 'Phase', result: 'benanntes Ergebnis',
  time: 'Zeitpunkt', constant: 'Konstante',
};

export const quantityWord: typeof english.quantityWord = quantityName;

export const seriesDetail: typeof english.seriesDetail = (quantity, tank) => `${quantityName(quantity)}, ${tank}`;
