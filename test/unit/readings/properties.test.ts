import assert from 'node:assert/strict';
import fc from 'fast-check';
import { buildDataset } from '../../../src/dataset/buildDataset.ts';
import type { MappedText } from '../../../src/note/mappedText.ts';
import { readCell } from '../../../src/readings/cell.ts';
import { readTable } from '../../../src/readings/readTable.ts';
import { problemSentence, fixTitle } from '../../../src/words/words.ts';
import { block, plan, read } from './support.ts';

const value = fc.tuple(fc.integer({ min: -99, max: 9999 }), fc.integer({ min: 0, max: 3 })).map(([digits, decimals]) => (digits / 10 ** decimals).toFixed(decimals));
const atom = fc.oneof(
  { weight: 6, arbitrary: value }, fc.constant('-'), value.map((text) => `<${text.replace('-', '')}`), value.map((text) => `>${text.replace('-', '')}`),
  fc.array(value, { minLength: 2, maxLength: 4 }).map((parts) => parts.join('/')), value.map((text) => text.replace('.', ',')), fc.constantFrom('x', 'calm', '8..2', '1,009.4'),
);
const cell = fc.tuple(fc.array(atom, { minLength: 1, maxLength: 3 }), fc.boolean(), fc.boolean()).map(([parts, out, doubt]) => {
  const chain = parts.join('->') + (doubt ? '?' : '');
  return out ? `(${chain})` : chain;
});
const clock = fc.tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 })).map(([hours, minutes]) => `${String(hours).padStart(2, '0')}:${String(minutes).padStart(2, '0')}`);
const time = fc.oneof(clock, clock.map((text) => `2026-03-14T${text}`), fc.nat({ max: 900 }).map((minutes) => `+${minutes}`), fc.constantFrom('soon', '20.30', '2026-10-25T02:30'));
const row = fc.tuple(time, fc.array(cell, { minLength: 1, maxLength: 5 }), fc.option(fc.constantFrom('fed', 'probe out; again', '# odd'))).map(
  ([at, cells, remark]) => `${at}  ${cells.join('  ')}${remark === null ? '' : `  ; ${remark}`}`,
);
const table = fc.tuple(fc.constantFrom('\n', '\r\n'), fc.array(fc.oneof({ weight: 5, arbitrary: row }, fc.constantFrom('', '# 2026-03-15', '# a comment')), { maxLength: 12 })).map(
  ([lineBreak, rows]) => ['time mat.DO mat.T open.DO room.P', ...rows].join(lineBreak) + lineBreak,
);

/** Everything that must always be so, for any text. */
function sound(text: string, at: number): ReturnType<typeof read> {
  const result = read(text, { at });
  const { dataset, problems } = buildDataset([result.table], plan());
  for (const problem of [...result.problems, ...problems]) {
    const ranges = [problem.range, ...problem.related.map((each) => each.range), ...problem.fixes.flatMap((fix) => fix.edits.map((edit) => edit.range))];
    if (problem.code === 'times-nearly-pair') continue;
    for (const range of ranges) assert.ok(range.start >= at && range.start <= range.end && range.end <= at + text.length, `${problem.code} ${JSON.stringify(range)}`);
    assert.ok(!/undefined|NaN|\[object|Infinity/u.test(problemSentence(problem)), problemSentence(problem));
    for (const fix of problem.fixes) assert.ok(!/undefined|NaN/u.test(fixTitle(fix)));
  }
  for (const series of dataset.series.values()) {
    for (let index = 0; index < series.times.length; index += 1) {
      assert.ok(Number.isFinite(series.values[index]) && Number.isFinite(series.times[index]));
      if (index > 0) assert.ok(series.times[index]! >= series.times[index - 1]!);
    }
  }
  return result;
}

suite('readings: properties', () => {
  test('every row and every cell of any table is kept, at its place', () => {
    fc.assert(fc.property(table, fc.nat({ max: 50 }), (text, at) => {
      const result = sound(text, at);
      const lines = text.split(/\r?\n/u).filter((line) => line.trim() !== '' && !line.startsWith('#')).slice(1);
      assert.equal(result.table.rows.length, lines.length);
      result.table.rows.forEach((row, index) => {
        const words = lines[index]!.split(';')[0]!.trim().split(/\s+/u);
        assert.equal(row.timeText, words[0]);
        const kept = [...row.cells.filter((each) => each.text !== ''), ...(row.extra ?? [])];
        assert.deepEqual(kept.map((each) => each.text), words.slice(1));
        for (const each of kept) assert.equal(result.shown(each.range), each.text);
      });
    }), { numRuns: 300 });
  });
  test('no mutated text makes it throw or point outside the block', () => {
    fc.assert(fc.property(table, fc.array(fc.tuple(fc.nat(), fc.nat({ max: 6 }), fc.string({ maxLength: 4 })), { maxLength: 6 }), (text, changes) => {
      let mutated = text;
      for (const [where, length, put] of changes) {
        const from = mutated.length === 0 ? 0 : where % mutated.length;
        mutated = mutated.slice(0, from) + put + mutated.slice(from + length);
      }
      sound(mutated, 7);
    }), { numRuns: 500 });
  });
  test('any text at all', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'grapheme', maxLength: 120 }), fc.string({ unit: fc.constantFrom('t', 'i', 'm', 'e', ' ', '\n', '\r', '#', ';', '-', '>', '.', ',', '8', '(', ')', '?', '/', '[', ']', '@', 'from:', '+') })), (text) => { sound(text, 3); }), { numRuns: 500 });
  });
  test('a cell that reads as a number reads as the number that is written last', () => {
    fc.assert(fc.property(fc.array(value, { minLength: 1, maxLength: 4 }), fc.boolean(), fc.boolean(), (chain, out, doubt) => {
      const text = `${out ? '(' : ''}${chain.join('->')}${doubt ? '?' : ''}${out ? ')' : ''}`;
      const reading = readCell(text, { scale: null });
      assert.equal(reading.state.value, Number(chain.at(-1)) + 0);
      assert.equal(reading.earlier.length, chain.length - 1);
      assert.equal(reading.leftOut, out);
      assert.equal(reading.doubtful, doubt);
    }));
  });
  test('places are right inside a quote, where every line has a prefix', () => {
    const note = '> ```readings\n> time mat.DO\n> 20:00 8,21\n> ```\n';
    const first = note.indexOf('time');
    const second = note.indexOf('20:00');
    const text = 'time mat.DO\n20:00 8,21\n';
    const content = { text, pieces: [{ offset: 0, document: first, length: 12 }, { offset: 12, document: second, length: 11 }] };
    const { problems, table } = readWithContent(content);
    assert.equal(note.slice(problems[0]!.range.start, problems[0]!.range.end), '8,21');
    assert.equal(note.slice(table.rows[0]!.timeRange.start, table.rows[0]!.timeRange.end), '20:00');
  });
});

function readWithContent(content: MappedText): ReturnType<typeof readTable> {
  return readTable({ ...block(content.text), content }, 0, plan(), null, new Map());
}
