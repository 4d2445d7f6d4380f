// `evenwater log NOTE VALUES…`: logs one row, with the checks of the editor's prompt. Printed means: on disk.
import { planForTime, planRow } from '../../edits/planRow.ts';
import { rulesCrossedAt } from '../../experiment/conditions.ts';
import { formatClock } from '../../time/text.ts';
import { editSentence } from '../../words/edits.ts';
import { exit, printJson, WrongUse, type Command, type Output } from '../command.ts';
import { diskPort } from '../filePort.ts';
import { forgetWaiting, logInto, type LogOutcome } from '../logInto.ts';
import { readNoteFile } from '../noteFiles.ts';

export const log: Command = {
  name: 'log',
  usage: 'NOTE VALUES… [--at TIME]',
  summary: 'Log a row of readings into a note.',
  help: [
    'The values stand in the planned order: evenwater log night.tank.md 7.31 24.9 8.28 24.6 1008.1',
    'Where the plan draws or alternates the order of the tanks, it is that of the time logged; what went where is printed.',
    'A reading that was not taken is -. Without values: writes what an earlier run could not, and says what is due.',
    '',
    '  --at TIME      06:30, 2026-03-15T06:30, +90 (minutes from the start) or now; without it the slot that is due',
    '  --note TEXT    a remark for the row',
    '  --anyway       log values that look wrong, too',
    '  --forget       give up the rows that wait in the journal for this note; prints them',
    '',
    'The row is printed when it is on disk. Until then it is in the journal (the folder EVENWATER_STATE, or the',
    'system\'s folder for program state), and a later run writes it. The note is replaced in one step, under a lock',
    'file beside it; rows that another program wrote meanwhile stay.',
    'Exit 0 when the row is logged, 1 when it is refused (the reason on stderr), 2 on wrong use or an unreadable note.',
  ],
  options: { at: { type: 'string' }, note: { type: 'string' }, anyway: { type: 'boolean' }, forget: { type: 'boolean' } },
  async run({ positionals, options, json, output }) {
    const [name, ...values] = positionals;
    if (name === undefined) throw new WrongUse('log needs a note: evenwater log NOTE 7.31 24.9 …');
    if (values.some((value) => /[\n\r;#]/u.test(value))) throw new WrongUse('A value is a number, a word of a scale or -; words about the row go behind --note.');
    const at = typeof options['at'] === 'string' ? options['at'] : null;
    const remark = typeof options['note'] === 'string' ? options['note'] : null;
    if (options['forget'] === true) return forget(name, json, output);
    if (values.length === 0 && (at !== null || remark !== null)) throw new WrongUse('log needs the values of the row as well.');
    const outcome = await logInto(diskPort, { name, values, at, remark, anyway: options['anyway'] === true, now: Date.now() });
    const crossed = outcome.logged ? await crossedNow(name, outcome.logged.time) : [];
    if (json) printJson(output, { ...outcome, crossed }); else await tell(name, outcome, values, output);
    if (!json) for (const each of crossed) output.progress(each);
    return outcome.refused === null && outcome.waiting.length === 0 ? exit.well : exit.problems;
  },
};

async function tell(name: string, outcome: LogOutcome, values: readonly string[], output: Output): Promise<void> {
  for (const row of outcome.replayed) output.progress(`${name}:${row.line}: written from the journal: ${row.row}`);
  for (const row of outcome.waiting) output.progress(`Still waiting: ${row.typed}: ${row.reason} (--forget gives it up.)`);
  for (const warning of outcome.warnings) output.progress(`warning: ${warning.message}`);
  if (outcome.logged) {
    output.result(outcome.logged.row.trim());
    if (outcome.logged.already) output.progress('This row was in the note already.');
    const order = await drawnOrder(name, outcome.logged.time, values);
    if (order !== null) output.progress(`The plan reads the tanks in this order: ${order}.`);
  } else if (outcome.refused !== null) {
    output.progress(outcome.refused);
    if (outcome.kept) output.progress(`The row is kept: evenwater log ${name} writes it once this is mended.`);
    else output.progress(`Not in the note: ${values.join(' ')}`);
  } else {
    output.result(await whatIsDue(name));
  }
}

/** The stop rules that the row just logged crosses, each as a sentence. */
async function crossedNow(name: string, time: string): Promise<string[]> {
  const { note } = await readNoteFile(name);
  return rulesCrossedAt(note, Date.parse(time)).map((each) => editSentence({ code: 'stop-rule', args: { ...each } }));
}

/** Which value went where, when the plan's order of reading is not the order of the table's columns. */
async function drawnOrder(name: string, time: string, values: readonly string[]): Promise<string | null> {
  const { note } = await readNoteFile(name);
  const due = planRow(note, Date.now());
  const columns = due ? planForTime(due, note, Date.parse(time)).columns : [];
  const moved = columns.some((column, at) => at > 0 && column.index < columns[at - 1]!.index);
  return moved && columns.length === values.length ? columns.map((column, at) => `${column.id} ${values[at]}`).join(', ') : null;
}

/** What the plan wants next, with the columns in the order in which they are typed. */
async function whatIsDue(name: string): Promise<string> {
  const { note } = await readNoteFile(name);
  const plan = planRow(note, Date.now());
  if (!plan || !note.protocol) return 'This note has no plan that can be read.';
  const columns = plan.columns.map((column) => column.id).join(' ');
  const when = plan.slot ?? plan.next;
  return `${when === null ? 'Nothing is due' : `${formatClock(when, note.protocol.zone)} is ${plan.slot === null ? 'next' : 'due'}`}: ${columns}`;
}

async function forget(name: string, json: boolean, output: Output): Promise<number> {
  await readNoteFile(name);
  const rows = await forgetWaiting(diskPort, name);
  if (json) printJson(output, { forgotten: rows });
  else for (const row of rows) output.result(row);
  if (!json) output.progress(`${rows.length} ${rows.length === 1 ? 'row' : 'rows'} given up.`);
  return exit.well;
}
