// A note read with an earlier reading at hand is the note read afresh, whatever was typed in between.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';

const sample = readFileSync(path.resolve(import.meta.dirname, '../../../samples/overnight-oxygen.tank.md'), 'utf8');

/** Everything a reader of the note can see. */
const seen = (note: Note): unknown => ({
  problems: note.problems, accepted: note.accepted, claims: note.claims, tables: note.tables, results: note.results, equalise: note.equalise, stopRules: note.stopRules,
});

suite('a note read again', () => {
  test('the same text gives the same note', () => {
    const first = readNote(sample);
    assert.equal(readNote(sample, undefined, first), first);
  });

  test('a key typed in prose below the blocks leaves the ground alone', () => {
    const first = readNote(sample);
    const second = readNote(`${sample}x`, undefined, first);
    assert.equal(second.ground, first.ground);
    assert.deepEqual(seen(second), seen(readNote(`${sample}x`)));
  });

  test('a changed reading is a new ground, and its claims stop matching', () => {
    const first = readNote(sample);
    const second = readNote(sample.replace('7.77        24.2', '7.67        24.2'), undefined, first);
    assert.notEqual(second.ground, first.ground);
    assert.ok(second.problems.some((each) => each.code === 'claim-mismatch'));
  });

  test('property: any edit gives what a fresh reading gives', function () {
    this.timeout(240_000);
    const piece = fc.constantFrom('', 'x', '\n\n', '{5.83 mg/L = min(duckweed.DO)}', '{? = min(clear.DO)}', '7', '```', 'The tank {fell if true', '> ', '| a | b |', '- item\n', '\n```figure\nshow: [clear.DO]\n```\n', '{', '}');
    fc.assert(fc.property(fc.array(fc.tuple(fc.nat(), fc.nat({ max: 40 }), piece), { minLength: 1, maxLength: 4 }), (edits) => {
      let text = sample;
      let note = readNote(text);
      for (const [at, remove, insert] of edits) {
        const start = at % (text.length + 1);
        text = text.slice(0, start) + insert + text.slice(start + remove);
        note = readNote(text, undefined, note);
      }
      assert.deepEqual(seen(note), seen(readNote(text)));
    }), { numRuns: 25 });
  });
});
