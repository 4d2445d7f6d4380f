// Student's t, Snedecor's F and the normal distribution: probabilities and quantiles.
import { incompleteBeta, logBeta, logGamma, normalTail } from './special.ts';

/** P(Z ≤ x) for the standard normal distribution. */
export function normalProbability(x: number): number {
  return x >= 0 ? 1 - normalTail(x) : normalTail(-x);
}

/** The x with P(Z ≤ x) = p, 0 < p < 1; ±Infinity at the ends. Newton's method on the tail, to the last digits. */
export function normalQuantile(p: number): number {
  if (!(p > 0)) return -Infinity;
  if (!(p < 1)) return Infinity;
  if (p < 0.5) return -upperNormal(p);
  return p === 0.5 ? 0 : upperNormal(1 - p);
}

function upperNormal(tail: number): number {
  // Abramowitz and Stegun 26.2.23 as the start
  const t = Math.sqrt(-2 * Math.log(tail));
  let x = Math.max(0, t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))));
  for (let step = 0; step < 50; step += 1) {
    const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    const change = (normalTail(x) - tail) / density;
    x += change / (1 + 0.5 * x * change);
    if (Math.abs(change) < 1e-15 * Math.max(1, x)) break;
  }
  return x;
}

/** P(T > t) for Student's t, t ≥ 0. */
function studentTail(t: number, degrees: number): number {
  if (!Number.isFinite(degrees)) return normalTail(t);
  const square = t * t;
  return 0.5 * incompleteBeta(degrees / 2, 0.5, degrees / (degrees + square), square / (degrees + square));
}

/** P(T ≤ t) for Student's t with `degrees` (> 0, any real, or Infinity) of freedom. Source: Abramowitz and Stegun 26.7.1. */
export function studentProbability(t: number, degrees: number): number {
  return t >= 0 ? 1 - studentTail(t, degrees) : studentTail(-t, degrees);
}

/** Density of Student's t; degrees of freedom as `studentProbability`. */
export function studentDensity(t: number, degrees: number): number {
  return Math.exp(-logBeta(degrees / 2, 0.5) - 0.5 * Math.log(degrees) - 0.5 * (degrees + 1) * Math.log1p(t * t / degrees));
}

/** Two-sided p of a t value, 0 to 1; degrees of freedom as `studentProbability`. */
export function studentTwoSided(t: number, degrees: number): number {
  return Math.min(1, 2 * studentTail(Math.abs(t), degrees));
}

/** The t with P(T ≤ t) = p, to a relative 1e-12; ±Infinity at p = 0 and 1. Degrees of freedom as `studentProbability`. */
export function studentQuantile(p: number, degrees: number): number {
  if (!(p > 0)) return -Infinity;
  if (!(p < 1)) return Infinity;
  if (p === 0.5) return 0;
  if (!Number.isFinite(degrees)) return normalQuantile(p);
  const tail = Math.min(p, 1 - p);
  let low = 0;
  let high = Infinity;
  let t = normalQuantile(1 - tail);
  for (let step = 0; step < 400; step += 1) {
    const excess = studentTail(t, degrees) - tail;
    if (excess > 0) low = t; else high = t;
    const density = studentDensity(t, degrees);
    let next = t + excess / density;
    if (!(next > low && next < high)) next = Number.isFinite(high) ? 0.5 * (low + high) : 2 * Math.max(t, 1);
    if (Math.abs(next - t) <= 1e-15 * Math.abs(next)) { t = next; break; }
    t = next;
  }
  return p < 0.5 ? -t : t;
}

/** P(F > f) for Snedecor's F, f ≥ 0, with `between` and `within` (> 0) degrees of freedom. Source: Abramowitz and Stegun 26.6.2. */
export function fisherTail(f: number, between: number, within: number): number {
  if (!(f > 0)) return 1;
  const sum = within + between * f;
  return incompleteBeta(within / 2, between / 2, within / sum, between * f / sum);
}

/** P(F ≤ f) for Snedecor's F; arguments as `fisherTail`. */
export function fisherProbability(f: number, between: number, within: number): number {
  if (!(f > 0)) return 0;
  const sum = within + between * f;
  return incompleteBeta(between / 2, within / 2, between * f / sum, within / sum);
}

/** P(T ≤ t), t ≥ 0, for the noncentral t distribution. Source: Lenth (1989), Applied Statistics 38, 185–189, algorithm AS 243. */
export function noncentralStudentProbability(t: number, degrees: number, shift: number): number {
  const square = t * t;
  const x = square / (square + degrees);
  const rest = degrees / (square + degrees);
  const lambda = shift * shift;
  let p = 0.5 * Math.exp(-0.5 * lambda);
  let q = Math.sqrt(2 / Math.PI) * p * shift;
  let s = 0.5 - p;
  let a = 0.5;
  const b = 0.5 * degrees;
  const power = rest ** b;
  const logB = 0.5 * Math.log(Math.PI) + logGamma(b) - logGamma(a + b);
  let odd = incompleteBeta(a, b, x, rest);
  let oddStep = 2 * power * Math.exp(a * Math.log(x) - logB);
  let even = 1 - power;
  let evenStep = b * x * power;
  let sum = p * odd + q * even;
  for (let n = 1; n <= 5000; n += 1) {
    a += 1;
    odd -= oddStep;
    even -= evenStep;
    oddStep *= x * (a + b - 1) / a;
    evenStep *= x * (a + b - 0.5) / (a + 0.5);
    p *= lambda / (2 * n);
    q *= lambda / (2 * n + 1);
    s -= p;
    sum += p * odd + q * even;
    if (Math.abs(2 * s * (odd - oddStep)) < 1e-13) break;
  }
  return Math.min(1, Math.max(0, sum + normalProbability(-shift)));
}
