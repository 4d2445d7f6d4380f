// Planned times against what was read. Invented readings.
import { deepEqual, equal } from 'node:assert/strict';
import { slotEnds } from '../../../src/assist/slotEnds.ts';
import { slotRecord } from '../../../src/dataset/slotRecord.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { formatClock } from '../../../src/time/text.ts';
import { utc } from '../../../src/time/zone.ts';
import { slotWords } from '../../../src/words/slots.ts';

const noteOf = (rows: string, more = '', lineBreak = '\n') => readNote(`\`\`\`protocol
place: {time zone: UTC}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 00:00, every: 30 min}
measure: {DO: {what: dissolved oxygen, unit: mg/L}}
\`\`\`

\`\`\`readings
time   mat.DO  open.DO
${rows}\`\`\`
${more}`.replaceAll('\n', lineBreak), undefined, undefined, { fileIsNote: true });

const minutes = (rows: string, more = '') => {
  const note = noteOf(rows, more);
  const record = slotRecord(note.tables, note.protocol!);
  return {
    off: [...record.offTime].map(([row, { slot, offset }]) => `${row.timeText} ${formatClock(slot, utc)} ${offset / 60_000}`),
    missed: record.missed.map((slot) => formatClock(slot, utc)),
  };
};

suite('dataset: planned times and what was read', () => {
  test('late, early and on time: two minutes of grace, or a tenth of the interval', () => {
    deepEqual(minutes('20:00 8.2 8.3\n20:32 8.2 8.3\n21:03 8.2 8.3\n21:24 8.2 8.3\n'), { off: ['21:03 21:00 3', '21:24 21:30 -6'], missed: [] });
  });
  test('planned times without a reading, up to the last one', () => {
    deepEqual(minutes('20:30 8.2 8.3\n22:00 8.2 8.3\n').missed, ['20:00', '21:00', '21:30']);
    deepEqual(minutes('').missed, []);
  });
  test('a laid-out row is not read; one left out or doubtful is', () => {
    deepEqual(minutes('20:00 - -\n20:30 (8.2) -\n21:00 8.2? -\n21:30 - -\n').missed, ['20:00']);
  });
  test('the nearest row is the slot\'s; rows between are extra, neither late nor early', () => {
    deepEqual(minutes('20:00 8.2 8.3\n20:25 8.2 8.3\n20:37 8.2 8.3\n'), { off: ['20:25 20:30 -5'], missed: [] });
    deepEqual(minutes('20:00 8.2 8.3\n20:10 8.2 8.3\n20:30 8.2 8.3\n').off, []);
  });
  test('another table fills the slot, too', () => {
    deepEqual(minutes('20:00 8.2 8.3\n21:00 8.2 8.3\n', '\n```readings second\ntime mat.DO\n20:30 8.2\n```\n').missed, []);
  });
});

suite('assist: planned times at line ends', () => {
  test('behind the row in front, behind the heads before the first row, at the end of the line with its remark', () => {
    for (const lineBreak of ['\n', '\r\n']) {
      const note = noteOf('20:30 8.2 8.3 ; lid\n21:37 8.2 8.3\n', '', lineBreak);
      const lines = note.text.split(lineBreak);
      const found = slotEnds(note).map(({ at, offTime, missed }) => [lines.find((line) => note.text.slice(0, at).endsWith(line) && line !== ''), offTime && offTime.offset / 60_000, missed.map((slot) => formatClock(slot, utc))]);
      deepEqual(found, [['time   mat.DO  open.DO', null, ['20:00']], ['20:30 8.2 8.3 ; lid', null, ['21:00']], ['21:37 8.2 8.3', 7, []]]);
    }
  });
  test('in words', () => {
    const words = slotWords('en');
    equal(words.notRead(['02:30']), '02:30 not read');
    equal(words.notRead(['02:30', '03:00', '03:30']), '02:30, 03:00 and 03:30 not read');
    equal(words.notRead(['02:30', '03:00', '03:30', '04:00']), '02:30 to 04:00 not read (4 planned times)');
    equal(slotWords('de').notRead(['02:30', '03:00']), '02:30 und 03:00 nicht abgelesen');
  });
});
