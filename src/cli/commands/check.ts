// `evenwater check PATH…`: every problem of every note, a line each.
import { languages, type Language } from '../../words/languages.ts';
import { exit, printJson, WrongUse, type Command, type OptionValues } from '../command.ts';
import { findNotes, readNoteFile } from '../noteFiles.ts';
import { lineStarts, problemJson, problemLine, type ProblemJson } from '../places.ts';

export const check: Command = {
  name: 'check',
  usage: 'PATH…',
  summary: 'Check notes: every number and statement against the readings.',
  help: [
    'A file is checked itself; a folder means every *.tank.md below it, dot folders and node_modules left out.',
    'Prints a line a problem: file:line:column: severity code: sentence.',
    'Exit 0 without errors, 1 with errors, 2 on wrong use or unreadable input.',
    '',
    `  --language CODE  language of the sentences: ${languages.join(' or ')}; without it English. Codes and --json stay as they are.`,
  ],
  options: { language: { type: 'string' } },
  async run({ positionals, options, json, output }) {
    if (positionals.length === 0) throw new WrongUse('check needs at least one note or folder.');
    const language = json ? 'en' : languageAsked(options['language']);
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
        if (!(error instanceof WrongUse)) throw error;
        unreadable.push(error.message);
      }
    }
    if (unreadable.length > 0 && json) throw new WrongUse(unreadable.join(' '));
    if (json) {
      printJson(output, { files, errors: count.error, warnings: count.warning, information: count.information, hints: count.hint });
    } else {
      for (const { file, problems } of files) for (const each of problems) output.result(problemLine(file, each, output.colours));
      for (const message of unreadable) output.progress(message);
      output.progress(`${files.length} ${files.length === 1 ? 'note' : 'notes'} checked: ${plural(count.error, 'error')}, ${plural(count.warning, 'warning')}.`);
    }
    return unreadable.length > 0 ? exit.wrongUse : count.error > 0 ? exit.problems : exit.well;
  },
};

/** Every note that the paths mean; a path that means none is told at the end, so that the other notes are still checked. */
async function collect(paths: readonly string[]): Promise<{ found: string[]; unreadable: string[] }> {
  const found = new Set<string>();
  const unreadable: string[] = [];
  for (const each of paths) {
    try {
      for (const name of await findNotes([each])) found.add(name);
    } catch (error) {
      if (!(error instanceof WrongUse)) throw error;
      unreadable.push(error.message);
    }
  }
  return { found: [...found].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0)), unreadable };
}

function languageAsked(option: OptionValues[string]): Language {
  if (option === undefined) return 'en';
  const language = languages.find((each) => each === option);
  if (!language) throw new WrongUse(`There are no sentences in "${String(option)}"; there are ${languages.join(' and ')}.`);
  return language;
}

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
