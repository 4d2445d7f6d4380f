// No false alarm while typing: which problems wait, and for how long.
import { deepEqual, equal } from 'node:assert/strict';
import { calmProblems, patience, type CursorLine } from '../../../src/assist/calm.ts';
import { problem, type Problem } from '../../../src/problems/problem.ts';

const cursor: CursorLine = { line: 4, range: { start: 100, end: 140 } };
const error = (start: number, end = start + 5): Problem => problem('claim-mismatch', { start, end });
const warning = (start: number): Problem => problem('claim-unfilled', { start, end: start + 1 });
const shownCodes = (all: readonly Problem[], quiet: number, before: { code: string; line: number }[] = [], cursors = [cursor]): string[] => (
  calmProblems(all, before, cursors, quiet).shown.map((each) => `${each.code}@${each.range.start}`));

suite('calm while typing', () => {
  test('a new problem on the cursor’s line waits, those of other lines do not', () => {
    deepEqual(shownCodes([error(20), error(110), error(200)], 300), ['claim-mismatch@20', 'claim-mismatch@200']);
    const { waiting, waitingErrors, next } = calmProblems([error(110), warning(120)], [], [cursor], 300);
    deepEqual([waiting, waitingErrors, next], [2, 1, patience.error - 300]);
  });

  test('an error waits for a pause, a warning for a longer one', () => {
    deepEqual(shownCodes([error(110), warning(120)], patience.error), ['claim-mismatch@110']);
    deepEqual(shownCodes([error(110), warning(120)], patience.warning), ['claim-mismatch@110', 'claim-unfilled@120']);
    equal(calmProblems([error(110), warning(120)], [], [cursor], patience.error).next, patience.warning - patience.error);
    equal(calmProblems([error(110)], [], [cursor], patience.error).next, null);
  });

  test('when the cursor leaves the line nothing waits; with several cursors each line waits', () => {
    const away: CursorLine = { line: 9, range: { start: 300, end: 310 } };
    deepEqual(shownCodes([error(110)], 300, [], [away]), ['claim-mismatch@110']);
    deepEqual(shownCodes([error(110), error(305)], 300, [], [cursor, away]), []);
    deepEqual(shownCodes([error(110)], 300, [], []), ['claim-mismatch@110']);
  });

  test('a problem that stood there before does not flicker', () => {
    deepEqual(shownCodes([error(112)], 300, [{ code: 'claim-mismatch', line: 4 }]), ['claim-mismatch@112']);
    deepEqual(shownCodes([error(112)], 300, [{ code: 'claim-mismatch', line: 5 }]), []);
    deepEqual(shownCodes([error(112)], 300, [{ code: 'claim-unfilled', line: 4 }]), []);
  });

  test('the ends of the line belong to it, the lines around it do not', () => {
    deepEqual(shownCodes([error(90, 100), error(140, 140), error(141)], 300), ['claim-mismatch@90', 'claim-mismatch@141']);
    deepEqual(shownCodes([error(100, 100)], 300), []);
    deepEqual(shownCodes([error(50, 120)], 300), []);
    deepEqual(shownCodes([error(50, 120)], 300, [{ code: 'claim-mismatch', line: 2 }]), ['claim-mismatch@50']);
  });
});
