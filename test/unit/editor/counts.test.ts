// The figures that CodeLens and the status item show, and the cheap test that keeps other Markdown free of cost.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { claimCounts, slotCounts } from '../../../src/editor/counts.ts';
import { isNoteFile, mayBeNote } from '../../../src/editor/selector.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { newNote } from '../../../src/edits/newNote.ts';
import type { Protocol } from '../../../src/protocol/types.ts';
import type { ReadingsTable } from '../../../src/readings/types.ts';
import { hour, minute } from '../../../src/time/instant.ts';

const schedule = (slots: number[]) => ({ schedule: { slots, sampling: [{ every: 30 * minute, from: 0, to: 3 * hour }] } }) as unknown as Protocol;
const table = (...instants: (number | null)[]) => ({ file: null, rows: instants.map((instant) => ({ instant, cells: [{ state: { kind: 'number' } }] })) }) as unknown as ReadingsTable;
const halfHours = [0, 30, 60, 90, 120].map((each) => each * minute);
const none = { missed: 0, late: 0, early: 0 };

suite('slots', () => {
  test('a row near a slot reads it; the next one is the first after the last reading', () => {
    deepEqual(slotCounts(schedule(halfHours), [table(0, 32 * minute)]), { ...none, read: 2, planned: 5, next: 60 * minute });
  });
  test('what came late and early, and what nobody read', () => {
    deepEqual(slotCounts(schedule(halfHours), [table(7 * minute, 55 * minute, 120 * minute)]), { read: 3, planned: 5, missed: 2, late: 1, early: 1, next: null });
  });
  test('several tables count together; a row without a readable time does not', () => {
    deepEqual(slotCounts(schedule(halfHours), [table(0, null), table(120 * minute)]), { ...none, read: 2, planned: 5, missed: 3, next: null });
  });
  test('before the first reading the first slot is next; without slots there is nothing to say', () => {
    equal(slotCounts(schedule(halfHours), [table()])?.next, 0);
    equal(slotCounts(schedule([]), [table(0)]), null);
  });
});

suite('claims', () => {
  test('in a fresh note every claim is to be filled in, and none fails', () => {
    const note = readNote(newNote({ template: 'overnight-oxygen' }, { today: '2026-05-02', timeZone: 'Europe/Amsterdam' }), new Map(), undefined, { fileIsNote: true });
    const { all, hold, fail, unfilled } = claimCounts(note);
    ok(unfilled > 0 && unfilled === all, `${unfilled} of ${all}`);
    deepEqual([hold, fail], [0, 0]);
  });
});

suite('what may be a note', () => {
  test('a protocol fence, also in a list or a quote, with tildes or more backticks', () => {
    for (const text of ['```protocol\n', 'a\n~~~~ protocol\n', '- ```protocol\r\n', '> ```protocol night\n', '1. ```protocol']) ok(mayBeNote(text), text);
  });
  test('nothing else', () => {
    for (const text of ['', 'protocol', '```protocols', '``protocol', 'a ```protocol', '```readings\n']) ok(!mayBeNote(text), text);
  });
  test('a long file of something else costs next to nothing', () => {
    const long = `${'The protocol of the meeting stands - 1. > * below. '.repeat(8)}\n`.repeat(5_000);
    const start = performance.now();
    ok(!mayBeNote(long));
    ok(performance.now() - start < 200);
  });
  test('a note by its name', () => {
    ok(isNoteFile('/a/night.tank.md') && isNoteFile('/a/NIGHT.TANK.MD') && !isNoteFile('/a/night.md'));
  });
});
