// Claims that show a concentration in another way of counting than the plan's. The lowest invented reading is 7.31 mg/L:
// 5.115 mL/L by 1.42905 mg/mL(STP) (USGS OWQ memorandum 2011.03), 228.4 µmol/L by 31.9988 g/mol.
import assert from 'node:assert/strict';
import { fillInEdits } from '../../../src/claims/fillIn.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { claimsCodes } from '../../../src/problems/codes/claims.ts';
import { exampleNote } from '../../../src/problems/examples.ts';

const codes = (prose: string): string[] => readNote(exampleNote({ prose }).text).problems.map((each) => each.code).filter((code) => Object.hasOwn(claimsCodes, code));

suite('claims: oxygen by gas volume and amount', () => {
  test('what is right passes', () => {
    for (const shown of ['5.1 mL/L', '5.12 mL(STP)/L', '228 µmol/L', '0.228 mmol/L', '7.31 mg/L']) {
      assert.deepEqual(codes(`The oxygen fell to {${shown} = min(mat.DO)}.`), [], shown);
    }
    assert.deepEqual(codes('It {fell below 5.2 mL/L ? min(mat.DO) < 5.2 mL/L}.'), []);
  });

  test('what is wrong does not', () => {
    for (const shown of ['5.2 mL/L', '7.31 mL/L', '231 µmol/L']) assert.equal(codes(`The oxygen fell to {${shown} = min(mat.DO)}.`).length, 1, shown);
    assert.equal(codes('The water was at {5.1 mL/L = min(mat.T)}.').length, 1);
  });

  test('a gap is filled in the unit that is asked for', () => {
    const note = readNote(exampleNote({ prose: 'It was {? = min(mat.DO) in umol/L}.' }).text);
    const edits = fillInEdits(note);
    assert.ok(JSON.stringify(edits).includes('228'), JSON.stringify(edits));
  });
});
