// The sentences that measure the search are sound: every marked number is read, and the first formula listed for it gives it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { givesMention } from '../../../src/claims/find/findFormulas.ts';
import { matcherOf } from '../../../src/claims/find/matches.ts';
import { readClaimWords } from '../../../src/claims/claimWords.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import { readSentences } from '../../score/readSentences.ts';

const root = path.resolve(import.meta.dirname, '../../..');

suite('sentences that measure the search', () => {
  for (const file of ['tuning.txt', 'kept-out.txt']) {
    test(`${file}: every marked number is what its formulas give`, () => {
      let count = 0;
      for (const { note, sentences } of readSentences(readFileSync(path.join(root, 'test/score', file), 'utf8'))) {
        const { context } = readNote(readFileSync(path.join(root, note), 'utf8'));
        for (const { text, numbers } of sentences) {
          for (const { start, end, right } of numbers) {
            const mention = readClaimWords(text, context).find((each) => each.start < end && each.end > start);
            assert.ok(mention, text);
            for (const formula of right) {
              const { value } = evaluate(mappedText(formula), context);
              assert.ok(value, `${formula}: ${text}`);
              const match = mention.kind === 'number' ? matcherOf({ ...mention, bound: null }) : null;
              assert.ok(givesMention(value, mention, match, context), `${formula} does not give it: ${text}`);
            }
            count += 1;
          }
        }
      }
      assert.ok(count >= 80);
    });
  }
});
