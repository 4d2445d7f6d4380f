import assert from 'node:assert/strict';
import { buildDataset } from '../../../src/dataset/buildDataset.ts';
import { readSyntax } from '../../../src/note/readSyntax.ts';
import { readingsCodes } from '../../../src/problems/codes/readings.ts';
import type { ProblemExample } from '../../../src/problems/codeEntry.ts';
import { baseProtocol, exampleNote } from '../../../src/problems/examples.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { readProtocol } from '../../../src/protocol/readProtocol.ts';
import { readTable } from '../../../src/readings/readTable.ts';
import type { FileContents, ReadingsTable } from '../../../src/readings/types.ts';
import { problemSentence, fixTitle } from '../../../src/words/words.ts';

/** Reads the readings of a note, without its formulas and claims. */
function readReadings(text: string, files: FileContents): Problem[] {
  const { blocks } = readSyntax(text);
  const { protocol } = readProtocol(blocks.find((block) => block.word === 'protocol')!);
  assert.ok(protocol);
  const problems: Problem[] = [];
  const tables: ReadingsTable[] = [];
  blocks.forEach((block, index) => {
    if (block.word !== 'readings') return;
    const read = readTable(block, index, protocol, tables.at(-1) ?? null, files);
    tables.push(read.table);
    problems.push(...read.problems);
  });
  return [...problems, ...buildDataset(tables, protocol).problems];
}

suite('readings: the example of each problem', () => {
  test('the base note has none', () => {
    const { text, files } = exampleNote({ protocol: baseProtocol });
    assert.deepEqual(readReadings(text, files).filter((each) => each.severity !== 'information'), []);
  });
  for (const [code, entry] of Object.entries(readingsCodes)) {
    test(`${code} is raised by its example, in words`, () => {
      const { text, files } = exampleNote(entry.example as ProblemExample);
      const found = readReadings(text, files).find((each) => each.code === code);
      assert.ok(found, readReadings(text, files).map((each) => each.code).join(' '));
      assert.equal(found.fixes.length > 0, entry.fixable);
      assert.deepEqual(Object.keys(found.args).sort(), [...entry.args].sort());
      const sentence = problemSentence(found);
      assert.match(sentence, /^\S.*[.?]$/u);
      assert.doesNotMatch(sentence, /undefined|NaN|\s{2}|\(\)| , |: \.$/u);
      for (const fix of found.fixes) assert.notEqual(fixTitle(fix), fix.title);
      assert.ok(found.range.start <= found.range.end && found.range.end <= text.length);
    });
  }
});
