import assert from 'node:assert/strict';
import fc from 'fast-check';
import { sealText, verifySeal } from '../../../src/readings/seal.ts';
import { plan, read, start } from './support.ts';

const rows = ['20:00  8.21  24.9', '20:30  8.24  24.9', '21:00  8.25  24.8', '21:30  -  24.8'];
const table = (lines: readonly string[], seal = '', heads = 'time mat.DO mat.T'): string => [heads, ...(seal ? [seal] : []), ...lines].join('\n') + '\n';
const seal = sealText(read(table(rows)).table, start, plan().zone);

/** What the seal says of a table: `valid`, or each change as `kind text`. */
function changes(lines: readonly string[], heads?: string): string[] {
  const text = table(lines, seal, heads);
  const result = read(text);
  const state = verifySeal(result.table);
  const raised = result.problems.filter((each) => each.code === 'seal-broken').length;
  if (state.state !== 'broken') { assert.equal(raised, 0); return [state.state]; }
  assert.equal(raised, state.changes.length);
  return state.changes.map((change) => `${change.kind} ${result.shown(change.range).slice(0, 12)}`);
}
const changed = (index: number, line: string): string[] => rows.map((row, at) => (at === index ? line : row));

suite('readings: seals', () => {
  test('the line says when, and the hash', () => {
    assert.match(seal, /^# sealed 2026-03-14T20:00\+01:00 sha256:[0-9a-f]{64} cells:[\w.-]+$/u);
    assert.deepEqual(changes(rows), ['valid']);
  });
  test('alignment, marks, remarks, comments, corrections, a decimal comma and a full date leave it valid', () => {
    assert.deepEqual(changes(changed(0, '20:00     8.21\t24.9   ; all well')), ['valid']);
    assert.deepEqual(changes(changed(1, '20:30  8.24->8.26  24.9 ; misread')), ['valid']);
    assert.deepEqual(changes(changed(1, '20:30->20:35  (8.24?)  24.9? ; late')), ['valid']);
    assert.deepEqual(changes(changed(3, '21:30  -->8.2  24.8 ; found late')), ['valid']);
    assert.deepEqual(changes(changed(0, '2026-03-14T20:00  8,21  24.9')), ['valid']);
    assert.deepEqual(changes(['# a comment', '', ...rows]), ['valid']);
  });
  test('any other change is named at its cell', () => {
    assert.deepEqual(changes(changed(1, '20:30  8.26  24.9')), ['value 8.26']);
    assert.deepEqual(changes(changed(1, '20:30  8.26->8.24  24.9 ; no')), ['value 8.26->8.24']);
    assert.deepEqual(changes(changed(1, '20:35  8.24  24.9')), ['time 20:35']);
    assert.deepEqual(changes(changed(0, '20:00  8.2  24.8')), ['value 8.2', 'value 24.8']);
    assert.deepEqual(changes(changed(2, '21:00  8.250  24.8')), ['value 8.250']);
    assert.deepEqual(changes(changed(3, '21:30  8.2  24.8')), ['value 8.2']);
  });
  test('rows added and taken out, heads changed', () => {
    assert.deepEqual(changes([...rows, '22:00  8.2  24.8']), ['row-added 22:00  8.2  ']);
    assert.deepEqual(changes([...rows.slice(0, 1), '20:15  8.2  24.8', ...rows.slice(1)]), ['row-added 20:15  8.2  ']);
    assert.deepEqual(changes(rows.slice(0, 3)), [`row-removed ${seal.slice(0, 12)}`]);
    assert.deepEqual(changes([rows[0]!, rows[2]!, rows[3]!]), [`row-removed ${seal.slice(0, 12)}`]);
    assert.deepEqual(changes(rows, 'time open.DO mat.T'), ['head open.DO']);
    assert.deepEqual(changes(rows, 'time mat.DO mat.T[degF]'), ['head mat.T[degF]']);
  });
  test('a seal that cannot be read, and a seal without checks', () => {
    assert.deepEqual(read(table(rows, '# sealed by me')).codes, ['seal-unreadable']);
    const bare = seal.replace(/ cells:.*$/u, '');
    assert.deepEqual(read(table(rows, bare)).codes, []);
    assert.deepEqual(read(table(changed(1, '20:30  8.26  24.9'), bare)).codes, ['seal-broken']);
  });
  test('no changed value goes unseen', () => {
    const value = fc.integer({ min: 100, max: 999 }).map((digits) => (digits / 100).toFixed(2));
    fc.assert(fc.property(fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 20 }), fc.nat(), fc.boolean(), value, (values, where, second, other) => {
      const lines = values.map(([a, b], index) => `+${index * 30} ${a} ${b}`);
      const sealed = sealText(read(table(lines)).table, start, plan().zone);
      const at = where % values.length;
      const pair = [...values[at]!];
      if (pair[second ? 1 : 0] === other) return;
      pair[second ? 1 : 0] = other;
      const text = table(lines.map((line, index) => (index === at ? `+${index * 30} ${pair.join(' ')}` : line)), sealed);
      const state = verifySeal(read(text).table);
      assert.equal(state.state, 'broken');
    }));
  });
});
