// Problem codes of the blocks that are drawn: figure, summary and limits.
import type { CodeEntry } from '../codeEntry.ts';
import { baseProtocol } from '../examples.ts';

export const chartsCodes = {
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
    severity: 'error', args: ['option'], fixable: true,
    why: 'Two scales on one pair of axes make lines cross or run together at the drawer\'s will. Series of different units get a panel each, one below the other, over the same hours.',
    example: { prose: '```figure\nshow: [mat.DO]\nsecond axis: [mat.T]\n```\n' },
  },
  'series-needed': {
    severity: 'error', args: ['formula', 'found'], fixable: true,
    why: 'A line or a row of figures needs a value at each reading. A single figure belongs into a values block or a summary.',
    example: { prose: '```figure\nshow: ["min(mat.DO)"]\n```\n' },
  },
  'option-not-here': {
    severity: 'error', args: ['option', 'rows'], fixable: false,
    why: 'The rows of the table say already which stretches of time they are about, so the option would be passed over in silence.',
    example: { prose: '```summary\nof: DO\nrows: phases\nfrom: 21:00\n```\n' },
  },
  'uncertainty-unknown': {
    severity: 'warning', args: ['series'], fixable: false,
    why: 'A band of uncertainty follows from the accuracy of the instruments. Where the protocol states none, there is none to draw, and a line without a band looks exact.',
    example: { protocol: baseProtocol.replace(', accuracy: 0.1 mg/L, resolution: 0.01 mg/L', ''), prose: '```figure\nshow: [mat.DO]\nuncertainty: yes\n```\n' },
  },
  'spec-key': {
    severity: 'error', args: ['key', 'nearest', 'known'], fixable: true,
    why: 'A specification of one\'s own is held to a closed list of keys; one that is not on it would be passed over or do something nobody looked at.',
    example: { prose: '```figure\nspec:\n  mrak: line\n  encoding: {x: {field: time}, y: {field: value}}\n```\n' },
  },
  'spec-value': {
    severity: 'error', args: ['key', 'value', 'wants', 'known'], fixable: false,
    why: 'Each key of a specification takes values of a closed list or within bounds, so that a drawing cannot do anything but draw.',
    example: { prose: '```figure\nspec:\n  mark: image\n  encoding: {x: {field: time}, y: {field: value}}\n```\n' },
  },
  'spec-refused': {
    severity: 'error', args: ['key', 'reason'], fixable: false,
    why: 'A note may come from anybody. What loads data, runs code, links elsewhere or changes settings could act on the reader\'s machine or tell that the note was opened, so a drawing never has it.',
    example: { prose: '```figure\nspec:\n  data: {url: table.csv}\n  mark: line\n  encoding: {x: {field: time}, y: {field: value}}\n```\n' },
  },
  'spec-too-many': {
    severity: 'error', args: ['rows', 'most'], fixable: false,
    why: 'A specification of one\'s own gets every reading, and so many would keep the preview drawing for seconds. Figures without one thin long series out.',
    example: {
      readings: `time mat.DO\n${Array.from({ length: 4100 }, (_, index) => `+${index} 8.${20 + (index % 10)}`).join('\n')}\n`,
      values: '', prose: '```figure\nspec: {mark: line, encoding: {x: {field: time}, y: {field: value}}}\n```\n',
    },
  },
  'summary-empty': {
    severity: 'error', args: ['of'], fixable: false,
    why: 'A table without a number looks like a result. It is left out and named instead.',
    example: {
      protocol: baseProtocol.replace('measure:\n', 'measure:\n  NO3: {what: nitrate, unit: mg/L, with: test kit}\n'),
      readings: 'time   mat.DO  mat.NO3\n20:00    8.21   -\n20:30    8.24   -\n', values: '', prose: '```summary\nof: [mat.NO3]\nrows: tanks\n```\n',
    },
  },
  'summary-function': {
    severity: 'error', args: ['function', 'exists', 'rows', 'known'], fixable: true,
    why: 'Each cell is a formula made of the function, the series and the row. Only functions that need nothing else can stand there.',
    example: { prose: '```summary\nof: DO\nrows: phases\nshow: [minimum]\n```\n' },
  },
  'summary-no-phases': {
    severity: 'error', args: [], fixable: true,
    why: 'Phases follow from the lights of the schedule or are stated under “phases”; without either there is nothing to make rows of.',
    example: { protocol: baseProtocol.replace('  light off: 22:00\n  light on: 2026-03-15 09:30\n', ''), values: '', prose: '```summary\nof: DO\nrows: phases\n```\n' },
  },
  'summary-moment': {
    severity: 'error', args: ['text'], fixable: true,
    why: 'Before and after need the moment that parts them: lights-off, an event, or a time.',
    example: { prose: '```summary\nof: DO\nrows: before-after\n```\n' },
  },
  'summary-row': {
    severity: 'error', args: ['text'], fixable: false,
    why: 'A row is a moment or a stretch of time; anything else has no readings of its own.',
    example: { prose: '```summary\nof: DO\nrows: [8.2 mg/L]\n```\n' },
  },
  'summary-rows-mixed': {
    severity: 'error', args: ['times', 'stretches'], fixable: true,
    why: 'A moment has one reading and a stretch of time has many, so the same columns cannot hold both.',
    example: { prose: '```summary\nof: DO\nrows: [22:00, dark]\n```\n' },
  },
  'summary-cell-empty': {
    severity: 'warning', args: ['function', 'series', 'row', 'reason', 'quantity', 'tank', 'of'], fixable: true,
    why: 'The readings give no value for a cell, so it is shown as a dash with the reason. An empty cell that nobody asked about is easily read as nothing found.',
    example: { prose: '```summary\nof: DO\nrows: [22:00, 22:10]\n```\n' },
  },
  'words-not-summed': {
    severity: 'warning', args: ['series'], fixable: false,
    why: 'Words of a scale have an order but no distance, so they have no mean. They stand in the table of readings.',
    example: {
      protocol: baseProtocol.replace('measure:\n', 'measure:\n  mood: {what: behaviour, scale: [calm, restless, surface, gasping]}\n'),
      readings: 'time   mat.DO  mat.mood\n20:00    8.21   calm\n20:30    8.24   restless\n', values: '',
      prose: '```summary\nof: [mat.DO, mat.mood]\nrows: tanks\n```\n',
    },
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
