// A made-up language: each sentence is its code and its arguments between brackets. Whatever shows a problem shows that and nothing
// beside it: no piece of a sentence is glued on outside the tables of words.
import { deepEqual, match, ok } from 'node:assert/strict';
import { lineStarts, problemJson, problemLine } from '../../../src/cli/places.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { createNoteParser } from '../../../src/note/markdown.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import type { MessageArguments } from '../../../src/problems/problem.ts';
import { evenwaterMarkdown } from '../../../src/render/plugin.ts';
import { unescapeHtml } from '../../../src/publish/embed.ts';
import { fixTitles } from '../../../src/words/en/fixes.ts';
import { problemSentences } from '../../../src/words/en/problems.ts';
import type { Sentence } from '../../../src/words/sentences.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';

type Table = Record<string, Sentence>;
const tables = [problemSentences as Table, fixTitles as Table];
const kept = tables.map((table) => ({ ...table }));

const pseudo = (code: string) => (args: MessageArguments): string => (
  `⟦${code}${Object.entries(args).map(([name, value]) => ` ${name}=${[value].flat().join('+')}`).join('')}⟧`).replaceAll('\n', ' ');
const whole = /^⟦[^⟦⟧]*⟧$/u;

/** The example read; a data file that it does not give is missing. */
function noteOf(code: ProblemCode): Note {
  const { text, files } = exampleNote(problemCodes[code].example);
  const note = readNote(text, files, undefined, { fileIsNote: true });
  return readNote(text, new Map(note.wants.map((path) => [path, files.get(path) ?? null])), note, { fileIsNote: true });
}

/** The texts between tags. */
const texts = (html: string): string[] => html.split(/<[^>]*>/u).map((each) => unescapeHtml(each).trim()).filter((each) => each !== '');

suite('a made-up language', () => {
  let seen = 0;
  suiteSetup(() => { for (const table of tables) for (const code of Object.keys(table)) table[code] = pseudo(code); });
  suiteTeardown(() => { tables.forEach((table, index) => { Object.assign(table, kept[index]); }); });

  for (const code of Object.keys(problemCodes) as ProblemCode[]) {
    test(code, () => {
      const note = noteOf(code);
      const starts = lineStarts(note.text);
      for (const problem of note.problems) {
        const sentence = problemSentence(problem);
        match(sentence, whole);
        for (const value of Object.values(problem.args).flat()) ok(sentence.includes(String(value).replaceAll('\n', ' ')), String(value));
        deepEqual(problemLine('note.md', problemJson(problem, starts), false).replace(/^note\.md:\d+:\d+: (?:error|warning|information|hint) [a-z-]+: /u, ''), sentence);
        for (const mend of problem.fixes) match(fixTitle(mend), whole);
        for (const place of problem.related) match(fixTitle({ title: place.message, args: place.args }), whole);
      }
      const md = createNoteParser();
      evenwaterMarkdown(md, { noteFor: () => note, target: 'preview' });
      const shown = texts(md.render(note.text)).filter((each) => each.includes('⟦'));
      seen += shown.length;
      for (const each of shown) match(each, /^(?:✕ )?⟦[^⟦⟧]*⟧$/u);
    });
  }

  test('the preview showed many of them', () => { ok(seen > 300, String(seen)); });
});
