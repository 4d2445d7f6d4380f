// German words of the open data: what each table, column and file holds. Names of columns and values in them stay.
import type { OpenDataWords } from '../en/openData.ts';

const apostrophe = 'Vor Text, der mit =, +, - oder @ beginnt, steht ein Apostroph.';
const unitWritten = 'Einheit, wie die Notiz sie schreibt.';
const quantityId = 'Kurzname der Größe.';
const quantityInWords = 'Die Größe in Worten (englischer Name der Liste).';

export const openDataWords: OpenDataWords = {
  long: {
    title: 'Messwerte, einer je Zeile',
    description: 'Jeder Messwert, wie er jetzt gilt, mit Einheit, Unsicherheit, Kennzeichen und, wo er berichtigt wurde, seinem ersten Wert. Nichts Aufgezeichnetes fehlt.',
    columns: {
      time: (zone) => `Ortszeit mit Abstand zu UTC (${zone}).`, time_utc: 'Derselbe Zeitpunkt in UTC.', series: 'Ort, Größe und Messgerät, wie Formeln sie nennen.', place: 'Kurzname des Beckens, oder room.',
      label: 'Wie das Becken im Text heißt.', role: 'treatment (Behandlung) oder control (Vergleich).', group: 'Gruppe gleich behandelter Becken.', quantity: quantityId, what: quantityInWords, instrument: `Das Messgerät in Worten. ${apostrophe}`,
      value: 'Der Messwert in der Einheit derselben Zeile; bei below-range und above-range die Grenze des Messgeräts; leer, wo nicht gemessen wurde.', word: 'Für Größen auf einer Skala von Wörtern.',
      unit: unitWritten, unit_ucum: 'Einheit als UCUM-Code; leer, wo UCUM keinen hat.',
      half_width_95: 'Halbe Breite des 95-%-Intervalls aus angegebener Genauigkeit, Auflösung und Wiederholungen, in derselben Einheit; leer, wo keine Genauigkeit angegeben ist.',
      flags: (names) => `Eines oder mehrere von ${names}, durch Leerzeichen getrennt.`, used: 'yes, wo der Messwert in Rechnungen eingeht, sonst no.', first_value: 'Der zuerst notierte Wert, wo er berichtigt wurde.',
      corrections: `Alle notierten Werte, der erste voran. ${apostrophe}`, repeats: 'Die gleichzeitigen Messungen, deren Mittel der Wert ist.', as_written: `Die Zelle, wie sie in der Notiz steht. ${apostrophe}`,
      remark: `Die Bemerkung zur Zeile. ${apostrophe}`, earlier_times: 'Zuerst notierte Zeiten der Zeile, wo ihre Zeit berichtigt wurde.', block: 'Name des Blocks mit den Messwerten.', unit_written: 'Einheit, in der der Wert notiert wurde.',
    },
  },
  wide: {
    title: 'Messwerte, eine Zeit je Zeile',
    description: 'Die Messwerte, die in Rechnungen eingehen, eine Spalte je Reihe; ausgelassene, fehlende und außerhalb des Messbereichs liegende sind leer und in den Kennzeichen genannt.',
    series: ({ what, where, unit }) => `${what}, ${where}${unit === null ? '' : `, in ${unit}`}.`,
    flags: (series) => `Kennzeichen von ${series}, durch Leerzeichen getrennt.`,
  },
  instruments: {
    title: 'Größen und Messgeräte', description: 'Was womit wie genau gemessen wurde.',
    columns: {
      quantity: quantityId, what: quantityInWords, unit: unitWritten, unit_ucum: 'UCUM-Code.', instrument: `In Worten. ${apostrophe}`, used_in: 'Becken, oder room; leer: alle Becken.',
      accuracy: 'Wie der Hersteller sie angibt (95 %), in der Einheit von accuracy_unit.', accuracy_unit: 'Einheit der Genauigkeit.', accuracy_ucum: 'UCUM-Code dieser Einheit.', resolution: 'Kleinster Schritt der Anzeige, in der Einheit der Messwerte.',
      calibrated: `Wann und wie. ${apostrophe}`, level: 'Beim Luftdruck: station (am Ort) oder sea (auf Meereshöhe).', scale: 'Wörter einer Skala, das geringste zuerst.',
    },
  },
  results: {
    title: 'Benannte Ergebnisse und Belege', description: 'Jedes Ergebnis und jeder Beleg der Notiz mit Formel und berechnetem Wert.',
    columns: {
      kind: 'result (Ergebnis) oder claim (Beleg).', name: 'Name des Ergebnisses oder Nummer des Belegs im Beitrag.', formula: `Die Formel. ${apostrophe}`, shown: `Wie es zu lesen ist. ${apostrophe}`,
      value: 'Der berechnete Wert, auf 12 Stellen, in der Einheit derselben Zeile.', other_value: 'Zeitpunkte, Zeitdauern, Wörter und Wahrheitswerte. Zeitdauern in Stunden.', unit: unitWritten, unit_ucum: 'UCUM-Code.',
      half_width_95: 'Halbe Breite des 95-%-Intervalls in derselben Einheit.', mark: 'computed, condition, stated oder unchecked.', source: `Quelle einer übernommenen Angabe. ${apostrophe}`,
    },
  },
  files: {
    post: { name: 'Der Beitrag', description: 'Die veröffentlichte Seite mit der Notiz und ihren Daten darin.' },
    note: { name: 'Die Notiz', description: 'Plan, Messwerte, Formeln und Text in einer Datei.' },
    data: { name: (path) => `Datei ${path}`, description: 'Eine Datei mit Messwerten, die die Notiz festhält.' },
    plan: { name: 'Der Plan', description: 'Der Plan der Notiz als JSON.' },
    schema: { name: 'JSON-Schema des Plans', description: 'Was jeder Schlüssel des Plans enthält.' },
    csv: { name: 'Metadaten der Tabellen', description: 'Spalten, Typen und Einheiten als CSV on the Web.' },
    package: { name: 'Beschreibung der Tabellen', description: 'Spalten, Typen und Einheiten als Data Package.' },
  },
  crate: {
    publishing: 'Beitrag und Daten, aus der Notiz gemacht',
    tool: 'Liest eine Notiz mit Plan und Messwerten, prüft jede Zahl in ihrem Text und veröffentlicht sie.',
    noLicence: { name: 'Keine Lizenz', description: 'Der Verfasser nennt keine Lizenz; vor der Nutzung von Text oder Daten fragen.' },
    licence: (title) => `Text und Daten dürfen unter ${title} genutzt werden.`,
  },
  source: 'Die Notiz, in der die Daten stehen',
  keywords: ['Aquarium', 'Versuch'],
};
