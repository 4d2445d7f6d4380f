// English sentences of the command line: what it says of its work, and of wrong use.
import { text, type Sentences } from '../sentences.ts';

const counted = (count: string, one: string, many = `${one}s`): string => `${count} ${count === '1' ? one : many}`;

export const commandSentences = {
  // the way in
  'which-command': (args) => `Which command? There are ${text(args, 'commands')}; evenwater --help tells more.`,
  'no-option': (args) => `There is no option "${text(args, 'option')}".`,
  'no-command': (args) => `There is no command "${text(args, 'command')}"; there are ${text(args, 'commands')}.`,
  'options-unreadable': (args) => `${text(args, 'reason')}. See evenwater ${text(args, 'command')} --help.`,
  'no-language': (args) => `There are no sentences in "${text(args, 'language')}"; there are ${text(args, 'known').replace(', ', ' and ')}.`,
  'went-wrong': (args) => `Something went wrong inside evenwater: ${text(args, 'error')}`,

  // files
  'no-file': (args) => `There is no file "${text(args, 'name')}".`,
  'no-file-or-folder': (args) => `There is no file or folder "${text(args, 'name')}".`,
  'no-note-found': (args) => `No note (*${text(args, 'ending')}) was found in ${text(args, 'paths')}.`,
  'folder-unreadable': (args) => `The folder "${text(args, 'name')}" cannot be read.`,
  'file-unreadable': (args) => `The file "${text(args, 'name')}" cannot be read (${text(args, 'error')}).`,
  'not-utf8': (args) => `The file "${text(args, 'name')}" is not UTF-8 text; save it as UTF-8 and try again.`,
  'post-not-utf8': (args) => `The file "${text(args, 'name')}" is not UTF-8 text, so it is no post.`,
  'not-written': (args) => `"${text(args, 'name')}" cannot be written (${text(args, 'error')}).`,
  'read-only': (args) => `"${text(args, 'name')}" is read-only.`,
  'keeps-changing': (args) => `"${text(args, 'name')}" is being changed by another program again and again.`,
  'disk-full': (args) => `The disk is full: "${text(args, 'name')}" was not changed.`,
  'not-writable': (args) => `"${text(args, 'name')}" cannot be written, or its folder cannot (${text(args, 'error')}).`,
  'not-changed': (args) => `"${text(args, 'name')}" was not changed (${text(args, 'error')}).`,
  locked: (args) => `Another evenwater has been writing "${text(args, 'name')}" for too long.`,
  'locked-by': (args) => `Another evenwater has been writing "${text(args, 'name')}" for too long (${text(args, 'lock')}).`,
  written: (args) => `written: ${text(args, 'name')}`,

  // check
  'check-needs': () => 'check needs at least one note or folder.',
  checked: (args) => `${counted(text(args, 'notes'), 'note')} checked: ${counted(text(args, 'errors'), 'error')}, ${counted(text(args, 'warnings'), 'warning')}.`,

  // ask, find
  'ask-needs': () => "ask needs a note and one formula in quotes: evenwater ask NOTE 'FORMULA'.",
  'half-width': (args) => `With its 95 % half-width: ${text(args, 'value')}`,
  'find-needs': () => 'find needs one note.',
  'nothing-gives-it': () => 'nothing in this note gives it',
  gives: (args) => `gives ${text(args, 'value')}`,
  'gives-instead': (args) => `gives ${text(args, 'value')} instead`,
  'all-have-formulas': () => 'Every number has a formula that gives it.',
  'without-formula': (args) => `${counted(text(args, 'count'), 'number')} without a formula that gives it.`,

  // log
  'log-needs-note': () => 'log needs a note: evenwater log NOTE 7.31 24.9 …',
  'log-value': () => 'A value is a number, a word of a scale or -; words about the row go behind --note.',
  'log-needs-values': () => 'log needs the values of the row as well.',
  'from-journal': (args) => `${text(args, 'place')}: written from the journal: ${text(args, 'row')}`,
  'still-waiting': (args) => `Still waiting: ${text(args, 'typed')}: ${text(args, 'reason')} (--forget gives it up.)`,
  'warning-of': (args) => `warning: ${text(args, 'message')}`,
  'was-there': () => 'This row was in the note already.',
  'order-of-tanks': (args) => `The plan reads the tanks in this order: ${text(args, 'order')}.`,
  'row-kept': (args) => `The row is kept: evenwater log ${text(args, 'name')} writes it once this is mended.`,
  'not-in-note': (args) => `Not in the note: ${text(args, 'values')}`,
  'no-plan': () => 'This note has no plan that can be read.',
  due: (args) => `${text(args, 'clock')} is due: ${text(args, 'columns')}`,
  next: (args) => `${text(args, 'clock')} is next: ${text(args, 'columns')}`,
  'nothing-due': (args) => `Nothing is due: ${text(args, 'columns')}`,
  'given-up': (args) => `${counted(text(args, 'count'), 'row')} given up.`,
  'journal-not-written': (args) => `The journal in ${text(args, 'folder')} cannot be written (${text(args, 'error')}).`,
  'look-again': () => 'Not logged: look at the meter again, or log it with --anyway.',
  missing: (args) => `Missing: ${text(args, 'columns')}.`,

  // publish, recheck, extract
  'publish-needs-note': () => 'publish needs exactly one note.',
  'publish-needs-folder': () => 'publish needs --to DIR, the folder that the post goes into.',
  'no-form': (args) => `There is no form "${text(args, 'form')}" of a post; there are ${text(args, 'forms')}.`,
  'no-time-of-publishing': (args) => `"${text(args, 'time')}" is no time of publishing; write it like 2026-04-13T10:00+03:00.`,
  'data-needs-time': () => 'A data package states when it was published: add --published 2026-04-13, or the key "published" to the protocol.',
  'answer-fault': (args) => `The answer in the protocol does not hold: ${text(args, 'fault')}.`,
  'plan-without-tanks': () => 'The plan names no tank, so there is nothing to print.',
  'no-protocol-to-publish': (args) => `"${text(args, 'name')}" has no readable protocol block; there is nothing to publish.`,
  'not-published': (args) => `"${text(args, 'name')}" was not published: mend the errors first.`,
  'recheck-needs': () => 'recheck needs exactly one post: evenwater recheck POST.html.',
  'carries-no-note': (args) => `"${text(args, 'name')}" carries no note; it was not made by evenwater publish.`,
  'other-version': (args) => `${text(args, 'name')}: made with Evenwater ${text(args, 'madeWith') || '(no version stated)'}, rechecked with ${text(args, 'version')}: numbers and the words of the author are judged, generated wording, layout and drawings are not.`,
  'fault-in-post': (args) => `${text(args, 'name')}: error: ${text(args, 'fault')}`,
  'error-inside': (args) => `${text(args, 'name')}: error in the note inside, line ${text(args, 'line')}, column ${text(args, 'column')}: ${text(args, 'code')}: ${text(args, 'message')}`,
  differs: (args) => `${text(args, 'place')}: error ${text(args, 'noun')} differs: ${text(args, 'difference')}`,
  unjudged: (args) => `${text(args, 'count')} differences of generated wording, layout or drawing were not judged.`,
  holds: (args) => `${text(args, 'name')}: ${text(args, 'claims')} claims and ${text(args, 'values')} computed values agree with the note and data inside.`,
  'does-not-hold': (args) => `${text(args, 'name')}: does not agree with the note and data inside (${counted(text(args, 'count'), 'difference')}).`,
  'extract-needs-post': () => 'extract needs exactly one post: evenwater extract POST.html --to DIR.',
  'extract-needs-folder': () => 'extract needs --to DIR, the folder that note and data go into.',
  'exists-and-differs': (args) => `"${text(args, 'name')}" exists and differs from the file in the post; choose another folder.`,

  // format, seal, new
  'format-needs': () => 'format needs at least one note or folder.',
  'seal-needs': () => 'seal needs one note.',
  'plan-or-block': () => '--plan and --block exclude each other.',
  'new-takes-options': () => 'new takes options only; evenwater new --help lists them.',
  'option-wrong': (args) => `${text(args, 'option')}: ${text(args, 'reason')}`,
  'new-note': () => 'the new note',
  'cannot-be-repeated': (args) => `"${text(args, 'name')}" cannot be repeated: ${text(args, 'reason')}`,
  'there-already': (args) => `"${text(args, 'name')}" is there already; a new note is never written over another file.`,
} satisfies Sentences<string>;

export type CommandSentence = keyof typeof commandSentences;
