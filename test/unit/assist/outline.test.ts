// The outline: experiment, day, block, reading; every entry inside the one that holds it.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { outlineOf, type OutlineEntry } from '../../../src/assist/outline.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { noteText, plan, readings } from './support.ts';

const words = { rows: (count: number) => `${count} rows` };
const outline = (text: string): OutlineEntry[] => outlineOf(readNote(text), words);
const drawn = (entries: readonly OutlineEntry[], depth = 0): string[] => entries.flatMap((each) => [`${' '.repeat(depth)}${each.kind} ${each.name}`, ...drawn(each.inside, depth + 1)]);

function checkRanges(text: string): void {
  const visit = (entry: OutlineEntry, outer: { start: number; end: number }): void => {
    ok(entry.range.start >= outer.start && entry.range.end <= outer.end, `${entry.name} leaves what holds it`);
    ok(entry.selection.start >= entry.range.start && entry.selection.end <= entry.range.end, `the place of ${entry.name} is outside it`);
    entry.inside.forEach((each, index) => {
      visit(each, entry.range);
      if (index > 0) ok(entry.inside[index - 1]!.range.end <= each.range.start, `${entry.inside[index - 1]!.name} and ${each.name} overlap`);
    });
  };
  for (const entry of outline(text)) visit(entry, { start: 0, end: text.length });
}

const overMidnight = readings.replace('23:00 ', '01:00 ');
const twoTables = (first: string, second: string): string => noteText({ readings: 'time  mat.DO\n' + first, prose: `\`\`\`readings pH\ntime  open.DO\n${second}\`\`\`\n` });

suite('assist: outline', () => {
  test('one night over midnight: experiment, days, block, readings', () => {
    const lines = drawn(outline(noteText({ readings: overMidnight, prose: '' })));
    equal(lines[0]!.startsWith('experiment '), true);
    const start = lines.indexOf(' day 2026-03-14');
    deepEqual(lines.slice(start), [
      ' day 2026-03-14', '  readings readings', '   reading 20:00', '   reading 21:00', '   reading 22:00', '   reading 22:30',
      ' day 2026-03-15', '  readings readings', '   reading 01:00', ' values values', '  result first-loss',
    ]);
    for (const wanted of ['  tank mat', '  quantity DO', '  event feeding']) ok(lines.includes(wanted), wanted);
  });

  test('tables that run side by side over the same days hold the days themselves', () => {
    const rows = '20:00  8.2\n01:00  8.1\n';
    const lines = drawn(outline(twoTables(rows, rows)));
    deepEqual(lines.slice(lines.indexOf(' readings readings'), lines.indexOf(' readings readings') + 5), [' readings readings', '  day 2026-03-14', '   reading 20:00', '  day 2026-03-15', '   reading 01:00']);
    ok(lines.includes(' readings readings pH'));
  });

  test('tables one after the other stay under their days', () => {
    const lines = drawn(outline(twoTables('20:00  8.2\n', '# 2026-03-15\n08:00  8.1\n')));
    deepEqual(lines.filter((line) => line.startsWith(' day')), [' day 2026-03-14', ' day 2026-03-15']);
  });

  test('an entry lies inside the one that holds it, and none over its neighbour', () => {
    for (const text of [
      noteText({ prose: '' }), noteText({ readings: overMidnight, prose: '' }), twoTables('20:00  8.2\n01:00  8.1\n', '20:00  8.2\n'), twoTables('20:00  8.2\n', '# 2026-03-15\n08:00  8.1\n'),
      noteText({ plan: plan.replace('tanks:', 'tanks'), prose: '' }), noteText({ readings: 'time  mat.DO\nnever  8.2\n20:00  8.1\n', prose: '' }), noteText({ readings: '', prose: '' }), '```protocol\n```\n', '> ```protocol\n> question: x\n',
    ]) checkRanges(text);
  });

  test('the experiment goes by its title, else its heading, else its question', () => {
    equal(outline(noteText({ plan: `title: A title\n${plan}`, prose: '' }))[0]!.name, 'A title');
    equal(outline('# A heading\n\n```protocol\nquestion: Why?\n```\n')[0]!.name, 'A heading');
    equal(outline('```protocol\nquestion: Why?\n```\n')[0]!.name, 'Why?');
    deepEqual(outline('# Plain\n'), []);
  });
});
