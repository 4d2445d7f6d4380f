import assert from 'node:assert/strict';
import { planningFigures, tankFigures } from '../../../src/design/planning.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Protocol } from '../../../src/protocol/types.ts';

const plan = (tanks: string, measure: string): Protocol => readNote(`\`\`\`protocol
place: {name: Zwolle, time zone: Europe/Amsterdam}
tanks:
${tanks}
schedule: {start: 2026-03-14 20:00, light off: 22:00, light on: 2026-03-15 06:00, end: 2026-03-15 07:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe${measure}}
\`\`\`
`).protocol!;
const two = '  a: {role: treatment}\n  b: {role: control}';
const six = ['a', 'b', 'c'].map((name) => `  ${name}: {role: treatment}`).concat(['d', 'e', 'f'].map((name) => `  ${name}: {role: control}`)).join('\n');
const near = (a: number, b: number): void => assert.ok(Math.abs(a - b) < 1e-9, `${a} is not ${b}`);

suite('planning figures', () => {
  test('one shared instrument: its accuracy cancels, its resolution stays', () => {
    const [found] = planningFigures(plan(two, ', accuracy: 0.1 mg/L, resolution: 0.01 mg/L'));
    // By hand: 2 √2 · 0.01/√12 mg/L for a pair of readings; over the 16 readings after lights-off a quarter of it; a change has two pairs.
    const pair = 2 * Math.SQRT2 * 0.01 / Math.sqrt(12);
    near(found!.singleReading, pair);
    assert.equal(found!.overPhase?.readings, 16);
    near(found!.overPhase!.difference, pair / 4);
    near(found!.change, pair * Math.SQRT2);
  });

  test('no stated resolution: the accuracy stays in every figure; no stated accuracy: no figure', () => {
    const [found] = planningFigures(plan(two, ', accuracy: 0.1 mg/L'));
    near(found!.singleReading, 2 * Math.SQRT2 * 0.1 / Math.sqrt(3));
    near(found!.overPhase!.difference, found!.singleReading);
    assert.deepEqual(planningFigures(plan(two, '')), []);
  });

  test('tanks: one a side allows no p; three a side by the noncentral t (R: power.t.test n 3, sd 0.3: 0.9212731)', () => {
    assert.deepEqual(tankFigures(plan(two, '')), { treatment: 1, control: 1, inDeviations: null, smallestP: null });
    const found = tankFigures(plan(six, ''))!;
    assert.ok(Math.abs(0.3 * found.inDeviations! - 0.9212731) < 1e-5, String(found.inDeviations));
    near(found.smallestP!, 0.1);
    assert.equal(tankFigures(plan('  a: {role: treatment}', '')), null);
  });
});
