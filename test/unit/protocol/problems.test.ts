// Every problem of the plan: its example raises it in a sentence, keeps the rest of the plan, and its fix mends it.
import assert from 'node:assert/strict';
import { protocolCodes } from '../../../src/problems/codes/protocol.ts';
import { readProtocol } from '../../../src/protocol/readProtocol.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';
import { applyFix, blockOf, plan, read } from './support.ts';

suite('protocol: problems', () => {
  for (const [code, entry] of Object.entries(protocolCodes)) {
    test(`example of ${code}`, () => {
      const text = (entry.example as { protocol: string }).protocol;
      const { protocol, problems } = readProtocol(blockOf(text));
      const found = problems.filter((each) => each.code === code);
      assert.ok(found.length > 0, 'the example does not raise it');
      if (code !== 'plan-without-keys') assert.ok(protocol && protocol.tanks.length === 2, 'the tanks are lost');
      for (const each of found) {
        const sentence = problemSentence(each);
        assert.match(sentence, /^\S.*\.$/s, sentence);
        assert.doesNotMatch(sentence, /undefined|NaN|\[object|\$\{|%s/, sentence);
        assert.deepEqual(Object.keys(each.args).filter((name) => !(entry.args as readonly string[]).includes(name)), []);
        for (const fix of each.fixes) assert.notEqual(fixTitle(fix), fix.title, 'the fix has no title');
        assert.ok(each.fixes.filter((fix) => fix.preferred).length <= 1);
      }
      const first = found[0]!;
      const mended = applyFix(text, first);
      if (mended === null) return;
      assert.ok(entry.fixable, 'it has a fix but is not said to be fixable');
      const after = readProtocol(blockOf(mended));
      assert.equal(after.problems.filter((each) => each.code === code).length, found.length - 1, `still there in:\n${mended}`);
      assert.ok(after.problems.length < problems.length + 1, `the fix brings new problems: ${JSON.stringify(after.problems)}`);
    });
  }

  test('a plan without fault has no problem', () => assert.deepEqual(read(plan()).problems, []));

  const cases: readonly [string, string, string, string][] = [
    // what, text, code, what the range covers
    ['a tab behind spaces', plan({ tanks: 'tanks:\n  mat:\n  \trole: treatment\n  open: {role: control}' }), 'tab-indent', '  \t'],
    ['a key too far right', plan({ schedule: 'schedule:\n  start: 2026-03-14 20:00\n    end: 2026-03-15 10:00' }), 'bad-indentation', 'end: 2026-03-15 10:00'],
    ['a missing colon before children', plan({ tanks: 'tanks\n  mat: {role: treatment}\n  open: {role: control}' }), 'missing-colon', 'tanks'],
    ['a missing colon behind a tank', plan({ tanks: 'tanks:\n  mat\n    role: treatment\n  open: {role: control}' }), 'missing-colon', 'mat'],
    ['a missing colon in the first line of a tank', plan({ tanks: 'tanks:\n  mat:\n    role treatment\n    label: m\n  open: {role: control}' }), 'missing-colon', 'role'],
    ['a tight colon before braces', plan({ measure: 'measure:\n  DO:{what: dissolved oxygen, unit: mg/L}' }), 'colon-needs-space', 'DO:'],
    ['a tight colon inside braces', plan({ measure: 'measure:\n  DO: {what:dissolved oxygen, unit: mg/L}' }), 'colon-needs-space', 'what:'],
    ['a value with a second colon', plan({ more: 'hypothesis: as before: lower' }), 'needs-quotes', 'as before: lower'],
    ['a value that ends with a colon', plan({ more: 'by: me:' }), 'needs-quotes', 'me:'],
    ['a value that starts with @', plan({ more: 'by: @keeper' }), 'needs-quotes', '@keeper'],
    ['a value that starts with %', plan({ more: 'by: %keeper' }), 'needs-quotes', '%keeper'],
    ['a value that starts with a backtick', plan({ more: 'by: `keeper`' }), 'needs-quotes', '`keeper`'],
    ['a value that starts with !', plan({ more: 'by: !keeper' }), 'needs-quotes', '!keeper'],
    ['a value that starts with a brace', plan({ more: 'by: {keeper} of fish' }), 'needs-quotes', '{keeper} of fish'],
    ['a value that is all in braces', plan({ more: 'by: {keeper}' }), 'needs-quotes', '{keeper}'],
    ['a value that starts with a quotation mark', plan({ more: 'by: "The" keeper' }), 'needs-quotes', '"The" keeper'],
    ['a value that starts with >', plan({ more: 'by: > 5 keepers' }), 'needs-quotes', '> 5 keepers'],
    ['a comma in a text inside braces', plan({ tanks: 'tanks:\n  mat: {role: treatment, plants: lettuce, 80 % cover}\n  open: {role: control}' }), 'needs-quotes', 'lettuce, 80 % cover'],
    ['a comma in a formula inside braces', plan({ more: 'equalise:\n  - {step: warm up, accept: max(mat.T, baseline) < 25 degC}' }), 'formula-needs-quotes', 'max(mat.T, baseline) < 25 degC'],
    ['an unbalanced bracket in a formula', plan({ more: 'stop if:\n  - {when: min(mat.DO < 3 mg/L, do: stop}' }), 'formula-needs-quotes', 'min(mat.DO < 3 mg/L, do: stop'],
    ['a hash in a text', plan({ more: 'by: keeper #2' }), 'text-after-hash', '#2'],
    ['a comment behind a value', plan({ more: 'seed: 12   # drawn by hand' }), 'text-after-hash', '# drawn by hand'],
    ['a text that starts with a hash', plan({ more: 'by: #2 keeper' }), 'text-after-hash', '#2 keeper'],
    ['a hash in a text inside braces', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, with: probe #2, unit: mg/L}' }), 'needs-quotes', 'probe #2'],
    ['an anchor', plan({ tanks: 'tanks:\n  mat: &base\n    role: treatment\n  open: {role: control}' }), 'alias-refused', '&base'],
    ['a merge', plan({ tanks: 'tanks:\n  mat: {role: treatment}\n  open:\n    <<: *mat\n    role: control' }), 'alias-refused', '*mat'],
    ['an unclosed quotation mark', plan({ tanks: 'tanks:\n  mat:\n    label: "floating mat\n    role: treatment\n  open: {role: control}' }), 'unclosed-quote', '"floating mat'],
    ['an unclosed brace', plan({ tanks: 'tanks:\n  mat: {role: treatment, label: mat\n  open: {role: control}' }), 'bracket-unbalanced', '{role: treatment, label: mat'],
    ['a bracket too many', plan({ more: 'order: [mat, open]]' }), 'bracket-unbalanced', ']'],
    ['an unknown key of a tank', plan({ tanks: 'tanks:\n  mat: {role: treatment, watr depth: 28 cm}\n  open: {role: control}' }), 'unknown-key', 'watr depth'],
    ['an unknown key of a measure', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, acuracy: 0.1 mg/L}' }), 'unknown-key', 'acuracy'],
    ['a measure without unit', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen}' }), 'missing-key', 'DO'],
    ['a unit of another kind', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, unit: degC}' }), 'unit-does-not-fit', 'degC'],
    ['an accuracy in another unit', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, accuracy: 0.1 degC}' }), 'unit-does-not-fit', '0.1 degC'],
    ['an accuracy without unit', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, accuracy: 0.1}' }), 'bad-quantity', '0.1'],
    ['an unknown unit in an accuracy', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, accuracy: 0.1 mg/Ll}' }), 'unknown-unit', '0.1 mg/Ll'],
    ['a longitude out of range', plan({ place: 'place: {latitude: 52, longitude: 360, time zone: Europe/Amsterdam}' }), 'out-of-range', '360'],
    ['an impossible date', plan({ schedule: 'schedule: {start: 2026-02-30 20:00}' }), 'bad-time', '2026-02-30 20:00'],
    ['a start without date', plan({ schedule: 'schedule: {start: 20:00}' }), 'bad-time', '20:00'],
    ['an end that cannot be read', plan({ schedule: 'schedule: {start: 2026-03-14 20:00, end: tomorrow noon}' }), 'bad-time', 'tomorrow noon'],
    ['an event at an unknown name', plan({ more: 'events:\n  - {at: ligth-off, what: fed}' }), 'bad-time', 'ligth-off'],
    ['an unknown role', plan({ tanks: 'tanks:\n  mat: {role: test}\n  open: {role: control}' }), 'unknown-value', 'test'],
    ['an unknown key that is meant to differ', plan({ tanks: 'tanks:\n  mat: {role: treatment}\n  open: {role: control}\ndiffers: [plnts]' }), 'unknown-value', 'plnts'],
    ['a tank that is like an unknown one', plan({ tanks: 'tanks:\n  mat: {role: treatment}\n  open: {role: control, like: matt}' }), 'unknown-tank', 'matt'],
    ['an instrument in an unknown tank', plan({ measure: 'measure:\n  DO: {what: dissolved oxygen, unit: mg/L, in: [mat, opn]}' }), 'unknown-tank', 'opn'],
    ['a phase with a reserved name', plan({ more: 'phases: {dark: 22:00..23:00}' }), 'reserved-name', 'dark'],
    ['a tank with the name of a function', plan({ tanks: 'tanks:\n  max: {role: treatment}\n  open: {role: control}' }), 'reserved-name', 'max'],
    ['a tank and a quantity of one name', plan({ measure: 'measure:\n  mat: {what: dissolved oxygen, unit: mg/L}' }), 'name-used-twice', 'mat'],
    ['a fact and a quantity of one name', plan({ tanks: 'tanks:\n  mat: {role: treatment, facts: {DO: 3 mg/L}}\n  open: {role: control}' }), 'name-used-twice', '3 mg/L'],
    ['a limit without level', plan({ more: 'limits:\n  - {for: Corydoras, quantity: DO}' }), 'missing-key', 'for'],
    ['a limit in another unit', plan({ more: 'limits:\n  - {for: Corydoras, quantity: DO, at least: 4 degC}' }), 'unit-does-not-fit', '4 degC'],
    ['a latitude without longitude', plan({ place: 'place: {latitude: 52, time zone: Europe/Amsterdam}' }), 'missing-key', 'place'],
    ['a list where one text is wanted', plan({ more: 'by: [one, two]' }), 'wrong-type', '[one, two]'],
    ['a text where keys are wanted', plan({ more: 'phases: late' }), 'wrong-type', 'late'],
    ['a second piece', `${plan()}---\nby: me\n`, 'yaml-unreadable', '---'],
    ['keys in a list', plan({ more: 'order: {mat: 1, open: 2}' }), 'wrong-type', '{mat: 1, open: 2}'],
  ];
  for (const [what, text, code, covered] of cases) {
    test(what, () => {
      const { protocol, problems } = readProtocol(blockOf(text, 100));
      const note = ' '.repeat(100) + text;
      const found = problems.filter((each) => each.code === code);
      assert.ok(found.length > 0, `not raised, but: ${JSON.stringify(problems.map((each) => [each.code, note.slice(each.range.start, each.range.end)]))}`);
      assert.equal(note.slice(found[0]!.range.start, found[0]!.range.end), covered);
      assert.equal(found.length, 1);
      assert.equal(protocol?.tanks.length, 2, 'a tank is lost');
      assert.deepEqual(problems.filter((each) => each.code !== code).map((each) => each.code), [], 'other problems');
      const mended = applyFix(note, found[0]!);
      if (mended !== null) assert.deepEqual(readProtocol(blockOf(mended.slice(100), 100)).problems.map((each) => each.code), [], `after the fix:\n${mended.slice(100)}`);
    });
  }
});
