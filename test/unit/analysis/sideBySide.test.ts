import assert from 'node:assert/strict';
import { compareSideBySide, offsetAt } from '../../../src/analysis/sideBySide.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import { paragraphText } from '../../../src/writing/figures.ts';
import { writeMethods } from '../../../src/writing/methods.ts';

/** Invented: a spare probe that reads 0.10 mg/L too much at the start and 0.30 at the end, ten hours on. */
const note = (correction: string): Note => readNote(`\`\`\`protocol
place: {name: Zwolle, latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam, daylight: no}
tanks:
  a: {role: treatment}
  b: {role: control}
schedule: {start: 2026-03-14 20:00, light off: 21:00, end: 2026-03-15 06:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: first probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
  DO@spare: {with: spare probe, accuracy: 0.3 mg/L, resolution: 0.01 mg/L${correction}}
\`\`\`

\`\`\`readings
time   a.DO  a.DO@spare  b.DO@spare
20:00  8.00        8.09        8.50
20:10  8.00        8.11        8.50
01:05     -           -        8.20
05:50  7.00        7.29        8.30
06:00  7.00        7.31        8.30
\`\`\`
`);
const number = (formula: string, of: Note): { value: number; u: number | null } => {
  const { value, problems } = evaluate(mappedText(formula), of.context);
  assert.ok(value?.type === 'number', JSON.stringify(problems));
  return { value: value.value, u: value.contributions === null ? null : Math.sqrt([...value.contributions.values()].reduce((sum, each) => sum + each * each, 0)) };
};
const near = (a: number, b: number): void => assert.ok(Math.abs(a - b) < 1e-9, `${a} is not ${b}`);

suite('instruments side by side', () => {
  test('offset at start and end, drift per hour, spread', () => {
    const found = compareSideBySide(note('').dataset, 'DO', 'spare')!;
    assert.equal(found.count, 4);
    near(found.start.offset, 0.1);
    near(found.end!.offset, 0.3);
    // 0.20 mg/L from 20:05 to 05:55
    near(found.drift!, 0.2 / (9 + 50 / 60));
    near(found.spread!, Math.sqrt((2 * 0.01 ** 2 + 2 * 0.01 ** 2) / 2));
    near(offsetAt(found, found.start.time - 1e6), 0.1);
    near(offsetAt(found, (found.start.time + found.end!.time) / 2), 0.2);
    assert.equal(compareSideBySide(note('').dataset, 'DO', 'none'), null);
  });

  test('taken out only where the plan says so', () => {
    near(number('at(b.DO, 01:05)', note('')).value, 8.2);
    const corrected = note(', corrected by: side by side');
    assert.deepEqual(corrected.problems.filter((each) => each.severity === 'error'), []);
    // The middle of 20:05 and 05:55 is 01:00; at 01:05 the line stands 5 minutes further on.
    near(number('at(b.DO, 01:05)', corrected).value, 8.2 - 0.2 - 0.2 * 5 / 590);
    // The plain probe's accuracy stands in for the spare one's: a/√3 of 0.1, not of 0.3.
    const { u } = number('at(b.DO, 01:05)', corrected);
    assert.ok(u !== null && u > 0.1 / Math.sqrt(3) && u < 0.065, String(u));
  });

  test('the methods state it, taken out or not', () => {
    const text = (of: Note): string => writeMethods(of).map((each) => paragraphText(each.runs)).join('\n');
    assert.match(text(note('')), /the spare probe was read side by side with the first probe four times: it read \+0\.1 mg\/L against it at 20:05 and \+0\.3 mg\/L at 05:55, a drift of \+0\.02 mg\/L\/h\. Nothing was taken out/);
    assert.match(text(note(', corrected by: side by side')), /taken out of its readings in every formula/);
  });
});
