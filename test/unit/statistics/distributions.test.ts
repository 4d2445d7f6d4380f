// Probabilities and quantiles against R 4.2.2 (qt, pt, pf, pnorm, qnorm), to a relative 1e-10 or better.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { fisherProbability, fisherTail, noncentralStudentProbability, normalProbability, normalQuantile, studentProbability, studentQuantile, studentTwoSided } from '../../../src/statistics/distributions.ts';
import { incompleteBeta, logBeta, logGamma } from '../../../src/statistics/special.ts';
import { minimumDifference, minimumDifferenceApproximate } from '../../../src/statistics/minimumDifference.ts';
import { close, got, refused } from './near.ts';

suite('distributions', () => {
  // dossier, section 6.6, and R: [degrees, p, t]
  const quantiles: [number, number, number][] = [
    [1, 0.975, 12.70620473617469], [2, 0.975, 4.302652729749462], [4, 0.975, 2.776445105197793], [10, 0.975, 2.228138851986274], [34, 0.975, 2.032244509317718], [7.3, 0.975, 2.345066736547702], [3, 0.995, 5.840909309733354],
    [1, 0.55, 0.15838444032453658], [1, 0.9, 3.0776835371752544], [1, 0.995, 63.656741162871526], [1, 0.9999999, 3183098.8635132448], [2, 0.9999999, 2236.0676426780628], [3, 0.9999999, 222.57159098625121],
    [4.5, 0.55, 0.13291007210202041], [4.5, 0.9, 1.5008853175085568], [4.5, 0.975, 2.6589123472044025], [4.5, 0.9999999, 51.912218685498551], [10, 0.995, 3.16927267261695], [34, 0.55, 0.12660347872428046],
    [34, 0.9999999, 6.4906720038034118], [100, 0.975, 1.9839715185235516], [10000, 0.975, 1.9602012398906257], [10000, 0.9999999, 5.2029836383653238], [1e6, 0.975, 1.9599663568141066], [1e6, 0.55, 0.12566137876648761], [1e6, 0.9999999, 5.1993740209144228],
  ];
  for (const [degrees, p, t] of quantiles) {
    test(`t(${p}; ${degrees}) is ${t} (R)`, () => {
      close(studentQuantile(p, degrees), t, 1e-11);
      close(studentQuantile(1 - p, degrees), -t, 1e-9);
    });
  }
  test('probabilities (R)', () => {
    close(fisherTail(4.2, 3, 17), 0.02143785785239704, 1e-13);
    close(fisherProbability(0.5, 1, 5), 0.48891591956971919, 1e-13);
    close(normalProbability(1.3), 0.9031995154143897, 1e-14);
    close(normalProbability(-6.2), 2.8231580370432713e-10, 1e-12);
    close(normalQuantile(0.975), 1.9599639845400536, 1e-14);
    close(normalQuantile(1e-12), -7.0344838253011321, 1e-12);
    close(studentProbability(2.1, 5.5), 0.95765403743512656, 1e-13);
    close(studentProbability(-8, 4), 0.00066194845460858384, 1e-12);
    close(noncentralStudentProbability(2, 10, 1.5), 0.65915407244202628, 1e-10);
    close(studentTwoSided(4.9603075673582, 4), 0.007704422069287, 1e-11);
    close(studentQuantile(0.975, Infinity), 1.9599639845400536, 1e-14);
  });
  test('the ends', () => assert.deepEqual([studentQuantile(0, 3), studentQuantile(1, 3), studentQuantile(0.5, 3), normalQuantile(0), normalQuantile(1)], [-Infinity, Infinity, 0, -Infinity, Infinity]));
  test('quantile and probability are each other turned round', () => {
    fc.assert(fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), fc.double({ min: 0.5, max: 1e5, noNaN: true }), (p, degrees) => {
      close(studentProbability(studentQuantile(p, degrees), degrees), p, 1e-11);
      close(normalProbability(normalQuantile(p)), p, 1e-12);
    }));
  });
  test('beta and gamma: known values and symmetry', () => {
    close(logGamma(0.5), Math.log(Math.sqrt(Math.PI)), 1e-14);
    close(logGamma(11), Math.log(3628800), 1e-14);
    close(logBeta(0.5, 0.5), Math.log(Math.PI), 1e-14);
    close(incompleteBeta(2, 3, 0.4), 0.5248, 1e-14);
    fc.assert(fc.property(fc.double({ min: 0.3, max: 500, noNaN: true }), fc.double({ min: 0.3, max: 500, noNaN: true }), fc.double({ min: 0.001, max: 0.999, noNaN: true }), (a, b, x) =>
      assert.ok(Math.abs(incompleteBeta(a, b, x) + incompleteBeta(b, a, 1 - x) - 1) < 1e-12)));
  });
});

suite('smallest difference of a design', () => {
  // dossier, section 6.3: approximation, and R's power.t.test
  test('5 pairs, s 0.3: 0.498743 by the approximation, 0.504599711 by the noncentral t (R)', () => {
    close(got(minimumDifferenceApproximate({ count: 5, deviation: 0.3, kind: 'paired' })), 0.498743, 1e-6);
    close(got(minimumDifference({ count: 5, deviation: 0.3, kind: 'paired' })), 0.504599711460074, 2e-6);
  });
  test('two groups: 3 each, s 0.3: 0.9212731; 10 each, s 1: 1.3249456 (R)', () => {
    close(got(minimumDifference({ count: 3, deviation: 0.3, kind: 'two-groups' })), 0.921273103521588, 1e-5);
    close(got(minimumDifference({ count: 10, deviation: 1, kind: 'two-groups' })), 1.32494563914455, 1e-5);
  });
  test('one tank a side has no answer', () => {
    refused(minimumDifference({ count: 1, deviation: 0.3, kind: 'two-groups' }), 'too-few');
    refused(minimumDifference({ count: 4, deviation: 0, kind: 'paired' }), 'no-spread');
  });
});
