// Problem codes of the blocks that are drawn: figure, summary and limits.
import type { CodeEntry } from '../codeEntry.ts';
import { baseProtocol } from '../examples.ts';

export const chartsCodes = {
  'not-yet': {
    severity: 'error', args: ['what', 'instead'], fixable: false,
    why: 'The block asks for something this version cannot make. A post without it would lack what its author meant to show.',
    example: { prose: '```summary\nof: [mat.DO]\n```\n' },
  },
  'block-unreadable': {
    severity: 'error', args: ['block', 'line', 'reason'], fixable: false,
    why: 'The options of the block are not valid YAML, so nobody can tell what it should show.',
    example: { prose: '```figure\nshow: [mat.DO\n```\n' },
  },
  'option-unknown': {
    severity: 'error', args: ['option', 'block', 'nearest', 'known'], fixable: true,
    why: 'A mistyped option would be passed over in silence, and the figure would show something else than was meant.',
    example: { prose: '```figure\nshwo: [mat.DO]\n```\n' },
  },
  'option-value': {
    severity: 'error', args: ['option', 'known'], fixable: true,
    why: 'An option with a value that nobody knows would be passed over in silence.',
    example: { prose: '```methods\nchecklist: maybe\n```\n' },
  },
  'series-unknown': {
    severity: 'error', args: ['name', 'nearest', 'known'], fixable: true,
    why: 'A figure can only show what was read: a tank or the room, a dot, and a measured quantity.',
    example: { prose: '```figure\nshow: [mat.DOO]\n```\n' },
  },
  'figure-time-unreadable': {
    severity: 'error', args: ['option', 'text'], fixable: false,
    why: 'The figure is cut at this time, so the time must be clear.',
    example: { prose: '```figure\nshow: [mat.DO]\nfrom: teatime\n```\n' },
  },
  'figure-empty': {
    severity: 'error', args: ['shown'], fixable: false,
    why: 'An empty chart looks like a result. It is left out and named instead.',
    example: { prose: '```figure\nshow: [mat.DO]\nfrom: 2026-03-20 10:00\nto: 2026-03-20 12:00\n```\n' },
  },
  'second-axis': {
    severity: 'error', args: ['option'], fixable: false,
    why: 'Two scales on one pair of axes make lines cross or run together at the drawer\'s will. Series of different units get a panel each, one below the other, over the same hours.',
    example: { prose: '```figure\nshow: [mat.DO]\nsecond axis: [mat.T]\n```\n' },
  },
  'words-not-drawn': {
    severity: 'warning', args: ['series'], fixable: false,
    why: 'Words of a scale have an order but no distance, so a line through them would show steps that nobody measured. They stand in the table of readings.',
    example: {
      protocol: baseProtocol.replace('measure:\n', 'measure:\n  mood: {what: behaviour, scale: [calm, restless, surface, gasping]}\n'),
      readings: 'time   mat.DO  mat.mood\n20:00    8.21   calm\n20:30    8.24   restless\n',
      prose: '```figure\nshow: [mat.DO, mat.mood]\n```\n',
    },
  },
  'no-limits-stated': {
    severity: 'warning', args: [], fixable: false,
    why: 'A limits block compares the readings with the limits that the protocol states, and the protocol states none.',
    example: { prose: '```limits\n```\n' },
  },
} as const satisfies Record<string, CodeEntry>;
