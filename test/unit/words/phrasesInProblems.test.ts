// Arguments of problems are the note's own words, names, numbers, or codes of phrases: a sentence of one language never holds a
// piece of another. Every example of the table of codes is raised and its arguments are looked through.
import { deepEqual, ok } from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import type { MessageArguments, Problem } from '../../../src/problems/problem.ts';
import { schemaPaths } from '../../../src/protocol/describedKeys.ts';
import { criterionNames } from '../../../src/protocol/criteria.ts';
import { measures } from '../../../src/quantities/measures.ts';
import { fileKeyNames } from '../../../src/readings/file/fileKeys.ts';
import { phrases } from '../../../src/words/en/phrases.ts';

const raised = new Map((Object.keys(problemCodes) as ProblemCode[]).map((code) => [code, raisedBy(code)]));

function raisedBy(code: ProblemCode): { note: Note; text: string; problems: Problem[] } {
  const { text, files } = exampleNote(problemCodes[code].example);
  const first = readNote(text, files, undefined, { fileIsNote: true });
  const all = new Map<string, Uint8Array | null>(first.wants.map((path) => [path, files.get(path) ?? null]));
  const note = first.wants.length > 0 && code !== 'data-file-not-loaded' ? readNote(text, all, first, { fileIsNote: true }) : first;
  const own = [text, ...Object.values(problemCodes[code].example.files ?? {})].join('\n').replace(/[|{}]/gu, '').replace(/\s+/gu, ' ');
  return { note, text: own, problems: note.problems.filter((each) => each.code === code) };
}

const keys = [...schemaPaths.keys()];
const known: ReadonlySet<string> = new Set([
  ...measures.map((each) => each.name), ...keys.map((each) => each.key), ...keys.flatMap((each) => each.values ?? []), ...criterionNames, ...fileKeyNames,
]);

const examples = keys.map((each) => each.example).join('\n').replace(/\s+/gu, ' ');

/** Two words of letters beside each other: what a sentence is made of, and a unit, a duration or a formula is not. */
const words = /\p{L}{3,} \p{L}{2,}/u;

function foreignPieces(args: MessageArguments, text: string): string[] {
  return Object.entries(args).flatMap(([name, value]) => {
    if (typeof value === 'object' && Object.hasOwn(phrases, value[0] ?? '')) return [];
    // `mat tank: air pump` joins two pieces of the note.
    return [value].flat().flatMap((each) => String(each).split(/: ?/u)).filter((each) => words.test(each) && !text.includes(each) && !examples.includes(each) && !known.has(each))
      .map((each) => `${name}: ${each}`);
  });
}

suite('arguments of problems carry no sentences', () => {
  for (const [code, { text, problems }] of raised) {
    test(code, () => {
      for (const problem of problems) {
        deepEqual(foreignPieces(problem.args, text), []);
        for (const mend of problem.fixes) deepEqual(foreignPieces(Object.fromEntries(Object.entries(mend.args).filter(([name]) => !['text', 'lines', 'formula', 'condition'].includes(name))), text), [], mend.title);
        for (const place of problem.related) deepEqual(foreignPieces(place.args, text), [], place.message);
      }
    });
  }

  test('the look finds a sentence', () => {
    ok(foreignPieces({ found: 'a series of readings' }, 'mat.DO').length === 1);
    ok(foreignPieces({ found: ['readings'] }, 'mat.DO').length === 0);
  });
});
