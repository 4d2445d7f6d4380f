// `evenwater format PATH…`: aligns readings tables and touches no value.
import { applyEdits } from '../../edits/edit.ts';
import { formatTables } from '../../edits/formatTables.ts';
import { readSyntax } from '../../note/readSyntax.ts';
import { CannotWrite, changeNote } from '../changeNote.ts';
import { exit, printJson, WrongUse, type Command } from '../command.ts';
import { diskPort } from '../filePort.ts';
import { findNotes, readNoteFile } from '../noteFiles.ts';
import { NoteIsLocked } from '../noteLock.ts';

export const format: Command = {
  name: 'format',
  usage: 'PATH… [--check]',
  summary: 'Align the readings tables of notes; no value is touched.',
  help: [
    'A file is formatted itself; a folder means every *.tank.md below it. Prints a line a note that changed.',
    '',
    '  --check    change nothing, and exit 1 when a note is not formatted',
  ],
  options: { check: { type: 'boolean' } },
  async run({ positionals, options, json, output }) {
    if (positionals.length === 0) throw new WrongUse('format needs at least one note or folder.');
    const only = options['check'] === true;
    const changed: string[] = [];
    for (const name of await findNotes(positionals)) if (await formatOne(name, only)) changed.push(name);
    if (json) printJson(output, { changed }); else for (const name of changed) output.result(name);
    return only && changed.length > 0 ? exit.problems : exit.well;
  },
};

/** True when the note was not formatted. */
async function formatOne(name: string, only: boolean): Promise<boolean> {
  const formatted = (text: string): string => applyEdits(text, formatTables(readSyntax(text)));
  const { text: now } = await readNoteFile(name);
  if (only || formatted(now) === now) return formatted(now) !== now;
  try {
    return await changeNote(diskPort, name, (text) => {
      const after = formatted(text);
      return Promise.resolve({ text: after === text ? null : after, value: after !== text });
    });
  } catch (error) {
    if (error instanceof CannotWrite) throw new WrongUse(error.message);
    if (error instanceof NoteIsLocked) throw new WrongUse(`Another evenwater has been writing "${name}" for too long.`);
    throw error;
  }
}
