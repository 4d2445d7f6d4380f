// `evenwater new`: writes a new note from a template and the answers given as options. Never over a file that is there.
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { newNote } from '../../edits/newNote.ts';
import { answerNames, checkAnswer, type AnswerName, type NewNoteAnswers } from '../../edits/newNoteAnswers.ts';
import { templateByName, templates } from '../../edits/newNoteTemplates.ts';
import { repeatNote } from '../../edits/repeatNote.ts';
import { formatDate, readDuration } from '../../time/text.ts';
import { loadZone, utc } from '../../time/zone.ts';
import { readNote } from '../../experiment/readNote.ts';
import { commandSentence } from '../../words/commandLine.ts';
import { editSentence } from '../../words/edits.ts';
import { languageOf } from '../../words/languages.ts';
import { templateWords } from '../../words/templates.ts';
import { exit, printJson, WrongUse, wrongUse, type Command } from '../command.ts';
import { noteEnding, readNoteFile } from '../noteFiles.ts';
import { lineStarts, problemJson, problemLine } from '../places.ts';

/** The option of each answer: `lightOff` is `--light-off`. */
const optionOf = (name: AnswerName): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

export const newCommand: Command = {
  name: 'new',
  listed: (language) => templates.map((each) => `  --template ${each.name.padEnd(18)} ${templateWords(language, each).about}`),
  options: { to: { type: 'string' }, repeat: { type: 'string' }, seed: { type: 'string' }, ...Object.fromEntries(answerNames.map((name) => [optionOf(name), { type: 'string' as const }])) },
  async run({ positionals, options, json, output, language, say }) {
    if (positionals.length > 0) throw wrongUse('new-takes-options');
    const answers: { -readonly [Name in keyof NewNoteAnswers]: NewNoteAnswers[Name] } = {};
    const length = typeof options['length'] === 'string' ? readDuration(options['length']) : null;
    for (const name of answerNames) {
      const given = options[optionOf(name)];
      if (typeof given !== 'string') continue;
      const wrong = checkAnswer(name, given, length ?? readDuration(templateByName(String(options['template'] ?? 'blank'))?.length ?? ''));
      if (wrong) throw new WrongUse((asked) => commandSentence('option-wrong', { option: `--${optionOf(name)}`, reason: editSentence(wrong, asked) }, asked));
      answers[name] = given;
    }
    const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    const today = formatDate(Date.now(), loadZone(timeZone) ?? utc);
    const target = typeof options['to'] === 'string' && options['to'] !== '' ? targetFile(options['to']) : null;
    // Beside --json the sentences are English; the note is in the language asked for all the same.
    const ofNote = languageOf(typeof options['language'] === 'string' ? options['language'] : null);
    const text = typeof options['repeat'] === 'string' ? await repeatOf(options['repeat'], target, answers.start ?? today)
      : newNote(answers, { today, timeZone, language: ofNote, ...(typeof options['seed'] === 'string' ? { seed: options['seed'] } : {}) });
    const note = readNote(text, undefined, undefined, { fileIsNote: true });
    // That a new note still holds its instructions goes without saying.
    const problems = note.problems.filter((each) => (each.severity === 'error' || each.severity === 'warning') && each.code !== 'template-text').map((each) => problemJson(each, lineStarts(text), language));
    if (target !== null) await writeNew(target, text);
    const name = target ?? say('new-note');
    if (json) printJson(output, { written: target === null ? [] : [target], ...(target === null ? { text } : {}), problems });
    else if (target === null) output.result(text.trimEnd());
    else output.result(say('written', { name: target }));
    if (!json) for (const each of problems) output.progress(problemLine(name, each, false));
    return problems.length === 0 ? exit.well : exit.problems;
  },
};

/** The text of a repeat; the first note is named by its path from the new one. */
async function repeatOf(first: string, target: string | null, start: string): Promise<string> {
  const { note } = await readNoteFile(first);
  const name = path.relative(target === null ? path.dirname(first) : path.dirname(target), first).split(path.sep).join('/');
  const result = repeatNote(note, name, start);
  if (!result.ok) throw new WrongUse((asked) => commandSentence('cannot-be-repeated', { name: first, reason: editSentence(result.message, asked) }, asked));
  return result.text;
}

/** A note's file ends in `.tank.md`. */
function targetFile(name: string): string {
  const slashes = name.split(path.sep).join('/');
  return slashes.endsWith(noteEnding) ? slashes : `${slashes.replace(/\.md$/, '')}${noteEnding}`;
}

async function writeNew(target: string, text: string): Promise<void> {
  try {
    await mkdir(path.dirname(target), { recursive: true });
    await writeFile(target, text, { flag: 'wx' });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw code === 'EEXIST' ? wrongUse('there-already', { name: target }) : wrongUse('not-written', { name: target, error: code ?? String(error) });
  }
}
