// Problem codes raised by src/readings and src/dataset.
import type { CodeEntry } from '../codeEntry.ts';

export const readingsCodes = {
  'readings-empty': {
    severity: 'information', args: [], fixable: false,
    why: 'An empty readings block holds nothing to compute with; the heads say what is to be logged.',
    example: { readings: '\n' },
  },
  'time-column-missing': {
    severity: 'error', args: ['head'], fixable: true,
    why: 'Every reading belongs to a time. The first column is always the time, so that no value can be taken for one.',
    example: { readings: 'Time mat.DO\n20:00 8.21\n' },
  },
  'head-unreadable': {
    severity: 'error', args: ['head'], fixable: true,
    why: 'A column needs a tank (or room) and a quantity, joined by a point, so that every number has an owner.',
    example: { readings: 'time DO\n20:00 8.21\n' },
  },
  'column-unknown': {
    severity: 'error', args: ['name', 'kind', 'known'], fixable: true,
    why: 'A column must name a tank and a quantity of the plan; under any other name its readings would belong to nothing.',
    example: { readings: 'time mta.DO\n20:00 8.21\n' },
  },
  'column-twice': {
    severity: 'error', args: ['head'], fixable: false,
    why: 'Two columns of one name make two values for one time. A second instrument gets a name of its own: mat.DO@titration.',
    example: { readings: 'time mat.DO mat.DO\n20:00 8.21 8.22\n' },
  },
  'column-not-planned': {
    severity: 'warning', args: ['head', 'quantity', 'places'], fixable: true,
    why: 'The plan says where each instrument is used. A reading from another place has no stated instrument and no stated accuracy.',
    example: { readings: 'time mat.P\n20:00 1009.4\n' },
  },
  'head-unit-unknown': {
    severity: 'error', args: ['unit', 'head'], fixable: true,
    why: 'A number without a known unit cannot be compared or converted.',
    example: { readings: 'time mat.T[degX]\n20:00 24.9\n' },
  },
  'head-unit-mismatch': {
    severity: 'error', args: ['unit', 'head', 'planned'], fixable: true,
    why: 'The unit in the brackets measures something else than the plan says, so the column cannot be what it claims to be.',
    example: { readings: 'time mat.T[mg/L]\n20:00 24.9\n' },
  },
  'column-count': {
    severity: 'error', args: ['found', 'expected'], fixable: true,
    why: 'With a cell too few or too many nobody can tell which value belongs to which tank. The row is kept, but none of its values is used.',
    example: { readings: 'time mat.DO open.DO\n20:00 8.21\n' },
  },
  'cell-unreadable': {
    severity: 'error', args: ['text', 'head', 'words'], fixable: true,
    why: 'What was written there is kept, but it is no reading, so nothing can be computed from it.',
    example: { readings: 'time mat.DO\n20:00 8.2x1\n' },
  },
  'thousands-mark': {
    severity: 'error', args: ['text', 'meanings'], fixable: true,
    why: 'A mark between thousands looks like a decimal mark somewhere else in the world; a wrong guess is a thousandfold error.',
    example: { readings: 'time room.P\n20:00 1,009.4\n' },
  },
  'decimal-comma': {
    severity: 'warning', args: ['text', 'value'], fixable: true,
    why: 'A decimal comma is read as a decimal point; written with a point the table reads the same everywhere.',
    example: { readings: 'time mat.DO\n20:00 8,21\n' },
  },
  'correction-without-remark': {
    severity: 'warning', args: ['columns', 'time'], fixable: false,
    why: 'A corrected record keeps the first value and says why it was changed; without the reason a reader cannot judge it.',
    example: { readings: 'time mat.DO\n20:00 8.28->8.26\n' },
  },
  'left-out-without-remark': {
    severity: 'warning', args: ['columns', 'time'], fixable: false,
    why: 'A reading left out of the calculations needs a reason that can be checked, or the result looks picked.',
    example: { readings: 'time mat.DO\n20:00 (4.90)\n' },
  },
  'remark-without-row': {
    severity: 'warning', args: ['text'], fixable: true,
    why: 'A remark belongs to the row it stands in; on a line of its own it is a comment, which starts with #.',
    example: { readings: 'time mat.DO\n20:00 8.21\n; feeding\n' },
  },
  'time-unreadable': {
    severity: 'error', args: ['text'], fixable: true,
    why: 'Without its time a reading cannot enter any series. The row is kept.',
    example: { readings: 'time mat.DO\n20.30 8.21\n' },
  },
  'time-needs-date': {
    severity: 'error', args: [], fixable: false,
    why: 'A clock time needs a day. It comes from the start in the plan, from a day line such as # 2026-03-16, or from a full date.',
    example: { note: '```protocol\nquestion: Does it?\nplace: {time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n```\n\n```readings\ntime mat.DO\n20:00 8.21\n```\n' },
  },
  'time-needs-start': {
    severity: 'error', args: [], fixable: false,
    why: 'A time such as +90 counts from the start of the schedule, and the plan has none.',
    example: { note: '```protocol\nquestion: Does it?\nplace: {time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n```\n\n```readings\ntime mat.DO\n+90 8.21\n```\n' },
  },
  'time-wants-date': {
    severity: 'warning', args: ['time'], fixable: true,
    why: 'In a run of more than a day a clock time fits several days. A day line keeps a missing night from closing up unseen.',
    example: {
      note: '```protocol\nquestion: Does it?\nplace: {time zone: Europe/Amsterdam}\ntanks:\n  mat: {role: treatment}\nschedule: {start: 2026-03-14 20:00, end: 2026-03-18 20:00, every: 6 h}\nmeasure:\n  DO: {what: dissolved oxygen, unit: mg/L}\n```\n\n```readings\ntime mat.DO\n20:00 8.21\n```\n',
    },
  },
  'time-goes-back': {
    severity: 'error', args: ['time', 'step'], fixable: true,
    why: 'Rows follow one another in time. A step over midnight of more than 12 h is more likely a slip than a pause.',
    example: { readings: 'time mat.DO\n20:30 8.21\n20:00 8.22\n' },
  },
  'time-ambiguous': {
    severity: 'error', args: ['time', 'zone'], fixable: true,
    why: 'When the clocks go back an hour comes twice; only an offset tells which of the two was meant.',
    example: { readings: 'time mat.DO\n2026-10-25T02:30 8.21\n' },
  },
  'time-skipped': {
    severity: 'error', args: ['time', 'zone'], fixable: true,
    why: 'When the clocks go forward an hour is left out; a time inside it was read from a clock that had not been changed.',
    example: { readings: 'time mat.DO\n2026-03-29T02:30 8.21\n' },
  },
  'value-implausible': {
    severity: 'warning', args: ['text', 'head', 'unit', 'low', 'high', 'perhaps', 'count'], fixable: true,
    why: 'A value far outside what the quantity can be is mostly a slipped unit, a swapped column or a lost decimal point.',
    example: { readings: 'time mat.T\n20:00 76.8\n' },
  },
  'reading-outside-run': {
    severity: 'information', args: ['count', 'first', 'last'], fixable: false,
    why: 'Readings before the start or after the end belong to no phase of the run; mostly a date slipped.',
    example: { readings: 'time mat.DO\n2026-03-13T08:00 8.21\n' },
  },
  'slots-missed': {
    severity: 'information', args: ['head', 'missed', 'planned', 'times'], fixable: false,
    why: 'A planned reading that was not taken is named in the methods.',
    example: { readings: 'time mat.DO\n20:00 8.21\n20:30 -\n21:00 8.24\n' },
  },
  'duplicate-reading': {
    severity: 'error', args: ['columns', 'time'], fixable: false,
    why: 'Two values for one tank, quantity, instrument and time: one of them is wrong, and nobody but the keeper can say which.',
    example: { readings: 'time mat.DO\n20:00 8.21\n20:00 8.22\n' },
  },
  'times-nearly-pair': {
    severity: 'information', args: ['count', 'within'], fixable: true,
    why: 'Readings of different blocks are compared only at the same time. Times that differ by a little pair when the plan allows it.',
    example: { prose: '```readings\ntime mat.DO@titration\n20:01 8.2\n20:31 8.2\n22:01 8.2\n```\n' },
  },
  'seal-broken': {
    severity: 'error', args: ['kind', 'head', 'time'], fixable: false,
    why: 'A sealed table is a record. What is wrong in it is corrected with ->, which keeps the seal, and never overwritten.',
    example: { readings: 'time mat.DO\n# sealed 2026-03-15T10:20+01:00 sha256:0000000000000000000000000000000000000000000000000000000000000000\n20:00 8.21\n' },
  },
  'seal-unreadable': {
    severity: 'error', args: [], fixable: false,
    why: 'A seal that cannot be read protects nothing: it stands once under the heads, as the seal command wrote it.',
    example: { readings: 'time mat.DO\n# sealed by me\n20:00 8.21\n' },
  },
} as const satisfies Record<string, CodeEntry>;
