// What the methods say of the plan itself: sealed, changed since, a repeat, the order of reading.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readNote } from '../../../src/experiment/readNote.ts';
import { planSealText } from '../../../src/protocol/planSeal.ts';
import { repeatNote } from '../../../src/edits/repeatNote.ts';
import { writeMethods } from '../../../src/writing/methods.ts';

const sample = readFileSync('samples/overnight-oxygen.tank.md', 'utf8');
const methods = (text: string): string => writeMethods(readNote(text)).map((each) => each.runs.map((run) => run.text).join('')).join('\n');
const withKeys = (...lines: string[]): string => sample.replace('\nstop if:', `\n${lines.join('\n')}\nstop if:`);

suite('methods: the plan', () => {
  const plan = readNote(sample).protocol!;
  const seal = `sealed: ${planSealText(plan, Date.parse('2026-04-11T15:00:00Z'))}`;

  test('a sealed plan that was kept', () => {
    assert.match(methods(withKeys(seal)), /The plan was sealed on 11 April 2026 at 18:00, before the first reading, and has not been changed since\./);
  });
  test('changes after the seal are deviations', () => {
    assert.match(methods(withKeys(seal).replace('every: 30 min', 'every: 15 min')), /The plan was sealed on 11 April 2026 at 18:00; after that the schedule was changed\./);
    assert.match(methods(withKeys(seal).replace('every: 30 min', 'every: 15 min').replace('duckweed.DO < 3.5', 'duckweed.DO < 3')), /after that the schedule and the stop rules were changed\./);
  });
  test('a repeat says what it changed', () => {
    const made = repeatNote(readNote(sample), 'overnight-oxygen.tank.md', '2026-05-02');
    assert.ok(made.ok);
    assert.match(methods(made.text), /This run repeats the one of overnight-oxygen\.tank\.md \(plan [0-9a-f]{12}\) with the same plan on other dates\./);
    assert.match(methods(made.text.replace('water depth: 26 cm', 'water depth: 25 cm')), /Besides the dates the description of the tanks was changed\./);
  });
  test('the order of reading', () => {
    assert.match(methods(withKeys('order: random', 'seed: 7')), /the order in which the tanks were read was drawn from the seed 7\./);
    assert.match(methods(withKeys('order: alternate')), /The tank that was read first changed from one time to the next\./);
    assert.match(methods(withKeys('order: [clear, duckweed]')), /in the order the clear tank, the duckweed tank/);
  });
});
