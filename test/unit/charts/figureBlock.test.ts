// Options of figure, limits and summary blocks: what they name, and what they ask for and cannot have.
import assert from 'node:assert/strict';
import { readFigureBlock } from '../../../src/experiment/figureBlock.ts';
import { formatInstant } from '../../../src/time/text.ts';
import { nightNote, nightProtocol, nightReadings } from './handmade.ts';

function figure(yaml: string) {
  const note = nightNote(`\`\`\`figure\n${yaml}\n\`\`\`\n`);
  const block = note.syntax.blocks.find((each) => each.word === 'figure')!;
  return { note, ...readFigureBlock(block, note.context) };
}
const shown = (yaml: string): string[] => figure(yaml).options?.show.map((each) => each.value) ?? [];

suite('figure blocks', () => {
  test('show takes series, quantities, tanks and roles', () => {
    assert.deepEqual(shown('show: [mat.DO, open.DO]'), ['mat.DO', 'open.DO']);
    assert.deepEqual(shown('show: DO'), ['mat.DO', 'open.DO']);
    assert.deepEqual(shown('show: open'), ['open.DO', 'open.T']);
    assert.deepEqual(shown('show: [treatment.DO]'), ['mat.DO']);
    assert.deepEqual(shown(''), ['mat.DO', 'mat.T', 'open.DO', 'open.T']);
  });

  test('from and to take clock times, dates, names and sums', () => {
    const { options, note, problems } = figure('show: DO\nfrom: light-off + 30 min\nto: 2026-03-15 06:00');
    assert.deepEqual(problems, []);
    assert.equal(formatInstant(options!.from!, note.protocol!.zone), '2026-03-14T22:30:00+01:00');
    assert.equal(formatInstant(options!.to!, note.protocol!.zone), '2026-03-15T06:00:00+01:00');
  });

  const raises = (yaml: string, code: string, place: string, fix: string | null = null): void => {
    test(`${code}: ${yaml.replace(/\n/g, ' / ')}`, () => {
      const { note, problems } = figure(yaml);
      const found = problems.find((each) => each.code === code);
      assert.ok(found, problems.map((each) => each.code).join());
      assert.equal(note.text.slice(found.range.start, found.range.end), place);
      assert.ok(note.problems.some((each) => each.code === code), 'readNote lists it');
      if (fix !== null) assert.equal(found.fixes[0]?.edits[0]?.newText, fix);
    });
  };
  raises('shwo: [mat.DO]', 'option-unknown', 'shwo', 'show');
  raises('show: [mat.DOO]', 'series-unknown', 'mat.DOO', 'mat.DO');
  raises('show: DO\nfrom: teatime', 'figure-time-unreadable', 'teatime');
  raises('show: DO\nsecond axis: T', 'second-axis', 'second axis');
  raises('show: DO\nfrom: 2026-03-20 10:00\nto: 2026-03-20 12:00', 'figure-empty', '```figure');

  test('block-unreadable: an unbalanced bracket is named with its line', () => {
    const { problems, options } = figure('show: [mat.DO');
    assert.equal(problems[0]?.code, 'block-unreadable');
    assert.equal(options, null);
  });

  test('a limits block without limits is a warning', () => {
    const codes = (after: string, protocol = nightProtocol): string[] => nightNote(after, nightReadings, protocol).problems.map((each) => each.code);
    assert.ok(codes('```limits\n```\n', nightProtocol.replace(/limits:[\s\S]*$/, '')).includes('no-limits-stated'));
    assert.ok(!codes('```limits\n```\n').includes('no-limits-stated'));
  });

  test('words of a scale are not drawn, and it is said', () => {
    const protocol = nightProtocol.replace('equalise:', '  mood: {what: behaviour, unit: "1", scale: [calm, restless]}\nequalise:');
    const note = nightNote('```figure\nshow: [mat.DO, mat.mood]\n```\n', 'time mat.DO mat.mood\n20:00 8.2 calm\n21:00 8.1 restless\n', protocol);
    const block = note.syntax.blocks.find((each) => each.word === 'figure')!;
    const { options, problems } = readFigureBlock(block, note.context);
    assert.deepEqual(options?.show.map((each) => each.value), ['mat.DO']);
    assert.ok(problems.some((each) => each.code === 'words-not-drawn'));
  });
});
