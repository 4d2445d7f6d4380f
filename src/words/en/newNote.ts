// What we write into a new note or into the note of a repeat, in English: headings, instructions for the author, remarks.
// The plan, the formulas and the sentences of a template stand with the templates.

export interface NewNoteWords {
  readonly headings: { readonly read: string; readonly happened: string; readonly means: string; readonly done: string };
  /** Lines of prose under the headings of a new note or of a repeat. */
  readonly whatHappened: readonly string[];
  readonly whatItMeans: string;
  readonly whatHappenedAgain: string;
  /** Said where treatment and order of reading were drawn. */
  readonly drawn: string;
  /** What a tank is called that the author named. */
  readonly tankLabel: (name: string) => string;
  /** An answer that says that the lights stay as they are. */
  readonly noLights: string;
  readonly repeatTitle: (title: string) => string;
  readonly untitledRepeat: string;
  /** @param name the file of the first note */
  readonly repeatLead: (name: string) => string;
  /** Everything that the author is meant to write over. */
  readonly instructions: readonly string[];
  /** A text of a template; its English is what the template holds. */
  readonly text: (english: string) => string;
  /** A name that a template gives to a tank, an event, a phase, a result or a word of a scale. */
  readonly name: (english: string) => string;
}

const whatYouSaw = 'Write here what you saw.';
const claimAdvice = 'A number that comes from the readings is written as a claim';
const whatItMeans = 'Write here what follows from it for a keeper, and what does not.';
const whatHappenedAgain = 'Write here what was the same as in the first run, and what was not.';

/** What the blank template has in its plan where nothing was answered. */
export const blankPlan = {
  question: 'What do you want to know?', treatment: 'write here what you change', withoutTreatment: 'write here what the control has instead',
} as const;

export const newNoteWords: NewNoteWords = {
  headings: { read: 'What was read', happened: 'What happened', means: 'What it means', done: 'How it was done' },
  whatHappened: [`${whatYouSaw} ${claimAdvice}: once there are readings, the`, 'command *Fill In Computed Values* puts the number in the place of the question mark.'],
  whatItMeans, whatHappenedAgain,
  drawn: 'Which tank got the treatment, and the order of reading, were drawn from the seed in the plan.',
  tankLabel: (name) => (/\btank\b/i.test(name) ? name : `${name} tank`),
  noLights: 'none',
  repeatTitle: (title) => `${title.replace(/ \((?:repeat|second run|third run)\)$/i, '')} (repeat)`,
  untitledRepeat: 'A repeat',
  repeatLead: (name) => `A repeat of ${name}, with the same plan and new dates.`,
  instructions: [whatYouSaw, claimAdvice, whatItMeans, whatHappenedAgain, blankPlan.question, blankPlan.treatment, blankPlan.withoutTreatment],
  text: (english) => english,
  name: (english) => english,
};
