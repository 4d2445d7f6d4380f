// Words that say something else than the formula beside them: another direction, another tank. Over the base note of the examples; invented data.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import { baseProtocol, exampleNote } from '../../../src/problems/examples.ts';

const asked = ['direction-differs', 'other-tank-named'];
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
  });

  test('in German, with the forms that a sentence gives a name', () => {
    const german = baseProtocol.replace('tanks:', 'language: de\ntanks:').replace('open-surface tank', 'offenes Becken').replace('floating-mat tank', 'bedecktes Becken');
    assert.deepEqual(codes('Im offenen Becken stand er bei {7,31 mg/L = min(mat.DO)}.', german), ['other-tank-named']);
    assert.deepEqual(codes('Im bedeckten Becken stand er bei {7,31 mg/L = min(mat.DO)}.', german), []);
    assert.deepEqual(codes('Der Sauerstoff stieg um {0,24 mg/L = fall(mat.DO, 22:00..22:30)}.', german), ['direction-differs']);
    assert.deepEqual(codes('Der Sauerstoff sank um {0,24 mg/L = fall(mat.DO, 22:00..22:30)}.', german), []);
  });
});
