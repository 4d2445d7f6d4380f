// Means, lines, comparisons, permutations and contrasts against R 4.2.2 and the dossier's worked checks (section 6).
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { autocorrelation, effectiveCount, mean, meanOfSeries, median, quantile } from '../../../src/statistics/describe.ts';
import { fiellerInterval, fitLine, interceptInterval, slopeInterval } from '../../../src/statistics/regression.ts';
import { serialEstimate, serialSlope } from '../../../src/statistics/serialModel.ts';
import { theilSen } from '../../../src/statistics/theilSen.ts';
import { oneSample, paired, pooled, welch } from '../../../src/statistics/studentTests.ts';
import { exactSigns, exactSplit, smallestPairP, smallestSplitP } from '../../../src/statistics/permutation.ts';
import { pairedContrast, serialContrast, unpairedContrast } from '../../../src/statistics/contrast.ts';
import { bootstrapMean, circularBlockBootstrap, resampleCircular } from '../../../src/statistics/blockBootstrap.ts';
import { seededRandom } from '../../../src/statistics/random.ts';
import { close, got, refused } from './near.ts';

const lh = [
  2.4, 2.4, 2.4, 2.2, 2.1, 1.5, 2.3, 2.3, 2.5, 2, 1.9, 1.7, 2.2, 1.8, 3.2, 3.2, 2.7, 2.2, 2.2, 1.9, 1.9, 1.8, 2.7, 3, 2.3, 2, 2, 2.9, 2.9, 2.7, 2.7, 2.3, 2.6, 2.4, 1.8, 1.7, 1.5, 1.4, 2.1, 3.3, 3.5, 3.5, 3.1, 2.6, 2.1, 3.4, 3, 2.9,
];
const speed = [4, 4, 7, 7, 8, 9, 10, 10, 10, 11, 11, 12, 12, 12, 12, 13, 13, 13, 13, 14, 14, 14, 14, 15, 15, 15, 16, 16, 17, 17, 17, 18, 18, 18, 18, 19, 19, 19, 20, 20, 20, 20, 20, 22, 23, 24, 24, 24, 24, 25];
const dist = [2, 10, 4, 22, 16, 10, 18, 26, 34, 17, 28, 14, 20, 24, 28, 26, 34, 34, 46, 26, 36, 60, 80, 20, 26, 54, 32, 40, 32, 40, 50, 42, 56, 76, 84, 36, 46, 68, 32, 48, 52, 56, 64, 66, 54, 70, 92, 93, 120, 85];
const drugOne = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const drugTwo = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

/** The simplest model of all: one level. */
const serialMean = (y: readonly number[], options: { readonly gaps?: readonly number[] } = {}) => serialEstimate(y.map(() => [1]), y, 0, options);

suite('series: correlation in time', () => {
  test('R data set lh: mean 2.4, r1 0.5755244755, n_eff 12.932, errors 0.0796157 and 0.1533856', () => {
    const found = got(meanOfSeries(lh));
    close(found.mean, 2.4, 1e-14);
    close(found.correlation, 0.575524475524475, 1e-13);
    close(found.effectiveCount, 12.93209054587, 1e-11);
    close(found.naiveError, 0.07961565476, 1e-9);
    close(found.standardError, 0.1533856466, 1e-9);
    close(got(autocorrelation(lh, 3)), -0.144755244755245, 1e-13);
  });
  test('never more effective values than values, never fewer than one', () => {
    assert.equal(effectiveCount(20, -0.5), 20);
    assert.equal(effectiveCount(20, 1), 1);
  });
  test('what has no answer', () => {
    refused(autocorrelation([1, 2]), 'too-few');
    refused(autocorrelation([1, 1, 1, 1]), 'no-spread');
    refused(autocorrelation([1, Number.NaN, 2, 3]), 'not-finite');
  });
  test('median and quantiles (R type 7)', () => {
    assert.deepEqual([median([3, 1, 2]), median([4, 1, 2, 3]), median([]), quantile([1, 2, 3, 4], 0.25), quantile([5], 0.9)], [2, 2.5, null, 1.75, 5]);
  });
});

suite('straight lines', () => {
  test('R data set cars: slope 3.9324 ± 0.4155, intercept −17.579 ± 6.758, and their intervals', () => {
    const line = got(fitLine(speed, dist));
    close(line.intercept, -17.579094890511, 1e-12);
    close(line.slope, 3.932408759124, 1e-12);
    close(line.interceptError, 6.758440169379, 1e-12);
    close(line.slopeError, 0.415512776657, 1e-11);
    close(line.residualDeviation, 15.3795867488199, 1e-13);
    close(line.rSquared, 0.651079380758251, 1e-13);
    close(line.fisher ?? 0, 89.5671065364678, 1e-12);
    close(line.p ?? 0, 1.4898e-12, 1e-4);
    close(slopeInterval(line).low, 3.0969643, 1e-7);
    close(slopeInterval(line).high, 4.7678532, 1e-7);
    close(interceptInterval(line).low, -31.1678496, 1e-7);
    close(interceptInterval(line).high, -3.9903402, 1e-7);
  });
  test('Theil and Sen: 2.0 and 0.1 with an outlier (R); cars 3.666667 and −15.666667', () => {
    const robust = got(theilSen([1, 2, 3, 4, 5, 6, 7, 8], [2.1, 3.9, 6.2, 7.8, 10.1, 30, 14.2, 15.8]));
    close(robust.slope, 2, 1e-13);
    close(robust.intercept, 0.1, 1e-12);
    assert.ok(robust.interval && robust.interval.low <= 1.9 && robust.interval.high >= 2.3);
    const cars = got(theilSen(speed, dist));
    close(cars.slope, 11 / 3, 1e-13);
    close(cars.intercept, -47 / 3, 1e-13);
  });
  test('correlated residuals widen the interval of a slope', () => {
    const random = seededRandom('slope');
    let level = 0;
    const y = Array.from({ length: 60 }, (_, index) => { level = 0.7 * level + random.normal(); return 0.1 * index + level; });
    const x = y.map((_, index) => index);
    const line = got(fitLine(x, y));
    const serial = got(serialSlope(x, y));
    close(serial.estimate, line.slope, 1e-12);
    assert.ok(serial.correlation > 0.4 && serial.standardError > 1.5 * line.slopeError);
    assert.ok(serial.interval.low < line.slope && serial.interval.high > line.slope);
    // the unit of time and of the readings only scales the answer
    const scaled = got(serialSlope(x.map((each) => each / 2), y.map((each) => 10 * each)));
    close(scaled.standardError, 20 * serial.standardError, 1e-8);
    close(scaled.p, serial.p, 1e-7);
  });
  test('what has no answer', () => {
    refused(fitLine([1, 2], [1, 2]), 'too-few');
    refused(fitLine([1, 1, 1], [1, 2, 3]), 'no-spread');
    refused(fitLine([1, 2, 3], [1, 2]), 'lengths-differ');
    refused(theilSen([2, 2, 2], [1, 2, 3]), 'no-spread');
    refused(fiellerInterval({ above: 1, below: 0.1, aboveVariance: 0.01, belowVariance: 1, covariance: 0 }, 10), 'unbounded');
  });
  test('a line through points on a line is that line', () => {
    fc.assert(fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true }), (slope, intercept) => {
      const x = [0, 0.5, 1, 2, 3.5, 7];
      const line = got(fitLine(x, x.map((each) => intercept + slope * each)));
      assert.ok(Math.abs(line.slope - slope) < 1e-12 * (1 + Math.abs(slope) + Math.abs(intercept)));
      assert.ok(Math.abs(line.intercept - intercept) < 1e-12 * (1 + Math.abs(slope) + Math.abs(intercept)));
    }));
  });
  test('Fieller: far from zero it is the delta interval', () => {
    const interval = got(fiellerInterval({ above: 6, below: 2, aboveVariance: 1e-4, belowVariance: 1e-4, covariance: 0 }, 1e6));
    const delta = 1.96 * Math.sqrt(1e-4 + 9e-4 * 1) / 2;
    close(interval.high - interval.low, 2 * delta, 1e-3);
  });
});

suite('comparisons of means', () => {
  test('five pairs of the dossier: t 4.9603, p 0.0077044, interval 0.20252 to 0.71748, signs p 0.0625', () => {
    const a = [7.1, 6.8, 6.9, 7, 6.5];
    const b = [6.6, 6.5, 6.1, 6.6, 6.2];
    const found = got(paired(a, b));
    close(found.t, 4.9603075673582, 1e-12);
    assert.equal(found.degreesOfFreedom, 4);
    close(found.p, 0.007704422069287, 1e-11);
    close(found.interval.low, 0.2025230732, 1e-9);
    close(found.interval.high, 0.7174769267, 1e-9);
    const exact = got(exactSigns(a.map((each, index) => each - (b[index] as number))));
    assert.deepEqual([exact.p, exact.smallestP, exact.arrangements], [0.0625, 0.0625, 32]);
  });
  test('Student sleep data: t −4.062127683382, p 0.002832890197384, signs p 0.00390625 (R)', () => {
    const found = got(paired(drugOne, drugTwo));
    close(found.t, -4.062127683382, 1e-12);
    close(found.p, 0.002832890197384, 1e-12);
    close(found.interval.low, -2.4598857633, 1e-10);
    close(found.interval.high, -0.7001142367, 1e-9);
    assert.equal(got(exactSigns(drugOne.map((each, index) => each - (drugTwo[index] as number)))).p, 0.00390625);
  });
  test('the same as two groups: Welch and pooled (R)', () => {
    const separate = got(welch(drugOne, drugTwo));
    close(separate.t, -1.8608134674868531, 1e-13);
    close(separate.degreesOfFreedom, 17.7764735161784984, 1e-13);
    close(separate.p, 0.0793941401873582, 1e-12);
    close(separate.interval.low, -3.3654832307117104, 1e-12);
    close(separate.interval.high, 0.2054832307117102, 1e-11);
    const same = got(pooled(drugOne, drugTwo));
    close(same.interval.low, -3.363874032287598, 1e-12);
    close(same.interval.high, 0.203874032287599, 1e-11);
  });
  test('what has no answer', () => {
    refused(oneSample([1]), 'too-few');
    refused(paired([1, 2], [0, 1]), 'no-spread');
    refused(paired([1, 2], [0]), 'lengths-differ');
    refused(welch([1, 1], [2, 2]), 'no-spread');
  });
  test('the smallest p of small designs', () => {
    assert.deepEqual([smallestSplitP(3, 3), smallestSplitP(1, 1)], [0.1, 1]);
    close(smallestSplitP(4, 4), 2 / 70, 1e-15);
    close(smallestSplitP(5, 5), 2 / 252, 1e-15);
    assert.deepEqual([smallestPairP(5), smallestPairP(6)], [0.0625, 0.03125]);
  });
  test('exact splits: complete separation reaches the smallest p, equal groups give 1', () => {
    const apart = got(exactSplit([1, 2, 3], [11, 12, 13]));
    assert.deepEqual([apart.p, apart.smallestP, apart.arrangements], [0.1, 0.1, 20]);
    assert.equal(got(exactSplit([1, 2, 3], [1, 2, 3])).p, 1);
    close(got(exactSplit([1, 2, 10, 11], [1.5, 20, 21, 22])).difference, 6 - 16.125, 1e-14);
    refused(exactSplit(Array.from({ length: 15 }, (_, i) => i), Array.from({ length: 15 }, (_, i) => i)), 'too-many-arrangements');
    refused(exactSplit([1], [2]), 'too-few');
  });
  test('an exact p is never below the smallest, never above 1, and does not care for order or scale', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 2, maxLength: 4 }), fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 2, maxLength: 4 }), (a, b) => {
      const one = got(exactSplit(a, b));
      assert.ok(one.p >= one.smallestP - 1e-15 && one.p <= 1);
      assert.equal(got(exactSplit([...a].reverse(), b)).p, one.p);
    }));
  });
});

suite('contrast of before and after, treatment and control', () => {
  const cells = { treatmentBefore: [7.9, 8.1, 8, 8.2], controlBefore: [7.8, 7.9, 7.9, 8], treatmentAfter: [6.1, 5.8, 5.6, 5.5], controlAfter: [7.6, 7.5, 7.4, 7.4] };
  const before = cells.treatmentBefore.map((each, index) => each - (cells.controlBefore[index] as number));
  const after = cells.treatmentAfter.map((each, index) => each - (cells.controlAfter[index] as number));
  test('toy check, paired and pooled: −1.875, t −20.801, p 8.036e-07 (R)', () => {
    const found = got(pairedContrast(before, after, 'pooled'));
    close(found.difference, -1.875, 1e-13);
    close(found.standardError, 0.09013878, 1e-7);
    close(found.t, -20.801, 5e-5);
    assert.equal(found.degreesOfFreedom, 6);
    close(found.p, 8.036e-7, 1e-4);
    close(found.interval.low, -2.095562, 1e-6);
    close(found.interval.high, -1.654438, 1e-6);
  });
  test('toy check, Welch: 3.6769 degrees, −2.134182 to −1.615818 (R)', () => {
    const found = got(pairedContrast(before, after, 'separate'));
    close(found.degreesOfFreedom, 3.6769, 1e-4);
    close(found.interval.low, -2.134182, 1e-6);
    close(found.interval.high, -1.615818, 1e-6);
  });
  test('toy check, unpaired: error 0.16007811, t −11.713; labels of D over 70 splits: 2/70 (R)', () => {
    const found = got(unpairedContrast(cells));
    close(found.difference, -1.875, 1e-13);
    close(found.standardError, 0.16007811, 1e-7);
    close(found.t, -11.713, 5e-5);
    close(got(exactSplit(after, before)).p, 2 / 70, 1e-14);
  });
  test('serial correlation is never ignored, and too short periods are refused', () => {
    const random = seededRandom('contrast');
    const series = (level: number): number[] => { let noise = 0; return Array.from({ length: 24 }, () => { noise = 0.6 * noise + 0.1 * random.normal(); return level + noise; }); };
    const first = series(0);
    const second = series(-1);
    const serial = got(serialContrast(first, second));
    const plain = got(pairedContrast(first, second, 'separate'));
    close(serial.difference, plain.difference, 1e-14);
    assert.ok(serial.standardError > plain.standardError && serial.interval.low < plain.interval.low && serial.interval.high > plain.interval.high);
    refused(serialContrast([1, 2], [1, 2, 3, 4]), 'too-few');
    refused(serialContrast([1, 1, 1, 1], [2, 2, 2, 2]), 'no-spread');
  });
});

suite('noise correlated in time', () => {
  const series = (random: ReturnType<typeof seededRandom>, count: number, correlation: number): number[] => {
    let noise = random.normal();
    return Array.from({ length: count }, (_, index) => { if (index > 0) noise = correlation * noise + Math.sqrt(1 - correlation ** 2) * random.normal(); return noise; });
  };
  test('95 % intervals of contrast and slope cover near 95 % at 72 and 48 readings, correlation 0.3 and 0.6', function slow() {
    this.timeout(120_000);
    const random = seededRandom('coverage');
    const nights = 120;
    for (const correlation of [0.3, 0.6]) {
      let contrasts = 0;
      let slopes = 0;
      for (let night = 0; night < nights; night += 1) {
        const d = series(random, 72, correlation);
        const contrast = got(serialContrast(d.slice(0, 24), d.slice(24)));
        if (contrast.interval.low <= 0 && contrast.interval.high >= 0) contrasts += 1;
        const y = series(random, 48, correlation);
        const slope = got(serialSlope(y.map((_, index) => index), y));
        if (slope.interval.low <= 0 && slope.interval.high >= 0) slopes += 1;
      }
      console.log(`      correlation ${correlation}: contrast ${(100 * contrasts / nights).toFixed(1)} %, slope ${(100 * slopes / nights).toFixed(1)} %`);
      for (const covered of [contrasts, slopes]) assert.ok(covered / nights > 0.9, String(covered));
    }
  });
  test('independent noise: near the ordinary interval; the mean of lh a little wider than by effective number', () => {
    const random = seededRandom('white');
    const y = Array.from({ length: 100 }, () => random.normal());
    const line = got(fitLine(y.map((_, index) => index), y));
    const ratio = got(serialSlope(y.map((_, index) => index), y)).standardError / line.slopeError;
    assert.ok(ratio > 0.8 && ratio < 1.3, String(ratio));
    const found = got(serialMean(lh));
    close(found.estimate, 2.4, 1e-12);
    // By effective number, with r1 taken as known, 0.1534 (R); here r is unknown and may be larger.
    assert.ok(found.standardError > 0.153 && found.standardError < 0.26, String(found.standardError));
    assert.ok(Math.abs(found.correlation - 0.5755) < 0.1);
  });
  test('a random walk says that it is one; stretches far apart are independent', () => {
    const random = seededRandom('walk');
    let level = 0;
    const walk = Array.from({ length: 40 }, () => { level += random.normal(); return level; });
    assert.ok(got(serialMean(walk)).nearlyRandomWalk);
    assert.ok(!got(serialMean(series(random, 60, 0.3))).nearlyRandomWalk);
    const values = Array.from({ length: 30 }, () => random.normal());
    const apart = got(serialMean(values, { gaps: values.map(() => Infinity) }));
    close(apart.standardError, got(meanOfSeries(values)).naiveError, 1e-9);
  });
  test('what has no answer', () => {
    refused(serialMean([1, 2, 3]), 'too-few');
    refused(serialMean([2, 2, 2, 2, 2]), 'no-spread');
    refused(serialSlope([0, 1, 1, 2, 3], [1, 2, 3, 4, 6]), 'no-spread');
    refused(serialEstimate([[1, 1], [1, 1], [1, 1], [1, 1], [1, 1]], [1, 2, 3, 4, 6], 0), 'not-identifiable');
    refused(serialMean([1, 2, 3, 4], { gaps: [1, 1] }), 'lengths-differ');
    refused(serialMean([1, 2, Number.NaN, 4]), 'not-finite');
  });
});

suite('seeded resampling', () => {
  test('the same seed gives the same numbers, another seed others', () => {
    const draw = (seed: string): number[] => { const random = seededRandom(seed); return Array.from({ length: 5 }, () => random.next()); };
    assert.deepEqual(draw('night 1'), draw('night 1'));
    assert.notDeepEqual(draw('night 1'), draw('night 2'));
    assert.deepEqual(seededRandom(7).shuffle([1, 2, 3, 4, 5]), seededRandom(7).shuffle([1, 2, 3, 4, 5]));
  });
  test('uniform and normal numbers have the moments they should', () => {
    const random = seededRandom('moments');
    const uniform = Array.from({ length: 40_000 }, () => random.next());
    const normal = Array.from({ length: 40_000 }, () => random.normal());
    assert.ok(uniform.every((each) => each >= 0 && each < 1) && normal.every(Number.isFinite));
    assert.ok(Math.abs(mean(uniform) - 0.5) < 0.006 && Math.abs(mean(normal)) < 0.02);
    assert.ok(Math.abs(mean(normal.map((each) => each * each)) - 1) < 0.03);
    assert.ok(Math.abs(got(autocorrelation(uniform))) < 0.02);
    const counts = new Array<number>(6).fill(0);
    for (let index = 0; index < 12_000; index += 1) { const side = random.below(6); counts[side] = (counts[side] as number) + 1; }
    assert.ok(counts.every((count) => count > 1850 && count < 2150), counts.join(' '));
  });
  test('a circular resample is made of blocks', () => {
    const indices = resampleCircular(20, 4, seededRandom(3));
    assert.equal(indices.length, 20);
    for (let index = 0; index < 20; index += 1) if (index % 4 !== 0) assert.equal(indices[index], ((indices[index - 1] as number) + 1) % 20);
  });
  test('bootstrap error of the mean of lh is near the one by effective number', () => {
    const found = got(bootstrapMean(lh, seededRandom('lh'), { blockLength: 6 }));
    assert.ok(found.standardError > 0.1 && found.standardError < 0.16, String(found.standardError));
    assert.ok(found.interval.low < 2.4 && found.interval.high > 2.4);
    refused(bootstrapMean(lh.slice(0, 12), seededRandom(1), { blockLength: 4 }), 'too-few');
    refused(circularBlockBootstrap(20, () => null, seededRandom(1)), 'not-finite');
  });
});
