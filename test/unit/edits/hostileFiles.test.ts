// Logger files as they come: each gives the right rows, or says what is wrong with which line. All data are invented.
import assert from 'node:assert/strict';
import { importFile, importTable } from '../../../src/edits/importTable.ts';
import type { ImportChoices } from '../../../src/edits/importProposal.ts';
import { isSure, proposeImport } from '../../../src/edits/proposeImport.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';
import type { ReadingRow } from '../../../src/readings/types.ts';
import { code, made } from './support.ts';

const bare = readNote(`# A night\n\n\`\`\`protocol\n${baseProtocol}\`\`\`\n\nProse.\n`);
const end = bare.text.indexOf('Prose.');
const bytes = (text: string, encoding: BufferEncoding = 'utf8'): Uint8Array => new Uint8Array(Buffer.from(text, encoding));

/** What becomes of the file: its rows as the note writes them, what is said of its lines, and the same file pinned. */
function look(source: string | Uint8Array, choices: ImportChoices = {}) {
  const proposal = proposeImport(source, bare, choices)!;
  const content = typeof source === 'string' ? bytes(source) : source;
  const after = proposal.asks.length === 0 ? made(bare, importTable(bare, proposal, end)) : '';
  const pinned = proposal.asks.length === 0 && !proposal.clockOnly ? made(bare, importFile(bare, proposal, 'probe.csv', content, end)) : null;
  const [table] = readNote(after).tables;
  const filed = pinned === null ? null : readNote(pinned, new Map([['probe.csv', content]]));
  const values = (rows: readonly ReadingRow[] | undefined): unknown[] => (rows ?? []).filter((row) => row.instant !== null)
    .map((row) => [row.instant, ...row.cells.map((cell) => cell.state.value)]);
  return {
    proposal, after, filed,
    rows: proposal.rows.filter((row) => row.time !== null).map((row) => [row.time, ...row.cells].join(' ')),
    said: proposal.complaints.map((each) => `${each.line} ${each.message.code}`),
    tableValues: values(table?.rows), fileValues: values(filed?.tables[0]?.rows),
    fileLines: (filed?.problems ?? []).filter((each) => each.code.startsWith('data-file-')).map((each) => `${each.code} ${String(each.args['reason'] ?? each.args['head'] ?? '')} ${(each.args['lines'] as string[] | undefined)?.join() ?? ''}`.trim()),
  };
}
/** The table and the pinned file say the same values at the same times. */
function sameBothWays(found: ReturnType<typeof look>): void {
  assert.deepEqual(found.fileValues, found.tableValues);
}
const two = ['2026-03-14T20:00 8.21 24.9', '2026-03-14T20:30 8.24 24.8'];
const csv = 'Time,DO mat,T mat\n2026-03-14 20:00,8.21,24.9\n2026-03-14 20:30,8.24,24.8\n';

suite('edits: logger files of hostile shapes', () => {
  test('byte order marks, UTF-16 both ways, Windows letters, line breaks of three kinds and mixed', () => {
    const tabbed = csv.replaceAll(',', '\t');
    const swapped = new Uint8Array(Buffer.from(`\ufeff${tabbed}`, 'utf16le').swap16());
    for (const source of [bytes(`\ufeff${csv}`), `\ufeff${csv}`, bytes(`\ufeff${csv}`, 'utf16le'), bytes(csv, 'utf16le'), swapped, bytes(csv.replaceAll('\n', '\r\n')), bytes(csv.replaceAll('\n', '\r')), bytes(csv.replace('\n', '\r\n'))]) {
      const found = look(source);
      assert.deepEqual([found.rows, found.said], [two, []]);
      sameBothWays(found);
    }
    const latin = look(bytes('Zeit;DO mat;Temp mat (°C)\n14.03.2026 20:00;8,21;24,9\n', 'latin1'));
    assert.equal(latin.proposal.encoding, 'windows-1252');
    assert.deepEqual(latin.rows, ['2026-03-14T20:00 8.21 24.9']);
    sameBothWays(latin);
  });
  test('quoted cells with delimiters and line breaks; a quote mark that nothing closes', () => {
    const quoted = look('Time,DO mat,Notes\n2026-03-14 20:00,8.21,"fed, then\nleft"\nlater,8.3,x\n');
    assert.deepEqual([quoted.rows, quoted.said], [['2026-03-14T20:00 8.21'], ['4 line-no-time']]);
    assert.match(quoted.after, /; fed, then left\n# not read, line 4: later,8\.3,x\n/u);
    const open = look('Time,DO mat,Notes\n2026-03-14 20:00,8.21,"fed\n2026-03-14 20:30,8.24,"a, b"\n2026-03-14 21:00,"8.25,\n');
    assert.deepEqual(open.rows, ['2026-03-14T20:00 8.21', '2026-03-14T20:30 8.24', '2026-03-14T21:00 -']);
    assert.deepEqual(open.said, ['4 cell-no-reading']);
    sameBothWays(open);
  });
  test('heads behind a preamble; another line can be said; the lines above are counted', () => {
    const preamble = `Logger,7\nserial: 12\nsep=,\n\n${csv}`;
    const found = look(preamble);
    assert.deepEqual([found.proposal.headerLine, found.proposal.linesAbove, found.rows], [5, 3, two]);
    assert.ok(!isSure(found.proposal));
    sameBothWays(found);
    assert.equal(proposeImport(preamble, bare, { headerLine: 0 })!.headerLine, 0);
    assert.deepEqual(found.proposal.firstLines.map((each) => each.line).slice(0, 4), [1, 2, 3, 5]);
  });
  test('units in the heads and in a line of their own', () => {
    const heads = look('Time,DO mat (mg/L),Water temp mat (°F)\n2026-03-14 20:00,8.21,76.8\n');
    assert.deepEqual(heads.proposal.heads, ['mat.DO', 'mat.T[degF]']);
    const below = look('Time,DO mat,Water temp mat\n,mg/L,°F\n2026-03-14 20:00,8.21,76.8\n');
    assert.deepEqual([below.proposal.heads, below.rows, below.said], [['mat.DO', 'mat.T[degF]'], ['2026-03-14T20:00 8.21 76.8'], []]);
    sameBothWays(below);
    assert.deepEqual(below.fileLines, []);
    const wrong = made(bare, importFile(bare, proposeImport('Time,DO mat,Water temp mat\n2026-03-14 20:00,8.21,24.8\n', bare)!, 'probe.csv', bytes(''), end));
    const content = bytes('Time,DO mat,Water temp mat\n[],[mg/L],[°F]\n2026-03-14 20:00,8.21,76.8\n');
    assert.ok(readNote(wrong, new Map([['probe.csv', content]])).problems.some((each) => each.code === 'data-file-unit' && each.args['printed'] === 'degF'));
  });
  test('values in another unit than the column\'s, or beyond what can be, are doubted', () => {
    const doubts = (text: string): unknown[] => proposeImport(text, bare)!.doubts.map((each) => [each.column, each.message.code, each.message.args['perhaps'] ?? each.message.args['text']]);
    assert.deepEqual(doubts('Time,DO mat,T mat\n2026-03-14 20:00,8.21,76.8\n2026-03-14 20:30,8.2,76.6\n'), [[1, 'unit-slip', '°F']]);
    assert.deepEqual(doubts('Time,DO mat\n2026-03-14 20:00,8.21\n2026-03-14 20:30,-5\n'), [[0, 'out-of-range', '-5']]);
    assert.deepEqual(doubts(csv), []);
    assert.ok(isSure(proposeImport(csv, bare)!));
    assert.ok(!isSure(proposeImport(csv.replace('24.8', '76.8'), bare)!));
  });
  test('AM and PM, with dots and without a space; midnight and noon', () => {
    const found = look('Time,DO mat\n2026-03-14 8:00 PM,8.21\n2026-03-14 8:30:15PM,8.2\n2026-03-15 12:00 a.m.,7.5\n2026-03-15 12:30 p.m.,8.0\n2026-03-15 13:30 PM,8.1\n');
    assert.deepEqual(found.rows, ['2026-03-14T20:00 8.21', '2026-03-14T20:30:15 8.2', '2026-03-15T00:00 7.5', '2026-03-15T12:30 8.0']);
    assert.deepEqual(found.said, ['6 line-no-time']);
    sameBothWays(found);
  });
  test('the hour that a clock change repeats or skips is named by line; an offset settles it', () => {
    const autumn = 'Time,DO mat\n2026-10-25 01:30,8.2\n2026-10-25 02:30,8.1\n2026-10-25 02:30,8.0\n2026-10-25 03:30,7.9\n';
    const found = look(autumn);
    assert.deepEqual(found.said, ['3 line-repeated', '4 line-repeated']);
    assert.deepEqual(found.fileLines, ['data-file-rows repeated 3-4']);
    assert.match(found.after, /\n# not read, line 3: 2026-10-25 02:30,8\.1\n/u);
    sameBothWays(found);
    const settled = look('Time,DO mat\n2026-10-25 01:30,8.2\n2026-10-25 02:30,8.0\n', { timeZone: '+01:00' });
    assert.deepEqual([settled.rows, settled.said], [['2026-10-25T02:30+02:00 8.2', '2026-10-25T02:30+01:00 8.0'], []]);
    sameBothWays(settled);
    assert.deepEqual(look('Time,DO mat\n2026-03-29 02:30,8.2\n2026-03-29 03:30,8.2\n').said, ['2 line-skipped']);
  });
  test('times that stand twice, and readings that the note has', () => {
    const found = look(`${csv}2026-03-14 20:30,8.25,24.8\n`);
    assert.deepEqual(found.said, ['4 time-twice']);
    assert.equal(found.rows.length, 3);
    assert.ok(readNote(found.after).problems.some((each) => each.code === 'duplicate-reading'));
    const night = readNote(found.after.replace(/\n2026-03-14T20:30 +8\.25.*\n/u, '\n'));
    assert.deepEqual(proposeImport(csv, night)!.complaints.map((each) => `${each.line} ${each.message.code}`), ['2 read-already', '3 read-already']);
    // Clock times of the next day are no doubles.
    assert.deepEqual(look('time,mat.DO\n20:00,8.2\n08:00,7.9\n20:00,8.2\n').said, []);
  });
  test('thousands marks are never guessed at', () => {
    const point = look('Time;room.P\n2026-03-14 20:00;1,009.4\n2026-03-14 20:30;1009.2\n');
    assert.deepEqual([point.rows, point.said], [['2026-03-14T20:00 -', '2026-03-14T20:30 1009.2'], ['2 cell-no-reading']]);
    const comma = look('Time;room.P\n2026-03-14 20:00;1.009,4\n2026-03-14 20:30;1009,2\n2026-03-14 21:00;1 009,2\n');
    assert.deepEqual([comma.rows, comma.said], [['2026-03-14T20:00 -', '2026-03-14T20:30 1009.2', '2026-03-14T21:00 -'], ['2 cell-no-reading', '4 cell-no-reading']]);
    for (const found of [point, comma]) sameBothWays(found);
    assert.deepEqual(proposeImport('Time;room.P\n2026-03-14 20:00;1,009\n', bare)!.asks.map((each) => each.code), ['decimal-unclear']);
  });
  test('empty cells, words for nothing, delimiters at the end', () => {
    const found = look('Time,DO mat,T mat,\n2026-03-14 20:00,,NaN,\n2026-03-14 20:30,--,24.8,\n2026-03-14 21:00,n/a,#N/A,,,\n,,,\n');
    assert.deepEqual([found.rows, found.said], [['2026-03-14T20:00 - -', '2026-03-14T20:30 - 24.8', '2026-03-14T21:00 - -'], []]);
    sameBothWays(found);
  });
  test('too many cells are not read into the wrong columns; too few are said', () => {
    const found = look('Time,DO mat,T mat\n2026-03-14 20:00,8,21,24,9\n2026-03-14 20:30,8.24,24.8\n2026-03-14 21:00,8.2\n');
    assert.deepEqual([found.rows, found.said], [['2026-03-14T20:30 8.24 24.8', '2026-03-14T21:00 8.2 -'], ['2 line-too-wide', '4 line-too-short']]);
    assert.match(found.after, /\n# not read, line 2: 2026-03-14 20:00,8,21,24,9\n/u);
    assert.deepEqual(found.fileLines, ['data-file-rows width 2']);
    sameBothWays(found);
  });
  test('two columns of one name, and one without, go by number', () => {
    const found = look('Time,DO,DO,\n2026-03-14 20:00,8.21,8.31,7\n', { columns: [{ from: 'Time', to: 'time' }, { from: 'DO', to: 'mat.DO' }, { from: 'column 3', to: 'open.DO' }] });
    assert.deepEqual(found.proposal.names, ['Time', 'DO', 'column 3']);
    assert.deepEqual(found.said, ['2 line-too-wide']);
    const named = look('Time,DO,DO,Battery\n2026-03-14 20:00,8.21,8.31,7\n', { columns: [{ from: 'Time', to: 'time' }, { from: 'DO', to: 'mat.DO' }, { from: 'column 3', to: 'open.DO' }] });
    assert.deepEqual(named.rows, ['2026-03-14T20:00 8.21 8.31']);
    sameBothWays(named);
  });
  test('date and clock in two columns of any name', () => {
    const found = look('Day;Hour;DO mat\n14.03.2026;20:00;8,21\n14.03.2026;20:30;8,24\n');
    assert.deepEqual(found.rows, ['2026-03-14T20:00 8.21', '2026-03-14T20:30 8.24']);
    assert.equal(found.proposal.columns[0]!.from, 'Day + Hour');
    sameBothWays(found);
  });
  test('columns set apart by spaces: a date and its clock under one head, or under two', () => {
    const one = look('Time        DOmat  Tmat\n2026-03-14 20:00   8.21  24.9\n2026-03-14 20:30   8.24  24.8\n', { columns: [{ from: 'Time', to: 'time' }, { from: 'DOmat', to: 'mat.DO' }, { from: 'Tmat', to: 'mat.T' }] });
    assert.deepEqual([one.rows, one.said], [two, []]);
    sameBothWays(one);
    const each = look('Date Clock mat.DO mat.T\n2026-03-14 20:00 8.21 24.9\n2026-03-14 20:30 8.24 24.8\n');
    assert.deepEqual([each.rows, each.said], [two, []]);
    sameBothWays(each);
  });
  test('text cells that a spreadsheet would compute stay text; a guarded number is a number', () => {
    const found = look('Time,DO mat,Notes\n2026-03-14 20:00,=1+1,"=HYPERLINK(""http://x"")"\n2026-03-14 20:30,\'-0.3,@x\n2026-03-14 21:00,+8.2,-\n2026-03-14 21:30,03/04/2026,\n');
    assert.deepEqual(found.rows, ['2026-03-14T20:00 -', '2026-03-14T20:30 -0.3', '2026-03-14T21:00 +8.2', '2026-03-14T21:30 -']);
    assert.deepEqual(found.said, ['2 cell-no-reading', '5 cell-no-reading']);
    assert.match(found.after, /; =HYPERLINK\("http:\/\/x"\); mat\.DO: =1\+1\n/u);
    sameBothWays(found);
  });
  test('text that looks like the note\'s own language stays text', () => {
    const found = look('Time,DO mat,Notes\n2026-03-14 20:00,8.21,"```\n# sealed 2026-03-14T20:00+01:00 sha256:00"\n# 2026-03-16,x,y\n```,,\n');
    assert.equal(readNote(found.after).syntax.blocks.filter((block) => block.word === 'readings').length, 1);
    assert.deepEqual(found.rows, ['2026-03-14T20:00 8.21']);
    assert.equal(readNote(found.after).tables[0]!.sealed, null);
    assert.deepEqual(found.said, ['4 line-no-time', '5 line-no-time']);
  });
  test('a hundred thousand rows and more', () => {
    const start = Date.parse('2026-03-14T19:00:00Z');
    const rows = Array.from({ length: 150_000 }, (_, index) => `${new Date(start + index * 1000).toISOString()},${(8 + Math.sin(index / 1e4)).toFixed(2)}`);
    rows[99_999] = 'broken,line';
    const proposal = proposeImport(bytes(`Time,DO mat\n${rows.join('\n')}\n`), bare)!;
    assert.equal(proposal.rows.length, 150_000);
    assert.deepEqual(proposal.complaints.map((each) => `${each.line} ${each.message.code}`), ['100001 line-no-time']);
    const result = importTable(bare, proposal, end);
    assert.ok(result.ok && result.edits[0]!.newText.split('\n').length > 150_000);
  }).timeout(60_000);
  test('a place inside other code is no place for a table', () => {
    const note = readNote(`# A night\n\n\`\`\`protocol\n${baseProtocol}\`\`\`\n\n\`\`\`text\nfiles:\n\n\`\`\`\n\nProse.\n`);
    const proposal = proposeImport(csv, note)!;
    const after = made(note, importTable(note, proposal, note.text.indexOf('files:') + 7));
    assert.match(after, /files:\n\n```\n\nProse\.\n\n```readings\n/u);
    const open = readNote(`\`\`\`protocol\n${baseProtocol}\`\`\`\n\n\`\`\`\`text\n`);
    assert.equal(code(importTable(open, proposal, open.text.length)), 'no-place');
  });
  test('a table without dates never moves the readings of another', () => {
    const plan = baseProtocol.replace(/end: .*\n/u, 'end: 2026-03-17 10:00\n');
    const late = readNote(`\`\`\`protocol\n${plan}\`\`\`\n\n\`\`\`readings\ntime  mat.DO\n# 2026-03-16\n20:00  8.2\n\`\`\`\n\nBetween.\n\n\`\`\`readings\ntime  open.DO\n20:30  8.3\n\`\`\`\n`);
    const before = late.tables.map((table) => table.rows.map((row) => row.instant));
    const after = readNote(made(late, importTable(late, proposeImport('time,mat.T\n2026-03-14T20:00,24.9\n', late)!, late.text.indexOf('Between.'))));
    const instants = after.tables.flatMap((table) => table.rows.map((row) => row.instant));
    for (const instant of before.flat()) assert.ok(instants.includes(instant), after.text);
  });
});
