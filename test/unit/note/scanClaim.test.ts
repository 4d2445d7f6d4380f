// The scanner of claims: forms, strings, separators, and everything in braces that is no claim.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { scanClaim } from '../../../src/note/scanClaim.ts';

/** The parts of a claim as texts, or null. */
function scan(source: string, position = source.indexOf('{')): Record<string, unknown> | null {
  const claim = scanClaim(source, position);
  return claim && {
    form: claim.form, words: source.slice(claim.wordsStart, claim.wordsEnd), formula: source.slice(claim.formulaStart, claim.formulaEnd),
    ...(claim.form === 'stated' ? { source: claim.source } : {}), whole: source.slice(position, claim.end),
  };
}

suite('scanClaim', () => {
  test('reads the four forms', () => {
    assert.deepEqual(scan('lost {2.9 % = first-loss};'), { form: 'equals', words: '2.9 %', formula: 'first-loss', whole: '{2.9 % = first-loss}' });
    assert.deepEqual(scan('{? = mean(mat.DO)}'), { form: 'unfilled', words: '?', formula: 'mean(mat.DO)', whole: '{? = mean(mat.DO)}' });
    assert.deepEqual(scan('{it fell if rate(mat.DO) < 0 mg/L/h}'),
      { form: 'if', words: 'it fell', formula: 'rate(mat.DO) < 0 mg/L/h', whole: '{it fell if rate(mat.DO) < 0 mg/L/h}' });
    assert.deepEqual(scan('{4.0 mg/L = stated "Keeper\'s handbook, p. 12"}'),
      { form: 'stated', words: '4.0 mg/L', formula: '"Keeper\'s handbook, p. 12"', source: "Keeper's handbook, p. 12", whole: '{4.0 mg/L = stated "Keeper\'s handbook, p. 12"}' });
  });

  test('the last separator outside a string counts', () => {
    assert.equal(scan('{a = b if c}')!['words'], 'a = b');
    assert.equal(scan('{a if b = c}')!['form'], 'equals');
    assert.deepEqual(scan('{4 mg/L = stated "a = b if c"}')!['source'], 'a = b if c');
    assert.equal(scan('{? = a = b}')!['formula'], 'a = b');
    assert.equal(scan('{it rose if a == b}')!['formula'], 'a == b');
  });

  test('strings hold braces, escapes and line breaks', () => {
    assert.equal(scan('{4 mg/L = stated "set {a} b} c"} rest')!['source'], 'set {a} b} c');
    assert.equal(scan('{4 mg/L = stated "the \\"red\\" book"}')!['source'], 'the "red" book');
    assert.equal(scan('{4 mg/L = stated "one\ntwo"}')!['source'], 'one two');
    assert.equal(scan('{the "lettuce" tank fell if a < b}')!['words'], 'the "lettuce" tank fell');
  });

  test('an inch mark opens no string', () => {
    assert.equal(scan('{12" = length(mat)} and {15" = length(open)}')!['whole'], '{12" = length(mat)}');
  });

  test('a stated source that is missing or unreadable is null', () => {
    assert.equal(scan('{4 mg/L = stated}')!['source'], null);
    assert.equal(scan('{4 mg/L = stated handbook}')!['source'], null);
    assert.equal(scan('{4 mg/L = stated ""}')!['source'], null);
    assert.equal(scan('{4 mg/L = stated "handbook}')!['source'], null);
    assert.equal(scan('{4 mg/L = stated-value}')!['form'], 'equals');
  });

  test('crosses a line break', () => {
    assert.deepEqual(scan('{2.9 %\n= first-loss}'), { form: 'equals', words: '2.9 %', formula: 'first-loss', whole: '{2.9 %\n= first-loss}' });
    assert.equal(scan('{it fell\nif a < b}')!['form'], 'if');
  });

  test('an empty formula is still a claim, so that its problem has a place', () => {
    assert.equal(scan('{2.9 % = }')!['formula'], '');
  });

  test('anything else in braces is plain text', () => {
    for (const plain of ['{a}', '{}', '{ }', '{x=1}', '{x =1}', '{x= 1}', '{a == b}', '{a <= b}', '{iffy}', '{what if}', '{ = x}', '{if x}', '{2 % = x',
      '{{2 = x}}', '{% if page %}', '{2 `a` = x}', '{.class #id}', '{a {b = c}']) {
      assert.equal(scan(plain), null, plain);
    }
    assert.equal(scan('{a {b = c}', 3)!['words'], 'b', 'the inner one is a claim of its own');
    assert.equal(scan('{{2 = x}}', 1), null);
  });

  test('never throws and stays inside the text', () => {
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom('{', '}', '"', '\\', ' ', '=', 'if', '\n', 'a', '1', '?', '`', 'stated') }), (source) => {
      for (let at = source.indexOf('{'); at >= 0; at = source.indexOf('{', at + 1)) {
        const claim = scanClaim(source, at);
        if (!claim) continue;
        assert.ok(at < claim.wordsStart && claim.wordsStart < claim.wordsEnd && claim.wordsEnd < claim.formulaStart + 1);
        assert.ok(claim.formulaStart <= claim.formulaEnd && claim.formulaEnd < claim.end && claim.end <= source.length);
        assert.equal(source[claim.end - 1], '}');
      }
    }), { numRuns: 2000 });
  });
});
