// Generated methods and results: whole paragraphs of small notes against texts that were read and approved,
// slips of grammar by pattern, and every figure worked out again from its formula.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { machineValue } from '../../../src/formula/show.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import { baseProtocol, baseReadings, exampleNote } from '../../../src/problems/examples.ts';
import { contextOf, readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { writeMethods } from '../../../src/writing/methods.ts';
import { writeResults } from '../../../src/writing/results.ts';
import type { Paragraph } from '../../../src/writing/types.ts';

const folder = new URL('./notes/', import.meta.url);
const samples = new URL('../../../samples/', import.meta.url);
const textOf = (paragraph: Paragraph): string => paragraph.runs.map((run) => run.text).join('');
const all = (note: Note): Paragraph[] => [...writeMethods(note), ...writeResults(note)];
const page = (note: Note): string => `${all(note).map((paragraph) => `[${paragraph.topic}]\n${textOf(paragraph)}\n`).join('\n')}`;

/** Slips that no reader should meet. */
const slips: readonly (readonly [string, RegExp])[] = [
  ['a doubled word', /\b(\w+) \1\b/i], ['a doubled space', / {2}/], ['a space before a mark', / [.,;:](?!\d)/], ['a doubled mark', /[.,;:]{2}|[.?!]\./],
  ['one with a plural', /\b(?:one|1) (?:readings|tanks|steps|times|hours|events|planned times|paired readings)\b/i],
  ['a number word with a singular', /\b(?:two|three|four|five|six|seven|eight|nine|ten) (?:reading|tank|step|time|event|night)\b(?! unit)/i],
  ['was were', /\b(?:was were|were was|is are)\b/i], ['a before a vowel', /\b[a] [aeio]\w/], ['an before a consonant', /\ban [bcdfgjklmnpqrstvwxyz]\w/],
  ['a hole', /undefined|NaN|null|\[object|Infinity|\(\)|““/], ['a small letter at the start', /(?:^|[.?!] )(?!pH\b)[a-z]/], ['no end mark', /[^.?!”")]$/],
];

function assertClean(paragraphs: readonly Paragraph[]): void {
  for (const paragraph of paragraphs) {
    const text = textOf(paragraph);
    for (const [name, pattern] of slips) {
      const found = pattern.exec(text);
      assert.ok(!found, `${name} (“${found?.[0]}”) in: ${text}`);
    }
  }
}

function assertFigures(note: Note): void {
  const context = contextOf(note);
  for (const run of all(note).flatMap((paragraph) => paragraph.runs)) {
    if (run.kind !== 'value') continue;
    const { value } = evaluate(mappedText(run.formula), context);
    assert.ok(value, `${run.formula} has no value`);
    assert.equal(run.machine, machineValue(value, context), run.formula);
    assert.notEqual(run.text, '');
  }
}

suite('writing: methods and results', () => {
  const notes = new Map<string, string>([
    ...readdirSync(folder).filter((name) => name.endsWith('.tank.md')).map((name): [string, string] => [name.replace('.tank.md', ''), readFileSync(new URL(name, folder), 'utf8')]),
    ['base', exampleNote({ prose: '{2.9 % = first-loss}\n\n```results\n```' }).text],
  ]);
  for (const [name, text] of notes) {
    test(`${name}: the paragraphs are those that were approved`, () => {
      const expected = new URL(`${name}.expected.txt`, folder);
      const written = page(readNote(text));
      if (process.env.APPROVE === '1') writeFileSync(expected, written);
      assert.equal(written, readFileSync(expected, 'utf8'));
    });
    test(`${name}: no slips of grammar, and every figure is its formula's value`, () => {
      const note = readNote(text);
      assertClean(all(note));
      assertFigures(note);
    });
  }

  const english = readdirSync(samples).filter((each) => each.endsWith('.tank.md')).map((name): [string, string] => [name, readFileSync(new URL(name, samples), 'utf8')]).filter(([, text]) => !/^language: (?!en)/m.test(text));
  for (const [name, text] of english) {
    test(`the sample ${name} reads without slips`, () => {
      const note = readNote(text);
      assertClean(all(note));
      assertFigures(note);
    });
  }

  test('nothing is written without a protocol, and little without readings', () => {
    assert.deepEqual(all(readNote('# Just prose\n')), []);
    const planned = readNote(exampleNote({ readings: 'time mat.DO\n', values: '' }).text);
    assertClean(all(planned));
    assert.match(page(planned), /No readings are logged yet\./);
  });

  test('the only tank is described too: what it held, and what it did not', () => {
    const note = readNote(exampleNote({ protocol: `place: {name: Zwolle, time zone: Europe/Amsterdam}
tanks:
  a: {label: quarantine tank, plants: java moss, animals: none, equipment: "sponge filter, 50 W heater"}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 06:00, every: 1 h}
measure:
  T: {what: water temperature, unit: degC, with: thermistor}
`, readings: 'time a.T\n20:00 24.1\n' }).text);
    assertClean(all(note));
    assert.match(page(note), /For the tank the plan names plants \(java moss\) and equipment \(sponge filter, 50 W heater\)\. The tank held no animals\./u);
  });

  test('any part of the plan may be missing, in any combination', () => {
    const keys = baseProtocol.split(/\n(?=\S)/).map((each) => each.trimEnd());
    fc.assert(fc.property(fc.subarray(keys), fc.subarray(baseReadings.trim().split('\n').slice(1)), (parts, rows) => {
      const note = readNote(exampleNote({ protocol: `${parts.join('\n')}\n`, readings: `${baseReadings.split('\n')[0]}\n${rows.join('\n')}\n` }).text);
      const written = all(note);
      for (const paragraph of written) assert.ok(!/undefined|NaN|\[object|Infinity| {2}/.test(textOf(paragraph)), textOf(paragraph));
    }), { numRuns: 60 });
  });

  test('numbers of the untidy note by hand', () => {
    const text = page(readNote(notes.get('untidy')!));
    // 45 cm × 25 cm × 20 cm = 22.5 L; 8.4 − 7.6 = 0.8 mg/L from 21:05 to 22:00, that is 55 min: 0.873 mg/L/h; 0.8 / 8.4 = 9.52 %
    assert.match(text, /held 22\.5 L of water/);
    assert.match(text, /Over the baseline it fell by 0\.8 mg\/L \(9\.52 %\), 0\.87 mg\/L\/h on average/);
    assert.match(text, /from 7\.7 mg\/L to 7\.5 mg\/L \(remark: “colour read again”\)/);
  });
});
