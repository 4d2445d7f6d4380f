// Logs one typed row into a note on disk: read and checked as at the editor's prompt, kept in the journal first, written
// whole, acknowledged only then. Rows that an earlier run could not bring to disk are written on the way.
import { applyEdits, lineEnd, lineStart, type Message } from '../edits/edit.ts';
import { brokenTable, canBeMended, pendingRow, writePending, type PendingRow } from '../edits/pendingRow.ts';
import { planForTime, planRow } from '../edits/planRow.ts';
import { readRowInput, typedTime, type RowInput } from '../edits/readRowInput.ts';
import type { Note } from '../experiment/types.ts';
import type { Instant } from '../time/instant.ts';
import { formatInstant } from '../time/text.ts';
import { utc } from '../time/zone.ts';
import { commandSentence } from '../words/commandLine.ts';
import { editSentence } from '../words/edits.ts';
import type { Language } from '../words/languages.ts';
import { CannotWrite, changeNote } from './changeNote.ts';
import { WrongUse } from './command.ts';
import { errorCode, type FilePort } from './filePort.ts';
import { Journal, newId } from './journal.ts';
import { NoteIsLocked } from './noteLock.ts';
import { noteFromText, readNoteFile } from './noteFiles.ts';

export interface LogRequest {
  readonly name: string;
  /** What stands behind the note's name; empty: only what an earlier run left is written. */
  readonly values: readonly string[];
  readonly at: string | null;
  readonly remark: string | null;
  /** Log values that look wrong, too. */
  readonly anyway: boolean;
  readonly now: Instant;
  /** Of what is told; English where none is given. */
  readonly language?: Language;
}

/** A row that stands in the note on disk. */
export interface WrittenRow { readonly line: number; readonly time: string; readonly row: string; readonly already: boolean }

export interface LogOutcome {
  readonly logged: WrittenRow | null;
  /** Rows of earlier runs that were written now. */
  readonly replayed: readonly WrittenRow[];
  /** Rows of earlier runs that still cannot be written. */
  readonly waiting: readonly { readonly typed: string; readonly reason: string }[];
  readonly warnings: readonly { readonly message: string; readonly columns: readonly string[] }[];
  /** Why the row is not in the note; null when it is, or when none was typed. */
  readonly refused: string | null;
  /** True when a refused row is in the journal and will be written by a later run. */
  readonly kept: boolean;
}

type Prepared = { readonly row: PendingRow; readonly warnings: LogOutcome['warnings']; readonly broken: Message | null }
  | { readonly row: null; readonly warnings: LogOutcome['warnings']; readonly refused: string };

export async function logInto(port: FilePort, request: LogRequest, state?: string): Promise<LogOutcome> {
  const { language = 'en' } = request;
  const nothing: LogOutcome = { logged: null, replayed: [], waiting: [], warnings: [], refused: null, kept: false };
  const { note } = await readNoteFile(request.name);
  const prepared = request.values.length === 0 && request.remark === null ? null : prepare(note, request);
  if (prepared?.row === null) return { ...nothing, warnings: prepared.warnings, refused: prepared.refused };
  const own = prepared?.row ?? null;
  const journal = new Journal(port, await port.realPath(request.name), state);
  const warnings = [...prepared?.warnings ?? []];
  let inJournal = false;
  if (own) {
    try {
      await journal.add(own);
      inJournal = true;
    } catch (error) {
      // The note itself may still be written; what a journal guards against is what happens in between.
      warnings.push({ message: commandSentence('journal-not-written', { folder: journal.folder, error: errorCode(error) || String(error) }, language), columns: [] });
    }
  }
  if (prepared?.broken && own) return { ...nothing, warnings, refused: editSentence(prepared.broken, language), kept: inJournal };
  try {
    const written = await changeNote(port, request.name, (text) => writeAll(request, text, own, journal));
    for (const row of written.done) await journal.remove(row);
    if (own && written.refused && !canBeMended(written.refused)) { await journal.remove(own); inJournal = false; }
    return {
      logged: written.own, replayed: written.replayed, waiting: written.waiting, warnings,
      refused: written.refused ? editSentence(written.refused, language) : null, kept: written.refused !== null && inJournal,
    };
  } catch (error) {
    const known = error instanceof CannotWrite || error instanceof WrongUse || error instanceof NoteIsLocked;
    if (!known) throw error;
    const refused = error instanceof NoteIsLocked ? commandSentence('locked-by', { name: request.name, lock: error.message }, language) : error.say(language);
    return { ...nothing, warnings, refused, kept: inJournal };
  }
}

/** Reads what was typed as the editor's prompt does. */
function prepare(note: Note, request: LogRequest): Prepared {
  const { now, language = 'en' } = request;
  const words = request.values.join(' ') + (request.remark === null ? '' : ` ; ${request.remark}`);
  const at = request.at?.trim().replace(/\s+(?=\d)/u, 'T') ?? null;
  const time = at === null || at === 'now' ? null : typedTime(at, note, now);
  if (at !== null && at !== 'now' && time === null) return { row: null, warnings: [], refused: editSentence({ code: 'time-unreadable', args: { text: request.at ?? '' } }, language) };
  const broken: Message | null = note.protocol === null ? { code: 'no-protocol', args: {} } : brokenTable(note) ? { code: 'table-broken', args: {} } : null;
  const id = newId(Date.now());
  const due = planRow(note, now);
  const plan = due && time !== null ? planForTime(due, note, time) : due;
  // Without a plan there is no time zone either: a typed time has no meaning yet, and nothing is guessed.
  if (broken?.code === 'no-protocol' && at !== null) return { row: null, warnings: [], refused: editSentence(broken, language) };
  const typed = at === null ? words : `${at} ${words}`;
  if (broken || !plan) return { row: { id, time: time ?? now, values: [], remark: null, typed }, warnings: [], broken: broken ?? { code: 'no-protocol', args: {} } };
  const input = readRowInput(typed, note, plan);
  const warnings = input.warnings.map(({ message, at: places }) => ({ message: editSentence(message, language), columns: places.map((place) => plan.columns[place]!.id) }));
  const row = pendingRow(input, plan, typed, id);
  if (!row) return { row: null, warnings, refused: whyIncomplete(input, plan.columns.length, language) };
  if (warnings.length > 0 && !request.anyway) return { row: null, warnings, refused: commandSentence('look-again', {}, language) };
  const trial = writePending(note, row);
  if (!trial.ok && !canBeMended(trial.message)) return { row: null, warnings, refused: editSentence(trial.message, language) };
  return { row, warnings, broken: null };
}

function whyIncomplete(input: RowInput, expected: number, language: Language): string {
  if (input.errors.length > 0) return input.errors.map((each) => editSentence(each.message, language)).join(' ');
  const missing = input.cells.filter((cell) => cell.text === '').map((cell) => cell.column.id);
  return `${editSentence({ code: 'too-few', args: { found: expected - missing.length, expected } }, language)} ${commandSentence('missing', { columns: missing }, language)}`;
}

interface Written {
  readonly own: WrittenRow | null; readonly refused: Message | null; readonly done: readonly PendingRow[];
  readonly replayed: readonly WrittenRow[]; readonly waiting: LogOutcome['waiting'];
}

/** The text with every row of the journal, the own one last. */
async function writeAll({ name, language = 'en' }: LogRequest, before: string, own: PendingRow | null, journal: Journal): Promise<{ text: string | null; value: Written }> {
  const earlier = (await journal.rows()).filter((row) => row.id !== own?.id);
  let text = before;
  let ownRow: WrittenRow | null = null;
  let refused: Message | null = null;
  const done: PendingRow[] = [];
  const replayed: WrittenRow[] = [];
  const waiting: { typed: string; reason: string }[] = [];
  for (const row of own ? [...earlier, own] : earlier) {
    const { note } = await noteFromText(name, text);
    const result = writePending(note, row);
    if (!result.ok) {
      if (row === own) refused = result.message; else waiting.push({ typed: row.typed, reason: editSentence(result.message, language) });
      continue;
    }
    text = applyEdits(text, result.edits);
    const { start } = result.shows;
    const shown: WrittenRow = {
      line: text.slice(0, start).split('\n').length, time: formatInstant(row.time, note.protocol?.zone ?? utc),
      row: text.slice(lineStart(text, start), lineEnd(text, start)), already: result.already ?? false,
    };
    done.push(row);
    if (row === own) ownRow = shown; else if (!shown.already) replayed.push(shown);
  }
  return { text: text === before ? null : text, value: { own: ownRow, refused, done, replayed, waiting } };
}

/** Gives up the rows that wait for a note, and says what they were. */
export async function forgetWaiting(port: FilePort, name: string, state?: string): Promise<string[]> {
  const journal = new Journal(port, await port.realPath(name), state);
  const rows = await journal.rows();
  for (const row of rows) await journal.remove(row);
  return rows.map((row) => row.typed);
}
