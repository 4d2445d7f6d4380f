import assert from 'node:assert/strict';
import fc from 'fast-check';
import { functions, functionByName, functionGroups, signatureLabel } from '../../../src/formula/catalogue.ts';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { reservedNames } from '../../../src/formula/names.ts';
import { parseFormula } from '../../../src/formula/parse.ts';
import { plainWords } from '../../../src/formula/plainWords.ts';
import { jsonValue, machineValue, showValue } from '../../../src/formula/show.ts';
import { problemSentence } from '../../../src/words/words.ts';
import { remarkSentence } from '../../../src/words/remarks.ts';
import { answer, ask, contextFrom } from './support.ts';
import { night } from './notes.ts';

const example = contextFrom(exampleNote, { 'first-loss': 'percent-fall(mat.DO, 22:00..23:00)' });

suite('function catalogue', () => {
  test('holds every function of the language', () => {
    const named = 'at interpolate first last count missing min max mean median sd range time-of-min time-of-max all any change rise fall percent-change percent-rise '
      + 'percent-fall rate slope robust-slope steepest-fall steepest-rise time-of-steepest-fall time-of-steepest-rise steps percent-steps first-below first-above hours-below hours-above '
      + 'settled turning-point difference percent-difference contrast permutation-p gap-explained gap-left resolved solubility saturation deficit respiration reaeration balance-point time-to predicted-min predicted-hours-below '
      + 'un-ionised-ammonia carbon-dioxide salinity volume length width height duration abs sqrt ln round';
    assert.deepEqual(functions.map((entry) => entry.name).sort(), named.split(' ').sort());
  });

  for (const entry of functions) {
    test(`${entry.name}: entry is whole and its example runs`, () => {
      assert.ok(functionGroups.includes(entry.group));
      assert.match(entry.definition, /^[A-Z].*\.$/u);
      assert.ok(entry.equation !== '' && entry.units !== '' && entry.words !== '');
      assert.ok(!reservedNames.includes(entry.name));
      assert.match(signatureLabel(entry.name, entry.signatures[0]!), /^[a-z-]+\(.+\)$/u);
      assert.equal(functionByName(entry.name), entry);
      assert.deepEqual(parseFormula(entry.example.formula).errors, []);
      assert.ok(entry.example.formula.includes(`${entry.name}(`));
      assert.equal(answer(entry.example.formula, example), entry.example.gives);
    });

    test(`${entry.name}: reads as words`, () => {
      const words = plainWords(entry.example.formula, example);
      assert.ok(!/[{}()]|undefined|\s\s|mat\.|open\./u.test(words), words);
    });
  }
});

suite('plain words', () => {
  const cases: [string, string][] = [
    ['rate(mat.DO, light-off..23:00) < rate(open.DO, light-off..23:00)', 'the dissolved oxygen in the floating-mat tank fell faster than that in the open-surface tank between lights-off and 23:00'],
    ['all(mat.T >= open.T, 21:00..end)', 'the water temperature in the floating-mat tank is at least that in the open-surface tank, at every reading between 21:00 and the end'],
    ['min(mat.DO) > 3 mg/L', 'the lowest dissolved oxygen in the floating-mat tank is more than 3 mg/L'],
    ['abs(mat.T - open.T) <= 0.5 degC', 'the difference between the water temperature in the floating-mat tank and the water temperature in the open-surface tank is at most 0.5 °C'],
    ['time-of-min(mat.DO) > light-off', 'the time of the lowest dissolved oxygen in the floating-mat tank is after lights-off'],
    ['first-loss', 'the percentage fall in the dissolved oxygen in the floating-mat tank between 22:00 and 23:00'],
    ['steepest-fall(mat.DO, dark, over 2 h)', 'the steepest hourly fall in the dissolved oxygen in the floating-mat tank during the dark phase over 2 h'],
    ['mean(room.P)', 'the mean air pressure in the room'],
    ['not any(mat.behaviour == gasping)', 'it is not so that the behaviour in the floating-mat tank is “gasping”, at one reading or more'],
    ['fall(mat.DO, dark) > fall(open.DO, dark)', 'the dissolved oxygen in the floating-mat tank fell more than that in the open-surface tank during the dark phase'],
    ['predicted-min(mat.DO, dark, dark 12 h, exchange 2)', 'the lowest oxygen predicted from the dissolved oxygen in the floating-mat tank during the dark phase, with 12 h of darkness, with 2 times the surface exchange'],
    ['solubility(mat)', 'the oxygen solubility in the floating-mat tank'],
    ['min(mat.DO', 'min(mat.DO'],
    ['not resolved(change(mat.DO))', 'the change in the dissolved oxygen in the floating-mat tank is no more than the instruments’ uncertainty'],
    ['not (mat.DO < open.DO)', 'the dissolved oxygen in the floating-mat tank is not less than that in the open-surface tank'],
    ['-rate(mat.DO, 22:00..00:00)', 'the hourly rate of fall of the dissolved oxygen in the floating-mat tank between 22:00 and 00:00'],
    ['time-of-min(mat.DO) - light-off', 'the time from lights-off to the time of the lowest dissolved oxygen in the floating-mat tank'],
    ['count(mat.DO < 6 mg/L)', 'the number of readings at which the dissolved oxygen in the floating-mat tank is less than 6 mg/L'],
    ['at(saturation(mat.DO, standard-pressure), 22:00)', 'the saturation of the dissolved oxygen in the floating-mat tank, at one standard atmosphere at 22:00'],
  ];
  for (const [formula, expected] of cases) test(formula, () => assert.equal(plainWords(formula, example), expected));
});

suite('evaluator, by properties', () => {
  const place = fc.constantFrom('mat', 'open', 'room', 'treatment', 'control', 'nobody');
  const quantity = fc.constantFrom('DO', 'T', 'P', 'NO2', 'behaviour', 'plant-mass', 'xyz');
  const column = fc.tuple(place, quantity).map(([p, q]) => `${p}.${q}`);
  const time = fc.constantFrom('22:00', '22:30', '01:00', 'light-off', 'light-on', 'start', 'end', 'sunset', 'fed', '22:15', 'light-off + 1 h', '+1h30', '2026-03-29T02:30', '99:99');
  const window = fc.oneof(fc.tuple(time, time).map(([a, b]) => `${a}..${b}`), fc.constantFrom('baseline', 'dark', 'recovery', 'dark-1'));
  const literal = fc.constantFrom('0', '3', '3 mg/L', '24 degC', '5 %', '1 h', '0.5 degC', '1e99', 'standard-pressure', '7 pH', 'calm', '1 / 0');
  const { formula } = fc.letrec<{ formula: string }>((tie) => ({
    formula: fc.oneof({ depthSize: 'small' }, column, literal, time, fc.constantFrom('mat', 'DO', 'x', 'y', 'circle'),
      fc.tuple(fc.constantFrom(...functions.map((entry) => entry.name)), tie('formula')).map(([name, inner]) => `${name}(${inner})`),
      fc.tuple(fc.constantFrom(...functions.map((entry) => entry.name)), column, window).map(([name, inner, stretch]) => `${name}(${inner}, ${stretch})`),
      fc.tuple(fc.constantFrom(...functions.map((entry) => entry.name)), column, tie('formula')).map(([name, inner, other]) => `${name}(${inner}, ${other})`),
      fc.tuple(fc.constantFrom('steps', 'percent-steps', 'steepest-fall', 'settled'), column, fc.constantFrom('every 1 h', 'over 1 h', 'within 0.1 mg/L, for 1 h', 'every 1 s', 'for 0 s')).map(([name, inner, option]) => `${name}(${inner}, ${option})`),
      fc.tuple(tie('formula'), fc.constantFrom('+', '-', '*', '/', '<', '>', '<=', '==', 'and', 'or'), tie('formula')).map(([a, operator, b]) => `(${a}) ${operator} (${b})`),
      fc.tuple(tie('formula'), fc.constantFrom('mg/L', 'degF', 'h', '%', 'zz')).map(([a, unit]) => `(${a}) in ${unit}`),
    ),
  }));

  test('a value is finite and can be shown; without one there is a problem with a sentence', () => {
    const context = contextFrom(night, { x: 'fall(mat.DO, 22:00..22:30)', y: 'x / 0', circle: 'circle + 1' });
    fc.assert(fc.property(formula, (text) => {
      const { value, problems, working } = ask(text, context);
      for (const each of problems) {
        assert.ok(each.range.start <= each.range.end && each.range.end <= text.length + 1, `${text}: ${each.code}`);
        assert.doesNotMatch(problemSentence(each), /undefined|NaN|Infinity|\[object/u, text);
      }
      for (const step of working) for (const remark of step.remarks) assert.doesNotMatch(remarkSentence(remark), /undefined|NaN|Infinity/u, text);
      if (!value) return assert.ok(problems.some((each) => each.severity === 'error'), text);
      const shown = `${showValue(value, context)} ${machineValue(value, context)} ${JSON.stringify(jsonValue(value, context))} ${plainWords(text, context)}`;
      assert.doesNotMatch(shown, /NaN|Infinity|undefined|\?/u, `${text}: ${shown}`);
      if (value.type === 'number') assert.ok(Number.isFinite(value.value), text);
      if (value.type === 'series') for (const point of value.points) assert.ok(Number.isFinite(point.value), text);
    }), { numRuns: 3000 });
  });
});
