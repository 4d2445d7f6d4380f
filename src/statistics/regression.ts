// The straight line by least squares, with intervals for independent residuals (for correlated ones see serialModel.ts).
import { mean } from './describe.ts';
import { fisherTail, studentQuantile } from './distributions.ts';
import { checkSample, type Interval, type StatisticsProblem } from './outcome.ts';

export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number;
  readonly interceptError: number;
  /** Of slope and intercept. */
  readonly covariance: number;
  /** √(Σr²/(n − 2)). */
  readonly residualDeviation: number;
  readonly residuals: readonly number[];
  readonly rSquared: number;
  /** Null where all points lie on the line. */
  readonly fisher: number | null;
  /** p of F; null with it. */
  readonly p: number | null;
  readonly count: number;
  readonly degreesOfFreedom: number;
  readonly meanX: number;
  readonly squaresX: number;
}

/** Ordinary least squares y = intercept + slope · x. Needs at least 3 points and two different x. */
export function fitLine(x: readonly number[], y: readonly number[]): Line | StatisticsProblem {
  if (x.length !== y.length) return { problem: 'lengths-differ' };
  const wrong = checkSample(x, 3) ?? checkSample(y, 3);
  if (wrong) return wrong;
  const count = x.length;
  const meanX = mean(x);
  const meanY = mean(y);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let index = 0; index < count; index += 1) {
    const dx = (x[index] as number) - meanX;
    const dy = (y[index] as number) - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  if (!(xx > 0)) return { problem: 'no-spread' };
  const slope = xy / xx;
  const intercept = meanY - slope * meanX;
  const residuals = x.map((each, index) => (y[index] as number) - meanY - slope * (each - meanX));
  const squares = residuals.reduce((sum, each) => sum + each * each, 0);
  const degreesOfFreedom = count - 2;
  const residualVariance = squares / degreesOfFreedom;
  const fisher = residualVariance > 0 ? slope * slope * xx / residualVariance : null;
  return {
    slope, intercept, residuals, count, degreesOfFreedom, meanX, squaresX: xx,
    slopeError: Math.sqrt(residualVariance / xx),
    interceptError: Math.sqrt(residualVariance * (1 / count + meanX * meanX / xx)),
    covariance: -meanX * residualVariance / xx,
    residualDeviation: Math.sqrt(residualVariance),
    rSquared: yy > 0 ? 1 - squares / yy : 1,
    fisher, p: fisher === null ? null : fisherTail(fisher, 1, degreesOfFreedom),
  };
}

function around(centre: number, error: number, degrees: number, confidence: number): Interval {
  const half = studentQuantile(0.5 + confidence / 2, degrees) * error;
  return { low: centre - half, high: centre + half };
}

/** Interval of the slope, residuals taken as independent. */
export function slopeInterval(line: Line, confidence = 0.95): Interval {
  return around(line.slope, line.slopeError, line.degreesOfFreedom, confidence);
}

/** Interval of the intercept, residuals taken as independent. */
export function interceptInterval(line: Line, confidence = 0.95): Interval {
  return around(line.intercept, line.interceptError, line.degreesOfFreedom, confidence);
}

/** Interval of a ratio of two estimates by Fieller's theorem; `unbounded` where the divisor cannot be told from zero. */
export function fiellerInterval(
  ratio: { readonly above: number; readonly below: number; readonly aboveVariance: number; readonly belowVariance: number; readonly covariance: number },
  degrees: number, confidence = 0.95,
): Interval | StatisticsProblem {
  const { above, below, aboveVariance, belowVariance, covariance } = ratio;
  const t = studentQuantile(0.5 + confidence / 2, degrees);
  const a = below * below - t * t * belowVariance;
  const b = above * below - t * t * covariance;
  const c = above * above - t * t * aboveVariance;
  const root = b * b - a * c;
  if (!(a > 0) || !(root >= 0)) return { problem: 'unbounded' };
  return { low: (b - Math.sqrt(root)) / a, high: (b + Math.sqrt(root)) / a };
}
