// `evenwater seal NOTE`: seals a readings table, so that every later change of a first value shows, or the plan.
import { applyEdits } from '../../edits/edit.ts';
import { sealPlan } from '../../edits/sealPlan.ts';
import { sealBlock } from '../../edits/sealTable.ts';
import type { Note } from '../../experiment/types.ts';
import { editSentence } from '../../words/edits.ts';
import { CannotWrite, changeNote } from '../changeNote.ts';
import { exit, printJson, WrongUse, wrongUse, type Command } from '../command.ts';
import { diskPort } from '../filePort.ts';
import { noteFromText, readNoteFile } from '../noteFiles.ts';
import { NoteIsLocked } from '../noteLock.ts';

export const seal: Command = {
  name: 'seal',
  options: { block: { type: 'string' }, plan: { type: 'boolean' } },
  async run({ positionals, options, json, output, language }) {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0) throw wrongUse('seal-needs');
    if (options['plan'] === true && options['block'] !== undefined) throw wrongUse('plan-or-block');
    await readNoteFile(name);
    const block = typeof options['block'] === 'string' ? options['block'] : null;
    try {
      const { line, refused } = await changeNote<{ line: string | null; refused: string | null }>(diskPort, name, async (text) => {
        const { note } = await noteFromText(name, text);
        const result = options['plan'] === true ? sealPlan(note, Date.now()) : sealBlock(note, tableOf(note, block), Date.now());
        if (!result.ok) return { text: null, value: { line: null, refused: editSentence(result.message, language) } };
        const after = applyEdits(text, result.edits);
        return { text: after, value: { line: after.slice(result.shows.start, result.shows.end).trim(), refused: null } };
      });
      if (json) printJson(output, { sealed: line, refused }); else if (line !== null) output.result(line); else output.progress(refused ?? '');
      return line === null ? exit.problems : exit.well;
    } catch (error) {
      if (error instanceof CannotWrite) throw new WrongUse(error.say);
      if (error instanceof NoteIsLocked) throw wrongUse('locked', { name });
      throw error;
    }
  },
};

/** Index of the wanted table; one past the end where there is none. */
function tableOf(note: Note, block: string | null): number {
  if (block === null) {
    const open = note.tables.findLastIndex((table) => !table.file && !table.sealed);
    return open >= 0 ? open : note.tables.length - 1;
  }
  const named = note.tables.findIndex((table) => table.name === block);
  return named >= 0 ? named : /^\d+$/u.test(block) ? Number(block) - 1 : -1;
}
