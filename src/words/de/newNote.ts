// What a new note says in German. The templates (src/edits/newNoteTemplates.ts) hold the English of the texts and names below;
// a test holds that none is missing and none is left over.
import { blankPlan, type NewNoteWords } from '../en/newNote.ts';
import { newNoteNames, newNoteTexts } from './newNoteTexts.ts';

const whatYouSaw = 'Hier beschreiben, was zu sehen war.';
const claimAdvice = 'Eine Zahl, die aus den Messwerten kommt, wird als Beleg geschrieben';
const whatItMeans = 'Hier schreiben, was daraus für die Haltung folgt und was nicht.';
const whatHappenedAgain = 'Hier schreiben, was wie im ersten Versuch war und was nicht.';

export const newNoteWords: NewNoteWords = {
  headings: { read: 'Was gemessen wurde', happened: 'Was geschah', means: 'Was das heißt', done: 'Wie es gemacht wurde' },
  whatHappened: [`${whatYouSaw} ${claimAdvice}:`, 'Sobald es Messwerte gibt, setzt der Befehl *Berechnete Werte ausfüllen* die Zahl an die Stelle des Fragezeichens.'],
  whatItMeans, whatHappenedAgain,
  drawn: 'Behandlung und Reihenfolge der Ablesungen sind mit dem Startwert im Plan ausgelost.',
  tankLabel: (name) => (/becken|aquari|tank/i.test(name) ? name : `Becken ${name}`),
  noLights: 'nie',
  repeatTitle: (title) => `${title.replace(/ \((?:Wiederholung|zweiter Versuch|dritter Versuch)\)$/i, '')} (Wiederholung)`,
  untitledRepeat: 'Eine Wiederholung',
  repeatLead: (name) => `Eine Wiederholung von ${name}: derselbe Plan zu neuen Zeiten.`,
  instructions: [whatYouSaw, claimAdvice, whatItMeans, whatHappenedAgain, ...Object.values(blankPlan).map((english) => newNoteTexts[english]!)],
  text: (english) => newNoteTexts[english] ?? english,
  name: (english) => newNoteNames[english] ?? english,
};
