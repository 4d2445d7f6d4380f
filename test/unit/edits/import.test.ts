import assert from 'node:assert/strict';
import { withColumn } from '../../../src/edits/importColumns.ts';
import { waysToRead } from '../../../src/edits/importWays.ts';
import { bareReference, importFile, importTable } from '../../../src/edits/importTable.ts';
import type { ImportChoices } from '../../../src/edits/importProposal.ts';
import { proposeImport } from '../../../src/edits/proposeImport.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';
import { blockLines, code, made } from './support.ts';

const bare = readNote(`# A night\n\n\`\`\`protocol\n${baseProtocol}\`\`\`\n\nProse.\n`);
const end = bare.text.indexOf('Prose.');
const bytes = (text: string): Uint8Array => new Uint8Array(Buffer.from(text));
const propose = (text: string, choices?: ImportChoices) => proposeImport(text, bare, choices)!;
/** The block that the text becomes, and what reading it says. */
function imported(text: string, choices?: ImportChoices) {
  const proposal = propose(text, choices);
  const after = made(bare, importTable(bare, proposal, end));
  const note = readNote(after);
  return { proposal, lines: blockLines(after), note, worst: note.problems.filter((problem) => (problem.severity === 'error' || problem.severity === 'warning') && problem.code !== 'no-column').map((problem) => problem.code) };
}

suite('edits: import', () => {
  test('cells of a spreadsheet: tabs, clock times, gaps', () => {
    const { proposal, lines, worst, note } = imported('Time\tDO mat (mg/L)\tDO open (mg/L)\tAir pressure (hPa)\n20:00\t8.21\t8.31\t1009.4\n20:30\t8.24\t\t1009.2\n');
    assert.deepEqual([proposal.delimiter, proposal.decimal, proposal.clockOnly], ['tab', '.', true]);
    assert.deepEqual(lines, ['time   mat.DO  open.DO  room.P', '20:00    8.21     8.31  1009.4', '20:30    8.24     -     1009.2']);
    assert.deepEqual(worst, []);
    assert.equal(note.tables[0]!.rows[1]!.instant, Date.parse('2026-03-14T20:30:00+01:00'));
  });
  test('semicolons with decimal commas, day first, another unit, remarks', () => {
    const { proposal, lines, note } = imported('Datum;Uhrzeit;DO mat;Water temp open (°F);Notes\n14.03.2026;20:00;8,21;76,8;fed; \n14.03.2026;20:30;8,24;76,7;\n');
    assert.deepEqual([proposal.delimiter, proposal.decimal, proposal.dateOrder], ['semicolon', ',', 'day-month-year']);
    assert.deepEqual(lines, ['time              mat.DO  open.T[degF]', '2026-03-14T20:00    8.21          76.8   ; fed', '2026-03-14T20:30    8.24          76.7']);
    assert.equal(note.tables[0]!.columns[1]!.unit!.symbol, 'degF');
  });
  test('what cannot be read is kept: cells in the remark, lines as comments', () => {
    const { proposal, lines, note } = imported('time,mat.DO\n2026-03-14 20:00,8.21\nlater,8.3\n2026-03-14 20:30,no data\n2026-03-14 21:00,8.2\n');
    assert.deepEqual(proposal.complaints.map((each) => [each.line, each.fate, each.message.code]), [[3, 'comment', 'line-no-time'], [4, 'remark', 'cell-no-reading']]);
    assert.deepEqual(lines, ['time              mat.DO', '2026-03-14T20:00    8.21', '# not read, line 3: later,8.3', '2026-03-14T20:30    -      ; mat.DO: no data', '2026-03-14T21:00    8.2']);
    assert.equal(note.tables[0]!.rows.length, 3);
  });
  test('dates that can be read in two ways ask; a choice settles it', () => {
    const text = 'time,mat.DO\n03/04/2026 20:00,8.21\n';
    const proposal = propose(text);
    assert.deepEqual(proposal.dateOrders, ['day-month-year', 'month-day-year']);
    assert.equal(code(importTable(bare, proposal, end)), 'date-order-unclear');
    assert.equal(imported(text, { dateOrder: 'month-day-year' }).lines[1], '2026-03-04T20:00    8.21');
    assert.equal(code(importTable(bare, propose('time;room.P\n20:00;1,009\n'), end)), 'decimal-unclear');
    assert.equal(imported('time;room.P\n20:00;1,009\n', { decimal: ',' }).lines[1], '20:00   1.009');
  });
  test('the mapping can be changed; without heads columns go by number; another zone', () => {
    const text = '2026-03-14 19:00,8.21,24.9\n2026-03-14 19:30,8.24,24.9\n';
    assert.deepEqual(propose(text).names, ['column 1', 'column 2', 'column 3']);
    assert.equal(propose(text).columns[0]!.to, 'time');
    assert.equal(code(importTable(bare, propose(text), end)), 'import-unmapped');
    const { lines } = imported(text, { timeZone: 'UTC', columns: [{ from: 'column 1', to: 'time' }, { from: 'column 2', to: 'open.DO' }, { from: 'column 3', to: null }] });
    assert.deepEqual(lines, ['time              open.DO', '2026-03-14T20:00     8.21', '2026-03-14T20:30     8.24']);
  });
  test('a pinned file: everything detected is written down, and the note then has nothing to say about it', () => {
    const german = 'Logger 7;;\nDatum;Uhrzeit;DO mat (mg/l);Temp mat (°C)\n14.03.2026;20:00;8,21;24,9\n14.03.2026;20:30;8,24;24,9\n';
    for (const text of [german, 'time,mat.DO\n2026-03-14T20:00:00Z,8\n2026-03-14T20:30:00Z,8\n', 'time\tmat.DO\n2026-03-14 20:00\t8.2\n', '2026-03-14 20:00,8.2\n2026-03-14 20:30,8.2\n']) {
      const first = proposeImport(bytes(text), bare)!;
      const proposal = first.heads.length > 0 ? first : proposeImport(bytes(text), bare, { columns: [{ from: 'column 1', to: 'time' }, { from: 'column 2', to: 'mat.DO' }] })!;
      const after = made(bare, importFile(bare, proposal, 'data/probe a.csv', bytes(text), end));
      const note = readNote(after, new Map([['data/probe a.csv', bytes(text)]]));
      assert.deepEqual(note.problems.filter((problem) => problem.code.startsWith('data-file')), [], after);
      assert.equal(note.tables[0]!.file!.state, 'loaded');
      assert.ok(note.tables[0]!.rows.every((row) => row.instant !== null));
    }
    assert.equal(code(importFile(bare, propose('time,mat.DO\n20:00,8\n'), 'a.csv', bytes(''), end)), 'time-unreadable');
    assert.equal(code(importFile(bare, propose('time,mat.DO\n2026-03-14 20:00,8\n'), '../a.csv', bytes(''), end)), 'nothing-to-import');
  });
  test('a column set anew stays in its place, and takes its target and its parts from the others', () => {
    const columns = [{ from: 'Date', to: null }, { from: 'DO', to: 'mat.DO' }, { from: 'Clock', to: null }, { from: 'T', to: 'mat.T[degF]' }, { from: 'Words', to: 'remark' }];
    const set = (from: string, to: string | null) => withColumn(columns, { from, to }).map((each) => `${each.from}=${each.to ?? ''}`).join(' ');
    assert.equal(set('T', 'open.T'), 'Date= DO=mat.DO Clock= T=open.T Words=remark');
    assert.equal(set('DO', 'mat.T'), 'Date= DO=mat.T Clock= T= Words=remark');
    assert.equal(set('T', 'remark'), 'Date= DO=mat.DO Clock= T=remark Words=remark');
    assert.equal(set('Date + Clock', 'time'), 'Date + Clock=time DO=mat.DO T=mat.T[degF] Words=remark');
    assert.equal(set('Battery', 'room.P'), 'Date= DO=mat.DO Clock= T=mat.T[degF] Words=remark Battery=room.P');
    assert.equal(withColumn([{ from: 'Date + Clock', to: 'time' }], { from: 'Clock', to: null }).map((each) => each.from).join(), 'Clock');
  });
  test('every way in which a table can be read gives another table, and none of them asks', () => {
    const ways = (text: string): string[] => waysToRead(propose(text)).map((way) => imported(text, way).lines.slice(1).join(' '));
    assert.deepEqual(ways('time;mat.DO\n03/04/2026 20:00;8,21\n'), ['2026-04-03T20:00    8.21', '2026-03-04T20:00    8.21']);
    assert.equal(ways('time;room.P\n03/04/2026 20:00;1,009\n').length, 4);
    assert.deepEqual(waysToRead(propose('time,mat.DO\n2026-03-14 20:00,8.21\n')), [{}]);
  });
  test('a bare reference asks for its columns and offers what the heads say', () => {
    const after = made(bare, bareReference(bare, 'probe.csv', end));
    const note = readNote(after, new Map([['probe.csv', bytes('time,mat.DO\n2026-03-14 20:00,8\n')]]));
    assert.match(after, /\n```readings\nfrom: probe\.csv\n```\n/u);
    assert.equal(note.problems.find((problem) => problem.code === 'data-file-columns')!.fixes.length, 1);
    assert.equal(code(bareReference(bare, '../probe.csv', end)), 'nothing-to-import');
  });
  test('no table, no plan', () => {
    assert.equal(proposeImport('hello', bare), null);
    assert.equal(proposeImport('', bare), null);
    assert.equal(proposeImport('time,mat.DO\n20:00,8\n', readNote('# x')), null);
  });
});
