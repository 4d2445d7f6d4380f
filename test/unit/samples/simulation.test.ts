// The samples' invented readings are what the seeded simulation gives, but for the slips of the pen that a note should show.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';

const samples = path.resolve(import.meta.dirname, '../../../samples');
// A plain script without types, kept beside the samples so that a reader of the samples finds it.
const simulation = await import(path.join(samples, 'simulation.mjs')) as { overnightOxygen(): string[]; heaterFailure(): string[]; nightAirStone(): string[] };

/** Cells that the note's author changed by hand, by row and head. */
const slips: Record<string, Record<string, string>> = {
  'overnight-oxygen': {
    '23:00 clear.DO': '8.01->8.10', '02:30 clear.DO': '-', '04:00 duckweed.DO': '(7.02)', '04:30 clear.DO': '7.93?',
  },
  'heater-failure': {},
  'naechtlicher-ausstroemer': { '01:00 ruhig1.DO': '6.64?', '03:00 ruhig2.DO': '6.13->6.31' },
};

const cells = (lines: string[]): string[][] => lines.map((line) => line.split(';')[0]!.trim().split(/\s+/));

suite('samples', () => {
  for (const [name, made] of [['overnight-oxygen', simulation.overnightOxygen()], ['heater-failure', simulation.heaterFailure()], ['naechtlicher-ausstroemer', simulation.nightAirStone()]] as const) {
    test(`${name}: the table is the simulation's, but for the slips listed here`, () => {
      const note = readFileSync(path.join(samples, `${name}.tank.md`), 'utf8');
      assert.match(note, /readings in this note are invented|Messwerte dieser Notiz sind erfunden/);
      const table = cells(/```readings\n([\s\S]*?)\n```/.exec(note)![1]!.split('\n'));
      const expected = cells(made);
      assert.equal(table.length, expected.length);
      let changed = 0;
      table.forEach((row, index) => row.forEach((cell, column) => {
        const slip = index === 0 ? undefined : slips[name]![`${row[0]} ${table[0]![column]}`];
        if (slip !== undefined) changed += 1;
        assert.equal(cell, slip ?? expected[index]![column], `${row[0]} ${table[0]![column]}`);
      }));
      assert.equal(changed, Object.keys(slips[name]!).length);
    });
  }
});
