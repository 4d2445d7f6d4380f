// Two tanks fitted apart have scatters of their own, and so have contrasts over two windows: in a difference they add in squares
// (JCGM 100:2008, 5.1.2), they do not cancel. What two such contrasts share, the baseline, is not taken off: their ± is on the wide side.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { contextOf, readNote } from '../../../src/experiment/readNote.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import type { FormulaNumber } from '../../../src/formula/types.ts';
import { mappedText } from '../../../src/note/mappedText.ts';

const note = readNote(readFileSync('samples/overnight-oxygen.tank.md', 'utf8'));

/** The part of a value's standard uncertainty that comes from the scatter about fits and in contrasts. */
function scatterOf(formula: string): number {
  const { value, problems } = evaluate(mappedText(formula), contextOf(note));
  assert.ok(value?.type === 'number', JSON.stringify(problems));
  const { contributions } = value as FormulaNumber;
  return Math.hypot(...[...contributions!].filter(([key]) => /^(?:fit|contrast):/u.test(key)).map(([, size]) => size));
}

suite('two fits', () => {
  for (const name of ['respiration', 'reaeration', 'predicted-min']) {
    test(`the scatters of ${name} of two tanks add in squares`, () => {
      const [one, other] = [scatterOf(`${name}(duckweed.DO, dark)`), scatterOf(`${name}(clear.DO, dark)`)];
      assert.ok(one > 0 && other > 0);
      const both = scatterOf(`${name}(duckweed.DO, dark) - ${name}(clear.DO, dark)`);
      assert.ok(Math.abs(both / Math.hypot(one, other) - 1) < 1e-9, `${both} of ${one} and ${other}`);
    });
  }

  test('one fit asked twice has one scatter, however its window is written', () => {
    assert.ok(scatterOf('respiration(duckweed.DO) - respiration(duckweed.DO, dark)') < 1e-12);
  });

  test('contrasts over windows that begin together and end apart have scatters of their own', () => {
    const windows = ['light-off..02:00', 'light-off..06:00'];
    const [one, other] = windows.map((window) => scatterOf(`contrast(DO, ${window})`)) as [number, number];
    assert.ok(one > 0 && other > 0 && one !== other);
    const both = scatterOf(windows.map((window) => `contrast(DO, ${window})`).join(' - '));
    assert.ok(Math.abs(both / Math.hypot(one, other) - 1) < 1e-9, `${both} of ${one} and ${other}`);
    assert.ok(scatterOf('contrast(DO, dark) - contrast(DO, dark)') < 1e-12, 'one contrast asked twice has one scatter');
  });
});
