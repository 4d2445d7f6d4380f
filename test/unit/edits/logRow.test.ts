import assert from 'node:assert/strict';
import { applyEdits } from '../../../src/edits/edit.ts';
import { logRow } from '../../../src/edits/logRow.ts';
import { planForTime, planRow } from '../../../src/edits/planRow.ts';
import { readRowInput } from '../../../src/edits/readRowInput.ts';
import { tankOrder } from '../../../src/edits/tankOrder.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';
import { editSentence } from '../../../src/words/edits.ts';
import { at, blockLines, code, lines, made, note, noteText, table } from './support.ts';

const values = ['7.31', '24.6', '8.25', '24.5', '1008.1'];

suite('edits: what is to be logged', () => {
  test('the slot that is due, and the time that is logged', () => {
    const plan = planRow(note(), at('23:01'))!;
    assert.equal(plan.state, 'due');
    assert.equal(plan.slot, at('23:00'));
    assert.equal(plan.time, at('23:00'));
    assert.equal(plan.next, at('23:30'));
    assert.deepEqual(plan.missed, [at('21:30')]);
    assert.deepEqual(plan.columns.map((column) => column.id), ['mat.DO', 'mat.T', 'open.DO', 'open.T', 'room.P']);
    assert.equal(plan.columns[0]!.label, 'floating-mat tank');
    // Late by seven minutes: logged at its true time.
    assert.equal(planRow(note(), at('23:07') + 41_000)!.time, at('23:07'));
  });
  test('between slots, before and after the run, without a plan', () => {
    assert.deepEqual([planRow(note(), at('22:32'))!.state, planRow(note(), at('22:32'))!.next], ['waiting', at('23:00')]);
    assert.equal(planRow(note('time mat.DO\n'), at('19:00'))!.state, 'before');
    assert.equal(planRow(note(), Date.parse('2026-03-15T12:00:00+01:00'))!.state, 'after');
    assert.equal(planRow(note(), Date.parse('2026-03-15T12:00:00+01:00'))!.slot, null);
    assert.equal(planRow(readNote('# Nothing'), at('23:00')), null);
  });
  test('the planned order of tanks rules the typed order, the table keeps its own', () => {
    const ordered = note(table, '', `${baseProtocol}order: [open, mat]\n`);
    const plan = planRow(ordered, at('23:00'))!;
    assert.deepEqual(plan.columns.map((column) => column.id), ['open.DO', 'open.T', 'mat.DO', 'mat.T', 'room.P']);
    const input = readRowInput('8.25 24.5 7.31 24.6 1008.1', ordered, plan);
    assert.deepEqual(input.row, values);
  });
  test('an order that alternates, or is drawn from the seed', () => {
    const first = (protocol: string, time: string): string => planRow(note(table, '', protocol), at(time))!.columns[0]!.id;
    assert.deepEqual(['23:00', '23:30', '00:00'].map((time) => first(`${baseProtocol}order: alternate\n`, time)), ['mat.DO', 'open.DO', 'mat.DO']);
    const drawn = Array.from({ length: 24 }, (_, index) => tankOrder(note(table, '', `${baseProtocol}order: random\nseed: 7\n`).protocol!, at('20:00') + index * 1_800_000)[0]);
    assert.deepEqual([...new Set(drawn)].sort(), ['mat', 'open']);
    assert.deepEqual(drawn, Array.from({ length: 24 }, (_, index) => tankOrder(note(table, '', `${baseProtocol}order: random\nseed: 7\n`).protocol!, at('20:00') + index * 1_800_000)[0]));
  });
});

suite('edits: the typed row', () => {
  const night = note();
  const plan = planRow(night, at('23:00'))!;
  const read = (text: string) => readRowInput(text, night, plan);
  const warned = (text: string): string[] => read(text).warnings.map((warning) => `${warning.message.code} ${warning.at.join(',')}`);

  test('values go where they are typed, with their change', () => {
    const input = read('7.83 24,7 8.25');
    assert.deepEqual(input.cells.map((cell) => cell.text), ['7.83', '24.7', '8.25', '', '']);
    assert.equal(input.cells[0]!.change, -0.19);
    assert.equal(input.cells[0]!.last!.text, '8.02');
    assert.equal(input.row, null);
    assert.deepEqual(read('7.83 24.7 8.25 24.5 1008.6 ; quiet ; all well').row, ['7.83', '24.7', '8.25', '24.5', '1008.6']);
    assert.equal(read('7.83 24.7 8.25 24.5 1008.6 ; quiet ; all well').remark, 'quiet ; all well');
    assert.deepEqual(warned('7.83 24.7 8.25 24.5 1008.6'), []);
  });
  test('a typed time, nearest to now', () => {
    assert.equal(read('23:07 7.83').time, at('23:07'));
    assert.equal(read('00:10 7.83').time, at('00:10'));
    assert.equal(read('now 7.83').time, at('23:00'));
    assert.deepEqual(read('25:10 7.83').errors.map((error) => error.message.code), ['time-unreadable']);
  });
  test('a clock time logged after the run is that of the run, whatever the hour', () => {
    const later = planRow(night, Date.parse('2026-03-15T18:00:00+01:00'))!;
    const paper = (text: string) => readRowInput(text, night, later);
    assert.equal(paper('23:07 7.83').time, at('23:07'));
    assert.equal(paper('06:30 7.83').time, at('06:30'));
    assert.deepEqual(paper('23:07 7.83').warnings, []);
    // Months later it still is; and so is a full date, without a warning.
    const months = planRow(night, Date.parse('2026-11-15T18:00:00+01:00'))!;
    assert.equal(readRowInput('23:07 7.83', night, months).time, at('23:07'));
    assert.deepEqual(readRowInput('2026-03-14T23:07 7.83', night, months).warnings, []);
  });
  test('a time far outside the run is doubted, typed or not', () => {
    const months = planRow(night, Date.parse('2026-11-15T18:00:00+01:00'))!;
    const doubts = (text: string) => readRowInput(text, night, months).warnings.map((warning) => [warning.message.code, warning.message.args['side']]);
    assert.deepEqual(doubts('7.83 24.7 8.25 24.5 1008.6'), [['outside-run', 'after']]);
    assert.deepEqual(doubts('2026-03-10T23:00 7.83 24.7 8.25 24.5 1008.6'), [['outside-run', 'before']]);
    assert.equal(editSentence(readRowInput('7.83', night, months).warnings[0]!.message), '2026-11-15 18:00 lies 245 d 8 h after the end of the run.');
    assert.deepEqual(readRowInput('7.83', night, planRow(night, Date.parse('2026-03-15T13:00:00+01:00'))!).warnings, []);
  });
  test('a row of another time stands in the order drawn for that time', () => {
    const drawn = note(table, '', `${baseProtocol}order: alternate\n`);
    const due = planRow(drawn, at('23:30'))!;
    assert.equal(due.columns[0]!.id, 'open.DO');
    assert.equal(planForTime(due, drawn, at('23:00')).columns[0]!.id, 'mat.DO');
    assert.equal(planForTime(due, drawn, at('23:00')).time, at('23:00'));
  });
  test('what cannot be read, and too many values', () => {
    assert.deepEqual(read('7.8x 24.7').errors.map((error) => [error.message.code, error.at]), [['unreadable', [0]]]);
    assert.deepEqual(read('1 2 3 4 5 6').errors.map((error) => error.message.code), ['too-many']);
    assert.deepEqual(read('7.83 - 8.25 - 1008.6').row, ['7.83', '-', '8.25', '-', '1008.6']);
    assert.deepEqual(read('').row, null);
  });
  test('what looks wrong: the range, a slipped unit, a jump, two columns swapped, too much oxygen', () => {
    assert.deepEqual(warned('7.83 24.7 8.25 24.5 1.6'), ['out-of-range 4']);
    assert.deepEqual(warned('7.83 76.5 8.25 24.5 1008.6'), ['unit-slip 1']);
    assert.equal(read('7.83 76.5').warnings[0]!.message.args['perhaps'], '°F');
    assert.deepEqual(warned('4.90 24.7 8.25 24.5 1008.6'), ['jump 0']);
    assert.deepEqual(warned('24.7 7.83 8.25 24.5 1008.6'), ['swapped 0,1']);
    assert.deepEqual(warned('12.9 24.7 8.25 24.5 1008.6'), ['jump 0', 'saturation 0']);
    for (const warning of read('24.7 7.83 8.25 76.5 1.6').warnings) assert.match(editSentence(warning.message), /^\S.*\.$/u);
  });
  test('words of a scale complete as they are typed', () => {
    const protocol = baseProtocol.replace('  P: {', '  mood: {what: fish behaviour, scale: [calm, restless, surface, gasping], in: [mat]}\n  P: {');
    const fish = note('time mat.DO mat.mood\n20:00 8.2 calm\n', '', protocol);
    const row = planRow(fish, at('20:30'))!;
    assert.deepEqual(readRowInput('8.2 ', fish, row).completions, ['calm', 'restless', 'surface', 'gasping']);
    assert.deepEqual(readRowInput('8.2 re', fish, row).completions, ['restless']);
    assert.deepEqual(readRowInput('8.2 re', fish, row).row, ['8.2', 'restless']);
    assert.deepEqual(readRowInput('8.2 xx ', fish, row).errors.map((error) => error.message.code), ['not-a-word']);
  });
});

suite('edits: logging a row', () => {
  test('under the last row, aligned on the points', () => {
    const result = logRow(note(), { time: at('23:00'), cells: ['7.31', '24.6', '8.25?', '(24.5)', '1008.1'], remark: 'probe knocked' });
    assert.equal(lines(note(), result).at(-1), '23:00    7.31   24.6     8.25?     (24.5) 1008.1   ; probe knocked');
    assert.ok(result.ok && made(note(), result).slice(result.shows.start, result.shows.end).startsWith('23:00'));
  });
  test('between two rows, before the first, over midnight', () => {
    assert.deepEqual(lines(note(), logRow(note(), { time: at('21:30'), cells: values })).map((line) => line.slice(0, 5)), ['time ', '20:00', '20:30', '21:00', '21:30', '22:00', '22:30']);
    const early = note('time mat.DO\n20:00 8.2\n');
    assert.deepEqual(lines(early, logRow(early, { time: at('19:50'), cells: ['8.1'] })), ['time mat.DO', '19:50 8.1', '20:00 8.2']);
    const late = lines(note(), logRow(note(), { time: at('01:00'), cells: values }));
    assert.equal(late.at(-1), '01:00    7.31   24.6     8.25       24.5  1008.1');
  });
  test('an empty table, CRLF, an indented block, a quote, a comment and a seal under the heads', () => {
    const empty = note('time  mat.DO\n');
    assert.deepEqual(lines(empty, logRow(empty, { time: at('20:00'), cells: ['8.21'] })), ['time  mat.DO', '20:00   8.21']);
    const dos = readNote(noteText('time  mat.DO\n20:00   8.21\n').replace(/\n/gu, '\r\n'));
    const text = made(dos, logRow(dos, { time: at('20:30'), cells: ['8.24'] }));
    assert.ok(text.includes('20:00   8.21\r\n20:30   8.24\r\n```'));
    assert.ok(!/[^\r]\n/u.test(text));
    const quoted = readNote(`\`\`\`protocol\n${baseProtocol}\`\`\`\n\n> \`\`\`readings\n> time  mat.DO\n> # a meter\n> 20:00   8.21\n> \`\`\`\n`);
    assert.ok(made(quoted, logRow(quoted, { time: at('20:30'), cells: ['8.24'] })).includes('> 20:00   8.21\n> 20:30   8.24\n> ```'));
    const commented = note('time  mat.DO\n# a meter\n20:00   8.21\n');
    assert.deepEqual(lines(commented, logRow(commented, { time: at('19:50'), cells: ['8.2'] })), ['time  mat.DO', '# a meter', '19:50   8.2', '20:00   8.21']);
  });
  test('a laid-out row of the slot takes the values, also when they come late', () => {
    const laid = note('time   mat.DO  mat.T\n20:00    8.21   24.9\n20:30       -      -\n21:00       -      -\n');
    assert.equal(lines(laid, logRow(laid, { time: at('20:30'), cells: ['8.24', '24.9'] }))[2], '20:30    8.24   24.9');
    assert.deepEqual(lines(laid, logRow(laid, { time: at('20:37'), cells: ['8.24', '24.9'] })), ['time   mat.DO  mat.T', '20:00    8.21   24.9', '20:37    8.24   24.9', '21:00       -      -']);
    const half = note('time   mat.DO  mat.T\n20:00    8.21      - ; T later\n');
    assert.equal(lines(half, logRow(half, { time: at('20:00'), cells: ['-', '24.9'], remark: 'T read' }))[1], '20:00    8.21   24.9   ; T later; T read');
  });
  test('a row that holds values is never written over', () => {
    assert.equal(code(logRow(note(), { time: at('22:00'), cells: values })), 'already-read');
  });
  test('a run over a day gets day lines; seconds and offsets where they are needed', () => {
    const protocol = baseProtocol.replace('end: 2026-03-15 10:00', 'end: 2026-03-18 20:00').replace('every: 30 min', 'every: 12 h');
    const long = note('time  mat.DO\n# 2026-03-14\n20:00   8.21\n# 2026-03-15\n08:00   7.90\n', '', protocol);
    assert.deepEqual(lines(long, logRow(long, { time: Date.parse('2026-03-16T08:00:00+01:00'), cells: ['7.8'] })).slice(-2), ['# 2026-03-16', '08:00   7.8']);
    assert.deepEqual(lines(long, logRow(long, { time: Date.parse('2026-03-15T20:00:00+01:00'), cells: ['7.8'] })).slice(-2), ['08:00   7.90', '20:00   7.8']);
    const short = note('time  mat.DO\n20:00   8.21\n');
    assert.equal(lines(short, logRow(short, { time: Date.parse('2026-03-15T09:00:00+01:00'), cells: ['7.8'] })).at(-1), '2026-03-15T09:00  7.8');
    assert.equal(lines(short, logRow(short, { time: at('20:30') + 15_400, cells: ['7.8'] })).at(-1), '20:30:15  7.8');
    const autumn = baseProtocol.replace('start: 2026-03-14 20:00', 'start: 2026-10-24 20:00').replace('2026-03-15 09:30', '2026-10-25 09:30').replace('end: 2026-03-15', 'end: 2026-10-25');
    const change = note('time  mat.DO\n20:00   8.21\n', '', autumn);
    const twice = readNote(made(change, logRow(change, { time: Date.parse('2026-10-25T02:30:00+02:00'), cells: ['7.8'] })));
    assert.equal(twice.tables[0]!.rows[1]!.timeText, '2026-10-25T02:30+02:00');
    assert.deepEqual(twice.problems.filter((problem) => problem.code.startsWith('time-')), []);
  });
  test('refused with what was typed kept: no plan, no table, a file, a seal, wrong counts, unreadable', () => {
    assert.equal(code(logRow(readNote('# x'), { time: 0, cells: [] })), 'no-protocol');
    assert.equal(code(logRow(note(), { time: 0, cells: [], table: 7 })), 'no-table');
    assert.equal(code(logRow(note('from: a.csv\ncolumns:\n  a: time\n'), { time: 0, cells: [], table: 0 })), 'table-in-file');
    assert.equal(code(logRow(note(), { time: at('23:00'), cells: ['1'] })), 'too-few');
    assert.equal(code(logRow(note(), { time: at('23:00'), cells: [...values, '1'] })), 'too-many');
    assert.equal(code(logRow(note(), { time: at('23:00'), cells: ['a b', '1', '1', '1', '1'] })), 'unreadable');
    assert.equal(code(logRow(note(), { time: at('23:00'), cells: ['', '1', '1', '1', '1'] })), 'unreadable');
    assert.equal(code(logRow(note('time mat.DO\n# sealed x\n20:00 8.2\n'), { time: at('23:00'), cells: ['1'], table: 0 })), 'table-sealed');
  });
  test('the first row of a note without a table makes one, behind the plan or behind a sealed table', () => {
    for (const text of [`\`\`\`protocol\n${baseProtocol}\`\`\`\n`, `\`\`\`protocol\n${baseProtocol}\`\`\`\nProse.\n`, noteText('time mat.DO\n# sealed x\n19:30 8.2\n', '\nProse.\n')]) {
      const before = readNote(text);
      const plan = planRow(before, at('20:00'))!;
      assert.equal(plan.table, null);
      const input = readRowInput('8.21 24.9 8.31 24.7 1009.4 ; start', before, plan);
      const result = logRow(before, { time: input.time, cells: input.row!, remark: input.remark, table: plan.table });
      const after = made(before, result);
      const last = readNote(after).tables.at(-1)!;
      assert.deepEqual([last.rows.length, last.rows[0]!.instant, last.rows[0]!.remark], [1, at('20:00'), 'start']);
      assert.ok(result.ok && after.slice(result.shows.start, result.shows.end).startsWith('20:00'));
      assert.equal(readNote(after).tables.length, before.tables.length + 1);
    }
  });
  test('a whole night by the prompt: each row lands, nothing else moves', () => {
    let text = noteText('time  mat.DO  mat.T  open.DO  open.T  room.P\n');
    for (let slot = 0; slot < 29; slot += 1) {
      const now = at('20:00') + slot * 30 * 60_000 + (slot % 4) * 45_000;
      const before = readNote(text);
      const plan = planRow(before, now)!;
      const input = readRowInput(`${(8.3 - slot * 0.11).toFixed(2)} ${(25 - slot * 0.02).toFixed(1)} ${(8.31 - slot * 0.01).toFixed(2)} 24.7 ${(1009 - slot * 0.1).toFixed(1)}`, before, plan);
      assert.deepEqual(input.errors, []);
      assert.deepEqual(input.warnings, [], `${slot}`);
      const result = logRow(before, { time: input.time, cells: input.row!, remark: input.remark, table: plan.table });
      assert.ok(result.ok);
      text = applyEdits(before.text, result.edits);
    }
    const whole = readNote(text);
    assert.equal(whole.tables[0]!.rows.length, 29);
    assert.deepEqual(whole.problems.filter((problem) => problem.severity === 'error'), []);
    assert.equal(blockLines(text)[29], '10:00   5.22   24.4     8.03    24.7  1006.2');
    assert.equal(planRow(whole, at('10:00') + 60_000)!.state, 'after');
  });
});
