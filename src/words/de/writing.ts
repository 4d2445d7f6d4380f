// The German tables of the generated prose in one place.
import type { WritingWords } from '../en/writing.ts';
import { checklistWriting } from './checklist.ts';
import { designWords, deviationWords, equalWords, lightWords, samplingWords } from './methods.ts';
import { careWords, computingWords, eventWords, evidenceWords, instrumentWords, stopWords } from './methodsCare.ts';
import { functionWords } from './methodsFunctions.ts';
import { planWords } from './methodsPlan.ts';
import { nameWords } from './names.ts';
import { resultsWords } from './results.ts';
import { sideBySideWords } from './sideBySide.ts';

export const germanWriting: WritingWords = {
  names: nameWords, design: designWords, equal: equalWords, light: lightWords, sampling: samplingWords, deviations: deviationWords,
  care: careWords, events: eventWords, instruments: instrumentWords, functions: functionWords, computing: computingWords, stop: stopWords, evidence: evidenceWords,
  plan: planWords, results: resultsWords, sideBySide: sideBySideWords, checklist: checklistWriting,
};
