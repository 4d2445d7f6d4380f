// English sentences for the problems of src/note. Arguments arrive as text or numbers, already formatted.
import type { noteCodes } from '../../../problems/codes/note.ts';
import { text, type Sentences } from '../../sentences.ts';

const cuts: Readonly<Record<string, string>> = { 'table-bar': 'the | of the table', heading: 'the end of the heading', paragraph: 'the end of the paragraph' };

export const noteSentences: Sentences<keyof typeof noteCodes> = {
  'protocol-missing': () => 'This note has no protocol block, so nothing in it can be checked; add one that names the tanks, the schedule and what is measured.',
  'second-protocol': (args) => `A note has one protocol block, and it stands on line ${text(args, 'line')}; move this plan to a note of its own.`,
  'near-miss-block': (args) => `\`${text(args, 'found')}\` is not the word of a block, so this is shown as plain code; did you mean \`${text(args, 'word')}\`?`,
  'block-indented': (args) => `This ${text(args, 'word')} block is indented so far that Markdown reads it as code; move it to the left.`,
  'fence-not-closed': (args) => text(args, 'word') === ''
    ? 'This fence is never closed, so everything after it is taken into it; close it with a line of the same marks.'
    : `This ${text(args, 'word')} block is not closed before the next thing begins; close it with a line of the same marks.`,
  'block-name-twice': (args) => `A ${text(args, 'word')} block named ${text(args, 'name')} stands on line ${text(args, 'line')} already; give this one another name.`,
  'claim-not-closed': (args) => `The claim "${text(args, 'words')}" has no closing brace, so it is not checked; put a } after its formula.`,
  'claim-cut': (args) => `The claim "${text(args, 'words')}" is cut in two by ${cuts[text(args, 'by')] ?? 'a line'}, so it is not checked; keep it in one piece.`,
  'claim-in-number': (args) => `In "${text(args, 'words')}" a digit or a sign stands against the claim, so that the number a reader sees is not the one that is checked; put a space between or take the whole number into the braces.`,
  'claim-in-image-text': (args) => `The claim "${text(args, 'words')}" stands in the text of an image, where nothing is checked; move the number into the prose.`,
  'claim-in-html': (args) => `The claim "${text(args, 'words')}" stands in a block of HTML, where nothing is checked; move it into the prose.`,
  'claim-wants-spaces': (args) => `"${text(args, 'words')}" is not checked, because a claim has a space on both sides of its equals sign.`,
  'claim-without-words': () => 'This claim shows the reader nothing; put the number before the equals sign, or a ? to have it filled in.',
};
