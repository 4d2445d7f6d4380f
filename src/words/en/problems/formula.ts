// English sentences for the problems of src/formula. Arguments arrive as text or numbers, already formatted.
import type { formulaCodes } from '../../../problems/codes/formula.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { phraseIn } from '../../phrases.ts';
import { phrases } from '../phrases.ts';
import { text, type Sentences } from '../../sentences.ts';

const phrase = (args: MessageArguments, name: string): string => phraseIn(phrases, args, name);
const meant = (args: MessageArguments): string => (text(args, 'nearest') === '' ? '' : `; did you mean “${text(args, 'nearest')}”?`);
const end = (sentence: string): string => (/[.?]$/u.test(sentence) ? sentence : `${sentence}.`);
const at = (args: MessageArguments): string => (text(args, 'time') === '' ? '' : ` at ${text(args, 'time')}`);
const ppmMeant = (args: MessageArguments): string => ([text(args, 'left'), text(args, 'right')].includes('ppm') ? ' Where the manual of the instrument says that its ppm are mg/L, write mg/L in the plan.' : '');

/** `20:00 or 20:30`. */
function either(args: MessageArguments, name: string): string {
  const value = args[name];
  const list = Array.isArray(value) ? (value as readonly string[]) : [text(args, name)];
  return list.length < 2 ? list.join('') : `${list.slice(0, -1).join(', ')} or ${list.at(-1)}`;
}

function quoted(args: MessageArguments, name: string): string {
  const value = args[name];
  const list = Array.isArray(value) ? (value as readonly string[]) : [text(args, name)];
  return list.filter((each) => each !== '').slice(0, 8).map((each) => `“${each}”`).join(', ');
}

export const formulaSentences: Sentences<keyof typeof formulaCodes> = {
  'formula-empty': () => 'There is no formula here; write what the number is computed from.',
  'formula-syntax': (args) => `The formula cannot be read: ${phrase(args, 'expected')} was expected, but ${text(args, 'found') === '' ? 'it ends' : `“${text(args, 'found')}” was found`}.`,
  'formula-too-long': (args) => `The formula is longer than ${text(args, 'limit')} characters; split it into named results.`,
  'formula-too-deep': () => 'The formula is nested too deeply; split it into named results.',
  'formula-chained': () => 'Comparisons cannot be chained; join two of them with “and”.',
  'parenthesis-not-closed': () => 'This parenthesis is not closed.',
  'operator-needs-spaces': (args) => `Put spaces around “${text(args, 'operator')}”, because names may hold hyphens.`,
  'number-too-large': (args) => `${text(args, 'text')} is too large to compute with.`,
  'instant-unreadable': (args) => `“${text(args, 'text')}” is no time; write 22:30, 2026-03-15 02:30 or +1h30.`,
  'unknown-name': (args) => end(`Nothing in this note is called “${text(args, 'name')}”${meant(args)}`),
  'unknown-function': (args) => end(`There is no function “${text(args, 'name')}”${meant(args)}`),
  'function-without-operands': (args) => `“${text(args, 'name')}” is a function; write what it is asked of in parentheses, such as ${text(args, 'name')}(mat.DO).`,
  'wrong-argument': (args) => `“${text(args, 'function')}” wants ${phrase(args, 'expected')}, not ${phrase(args, 'found')}.`,
  'missing-argument': (args) => `“${text(args, 'function')}” also needs “${text(args, 'argument')}”: ${phrase(args, 'expected')}. It is written ${text(args, 'signature')}.`,
  'too-many-arguments': (args) => `“${text(args, 'function')}” cannot use this; it is written ${text(args, 'signature')}.`,
  'option-unknown-here': (args) => (text(args, 'options') === '' ? `“${text(args, 'function')}” takes no “${text(args, 'option')} …”.`
    : `“${text(args, 'function')}” takes no “${text(args, 'option')} …”; it knows ${quoted(args, 'options')}.`),
  'operands-do-not-fit': (args) => (phrase(args, 'right') === '' ? `“${text(args, 'operator')}” cannot be used on ${phrase(args, 'left')}.`
    : `“${text(args, 'operator')}” cannot be used between ${phrase(args, 'left')} and ${phrase(args, 'right')}.`),
  'unit-mismatch': (args) => `${upper(phrase(args, 'left'))} and ${phrase(args, 'right')} do not measure the same kind of thing.`,
  'substance-needed': (args) => `Between ${text(args, 'left')} and ${text(args, 'right')} a value can be converted only where it is of one substance of known molar mass, which this is not.`,
  'density-needed': (args) => `Between ${text(args, 'left')} and ${text(args, 'right')} a value can be converted only with the density of the water, which is not known here; give both in one unit.${ppmMeant(args)}`,
  'no-true-zero': (args) => `${text(args, 'unit') === 'pH' ? 'A pH' : `A value in ${text(args, 'unit').replace('deg', '°')}`} has no percentage and no multiple, because its zero is not “nothing”; give the difference instead.`,
  'zero-base': (args) => (text(args, 'time') === '' ? 'This would divide by zero.' : `The reading at ${text(args, 'time')} is zero, so a percentage of it has no value.`),
  'not-finite': () => 'The result would be no finite number.',
  'plain-number-needed': (args) => `“${text(args, 'function')}” works on plain numbers, not on ${text(args, 'unit')}; divide by a quantity of the same unit first.`,
  'negative-not-possible': (args) => `“${text(args, 'function')}” has no value for a negative number${text(args, 'function') === 'ln' ? ' or zero' : ''}.`,
  'decimals-unreadable': (args) => `“${text(args, 'found')}” is no number of decimals; write a whole number from 0 to 12.`,
  'no-readings': (args) => `There is no reading of ${text(args, 'name')} yet.`,
  'no-column': (args) => (text(args, 'columns') === '' ? `No column “${text(args, 'name')}” was logged.` : `No column “${text(args, 'name')}” was logged; there are ${quoted(args, 'columns')}.`),
  'several-instruments': (args) => `“${text(args, 'name')}” was logged with several instruments; say which: ${either(args, 'columns')}.`,
  'group-empty': (args) => `No tank belongs to “${text(args, 'name')}”.`,
  'quantity-after-group': (args) => `“${text(args, 'name')}” needs a quantity after a point, such as ${text(args, 'name')}.DO.`,
  'empty-window': (args) => `There is no reading of ${text(args, 'name')} between ${text(args, 'from')} and ${text(args, 'to')}.`,
  'too-few-readings': (args) => `“${text(args, 'function')}” needs at least ${text(args, 'least')} readings of ${text(args, 'name')}, but there ${Number(args['count']) === 1 ? 'is only one' : `are only ${text(args, 'count')}`} here.`,
  'no-reading-at-time': (args) => `There is no ${args['dropped'] === 'yes' ? 'usable ' : ''}reading of ${text(args, 'name')} at ${text(args, 'time')}; the nearest ${Array.isArray(args['neighbours']) && args['neighbours'].length > 1 ? 'are at' : 'is at'} ${either(args, 'neighbours').replace(' or ', ' and ')}.`,
  'reading-far-from-end': (args) => `The nearest reading of ${text(args, 'name')} to ${text(args, 'wanted')} is at ${text(args, 'found')}, ${text(args, 'distance')} away; the change covers the readings only.`,
  'outside-readings': (args) => `${text(args, 'time')} lies outside the readings of ${text(args, 'name')} (${text(args, 'first')} to ${text(args, 'last')}).`,
  'gap-bridged': (args) => `A straight line was drawn from ${text(args, 'from')} to ${text(args, 'to')}, where readings are missing.`,
  'censored-value': (args) => `The reading of ${text(args, 'name')} at ${text(args, 'time')} lies outside the instrument’s range, so “${text(args, 'function')}” has no value; choose a window without it.`,
  'too-many-readings': (args) => `${text(args, 'function')} compares every two readings; ${text(args, 'name')} has ${text(args, 'count')}, and ${text(args, 'most')} is the most: name a shorter window.`,
  'replicates-needed': (args) => `${text(args, 'function')} needs at least two treatment and two control tanks; the plan has ${text(args, 'treatment')} and ${text(args, 'control')}.`,
  'too-many-tanks': (args) => `${text(args, 'function')} counts out every way to divide the tanks; ${text(args, 'count')} tanks are too many.`,
  'no-neighbours': (args) => `No two neighbouring readings of ${text(args, 'name')} stand here without one missing between them.`,
  'no-stretch': (args) => `No two readings of ${text(args, 'name')} stand ${text(args, 'length')} apart without one missing between them.`,
  'ambiguous-time': (args) => `${text(args, 'time')} comes more than once in this run; write ${either(args, 'times')}.`,
  'ambiguous-phase': (args) => `The run has several phases “${text(args, 'name')}”; write ${either(args, 'phases')}.`,
  'no-such-phase': (args) => `This run has no phase “${text(args, 'name')}”; the schedule gives no lights-off that would make one.`,
  'time-outside-run': (args) => `${text(args, 'time')} lies outside the run (${text(args, 'start')} to ${text(args, 'end')}).`,
  'time-not-in-run': (args) => `There is no “${text(args, 'name')}” within this run.`,
  'schedule-needed': (args) => `“${text(args, 'name')}” needs a schedule with a start in the protocol.`,
  'level-not-reached': (args) => `No reading of ${text(args, 'name')} is ${text(args, 'side')} ${text(args, 'level')} here.`,
  'never-settled': (args) => `${text(args, 'name')} never keeps within ${text(args, 'within')} for ${text(args, 'length')} with three readings in it.`,
  'never-turns': (args) => `${text(args, 'name')} does not rise again after its lowest reading by more than its instrument can tell.`,
  'accuracy-needed': (args) => `“${text(args, 'function')}” needs the accuracy of every instrument behind ${text(args, 'name')}; add accuracy: to its entry under measure.`,
  'all-or-any': () => 'This condition holds at some readings or none; write all(…) or any(…) around it.',
  'condition-needed': (args) => `A condition is needed here, such as mat.DO < 3 mg/L, not ${phrase(args, 'found')}.`,
  'formula-not-a-value': (args) => `A formula gives a value, but this is ${phrase(args, 'found')}; write for example mat.DO or volume(mat).`,
  'word-not-in-scale': (args) => `“${text(args, 'word')}” is not a word of the scale of ${text(args, 'quantity')}: ${either(args, 'scale')}.`,
  'result-failed': (args) => `The result “${text(args, 'name')}” cannot be computed; see the problem at its own formula.`,
  'result-circle': (args) => `“${text(args, 'name')}” refers back to itself.`,
  'tank-fact-missing': (args) => `The protocol does not state the ${text(args, 'key')} of tank “${text(args, 'tank')}”, which “${text(args, 'function')}” needs.`,
  'quantity-needed': (args) => `“${text(args, 'function')}” needs the ${either(args, 'quantity')} of tank “${text(args, 'place')}”; log it in a column such as ${text(args, 'example')}.`,
  'pressure-needed': (args) => `“${text(args, 'function')}” needs the air pressure; log it in a column such as room.P, or give standard-pressure if one atmosphere is meant.`,
  'pressure-level-needed': (args) => `The protocol does not say whether ${text(args, 'quantity')} is the pressure of the place or reduced to sea level; add level: station or level: sea.`,
  'elevation-needed': (args) => `${text(args, 'quantity')} is reduced to sea level; add the elevation of the place, so that the pressure there can be found.`,
  'pressure-not-station': (args) => `${text(args, 'value')} hPa at ${text(args, 'time')} cannot be the pressure at ${text(args, 'elevation')} m, where about ${text(args, 'expected')} hPa is normal; if it is reduced to sea level, write level: sea.`,
  'exchange-not-identified': (args) => `“${text(args, 'function')}” has no answer: these ${text(args, 'count')} readings do not tell respiration and surface exchange apart; only the net decline is known${text(args, 'decline') === '' ? '' : `, ${text(args, 'decline')}`}.`,
  'level-never-reached': (args) => `The fitted night comes to rest at ${text(args, 'equilibrium')} mg/L and never reaches ${text(args, 'level')}.`,
  'prediction-below-nothing': (args) => `${text(args, 'function')} would fall below nothing here, where the fitted night no longer holds; ask for a shorter darkness or a smaller stocking.`,
  'no-balance': (args) => `Production does not begin to outweigh respiration within these readings of ${text(args, 'name')}.`,
  'oxygen-column-needed': (args) => `“${text(args, 'function')}” wants the dissolved oxygen of one tank, such as mat.DO, not ${text(args, 'found')}.`,
  'no-joint-rows': (args) => `“${text(args, 'function')}” finds no row in which ${text(args, 'name')}, the water temperature and the air pressure were all read.`,
  'outside-equation-range': (args) => `“${text(args, 'function')}” is valid for a ${text(args, 'input')} from ${text(args, 'low')} to ${text(args, 'high')} ${text(args, 'unit')}, but it is ${text(args, 'value')}${at(args)}.`,
  'not-for-saline-water': (args) => `“${text(args, 'function')}” holds for fresh water, and this water is saline${at(args)}.`,
  'equation-not-applicable': (args) => `“${text(args, 'function')}” cannot be computed${at(args)}: the conversion ${text(args, 'about')} needs more than is known here.`,
  'reference-temperature-needed': (args) => `The salinity from ${text(args, 'quantity')} needs the temperature printed on the hydrometer; state it in the plan, for example “reference temperature: 25 degC” at ${text(args, 'quantity')}.`,
};

function upper(words: string): string { return words.startsWith('a ') ? `A ${words.slice(2)}` : words; }
