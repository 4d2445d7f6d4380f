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
    example: { readings: 'time mat.DO\n20:00 8.28→8.26 ; misread\n' },
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
    example: { readings: 'time mat.T\n20:00 76.8\n20:30 76.8\n21:00 76.7\n' },
  },
  'reading-outside-run': {
    severity: 'information', args: ['count', 'first', 'last'], fixable: false,
    why: 'Readings before the start or after the end belong to no phase of the run; mostly a date slipped.',
    example: { readings: 'time mat.DO\n2026-03-13T08:00 8.21\n' },
  },
  'slots-missed': {
    severity: 'information', args: ['head', 'missed', 'planned', 'times', 'more'], fixable: false,
    why: 'A planned reading that was not taken is named in the methods.',
    example: { readings: 'time mat.DO\n20:00 8.21\n20:30 -\n21:00 8.24\n' },
  },
  'duplicate-reading': {
    severity: 'error', args: ['columns', 'time', 'count'], fixable: false,
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
    why: 'A sealed table is a record. What is wrong in it is corrected with ->, which keeps the seal, and never overwritten. A removed seal line leaves no trace in the note itself, only in published posts and in version control.',
    example: { readings: 'time mat.DO\n# sealed 2026-03-15T10:20+01:00 sha256:0000000000000000000000000000000000000000000000000000000000000000\n20:00 8.21\n' },
  },
  'seal-unreadable': {
    severity: 'error', args: [], fixable: false,
    why: 'A seal that cannot be read protects nothing: it stands once under the heads, as the seal command wrote it.',
    example: { readings: 'time mat.DO\n# sealed by me\n20:00 8.21\n' },
  },
  'data-file-missing': {
    severity: 'error', args: ['path'], fixable: false,
    why: 'The readings of this block stand in a file that is not there, so nothing can be computed from them.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': null } },
  },
  'data-file-not-loaded': {
    severity: 'information', args: ['path'], fixable: false,
    why: 'The file is being read; what depends on it is computed when it has arrived.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n' },
  },
  'data-file-outside': {
    severity: 'error', args: ['path'], fixable: true,
    why: 'A note may read only files of its own folder and the folders in it, so that a note from elsewhere cannot reach for others.',
    example: { readings: 'from: data\\probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n' },
  },
  'data-file-changed': {
    severity: 'error', args: ['path'], fixable: true,
    why: 'The file is not the one that was pinned. Either it was overwritten, or the pin must be renewed on purpose.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\nsha256: 0000000000000000000000000000000000000000000000000000000000000000\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-detected': {
    severity: 'information', args: ['path', 'found'], fixable: true,
    why: 'What was found out about the file may change with the next one; written into the block it is fixed, and the hash pins the file.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-layout': {
    severity: 'error', args: ['path'], fixable: false,
    why: 'No delimiter splits this file into columns; name one with the key delimiter, or export the file again as a table.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'hello\n' } },
  },
  'data-file-keys': {
    severity: 'error', args: ['reason'], fixable: false,
    why: 'The keys of this block cannot be read as YAML, so the file behind it cannot be read either.',
    example: { readings: 'from: probe-a.csv\ncolumns: [\n' },
  },
  'data-file-key-unknown': {
    severity: 'warning', args: ['key', 'known'], fixable: true,
    why: 'A key that is not known has no effect; mostly it is misspelt.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\ndelimeter: comma\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-key-value': {
    severity: 'error', args: ['key', 'text', 'known'], fixable: true,
    why: 'The key takes one of a few words; any other would be guessed at.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\ndelimiter: coma\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-columns': {
    severity: 'error', args: ['known'], fixable: true,
    why: 'Nobody but the keeper knows which column of the file holds what; the block says it under columns.',
    example: { readings: 'from: probe-a.csv\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-column': {
    severity: 'error', args: ['name', 'known'], fixable: true,
    why: 'The file has no column of that name, so its readings cannot be found.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestmp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-no-time': {
    severity: 'error', args: ['known'], fixable: false,
    why: 'Every reading belongs to a time; one column (or a date and a clock column, joined by +) must be the time.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n' } },
  },
  'data-file-unit': {
    severity: 'warning', args: ['from', 'printed', 'head', 'unit'], fixable: true,
    why: 'The head in the file prints another unit than the column is read in; one of the two is wrong.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Time: time\n  Temp (°F): mat.T\n', files: { 'probe-a.csv': 'Time,Temp (°F)\n2026-03-14 20:00:00,76.8\n' } },
  },
  'data-file-rows': {
    severity: 'warning', args: ['path', 'reason', 'count', 'lines', 'more'], fixable: false,
    why: 'Lines whose time cannot be read enter no series. They are kept and listed, never dropped in silence.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\nlater,8.3\n' } },
  },
  'data-file-cells': {
    severity: 'warning', args: ['path', 'head', 'count', 'lines', 'more'], fixable: false,
    why: 'Cells that hold no reading count as not taken. They are listed, so that a broken sensor is seen.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n2026-03-14 20:00:00,8.21\n2026-03-14 20:30:00,8.24\n2026-03-14 21:00:00,ERR\n' } },
  },
  'date-order-unclear': {
    severity: 'error', args: ['path', 'example', 'orders'], fixable: true,
    why: '03/04 is a day in March in one country and in April in another; a guess would move every reading by weeks.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n', files: { 'probe-a.csv': 'Timestamp,Oxygen (mg/l)\n03/04/2026 20:00:00,8.21\n03/04/2026 20:30:00,8.24\n' } },
  },
  'decimal-unclear': {
    severity: 'error', args: ['path'], fixable: true,
    why: 'A comma before three digits may be a decimal comma or stand between thousands: a thousandfold difference.',
    example: { readings: 'from: probe-a.csv\ncolumns:\n  Timestamp: time\n  P: room.P\n', files: { 'probe-a.csv': 'Timestamp;P\n2026-03-14 20:00:00;1,009\n' } },
  },
} as const satisfies Record<string, CodeEntry>;
