// The statistics against independent references on seeded random data: R (lm, t.test, qt, pt, power.t.test, acf, arima) and
// SciPy (curve_fit). Skipped with the reason printed where they are not installed; with CI=true that is a failure.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { autocorrelation } from '../../../src/statistics/describe.ts';
import { fisherTail, noncentralStudentProbability, studentQuantile, studentTwoSided } from '../../../src/statistics/distributions.ts';
import { fitDecay } from '../../../src/statistics/decayFit.ts';
import { minimumDifference } from '../../../src/statistics/minimumDifference.ts';
import { fitLine, interceptInterval, slopeInterval } from '../../../src/statistics/regression.ts';
import { seededRandom } from '../../../src/statistics/random.ts';
import { serialSlope } from '../../../src/statistics/serialModel.ts';
import { pooled, welch } from '../../../src/statistics/studentTests.ts';
import { close, got } from './near.ts';

/** Runs a program over a script and gives the numbers it prints, or the reason why not. */
function numbersOf(program: string, args: readonly string[], script: string): number[] | string {
  const run = spawnSync(program, [...args], { input: script, encoding: 'utf8', timeout: 100_000 });
  if (run.error) return `${program} did not start (${run.error.message})`;
  if (run.status !== 0) return `${program} failed (${run.stderr.trim().split('\n').at(-1) ?? 'no message'})`;
  return run.stdout.trim().split(/\s+/u).map(Number);
}

function skipWithReason(context: Mocha.Context, reason: string): void {
  console.log(`      skipped: ${reason}`);
  assert.notEqual(process.env['CI'], 'true', `in CI the reference must be there: ${reason}`);
  context.skip();
}

const vector = (values: readonly number[]): string => `c(${values.join(',')})`;

suite('oracle: R', () => {
  const random = seededRandom('oracle');
  const x = Array.from({ length: 25 }, (_, index) => index / 2);
  const y = x.map((each) => 8 - 0.21 * each + 0.1 * random.normal());
  const a = Array.from({ length: 9 }, () => 7 + 0.4 * random.normal());
  const b = Array.from({ length: 6 }, () => 6.6 + 0.8 * random.normal());
  let noise = 0;
  const z = Array.from({ length: 200 }, (_, index) => { noise = 0.5 * noise + random.normal(); return 0.02 * index + noise; });
  let numbers: number[] = [];
  suiteSetup(function setup() {
    this.timeout(120_000);
    const script = `
      x <- ${vector(x)}; y <- ${vector(y)}; a <- ${vector(a)}; b <- ${vector(b)}; z <- ${vector(z)}
      m <- lm(y ~ x); s <- summary(m)
      g <- arima(z, order = c(1, 0, 0), xreg = seq_along(z))
      w <- t.test(a, b); p <- t.test(a, b, var.equal = TRUE)
      cat(sprintf("%.17g", c(coef(m), s$coefficients[, 2], confint(m), s$r.squared, s$fstatistic[1],
        w$statistic, w$parameter, w$p.value, w$conf.int, p$conf.int, acf(y, plot = FALSE, lag.max = 1)$acf[2],
        qt(0.975, c(1.5, 6, 47.3)), pf(3.3, 2, 11, lower.tail = FALSE), 2 * pt(-3.1, 7.7), pt(2.4, 12, ncp = 2.8),
        power.t.test(n = 4, sd = 0.2, power = 0.9, delta = NULL, tol = 1e-12)$delta, coef(g)[3], sqrt(diag(vcov(g)))[3])), sep = "\\n")`;
    const found = numbersOf('Rscript', ['-'], script);
    if (typeof found === 'string') skipWithReason(this, found); else numbers = found;
  });

  test('line, comparisons and distributions agree to 10 digits; the planned difference to 9; a long series near arima', () => {
    const line = got(fitLine(x, y));
    const first = interceptInterval(line);
    const second = slopeInterval(line);
    const separate = got(welch(a, b));
    const same = got(pooled(a, b));
    const ours = [
      line.intercept, line.slope, line.interceptError, line.slopeError, first.low, second.low, first.high, second.high, line.rSquared, line.fisher ?? 0,
      separate.t, separate.degreesOfFreedom, separate.p, separate.interval.low, separate.interval.high, same.interval.low, same.interval.high, got(autocorrelation(y)),
      studentQuantile(0.975, 1.5), studentQuantile(0.975, 6), studentQuantile(0.975, 47.3), fisherTail(3.3, 2, 11), studentTwoSided(3.1, 7.7), noncentralStudentProbability(2.4, 12, 2.8),
    ];
    ours.forEach((value, index) => close(value, numbers[index] as number, 1e-10, `number ${index}`));
    close(got(minimumDifference({ count: 4, deviation: 0.2, kind: 'two-groups', power: 0.9 })), numbers[ours.length] as number, 1e-9);
    const serial = got(serialSlope(z.map((_, index) => index + 1), z));
    const [slope, error] = numbers.slice(ours.length + 1) as [number, number];
    assert.ok(Math.abs(serial.estimate - slope) < error, `slope ${serial.estimate} and ${slope} ± ${error}`);
    assert.ok(serial.standardError > 0.9 * error && serial.standardError < 1.4 * error, `error ${serial.standardError} and ${error}`);
  });
});

suite('oracle: SciPy', () => {
  const random = seededRandom('oracle curve');
  const t = Array.from({ length: 24 }, (_, index) => index / 2);
  const y = t.map((each) => 4.2 + 3.8 * Math.exp(-0.19 * each) + 0.04 * random.normal());
  let numbers: number[] = [];
  suiteSetup(function setup() {
    this.timeout(120_000);
    const script = `
import numpy as np
from scipy.optimize import curve_fit
t = np.array([${t.join(',')}]); y = np.array([${y.join(',')}])
p, c = curve_fit(lambda t, e, i, k: e + (i - e) * np.exp(-k * t), t, y, p0=[4, 8, 0.2], ftol=1e-15, xtol=1e-15, gtol=1e-15)
print(*[repr(float(v)) for v in [*p, *np.sqrt(np.diag(c)), c[0][2]]])
`;
    const found = numbersOf('/usr/bin/python3', ['-'], script);
    if (typeof found === 'string') skipWithReason(this, found); else numbers = found;
  });
  test('decay: parameters to 6 digits, errors and covariance to 4 (its derivatives are numeric)', () => {
    const decay = got(fitDecay(t, y));
    const { fit } = decay;
    [decay.equilibrium, decay.initial, decay.rate].forEach((value, index) => close(value, numbers[index] as number, 1e-6));
    fit.standardErrors.forEach((value, index) => close(value, numbers[3 + index] as number, 1e-4));
    close(fit.covariance[0]?.[2] as number, numbers[6] as number, 1e-4);
  });
});
