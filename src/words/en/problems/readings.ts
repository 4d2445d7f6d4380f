// English sentences for the problems of src/readings and src/dataset. Arguments arrive as text or numbers, already formatted.
import type { readingsCodes } from '../../../problems/codes/readings.ts';
import { text, type Sentences } from '../../sentences.ts';
import type { MessageArguments } from '../../../problems/problem.ts';

const several = (args: MessageArguments, name: string, one: string, many: string): string => (Number(args[name]) === 1 ? one : many);

function sealSentence(args: MessageArguments): string {
  const head = text(args, 'head');
  const time = text(args, 'time');
  switch (text(args, 'kind')) {
    case 'value': return `${head} at ${time} was changed after this table was sealed; put the sealed value back, or correct it with -> so that the first value stays.`;
    case 'time': return `The time ${time} was changed after this table was sealed; put the sealed time back, or correct it with ->.`;
    case 'head': return `The column ${head === '' ? 'list' : head} or its unit was changed after this table was sealed; put it back.`;
    case 'row-added': return `The row ${time} was added after this table was sealed; log it in a block of its own.`;
    case 'row-removed': return 'A row was taken out after this table was sealed; put it back.';
    default: return 'This table is not as it was when it was sealed; put the sealed values back, or correct them with ->.';
  }
}

/** What a list leaves out. */
const more = (args: MessageArguments): string => (text(args, 'more') === '' ? '' : `, and ${text(args, 'more')} more`);

export const readingsSentences: Sentences<keyof typeof readingsCodes> = {
  'readings-empty': () => 'This readings block is empty; start it with the heads, time first.',
  'time-column-missing': (args) => `The first head must be time, not ${text(args, 'head') || 'nothing'}.`,
  'head-unreadable': (args) => `${text(args, 'head')} is no head; write the tank (or room), a point and the quantity, such as mat.DO.`,
  'column-unknown': (args) => (text(args, 'kind') === 'tank'
    ? `The plan has no tank ${text(args, 'name')}; it has ${text(args, 'known')}.`
    : `The plan does not measure ${text(args, 'name')}; ${text(args, 'known') ? `under measure it has ${text(args, 'known')}` : 'add it under measure'}.`),
  'column-twice': (args) => `The column ${text(args, 'head')} stands here twice; a second instrument needs a name, such as ${text(args, 'head').split('@')[0]!}@titration.`,
  'column-not-planned': (args) => `The plan has ${text(args, 'quantity')} measured in ${text(args, 'places')}, not where ${text(args, 'head')} says.`,
  'head-unit-mismatch': (args) => `${text(args, 'head')} cannot be in ${text(args, 'unit')}: the plan measures it in ${text(args, 'planned')}.`,
  'column-count': (args) => `This row has ${text(args, 'found')} ${several(args, 'found', 'value', 'values')} for ${text(args, 'expected')} ${several(args, 'expected', 'column', 'columns')}; write - for a reading that was not taken.`,
  'cell-unreadable': (args) => (text(args, 'words')
    ? `${text(args, 'text')} is no word of the scale of ${text(args, 'head')}: ${text(args, 'words')}.`
    : `${text(args, 'text')} cannot be read as a reading of ${text(args, 'head')}; write a number, or - if it was not taken.`),
  'thousands-mark': (args) => `${text(args, 'text')} has a mark between thousands, or a decimal comma; write ${(args['meanings'] as readonly string[] | undefined)?.join(' or ') ?? ''}.`,
  'decimal-comma': (args) => `${text(args, 'text')} is read as ${text(args, 'value')}; write it with a decimal point.`,
  'correction-without-remark': (args) => `${text(args, 'columns')} was corrected without a word; say why after a ; at the end of the row.`,
  'left-out-without-remark': (args) => `${text(args, 'columns')} was left out without a word; say why after a ; at the end of the row.`,
  'remark-without-row': () => 'This remark stands in no row; put it behind a row, or start the line with #.',
  'time-unreadable': (args) => `${text(args, 'text')} is no time; write 20:30, 2026-03-15T06:30, or +90 for minutes after the start.`,
  'time-needs-date': () => 'The day of this clock time is unknown: give the plan a start, or write a day line such as # 2026-03-16 above it.',
  'time-needs-start': () => 'This time counts from the start of the schedule, and the plan has none.',
  'time-wants-date': (args) => `The run lasts more than a day: give ${text(args, 'time')} a day line or a full date.`,
  'time-goes-back': (args) => `${text(args, 'time')} is earlier than the row above, and the next day would be ${text(args, 'step')} later; write the full date.`,
  'time-ambiguous': (args) => `The clocks in ${text(args, 'zone')} went back, so ${text(args, 'time')} came twice; add the offset.`,
  'time-skipped': (args) => `The clocks in ${text(args, 'zone')} went forward over ${text(args, 'time')}; add the offset of the clock you read.`,
  'value-implausible': (args) => {
    const perhaps = text(args, 'perhaps');
    const slip = perhaps ? `; is it in ${perhaps}?` : '.';
    const range = `between ${text(args, 'low')} and ${text(args, 'high')} ${text(args, 'unit')}`;
    return Number(args['count']) === 1
      ? `${text(args, 'text')} is far from what ${text(args, 'head')} can be (${range})${slip}`
      : `${text(args, 'count')} readings of ${text(args, 'head')}, the first ${text(args, 'text')}, are far from what it can be (${range})${slip}`;
  },
  'reading-outside-run': (args) => (Number(args['count']) === 1
    ? `The reading at ${text(args, 'first')} lies outside the run.`
    : `${text(args, 'count')} rows lie outside the run, the first at ${text(args, 'first')}, the last at ${text(args, 'last')}.`),
  'slots-missed': (args) => `${text(args, 'head')} has no reading at ${text(args, 'missed')} of ${text(args, 'planned')} planned times: ${text(args, 'times')}${more(args)}.`,
  'duplicate-reading': (args) => `${text(args, 'columns')} already ${Array.isArray(args['columns']) && args['columns'].length > 1 ? 'have values' : 'has a value'} at ${text(args, 'time')}${Number(args['count']) > 1 ? ` and ${Number(args['count']) - 1} more times` : ''}; keep one of the two.`,
  'times-nearly-pair': (args) => `${text(args, 'count')} times here nearly meet those of an earlier block; pair within: ${text(args, 'within')} in the plan would let them pair.`,
  'seal-broken': sealSentence,
  'seal-unreadable': () => 'This seal cannot be read; a table has one seal line, as the seal command wrote it.',
  'data-file-missing': (args) => `There is no file ${text(args, 'path')} beside this note; put it there or mend the path.`,
  'data-file-not-loaded': (args) => `${text(args, 'path')} is not read yet.`,
  'data-file-outside': (args) => `${text(args, 'path') || 'The path'} does not lie in this note's own folder; copy the file there and write its path with forward slashes.`,
  'data-file-changed': (args) => `${text(args, 'path')} is not the file that was pinned; put the old one back, or pin it as it is now.`,
  'data-file-detected': (args) => `${text(args, 'path')} was read with ${text(args, 'found')}; write this into the block to fix it.`,
  'data-file-layout': (args) => `${text(args, 'path')} cannot be split into columns; name its delimiter.`,
  'data-file-keys': (args) => {
    const reason = text(args, 'reason');
    if (reason === 'NO_TARGET') return 'Say what this column of the file holds: time, or a tank and a quantity such as mat.DO.';
    if (reason === 'NO_COLUMNS') return 'Under columns, write one line a column of the file: its head, a colon, and what it holds.';
    return 'The keys of this block cannot be read; look for a missing colon, bracket or quote.';
  },
  'data-file-key-unknown': (args) => `${text(args, 'key')} is no key of a readings block; the keys are ${text(args, 'known')}.`,
  'data-file-key-value': (args) => `${text(args, 'text')} is nothing that ${text(args, 'key')} can be; write ${text(args, 'known')}.`,
  'data-file-columns': (args) => `Say under columns what the file's columns hold: ${text(args, 'known')}.`,
  'data-file-column': (args) => `The file has no column ${text(args, 'name')}; it has ${text(args, 'known')}.`,
  'data-file-no-time': (args) => `Say under columns which column of the file is the time: ${text(args, 'known')}.`,
  'data-file-unit': (args) => `The file prints ${text(args, 'printed')} over ${text(args, 'from')}, and ${text(args, 'head')} is read in ${text(args, 'unit')}.`,
  'data-file-rows': (args) => {
    const count = Number(args['count']);
    const lines = `${text(args, 'path')}, ${count === 1 ? 'line' : 'lines'} ${text(args, 'lines')}${more(args)}`;
    switch (text(args, 'reason')) {
      case 'repeated': return `${lines}: the clocks went back, so ${count === 1 ? 'this time' : 'these times'} came twice; give the file's time zone as an offset such as +01:00.`;
      case 'skipped': return `${lines}: the clocks went forward over ${count === 1 ? 'this time' : 'these times'}; give the file's time zone as an offset such as +01:00.`;
      case 'no-date': return `${lines}: the time has no date; join the file's date and clock columns with +, or import the table into the note.`;
      case 'no-clock': return `${lines}: the time is only a date.`;
      case 'width': return `${lines}: more cells than heads, so nobody knows which cell is which; look for a decimal comma or a comma in a text.`;
      default: return `${lines}: the time cannot be read.`;
    }
  },
  'data-file-cells': (args) => `${text(args, 'path')}, ${Number(args['count']) === 1 ? 'line' : 'lines'} ${text(args, 'lines')}${more(args)}: no reading of ${text(args, 'head')} can be read there.`,
  'date-order-unclear': (args) => `Dates such as ${text(args, 'example')} in ${text(args, 'path')} can be read in two ways; say which with date order: ${(args['orders'] as readonly string[] | undefined)?.join(' or ') ?? ''}.`,
  'decimal-unclear': (args) => `The commas in ${text(args, 'path')} may be decimal commas or stand between thousands; say which with decimal: comma or point.`,
};
