// Regular loggers: which of them a file is of, and what is remembered of an import.
import { deepEqual, equal } from 'node:assert/strict';
import { proposeImport } from '../../../src/edits/proposeImport.ts';
import { choicesOf, fittingLoggers, loggerOf, readLoggers } from '../../../src/editor/logging/loggers.ts';
import { readNote } from '../../../src/experiment/readNote.ts';

/** Invented readings; they exist to try the prompt. */
const text = `# A night

\`\`\`protocol
place: {time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
  T: {what: water temperature, unit: degC}
  mood: {what: behaviour, scale: [calm, restless, surface, gasping]}
\`\`\`

\`\`\`readings
time   mat.DO  mat.T  mat.mood
20:00    8.21   24.9  calm
20:30    8.24   24.9  calm
21:00    8.25   24.9  calm
21:30    8.25   24.8  calm
\`\`\`
`;
const note = readNote(text, undefined, undefined, { fileIsNote: true });

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
