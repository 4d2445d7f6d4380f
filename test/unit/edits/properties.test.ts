import assert from 'node:assert/strict';
import fc from 'fast-check';
import { addRemark, correctReading, correctTime, leaveOut, markDoubtful } from '../../../src/edits/changeCell.ts';
import { applyEdits, type EditResult } from '../../../src/edits/edit.ts';
import { formatTables } from '../../../src/edits/formatTables.ts';
import { importTable } from '../../../src/edits/importTable.ts';
import { proposeImport } from '../../../src/edits/proposeImport.ts';
import { logEvent } from '../../../src/edits/logEvent.ts';
import { logRow } from '../../../src/edits/logRow.ts';
import { readRowInput } from '../../../src/edits/readRowInput.ts';
import { planRow } from '../../../src/edits/planRow.ts';
import { sealBlock, verifySeal } from '../../../src/edits/sealTable.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { readSyntax } from '../../../src/note/readSyntax.ts';
import { baseProtocol } from '../../../src/problems/examples.ts';
import { at, noteText } from './support.ts';

const value = fc.integer({ min: 100, max: 1400 }).map((digits) => (digits / 100).toFixed(2));
const cell = fc.oneof({ weight: 5, arbitrary: value }, fc.constant('-'), value.map((text) => `<${text}`), fc.tuple(value, value).map((pair) => pair.join('/')), value.map((text) => `${text}?`));
const words = fc.constantFrom('misread', 'probe out; again', '# odd', 'a  b', '->', '```', 'ünïcode ; x');
const step = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('log' as const), minutes: fc.nat({ max: 840 }), cells: fc.tuple(cell, cell), remark: fc.option(words) }) },
  fc.record({ kind: fc.constantFrom('correct' as const, 'leave' as const, 'doubt' as const, 'remark' as const), where: fc.nat(), column: fc.nat({ max: 1 }), value, reason: words }),
  fc.record({ kind: fc.constant('format' as const), from: fc.nat(), to: fc.nat() }),
  fc.record({ kind: fc.constant('time' as const), where: fc.nat(), minutes: fc.nat({ max: 840 }), reason: words }),
  fc.record({ kind: fc.constant('event' as const), minutes: fc.nat({ max: 840 }), reason: words }),
  fc.record({ kind: fc.constant('import' as const), clocks: fc.boolean(), comma: fc.boolean(), values: fc.array(fc.tuple(fc.nat({ max: 840 }), value), { minLength: 1, maxLength: 4 }) }),
);

/** Every value ever recorded, as `time column text`, in the order of the note: first values and corrections. */
function recorded(note: Note): string[] {
  return note.tables.flatMap((table) => table.rows.flatMap((row) => row.cells.flatMap((each, index) => [...each.earlier, each.state]
    .filter((state) => state.kind !== 'missing')
    .map((state) => `${row.instant} ${table.columns[index]!.id} ${state.text.replace(/[()?]/gu, '')}`))));
}

/** The clock of the run's zone so many minutes after its start. */
const clockAfter = (minutes: number): string => new Date(at('20:00') + (minutes + 60) * 60_000).toISOString().slice(11, 16);

suite('edits: properties', () => {
  for (const [name, lineBreak, open, prefix] of [['plain', '\n', '', ''], ['CRLF', '\r\n', '', ''], ['in a quote', '\n', '> ', '> '], ['in a list, CRLF', '\r\n', '- ', '  ']] as const) {
    test(`any sequence of log, correct, leave out, mark, remark, event, import and format keeps every recorded value (${name})`, () => {
      fc.assert(fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const block = ['```readings', 'time  mat.DO  open.DO', '20:00   8.21     8.31', '```'].map((line, index) => (index === 0 ? open : prefix) + line).join('\n');
        let text = `# A night\n\n\`\`\`protocol\n${baseProtocol}\`\`\`\n\n${block}\n\nProse {8.21 mg/L = first(mat.DO)} stays.\n`.replace(/\n/gu, lineBreak);
        const prose = text.slice(text.indexOf('Prose'));
        let kept = recorded(readNote(text));
        for (const each of steps) {
          const note = readNote(text);
          const rows = note.tables[0]!.rows.length;
          const place = { table: 0, row: 'where' in each ? each.where % rows : 0, column: 'column' in each ? each.column : 0 };
          let result: EditResult;
          let added: string[] = [];
          switch (each.kind) {
            case 'log': {
              const time = at('20:00') + each.minutes * 60_000;
              result = logRow(note, { time, cells: each.cells, remark: each.remark, table: 0 });
              added = each.cells.flatMap((written, index) => (written === '-' ? [] : [`${time} ${note.tables[0]!.columns[index]!.id} ${written.replace('?', '')}`]));
              break;
            }
            case 'correct': result = correctReading(note, place, each.value, each.reason); added = [each.value]; break;
            case 'leave': result = leaveOut(note, place, each.reason); break;
            case 'doubt': result = markDoubtful(note, place, each.reason); break;
            case 'remark': result = addRemark(note, place, each.reason); break;
            case 'event': result = logEvent(note, { at: at('20:00') + each.minutes * 60_000, what: each.reason }); break;
            case 'time': {
              // The time of the row changes, and with it the time of each of its records: the values stay.
              result = correctTime(note, place, clockAfter(each.minutes), each.reason);
              const values = (all: readonly string[]): string[] => all.map((record) => record.replace(/^\S+ /u, '')).sort();
              if (result.ok) {
                assert.deepEqual(values(recorded(readNote(applyEdits(text, result.edits)))), values(kept), text);
                kept = recorded(readNote(applyEdits(text, result.edits)));
              }
              break;
            }
            case 'import': {
              const cells = each.values.map(([minutes, number]) => [each.clocks ? clockAfter(minutes) : new Date(at('20:00') + minutes * 60_000).toISOString(), each.comma ? number.replace('.', ',') : number]);
              const csv = `time;mat.T\n${cells.map((row) => row.join(';')).join('\n')}\n`;
              result = importTable(note, proposeImport(csv, note, { decimal: each.comma ? ',' : '.' })!, note.text.indexOf('Prose'));
              added = each.values.map(([minutes, number]) => (each.clocks ? `mat.T ${number}` : `${at('20:00') + minutes * 60_000} mat.T ${number}`));
              break;
            }
            default: {
              const [start, end] = [each.from % text.length, each.to % text.length].sort((a, b) => a - b) as [number, number];
              result = { ok: true, edits: formatTables(note.syntax, each.from % 3 === 0 ? null : { start, end }), shows: { start: 0, end: 0 } };
            }
          }
          if (!result.ok) continue;
          text = applyEdits(text, result.edits);
          const after = readNote(text);
          const now = recorded(after);
          for (const record of kept) assert.ok(now.includes(record), `${record} lost by ${each.kind}\n${text}`);
          for (const record of added) assert.ok(now.some((one) => one.endsWith(record)), `${record} not there after ${each.kind}\n${text}`);
          assert.ok(now.length >= kept.length);
          assert.ok(text.endsWith(prose), each.kind);
          assert.equal(after.syntax.blocks.filter((block) => !block.closed).length, 0);
          if (lineBreak === '\r\n') assert.ok(!/[^\r]\n/u.test(text), each.kind);
          kept = now;
        }
        const formatted = applyEdits(text, formatTables(readSyntax(text)));
        assert.equal(applyEdits(formatted, formatTables(readSyntax(formatted))), formatted);
        assert.deepEqual(recorded(readNote(formatted)), kept);
      }), { numRuns: 20 });
    });
  }
  test('no cell of an imported file is dropped in silence: it is a reading, or stands in a remark or a comment', () => {
    const bare = readNote(`\`\`\`protocol\n${baseProtocol}\`\`\`\n\nProse.\n`);
    const time = fc.oneof({ weight: 4, arbitrary: fc.nat({ max: 800 }).map((minutes) => new Date(at('20:00') + minutes * 60_000).toISOString()) }, fc.constantFrom('later', '', '2026-10-25 02:30', '2026-03-14', '25:61'));
    const odd = fc.constantFrom('', 'ERR', '8.2 mg/L', '1,009.4', '=1+1', '8..2', '7.3?', '<0.05', 'a;b', '#5', '03/04/2026');
    const row = fc.tuple(time, fc.oneof({ weight: 3, arbitrary: value }, odd), fc.oneof(value, odd), fc.constantFrom('', 'fed', 'a  note'), fc.constantFrom('', '', '', 'too much'));
    fc.assert(fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
      const csv = `Time\tDO mat\tDO open\tNotes\n${rows.map((each) => each.join('\t')).join('\n')}\n`;
      const proposal = proposeImport(csv, bare, { dateOrder: 'year-month-day', decimal: '.' });
      if (!proposal) return;
      const result = importTable(bare, proposal, bare.text.length);
      if (!result.ok) return;
      const after = applyEdits(bare.text, result.edits);
      const lost = rows.flatMap((each) => each.slice(1).map((cell) => cell.replace(/\s+/gu, ' ').trim())).filter((cell) => cell !== '' && !after.includes(cell));
      assert.deepEqual(lost, [], after);
      const said = new Set(proposal.complaints.map((each) => each.line));
      proposal.rows.forEach((each) => { if (each.time === null) assert.ok(said.has(each.line), csv); });
      // What the note reads is what the proposal showed.
      const table = readNote(after).tables[0]!;
      assert.deepEqual(table.rows.map((each) => each.cells.map((cell) => cell.text)), proposal.rows.filter((each) => each.time !== null).map((each) => each.cells));
    }), { numRuns: 150 });
  });
  test('formatting a range aligns whole tables and leaves the others; formatting the whole after it, or twice, gives the same', () => {
    const line = fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(line, line, fc.nat(), fc.nat(), fc.boolean(), (one, two, a, b, windows) => {
      const tableOf = (head: string, rows: readonly (readonly [string, string])[]): string => `\`\`\`readings\n${head}\n${rows.map((row, index) => `+${index * 30} ${row.join('   ')}${index % 2 ? ' ; x' : ''}`).join('\n')}\n\`\`\`\n`;
      const text = `\`\`\`protocol\n${baseProtocol}\`\`\`\n\n${tableOf('time mat.DO open.DO', one)}\nBetween.\n\n${tableOf('time mat.T open.T', two)}`.replaceAll('\n', windows ? '\r\n' : '\n');
      const [start, end] = [a % text.length, b % text.length].sort((x, y) => x - y) as [number, number];
      const { blocks } = readSyntax(text);
      const edits = formatTables({ blocks }, { start, end });
      for (const edit of edits) {
        const block = blocks.find((each) => each.range.start <= edit.range.start && edit.range.end <= each.range.end)!;
        assert.ok(block.range.start <= end && start <= block.range.end, 'an edit outside of what was chosen');
      }
      const part = applyEdits(text, edits);
      const whole = applyEdits(text, formatTables({ blocks }));
      assert.equal(applyEdits(part, formatTables(readSyntax(part))), whole);
      assert.deepEqual(formatTables(readSyntax(whole)), []);
      assert.equal(part.replace(/[ ]+/gu, ' '), text.replace(/[ ]+/gu, ' '));
      assert.deepEqual(recorded(readNote(whole)), recorded(readNote(text)));
    }), { numRuns: 60 });
  });
  test('a seal stays valid through anything but a changed first value', () => {
    fc.assert(fc.property(fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 6 }), fc.array(fc.tuple(fc.nat(), fc.nat({ max: 1 }), fc.constantFrom('correct', 'leave', 'doubt', 'remark', 'format'), value, words), { maxLength: 6 }), (values, steps) => {
      const rows = values.map(([a, b], index) => `+${index * 30} ${a} ${b}`).join('\n');
      const plain = readNote(noteText(`time mat.DO open.DO\n${rows}\n`));
      const seal = sealBlock(plain, 0, at('20:00'));
      assert.ok(seal.ok);
      let text = applyEdits(plain.text, seal.edits);
      for (const [where, column, kind, number, reason] of steps) {
        const note = readNote(text);
        const place = { table: 0, row: where % values.length, column };
        const result = kind === 'correct' ? correctReading(note, place, number, reason) : kind === 'leave' ? leaveOut(note, place, reason)
          : kind === 'doubt' ? markDoubtful(note, place, reason) : kind === 'remark' ? addRemark(note, place, reason)
            : { ok: true as const, edits: formatTables(note.syntax), shows: { start: 0, end: 0 } };
        if (result.ok) text = applyEdits(text, result.edits);
      }
      assert.equal(verifySeal(readNote(text), 0).state, 'valid', text);
    }), { numRuns: 40 });
  });
  test('whatever is typed at the prompt never throws and never invents a row', () => {
    const night = readNote(noteText('time  mat.DO  open.DO\n20:00   8.21     8.31\n'));
    const plan = planRow(night, at('20:30'))!;
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), fc.array(fc.oneof(cell, words, fc.constantFrom(' ', ';', 'now', '20:40', '+30', '7,31', '1,009')), { maxLength: 6 }).map((parts) => parts.join(' '))), (typed) => {
      const input = readRowInput(typed, night, plan);
      assert.equal(input.cells.length, 2);
      if (!input.row) return;
      assert.equal(input.row.length, 2);
      const result = logRow(night, { time: input.time, cells: input.row, remark: input.remark, table: plan.table });
      if (result.ok) assert.equal(readNote(applyEdits(night.text, result.edits)).tables[0]!.rows.length, 2);
    }), { numRuns: 300 });
  });
  test('any text at all can be looked at for an import and formatted', () => {
    const bare = readNote(`\`\`\`protocol\n${baseProtocol}\`\`\`\n`);
    const letters = fc.string({ unit: fc.constantFrom('t', 'time', 'mat.DO', ',', ';', '\t', '\n', '"', '8.21', '8,2', '20:00', '2026-03-14 20:00', '03/04/2026', ' ', '-', '#', '<'), maxLength: 60 });
    fc.assert(fc.property(fc.oneof(letters, fc.string({ unit: 'grapheme' })), (text) => {
      const proposal = proposeImport(text, bare);
      if (proposal) importTable(bare, proposal, bare.text.length);
      const note = noteText(`${text.replace(/`|~/gu, '')}\n`);
      const formatted = applyEdits(note, formatTables(readSyntax(note)));
      assert.equal(formatted.replace(/\s/gu, ''), note.replace(/\s/gu, ''));
    }), { numRuns: 200 });
  });
});
