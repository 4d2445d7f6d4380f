// The intervals of docs/worked-night.md by dense matrices and a fine sum over the scatter's correlation: the equations of the page
// in their plainest form, nothing of the product's own statistics.
import { curve, fit, rows, solubility } from './workedNight.ts';

type Matrix = number[][];
const transpose = (a: Matrix): Matrix => a[0]!.map((_, column) => a.map((row) => row[column]!));
const times = (a: Matrix, b: Matrix): Matrix => a.map((row) => b[0]!.map((_, column) => row.reduce((sum, each, place) => sum + each * b[place]![column]!, 0)));

/** Inverse and determinant by Gauss and Jordan. */
function inverse(matrix: Matrix): { inverse: Matrix; determinant: number } {
  const size = matrix.length;
  const work = matrix.map((row, index) => [...row, ...Array.from({ length: size }, (_, column) => (column === index ? 1 : 0))]);
  let determinant = 1;
  for (let pivot = 0; pivot < size; pivot += 1) {
    const best = work.slice(pivot).reduce((found, row, offset) => (Math.abs(row[pivot]!) > Math.abs(work[found]![pivot]!) ? pivot + offset : found), pivot);
    if (best !== pivot) { [work[pivot], work[best]] = [work[best]!, work[pivot]!]; determinant = -determinant; }
    const head = work[pivot]![pivot]!;
    determinant *= head;
    work[pivot] = work[pivot]!.map((each) => each / head);
    for (let row = 0; row < size; row += 1) {
      if (row === pivot) continue;
      const factor = work[row]![pivot]!;
      work[row] = work[row]!.map((each, column) => each - factor * work[pivot]![column]!);
    }
  }
  return { inverse: work.map((row) => row.slice(size)), determinant };
}

/** Student's t with 6 degrees of freedom, in closed form. */
function student6(t: number): number {
  const angle = Math.atan(t / Math.sqrt(6));
  const c = Math.cos(angle) ** 2;
  return 0.5 + 0.5 * Math.sin(angle) * (1 + c / 2 + 3 * c * c / 8);
}

function quantile(probability: (x: number) => number, wanted: number): number {
  let low = 0;
  let high = 100;
  for (let step = 0; step < 200; step += 1) { const middle = (low + high) / 2; if (probability(middle) < wanted) low = middle; else high = middle; }
  return (low + high) / 2;
}

export interface WorkedIntervals {
  /** Of k and R. */
  readonly correlation: number;
  /** Standard errors and t as if the scatter were independent. */
  readonly plainError: { readonly k: number; readonly R: number };
  readonly t: number;
  /** Mean of the credible correlations of the scatter. */
  readonly serial: number;
  /** 95 % half-widths with the scatter's correlation counted in. */
  readonly half: { readonly k: number; readonly R: number };
  /** R with the instruments' accuracy beside the scatter. */
  readonly halfOfR: number;
  readonly net: { readonly value: number; readonly half: number };
  /** Hours of `time-to(mat.DO, 5.5 mg/L)` with the instruments' accuracy. */
  readonly halfOfTime: number;
}

/** Steps of the sum over the correlation. */
const steps = 2000;

export function workedIntervals(): WorkedIntervals {
  const Cs = rows.map(([, , t, p]) => solubility(t, p).Cs);
  const C = rows.map(([, c]) => c);
  const best = fit(Cs, C);
  const at = (move: readonly number[]): number[] => curve(Cs, best.C0 + move[0]!, best.k + move[1]!, best.R + move[2]!);
  const slope = (place: number): number[] => {
    const by = (size: number): number[] => at([0, 1, 2].map((each) => (each === place ? size : 0)));
    return by(1e-5).map((each, row) => (each - by(-1e-5)[row]!) / 2e-5);
  };
  const J = transpose([slope(0), slope(1), slope(2)]);
  const e = C.map((each, row) => [each - at([0, 0, 0])[row]!]);
  const n = C.length;
  const degrees = n - 3;
  const normal = inverse(times(transpose(J), J)).inverse;
  const share = times(normal, transpose(J));
  const variance = best.squares / degrees;
  const error = (place: number): number => Math.sqrt(variance * normal[place]![place]!);
  const parts: { r: number; weight: number; errors: number[] }[] = [];
  for (let step = 0; step < steps; step += 1) {
    const r = -0.9 + 1.89 * (step + 0.5) / steps;
    const V = C.map((_, a) => C.map((__, b) => (r === 0 && a === b ? 1 : r ** Math.abs(a - b))));
    const { inverse: W, determinant } = inverse(V);
    const normalHere = inverse(times(times(transpose(J), W), J));
    const Je = times(times(transpose(J), W), e);
    const squares = times(times(transpose(e), W), e)[0]![0]! - times(times(transpose(Je), normalHere.inverse), Je)[0]![0]!;
    const weight = determinant ** -0.5 * normalHere.determinant ** -0.5 * squares ** (-degrees / 2) / ((1 + r) * Math.sqrt(1 - r));
    const spread = times(times(share, V), transpose(share));
    parts.push({ r, weight, errors: [0, 1, 2].map((place) => Math.sqrt(spread[place]![place]! * squares / degrees)) });
  }
  const total = parts.reduce((sum, part) => sum + part.weight, 0);
  const halfOf = (place: number): number => quantile((x) => parts.reduce((sum, part) => sum + part.weight / total * student6(x / part.errors[place]!), 0), 0.975);
  const t = quantile(student6, 0.975);
  const halves = [0, 1, 2].map(halfOf);
  // each error of the plain fit widened by as much as its interval is
  const wide = halves.map((half, place) => half / (t * error(place)));
  const covariance = (a: number, b: number): number => variance * normal[a]![b]! * wide[a]! * wide[b]!;
  const along = (gradient: readonly number[]): number => t * Math.sqrt(gradient.reduce((sum, each, a) => sum + gradient.reduce((inner, other, b) => inner + each * other * covariance(a, b), 0), 0));
  const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
  const deficit = mean(Cs) - mean(C);
  // accuracy limits as rectangular: 0.1 mg/L, 0.2 °C, 1 hPa over √3, through the solubility
  const slopeOf = (dt: number, dp: number): number => mean(rows.map(([, , temperature, p]) => (solubility(temperature + dt, p + dp).Cs - solubility(temperature - dt, p - dp).Cs) / (2 * (dt + dp))));
  const u = [0.1, 0.2 * slopeOf(0.01, 0), 1 * slopeOf(0, 0.1)].map((each) => each / Math.sqrt(3));
  const timeOf = (C0: number, k: number, R: number, shift = 0): number => { const rest = mean(Cs) - R / k + shift; return Math.log((C0 + shift - rest) / (5.5 - rest)) / k; };
  const timeSlope = (place: number): number => {
    const by = (size: number): number => timeOf(best.C0 + (place === 0 ? size : 0), best.k + (place === 1 ? size : 0), best.R + (place === 2 ? size : 0));
    return (by(1e-5) - by(-1e-5)) / 2e-5;
  };
  const time = timeOf(best.C0, best.k, best.R);
  const moved = Math.max(...[1, -1].map((sign) => Math.abs(timeOf(best.C0, best.k, best.R, sign * u[0]!) - time)));
  return {
    correlation: normal[1]![2]! / Math.sqrt(normal[1]![1]! * normal[2]![2]!), plainError: { k: error(1), R: error(2) }, t,
    serial: parts.reduce((sum, part) => sum + part.weight / total * part.r, 0), half: { k: halves[1]!, R: halves[2]! },
    halfOfR: Math.hypot(halves[2]!, ...u.map((each) => 2 * best.k * each)),
    net: { value: best.R - best.k * deficit, half: along([0, -deficit, 1]) },
    halfOfTime: Math.hypot(along([0, 1, 2].map(timeSlope)), 2 * moved),
  };
}
