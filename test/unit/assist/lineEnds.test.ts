// What stands at line ends: values of claims to fill in, kept while the text is broken, and steps of readings.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { stepsAtLineEnds, valuesAtLineEnds, type KnownValues } from '../../../src/assist/lineEnds.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { noteText, plan, readings } from './support.ts';

const prose = 'It fell by {? = fall(mat.DO, light-off..22:30)}, that is {? = first-loss}, and\nthe last was {? = last(mat.DO)}.\n';

const shown = (text: string, known: KnownValues): { line: string; values: string[]; kept: boolean[] }[] => valuesAtLineEnds(readNote(text), known).map(({ at, parts }) => ({
  line: text.slice(text.lastIndexOf('\n', at - 1) + 1, at), values: parts.map((part) => part.value), kept: parts.map((part) => part.kept),
}));

suite('line ends', () => {
  test('the values of a line stand together at its end', () => {
    deepEqual(shown(noteText({ prose }), new Map()), [
      { line: prose.split('\n')[0], values: ['0.24 mg/L', '2.91 %'], kept: [false, false] },
      { line: 'the last was {? = last(mat.DO)}.', values: ['7.84 mg/L'], kept: [false] },
    ]);
  });

  test('a carriage return belongs to no line', () => {
    const text = noteText({ prose }).replaceAll('\n', '\r\n');
    ok(shown(text, new Map()).every((each) => !each.line.includes('\r')));
  });

  test('while the plan is broken the values that were known stay, and go with their formula', () => {
    const known: KnownValues = new Map();
    shown(noteText({ prose }), known);
    const broken = noteText({ prose, plan: plan.replace('DO: {what', 'DO {what') });
    deepEqual(shown(broken, known).map((each) => [each.values, each.kept]), [[['0.24 mg/L', '2.91 %'], [true, true]], [['7.84 mg/L'], [true]]]);
    deepEqual(shown(broken.replace('last(mat.DO)', 'first(mat.DO)'), known).length, 1);
    deepEqual(shown(broken, new Map()), []);
  });

  test('a value that a whole note does not give is not kept', () => {
    const known: KnownValues = new Map([['nothing(mat.DO)', '1 mg/L']]);
    deepEqual(shown(noteText({ prose: 'It was {? = nothing(mat.DO)}.\n' }), known), []);
    equal(known.size, 0);
  });

  test('steps of a row since the row above, each column as wide in every row', () => {
    const text = noteText({ prose });
    const rows = stepsAtLineEnds(readNote(text)).map(({ at, label }) => [text.slice(text.lastIndexOf('\n', at - 1) + 1, at).slice(0, 5), label.replaceAll('\u00a0', ' ')]);
    deepEqual(rows, [
      ['21:00', '+0.04   0.0  -0.01   0.0  -0.2  ·'],
      ['22:00', '+0.01  -0.1  -0.01  -0.1  -0.3  ·'],
      ['22:30', '-0.24   0.0  -0.03   0.0  -0.1  ·'],
      ['23:00', '-0.18  -0.1  -0.01   0.0     ·  ·'],
    ]);
    equal(new Set(rows.map(([, label]) => label!.length)).size, 1);
  });

  test('a step counts from the last reading that counts', () => {
    const text = noteText({ prose: '', readings: readings.replace('22:30    8.02', '22:30    (8.02)') });
    const steps = stepsAtLineEnds(readNote(text)).map(({ parts }) => parts[0]!.text);
    deepEqual(steps, ['+0.04', '+0.01', '', '-0.42']);
  });
});
