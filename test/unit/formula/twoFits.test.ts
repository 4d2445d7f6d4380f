// Two tanks fitted apart have scatters of their own: in a difference they add in squares (JCGM 100:2008, 5.1.2), they do not cancel.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { contextOf, readNote } from '../../../src/experiment/readNote.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import type { FormulaNumber } from '../../../src/formula/types.ts';
import { mappedText } from '../../../src/note/mappedText.ts';

const note = readNote(readFileSync('samples/overnight-oxygen.tank.md', 'utf8'));

/** The part of a value's standard uncertainty that comes from the scatter about fits. */
function scatterOf(formula: string): number {
  const { value, problems } = evaluate(mappedText(formula), contextOf(note));
  assert.ok(value?.type === 'number', JSON.stringify(problems));
  const { contributions } = value as FormulaNumber;
  return Math.hypot(...[...contributions!].filter(([key]) => key.startsWith('fit:')).map(([, size]) => size));
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
});
