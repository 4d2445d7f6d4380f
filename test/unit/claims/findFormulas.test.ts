// The search for formulas: what the words around a number decide, which slips are named, and what becomes of a sentence.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { canonicalFormula } from '../../../src/claims/find/canonical.ts';
import { suggestConditions } from '../../../src/claims/find/statements.ts';
import type { Candidate } from '../../../src/claims/find/types.ts';
import { findableNumbers, findFixes, findFormulas, statementFixes } from '../../../src/experiment/findNumbers.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { fixTitle } from '../../../src/words/words.ts';

const root = path.resolve(import.meta.dirname, '../../..');
const sample = readFileSync(path.join(root, 'samples/overnight-oxygen.tank.md'), 'utf8');
const heater = readFileSync(path.join(root, 'samples/heater-failure.tank.md'), 'utf8');

/** The sample with a paragraph more; its candidates for the number shown. */
function ask(paragraph: string, shown: string, base = sample): { note: Note; candidates: Candidate[] } {
  const note = readNote(`${base}\n\n${paragraph}\n`);
  const start = note.text.lastIndexOf(shown);
  return { note, candidates: findFormulas({ start, end: start + shown.length }, note) };
}

const best = (paragraph: string, shown: string, base = sample): string | undefined => ask(paragraph, shown, base).candidates[0]?.formula;
const firstSlip = (paragraph: string, shown: string, base = sample): [string, string | null] => {
  const found = ask(paragraph, shown, base).candidates.find((each) => each.slip !== null);
  return [found?.formula ?? '', found?.slip ?? null];
};

function apply(text: string, edits: readonly { range: { start: number; end: number }; newText: string }[]): string {
  let changed = text;
  for (const edit of [...edits].sort((a, b) => b.range.start - a.range.start)) changed = changed.slice(0, edit.range.start) + edit.newText + changed.slice(edit.range.end);
  return changed;
}

suite('find formulas: the words around a number decide', () => {
  const cases: [string, string, string, string][] = [
    ['a clock time names the reading', 'At 02:00 the duckweed tank held 6.83 mg/L.', '6.83 mg/L', 'at(duckweed.DO, 02:00)'],
    ['“lowest” names the minimum, a named result before its formula', 'The lowest oxygen in the duckweed tank was 5.83 mg/L.', '5.83 mg/L', 'lowest-duckweed'],
    ['“by” asks for a change', 'Between 22:00 and 00:00 the duckweed tank fell by 0.74 mg/L.', '0.74 mg/L', 'fall(duckweed.DO, 22:00..00:00)'],
    ['“first hour” starts at lights-off', 'In the first hour the duckweed tank lost 5.0 % of its oxygen.', '5.0 %', 'first-hour'],
    ['a unit per hour asks for a rate, turned where it falls', 'Between 22:00 and 02:00 the duckweed tank lost 0.34 mg/L/h.', '0.34 mg/L/h', '-rate(duckweed.DO, 22:00..02:00)'],
    ['“apart” asks for a difference', 'At 05:00 the tanks were 1.74 mg/L apart.', '1.74 mg/L', 'at(clear.DO, 05:00) - at(duckweed.DO, 05:00)'],
    ['“it” is the tank of the sentence before', 'The duckweed tank did badly. At 02:00 it read 6.83 mg/L.', '6.83 mg/L', 'at(duckweed.DO, 02:00)'],
    ['saturation is said', 'At 03:30 saturation in the duckweed tank was 77 %.', '77 %', 'at(saturation(duckweed.DO), 03:30)'],
    ['a clock time may be that of the lowest reading', 'The duckweed tank was lowest at 07:30.', '07:30', 'time-of-min(duckweed.DO)'],
    ['“came at” tells when the lowest was read, and asks for no window to that time', 'The lowest oxygen of 5.83 mg/L came at 07:30.', '5.83 mg/L', 'lowest-duckweed'],
    ['“came at” beside the lowest reading is its time', 'The lowest oxygen of 5.83 mg/L came at 07:30.', '07:30', 'time-of-min(duckweed.DO)'],
    ['a stretch that is said still asks for its window', 'The lowest oxygen between 22:00 and 07:30 was 5.83 mg/L.', '5.83 mg/L', 'min(duckweed.DO, 22:00..07:30)'],
    ['litres are the plan’s', 'The clear tank holds 32.8 litres.', '32.8 litres', 'volume(clear)'],
  ];
  for (const [name, paragraph, shown, formula] of cases) {
    test(name, () => {
      const { note, candidates } = ask(paragraph, shown);
      assert.equal(canonicalFormula(candidates[0]?.formula ?? '', note.context), canonicalFormula(formula, note.context), candidates.map((each) => `${each.score} ${each.formula}`).join('\n'));
      assert.ok(candidates[0]!.gives);
    });
  }
  test('the window of a named result is the author’s choice, though the sentence does not say it', () => {
    const base = sample.replace('lowest-duckweed = min(duckweed.DO)\n', 'lowest-duckweed = min(duckweed.DO)\nlowest-by-night = min(duckweed.DO, 22:10..06:50)\n');
    assert.equal(best('The lowest oxygen of 5.89 mg/L came at 06:30.', '5.89 mg/L', base), 'lowest-by-night');
  });
  test('levels come from the sentence', () => {
    assert.equal(best('The bare tank went below 24 °C at 22:20.', '22:20', heater), 'first-below(bare.T, 24 degC)');
    assert.equal(best('The bare tank spent 5.6 h below 20 °C.', '5.6 h', heater), 'hours-below(bare.T, 20 degC)');
  });
  test('what is ambiguous is shown: both tanks read the same, both stand in the list', () => {
    const found = ask('It read 8.18 mg/L once.', '8.18 mg/L').candidates.map((each) => each.formula);
    assert.ok(found.filter((each) => each.startsWith('at(duckweed.DO')).length >= 3, found.join('\n'));
  });
  test('every candidate that gives the number does, and no two say the same', () => {
    const { note, candidates } = ask('Between 22:00 and 00:00 the duckweed tank fell by 0.74 mg/L.', '0.74 mg/L');
    assert.equal(new Set(candidates.map((each) => canonicalFormula(each.formula, note.context))).size, candidates.length);
    for (const each of candidates.filter((candidate) => candidate.gives)) assert.ok(each.value.type === 'number' && Math.abs(each.value.value - 0.74) <= 0.005 + 1e-9, each.formula);
    assert.deepEqual([...candidates].sort((a, b) => b.score - a.score), candidates);
  });
});

suite('find formulas: a number that nothing gives', () => {
  test('the nearest candidates are listed with what they give', () => {
    const { candidates } = ask('At 02:00 the duckweed tank held 6.77 mg/L.', '6.77 mg/L');
    assert.equal(candidates[0]?.formula, 'at(duckweed.DO, 02:00)');
    assert.equal(candidates[0]?.gives, false);
    assert.match(candidates[0]!.text, /^6\.83 mg\/L$/);
  });
  const slips: [string, string, string, string, string][] = [
    ['two digits changed places', 'At 02:00 the duckweed tank held 6.38 mg/L.', '6.38 mg/L', 'at(duckweed.DO, 02:00)', 'digits-swapped'],
    ['the decimal point slipped', 'At 02:00 the duckweed tank held 0.683 mg/L.', '0.683 mg/L', 'at(duckweed.DO, 02:00)', 'factor-ten'],
    // 8.18 to 5.91 mg/L: 27.75 % of the first reading, 38.4 % of the last.
    ['the wrong base of a percentage', 'Between 22:00 and 06:00 the duckweed tank lost 38.4 %.', '38.4 %', 'percent-fall(duckweed.DO, 22:00..06:00)', 'wrong-base'],
    // 23.9 °C is 75.0 °F.
    ['degrees of the other scale', 'At 03:00 the duckweed tank stood at 75.0 °C.', '75.0 °C', 'at(duckweed.T, 03:00)', 'other-scale'],
  ];
  for (const [name, paragraph, shown, formula, slip] of slips) {
    test(`slip: ${name}`, () => {
      const found = firstSlip(paragraph, shown);
      const { context } = readNote(sample);
      assert.equal(canonicalFormula(found[0], context), canonicalFormula(formula, context));
      assert.equal(found[1], slip);
    });
  }
  test('slip: the other tank', () => {
    const { candidates } = ask('At 02:00 the clear tank held 6.83 mg/L.', '6.83 mg/L');
    assert.ok(candidates.some((each) => each.formula === 'at(duckweed.DO, 02:00)' && each.slip === 'other-tank'), candidates.map((each) => each.formula).join('\n'));
  });
  test('slip: the other tank, though the sentence before is about it', () => {
    const { candidates } = ask('The duckweed tank was the covered one. The clear tank fell by 2.27 mg/L between lights-off and lights-on.', '2.27 mg/L');
    const loss = candidates.find((each) => each.formula === 'night-loss-duckweed');
    assert.equal(loss?.slip, 'other-tank', candidates.map((each) => each.formula).join('\n'));
  });
  test('slip: a claim over the other tank is answered with the right one', () => {
    const { candidates } = ask('At 02:00 the duckweed tank held {6.83 mg/L = at(clear.DO, 02:00)}.', '6.83 mg/L');
    assert.equal(candidates[0]?.formula, 'at(duckweed.DO, 02:00)');
    assert.equal(candidates[0]?.slip, 'other-tank');
    assert.ok(candidates.some((each) => each.formula === 'at(clear.DO, 02:00)' && !each.gives));
  });
  test('slip: saturation with the pressure of the sea level', () => {
    const { candidates } = ask('At 07:00 saturation in the duckweed tank was 69.3 %.', '69.3 %');
    const right = candidates.find((each) => each.formula === 'at(saturation(duckweed.DO), 07:00)');
    assert.ok(right && !right.gives, candidates.map((each) => `${each.formula} ${each.text}`).join('\n'));
    assert.equal(right.slip, 'sea-level');
  });
});

suite('find formulas: fixes', () => {
  test('a loose number becomes a claim that holds; reading the note searches nothing', () => {
    const note = readNote(`${sample}\n\nIn the first hour the duckweed tank lost 0.41 mg/L, about 0.37 mg/L per hour over the first two.\n`);
    const loose = note.problems.filter((each) => each.code === 'loose-number');
    assert.equal(loose.length, 2);
    assert.ok(loose.every((each) => each.fixes.length === 0));
    for (const problem of loose) {
      const [mend] = findFixes(problem, note);
      assert.ok(mend && mend.preferred);
      const mended = readNote(apply(note.text, mend.edits));
      assert.ok(!mended.problems.some((each) => each.severity === 'error'), mended.problems.map((each) => each.code).join());
    }
  });
  test('a mismatched claim is offered the formulas that give its number', () => {
    const note = readNote(`${sample}\n\nAt 02:00 the duckweed tank held {6.83 mg/L = at(duckweed.DO, 02:30)}.\n`);
    const mismatch = note.problems.find((each) => each.code === 'claim-mismatch')!;
    const [mend] = findFixes(mismatch, note);
    assert.match(fixTitle(mend!), /at\(duckweed\.DO, 02:00\)/);
    assert.equal(readNote(apply(note.text, mend!.edits)).problems.filter((each) => each.severity === 'error').length, 0);
  });
  test('numbers are found in quotes and lists, in the place where they stand', () => {
    const note = readNote(`${sample}\n\n> - At 02:00 the duckweed\n>   tank held 6.83 mg/L.\n`);
    const [number] = findableNumbers(note).filter((each) => each.text === '6.83 mg/L');
    assert.equal(findFormulas(number!.range, note)[0]?.formula, 'at(duckweed.DO, 02:00)');
  });
});

suite('statements: a sentence becomes a claim', () => {
  const { context } = readNote(sample);
  const conditions = (sentence: string): string[] => suggestConditions(sentence, context).map((each) => each.formula);
  test('faster, with its stretch', () => {
    assert.equal(conditions('The duckweed tank fell faster than the clear one in the first hour')[0], 'rate(duckweed.DO, light-off..23:00) < rate(clear.DO, light-off..23:00)');
  });
  test('hardly changed, never below, later', () => {
    assert.ok(conditions('The clear tank hardly changed overnight').includes('abs(percent-change(clear.DO, dark)) < 5 %'));
    assert.equal(conditions('The clear tank stayed above 6 mg/L')[0], 'min(clear.DO) > careful-level');
    assert.deepEqual(conditions('The duckweed tank reached its lowest value later than the clear tank'), ['time-of-min(duckweed.DO) > time-of-min(clear.DO)']);
  });
  test('a condition that is not true is offered last and says so', () => {
    const [suggestion] = suggestConditions('The clear tank fell faster than the duckweed tank', context);
    assert.equal(suggestion?.holds, false);
  });
  test('the mend makes a statement that is true', () => {
    const note = readNote(`${sample}\n\nThe night was long. The duckweed tank fell faster than the clear one in the first hour. Then came the day.\n`);
    const at = note.text.indexOf('fell faster than the clear one');
    const [mend] = statementFixes({ start: at, end: at }, note);
    const mended = apply(note.text, mend!.edits);
    assert.match(mended, /long\. \{The duckweed tank fell faster than the clear one in the first hour if rate\(.*\)\}\. Then/);
    assert.equal(readNote(mended).problems.filter((each) => each.severity === 'error').length, 0);
    assert.deepEqual(statementFixes({ start: 5, end: 5 }, note), statementFixes({ start: 5, end: 5 }, note));
  });
  test('sentences that state nothing about the readings get no condition', () => {
    for (const sentence of ['Keep a part of the surface open.', 'We thank the neighbours.']) assert.deepEqual(conditions(sentence), [], sentence);
  });
});
