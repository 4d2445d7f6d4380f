// Regular loggers: which of them a file is of, and what is remembered of an import.
import { deepEqual, equal } from 'node:assert/strict';
import { proposeImport } from '../../../src/edits/proposeImport.ts';
import { choicesOf, fittingLoggers, loggerOf, readLoggers } from '../../../src/editor/logging/loggers.ts';
import { note } from './smallNight.ts';

suite('loggers', () => {
  const file = 'Stamp;Oxygen (mg/l);Temp\n14/03/2026 22:00;8,26;24,8\n15/03/2026 22:30;8,02;24,8\n';

  test('a file of a known logger is read with its columns, zone and date order', () => {
    const loggers = readLoggers({ 'probe A': { columns: { 'Stamp': 'time', 'Oxygen (mg/l)': 'mat.DO' }, timeZone: 'UTC', dateOrder: 'day-month-year' }, 'broken': { columns: 3 }, 'other': { columns: { Clock: 'time' } } });
    deepEqual([...loggers.keys()], ['probe A', 'other']);
    const [found] = fittingLoggers(proposeImport(file, note)!.names, loggers);
    equal(found?.name, 'probe A');
    const proposal = proposeImport(file, note, choicesOf(found!.logger))!;
    deepEqual(proposal.heads, ['mat.DO']);
    deepEqual(proposal.asks, []);
    // The file's clock is UTC, the note's is an hour ahead.
    deepEqual(proposal.rows.map((row) => [row.time, ...row.cells]), [['2026-03-14T23:00', '8.26'], ['2026-03-15T23:30', '8.02']]);
    deepEqual(fittingLoggers(['Clock ', 'x'], loggers), []);
  });

  test('what is remembered gives the same import again', () => {
    const first = proposeImport(file, note, { dateOrder: 'day-month-year', columns: [{ from: 'Stamp', to: 'time' }, { from: 'Temp', to: 'mat.T' }] })!;
    const again = proposeImport(file, note, choicesOf(readLoggers(JSON.parse(JSON.stringify({ x: loggerOf(first) }))).get('x')!))!;
    deepEqual(again.rows, first.rows);
    deepEqual(again.heads, ['mat.T']);
  });
});
