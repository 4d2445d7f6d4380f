// What a hover can tell beyond the text: the series under a name, uncertainty and saturation of a reading, moments, loose numbers.
import { deepEqual, equal, match, ok } from 'node:assert/strict';
import { equationsBehind, inOtherUnits, looseNumberAt, momentAt, readingFacts, seriesAt } from '../../../src/assist/explain.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { noteText } from './support.ts';

const prose = 'It lost {2.9 % = first-loss}, or {0.24 mg/L = fall(mat.DO, light-off..22:30)}, after {? = feeding} and before {? = max(saturation(mat.DO), late)}.\n\nIt fell by 0.24 mg/L.\n\n```figure\nshow: [mat.DO]\n```\n';
const note = readNote(noteText({ prose }));
const { text } = note;
const at = (words: string, part = words): number => text.indexOf(words) + words.indexOf(part) + 1;

suite('assist: explain', () => {
  test('a series is found in a formula, a head and a figure, from either half of its name', () => {
    for (const [words, part] of [['fall(mat.DO', 'mat'], ['fall(mat.DO', 'DO'], ['time   mat.DO', 'mat'], ['show: [mat.DO', 'DO']] as const) {
      const found = seriesAt(note, at(words, part));
      equal(found?.series.id, 'mat.DO', `${words} at ${part}`);
      equal(text.slice(found.range.start, found.range.end), 'mat.DO');
    }
    equal(seriesAt(note, at('  mat:\n', 'mat')), null);
    equal(seriesAt(note, at('lost')), null);
  });

  test('a reading has its uncertainty, one of oxygen its saturation', () => {
    const table = note.tables[0]!;
    const row = table.rows.find((each) => each.timeText === '22:30')!;
    const oxygen = readingFacts(note, table.columns[0]!, row);
    match(oxygen.uncertainty ?? '', /^8\.02 ± 0\.1\d mg\/L$/);
    match(oxygen.saturation ?? '', /^9\d\.\d %$/);
    deepEqual(readingFacts(note, table.columns[1]!, row).saturation, null);
    deepEqual(readingFacts(note, table.columns.find((column) => column.quantity === 'B')!, row), { uncertainty: null, saturation: null });
  });

  test('a reading stands in the other units that keepers read, with as many digits', () => {
    const table = note.tables[0]!;
    const row = table.rows.find((each) => each.timeText === '22:30')!;
    const others = (id: string): string[] => { const index = table.columns.findIndex((column) => column.id === id); return inOtherUnits(note, table.columns[index]!, row.cells[index]!); };
    // 24.8 °C × 9/5 + 32; 1008.8 hPa at 0.750062 mmHg and 0.0295300 inHg each (the definitions of the units).
    deepEqual(others('mat.T'), ['76.6 °F']);
    deepEqual(others('room.P'), ['756.7 mmHg', '29.790 inHg']);
    deepEqual(others('mat.B'), []);
  });

  test('an event, a phase and a time of the lights say when they are', () => {
    match(momentAt(note, at('? = feeding', 'feeding'))?.text ?? '', /21:00/);
    match(momentAt(note, at('mat.DO), late', 'late'))?.text ?? '', /22:30.*10:00/);
    match(momentAt(note, at('mat.DO, light-off', 'light-off'))?.text ?? '', /22:00/);
    equal(momentAt(note, at('first-loss}')), null);
  });

  test('equation and source of the functions behind a value, each once', () => {
    const claim = note.claims.find((each) => each.syntax.formula.text.includes('saturation'))!;
    const entries = equationsBehind(claim.evaluation!);
    ok(entries.some((entry) => entry.name === 'saturation' && entry.source !== null));
    equal(new Set(entries.map((entry) => entry.name)).size, entries.length);
  });

  test('a loose number has candidates, best first', () => {
    const found = looseNumberAt(note, text.lastIndexOf('0.24 mg/L') + 2);
    equal(found?.text, '0.24 mg/L');
    ok(found.candidates.length > 0 && found.candidates.length <= 4);
    ok(found.candidates[0]!.gives && found.candidates[0]!.formula.includes('fall('), found.candidates[0]!.formula);
    equal(looseNumberAt(note, at('lost')), null);
  });
});
