// A readings table tells which rows came late and which planned times nobody read. Invented readings.
import { deepEqual, ok } from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import { createRenderContext } from '../../../src/render/context.ts';
import { readingsTablesHtml } from '../../../src/render/readingsTable.ts';

const noteOf = (rows: string, language = '') => readNote(`\`\`\`protocol
${language}place: {time zone: UTC}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 00:00, every: 30 min}
measure: {DO: {what: dissolved oxygen, unit: mg/L}}
\`\`\`

\`\`\`readings
time   mat.DO  open.DO
${rows}\`\`\`
`, undefined, undefined, { fileIsNote: true });

const html = (rows: string, language = ''): string => {
  const note = noteOf(rows, language);
  return readingsTablesHtml(note.syntax.blocks.findIndex((block) => block.word === 'readings'), createRenderContext(note, 'preview'));
};
/** The first cell of each row of the table's body, as text; a line across all columns whole. */
const firstCells = (text: string): string[] => [...text.slice(text.indexOf('<tbody>')).matchAll(/<tr[^>]*>(<t[hd].*?<\/t[hd]>)/gu)].map((match) => match[1]!.replace(/<[^>]+>/gu, ' ').replace(/\s+/gu, ' ').trim());

suite('render: planned times in a readings table', () => {
  test('late and early rows say so beside their time, missed times stand between the rows', () => {
    deepEqual(firstCells(html('20:30 8.2 8.3\n21:07 8.2 8.3\n21:24 8.2 8.3\n23:30 8.2 8.3\n')), [
      '20:00 not read', '20:30', '21:07 7 min late', '21:24 6 min early', '22:00, 22:30 and 23:00 not read', '23:30',
    ]);
    ok(html('20:07 8.2 8.3\n').includes('title="planned for 20:00"'));
  });
  test('in the language of the note', () => {
    deepEqual(firstCells(html('20:07 8.2 8.3\n21:00 8.2 8.3\n', 'language: de\n')), ['20:07 7 min zu spät', '20:30 nicht abgelesen', '21:00']);
  });
  test('a run in time has no marks; a row of gaps stands for itself', () => {
    deepEqual(firstCells(html('20:00 8.2 8.3\n20:31 8.2 8.3\n21:00 - -\n21:30 8.2 8.3\n')), ['20:00', '20:31', '21:00', '21:30']);
  });
});
