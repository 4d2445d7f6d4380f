// `evenwater check PATH…`: every problem of every note, a line each.
import type { Say } from '../../words/commandLine.ts';
import { exit, printJson, Told, WrongUse, wrongUse, type Command } from '../command.ts';
import { findNotes, readNoteFile } from '../noteFiles.ts';
import { lineStarts, problemJson, problemLine, type ProblemJson } from '../places.ts';

export const check: Command = {
  name: 'check',
  options: {},
  async run({ positionals, json, output, language, say }) {
    if (positionals.length === 0) throw wrongUse('check-needs');
    const { found, unreadable } = await collect(positionals);
    const files: { file: string; problems: ProblemJson[] }[] = [];
    const count = { error: 0, warning: 0, information: 0, hint: 0 };
    for (const name of found) {
      try {
        const { note, text } = await readNoteFile(name);
        const starts = lineStarts(text);
        const problems = note.problems.map((each) => problemJson(each, starts, language))
          .sort((a, b) => a.line - b.line || a.column - b.column || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0));
        for (const each of problems) count[each.severity] += 1;
        files.push({ file: name, problems });
      } catch (error) {
        if (!(error instanceof Told)) throw error;
        unreadable.push(error.say);
      }
    }
    if (unreadable.length > 0 && json) throw new WrongUse((asked) => unreadable.map((each) => each(asked)).join(' '));
    if (json) {
      printJson(output, { files, errors: count.error, warnings: count.warning, information: count.information, hints: count.hint });
    } else {
      for (const { file, problems } of files) for (const each of problems) output.result(problemLine(file, each, output.colours));
      for (const each of unreadable) output.progress(each(language));
      output.progress(say('checked', { notes: files.length, errors: count.error, warnings: count.warning }));
    }
    return unreadable.length > 0 ? exit.wrongUse : count.error > 0 ? exit.problems : exit.well;
  },
};

/** Every note that the paths mean; a path that means none is told at the end, so that the other notes are still checked. */
async function collect(paths: readonly string[]): Promise<{ found: string[]; unreadable: Say[] }> {
  const found = new Set<string>();
  const unreadable: Say[] = [];
  for (const each of paths) {
    try {
      for (const name of await findNotes([each])) found.add(name);
    } catch (error) {
      if (!(error instanceof Told)) throw error;
      unreadable.push(error.say);
    }
  }
  return { found: [...found].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0)), unreadable };
}
