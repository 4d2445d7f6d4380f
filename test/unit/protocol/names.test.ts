// Reserved names: the words of the language and every function of the catalogue.
import assert from 'node:assert/strict';
import { functions } from '../../../src/formula/catalogue.ts';
import { isName, isReserved, reservedWords } from '../../../src/protocol/names.ts';
import { plan, read } from './support.ts';

suite('protocol: names', () => {
  test('every function and every word of the language is reserved', () => {
    assert.deepEqual(functions.map((each) => each.name).filter((name) => !isReserved(name)), []);
    for (const word of [...reservedWords, 'dark-2', 'light-off-1']) assert.ok(isReserved(word), word);
    for (const word of ['mat', 'darkness', 'dark-mat', 'starting']) assert.ok(!isReserved(word), word);
  });

  test('each is refused as tank, group, event and phase, with a fix', () => {
    for (const word of ['room', 'max', 'now', 'dark-1']) {
      for (const text of [
        plan({ tanks: `tanks:\n  ${word}: {role: treatment}\n  open: {role: control}` }),
        plan({ tanks: `tanks:\n  mat: {role: treatment, group: ${word}}\n  open: {role: control}` }),
        plan({ more: `events:\n  - {at: 23:00, what: fed, id: ${word}}` }),
        plan({ more: `phases: {${word}: 22:00..23:00}` }),
      ]) {
        const { problems } = read(text);
        assert.deepEqual(problems.map((each) => each.code), ['reserved-name'], text);
        assert.equal(problems[0]!.fixes.length, 1);
      }
    }
  });

  test('names are letters, digits and hyphens, in any script', () => {
    for (const name of ['mat', 'Mat2', 'a-b-c', 'hoog', 'öffen', '水槽']) assert.ok(isName(name), name);
    for (const name of ['2mat', 'mat tank', 'mat.DO', '-mat', '', 'mat_2']) assert.ok(!isName(name), name);
  });
});
