// Exponential approach to an equilibrium, y = e + (i − e)·exp(−k·t): the shape of oxygen through a dark night.
import { studentQuantile } from './distributions.ts';
import { fitCurve, parameterInterval, type CurveFit } from './levenbergMarquardt.ts';
import { fitLine } from './regression.ts';
import { checkSample, type Interval, type StatisticsProblem } from './outcome.ts';

export interface DecayFit {
  /** Value that the curve approaches. */
  readonly equilibrium: number;
  /** Value at t = 0. */
  readonly initial: number;
  /** Rate constant k, per unit of t. */
  readonly rate: number;
  /** Parameters, covariance and errors in the order equilibrium, initial, rate. */
  readonly fit: CurveFit;
  readonly rateInterval: Interval;
  readonly equilibriumInterval: Interval;
  /** False where the rate's interval reaches 0: then only the first slope is known, not rate and equilibrium apart. */
  readonly identified: boolean;
}

/** The curve at t, in the unit of the equilibrium; `rate` per unit of t. */
export function decayAt(equilibrium: number, initial: number, rate: number, t: number): number {
  return equilibrium + (initial - equilibrium) * Math.exp(-rate * t);
}

/**
 * When the curve reaches a level, in units of 1/rate; null where it never does. t = ln((i − e)/(level − e))/k.
 */
export function decayReaches(equilibrium: number, initial: number, rate: number, level: number): number | null {
  const ratio = (initial - equilibrium) / (level - equilibrium);
  if (!(rate > 0) || !Number.isFinite(ratio) || !(ratio >= 1)) return null;
  return Math.log(ratio) / rate;
}

/**
 * Fits the decay by least squares. The start is the best of a row of rates from 0.02 to 60 over the whole span, with the other
 * two parameters solved exactly for each. Needs 5 points over some span of time, not all at one value. Problems of `fitCurve` pass through.
 */
export function fitDecay(t: readonly number[], y: readonly number[], confidence = 0.95): DecayFit | StatisticsProblem {
  if (t.length !== y.length) return { problem: 'lengths-differ' };
  const wrong = checkSample(t, 5) ?? checkSample(y, 5);
  if (wrong) return wrong;
  const span = Math.max(...t) - Math.min(...t);
  const height = Math.max(...y) - Math.min(...y);
  if (!(span > 0) || !(height > 1e-12 * Math.max(...y.map(Math.abs))) || height < 1e-100) return { problem: 'no-spread' };
  let best: { squares: number; start: number[] } | null = null;
  for (let step = 0; step <= 60; step += 1) {
    const rate = 0.02 * 3000 ** (step / 60) / span;
    const line = fitLine(t.map((each) => Math.exp(-rate * each)), y);
    if ('problem' in line) continue;
    const squares = line.residualDeviation ** 2;
    if (!best || squares < best.squares) best = { squares, start: [line.intercept, line.intercept + line.slope, rate] };
  }
  if (!best) return { problem: 'not-identifiable' };
  const fit = fitCurve(
    ([equilibrium = 0, initial = 0, rate = 0], index) => decayAt(equilibrium, initial, rate, t[index] as number), y, best.start,
    {
      gradient: ([equilibrium = 0, initial = 0, rate = 0], index) => {
        const time = t[index] as number;
        const left = Math.exp(-rate * time);
        return [1 - left, left, -(initial - equilibrium) * time * left];
      },
    },
  );
  if ('problem' in fit) return fit;
  const [equilibrium = 0, initial = 0, rate = 0] = fit.parameters;
  const rateInterval = parameterInterval(fit, 2, confidence);
  return { equilibrium, initial, rate, fit, rateInterval, equilibriumInterval: parameterInterval(fit, 0, confidence), identified: rateInterval.low > 0 };
}

/** The fitted curve at t with the interval of the curve itself (not of a further reading). */
export function decayPrediction(decay: DecayFit, t: number, confidence = 0.95): { readonly value: number; readonly standardError: number; readonly interval: Interval } {
  const { equilibrium, initial, rate, fit } = decay;
  const left = Math.exp(-rate * t);
  const gradient = [1 - left, left, -(initial - equilibrium) * t * left];
  let square = 0;
  for (let i = 0; i < 3; i += 1) for (let j = 0; j < 3; j += 1) square += (gradient[i] as number) * (gradient[j] as number) * (fit.covariance[i]?.[j] as number);
  const value = decayAt(equilibrium, initial, rate, t);
  const standardError = Math.sqrt(Math.max(0, square));
  const half = studentQuantile(0.5 + confidence / 2, fit.degreesOfFreedom) * standardError;
  return { value, standardError, interval: { low: value - half, high: value + half } };
}
