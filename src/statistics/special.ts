// Gamma and beta functions to about 1e-14, on which the distributions stand.

/** log Γ(x) − [(x − ½) log x − x + ½ log 2π] for x ≥ 10: Stirling's series. Source: Abramowitz and Stegun 6.1.41. */
function stirlingRest(x: number): number {
  const y = 1 / (x * x);
  return (1 / 12 - y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y * (1 / 1188 - y * (691 / 360_360)))))) / x;
}

const halfLogTwoPi = 0.918938533204672741780329736406;

/** Natural logarithm of the gamma function, x > 0. Source: Abramowitz and Stegun 6.1.41 and 6.1.15. */
export function logGamma(x: number): number {
  let shifted = x;
  let product = 1;
  while (shifted < 10) { product *= shifted; shifted += 1; }
  return (shifted - 0.5) * Math.log(shifted) - shifted + halfLogTwoPi + stirlingRest(shifted) - Math.log(product);
}

/** Natural logarithm of the beta function, a, b > 0, without cancellation for large arguments. */
export function logBeta(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < 10) return logGamma(a) + logGamma(b) - logGamma(a + b);
  const rest = stirlingRest(large) - stirlingRest(a + b);
  if (small >= 10) {
    return -0.5 * Math.log(large) + halfLogTwoPi + stirlingRest(small) + rest + (small - 0.5) * Math.log(small / (a + b)) + large * Math.log1p(-small / (a + b));
  }
  return logGamma(small) + rest + small - small * Math.log(a + b) + (large - 0.5) * Math.log1p(-small / (a + b));
}

/**
 * Regularised incomplete beta function I_x(a, b); `y` is 1 − x, given apart so that nothing is lost near x = 1.
 * Continued fraction by Lentz's method. Source: Abramowitz and Stegun 26.5.8.
 */
export function incompleteBeta(a: number, b: number, x: number, y = 1 - x): number {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(b, a, y, x);
  const logX = x < 0.5 ? Math.log(x) : Math.log1p(-y);
  const logY = y < 0.5 ? Math.log(y) : Math.log1p(-x);
  const front = Math.exp(a * logX + b * logY - logBeta(a, b)) / a;
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - (a + b) * x / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let fraction = d;
  for (let m = 1; m <= 100_000; m += 1) {
    const even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 + even * d; d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = 1 + even / c; if (Math.abs(c) < tiny) c = tiny;
    fraction *= d * c;
    const odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + odd * d; d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = 1 + odd / c; if (Math.abs(c) < tiny) c = tiny;
    const change = d * c;
    fraction *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return front * fraction;
}

/** Upper tail of the standard normal distribution, x ≥ 0: series near 0, continued fraction beyond. Source: Abramowitz and Stegun 26.2.11, 26.2.14. */
export function normalTail(x: number): number {
  const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 3; Math.abs(term) > 1e-17 * Math.abs(sum); n += 2) { term *= x * x / n; sum += term; }
    return 0.5 - density * sum;
  }
  let fraction = 0;
  for (let n = 400; n >= 1; n -= 1) fraction = n / (x + fraction);
  return density / (x + fraction);
}
