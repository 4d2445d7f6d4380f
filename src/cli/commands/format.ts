// `evenwater format PATH…`: aligns readings tables and touches no value.
import { applyEdits } from '../../edits/edit.ts';
import { formatTables } from '../../edits/formatTables.ts';
import { readSyntax } from '../../note/readSyntax.ts';
import { CannotWrite, changeNote } from '../changeNote.ts';
import { exit, printJson, WrongUse, wrongUse, type Command } from '../command.ts';
import { diskPort } from '../filePort.ts';
import { findNotes, readNoteFile } from '../noteFiles.ts';
import { NoteIsLocked } from '../noteLock.ts';

export const format: Command = {
  name: 'format',
  options: { check: { type: 'boolean' } },
  async run({ positionals, options, json, output }) {
    if (positionals.length === 0) throw wrongUse('format-needs');
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
    if (error instanceof CannotWrite) throw new WrongUse(error.say);
    if (error instanceof NoteIsLocked) throw wrongUse('locked', { name });
    throw error;
  }
}
