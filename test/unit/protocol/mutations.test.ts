// Whatever is typed into a plan: nothing throws, every place lies inside the block, and one slip loses nothing else.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { baseProtocol } from '../../../src/problems/examples.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { protocolDigest } from '../../../src/protocol/digest.ts';
import { allDifferences, namedInstants, undeclaredDifferences, waterVolume } from '../../../src/protocol/derived.ts';
import { readProtocol } from '../../../src/protocol/readProtocol.ts';
import type { Protocol } from '../../../src/protocol/types.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';
import { blockOf, quotedBlock } from './support.ts';

function checkProblems(problems: readonly Problem[], from: number, to: number): void {
  for (const each of problems) {
    for (const range of [each.range, ...each.related.map((place) => place.range), ...each.fixes.flatMap((fix) => fix.edits.map((edit) => edit.range))]) {
      assert.ok(Number.isInteger(range.start) && Number.isInteger(range.end) && from <= range.start && range.start <= range.end && range.end <= to, `${each.code} ${range.start}..${range.end} is not in ${from}..${to}`);
    }
    assert.doesNotMatch(problemSentence(each), /undefined|NaN|Infinity|\[object/);
    for (const fix of each.fixes) assert.notEqual(fixTitle(fix), fix.title);
  }
}

function noStrayNumbers(value: unknown, path: string): void {
  if (typeof value === 'number') assert.ok(Number.isFinite(value), `${path} is ${value}`);
  else if (value instanceof Map) for (const [key, each] of value) noStrayNumbers(each, `${path}.${String(key)}`);
  else if (Array.isArray(value)) value.forEach((each, index) => noStrayNumbers(each, `${path}[${index}]`));
  else if (value && typeof value === 'object') for (const [key, each] of Object.entries(value)) noStrayNumbers(each, `${path}.${key}`);
}

function checkPlan(protocol: Protocol | null): void {
  if (!protocol) return;
  noStrayNumbers(protocol, 'plan');
  for (const tank of protocol.tanks) waterVolume(tank);
  for (const name of ['start', 'end', 'light-off', 'sunrise', 'x']) namedInstants(protocol, name);
  undeclaredDifferences(protocol);
  allDifferences(protocol);
  assert.match(protocolDigest(protocol), /^[0-9a-f]{64}$/);
  for (const phase of protocol.phases) assert.ok(phase.window.from <= phase.window.to, phase.id);
  const slots = protocol.schedule?.slots ?? [];
  for (let i = 1; i < slots.length; i += 1) assert.ok(slots[i - 1]! < slots[i]!);
}

function check(text: string): void {
  const { protocol, problems } = readProtocol(blockOf(text, 50));
  // A block without any key may be pointed at by its opening line, which stands before the text.
  checkProblems(problems, 50 - 9, 50 + text.length);
  checkPlan(protocol);
}

const letters = fc.constantFrom(...['"', "'", '{', '}', '[', ']', '(', ')', ':', ': ', '#', ' #', '-', '- ', '\n', '\n  ', '\t', '\r\n', '|', '>', '&a', '*a', '!t', '@', '%', '`', ',', '?', '? ', '\\', '..', '+', '<<: ', '---\n', '🐟', '\u0000', '\uFEFF', '9999999999', '0', 'é', '\u2028', '~', '=']);
const mutation = fc.oneof(
  fc.record({ kind: fc.constant('insert' as const), at: fc.nat(), text: letters }),
  fc.record({ kind: fc.constant('delete' as const), at: fc.nat(), length: fc.integer({ min: 1, max: 12 }) }),
  fc.record({ kind: fc.constant('replace' as const), at: fc.nat(), text: letters }),
  fc.record({ kind: fc.constant('swap' as const), at: fc.nat(), to: fc.nat() }),
  fc.record({ kind: fc.constant('dropLine' as const), at: fc.nat() }),
  fc.record({ kind: fc.constant('cut' as const), at: fc.nat() }),
);
type Mutation = typeof mutation extends fc.Arbitrary<infer T> ? T : never;

function mutate(text: string, change: Mutation): string {
  const at = change.at % (text.length + 1);
  const lines = text.split('\n');
  switch (change.kind) {
    case 'insert': return text.slice(0, at) + change.text + text.slice(at);
    case 'delete': return text.slice(0, at) + text.slice(at + change.length);
    case 'replace': return text.slice(0, at) + change.text + text.slice(at + 1);
    case 'swap': { const [a, b] = [change.at % lines.length, change.to % lines.length]; [lines[a], lines[b]] = [lines[b]!, lines[a]!]; return lines.join('\n'); }
    case 'dropLine': lines.splice(change.at % lines.length, 1); return lines.join('\n');
    case 'cut': return text.slice(0, at);
  }
}

const seedPlan = `${baseProtocol}events:
  - {at: 23:00, what: fed, tanks: [mat], id: feeding}
phases: {settling: 20:00..21:00, late: light-off + 3 h..end}
limits:
  - {for: Corydoras, quantity: DO, at least: 4 mg/L, source: "a book"}
order: [mat, open]
hypothesis: >
  It falls.
`;

suite('protocol: mutations', () => {
  test('a plan with a few slips never throws and keeps its places', function () {
    this.timeout(60_000);
    fc.assert(fc.property(fc.array(mutation, { minLength: 1, maxLength: 6 }), (changes) => check(changes.reduce(mutate, seedPlan))), { numRuns: 600 });
  });

  test('any text at all', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => check(text)), { numRuns: 500 });
    fc.assert(fc.property(fc.array(fc.oneof(letters, fc.constantFrom('tanks', 'mat', 'role', 'schedule', 'start', 'measure', ' ', 'x')), { maxLength: 40 }), (parts) => check(parts.join(''))), { numRuns: 400 });
  });

  test('inside a quote the places stay inside the block', () => {
    fc.assert(fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (changes) => {
      const { block, note } = quotedBlock(changes.reduce(mutate, seedPlan).replace(/\r/g, ''));
      const { protocol, problems } = readProtocol(block);
      checkProblems(problems, 2, note.length);
      checkPlan(protocol);
    }), { numRuns: 200 });
  });

  test('deep nesting and long lines end in a problem', () => {
    check('['.repeat(5000));
    check('{a: '.repeat(3000));
    check(`a:\n${Array.from({ length: 300 }, (_, i) => `${' '.repeat(i + 1)}k${i}:`).join('\n')}\n`);
    check(`question: ${'x: '.repeat(5000)}`);
    check(`tanks: {${Array.from({ length: 2000 }, (_, i) => `t${i}: {role: control, like: t${i + 1}}`).join(', ')}}`);
  });

  test('a slip in one value never loses a tank, a measure or the schedule', () => {
    const lines = seedPlan.split('\n');
    const slips: readonly ((value: string) => string)[] = [
      (value) => `${value}: more`, (value) => `@${value}`, (value) => `"${value}" x`, (value) => `*${value}`, (value) => `${value} # lost`, (value) => `!${value}`, (value) => `"${value}`, (value) => `{${value}`, (value) => `${value}]`,
    ];
    lines.forEach((line, index) => {
      const match = /^(\s*(?:- )?(label|plants|animals|question|name|step|do): )(\S.*)$/.exec(line);
      if (!match) return;
      for (const slip of slips) {
        const text = lines.with(index, match[1]! + slip(match[3]!)).join('\n');
        const { protocol } = readProtocol(blockOf(text));
        assert.deepEqual([protocol?.tanks.length, protocol?.measure.length, protocol?.schedule?.slots.length, protocol?.limits.length, protocol?.events.length, protocol?.stopRules.length], [2, 3, 29, 1, 1, 1], text.split('\n')[index]);
      }
    });
  });
});
