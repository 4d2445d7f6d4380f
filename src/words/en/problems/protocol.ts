// English sentences for the problems of src/protocol. Arguments arrive as text or numbers, already formatted.
import type { protocolCodes } from '../../../problems/codes/protocol.ts';
import type { MessageArguments } from '../../../problems/problem.ts';
import { phraseIn } from '../../phrases.ts';
import { phrases } from '../phrases.ts';
import { lengthWords } from '../grammar.ts';
import { yamlReasons } from '../yaml.ts';
import { text, type Sentences } from '../../sentences.ts';

const phrase = (args: MessageArguments, name: string): string => phraseIn(phrases, args, name);

/** `; did you mean …?` as a part of a sentence, where something near is known. */
const near = (args: MessageArguments): string => (text(args, 'nearest') === '' ? '' : `; perhaps “${text(args, 'nearest')}” is meant`);

function list(args: MessageArguments, name: string): readonly string[] {
  const value = args[name];
  return typeof value === 'object' ? value : [text(args, name)];
}

/** A kind of name with its article. */
const kind = (args: MessageArguments, name: string): string => `${text(args, name) === 'event' ? 'an' : 'a'} ${text(args, name)}`;

const quoteReasons: Readonly<Record<string, string>> = {
  colon: 'a colon followed by a space would start a new key',
  start: 'its first letter has a meaning of its own',
  quote: 'it goes on after the closing quotation mark',
  bracket: 'it goes on after the closing bracket',
  comma: 'a comma inside brackets ends the value',
  hash: 'a space and # would start a comment',
  'no-value': 'a comma inside brackets ends the value, and this part has no key',
};

const shapes: Readonly<Record<string, string>> = {
  text: 'a single text', texts: 'a list such as [a, b]', map: 'keys with values under it', maps: 'a list of lines that start with a dash and have keys',
};
const foundShapes: Readonly<Record<string, string>> = { text: 'a text', list: 'a list', map: 'a set of keys' };

export const protocolSentences: Sentences<keyof typeof protocolCodes> = {
  'plan-without-keys': () => 'The protocol holds no lines of the form key: value; start with tanks:, schedule: and measure:.',
  'yaml-unreadable': (args) => {
    const reason = yamlReasons[text(args, 'reason')] ?? 'it does not fit the lines around it';
    return `This cannot be read as part of the plan, because ${reason}: “${text(args, 'text')}”.`;
  },
  'tab-indent': (args) => `${text(args, 'lines') === '1' ? 'This line is' : `${text(args, 'lines')} lines are`} indented with a tab; indent with spaces.`,
  'bad-indentation': (args) => `This line stands in no column of the lines above; it is read with ${text(args, 'spaces')} spaces before it, so indent it that way or as it is meant.`,
  'missing-colon': (args) => `A colon is missing after “${text(args, 'key')}”; write ${text(args, 'key')}: and the value behind it.`,
  'colon-needs-space': (args) => `Put a space after the colon of “${text(args, 'key')}:”.`,
  'unclosed-quote': (args) => `The quotation mark that opens here is never closed: ${text(args, 'text')}.`,
  'bracket-unbalanced': (args) => `${text(args, 'extra') === 'yes' ? `There is a bracket too many here: ${text(args, 'text')}` : `A bracket that opens on this line is never closed; add ${text(args, 'text')}`}.`,
  'needs-quotes': (args) => {
    const of = text(args, 'key') ? ` of “${text(args, 'key')}”` : '';
    return `The value${of} must stand in quotation marks, because ${quoteReasons[text(args, 'reason')] ?? 'it holds letters with a meaning of their own'}: ${text(args, 'text')}.`;
  },
  'formula-needs-quotes': (args) => `The comma cuts this formula in two; put it in quotation marks: ${text(args, 'text')}.`,
  'text-after-hash': (args) => `The text behind # is not read: “${text(args, 'text')}”; put the value in quotation marks, or the comment on a line of its own.`,
  'alias-refused': (args) => `Anchors and aliases (& and *) are not used in plans: ${text(args, 'text')}; write the text in quotation marks, or use like: to take over another tank’s keys.`,
  'duplicate-key': (args) => `“${text(args, 'key')}” stands here a second time; keep one of the two.`,
  'unknown-key': (args) => `There is no key “${text(args, 'key')}” here${near(args)}.`,
  'missing-key': (args) => `The ${text(args, 'of')} needs the key “${text(args, 'key')}”, for example ${text(args, 'example')}.`,
  'wrong-type': (args) => `“${text(args, 'key')}” wants ${shapes[text(args, 'expected')] ?? text(args, 'expected')}, but ${foundShapes[text(args, 'found')] ?? 'something else'} stands here.`,
  'unknown-value': (args) => `“${text(args, 'text')}” is not a value of “${text(args, 'key')}”${near(args)}; known are ${text(args, 'known')}.`,
  'unknown-unit': (args) => `The unit “${text(args, 'unit')}” is not known${near(args)}.`,
  'unit-does-not-fit': (args) => `${text(args, 'key')} cannot be given in ${text(args, 'unit')}; write for example ${text(args, 'example')}.`,
  'unknown-zone': (args) => `There is no time zone “${text(args, 'zone')}”${near(args)}; write the name of the zone as in Europe/Amsterdam.`,
  'no-time-zone': () => 'The plan names no time zone, so clock times are read as UTC; add place: and time zone:.',
  'bad-time': (args) => `“${text(args, 'text')}” cannot be read as a time${text(args, 'key') ? ` for “${text(args, 'key')}”` : ''}; write 2026-03-14 20:00${text(args, 'key') === 'start' ? '' : ', a clock time such as 22:00, or a name such as light-off + 1 h'}.`,
  'time-name-has-several': (args) => `“${text(args, 'name')}” happens more than once in this run; say which: ${text(args, 'names')}.`,
  'time-name-has-none': (args) => `This plan has no ${text(args, 'name')}, so “${text(args, 'key')}” has no time here.`,
  'plan-time-skipped': (args) => `The time ${text(args, 'time')} does not exist in ${text(args, 'zone')}, because clocks are put forward over it; write a time that exists.`,
  'plan-time-repeated': (args) => `The time ${text(args, 'time')} comes twice in ${text(args, 'zone')}, because clocks are put back over it; add the offset from UTC to say which.`,
  'window-backwards': (args) => `${text(args, 'key') || 'The stretch of time'} ends before it starts: ${phrase(args, 'text')}.`,
  'end-before-start': (args) => `The run ends (${text(args, 'end')}) before it starts (${text(args, 'start')}).`,
  'too-many-slots': (args) => `A reading every ${lengthWords(text(args, 'every'))} gives more than ${text(args, 'most')} planned readings; check the interval and the end of the run.`,
  'bad-duration': (args) => `“${text(args, 'text')}” cannot be read as a length of time; write for example 30 min, 1 h or 9 h 30 min.`,
  'bad-number': (args) => `“${text(args, 'text')}” cannot be read as a number for ${text(args, 'key')}; write for example ${text(args, 'example')}.`,
  'bad-quantity': (args) => `“${text(args, 'text')}” cannot be read as a number with a unit for ${text(args, 'key')}; write for example ${text(args, 'example')}.`,
  'bad-size': (args) => `“${text(args, 'text')}” cannot be read as a size; write length x width x height with a unit, for example 50 x 30 x 32 cm.`,
  'plan-decimal-comma': (args) => `“${text(args, 'text')}” is read as ${text(args, 'mended')}; write decimals with a point.`,
  'out-of-range': (args) => `${text(args, 'key')} cannot be ${text(args, 'text')}; it must be ${phrase(args, 'range')}.`,
  'water-deeper-than-tank': (args) => `The water in ${text(args, 'tank')} would be deeper than the tank is high; check size and water depth.`,
  'volume-typed-twice': (args) => `The volume of ${text(args, 'tank')} follows from size and water depth, which are used; take the typed volume out, or the size.`,
  'reserved-name': (args) => `“${text(args, 'name')}” is a word of the note’s language and cannot name ${kind(args, 'kind')}; choose another name.`,
  'bad-name': (args) => `“${text(args, 'name')}” cannot name ${kind(args, 'kind')}; a name is a letter followed by letters, digits and hyphens.`,
  'name-used-twice': (args) => `“${text(args, 'name')}” already names ${kind(args, 'other')}, so it cannot name ${kind(args, 'kind')} too.`,
  'like-in-a-circle': (args) => `These tanks are like each other in a circle: ${list(args, 'tanks').join(' is like ')}; write the keys out in one of them.`,
  'unknown-tank': (args) => `There is no tank “${text(args, 'name')}” in this plan${near(args)}.`,
  'unknown-measure': (args) => `This plan measures no “${text(args, 'name')}”${near(args)}.`,
  'criterion-with-level': (args) => `“${text(args, 'criterion')}” has its own levels, so “${text(args, 'key')}” cannot stand beside it; state another limit with its own source.`,
  'unknown-quantity': (args) => `“${text(args, 'what')}” is not in the list of quantities${near(args)}.`,
  'scale-word-twice': (args) => `“${text(args, 'word')}” stands twice in the scale; each word is one level.`,
  'bad-plan-seal': (args) => `“${text(args, 'text')}” is no seal; a seal is a time and a digest, as in 2026-03-14T19:00+01:00 sha256:9f2c… with all 64 digits.`,
};
