import assert from 'node:assert/strict';
import { addRemark, cellAt, correctReading, correctTime, leaveOut, markDoubtful, rowAt, timeAt } from '../../../src/edits/changeCell.ts';
import { applyEdits } from '../../../src/edits/edit.ts';
import { formatTables } from '../../../src/edits/formatTables.ts';
import { insertReadingsTable, plannedHeads } from '../../../src/edits/insertReadingsTable.ts';
import { logEvent } from '../../../src/edits/logEvent.ts';
import { sealBlock, verifySeal } from '../../../src/edits/sealTable.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { readSyntax } from '../../../src/note/readSyntax.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';
import { at, blockLines, code, lines, made, note, noteText, table } from './support.ts';

const place = (row: number, column: number) => ({ table: 0, row, column });

suite('edits: correct, leave out, mark, remark', () => {
  test('a correction keeps the first value and says why', () => {
    assert.equal(lines(note(), correctReading(note(), place(0, 0), '8.31', 'misread'))[1], '20:00    8.21->8.31  24.9     8.31       24.7  1009.4   ; mat.DO: misread');
    assert.equal(lines(note(), correctReading(note(), place(4, 2), '8.25', 'read again'))[5], '22:30    8.02   24.8     8.28->8.26->8.25 24.6  1008.8   ; open.DO misread; open.DO: read again');
    const gaps = note('time mat.DO mat.T\n20:00 - (4.9) ; out\n20:30 7.3? (7.4?) ; x\n');
    assert.equal(lines(gaps, correctReading(gaps, place(0, 0), '8.26', 'found in the other book'))[1], '20:00 -->8.26 (4.9) ; out; mat.DO: found in the other book');
    assert.equal(lines(gaps, correctReading(gaps, place(0, 1), '24.9', 'lost digit'))[1], '20:00 - (4.9->24.9) ; out; mat.T: lost digit');
    assert.equal(lines(gaps, correctReading(gaps, place(1, 0), '7,4', 'read again'))[2], '20:30 7.3?->7.4 (7.4?) ; x; mat.DO: read again');
    assert.equal(lines(gaps, correctReading(gaps, place(1, 0), '-', 'another tank'))[2], '20:30 7.3?->- (7.4?) ; x; mat.DO: another tank');
    const corrected = readNote(made(gaps, correctReading(gaps, place(1, 1), '24.1', 'wrong line')));
    assert.equal(corrected.tables[0]!.rows[1]!.cells[1]!.leftOut, true);
    assert.equal(corrected.tables[0]!.rows[1]!.cells[1]!.doubtful, false);
  });
  test('what was unreadable is corrected like any other, and is then no error', () => {
    const broken = note('time mat.DO mat.T\n20:00 8.2x 24.9\n');
    const text = made(broken, correctReading(broken, place(0, 0), '8.21', 'slip of the pen'));
    assert.equal(blockLines(text)[1], '20:00 8.2x->8.21 24.9   ; mat.DO: slip of the pen');
    assert.ok(!readNote(text).problems.some((problem) => problem.code === 'cell-unreadable'));
  });
  test('refused: the same value, no reason, no number, a missing cell, a file', () => {
    assert.equal(code(correctReading(note(), place(0, 0), '8.21', 'x')), 'same-value');
    assert.equal(code(correctReading(note(), place(0, 0), '8.3', ' ')), 'reason-missing');
    assert.equal(code(correctReading(note(), place(0, 0), '8.3->8.4', 'x')), 'unreadable');
    assert.equal(code(correctReading(note(), place(0, 0), '8.3 ; x', 'x')), 'unreadable');
    assert.equal(code(correctReading(note(), place(9, 0), '8.3', 'x')), 'no-row');
    assert.equal(code(leaveOut(note('from: a.csv\n'), place(0, 0), 'x')), 'table-in-file');
  });
  test('leave out and doubt', () => {
    assert.equal(lines(note(), leaveOut(note(), place(0, 0), 'probe out'))[1]!.slice(0, 53), '20:00   (8.21)  24.9     8.31       24.7  1009.4   ; ');
    assert.equal(lines(note(), markDoubtful(note(), place(0, 0)))[1], '20:00    8.21?  24.9     8.31       24.7  1009.4');
    assert.ok(lines(note(), leaveOut(note(), place(4, 2), 'bubbles'))[5]!.includes('(8.28->8.26) 24.6'));
    const marked = note('time mat.DO mat.T\n20:00 (4.9)->5.0 - ; x\n20:30 (7.3) 8? ; y\n');
    assert.equal(lines(marked, leaveOut(marked, place(0, 0), 'again'))[1], '20:00 (4.9)->(5.0) - ; x; mat.DO: again');
    assert.equal(lines(marked, markDoubtful(marked, place(1, 0), 'foam'))[2], '20:30 (7.3?) 8? ; y; mat.DO: foam');
    assert.equal(code(leaveOut(marked, place(0, 1), 'x')), 'nothing-to-mark');
    assert.equal(code(leaveOut(marked, place(1, 0), 'x')), 'already-left-out');
    assert.equal(code(markDoubtful(marked, place(1, 1))), 'already-doubtful');
    assert.equal(code(leaveOut(note(), place(0, 0), '')), 'reason-missing');
  });
  test('remarks: new, added, behind a bare semicolon, on one line', () => {
    assert.equal(lines(note(), addRemark(note(), { table: 0, row: 0 }, 'fed\nboth'))[1], '20:00    8.21   24.9     8.31       24.7  1009.4   ; fed both');
    assert.ok(lines(note(), addRemark(note(), { table: 0, row: 3 }, 'fed'))[4]!.endsWith('; light off; fed'));
    const bare = note('time mat.DO\n20:00 8.2 ;  \n');
    assert.equal(lines(bare, addRemark(bare, { table: 0, row: 0 }, 'fed'))[1], '20:00 8.2 ; fed');
    assert.equal(code(addRemark(note(), { table: 0, row: 0 }, ' ')), 'remark-empty');
  });
  test('a time is corrected with ->; other rows keep theirs', () => {
    assert.equal(lines(note(), correctTime(note(), { table: 0, row: 1 }, '20:35', 'late'))[2], '20:30->20:35    8.24   24.9     8.30       24.7  1009.2   ; time: late');
    assert.equal(code(correctTime(note(), { table: 0, row: 1 }, 'soon', 'x')), 'time-unreadable');
    // 20:30 written as 10:30 would be the next morning, and every clock time below it would move.
    assert.equal(code(correctTime(note(), { table: 0, row: 1 }, '08:30', 'x')), 'time-not-written');
  });
  test('the cell and the row under the cursor', () => {
    const night = note();
    const offset = night.text.indexOf('8.28');
    assert.deepEqual(cellAt(night, offset), { table: 0, row: 4, column: 2 });
    assert.deepEqual(rowAt(night, offset), { table: 0, row: 4 });
    assert.equal(cellAt(night, night.text.indexOf('light off', night.text.indexOf('readings'))), null);
    assert.equal(rowAt(night, 3), null);
    assert.deepEqual(timeAt(night, night.text.indexOf('20:30    8.24')), { table: 0, row: 1 });
    assert.equal(timeAt(night, offset), null);
  });
});

suite('edits: events', () => {
  const events = (protocol: string, more: Partial<Parameters<typeof logEvent>[1]> = {}): string => {
    const before = note(table, '', protocol);
    const text = made(before, logEvent(before, { at: at('22:00'), what: 'pump on', ...more }));
    const after = readNote(text);
    assert.equal(after.protocol!.events.length, before.protocol!.events.length + 1);
    assert.deepEqual(after.problems.filter((problem) => problem.severity === 'error').map((problem) => problem.code), []);
    const last = after.protocol!.events.find((event) => event.what === (more.what ?? 'pump on'))!;
    assert.equal(last.at, more.at ?? at('22:00'));
    return text;
  };
  test('a first event, an added one, and the remark of the row', () => {
    const text = events(baseProtocol);
    assert.ok(text.includes('    do: Switch the air pump on and end the run\nevents:\n  - at: 2026-03-14 22:00\n    what: pump on\n```'));
    assert.ok(text.includes('; light off; pump on'));
    const added = events(`${baseProtocol}events:\n- at: 2026-03-14 21:00\n  what: fed\n# later\nseed: 7\n`, { tanks: ['mat'], id: 'pump', what: 'pump on: full #2', at: at('22:10') });
    assert.ok(added.includes('  what: fed\n- at: 2026-03-14 22:10\n  what: "pump on: full #2"\n  tanks: [mat]\n  id: pump\n# later\nseed: 7\n'));
  });
  test('events in one line are not rewritten; no words, no event', () => {
    assert.equal(code(logEvent(note(table, '', `${baseProtocol}events: [{at: 21:00, what: fed}]\n`), { at: at('22:00'), what: 'x' })), 'events-unreadable');
    assert.equal(code(logEvent(note(), { at: at('22:00'), what: ' ' })), 'event-empty');
  });
});

suite('edits: the formatter', () => {
  const formatted = (text: string): string => applyEdits(text, formatTables(readSyntax(text)));
  test('aligns on the points, keeps every token, remark and comment', () => {
    const text = noteText('time mat.DO mat.T open.DO\n# a  comment\n20:00 8.21 24.9 8.31 ;first\n\n06:30\t(4.90) 24 8.28->8.26 ;   second ; more\n09:00 - <0.05 10.5\n10:00 1 2\n');
    assert.deepEqual(blockLines(formatted(text)), [
      'time   mat.DO  mat.T  open.DO', '# a  comment', '20:00    8.21  24.9      8.31         ; first', '', '06:30   (4.90) 24        8.28->8.26   ; second ; more',
      '09:00    -     <0.05    10.5', '10:00 1 2',
    ]);
    assert.deepEqual(blockLines(formatted(noteText(table))).slice(4), [
      '22:00    8.26   24.8     8.29         24.6  1008.9   ; light off', '22:30    8.02   24.8     8.28->8.26   24.6  1008.8   ; open.DO misread',
    ]);
  });
  test('doing it twice changes nothing; CRLF and quotes stay', () => {
    const quoted = `\`\`\`protocol\n${baseProtocol}\`\`\`\n\n> \`\`\`readings\n> time  mat.DO mat.T\n> 20:00  8.2 24.93\n> \`\`\`\n`;
    for (const text of [noteText(table), noteText(table).replace(/\n/gu, '\r\n'), quoted, noteText('time mat.DO\n'), noteText('from: a.csv\ncolumns:\n  a:   time\n')]) {
      assert.equal(formatted(formatted(text)), formatted(text));
      assert.equal(formatted(text).replace(/[ \t]/gu, ''), text.replace(/[ \t]/gu, ''));
    }
    assert.ok(formatted(quoted).includes('> time   mat.DO  mat.T\n> 20:00     8.2  24.93\n'), formatted(quoted));
  });
  test('a range formats only the tables it touches', () => {
    const text = noteText('time mat.DO\n20:00   8.2\n', '\n```readings\ntime mat.T\n20:00    24\n```\n');
    const second = text.lastIndexOf('20:00');
    const edits = formatTables(readSyntax(text), { start: second, end: second });
    assert.ok(edits.length > 0 && edits.every((edit) => edit.range.start > text.indexOf('mat.T')));
  });
});

suite('edits: seals', () => {
  test('a sealed table is valid, stays valid through corrections and marks, and names a change', () => {
    const night = note();
    const sealed = readNote(made(night, sealBlock(night, 0, at('10:20'))));
    assert.equal(verifySeal(sealed, 0).state, 'valid');
    assert.deepEqual(sealed.problems.filter((problem) => problem.code.startsWith('seal')), []);
    for (const result of [correctReading(sealed, place(0, 0), '8.3', 'x'), leaveOut(sealed, place(0, 0), 'x'), markDoubtful(sealed, place(0, 0)), addRemark(sealed, { table: 0, row: 0 }, 'x')]) {
      assert.equal(verifySeal(readNote(made(sealed, result)), 0).state, 'valid');
    }
    assert.equal(verifySeal(readNote(applyEdits(sealed.text, formatTables(sealed.syntax))), 0).state, 'valid');
    const changed = readNote(sealed.text.replace('8.24', '8.34'));
    const broken = changed.problems.find((problem) => problem.code === 'seal-broken')!;
    assert.equal(changed.text.slice(broken.range.start, broken.range.end), '8.34');
    assert.equal(code(sealBlock(sealed, 0, at('10:20'))), 'already-sealed');
    assert.equal(code(sealBlock(changed, 0, at('10:20'))), 'seal-broken');
    assert.equal(code(sealBlock(note('time mat.DO\n20:00 8x\n'), 0, at('10:20'))), 'rows-unreadable');
    assert.equal(code(sealBlock(note('time mat.DO\n'), 0, at('10:20'))), 'nothing-to-seal');
  });
});

suite('edits: a table from the plan', () => {
  test('every slot with its heads, ready to be logged into', () => {
    const plain = readNote(`# A night\n\n\`\`\`protocol\n${baseProtocol}\`\`\`\n\nProse.\n`);
    assert.deepEqual(plannedHeads(plain.protocol!), ['mat.DO', 'mat.T', 'open.DO', 'open.T', 'room.P']);
    const text = made(plain, insertReadingsTable(plain, plain.text.indexOf('Prose.')));
    const after = readNote(text);
    assert.equal(after.tables[0]!.rows.length, 29);
    assert.deepEqual(after.tables[0]!.rows.map((row) => row.instant), after.protocol!.schedule!.slots);
    assert.deepEqual(after.problems.filter((problem) => problem.severity === 'warning' || problem.code === 'slots-missed'), []);
    assert.ok(text.endsWith('```\n\nProse.\n'));
    assert.deepEqual(blockLines(made(plain, insertReadingsTable(plain, plain.text.length, { rows: false }))), ['time  mat.DO  mat.T  open.DO  open.T  room.P']);
    assert.equal(applyEdits(text, formatTables(after.syntax)), text);
  });
  test('a run of several days gets day lines', () => {
    const long = readNote(`\`\`\`protocol\n${baseProtocol.replace('end: 2026-03-15 10:00', 'end: 2026-03-17 20:00').replace('every: 30 min', 'every: 12 h')}\`\`\`\n`);
    const after = readNote(made(long, insertReadingsTable(long, long.text.length)));
    assert.deepEqual(after.tables[0]!.rows.map((row) => row.instant), after.protocol!.schedule!.slots);
    assert.ok(!after.problems.some((problem) => problem.code === 'time-wants-date'));
  });
});
