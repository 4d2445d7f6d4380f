// Words that say something else than the formula beside them: another direction, another tank. Over the base note of the examples; invented data.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import { baseProtocol, exampleNote } from '../../../src/problems/examples.ts';

const asked = ['direction-differs', 'other-tank-named', 'formula-of-numbers', 'rounded-coarsely'];
const codes = (prose: string, protocol = baseProtocol): string[] => readNote(exampleNote({ prose, protocol }).text).problems.map((each) => each.code).filter((code) => asked.includes(code));

suite('claims: words against the formula', () => {
  const turned: readonly string[] = [
    'It rose by {0.24 mg/L = fall(mat.DO, 22:00..22:30)}.',
    '{Overnight it gained 2.9 % = first-loss}.',
    'It fell by {−0.24 mg/L = change(mat.DO, 22:00..22:30)}.',
    'a {0.24 mg/L = fall(mat.DO, 22:00..22:30)} rise',
    'It had not fallen before; it **rose** {0.48 mg/L/h = fall(mat.DO, 22:00..22:30) / duration(22:00..22:30)} and climbed {0.24 mg/L = fall(mat.DO, 22:00..22:30)}.',
  ];
  for (const prose of turned) test(prose, () => assert.deepEqual(codes(prose), ['direction-differs']));

  const agreeing: readonly string[] = [
    'It fell by {0.24 mg/L = fall(mat.DO, 22:00..22:30)}.',
    'It changed by {−0.24 mg/L = change(mat.DO, 22:00..22:30)}.',
    'It never rose, and lost {2.9 % = first-loss}.',
    'Nothing rose; {0.24 mg/L = fall(mat.DO, 22:00..22:30)} were lost.',
    'It fell to {7.31 mg/L = last(mat.DO)}.',
    'In the floating-mat tank it was {7.31 mg/L = min(mat.DO)}, in the open-surface tank {8.22 mg/L = min(open.DO)}.',
    'Unlike the open-surface tank it went down to {7.31 mg/L = min(mat.DO)}.',
    'The open-surface tank stood {0.91 mg/L = last(open.DO) - last(mat.DO)} higher.',
  ];
  for (const prose of agreeing) test(prose, () => assert.deepEqual(codes(prose), []));

  test('the name of one tank beside the reading of another', () => {
    assert.deepEqual(codes('The lowest in the open-surface tank was {7.31 mg/L = min(mat.DO)}.'), ['other-tank-named']);
    assert.deepEqual(codes('{the open-surface tank ended at 7.31 mg/L = last(mat.DO)}'), ['other-tank-named']);
    assert.deepEqual(codes('The floating-mat tank {stayed above 8 mg/L if min(open.DO) > 8 mg/L}.'), ['other-tank-named']);
    assert.deepEqual(codes('{The floating-mat tank ended lower than the open-surface tank if last(mat.DO) < last(open.DO)}.'), []);
  });

  test('in German, with the forms that a sentence gives a name', () => {
    const german = baseProtocol.replace('tanks:', 'language: de\ntanks:').replace('open-surface tank', 'offenes Becken').replace('floating-mat tank', 'bedecktes Becken');
    assert.deepEqual(codes('Im offenen Becken stand er bei {7,31 mg/L = min(mat.DO)}.', german), ['other-tank-named']);
    assert.deepEqual(codes('Im bedeckten Becken stand er bei {7,31 mg/L = min(mat.DO)}.', german), []);
    assert.deepEqual(codes('Der Sauerstoff stieg um {0,24 mg/L = fall(mat.DO, 22:00..22:30)}.', german), ['direction-differs']);
    assert.deepEqual(codes('Der Sauerstoff sank um {0,24 mg/L = fall(mat.DO, 22:00..22:30)}.', german), []);
  });

  test('a formula over typed numbers checks nothing, and bears no green mark', () => {
    for (const prose of ['{7.31 mg/L = 7.31 mg/L}', '{7.31 mg/L = 7 mg/L + 0.31 mg/L}', '{It hardly changed if 1 mg/L < 2 mg/L}']) {
      assert.deepEqual(codes(prose), ['formula-of-numbers'], prose);
      assert.equal(readNote(exampleNote({ prose }).text).claims[0]!.mark, 'unchecked');
    }
    const values = 'safe = 6 mg/L\nlow = min(mat.DO)\n';
    const note = readNote(exampleNote({ values, prose: '{6 mg/L = safe}, {1.31 mg/L = low - safe}, {it was fine if safe > 5 mg/L}, {4 h 30 min = duration(20:00..00:30)}, {42 litres = volume(mat)}' }).text);
    assert.deepEqual(note.claims.map((each) => each.mark), ['computed', 'computed', 'unchecked', 'computed', 'computed']);
  });

  test('a condition of the plan that no reading can change', () => {
    assert.deepEqual(codes('', baseProtocol.replace('abs(mat.T - open.T) <= 0.5 degC', '1 degC < 2 degC')), ['formula-of-numbers']);
    assert.deepEqual(codes('', baseProtocol.replace('when: mat.DO < 3 mg/L', 'when: 3 mg/L < 2 mg/L')), ['formula-of-numbers']);
  });

  test('a number rounded until it says something else', () => {
    assert.deepEqual(codes('lost {0 mg/L = fall(mat.DO, 22:00..00:30)}'), [], 'an error, since 0.95 rounds to 1');
    assert.deepEqual(codes('lost {0 mg/L = fall(mat.DO, 22:00..22:30)}, then stood at {1×10^1 mg/L = last(mat.DO)}'), ['rounded-coarsely', 'rounded-coarsely']);
    assert.deepEqual(codes('stood at {7 mg/L = last(mat.DO)}, lost {1 mg/L = fall(mat.DO, 22:00..00:30)} and {3 % = first-loss}, cooled {0 °C = fall(mat.T, 22:00..22:30)}'), []);
  });

  test('a ratio in words is loose unless the formula holds one', () => {
    const loose = (prose: string): string[] => readNote(exampleNote({ prose }).text).problems.filter((each) => each.code === 'loose-number').map((each) => String(each.args['text']));
    assert.deepEqual(loose('{It was halved if last(mat.DO) < first(mat.DO)}; {it fell twice as fast if rate(mat.DO) < rate(open.DO)}'), ['halved', 'twice as fast']);
    assert.deepEqual(loose('{It fell twice as fast if fall(mat.DO) > 2 * fall(open.DO)}'), []);
    assert.deepEqual(loose('{It fell more than twice as fast if fall(mat.DO) / fall(open.DO) > 2}'), []);
  });

  test('a time in the words of another value is loose unless the formula names it', () => {
    const loose = (prose: string): string[] => readNote(exampleNote({ prose }).text).problems.filter((each) => each.code === 'loose-number').map((each) => String(each.args['text']));
    assert.deepEqual(loose('{at 23:00 it stood at 7.31 mg/L = min(mat.DO)}'), ['23:00']);
    assert.deepEqual(loose('{within 2 h it fell 0.24 mg/L = fall(mat.DO, 22:00..22:30)}'), ['2 h']);
    assert.deepEqual(loose('{At 23:00 the mat tank was lower if last(mat.DO) < last(open.DO)}'), ['23:00']);
    assert.deepEqual(loose('{at 22:00 it stood at 8.26 mg/L = at(mat.DO, light-off)}, {from 22:00 to 22:30, in 30 min, it lost 2.9 % = first-loss}'), []);
    assert.deepEqual(loose('{At 00:30 it was lower if at(mat.DO, 00:30) < at(open.DO, 00:30)}; {00:30, so 2 h 30 min later = time-of-min(mat.DO)}'), []);
  });
});
