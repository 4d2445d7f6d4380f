// Names of quantities in German: none missing, cases as grammar has them.
import assert from 'node:assert/strict';
import { measures } from '../../../src/quantities/measures.ts';
import { inTank, tankName, theTank, withArticle } from '../../../src/words/de/grammar.ts';
import { quantityNouns } from '../../../src/words/de/quantities.ts';
import { quantityName } from '../../../src/words/quantities.ts';

suite('German names of quantities', () => {
  test('every quantity of the closed list has one, and no other has', () => {
    assert.deepEqual(Object.keys(quantityNouns).sort(), measures.map((each) => each.name).sort());
  });
  test('no two quantities share a name', () => {
    const names = measures.map((each) => quantityName(each.name, 'de'));
    assert.equal(new Set(names).size, names.length);
  });
  test('articles and cases', () => {
    assert.equal(withArticle(quantityNouns['dissolved oxygen']!, 'genitive'), 'des Sauerstoffgehalts');
    assert.equal(withArticle(quantityNouns['dissolved oxygen']!, 'accusative'), 'den Sauerstoffgehalt');
    assert.equal(withArticle(quantityNouns['specific gravity']!, 'dative'), 'der relativen Dichte');
    assert.equal(withArticle(quantityNouns['specific gravity']!, 'nominative'), 'die relative Dichte');
    assert.equal(withArticle(quantityNouns['specific conductance']!, 'genitive'), 'der Leitfähigkeit bei 25 °C');
    assert.equal(withArticle(quantityNouns.flow!, 'genitive'), 'des Durchflusses');
  });
  test('a tank is a noun of its own where its label is one, else a quoted label', () => {
    assert.equal(inTank('Mattenbecken'), 'im Mattenbecken');
    assert.equal(inTank('Becken 2'), 'im Becken 2');
    assert.equal(inTank('offene Fläche'), 'im Becken „offene Fläche“');
    assert.equal(tankName('offenes Becken'), 'offenes Becken');
    assert.equal(inTank('offenes Becken'), 'im offenen Becken');
    assert.equal(theTank('offenes Becken', 'nominative'), 'das offene Becken');
    assert.equal(theTank('Mattenbecken', 'genitive'), 'des Mattenbeckens');
    assert.equal(theTank('Becken 2', 'genitive'), 'des Beckens 2');
    assert.equal(theTank('Matte', 'genitive'), 'des Beckens „Matte“');
  });
});
