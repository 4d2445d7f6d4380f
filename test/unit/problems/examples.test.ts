// The table of codes: every code's example raises it, with the arguments that the table names and the fix that it promises.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import { findFixes } from '../../../src/experiment/findNumbers.ts';
import type { Note } from '../../../src/experiment/types.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import { problemSentence, fixTitle } from '../../../src/words/words.ts';

/** The example read. A data file that the example does not give is missing, or for one code not loaded yet. */
function noteOf(code: ProblemCode): Note {
  const { text, files } = exampleNote(problemCodes[code].example);
  const options = { fileIsNote: true };
  const note = readNote(text, files, undefined, options);
  if (code === 'data-file-not-loaded') return note;
  const all = new Map<string, Uint8Array | null>(note.wants.map((path) => [path, files.get(path) ?? null]));
  return note.wants.length > 0 ? readNote(text, all, note, options) : note;
}

/** A problem's own fixes, and those that are searched for when somebody asks. */
const fixesOf = (each: Problem, note: Note): Problem['fixes'] => [...each.fixes, ...findFixes(each, note)];

/** Codes whose example would have to be a file too large to stand in a table. */
const elsewhere = new Set<string>(['data-file-too-large']);

suite('the examples of problems', () => {
  test('the base note has nothing to complain of', () => {
    const { text } = exampleNote({});
    const { problems } = readNote(text, new Map(), undefined, { fileIsNote: true });
    assert.deepEqual(problems.filter(({ severity }) => severity === 'error' || severity === 'warning').map((each) => problemSentence(each)), []);
  });

  for (const code of Object.keys(problemCodes) as ProblemCode[]) {
    if (elsewhere.has(code)) continue;
    test(code, () => {
      const entry = problemCodes[code];
      const note = noteOf(code);
      const { problems } = note;
      const raised = problems.filter((each) => each.code === code);
      assert.ok(raised.length > 0, `raised instead: ${problems.map((each) => each.code).join(', ') || 'nothing'}`);
      assert.match(code, /^[a-z]+(-[a-z]+)*$/);
      assert.match(entry.why, /^[A-Z0-9`].*[.]$/s, entry.why);
      for (const each of raised) {
        assert.equal(each.severity, entry.severity);
        for (const name of Object.keys(each.args)) assert.ok((entry.args as readonly string[]).includes(name), `${name} is not among the arguments of the table`);
        const sentence = problemSentence(each);
        assert.match(sentence, /^\S.*[.?!]$/s, sentence);
        assert.doesNotMatch(sentence, /undefined|NaN|Infinity|\[object|  /, sentence);
        const fixes = fixesOf(each, note);
        for (const mend of fixes) {
          assert.notEqual(fixTitle(mend), mend.title, `the fix ${mend.title} has no words`);
          assert.ok(fixes.filter(({ preferred }) => preferred).length <= 1);
        }
      }
      assert.equal(raised.some((each) => fixesOf(each, note).length > 0), entry.fixable, 'the table says whether there is a fix');
    });
  }
});
