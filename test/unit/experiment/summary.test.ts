// Summary tables: rows and columns, the formula behind each cell, what is missing and why, and what stays from one reading to the next.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { SummaryRow, SummaryTable } from '../../../src/experiment/summaryTable.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { nightNote, nightProtocol, nightReadings } from '../charts/handmade.ts';

const noteOf = (yaml: string, readings = nightReadings, protocol = nightProtocol): Note => nightNote(`\`\`\`summary\n${yaml}\n\`\`\`\n`, readings, protocol);
function tableOf(note: Note): SummaryTable {
  const table = [...note.drawn.values()].find((each) => each.summary)?.summary;
  assert.ok(table, note.problems.map((each) => each.code).join());
  return table;
}
const formulas = (row: SummaryRow): string[] => row.cells.map((cell) => cell.formula);
const numbers = (row: SummaryRow): (number | null)[] => row.cells.map(({ value }) => (value?.type === 'number' ? Number(value.value.toFixed(4)) : null));
const own = (note: Note) => note.problems.filter((each) => each.range.start > note.text.indexOf('```summary'));

suite('summary tables', () => {
  test('by phase: each cell is a formula, and treatment minus control stands last', () => {
    const table = tableOf(noteOf('of: DO\nrows: phases\nshow: [min, mean]'));
    assert.deepEqual(table.rows.map((row) => row.name), ['baseline', 'dark', 'recovery']);
    assert.deepEqual(formulas(table.rows[1]!), ['min(mat.DO, dark)', 'mean(mat.DO, dark)', 'min(open.DO, dark)', 'mean(open.DO, dark)', 'min(mat.DO, dark) - min(open.DO, dark)', 'mean(mat.DO, dark) - mean(open.DO, dark)']);
    // Worked by hand from the invented readings: mat 7.82 7.31 6.90 6.41 6.02 5.61 5.02, open 8.26 8.20 8.15 8.11 8.07 8.03 7.99.
    assert.deepEqual(numbers(table.rows[1]!), [5.02, 6.4414, 7.99, 8.1157, -2.97, -1.6743]);
    assert.deepEqual(table.rows[1]!.readings, { least: 7, most: 7 });
  });

  test('without rows it goes by phase, without of it takes every column', () => {
    const table = tableOf(noteOf('show: [max]'));
    assert.equal(table.kind, 'phases');
    assert.deepEqual([...new Set(table.columns.filter((column) => column.subject.kind === 'series').map((column) => column.subject.formula))], ['mat.DO', 'mat.T', 'open.DO', 'open.T']);
  });

  test('by tank: columns are quantities, the last row is the difference', () => {
    const table = tableOf(noteOf('of: [DO, T]\nrows: tanks\nshow: [min, time-of-min, count]\nfrom: light-off\nto: 06:00'));
    assert.deepEqual(table.rows.map((row) => `${row.kind} ${row.name}`), ['tank mat', 'tank open', 'gap ']);
    assert.equal(formulas(table.rows[0]!)[0], 'min(mat.DO, light-off..06:00)');
    assert.deepEqual(numbers(table.rows[2]!), [-2.97, null, null, 0.1, null, null]);
    assert.equal(table.rows[2]!.cells[2]!.formula, '', 'a difference of counts means nothing');
  });

  test('at chosen times: a missing reading is a dash with its reason, a warning at the time, and a fix that moves it', () => {
    const note = noteOf('of: DO\nrows: [22:00, 06:10]');
    const table = tableOf(note);
    assert.deepEqual(formulas(table.rows[0]!), ['at(mat.DO, 22:00)', 'at(open.DO, 22:00)', 'at(mat.DO, 22:00) - at(open.DO, 22:00)']);
    assert.deepEqual(table.rows[1]!.cells.map((cell) => [cell.value, cell.reason?.code]), [[null, 'no-reading-at-time'], [null, 'no-reading-at-time'], [null, 'no-reading-at-time']]);
    const [found, ...more] = own(note);
    assert.deepEqual([found?.code, found?.severity, more.length], ['summary-cell-empty', 'warning', 0]);
    assert.equal(note.text.slice(found!.range.start, found!.range.end), '06:10');
    const edit = found!.fixes[0]!.edits[0]!;
    const mended = readNote(note.text.slice(0, edit.range.start) + edit.newText + note.text.slice(edit.range.end));
    assert.deepEqual(own(mended), []);
    assert.equal(tableOf(mended).rows[1]!.name, '06:00');
  });

  test('before and after: the change, and the contrast with its interval where the baseline is before', () => {
    const table = tableOf(noteOf('of: DO\nrows: before-after light-off\nshow: [mean, min]'));
    assert.deepEqual(table.rows.map((row) => [row.kind, row.name]), [['before', 'baseline'], ['after', 'dark'], ['change', 'dark']]);
    const contrast = table.rows[2]!.cells[4]!;
    assert.deepEqual([contrast.formula, contrast.contrast], ['contrast(DO, dark)', true]);
    assert.equal(table.rows[2]!.cells[5]!.formula, '(min(mat.DO, dark) - min(mat.DO, baseline)) - (min(open.DO, dark) - min(open.DO, baseline))');
    assert.deepEqual(table.rows[2]!.cells.map((cell) => cell.contrast), [false, false, false, false, true, false]);
    const { value } = evaluate(mappedText('contrast(DO, dark)'), noteOf('').context);
    assert.deepEqual(contrast.value?.type === 'number' && contrast.value.value, value?.type === 'number' && value.value);
  });

  test('before and after an event, with ends of its own', () => {
    const table = tableOf(noteOf('of: mat.DO\nrows: before-after pump\nfrom: 23:00\nto: 06:00'));
    assert.deepEqual(table.rows.map((row) => formulas(row)[0]), ['mean(mat.DO, 23:00..pump)', 'mean(mat.DO, pump..06:00)', 'mean(mat.DO, pump..06:00) - mean(mat.DO, 23:00..pump)']);
  });

  test('several tanks a side: the difference is that of the means over the tanks', () => {
    const four = nightProtocol.replace('differs: [plants]', '  mat2:\n    role: treatment\n    like: mat\n  open2:\n    role: control\n    like: open\ndiffers: [plants]').replace(/equalise:[\s\S]*$/, '');
    const readings = 'time mat.DO open.DO mat2.DO open2.DO\n20:00 8.2 8.3 8.0 8.1\n21:00 8.2 8.3 8.0 8.1\n22:00 8.1 8.3 7.9 8.1\n23:00 7.0 8.2 6.8 8.0\n00:00 6.0 8.2 5.8 8.0\n';
    const table = tableOf(noteOf('of: DO\nrows: before-after light-off', readings, four));
    const gaps = table.rows.map((row) => row.cells.at(-1)!);
    assert.deepEqual(gaps.map((cell) => cell.formula), ['mean(treatment.DO, baseline) - mean(control.DO, baseline)', 'mean(treatment.DO, dark) - mean(control.DO, dark)', 'contrast(DO, dark)']);
    assert.deepEqual(gaps.slice(0, 2).map(({ value }) => value?.type === 'number' && Number(value.value.toFixed(4))), [-0.1333, -1.7]);
  });

  test('computed series: a saturation of each tank, a difference of two without one more difference', () => {
    const table = tableOf(noteOf('of: [saturation(mat.DO, standard-pressure), mat.DO - open.DO]\nrows: phases\nshow: [mean]'.replace('saturation(mat.DO, standard-pressure)', '"saturation(mat.DO, standard-pressure)"')));
    assert.deepEqual(formulas(table.rows[1]!), ['mean(saturation(mat.DO, standard-pressure), dark)', 'mean(mat.DO - open.DO, dark)']);
  });

  test('values outside the instrument\'s range: no number, a warning at the series, a fix that leaves it out', () => {
    const readings = 'time mat.DO open.DO\n20:00 8.2 8.3\n22:00 8.1 <0.5\n23:00 7.0 8.2\n00:00 6.5 8.1\n';
    const note = noteOf('of: [mat.DO, open.DO]\nrows: tanks\nshow: [min]', readings);
    const found = own(note).find((each) => each.code === 'summary-cell-empty')!;
    assert.equal(found.args['reason'], 'censored-value');
    assert.equal(note.text.slice(found.range.start, found.range.end), 'open.DO');
    assert.equal(found.fixes[0]!.edits[0]!.newText, '[mat.DO]');
  });

  test('a phase without readings is named at `phases`, with the phases that have some as the fix', () => {
    const note = noteOf('of: mat.DO\nrows: phases', 'time mat.DO\n20:00 8.2\n21:00 8.2\n22:00 8.1\n23:00 7.0\n00:00 6.5\n');
    const [found] = own(note);
    assert.deepEqual([found?.code, found?.args['row'], found?.args['reason']], ['summary-cell-empty', 'recovery', 'empty-window']);
    assert.equal(note.text.slice(found!.range.start, found!.range.end), 'phases');
    assert.equal(found!.fixes[0]!.edits[0]!.newText, '[baseline, dark]');
  });

  test('before the first reading nothing is wrong yet', () => {
    const note = noteOf('of: DO\nrows: phases', 'time mat.DO open.DO\n');
    assert.deepEqual(own(note).map((each) => each.code), []);
  });

  const raises = (yaml: string, code: string, place: string, fix: string | null = null): void => {
    test(`${code}: ${yaml.replace(/\n/g, ' / ')}`, () => {
      const note = noteOf(yaml);
      const found = own(note).find((each) => each.code === code);
      assert.ok(found, own(note).map((each) => each.code).join());
      assert.equal(note.text.slice(found.range.start, found.range.end), place);
      if (fix !== null) assert.equal(found.fixes[0]?.edits[0]?.newText, fix);
    });
  };
  raises('row: phases', 'option-unknown', 'row', 'rows');
  raises('rows: phase', 'option-value', 'phase', 'phases');
  raises('of: DOO', 'series-unknown', 'DOO');
  raises('of: "max(mat.DO)"', 'series-needed', '"max(mat.DO)"', 'mat.DO');
  raises('of: DO\nrows: tanks\nshow: [minn]', 'summary-function', 'minn', 'min');
  raises('of: DO\nrows: [22:00]\nshow: [mean]', 'summary-function', 'mean');
  raises('of: DO\nrows: [22:00, dark]', 'summary-rows-mixed', '[22:00, dark]', '[22:00]');
  raises('of: DO\nrows: [8 mg/L]', 'summary-row', '8 mg/L');
  raises('of: DO\nrows: before-after', 'summary-moment', 'before-after', 'before-after light-off');
  raises('of: DO\nrows: phases\nto: 23:00', 'option-not-here', 'to');
  raises('of: [steps(mat.DO, every 1 h)]\nrows: tanks', 'formula-needs-quotes', 'steps(mat.DO, every 1 h)', '"steps(mat.DO, every 1 h)"');
  raises('of: mat.T\nshow: [percent-change]', 'no-true-zero', 'mat.T');

  test('a key typed in prose takes the table over; one typed in the block makes it anew', () => {
    const note = nightNote('Some words.\n\n```summary\nof: DO\nrows: [22:00, 06:10]\n```\n');
    const longer = readNote(note.text.replace('Some words', 'Some more words'), new Map(), note);
    assert.equal(tableOf(longer), tableOf(note), 'the same table');
    const moved = own(longer)[0]!;
    assert.equal(longer.text.slice(moved.range.start, moved.range.end), '06:10');
    assert.deepEqual(own(longer), own(readNote(longer.text)), 'as read afresh');
    assert.notEqual(tableOf(readNote(note.text.replace('06:10', '06:00'), new Map(), note)), tableOf(note));
    assert.notEqual(tableOf(readNote(note.text.replace('8.21', '8.11'), new Map(), note)), tableOf(note), 'other readings');
  });
});
