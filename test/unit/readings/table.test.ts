import assert from 'node:assert/strict';
import { flag } from '../../../src/dataset/types.ts';
import { buildDataset } from '../../../src/dataset/buildDataset.ts';
import { readCell } from '../../../src/readings/cell.ts';
import { formatInstant } from '../../../src/time/text.ts';
import { measured, plan, read } from './support.ts';

const number = { scale: null };
const times = (result: ReturnType<typeof read>): (string | null)[] => result.table.rows.map((row) => (row.instant === null ? null : formatInstant(row.instant, plan().zone).slice(0, 16)));

suite('readings: cells', () => {
  const cases: [string, string, number | null, { decimals?: number; leftOut?: boolean; doubtful?: boolean; earlier?: (number | null)[] }][] = [
    ['7.31', 'number', 7.31, { decimals: 2 }],
    ['-', 'missing', null, {}],
    ['-0.3', 'number', -0.3, { decimals: 1 }],
    ['+2', 'number', 2, { decimals: 0 }],
    ['.5', 'number', 0.5, { decimals: 1 }],
    ['1.2e-3', 'number', 0.0012, { decimals: 4 }],
    ['8.28->8.26', 'number', 8.26, { earlier: [8.28] }],
    ['8.2->8.28->8.26', 'number', 8.26, { earlier: [8.2, 8.28] }],
    ['-->8.26', 'number', 8.26, { earlier: [null] }],
    ['8.28->-', 'missing', null, { earlier: [8.28] }],
    ['-0.3->-0.4', 'number', -0.4, { earlier: [-0.3] }],
    ['(4.90)', 'number', 4.9, { leftOut: true, decimals: 2 }],
    ['7.3?', 'number', 7.3, { doubtful: true }],
    ['(7.3?)', 'number', 7.3, { doubtful: true, leftOut: true }],
    ['(7.3)?', 'number', 7.3, { doubtful: true, leftOut: true }],
    ['6.4->6.5?', 'number', 6.5, { doubtful: true, earlier: [6.4] }],
    ['(6.4->6.5)', 'number', 6.5, { leftOut: true, earlier: [6.4] }],
    ['(6.4)->(6.5)', 'number', 6.5, { leftOut: true, earlier: [6.4] }],
    ['(6.4)->6.5', 'number', 6.5, { leftOut: false, earlier: [6.4] }],
    ['6.4?->6.5', 'number', 6.5, { doubtful: false, earlier: [6.4] }],
    ['<0.05', 'below', 0.05, { decimals: 2 }],
    ['>14', 'above', 14, { decimals: 0 }],
    ['(<0.05)', 'below', 0.05, { leftOut: true }],
    ['6.42/6.45/6.41', 'number', (6.42 + 6.45 + 6.41) / 3, { decimals: 2 }],
    ['6.42/6.45->6.43', 'number', 6.43, { earlier: [(6.42 + 6.45) / 2] }],
    ['7.', 'unreadable', null, {}], ['1e999', 'unreadable', null, {}], ['6.4/', 'unreadable', null, {}], ['6.4/-', 'unreadable', null, {}],
    ['((4.9))', 'unreadable', null, {}], ['-?', 'unreadable', null, { doubtful: true }], ['->', 'unreadable', null, { earlier: [null] }], ['8.2->', 'unreadable', null, { earlier: [8.2] }],
    ['<', 'unreadable', null, {}], ['<<2', 'unreadable', null, {}], ['calm', 'unreadable', null, {}], ['NaN', 'unreadable', null, {}], ['Infinity', 'unreadable', null, {}],
    ['0x10', 'unreadable', null, {}], ['', 'unreadable', null, {}],
  ];
  for (const [text, kind, value, more] of cases) {
    test(`${text || '(nothing)'} is ${kind}`, () => {
      const cell = readCell(text, number);
      assert.equal(cell.state.kind, kind);
      assert.equal(cell.state.value, value);
      if (more.decimals !== undefined) assert.equal(cell.state.decimals, more.decimals);
      assert.equal(cell.leftOut, more.leftOut ?? false);
      assert.equal(cell.doubtful, more.doubtful ?? false);
      assert.deepEqual(cell.earlier.map((state) => state.value), more.earlier ?? []);
    });
  }
  test('words of a scale', () => {
    const scale = ['calm', 'at surface'];
    assert.equal(readCell('calm', { scale }).state.word, 'calm');
    assert.equal(readCell('at-surface', { scale }).state.word, 'at surface');
    assert.equal(readCell('calm->at-surface?', { scale }).state.word, 'at surface');
    assert.equal(readCell('clam', { scale }).state.kind, 'unreadable');
    assert.equal(readCell('3', { scale }).state.kind, 'unreadable');
  });
  test('a decimal comma is read and offered with a point', () => {
    const cell = readCell('(7,31->7,3?)', number);
    assert.equal(cell.state.value, 7.3);
    assert.equal(cell.withPoints, '(7.31->7.3?)');
    assert.equal(readCell('6,42/6,45', number).withPoints, '6.42/6.45');
    assert.equal(readCell('<0,05', number).withPoints, '<0.05');
  });
  test('a thousands mark is never guessed', () => {
    assert.deepEqual(readCell('1,013', number).thousands, ['1013', '1.013']);
    assert.deepEqual(readCell('1,009.4', number).thousands, ['1009.4']);
    assert.deepEqual(readCell('1.009,4', number).thousands, ['1009.4']);
    assert.deepEqual(readCell('1\'009', number).thousands, ['1009']);
    assert.deepEqual(readCell('1,013,250', number).thousands, ['1013250']);
    assert.equal(readCell('0,013', number).thousands, null);
    assert.equal(readCell('1009.4', number).thousands, null);
  });
  test('signs from other keyboards are offered in the spelling of the grammar', () => {
    assert.equal(readCell('8.28→8.26', number).rewrite, '8.28->8.26');
    assert.equal(readCell('−0.3', number).rewrite, '-0.3');
    assert.equal(readCell('8.2x', number).rewrite, null);
  });
});

suite('readings: the table', () => {
  const night = 'time   mat.DO  mat.T  open.DO     open.T  room.P\n20:00    8.21   24.9     8.31       24.7  1009.4\n'
    + '22:30    8.02   24.8     8.28->8.26 24.6  1008.8   ; open.DO misread; twice\n06:30  (4.90)   24.3     8.17       24.2  1006.9   ; mat.DO probe out of the water\n';

  test('a night is read whole, with places', () => {
    const result = read(night, { at: 100 });
    assert.deepEqual(result.codes, []);
    assert.deepEqual(result.table.columns.map((column) => column.id), ['mat.DO', 'mat.T', 'open.DO', 'open.T', 'room.P']);
    assert.deepEqual(result.table.columns.map((column) => column.unit?.symbol), ['mg/L', 'degC', 'mg/L', 'degC', 'hPa']);
    assert.deepEqual(times(result), ['2026-03-14T20:00', '2026-03-14T22:30', '2026-03-15T06:30']);
    assert.equal(result.table.rows[1]!.remark, 'open.DO misread; twice');
    assert.equal(result.shown(result.table.rows[1]!.remarkRange!), 'open.DO misread; twice');
    assert.equal(result.shown(result.table.rows[1]!.cells[2]!.range), '8.28->8.26');
    assert.equal(result.shown(result.table.rows[2]!.timeRange), '06:30');
    assert.equal(result.shown(result.table.headRange!), 'time   mat.DO  mat.T  open.DO     open.T  room.P');
    assert.equal(result.table.rows[2]!.cells[0]!.leftOut, true);
  });
  test('CRLF, tabs, blank lines and comments', () => {
    const result = read('# how it went\r\n\r\ntime\tmat.DO\r\n20:00\t8.21\t; a remark  \r\n# 20:10 fed\r\n20:30\t8.22\r\n');
    assert.deepEqual(result.codes, []);
    assert.equal(result.table.rows.length, 2);
    assert.equal(result.table.rows[0]!.remark, 'a remark');
    assert.equal(result.shown(result.table.rows[1]!.range), '20:30\t8.22');
  });
  test('heads: unknown tank and quantity with the nearest, units, instruments', () => {
    const result = read('time mta.DO mat.OD mat.T[degF] mat.DO@titration\n20:00 8 8 76.8 8.3\n');
    assert.deepEqual(result.codes, ['column-unknown', 'column-unknown']);
    assert.equal(result.shown(result.problems[0]!.range), 'mta');
    assert.equal(result.problems[0]!.fixes[0]!.edits[0]!.newText, 'mat');
    assert.equal(result.shown(result.problems[1]!.range), 'OD');
    assert.equal(result.table.columns[2]!.unit!.symbol, 'degF');
    assert.equal(result.table.columns[3]!.instrument, 'titration');
  });
  test('heads: column twice, wrong unit, unknown unit, wrong place, no shape, no time', () => {
    assert.deepEqual(read('time mat.DO mat.DO\n20:00 8 8\n').codes, ['column-twice']);
    assert.deepEqual(read('time mat.T[mg/L]\n20:00 24\n').codes, ['head-unit-mismatch']);
    assert.deepEqual(read('time mat.T[degX]\n20:00 24\n').codes, ['unknown-unit']);
    assert.deepEqual(read('time mat.P\n20:00 1000\n').codes, ['column-not-planned']);
    const shape = read('time DO\n20:00 8\n');
    assert.deepEqual(shape.codes, ['head-unreadable']);
    assert.deepEqual(shape.problems[0]!.fixes.map((each) => each.edits[0]!.newText), ['mat.DO', 'open.DO']);
    const late = read('Time mat.DO\n20:00 8\n');
    assert.deepEqual(late.codes, ['time-column-missing']);
    assert.equal(late.table.rows[0]!.cells[0]!.state.value, 8);
    assert.deepEqual(read('').codes, ['readings-empty']);
  });
  test('too few or too many cells: the row is kept, none of its values is used', () => {
    const few = read('time mat.DO open.DO\n20:00 8.21\n');
    assert.deepEqual(few.codes, ['column-count']);
    assert.deepEqual(few.table.rows[0]!.cells.map((cell) => [cell.text, cell.state.kind]), [['8.21', 'unreadable'], ['', 'unreadable']]);
    const many = read('time mat.DO\n20:00 8.21 8.31\n');
    assert.deepEqual(many.codes, ['column-count']);
    assert.equal(many.shown(many.problems[0]!.range), '8.31');
    assert.deepEqual(many.table.rows[0]!.extra!.map((cell) => cell.text), ['8.31']);
    const spaced = read('time mat.DO\n20:00 8.28 -> 8.26 ; misread\n');
    assert.deepEqual(spaced.codes, ['column-count']);
    assert.equal(spaced.problems[0]!.fixes[0]!.edits[0]!.newText, '20:00  8.28->8.26');
  });
  test('cells: problems at the cell with their mends', () => {
    const result = read('time mat.DO room.P mat.mood\n20:00 8,21 1,009.4 clam\n20:30 8x 1009 calm\n');
    assert.deepEqual(result.codes, ['decimal-comma', 'thousands-mark', 'cell-unreadable', 'cell-unreadable']);
    assert.equal(result.problems[0]!.fixes[0]!.safe, true);
    assert.equal(result.problems[0]!.fixes[0]!.edits[0]!.newText, '8.21');
    assert.equal(result.problems[2]!.fixes[0]!.edits[0]!.newText, 'calm');
    assert.equal(result.table.rows[1]!.cells[0]!.text, '8x');
  });
  test('a correction and a reading left out want a remark', () => {
    assert.deepEqual(read('time mat.DO\n20:00 8.28->8.26\n').codes, ['correction-without-remark']);
    assert.deepEqual(read('time mat.DO\n20:00->20:05 8.28\n').codes, ['correction-without-remark']);
    assert.deepEqual(read('time mat.DO\n20:00 (8.28)\n').codes, ['left-out-without-remark']);
    assert.deepEqual(read('time mat.DO\n20:00 (8.28) ; probe out\n').codes, []);
    assert.deepEqual(read('time mat.DO\n20:00 8.28\n; lone\n').codes, ['remark-without-row']);
  });
  test('values that cannot be: a slipped unit at the cell, or at the head for most of a column', () => {
    const one = read('time mat.T\n20:00 24.9\n20:30 76.8\n21:00 24.8\n');
    assert.deepEqual(one.codes, ['value-implausible']);
    assert.equal(one.shown(one.problems[0]!.range), '76.8');
    assert.equal(one.problems[0]!.args['perhaps'], 'degF');
    const whole = read('time mat.T\n20:00 76.9\n20:30 76.8\n21:00 76.8\n');
    assert.deepEqual(whole.codes, ['value-implausible']);
    assert.equal(whole.problems[0]!.fixes[0]!.edits[0]!.newText, 'mat.T[degF]');
    assert.deepEqual(read('time mat.T\n20:00 (76.8) ; wrong scale\n').codes, []);
  });
});

suite('readings: times', () => {
  test('seconds, dates, offsets, from the start, corrected', () => {
    const result = read('time mat.DO\n20:00:15 8\n2026-03-14T20:30 8\n2026-03-14T20:00Z 8\n+90 8\n+2h30 8\n+1d 8\n20:30->20:35 8 ; late\n');
    assert.deepEqual(result.codes, []);
    assert.deepEqual(times(result), ['2026-03-14T20:00', '2026-03-14T20:30', '2026-03-14T21:00', '2026-03-14T21:30', '2026-03-14T22:30', '2026-03-15T20:00', '2026-03-15T20:35']);
    assert.deepEqual(result.table.rows[6]!.earlierTimes, ['20:30']);
  });
  test('midnight is crossed by steps up to 12 h', () => {
    assert.deepEqual(times(read('time mat.DO\n20:00 8\n08:00 8\n')), ['2026-03-14T20:00', '2026-03-15T08:00']);
    const back = read('time mat.DO\n20:00 8\n08:01 8\n20:30 8\n');
    assert.deepEqual(back.codes, ['time-goes-back']);
    assert.deepEqual(times(back), ['2026-03-14T20:00', null, '2026-03-14T20:30']);
    assert.deepEqual(back.problems[0]!.fixes.map((each) => each.edits[0]!.newText), ['2026-03-15T08:01', '2026-03-14T08:01']);
  });
  test('the first row takes the date nearest the start, or the block before', () => {
    assert.deepEqual(times(read('time mat.DO\n19:30 8\n')), ['2026-03-14T19:30']);
    assert.deepEqual(times(read('time mat.DO\n01:00 8\n')), ['2026-03-15T01:00']);
    const before = read('time mat.DO\n20:00 8\n02:00 8\n').table;
    assert.deepEqual(times(read('time open.DO\n09:00 8\n', { previous: before })), ['2026-03-15T09:00']);
    const whole = read('time mat.DO\n20:00 8\n02:00 8\n10:00 8\n').table;
    assert.deepEqual(times(read('time open.DO\n20:00 8\n22:00 8\n', { previous: whole })), ['2026-03-14T20:00', '2026-03-14T22:00']);
  });
  test('day lines give the date', () => {
    const result = read('time mat.DO\n# 2026-03-16\n20:00 8\n06:00 8\n# 2026-03-19\n20:00 8\n');
    assert.deepEqual(result.codes, []);
    assert.deepEqual(times(result), ['2026-03-16T20:00', '2026-03-17T06:00', '2026-03-19T20:00']);
  });
  test('rows in any order with full dates only', () => {
    assert.deepEqual(read('time mat.DO\n2026-03-15T06:00 8\n2026-03-14T20:00 8\n').codes, []);
  });
  test('the repeated and the skipped hour are named, an offset settles them', () => {
    const repeated = read('time mat.DO\n2026-10-25T02:30 8\n');
    assert.deepEqual(repeated.codes, ['time-ambiguous']);
    assert.deepEqual(repeated.problems[0]!.fixes.map((each) => each.edits[0]!.newText), ['2026-10-25T02:30+02:00', '2026-10-25T02:30+01:00']);
    assert.equal(repeated.table.rows[0]!.instant, null);
    const skipped = read('time mat.DO\n2026-03-29T02:30 8\n');
    assert.deepEqual(skipped.codes, ['time-skipped']);
    assert.equal(skipped.problems[0]!.fixes.length, 2);
    const settled = read('time mat.DO\n2026-10-25T02:30+02:00 8\n02:30+01:00 8\n');
    assert.deepEqual(settled.codes, []);
    assert.equal(settled.table.rows[1]!.instant! - settled.table.rows[0]!.instant!, 3_600_000);
    // A clock time after midnight on the night of the change meets the same rule.
    const schedule = { ...plan().schedule!, start: Date.parse('2026-10-24T20:00:00+02:00'), end: Date.parse('2026-10-25T10:00:00+01:00') };
    assert.deepEqual(read('time mat.DO\n20:00 8\n02:30 8\n03:30 8\n', { protocol: plan({ schedule }) }).codes, ['time-ambiguous']);
  });
  test('without a start a clock time has no day; asked once', () => {
    const protocol = plan({ schedule: null });
    assert.deepEqual(read('time mat.DO\n20:00 8\n20:30 8\n', { protocol }).codes, ['time-needs-date']);
    assert.deepEqual(read('time mat.DO\n+90 8\n', { protocol }).codes, ['time-needs-start']);
    assert.deepEqual(read('time mat.DO\n# 2026-03-16\n20:00 8\n', { protocol }).codes, []);
  });
  test('a run over a day wants dates', () => {
    const schedule = { ...plan().schedule!, end: plan().schedule!.start + 96 * 3_600_000 };
    const result = read('time mat.DO\n20:00 8\n', { protocol: plan({ schedule }) });
    assert.deepEqual(result.codes, ['time-wants-date']);
    assert.equal(result.problems[0]!.fixes[0]!.edits[0]!.newText, '# 2026-03-14\n');
    // Every further day too: a day that was left out would close up unseen.
    const days = read('time mat.DO\n# 2026-03-14\n20:00 8\n08:00 8\n20:00 8\n07:00 8\n', { protocol: plan({ schedule }) });
    assert.deepEqual(days.codes, ['time-wants-date']);
    assert.deepEqual(days.problems[0]!.fixes[0]!.edits.map((edit) => edit.newText), ['# 2026-03-15\n', '# 2026-03-16\n']);
    assert.deepEqual(read('time mat.DO\n# 2026-03-14\n20:00 8\n# 2026-03-15\n08:00 8\n20:00 8\n', { protocol: plan({ schedule }) }).codes, []);
  });
  test('a time that is none is kept, with a mend where one is plain', () => {
    const result = read('time mat.DO\n20.30 8\nsoon 8\n25:00 8\n');
    assert.deepEqual(result.codes, ['time-unreadable', 'time-unreadable', 'time-unreadable']);
    assert.equal(result.problems[0]!.fixes[0]!.edits[0]!.newText, '20:30');
    assert.equal(result.table.rows[1]!.timeText, 'soon');
    assert.equal(result.table.rows[1]!.cells[0]!.state.value, 8);
  });
});

suite('dataset: series', () => {
  test('sorted, flagged, with their sources', () => {
    const { table } = read('time mat.DO mat.mood\n20:30 8.24 calm\n2026-03-14T20:00 8.21 restless\n21:00 - -\n21:30 (7.9?) calm ; odd\n22:00 <0.05 calm\n');
    const { dataset } = buildDataset([table], plan());
    const series = dataset.series.get('mat.DO')!;
    assert.deepEqual([...series.values.slice(0, 2)], [8.21, 8.24]);
    assert.deepEqual([...series.flags], [0, 0, flag.missing, flag.leftOut | flag.doubtful, flag.below]);
    assert.equal(series.sources[0]!.cell.text, '8.21');
    assert.deepEqual([...dataset.series.get('mat.mood')!.words], [1, 0, -1, 0, 0]);
    assert.equal(dataset.times.length, 5);
  });
  test('columns of one series in different units are converted', () => {
    const first = read('time mat.T[degF]\n20:00 77\n').table;
    const second = read('time mat.T\n21:00 25\n', { previous: first }).table;
    assert.equal(buildDataset([first], plan()).dataset.series.get('mat.T')!.unit.symbol, 'degF');
    const series = buildDataset([first, second], plan()).dataset.series.get('mat.T')!;
    assert.equal(series.unit.symbol, 'degC');
    assert.deepEqual([...series.values].map((value) => Math.round(value * 1e9) / 1e9), [25, 25]);
  });
  test('two values for one time are an error with both places; a gap and a value are none', () => {
    const two = buildDataset([read('time mat.DO mat.T\n20:00 8.21 24.9\n20:00 8.22 24.9\n').table], plan());
    assert.deepEqual(two.problems.map((each) => each.code), ['duplicate-reading']);
    assert.deepEqual(two.problems[0]!.args['columns'], ['mat.DO', 'mat.T']);
    assert.equal(two.problems[0]!.related.length, 1);
    const gap = buildDataset([read('time mat.DO\n20:00 -\n20:00 8.22\n').table], plan());
    assert.deepEqual(gap.problems, []);
    assert.deepEqual([...gap.dataset.series.get('mat.DO')!.values], [8.22]);
  });
  test('missed slots: one information a column, up to the last reading', () => {
    const { problems } = buildDataset([read('time mat.DO open.DO\n20:03 8.21 8.3\n20:30 - 8.3\n21:30 8.2 8.3\n').table], plan());
    assert.deepEqual(problems.map((each) => [each.code, each.args['head'], each.args['missed'], each.args['planned'], each.args['times']]), [
      ['slots-missed', 'mat.DO', 2, 4, ['20:30', '21:00']], ['slots-missed', 'open.DO', 1, 4, ['21:00']],
    ]);
  });
  test('readings outside the run: one information a block', () => {
    const { problems } = buildDataset([read('time mat.DO\n2026-03-13T08:00 8.2\n2026-03-13T08:30 8.2\n').table], plan());
    assert.deepEqual(problems.map((each) => [each.code, each.args['count']]), [['reading-outside-run', 2]]);
  });
  test('pair within joins times of different blocks, and is offered', () => {
    const first = read('time mat.DO\n20:00 8.2\n20:30 8.2\n').table;
    const second = read('time open.DO\n20:01 8.3\n20:31 8.3\n', { previous: first }).table;
    const apart = buildDataset([first, second], plan());
    assert.equal(apart.dataset.times.length, 4);
    assert.deepEqual(apart.problems.map((each) => each.code), ['times-nearly-pair']);
    assert.equal(apart.problems[0]!.fixes[0]!.edits[0]!.newText, '\npair within: 1 min');
    const joined = buildDataset([first, second], plan({ pairWithin: 60_000 }));
    assert.equal(joined.dataset.times.length, 2);
    assert.deepEqual(joined.problems, []);
    // A second reading of the same series is never moved onto the first.
    const again = read('time mat.DO\n20:01 8.3\n', { previous: first }).table;
    assert.equal(buildDataset([first, again], plan({ pairWithin: 60_000 })).dataset.series.get('mat.DO')!.times.length, 3);
  });
  test('a second instrument beside a plain column keeps no plan', () => {
    const protocol = plan({ measure: [measured('DO', 'dissolved oxygen', 'mg/L')] });
    const { problems } = buildDataset([read('time mat.DO mat.DO@titration\n20:00 8.2 8.3\n20:30 8.2 -\n', { protocol }).table], protocol);
    assert.deepEqual(problems, []);
  });
});
