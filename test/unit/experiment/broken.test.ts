// Broken notes: each fixture is a whole note with one mistake. Its problems, with their exact places, are the expected ones and no
// others; nothing throws; and no recorded reading is lost.
import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { problemCodes } from '../../../src/problems/codes.ts';
import { sortProblems } from '../../../src/problems/problem.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';

interface Expected { readonly code: string; readonly line: number; readonly column: number; readonly endLine: number; readonly endColumn: number }

const folder = fileURLToPath(new URL('../../fixtures/broken/', import.meta.url));
const expected = JSON.parse(readFileSync(join(folder, 'expected.json'), 'utf8')) as Record<string, Expected[]>;

/** Reads a note with the data files beside it, as the shells do: once to learn what it wants, once more with the bytes. */
function readWithFiles(text: string, directory: string): Note {
  const note = readNote(text, new Map(), undefined, { fileIsNote: true });
  if (note.wants.length === 0) return note;
  const files = new Map(note.wants.map((path) => {
    const file = join(directory, path);
    return [path, existsSync(file) ? new Uint8Array(readFileSync(file)) : null] as const;
  }));
  return readNote(text, files, note, { fileIsNote: true });
}

/** Line and column from 1, the column in UTF-16 units. */
function place(text: string, offset: number): [number, number] {
  const before = text.slice(0, offset);
  return [before.split('\n').length, offset - before.lastIndexOf('\n')];
}

function errorsAndWarnings(note: Note): Expected[] {
  return note.problems.filter(({ severity }) => severity === 'error' || severity === 'warning').map(({ code, range }) => {
    const [line, column] = place(note.text, range.start);
    const [endLine, endColumn] = place(note.text, range.end);
    return { code, line, column, endLine, endColumn };
  });
}

/** Cells with a digit in the table as typed: plain code that knows nothing of the reader. The time is the first cell of a row. */
function typedCells(table: string): number {
  const rows = table.split('\n').map((line) => line.split(';')[0]!.trim()).filter((line) => line !== '' && !line.startsWith('#'));
  return rows.slice(1).reduce((sum, row) => sum + row.split(/[ \t]+/).slice(1).filter((cell) => /\d/.test(cell)).length, 0);
}

suite('broken notes', () => {
  test('there are at least eighty, and each file has its expectation', () => {
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.tank.md')).map((file) => file.replaceAll('\\', '/'));
    assert.ok(files.length >= 80, String(files.length));
    assert.deepEqual(files.sort(), Object.keys(expected).sort());
  });

  for (const [file, problems] of Object.entries(expected)) {
    test(file.replace(/^.*\//, ''), () => {
      const text = readFileSync(join(folder, file), 'utf8');
      const note = readWithFiles(text, dirname(join(folder, file)));
      const key = (each: Expected): string => `${each.code} ${each.line}:${each.column}-${each.endLine}:${each.endColumn}`;
      assert.deepEqual(errorsAndWarnings(note).map(key).sort(), problems.map(key).sort());

      for (const each of note.problems) {
        assert.ok(each.code in problemCodes);
        const sentence = problemSentence(each);
        assert.match(sentence, /[.?!]$/, sentence);
        assert.doesNotMatch(sentence, /undefined|NaN|Infinity|\[object/, sentence);
        for (const mend of each.fixes) {
          assert.notEqual(fixTitle(mend), '');
          for (const { range } of mend.edits) assert.ok(0 <= range.start && range.start <= range.end && range.end <= text.length);
        }
      }
      assert.deepEqual(note.problems, sortProblems(note.problems));

      // Nothing recorded is lost: every typed cell that holds a digit stands in a table, word for word.
      for (const table of note.tables) {
        if (table.file) continue;
        const typed = note.syntax.blocks[table.block]!.content.text;
        const kept = table.rows.flatMap(({ cells }) => cells.map((cell) => cell.text));
        assert.ok(kept.filter((cell) => /\d/.test(cell)).length >= typedCells(typed) - surplus(typed), `${kept.length} cells kept of ${typed}`);
        const said = [...table.rows.map(({ range }) => text.slice(range.start, range.end))].join('\n');
        for (const cell of kept) assert.ok(said.includes(cell));
        assert.equal(table.rows.length, typed.split('\n').slice(1).filter((line) => /^\s*[^\s#;]/.test(line)).length, 'every row is kept');
      }
    });
  }

  test('reading a broken note after another gives the same as reading it afresh', () => {
    let previous: Note | undefined;
    for (const file of Object.keys(expected)) {
      const text = readFileSync(join(folder, file), 'utf8');
      previous = readNote(text, new Map(), previous, { fileIsNote: true });
      assert.deepEqual(previous.problems, readNote(text, new Map(), undefined, { fileIsNote: true }).problems, file);
    }
  });
});

/** Cells beyond the heads: nobody can say whose they are; the row's text keeps them. */
function surplus(table: string): number {
  const [heads = '', ...rows] = table.split('\n').map((line) => line.split(';')[0]!.trim()).filter((line) => line !== '' && !line.startsWith('#'));
  const columns = heads.split(/[ \t]+/).length;
  return rows.reduce((sum, row) => sum + Math.max(0, row.split(/[ \t]+/).length - columns), 0);
}
