// Problem codes raised by src/note.
import type { CodeEntry } from '../codeEntry.ts';

export const noteCodes = {
  'protocol-missing': {
    severity: 'error', args: [],
    why: 'Without a plan nothing in the note can be checked: tanks, times and instruments are stated there and nowhere else.',
    example: { note: '# A night without a plan\n\n```readings\ntime   mat.DO\n20:00    8.21\n```\n' },
    fixable: false,
  },
  'second-protocol': {
    severity: 'error', args: ['line'],
    why: 'One note is one experiment. With two plans nobody could tell which tanks and times the readings belong to.',
    example: { prose: '```protocol\nquestion: Another one?\n```\n' },
    fixable: false,
  },
  'near-miss-block': {
    severity: 'warning', args: ['found', 'word'],
    why: 'A block whose word is misspelt is shown as plain code: its readings would not be read and nobody would notice.',
    example: { prose: '```Values\nlater-loss = fall(mat.DO)\n```\n' },
    fixable: true,
  },
  'block-indented': {
    severity: 'warning', args: ['word'],
    why: 'Markdown takes a line indented by four or more spaces as code, so the fence in it opens no block and nothing in it is read.',
    example: { prose: '    ```values\n    later-loss = fall(mat.DO)\n    ```\n' },
    fixable: true,
  },
  'fence-not-closed': {
    severity: 'error', args: ['word'],
    why: 'Everything after an open fence belongs to the block, so later blocks and prose are swallowed.',
    example: { prose: '```values\nlater-loss = fall(mat.DO)\n' },
    fixable: true,
  },
  'block-name-twice': {
    severity: 'warning', args: ['word', 'name', 'line'],
    why: 'A name tells blocks of one kind apart; with two of one name a reference to it could mean either.',
    example: { prose: '```figure oxygen\nshow: [mat.DO]\n```\n\n```figure oxygen\nshow: [open.DO]\n```\n' },
    fixable: false,
  },
  'claim-not-closed': {
    severity: 'error', args: ['words'],
    why: 'Without its closing brace a claim is plain text: the number in it is not checked against the readings.',
    example: { prose: 'The mat tank had lost {2.9 % = first-loss by then.\n' },
    fixable: true,
  },
  'claim-cut': {
    severity: 'error', args: ['words', 'by'],
    why: 'The structure of the text goes before the claim: a claim that a table cell or the end of a paragraph cuts in two is not checked.',
    example: { prose: '| what | how much |\n|---|---|\n| loss | {2.9 % | first half hour = first-loss} |\n' },
    fixable: true,
  },
  'claim-in-number': {
    severity: 'error', args: ['words'],
    why: 'A digit or a sign right beside a claim becomes a part of its number: 1 before 5.83 reads as 15.83, and only the 5.83 was checked.',
    example: { prose: 'The mat tank ended at 1{7.31 mg/L = last(mat.DO)}.\n' },
    fixable: false,
  },
  'claim-in-image-text': {
    severity: 'warning', args: ['words'],
    why: 'The text of an image is read out as it stands; a claim in it is not checked.',
    example: { prose: '![The mat tank lost {2.9 % = first-loss}](night.png)\n' },
    fixable: false,
  },
  'claim-in-html': {
    severity: 'warning', args: ['words'],
    why: 'A block of HTML is passed over as it stands; a claim in it is not checked.',
    example: { prose: '<div>\nThe mat tank lost {2.9 % = first-loss}.\n</div>\n' },
    fixable: false,
  },
  'claim-wants-spaces': {
    severity: 'warning', args: ['words'],
    why: 'Only a spaced equals sign makes a claim. Without the spaces the braces are plain text and the number is not checked.',
    example: { prose: 'The mat tank had lost {2.9 %=first-loss}.\n' },
    fixable: true,
  },
  'claim-without-words': {
    severity: 'error', args: [],
    why: 'A claim is a number or words that the reader sees; with nothing before the equals sign the reader would see a gap.',
    example: { prose: 'The mat tank had lost { = first-loss}.\n' },
    fixable: true,
  },
} as const satisfies Record<string, CodeEntry>;
