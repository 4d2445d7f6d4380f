// English sentences for the problems of src/experiment.
import type { experimentCodes } from '../../../problems/codes/experiment.ts';
import { text, type Sentences } from '../../sentences.ts';

export const experimentSentences: Sentences<keyof typeof experimentCodes> = {
  'value-line-unreadable': (args) => `"${text(args, 'line')}" is no named result; write it as "name = formula".`,
  'result-name-reserved': (args) => `"${text(args, 'name')}" already means something in formulas; give the result another name.`,
  'result-named-twice': (args) => `"${text(args, 'name')}" is given twice; rename one of the two results.`,
  'equalise-failed': (args) => `"${text(args, 'step')}" was not reached: ${text(args, 'condition')} does not hold at ${text(args, 'times')}.`,
  'stop-rule-crossed': (args) => `Stop rule crossed at ${text(args, 'time')}: ${text(args, 'condition')}. The plan says: ${text(args, 'do')}. Write down what was done under "outcome".`,
  'stop-rule-written-up': (args) => `A stop rule was crossed at ${text(args, 'time')} (${text(args, 'condition')}); outcome: ${text(args, 'outcome')}.`,
  'accepted-code-unknown': (args) => `There is no problem code "${text(args, 'code')}"${text(args, 'nearest') ? `; the nearest is "${text(args, 'nearest')}"` : ''}.`,
  'accepted-cannot-be': (args) => `"${text(args, 'code')}" is an error and cannot be accepted; it has to be mended.`,
  'template-text': (args) => `"${text(args, 'text')}" is an instruction of the template; put your own words in its place, or take it out.`,
  'nothing-read-yet': (args) => (text(args, 'count') === '1' ? 'Nothing has been read yet; one formula, figure or claim waits for the first readings.' : `Nothing has been read yet; ${text(args, 'count')} formulas, figures and claims wait for the first readings.`),
};
