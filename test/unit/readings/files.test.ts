import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { buildDataset } from '../../../src/dataset/buildDataset.ts';
import { decodeText, detectEncoding } from '../../../src/readings/file/decode.ts';
import { dataPath } from '../../../src/readings/file/dataPath.ts';
import { yamlText } from '../../../src/readings/file/fileKeys.ts';
import { lineList } from '../../../src/readings/file/fileRows.ts';
import { detectDecimal, detectDelimiter } from '../../../src/readings/file/layout.ts';
import { proposeColumns } from '../../../src/readings/file/propose.ts';
import { possibleOrders, readStamp } from '../../../src/readings/file/stamps.ts';
import { formatInstant } from '../../../src/time/text.ts';
import { plan, read } from './support.ts';

const bytes = (text: string, encoding: BufferEncoding = 'utf8'): Uint8Array => new Uint8Array(Buffer.from(text, encoding));
const hash = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Reads a block over one file `probe-a.csv`. */
function readFile(keys: string, content: string | Uint8Array | null | undefined, options: Parameters<typeof read>[1] = {}) {
  const files = new Map<string, Uint8Array | null>();
  if (content !== undefined) files.set('probe-a.csv', typeof content === 'string' ? bytes(content) : content);
  const result = read(`from: probe-a.csv\n${keys}`, { ...options, files });
  return {
    ...result,
    found: (result.problems.find((problem) => problem.code === 'data-file-detected')?.args['found'] ?? []) as readonly string[],
    rows: result.table.rows.map((row) => [row.instant === null ? null : formatInstant(row.instant, plan().zone).slice(0, 19), ...row.cells.map((cell) => cell.state.value)]),
  };
}
const two = 'columns:\n  Timestamp: time\n  "Oxygen (mg/l)": mat.DO\n  Temp: mat.T\n';
const csv = 'Timestamp,Oxygen (mg/l),Temp\n2026-03-14 20:00:00,8.21,24.9\n2026-03-14 20:30:00,8.24,24.9\n';

suite('readings in files', () => {
  test('a plain file: rows, what was detected, and one mend that fixes and pins it', () => {
    const result = readFile(two, csv);
    assert.deepEqual(result.wants, ['probe-a.csv']);
    assert.deepEqual(result.codes, ['data-file-detected']);
    assert.deepEqual(result.rows, [['2026-03-14T20:00:00', 8.21, 24.9], ['2026-03-14T20:30:00', 8.24, 24.9]]);
    assert.deepEqual(result.found.slice(0, 3), ['delimiter: comma', 'time zone: Europe/Amsterdam', 'decimal: point']);
    const edit = result.problems[0]!.fixes[0]!.edits[0]!;
    const mended = `${`from: probe-a.csv\n${two}`.slice(0, edit.range.start) + edit.newText}\n`;
    assert.match(edit.newText, new RegExp(`sha256: ${hash(csv)}$`, 'u'));
    const again = read(mended, { files: new Map([['probe-a.csv', bytes(csv)]]) });
    assert.deepEqual(again.codes, []);
    assert.equal(again.table.file!.state, 'loaded');
    assert.equal(again.shown(again.table.rows[0]!.cells[0]!.range), 'probe-a.csv');
    assert.equal(again.shown(again.table.columns[0]!.range), 'mat.DO');
    assert.equal(again.table.rows[1]!.line, 3);
  });
  test('not loaded, missing, changed, outside', () => {
    assert.deepEqual(readFile(two, undefined).codes, ['data-file-not-loaded']);
    assert.deepEqual(readFile(two, null).codes, ['data-file-missing']);
    const changed = readFile(`${two}sha256: ${'0'.repeat(64)}\ntime zone: UTC\ndelimiter: comma\ndecimal: point\n`, csv);
    assert.deepEqual(changed.codes, ['data-file-changed']);
    assert.equal(changed.table.file!.state, 'changed');
    assert.equal(changed.problems[0]!.fixes[0]!.edits[0]!.newText, hash(csv));
    for (const path of ['../a.csv', '/etc/a.csv', 'C:/a.csv', 'data/../../a.csv', 'https://a.example/a.csv', '~/a.csv', '%2e%2e/a.csv', 'a\u0000.csv', 'data\\a.csv', '']) {
      assert.equal(dataPath(path), null, path);
    }
    assert.equal(dataPath('./data/a b.csv'), 'data/a b.csv');
    const outside = read('from: data\\a.csv\n');
    assert.deepEqual(outside.codes, ['data-file-outside']);
    assert.equal(outside.problems[0]!.fixes[0]!.edits[0]!.newText, 'data/a.csv');
    assert.deepEqual(outside.wants, []);
  });
  test('semicolons, decimal commas, day first, heads further down, Windows letters', () => {
    const german = 'Logger 7;;\r\nSerie;12;\r\n\r\nDatum;Uhrzeit;Sauerstoff (mg/l);Temp (°C)\r\n14.03.2026;20:00;8,21;24,9\r\n14.03.2026;20:30;8,24;24,9\r\n';
    const result = readFile('columns:\n  Datum + Uhrzeit: time\n  Sauerstoff (mg/l): mat.DO\n  Temp (°C): mat.T\n', bytes(german, 'latin1'));
    assert.deepEqual(result.codes, ['data-file-detected']);
    assert.deepEqual(result.rows, [['2026-03-14T20:00:00', 8.21, 24.9], ['2026-03-14T20:30:00', 8.24, 24.9]]);
    for (const line of ['encoding: windows-1252', 'delimiter: semicolon', 'header line: 4', 'date order: day-month-year', 'decimal: comma']) assert.ok(result.found.includes(line), line);
  });
  test('UTF-16 with and without a byte order mark, UTF-8 with one', () => {
    const tabbed = csv.replace(/,/gu, '\t');
    for (const content of [bytes(`\ufeff${tabbed}`, 'utf16le'), bytes(tabbed, 'utf16le'), bytes(`\ufeff${csv}`), new Uint8Array(Buffer.from(`\ufeff${tabbed}`, 'utf16le').swap16())]) {
      assert.equal(readFile(two, content).rows[1]![1], 8.24);
    }
    assert.equal(detectEncoding(bytes('plain')), 'utf-8');
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (text) => { assert.equal(decodeText(bytes(text), 'utf-8'), Buffer.from(text).toString().replace(/^\ufeff/u, '')); }));
    fc.assert(fc.property(fc.uint8Array(), (raw) => { assert.equal(typeof decodeText(raw, detectEncoding(raw)), 'string'); }));
  });
  test('what is kept of a file does not show: other keys over the same bytes read as over bytes that were never seen', () => {
    const german = bytes('Zeit;DO;T\n2026-03-14 20:00;8,21;24,9\n2026-03-14 20:30;8,24;24,9\nno time;x;\u00fc\n');
    const keys = ['', 'delimiter: comma\n', 'delimiter: semicolon\n', 'encoding: windows-1252\n', 'encoding: utf-16le\n', 'decimal: point\n', 'header line: 0\n', ''];
    for (const key of keys) {
      const block = `columns:\n  Zeit: time\n  DO: mat.DO\n${key}`;
      const [again, anew] = [readFile(block, german), readFile(block, german.slice())];
      assert.deepEqual(again.table, anew.table);
      assert.deepEqual(again.problems, anew.problems);
    }
  });
  test('two possible orders of a date ask and read nothing; the one inside the run is offered first', () => {
    const result = readFile(two, csv.replace(/2026-03-14/gu, '04/03/2026'));
    assert.deepEqual(result.codes, ['date-order-unclear', 'data-file-detected']);
    assert.deepEqual(result.rows.map((row) => row[0]), [null, null]);
    const fixes = result.problems[0]!.fixes;
    assert.deepEqual(fixes.map((each) => each.edits[0]!.newText), ['\ndate order: day-month-year', '\ndate order: month-day-year']);
    assert.deepEqual(readFile(`${two}date order: month-day-year\n`, csv.replace(/2026-03-14/gu, '04/03/2026')).rows[0]![0], '2026-04-03T20:00:00');
    // A day beyond 12 settles it; so does a date that both orders read alike.
    assert.deepEqual(possibleOrders([readStamp('13/04/2026 10:00')!, readStamp('04/05/2026 10:00')!]), ['day-month-year']);
    assert.equal(possibleOrders([readStamp('03/03/2026 10:00')!]).length, 1);
    assert.deepEqual(possibleOrders([readStamp('26-03-15 10:00')!, readStamp('26-03-31 10:00')!]), ['year-month-day', 'day-month-year']);
  });
  test('stamps as loggers write them', () => {
    const clock = (text: string): unknown => { const stamp = readStamp(text); return stamp && [stamp.date?.parts, stamp.clock && `${stamp.clock.hour}:${stamp.clock.minute}:${stamp.clock.second}.${stamp.clock.millisecond}`, stamp.offset]; };
    assert.deepEqual(clock('2026-03-15T06:30:15.250Z'), [[2026, 3, 15], '6:30:15.250', 0]);
    assert.deepEqual(clock('2026/03/15 06:30'), [[2026, 3, 15], '6:30:0.0', null]);
    assert.deepEqual(clock('15-Mar-2026 6:30 PM'), [[15, 3, 2026], '18:30:0.0', null]);
    assert.deepEqual(clock('March 15, 2026 06:30'), [[15, 3, 2026], '6:30:0.0', null]);
    assert.deepEqual(clock('20260315 06:30:00+01:00'), [[2026, 3, 15], '6:30:0.0', 3_600_000]);
    assert.deepEqual(clock('15.03.2026, 06:30:00,5'), [[15, 3, 2026], '6:30:0.500', null]);
    for (const text of ['8.21', 'later', '', '25:00', '2026-03-15 06:30 soon', '15-Foo-2026 06:30', '13:00 pm']) assert.equal(readStamp(text), null, text);
  });
  test('lines and cells that cannot be read are kept and listed with their lines', () => {
    const result = readFile(two, `${csv}later,8.3,24.9\n2026-03-14 21:00:00,ERR,24.8\n2026-03-14 21:30:00,,NaN\n\n2026-03-14 22:00:00,"8,1",24.8\n`);
    assert.deepEqual(result.codes, ['data-file-rows', 'data-file-cells', 'data-file-detected']);
    assert.deepEqual(result.problems[0]!.args['lines'], ['4']);
    assert.deepEqual(result.problems[1]!.args['lines'], ['5', '8']);
    assert.equal(result.table.rows.length, 6);
    assert.equal(result.table.rows[2]!.timeText, 'later');
    assert.equal(result.table.rows[3]!.cells[0]!.text, 'ERR');
    assert.deepEqual(result.table.rows[4]!.cells.map((cell) => cell.state.kind), ['missing', 'missing']);
    assert.deepEqual(lineList([3, 5, 6, 7, 9]), { lines: ['3', '5-7', '9'], more: '' });
    assert.equal(lineList(Array.from({ length: 42 }, (_, index) => 2 * index)).more, 2);
  });
  test('a quoted cell over two lines does not shift the line numbers', () => {
    const result = readFile('columns:\n  Timestamp: time\n  "Oxygen (mg/l)": mat.DO\n  Note: remark\n', 'Timestamp,Oxygen (mg/l),Note\n2026-03-14 20:00,8.2,"two\nlines"\nlater,8.3,\n');
    assert.equal(result.table.rows[0]!.remark, 'two\nlines');
    assert.deepEqual(result.problems[0]!.args['lines'], ['4']);
  });
  test('heads: a wrong name with the nearest, none yet with a proposal, no time', () => {
    const wrong = readFile(two.replace('Timestamp', 'Timestmp'), csv);
    assert.ok(wrong.codes.includes('data-file-column'));
    assert.equal(wrong.problems.find((each) => each.code === 'data-file-column')!.fixes[0]!.edits[0]!.newText, 'Timestamp');
    const none = readFile('', csv);
    assert.deepEqual(none.codes, ['data-file-columns']);
    assert.equal(none.problems[0]!.fixes[0]!.edits[0]!.newText, '\ncolumns:\n  Timestamp: time\n  Oxygen (mg/l): mat.DO\n  Temp: mat.T');
    assert.ok(readFile('columns:\n  Temp: mat.T\n', csv).codes.includes('data-file-no-time'));
    assert.ok(readFile(`${two}delimeter: comma\n`, csv).codes.includes('data-file-key-unknown'));
    assert.ok(readFile(`${two}delimiter: dots\n`, csv).codes.includes('data-file-key-value'));
    assert.ok(readFile('columns: [\n', csv).codes.includes('data-file-keys'));
    assert.ok(readFile('columns:\n  Timestamp: time\n  Temp: mta.T\n', csv).codes.includes('column-unknown'));
  });
  test('another unit in the file\'s head is a warning that offers the brackets', () => {
    const content = 'Time,Temp (°F)\n2026-03-14 20:00,76.8\n';
    const result = readFile('columns:\n  Time: time\n  Temp (°F): mat.T\n', content);
    assert.ok(result.codes.includes('data-file-unit'));
    assert.equal(result.problems.find((each) => each.code === 'data-file-unit')!.fixes[0]!.edits[0]!.newText, '[degF]');
    assert.ok(!readFile('columns:\n  Time: time\n  Temp (°F): mat.T[degF]\n', content).codes.includes('data-file-unit'));
  });
  test('time zone: as written, an offset, or in the stamps; the repeated hour is listed', () => {
    assert.equal(readFile(`${two}time zone: UTC\n`, csv).rows[0]![0], '2026-03-14T21:00:00');
    assert.equal(readFile(`${two}time zone: "+02:00"\n`, csv).rows[0]![0], '2026-03-14T19:00:00');
    const stamped = readFile(two, csv.replace(/:00,/gu, ':00Z,'));
    assert.ok(!stamped.found.some((line) => line.startsWith('time zone')));
    assert.ok(readFile(`${two}time zone: Nowhere\n`, csv).codes.includes('data-file-key-value'));
    const repeated = readFile(two, csv.replace('2026-03-14 20:30:00', '2026-10-25 02:30:00'));
    assert.deepEqual(repeated.problems[0]!.args['reason'], 'repeated');
  });
  test('delimiter and decimal mark', () => {
    assert.equal(detectDelimiter('t;a;b\n20:00;7,31;24,9\n20:30;7,32;24,8\n'), 'semicolon');
    assert.equal(detectDelimiter('time\ta\n20:00\t7,31\n'), 'tab');
    assert.equal(detectDelimiter('time  a   b\n20:00 7.31 24.9\n'), 'space');
    assert.equal(detectDelimiter('nothing here\n'), 'space');
    assert.equal(detectDelimiter('nothing\n'), null);
    assert.equal(detectDecimal(['7,31', '24,9']), ',');
    assert.equal(detectDecimal(['1,009.4']), '.');
    assert.equal(detectDecimal(['1.009,4']), ',');
    assert.equal(detectDecimal(['1,009', '1,010']), 'unclear');
    assert.equal(detectDecimal(['7', '8']), null);
    assert.deepEqual(readFile('columns:\n  Timestamp: time\n  P: room.P\n', 'Timestamp;P\n2026-03-14 20:00;1,009\n').codes.slice(0, 1), ['decimal-unclear']);
  });
  test('readings of files join those of the note; many doubles are one problem', () => {
    const typed = read('time open.DO\n20:00 8.31\n').table;
    const filed = readFile(two, `${csv}2026-03-14 20:30:00,8.25,24.9\n2026-03-14 20:00:00,8.2,24.9\n`).table;
    const { dataset, problems } = buildDataset([typed, filed], plan());
    assert.deepEqual([...dataset.series.keys()], ['open.DO', 'mat.DO', 'mat.T']);
    assert.deepEqual(problems.filter((each) => each.code === 'duplicate-reading').map((each) => each.args['count']), [2]);
  });
  test('proposals', () => {
    const to = (heads: string[]): (string | null)[] => proposeColumns(heads, plan()).map((each) => each.to);
    assert.deepEqual(to(['Date', 'Time', 'DO mat (mg/L)', 'DO open (mg/L)', 'Water temp (°F)', 'Barometer (hPa)', 'Battery']), ['time', 'mat.DO', 'open.DO', 'mat.T[degF]', 'room.P', null]);
    assert.deepEqual(to(['time', 'mat.DO', 'open.T', 'Notes']), ['time', 'mat.DO', 'open.T', 'remark']);
  });
  test('a text as YAML reads back', () => {
    for (const text of ['Oxygen (mg/l)', 'a: b', 'x #y', '"quoted"', '- dash', 'true', 'Temp [°C]', 'it\'s', '', 'a\\b', '*star', '{x}']) {
      const result = readFile(`columns:\n  ${yamlText(text)}: time\n`, `${JSON.stringify(text)};b\n`);
      assert.ok(!result.codes.includes('data-file-keys'), text);
    }
  });
  test('no bytes and no keys make it throw or leave the block', () => {
    const key = fc.constantFrom('columns:\n  a: time\n  b: mat.DO\n', 'delimiter: comma\n', 'time zone: UTC\n', 'sha256: 12\n', 'date order: day-month-year\n', 'header line: 2\n', 'x: [\n', '  - a\n', 'decimal: comma\n', '"\n', 'columns: {a: time, b: mat.T}\n');
    const content = fc.oneof(fc.uint8Array({ maxLength: 60 }), fc.string({ unit: fc.constantFrom('a', 'b', ',', ';', '\n', '"', '1', '.', '/', ':', ' ', '2026-03-14 20:00'), maxLength: 60 }).map((text) => bytes(text)));
    fc.assert(fc.property(fc.array(key, { maxLength: 5 }), content, (keys, raw) => {
      const text = `from: probe-a.csv\n${keys.join('')}`;
      const { table, problems } = read(text, { files: new Map([['probe-a.csv', raw]]), at: 5 });
      for (const problem of problems) assert.ok(problem.range.start >= 5 && problem.range.end <= 5 + text.length, problem.code);
      buildDataset([table], plan());
    }), { numRuns: 300 });
  });
});
