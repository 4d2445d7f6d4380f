// The one setting for how bad problems count: read, checked, applied.
import { deepEqual, equal } from 'node:assert/strict';
import { readSeverities, withSeverities } from '../../../src/assist/severity.ts';
import { problem } from '../../../src/problems/problem.ts';

const range = { start: 0, end: 1 };
const problems = [problem('claim-mismatch', range), problem('claim-unfilled', range), problem('unknown-key', range)];
const shown = (setting: unknown): string[] => withSeverities(problems, readSeverities(setting)).map((each) => `${each.code} ${each.severity}`);

suite('severity', () => {
  test('codes get the level that was chosen, off takes them away', () => {
    deepEqual(shown({ 'claim-mismatch': 'hint', 'claim-unfilled': 'off' }), ['claim-mismatch hint', `unknown-key ${problems[2]!.severity}`]);
  });

  test('nothing chosen leaves the very list', () => {
    for (const setting of [{}, null, undefined]) equal(withSeverities(problems, readSeverities(setting)), problems);
  });

  test('unknown codes, unknown levels and other shapes change nothing and are told', () => {
    const { levels, unknown } = readSeverities({ 'claim-mismatched': 'off', 'claim-mismatch': 'quiet', toString: 'off' });
    equal(levels.size, 0);
    deepEqual(unknown, ['claim-mismatched: off', 'claim-mismatch: quiet', 'toString: off']);
    deepEqual(readSeverities('off').unknown, ['off']);
    deepEqual(readSeverities(['off']).unknown, ['off']);
  });

  test('the problems themselves stay as they were', () => {
    const before = JSON.stringify(problems);
    shown({ 'claim-mismatch': 'hint' });
    equal(JSON.stringify(problems), before);
  });
});
