// Published criteria in German: whom each protects.
import assert from 'node:assert/strict';
import { criteria } from '../../../src/protocol/criteria.ts';
import { protectedBy } from '../../../src/words/criteria.ts';

suite('criteria in German', () => {
  test('every criterion says whom it protects; the words of an author stay', () => {
    for (const each of criteria) assert.notEqual(protectedBy(each.for, 'de'), each.for, each.name);
    assert.equal(protectedBy('unsere Schnecken', 'de'), 'unsere Schnecken');
    for (const each of criteria) assert.equal(protectedBy(each.for, 'en'), each.for);
  });
});
