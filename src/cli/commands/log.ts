// `evenwater log NOTE VALUES…`: logs one row, with the checks of the editor's prompt. Printed means: on disk.
import { planForTime, planRow } from '../../edits/planRow.ts';
import { rulesCrossedAt } from '../../experiment/conditions.ts';
import { formatClock } from '../../time/text.ts';
import { editSentence } from '../../words/edits.ts';
import type { Language } from '../../words/languages.ts';
import { exit, printJson, wrongUse, type Command, type Invocation } from '../command.ts';
import { diskPort } from '../filePort.ts';
import { forgetWaiting, logInto, type LogOutcome } from '../logInto.ts';
import { readNoteFile } from '../noteFiles.ts';

export const log: Command = {
  name: 'log',
  options: { at: { type: 'string' }, note: { type: 'string' }, anyway: { type: 'boolean' }, forget: { type: 'boolean' } },
  async run(invocation) {
    const { positionals, options, json, output, language } = invocation;
    const [name, ...values] = positionals;
    if (name === undefined) throw wrongUse('log-needs-note');
    if (values.some((value) => /[\n\r;#]/u.test(value))) throw wrongUse('log-value');
    const at = typeof options['at'] === 'string' ? options['at'] : null;
    const remark = typeof options['note'] === 'string' ? options['note'] : null;
    if (options['forget'] === true) return forget(name, invocation);
    if (values.length === 0 && (at !== null || remark !== null)) throw wrongUse('log-needs-values');
    const outcome = await logInto(diskPort, { name, values, at, remark, anyway: options['anyway'] === true, now: Date.now(), language });
    const crossed = outcome.logged ? await crossedNow(name, outcome.logged.time, language) : [];
    if (json) printJson(output, { ...outcome, crossed }); else await tell(name, outcome, values, invocation);
    if (!json) for (const each of crossed) output.progress(each);
    return outcome.refused === null && outcome.waiting.length === 0 ? exit.well : exit.problems;
  },
};

async function tell(name: string, outcome: LogOutcome, values: readonly string[], { output, say }: Invocation): Promise<void> {
  for (const row of outcome.replayed) output.progress(say('from-journal', { place: `${name}:${row.line}`, row: row.row }));
  for (const row of outcome.waiting) output.progress(say('still-waiting', { typed: row.typed, reason: row.reason }));
  for (const warning of outcome.warnings) output.progress(say('warning-of', { message: warning.message }));
  if (outcome.logged) {
    output.result(outcome.logged.row.trim());
    if (outcome.logged.already) output.progress(say('was-there'));
    const order = await drawnOrder(name, outcome.logged.time, values);
    if (order !== null) output.progress(say('order-of-tanks', { order }));
  } else if (outcome.refused !== null) {
    output.progress(outcome.refused);
    if (outcome.kept) output.progress(say('row-kept', { name }));
    else output.progress(say('not-in-note', { values: values.join(' ') }));
  } else {
    output.result(await whatIsDue(name, say));
  }
}

/** The stop rules that the row just logged crosses, each as a sentence. */
async function crossedNow(name: string, time: string, language: Language): Promise<string[]> {
  const { note } = await readNoteFile(name);
  return rulesCrossedAt(note, Date.parse(time)).map((each) => editSentence({ code: 'stop-rule', args: { ...each } }, language));
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
async function whatIsDue(name: string, say: Invocation['say']): Promise<string> {
  const { note } = await readNoteFile(name);
  const plan = planRow(note, Date.now());
  if (!plan || !note.protocol) return say('no-plan');
  const columns = plan.columns.map((column) => column.id).join(' ');
  const when = plan.slot ?? plan.next;
  if (when === null) return say('nothing-due', { columns });
  return say(plan.slot === null ? 'next' : 'due', { clock: formatClock(when, note.protocol.zone), columns });
}

async function forget(name: string, { json, output, say }: Invocation): Promise<number> {
  await readNoteFile(name);
  const rows = await forgetWaiting(diskPort, name);
  if (json) printJson(output, { forgotten: rows });
  else for (const row of rows) output.result(row);
  if (!json) output.progress(say('given-up', { count: rows.length }));
  return exit.well;
}
