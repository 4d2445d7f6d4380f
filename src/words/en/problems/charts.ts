// English sentences for the problems of figure, summary and limits blocks. Arguments arrive as text, already formatted.
import type { chartsCodes } from '../../../problems/codes/charts.ts';
import { text, type Sentences } from '../../sentences.ts';

export const chartsSentences: Sentences<keyof typeof chartsCodes> = {
  'not-yet': (args) => `This version cannot make ${text(args, 'what')} yet; ${text(args, 'instead')}.`,
  'block-unreadable': (args) => `The ${text(args, 'block')} block cannot be read at its line ${text(args, 'line')}: ${text(args, 'reason')}.`,
  'option-unknown': (args) => `A ${text(args, 'block')} block has no option “${text(args, 'option')}”`
    + `${text(args, 'nearest') ? `; did you mean “${text(args, 'nearest')}”?` : text(args, 'known') ? `; it knows ${text(args, 'known')}.` : '; it takes none.'}`,
  'option-value': (args) => `“${text(args, 'option')}” takes ${text(args, 'known').replace(/, (?=[^,]*$)/, ' or ')}.`,
  'series-unknown': (args) => `There are no readings called “${text(args, 'name')}”`
    + `${text(args, 'nearest') ? `; did you mean “${text(args, 'nearest')}”?` : text(args, 'known') ? `; the note has ${text(args, 'known')}.` : '; the note has no readings.'}`,
  'figure-time-unreadable': (args) => `“${text(args, 'text')}” after “${text(args, 'option')}” is no time of this run; write a clock time, a date with a clock time, or a name such as light-off.`,
  'figure-empty': (args) => `There is nothing to draw: no reading of ${text(args, 'shown') || 'any tank'} lies in the stretch of time that the figure shows.`,
  'second-axis': (args) => `A figure has no “${text(args, 'option')}”; put every series under “show” and each unit gets a panel of its own.`,
  'words-not-drawn': (args) => `${text(args, 'series')} is recorded in words and is not drawn as a line; it stands in the table of readings.`,
  'no-limits-stated': () => 'The protocol states no limits, so this block has nothing to compare; add them under “limits” in the protocol or take the block out.',
};
