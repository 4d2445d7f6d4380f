// Rows on their way: written once, found again by their heads, kept when a table cannot take them.
import { deepEqual, equal, ok } from 'node:assert/strict';
import * as fc from 'fast-check';
import { applyEdits } from '../../../src/edits/edit.ts';
import { brokenTable, canBeMended, pendingRow, pendingText, readPending, writePending, type PendingRow } from '../../../src/edits/pendingRow.ts';
import { planRow } from '../../../src/edits/planRow.ts';
import { readRowInput } from '../../../src/edits/readRowInput.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';

/** Invented readings. */
const text = `\`\`\`protocol
place: {time zone: UTC}
tanks:
  a: {role: treatment}
  b: {role: control}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 08:00, every: 30 min}
measure: {DO: {what: dissolved oxygen, unit: mg/L}}
\`\`\`

\`\`\`readings
time   a.DO  b.DO
20:00  8.21  8.31
\`\`\`
`;
const read = (from: string): Note => readNote(from, undefined, undefined, { fileIsNote: true });
const half = Date.parse('2026-03-14T20:30:00Z');
const rowOf = (typed: string, now = half): PendingRow => { const note = read(text); const plan = planRow(note, now)!; return pendingRow(readRowInput(typed, note, plan), plan, typed, 'x1')!; };
const write = (from: string, row: PendingRow): string => { const result = writePending(read(from), row); ok(result.ok, JSON.stringify(result)); return applyEdits(from, result.edits); };

suite('pending rows', () => {
  test('writing twice is writing once, also after a correction, a mark and a formatting', () => {
    const once = write(text, rowOf('8.20 8.30 ; lid'));
    ok(once.includes('20:30  8.20  8.30   ; lid'));
    equal(write(once, rowOf('8.20 8.30 ; lid')), once);
    for (const changed of [once.replace('8.20  8.30', '8.20->8.22  8.30'), once.replace('8.20  8.30', '(8.20)  8.30'), once.replace('8.20  8.30', '8.20?    8.30')]) equal(write(changed, rowOf('8.20 8.30')), changed);
  });

  test('other values at the same time are refused, and never written over', () => {
    const result = writePending(read(write(text, rowOf('8.20 8.30'))), rowOf('8.10 8.30'));
    ok(!result.ok && result.message.code === 'already-read' && !canBeMended(result.message));
  });

  test('columns that changed places are found by their heads; one that is gone is said', () => {
    ok(write(text.replace('a.DO  b.DO\n20:00  8.21  8.31', 'b.DO  a.DO\n20:00  8.31  8.21'), rowOf('8.20 8.30')).includes('20:30  8.30  8.20'));
    const result = writePending(read(text.replace('a.DO  b.DO\n20:00  8.21  8.31', 'a.DO\n20:00  8.21')), rowOf('8.20 8.30'));
    ok(!result.ok && result.message.code === 'column-gone' && canBeMended(result.message));
  });

  test('a table that was broken by hand takes nothing, and nothing is logged past it', () => {
    for (const broken of [text.replace('a.DO  b.DO', 'a.D0  b.DO'), text.replace('8.31\n```', '8.31\n')]) {
      ok(brokenTable(read(broken)), broken);
      const result = writePending(read(broken), rowOf('8.20 8.30'));
      ok(!result.ok && result.message.code === 'table-broken');
    }
    equal(brokenTable(read(text)), null);
  });

  test('a row kept as typed is read at the moment of typing', () => {
    const raw: PendingRow = { id: 'x', time: half + 20_000, values: [], remark: null, typed: '8.20 8.30 ; lid' };
    ok(write(text, raw).includes('20:30  8.20  8.30   ; lid'));
    ok(write(text, { ...raw, typed: '20:17 8.20 8.30' }).includes('20:17  8.20  8.30'));
  });

  test('a journal entry round trips; a torn or foreign one is no row, at any length', () => {
    const row = rowOf('8.20 8.30 ; lid');
    const entry = pendingText(row);
    deepEqual(readPending(entry), row);
    for (let length = 0; length < entry.length - 1; length += 1) equal(readPending(entry.slice(0, length)), null);
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (anything) => { readPending(anything); }));
  });
});
