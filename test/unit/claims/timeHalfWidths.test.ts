// `±` behind a time of day or a length of time: read, compared with half the interval, mended. The night is the catalogue's example.
import assert from 'node:assert/strict';
import { readMentions } from '../../../src/claims/readMentions.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { halfWidthOf } from '../../../src/formula/timeIntervals.ts';
import { hour, minute } from '../../../src/time/instant.ts';
import { formatDuration } from '../../../src/time/text.ts';

const mention = (words: string, language = 'en') => {
  const [first, ...more] = readMentions(words, { language });
  assert.deepEqual(more, []);
  assert.ok(first && first.kind !== 'unclear' && first.kind !== 'date');
  return first;
};
const note = (prose: string) => readNote(`${exampleNote}\n${prose}\n`);
const claimOf = (prose: string) => note(prose).claims.at(-1)!;

/** The half-widths that the formulas give, whatever they are. */
const half = (formula: string): number => {
  const value = claimOf(`{? = ${formula}}`).evaluation!.value;
  assert.ok(value?.type === 'duration' || value?.type === 'instant');
  return halfWidthOf(value.interval)!;
};

suite('claims: ± of times', () => {
  for (const [words, length, step] of [
    ['9 h 30 min ± 20 min', 20 * minute, minute], ['9 h 30 min (± 1 h 10 min)', 70 * minute, minute], ['9 h 30 min +/- 0.5 h', 30 * minute, 6 * minute],
    ['06:04 ± 20 min', 20 * minute, minute], ['6:04 am ± 1 h', hour, hour], ['9h30 ± 20 min', 20 * minute, minute], ['06:04 plus or minus 20 minutes', 20 * minute, minute],
  ] as const) {
    test(words, () => {
      const found = mention(words);
      assert.ok(found.kind === 'duration' || found.kind === 'clock');
      assert.equal(found.halfWidth?.duration, length);
      assert.equal(found.halfWidth.step, step);
      assert.equal(found.end, words.length);
      assert.equal(words.slice(found.halfWidth.start, found.halfWidth.end).replace(/[^\d]/gu, '').length > 0, true);
    });
  }

  test('no ± without a unit of time behind it; a decimal comma in its language', () => {
    assert.equal(readMentions('06:04 ± 3 mg/L', { language: 'en' })[0]!.kind, 'clock');
    assert.equal((readMentions('06:04 ± 3 mg/L', { language: 'en' })[0] as { halfWidth: unknown }).halfWidth, null);
    const german = mention('06:04 ± 0,5 h', 'de');
    assert.ok(german.kind === 'clock' && german.halfWidth?.duration === 30 * minute);
  });

  test('holds against half the interval, and is mended where it does not', () => {
    for (const [formula, time] of [['time-to(mat.DO, 5.5 mg/L)', '8 h 38 min'], ['balance-point(mat.DO)', '06:04']] as const) {
      const right = formatDuration(half(formula));
      assert.equal(claimOf(`It took or was {${time} ± ${right} = ${formula}}.`).state, 'holds', formula);
      const text = `It took or was {${time} ± 3 min = ${formula}}.`;
      const wrong = claimOf(text);
      assert.equal(wrong.state, 'mismatch');
      const [first] = wrong.problems.filter((each) => each.code === 'claim-mismatch');
      const [edit] = first!.fixes[0]!.edits;
      assert.equal(edit!.newText, right);
      const whole = note(text).text;
      assert.equal(whole.slice(edit!.range.start, edit!.range.end), '3 min');
    }
  });

  test('a wrong length keeps its ± when it is mended', () => {
    const text = `{8 h 10 min ± ${formatDuration(half('time-to(mat.DO, 5.5 mg/L)'))} = time-to(mat.DO, 5.5 mg/L)}`;
    const wrong = claimOf(text).problems.find((each) => each.code === 'claim-mismatch')!;
    assert.deepEqual(wrong.fixes[0]!.edits.map((each) => each.newText), ['8 h 38 min']);
    const whole = note(text).text;
    assert.equal(whole.slice(wrong.fixes[0]!.edits[0]!.range.start, wrong.fixes[0]!.edits[0]!.range.end), '8 h 10 min');
  });

  test('hours with decimals too; a ± that nothing gives is said', () => {
    const hours = (half('time-to(mat.DO, 5.5 mg/L)') / hour).toFixed(1);
    assert.equal(claimOf(`{8.6 ± ${hours} h = time-to(mat.DO, 5.5 mg/L)}`).state, 'holds');
    assert.equal(claimOf('{8.6 ± 0.1 h = time-to(mat.DO, 5.5 mg/L)}').state, 'mismatch');
    assert.ok(claimOf('{04:00 ± 10 min = first-below(mat.DO, 6 mg/L)}').problems.some((each) => each.code === 'claim-uncertainty-unknown'));
    // one whose interval has no end
    assert.ok(claimOf('{26 h 57 min ± 2 h = time-to(mat.DO, 4.3 mg/L)}').problems.some((each) => each.code === 'claim-uncertainty-unknown'));
  });
});
