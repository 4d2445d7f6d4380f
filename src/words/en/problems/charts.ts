// English sentences for the problems of figure, summary and limits blocks. Arguments arrive as text, already formatted.
import type { chartsCodes } from '../../../problems/codes/charts.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { phraseIn } from '../../phrases.ts';
import { text, type Sentences } from '../../sentences.ts';
import { phrases } from '../phrases.ts';
import { yamlReasons } from '../yaml.ts';

/** Why a key of a specification is refused. */
const refusals: Readonly<Record<string, string>> = {
  loads: 'a drawing loads nothing; its data are the readings of this note',
  code: 'a drawing holds no code, expressions or controls; use filter, aggregate, timeUnit and bin with plain values',
  links: 'a drawing leads nowhere',
  settings: 'colours, fonts and settings are those of the note',
  format: 'numbers and times are written as in the rest of the note',
  axis: 'two scales on one pair of axes make lines cross at the drawer’s will; use facets: quantities instead',
  size: 'its size could not be known before it is drawn; use facets: tanks or facets: quantities, or a figure for each',
  words: 'write the words under “title”, “caption” and “alt” of the figure',
};

function specWants(args: MessageArguments): string {
  const known = text(args, 'known');
  const [low = '', high = ''] = known.split(', ');
  switch (text(args, 'wants')) {
    case 'keys': return `write keys: ${known}`;
    case 'list': return 'write a list that is not too long, such as [1, 2]';
    case 'text': return 'write a short text';
    case 'number': return `write a number from ${low} to ${high}`;
    case 'colour': return 'write a colour by its English name or as #1f77b4';
    case 'field': return `the data set has the fields ${known}`;
    case 'name': return 'write a name of letters and digits that starts with a letter';
    case 'mark': return 'it needs a mark, or layers that have one';
    default: return `possible is ${known.replace(/, (?=[^,]*$)/, ' or ')}`;
  }
}

const ofMoment = (args: MessageArguments): boolean => ['at', 'interpolate'].includes(text(args, 'function'));

/** Why the readings give no value for a cell. */
const emptyCells: Readonly<Record<string, string>> = {
  'no-readings': 'nothing was read', 'empty-window': 'nothing was read in that time', 'too-few-readings': 'too few readings were taken in that time',
  'no-reading-at-time': 'nothing was read at that moment', 'outside-readings': 'the moment lies outside the readings',
  'censored-value': 'a reading lies outside the instrument’s range', 'zero-base': 'the first reading is nothing, so there is no percentage of it',
};

export const chartsSentences: Sentences<keyof typeof chartsCodes> = {
  'block-unreadable': (args) => `The ${text(args, 'block')} block cannot be read at its line ${text(args, 'line')}: ${yamlReasons[text(args, 'reason')] ?? 'it does not fit the lines around it'}.`,
  'option-unknown': (args) => `A ${text(args, 'block')} block has no option “${text(args, 'option')}”`
    + `${text(args, 'nearest') ? `; did you mean “${text(args, 'nearest')}”?` : text(args, 'known') ? `; it knows ${text(args, 'known')}.` : '; it takes none.'}`,
  'option-value': (args) => `“${text(args, 'option')}” takes ${text(args, 'known').replace(/, (?=[^,]*$)/, ' or ')}.`,
  'series-unknown': (args) => `There are no readings called “${text(args, 'name')}”`
    + `${text(args, 'nearest') ? `; did you mean “${text(args, 'nearest')}”?` : text(args, 'known') ? `; the note has ${text(args, 'known')}.` : '; the note has no readings.'}`,
  'figure-time-unreadable': (args) => `“${text(args, 'text')}” after “${text(args, 'option')}” is no time of this run; write a clock time, a date with a clock time, or a name such as light-off.`,
  'figure-empty': (args) => `There is nothing to draw: no reading of ${text(args, 'shown') || 'any tank'} lies in the stretch of time that the figure shows.`,
  'second-axis': (args) => `A figure has no “${text(args, 'option')}”; two scales on one pair of axes make lines cross at the drawer’s will. Put every series under “show”: each unit gets a panel of its own, with “facets: quantities” each quantity.`,
  'series-needed': (args) => `“${text(args, 'formula')}” is ${phraseIn(phrases, args, 'found')}; name readings or a formula that has a value at each of them.`,
  'option-not-here': (args) => `“${text(args, 'option')}” has no meaning beside ${text(args, 'rows') === 'phases' ? 'rows of phases' : 'a list of rows'}; take it out, or write the stretches of time as rows.`,
  'uncertainty-unknown': (args) => `No accuracy is stated for ${text(args, 'series')}, so no band of uncertainty can be drawn; add “accuracy” under “measure”.`,
  'spec-key': (args) => `A specification has no “${text(args, 'key')}” here${text(args, 'nearest') ? `; did you mean “${text(args, 'nearest')}”?` : `; it knows ${text(args, 'known')}.`}`,
  'spec-value': (args) => `${text(args, 'value') ? `“${text(args, 'value')}” is not possible here` : 'Something is missing or of the wrong kind here'}; ${specWants(args)}.`,
  'spec-refused': (args) => `“${text(args, 'key')}” is refused in a specification: ${refusals[text(args, 'reason')] ?? 'it does more than draw'}.`,
  'spec-too-many': (args) => `A specification takes ${text(args, 'most')} readings at most and here are ${text(args, 'rows')}; cut it with “from” and “to”, or name fewer series under “show”.`,
  'summary-empty': (args) => `There is nothing to sum up: ${text(args, 'of') ? `no number was read for ${text(args, 'of')}` : 'the note has no readings'}.`,
  'summary-function': (args) => (text(args, 'exists') === 'yes'
    ? `“${text(args, 'function')}” cannot stand in a ${text(args, 'rows') === 'times' ? 'table of single moments' : 'table of stretches of time'}; it takes ${text(args, 'known')}.`
    : `There is no function “${text(args, 'function')}”; a table like this takes ${text(args, 'known')}.`),
  'summary-no-phases': () => 'The plan has no phases, because it states no lights and no “phases”; make a row of each tank, or write stretches of time as rows.',
  'summary-moment': (args) => `${text(args, 'text') ? `“${text(args, 'text')}” is no moment of this run` : 'The moment between before and after is missing'}; write it behind before-after, for example before-after light-off.`,
  'summary-row': (args) => `“${text(args, 'text')}” is neither a moment nor a stretch of time; write a clock time, a phase, or a stretch such as light-off..02:00.`,
  'summary-rows-mixed': (args) => `Moments (${text(args, 'times')}) and stretches of time (${text(args, 'stretches')}) cannot stand in one table; make two.`,
  'summary-cell-empty': (args) => `There is no ${ofMoment(args) ? 'value' : text(args, 'function')} of ${text(args, 'series')} ${ofMoment(args) ? 'at' : 'for'} ${text(args, 'row')}: ${emptyCells[text(args, 'reason')] ?? 'the readings do not allow it'}.`,
  'words-not-summed': (args) => `${text(args, 'series')} is recorded in words, which have no mean; it stands in the table of readings.`,
  'words-not-drawn': (args) => `${text(args, 'series')} is recorded in words and is not drawn as a line; it stands in the table of readings.`,
  'no-limits-stated': () => 'The protocol states no limits, so this block has nothing to compare; add them under “limits” in the protocol or take the block out.',
};
