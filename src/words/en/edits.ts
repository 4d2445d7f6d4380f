// English sentences for what the edits tell the keeper: why something was not done, and what looks wrong in a typed row.
import { text, type Sentences } from '../sentences.ts';

const sentences = {
  'no-protocol': () => 'This note has no plan that can be read yet; mend the protocol block first.',
  'no-table': () => 'This note has no readings table; insert one first.',
  'no-row': () => 'There is no such row any more; pick the reading again.',
  'table-in-file': (args) => `These readings stand in ${text(args, 'path')}, which is pinned; a file is not changed from here.`,
  'table-broken': () => 'The heads of this table cannot be read; mend them first. What you typed is kept.',
  'table-sealed': () => 'This table is sealed; log into a block of its own.',
  'too-few': (args) => `${text(args, 'found')} of ${text(args, 'expected')} values; type - for a reading that was not taken.`,
  'too-many': (args) => `${text(args, 'found')} values for ${text(args, 'expected')} columns.`,
  'unreadable': (args) => `${text(args, 'text')} cannot be read as ${text(args, 'head')}.`,
  'not-a-word': (args) => `${text(args, 'text')} is no word of the scale of ${text(args, 'head')}: ${text(args, 'words')}.`,
  'already-read': (args) => `${text(args, 'columns')} already ${Array.isArray(args['columns']) && args['columns'].length > 1 ? 'have values' : 'has a value'} at ${text(args, 'time')}; correct ${Array.isArray(args['columns']) && args['columns'].length > 1 ? 'them' : 'it'} instead.`,
  'time-unreadable': (args) => `${text(args, 'text')} is no time.`,
  'time-not-written': (args) => `${text(args, 'time')} cannot be written into this table without moving the time of another row.`,
  'same-value': (args) => `${text(args, 'text')} is already the value.`,
  'already-left-out': () => 'This reading is already left out.',
  'already-doubtful': () => 'This reading is already marked as doubtful.',
  'nothing-to-mark': () => 'No reading was taken here.',
  'reason-missing': () => 'Say why in a few words; the reason stays with the row.',
  'remark-empty': () => 'The remark is empty.',
  'event-empty': () => 'Say what happened.',
  'events-unreadable': () => 'The events of the plan are written in one line; write them one a line, then log the event again.',
  'already-sealed': () => 'This table is already sealed, and the seal is valid.',
  'seal-broken': () => 'This table does not match its seal; see its problems first.',
  'nothing-to-seal': () => 'There is no reading to seal yet.',
  'rows-unreadable': () => 'A row of this table cannot be read; mend it, then seal the table.',
  'no-slots': () => 'The plan has no schedule with a start, an end and an interval, so there is nothing to lay out.',
  'nothing-to-import': () => 'Nothing in this text looks like a table.',
  'import-unmapped': () => 'Say which column is the time and what at least one other column holds.',
  'date-order-unclear': (args) => `Dates such as ${text(args, 'example')} can be read in two ways; pick one.`,
  'decimal-unclear': () => 'The commas may be decimal commas or stand between thousands; pick one.',
  'out-of-range': (args) => `${text(args, 'head')} ${text(args, 'text')} is far from what it can be (${text(args, 'low')} to ${text(args, 'high')} ${text(args, 'unit')}).`,
  'unit-slip': (args) => `${text(args, 'head')} ${text(args, 'text')} looks like ${text(args, 'perhaps')} in a column in ${text(args, 'unit')}.`,
  'jump': (args) => `${text(args, 'head')} went from ${text(args, 'before')} to ${text(args, 'text')}, far more than between other readings.`,
  'swapped': (args) => `${text(args, 'head')} and ${text(args, 'other')} look swapped.`,
  'saturation': (args) => `${text(args, 'head')} would be ${text(args, 'percent')} % of saturation.`,
  'time-far': (args) => `${text(args, 'time')} lies ${text(args, 'distance')} from now.`,
} as const satisfies Sentences<string>;

export type EditMessageCode = keyof typeof sentences;
export const editSentences: Sentences<EditMessageCode> = sentences;
