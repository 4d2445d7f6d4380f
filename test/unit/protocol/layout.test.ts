// Ways of laying out one plan that all mean the same, and none of them a problem.
import assert from 'node:assert/strict';
import { baseProtocol } from '../../../src/problems/examples.ts';
import { protocolDigest } from '../../../src/protocol/digest.ts';
import { local, plan, read } from './support.ts';

suite('protocol: layout', () => {
  const base = read(baseProtocol);

  const layouts: readonly [string, string][] = [
    ['Windows line ends', baseProtocol.replace(/\n/g, '\r\n')],
    ['no line end at the end', baseProtocol.trimEnd()],
    ['blank lines and comments on lines of their own', baseProtocol.replace(/\n(?=\w)/g, '\n\n# a comment: with a colon\n   # and one in another column\n')],
    ['four spaces', baseProtocol.replace(/^( +)/gm, '$1$1').replace(/- (?=step|when)/g, '-   ')],
    ['dashes in the column of the key', baseProtocol.replace('  - step', '- step').replace('    accept', '  accept').replace('  - when', '- when').replace('    do:', '  do:')],
    ['a leading document marker', `---\n${baseProtocol}`],
    ['quoted keys and values', baseProtocol.replace('role: treatment', '"role": "treatment"').replace("light off: 22:00", "'light off': '22:00'")],
    ['trailing spaces', baseProtocol.replace(/\n/g, '  \n')],
    ['comments behind keys that hold more', baseProtocol.replace('tanks:', 'tanks: # two of them').replace('schedule:', 'schedule:   # one night')],
  ];
  for (const [name, text] of layouts) {
    test(name, () => {
      const { plan: same, problems } = read(text);
      assert.deepEqual(problems, []);
      assert.equal(protocolDigest(same), protocolDigest(base.plan));
      for (const tank of same.tanks) assert.equal(text.slice(tank.idRange.start, tank.idRange.end), tank.id);
    });
  }

  test('tabs all through are read like spaces and said once', () => {
    const { plan: same, codes } = read(baseProtocol.replace(/^( {2})+/gm, (spaces) => '\t'.repeat(spaces.length / 2)));
    assert.deepEqual(codes, ['tab-indent']);
    assert.equal(protocolDigest(same), protocolDigest(base.plan));
  });

  test('lights as a list of dates', () => {
    const { plan: listed, problems } = read(plan({ place: 'place: {time zone: Europe/Amsterdam}', schedule: 'schedule:\n  start: 2026-03-14 20:00\n  end: 2026-03-17 10:00\n  light off: [2026-03-14 22:00, 2026-03-15 23:00]\n  light on:\n    - 2026-03-15 09:30\n    - 2026-03-16 10:00\n  every:\n    - 1 h\n    - 10 min from light-off-2 to light-off-2 + 20 min' }));
    assert.deepEqual(problems, []);
    assert.deepEqual(listed.phases.map((phase) => [phase.id, local(listed, phase.window.from)]), [
      ['baseline', '2026-03-14T20:00+01:00'], ['dark-1', '2026-03-14T22:00+01:00'], ['recovery-1', '2026-03-15T09:30+01:00'], ['dark-2', '2026-03-15T23:00+01:00'], ['recovery-2', '2026-03-16T10:00+01:00'],
    ]);
  });

  test('one rule without its dash is one rule', () => {
    const { plan: one, problems } = read(plan({ more: 'stop if:\n  when: mat.DO < 3 mg/L\n  do: stop' }));
    assert.deepEqual(problems, []);
    assert.equal(one.stopRules.length, 1);
  });
});
