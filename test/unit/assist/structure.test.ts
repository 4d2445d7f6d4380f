// Folding, growing selections, links to data files, colours by meaning, titles.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { matchesQuery, noteTitle } from '../../../src/assist/noteTitle.ts';
import { fileLinks, folds, stretchesAt } from '../../../src/assist/structure.ts';
import { tokenModifiers, tokens, tokenTypes } from '../../../src/assist/tokens.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { noteText, plan } from './support.ts';

const prose = 'It lost {2.9 % = first-loss} of its oxygen; the plan {was kept = stated "the log"}.\n';
const note = readNote(noteText({ prose }));
const { text } = note;

suite('assist: structure', () => {
  test('blocks, keys of the plan and days of a long table fold', () => {
    const long = readNote(noteText({ plan: plan.replace('end: 2026-03-15 10:00', 'end: 2026-03-17 10:00'), readings: 'time  mat.DO\n# 2026-03-14\n20:00  8.2\n21:00  8.1\n# 2026-03-15\n20:00  8.3\n21:00  8.2\n' }));
    const found = folds(long).map((each) => long.text.slice(each.start, each.end));
    ok(found.some((each) => each.startsWith('```readings') && each.endsWith('```')));
    ok(found.includes('# 2026-03-14\n20:00  8.2\n21:00  8.1'));
    ok(found.includes('# 2026-03-15\n20:00  8.3\n21:00  8.2'));
    ok(found.some((each) => each.startsWith('tanks:\n') && each.endsWith('plants: none')));
    ok(found.some((each) => each.startsWith('open:\n') && each.endsWith('plants: none')));
    ok(found.every((each) => each.includes('\n')));
  });

  test('a selection grows from cell to row, table and block', () => {
    const grown = stretchesAt(note, text.indexOf('8.02') + 1).map((each) => text.slice(each.start, each.end));
    equal(grown[0], '8.02');
    equal(grown[1], '22:30    8.02   24.8     8.26    24.6  1008.8   restless');
    ok(grown[2]!.startsWith('20:00') && grown[2]!.endsWith('one word missed'));
    ok(grown[3]!.startsWith('time'));
    ok(grown.at(-1)!.startsWith('```readings') && grown.at(-1)!.endsWith('```'));
  });

  test('a selection grows from a claim\'s words or formula to the claim', () => {
    deepEqual(stretchesAt(note, text.indexOf('2.9 %') + 1).map((each) => text.slice(each.start, each.end)), ['2.9 %', '{2.9 % = first-loss}']);
    deepEqual(stretchesAt(note, text.indexOf('= first-loss}') + 4).map((each) => text.slice(each.start, each.end)), ['first-loss', '{2.9 % = first-loss}']);
  });

  test('a selection grows in the plan', () => {
    const grown = stretchesAt(note, text.indexOf('floating-mat') + 1).map((each) => text.slice(each.start, each.end));
    deepEqual(grown.slice(0, 2), ['floating-mat tank', 'label: floating-mat tank']);
    ok(grown.some((each) => each.startsWith('mat:\n')) && grown.some((each) => each.startsWith('tanks:\n')));
  });

  test('the path of a data file is a link', () => {
    const linked = readNote(noteText({ readings: 'from: data/probe.csv\ncolumns:\n  A: time\n  B: mat.DO\n' }));
    deepEqual(fileLinks(linked).map((link) => [linked.text.slice(link.range.start, link.range.end), link.path]), [['data/probe.csv', 'data/probe.csv']]);
    deepEqual(fileLinks(readNote(noteText({ readings: 'from: ../probe.csv\ncolumns:\n  A: time\n' }))), []);
  });

  test('the note that a plan repeats is a link', () => {
    for (const written of ['first.tank.md', '"first.tank.md"', `first.tank.md sha256:${'a'.repeat(64)}`]) {
      const repeat = readNote(noteText({ plan: `${plan}repeats: ${written}\n`, prose }));
      deepEqual(fileLinks(repeat).map(({ range, path }) => [repeat.text.slice(range.start, range.end), path]), [['first.tank.md', 'first.tank.md']], written);
    }
  });

  test('colours: exact, apart, and of the declared kinds', () => {
    const found = tokens(note);
    const shown = found.map((token) => [text.slice(token.range.start, token.range.end), token.type, ...token.modifiers].join(' '));
    for (const wanted of ['mat tank declaration', 'DO quantity declaration', 'first-loss result declaration', 'first-loss result', 'percent-fall function', 'light-off moment', '22:30 moment',
      'degC unit', 'mg/L unit', 'late phase declaration', '8.25? reading doubtful', '(1008.7) reading leftOut', 'feeding moment declaration']) ok(shown.includes(wanted), `${wanted} not among ${shown.join(', ')}`);
    found.forEach((token, index) => ok(index === 0 || token.range.start >= found[index - 1]!.range.end));
    deepEqual(tokens(readNote('# Plain\n\n{2 = 3}\n')), []);
  });

  test('the legend is declared in the manifest', () => {
    const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as { contributes: { semanticTokenTypes: { id: string }[]; semanticTokenModifiers: { id: string }[]; semanticTokenScopes: { scopes: Record<string, string[]> }[] } };
    const standard = ['function', 'declaration'];
    deepEqual(manifest.contributes.semanticTokenTypes.map(({ id }) => id), tokenTypes.filter((each) => !standard.includes(each)));
    deepEqual(manifest.contributes.semanticTokenModifiers.map(({ id }) => id), tokenModifiers.filter((each) => !standard.includes(each)));
    for (const type of tokenTypes) ok(type in manifest.contributes.semanticTokenScopes[0]!.scopes, type);
  });

  test('titles of notes, and how they are searched', () => {
    deepEqual(noteTitle(text)!.title, 'A night');
    equal(noteTitle(text)!.question, 'Does a floating mat lower the overnight oxygen minimum?');
    equal(noteTitle('# Plain\n'), null);
    ok(matchesQuery('Does a floating mat lower it?', 'float low') && !matchesQuery('A night', 'xyz'));
  });
});
