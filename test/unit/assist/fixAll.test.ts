// "Fix all" takes what is safe and leaves sealed tables alone.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { breaksSeal, safeEdits } from '../../../src/assist/fixAll.ts';
import { applyEdits } from '../../../src/edits/edit.ts';
import { sealBlock } from '../../../src/edits/sealTable.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { noteText, readings } from './support.ts';

const prose = 'It lost {2.9 % = first-loss}.\n';
const commas = readings.replace('8.21', '8,21').replace('8.02', '8,02');
const open = readNote(noteText({ readings: commas, prose }));
const codes = (problems: readonly Problem[], code: string): number => problems.filter((each) => each.code === code).length;

suite('assist: fix all', () => {
  test('every decimal comma at once; nothing is left to mend', () => {
    const { edits, count } = safeEdits(open);
    equal(count, 2);
    const after = readNote(applyEdits(open.text, edits));
    equal(codes(after.problems, 'decimal-comma'), 0);
    deepEqual(safeEdits(after), { edits: [], count: 0 });
    deepEqual([...after.dataset.series.get('mat.DO')!.values], [...open.dataset.series.get('mat.DO')!.values]);
  });

  test('a mismatched number is never among them', () => {
    const wrong = readNote(noteText({ prose: 'It lost {3.9 % = first-loss}.\n' }));
    equal(codes(wrong.problems, 'claim-mismatch'), 1);
    equal(safeEdits(wrong).count, 0);
  });

  test('a mend that would break a seal is left out, one elsewhere in the note is not', () => {
    const sealed = sealBlock(open, 0, Date.UTC(2026, 2, 15));
    ok(sealed.ok);
    const note = readNote(applyEdits(open.text, sealed.edits));
    equal(codes(note.problems, 'seal-broken'), 0);
    const [comma] = note.problems.filter((each) => each.code === 'decimal-comma');
    const edits = comma!.fixes[0]!.edits;
    const broken = codes(readNote(applyEdits(note.text, edits)).problems, 'seal-broken') > 0;
    equal(breaksSeal(note, edits), broken);
    equal(safeEdits(note).count, broken ? 0 : 2);
    equal(breaksSeal(note, [{ range: { start: 0, end: 0 }, newText: 'A' }]), false);
    const cell = note.text.indexOf('8.25');
    equal(breaksSeal(note, [{ range: { start: cell, end: cell + 4 }, newText: '8.35' }]), true);
    equal(breaksSeal(note, [{ range: { start: cell + 4, end: cell + 4 }, newText: '->8.35' }]), false);
  });
});
