import assert from 'node:assert/strict';
import { editSentences, type EditMessageCode } from '../../../src/words/en/edits.ts';
import { editSentence } from '../../../src/words/edits.ts';

suite('edits: words', () => {
  for (const code of Object.keys(editSentences) as EditMessageCode[]) {
    test(`${code} is one sentence, whatever its arguments`, () => {
      const args = {
        path: 'a.csv', found: 1, expected: 2, text: '7.3x', head: 'mat.DO', words: ['calm', 'restless'], columns: ['mat.DO', 'mat.T'], time: '20:30', example: '3/4/2026',
        line: 3, first: 2, low: '0', high: '25', unit: 'mg/L', perhaps: 'degF', before: '8.02', other: 'mat.T', percent: '212', distance: '2 d',
      };
      assert.match(editSentence({ code, args }), /^[A-Z\d7a-z].*\.$/u);
      assert.doesNotMatch(editSentence({ code, args }), /undefined|NaN|\s{2}|\n/u);
      assert.doesNotMatch(editSentence({ code, args: {} }), /undefined|NaN/u);
    });
  }
});
