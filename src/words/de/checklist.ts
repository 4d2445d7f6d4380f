// The German words of the reporting checklist: what each item asks for, and what to do where it is missing.
// Keys of the plan are named as they are written there.
import type { ChecklistId, checklistWriting as english, ChecklistWords } from '../en/checklist.ts';
import { inner } from './authors.ts';
import { checklistFinds } from './checklistFinds.ts';
import { sentencesOf } from './sentences.ts';

const noAnimals = 'In den Becken sind keine Tiere.';
const measureOrTell = 'Messen oder im Text angeben.';

const items: Readonly<Record<ChecklistId, ChecklistWords>> = {
  design: { item: 'Aufbau: Gruppen, Vergleich, Einheit des Versuchs', missing: 'Den Becken ihre Rollen geben: treatment und control.' },
  'sample-size': { item: 'Umfang: Becken je Gruppe, und wie die Anzahl festgelegt wurde', missing: 'Den Becken ihre Rollen geben, damit sich ihre Anzahl je Seite nennen lässt.', partly: 'Die Anzahl der Becken ist angegeben; im Text sagen, wie sie festgelegt wurde.' },
  exclusion: { item: 'Ein- und Ausschluss: jeder ausgelassene Messwert mit seinem Grund', missing: 'Es gibt noch keine Messwerte.' },
  randomisation: { item: 'Zufällige Zuteilung und Reihenfolge', missing: 'Sagen, wie Behandlung und Reihenfolge ausgelost wurden: Schlüssel order und seed.', partly: 'Die Reihenfolge ist angegeben, nicht, dass sie ausgelost wurde: den Startwert der Auslosung angeben.' },
  blinding: { item: 'Verblindung: wer wusste, welches Becken welches war', missing: 'Im Text sagen, wer wusste, welches Becken welches war.' },
  outcomes: { item: 'Zielgrößen: was womit gemessen wurde', missing: 'Die Messgrößen angeben: Schlüssel measure.' },
  statistics: { item: 'Statistische Verfahren und Einheit der Auswertung', missing: 'Sagen, wie die Zahlen berechnet wurden; die Methoden tun es, sobald Formeln in der Notiz stehen.' },
  animals: { item: 'Tiere: Art, Anzahl, Größe', missing: 'Die Tiere jedes Beckens angeben: Schlüssel animals.', partly: 'Art und Anzahl sind angegeben; Geschlecht, Alter oder Größe ergänzen, wo es darauf ankommt.', notApplicable: noAnimals },
  procedures: { item: 'Vorgehen: was, wann, wie oft, wo', missing: 'Den Zeitplan angeben: Schlüssel schedule.' },
  results: { item: 'Ergebnisse mit Effektgröße und Intervall', missing: 'Einen Block results einfügen.' },
  ethics: { item: 'Angaben zum Tierschutz', missing: 'Im Text sagen, nach welchen Regeln oder mit welcher Genehmigung die Tiere gehalten wurden.', notApplicable: noAnimals },
  housing: { item: 'Becken und Pflege', missing: 'Maße und Ausrüstung jedes Beckens angeben.' },
  monitoring: { item: 'Überwachung und Abbruch zum Schutz der Tiere', missing: 'Angeben, wann der Versuch vorzeitig endet: Schlüssel stop if.', notApplicable: noAnimals },
  generality: { item: 'Übertragbarkeit: was der Versuch zeigen kann und was nicht', missing: 'Den Becken ihre Rollen geben, damit sich die Grenzen der Aussage nennen lassen.' },
  registration: { item: 'Plan vor der ersten Ablesung festgelegt', missing: 'Den Plan vor der ersten Ablesung versiegeln: Schlüssel sealed.' },
  access: { item: 'Zugang zu den Daten', missing: '' },
  interests: { item: 'Finanzierung und Interessen', missing: 'Im Text sagen, wer dafür bezahlt hat und wer davon hat, oder dass es niemanden gibt.' },
  volume: { item: 'Wasservolumen', missing: 'Maße und Wassertiefe oder das Wasservolumen jedes Beckens angeben.' },
  source: { item: 'Herkunft und Aufbereitung des Wassers', missing: 'Im Text sagen, woher das Wasser kommt und wie es aufbereitet wurde.' },
  flow: { item: 'Filterung, Strömung und Wasserwechsel', missing: 'Den Filter unter equipment angeben, Wasserwechsel als Ereignisse.' },
  temperature: { item: 'Wassertemperatur', missing: measureOrTell },
  ph: { item: 'pH-Wert', missing: measureOrTell },
  salinity: { item: 'Leitfähigkeit oder Salzgehalt', missing: 'Messen oder angeben: Schlüssel salinity.' },
  hardness: { item: 'Härte und Alkalinität', missing: measureOrTell },
  oxygen: { item: 'Gelöster Sauerstoff', missing: measureOrTell },
  nitrogen: { item: 'Ammonium und Ammoniak, Nitrit, Nitrat', missing: measureOrTell, notApplicable: noAnimals },
  light: { item: 'Beleuchtungsdauer und Licht', missing: 'Angeben, wann die Lampen aus- und angehen: Schlüssel light off und light on.', partly: 'Die Beleuchtungsdauer ist angegeben; im Text die Stärke des Lichts angeben.' },
  stocking: { item: 'Besatz', missing: 'Anzahl und Art der Tiere angeben: Schlüssel animals.', notApplicable: noAnimals },
  feeding: { item: 'Futter und Fütterungszeiten', missing: 'Jede Fütterung als Ereignis angeben, oder dass nicht gefüttert wurde.', notApplicable: noAnimals },
  acclimation: { item: 'Einlaufzeit: wie lange die Becken schon in Betrieb waren', missing: 'Angeben: Schlüssel running since.' },
  instruments: { item: 'Messgeräte: Genauigkeit und Kalibrierung', missing: 'Genauigkeit und Kalibrierung jedes Messgeräts angeben: Schlüssel measure.', partly: 'Bei manchen Messgeräten fehlt die Genauigkeit oder das Datum der Kalibrierung.' },
  sampling: { item: 'Messzeiten und Ort im Becken', missing: 'Die geplanten Zeiten angeben: Schlüssel every.', partly: 'Die Zeiten sind angegeben; im Text sagen, in welcher Tiefe gemessen wurde.' },
  pressure: { item: 'Herkunft des Luftdrucks', missing: 'Angeben, ob der Luftdruck der am Ort oder der auf Meereshöhe bezogene ist: Schlüssel level.', notApplicable: 'In die Ergebnisse geht kein Luftdruck ein.' },
};

export const checklistWriting: typeof english = {
  items,
  states: { covered: 'angegeben', partly: 'teilweise', missing: 'fehlt', 'not-applicable': 'trifft nicht zu' },
  caption: (counts) => `Checkliste des Berichts: ${counts.covered} Punkte angegeben, ${counts.partly} teilweise, ${counts.missing} fehlen, ${counts.none} treffen nicht zu. Nummerierte Punkte nach ARRIVE 2.0, die übrigen nach den Empfehlungen für Berichte über die Haltung von Wassertieren.`,
  heads: ['Punkt', 'Stand', 'Durch welchen Satz, oder was fehlt'],
  access: 'Die Seite enthält die Notiz, jeden Messwert und den Plan, zum Speichern und Nachrechnen.',
  inText: (sentence) => `im Text: ${sentence}`,
  inPlan: ({ key, texts }) => `im Plan: ${key}: ${texts.map((text) => `‚${text}‘`).join('; ')}.`,
  sealed: (date) => `Der Plan wurde versiegelt: ${date}.`,
  quoted: (sentence) => sentence.replace(/^(im (?:Text|Plan): )?(.*)$/su, (_, where: string | undefined, said: string) => `${where ?? ''}„${inner(said)}“`),
  find: checklistFinds,
  sentences: sentencesOf,
};
