// The instructions that a new note carries for its author, in one place: src/edits writes them, and src/experiment finds
// those that were left standing. A new note is written in English.

const whatYouSaw = 'Write here what you saw.';
const claimAdvice = 'A number that comes from the readings is written as a claim';
const whatItMeans = 'Write here what follows from it for a keeper, and what does not.';
const whatWasTheSame = 'Write here what was the same as in the first run, and what was not.';

/** Lines of prose under the headings of a new or repeated note. */
export const newNoteProse = {
  whatHappened: [`${whatYouSaw} ${claimAdvice}: once there are readings, the`, 'command *Fill In Computed Values* puts the number in the place of the question mark.'],
  whatItMeans: [whatItMeans],
  whatHappenedAgain: [whatWasTheSame],
} as const;

/** What the blank template has in its plan where nothing was answered. */
export const blankPlan = {
  question: 'What do you want to know?', treatment: 'write here what you change', withoutTreatment: 'write here what the control has instead',
} as const;

/** Everything that the author is meant to write over. */
export const instructionsToAuthor: readonly string[] = [
  whatYouSaw, claimAdvice, whatItMeans, whatWasTheSame, blankPlan.question, blankPlan.treatment, blankPlan.withoutTreatment,
];
