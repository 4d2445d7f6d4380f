// The search for formulas in German: sentences over a German note, and suggested conditions.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { canonicalFormula } from '../../../src/claims/find/canonical.ts';
import { findFormulas } from '../../../src/claims/find/findFormulas.ts';
import { suggestConditions } from '../../../src/claims/find/statements.ts';
import { plannedNames } from '../../../src/claims/claimWords.ts';
import { readMentions } from '../../../src/claims/readMentions.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { readSentences } from '../../score/readSentences.ts';

const root = path.resolve(import.meta.dirname, '../../..');
const [all] = readSentences(fs.readFileSync(path.join(root, 'test/score/german.txt'), 'utf8'));
const { context } = readNote(fs.readFileSync(path.join(root, all!.note), 'utf8'));

function placeOf(text: string, marked: { start: number; end: number; right: readonly string[] }): number {
  const mention = readMentions(text, { language: 'de', names: plannedNames(context) }).find((each) => each.start < marked.end && each.end > marked.start);
  assert.ok(mention, `a number is read in ${text}`);
  const wanted = new Set(marked.right.map((formula) => canonicalFormula(formula, context)));
  const found = findFormulas(text, mention, context);
  const place = found.findIndex((each) => wanted.has(canonicalFormula(each.formula, context)));
  if (process.env['EVENWATER_MISSES'] && place !== 0) console.log(text, place, found.slice(0, 4).map((each) => `${each.score} ${each.formula}`));
  return place;
}

suite('the search for formulas in German', () => {
  test('over at least 30 sentences the right formula is first in 90 % and among the first three in 98 %', () => {
    const places = all!.sentences.flatMap(({ text, numbers }) => numbers.map((marked) => placeOf(text, marked)));
    assert.ok(places.length >= 30);
    const share = (least: number): number => places.filter((place) => place >= 0 && place < least).length / places.length;
    assert.ok(share(1) >= 0.9, `first: ${share(1)}`);
    assert.ok(share(3) >= 0.98, `among three: ${share(3)}`);
  });

  const statements: [string, string][] = [
    ['Das Linsenbecken fiel schneller als das klare Becken.', 'rate(linsen.DO) < rate(klar.DO)'],
    ['Das klare Becken änderte sich in der Nacht kaum.', 'abs(percent-change(klar.DO, dark)) < 5 %'],
    ['Das Linsenbecken fiel nie unter 5 mg/L.', 'min(linsen.DO) > 5 mg/L'],
    ['Das Linsenbecken war immer wärmer als das klare.', 'mean(linsen.T) > mean(klar.T)'],
  ];
  for (const [sentence, formula] of statements) {
    test(`${sentence} suggests its condition, in German words`, () => {
      const found = suggestConditions(sentence, context);
      if (process.env['EVENWATER_MISSES']) console.log(sentence, found);
      const suggested = found.find((each) => canonicalFormula(each.formula, context) === canonicalFormula(formula, context));
      assert.ok(suggested, JSON.stringify(found.map((each) => each.formula)));
      assert.match(suggested.words, /^(?:der|die|das) /u);
    });
  }
});
