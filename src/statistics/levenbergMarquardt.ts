// Curves by nonlinear least squares: Levenberg's and Marquardt's damping, covariance, and a check that it is a minimum.
import { studentQuantile } from './distributions.ts';
import { checkSample, type Interval, type StatisticsProblem } from './outcome.ts';
import { columnNorm, solveLeastSquares } from './leastSquares.ts';

/** The curve at row `index`; a value that is not finite makes the fit keep away from those parameters. */
export type Curve = (parameters: readonly number[], index: number) => number;
/** Derivatives of the curve at row `index` by each parameter. */
export type CurveGradient = (parameters: readonly number[], index: number) => readonly number[];

export interface CurveFit {
  readonly parameters: readonly number[];
  readonly standardErrors: readonly number[];
  /** Of the parameters, residual variance included. */
  readonly covariance: readonly (readonly number[])[];
  readonly residuals: readonly number[];
  /** √(Σr²/(n − p)). */
  readonly residualDeviation: number;
  readonly squares: number;
  readonly degreesOfFreedom: number;
  readonly steps: number;
  /** Relative offset of Bates and Watts (1981) at the end: 0 is a perfect minimum; a fit is taken below 1e-5. */
  readonly offset: number;
}

export interface CurveOptions {
  /** By central differences where it is not given. */
  readonly gradient?: CurveGradient;
  readonly mostSteps?: number;
}

/** A fit is a minimum when its relative offset is below this. Source: Bates and Watts (1981), Technometrics 23, 179–183. */
const greatestOffset = 1e-5;

/** Parameters whose columns of derivatives are closer than this cannot be told apart (derivatives may be numeric). */
const leastCurveIndependence = 1e-8;

/** Central differences; `start` gives each parameter's typical size, so that one near 0 is still moved by a sensible step. */
function numericGradient(curve: Curve, start: readonly number[]): CurveGradient {
  return (parameters, index) => parameters.map((parameter, column) => {
    const step = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(parameter), 0.1 * Math.abs(start[column] as number), 1e-8);
    const moved = (by: number): number => curve(parameters.map((each, other) => (other === column ? each + by : each)), index);
    return (moved(step) - moved(-step)) / (2 * step);
  });
}

/**
 * Fits a curve of 1 to 6 parameters to values `y` (one a row) by least squares, from a start. Refuses instead of giving a
 * doubtful answer: `too-few` values (one more than parameters at least), `not-identifiable` where the parameters cannot be told
 * apart at the end, `not-converged` where the end is no minimum. Source: Levenberg (1944), Marquardt (1963), J. SIAM 11,
 * 431–441; damping of Moré's scaled form; equations solved by orthogonal reflections.
 */
export function fitCurve(curve: Curve, y: readonly number[], start: readonly number[], options: CurveOptions = {}): CurveFit | StatisticsProblem {
  const width = start.length;
  const wrong = checkSample(y, width + 1) ?? checkSample(start, 1);
  if (wrong) return wrong;
  const gradient = options.gradient ?? numericGradient(curve, start);
  const residualsAt = (parameters: readonly number[]): { residuals: number[]; squares: number } => {
    const residuals = y.map((each, index) => each - curve(parameters, index));
    const squares = residuals.reduce((sum, each) => sum + each * each, 0);
    return { residuals, squares: Number.isFinite(squares) ? squares : Infinity };
  };
  let parameters = [...start];
  let { residuals, squares } = residualsAt(parameters);
  if (!Number.isFinite(squares)) return { problem: 'not-finite' };
  const scales = new Array<number>(width).fill(0);
  const size = y.reduce((sum, each) => sum + each * each, 0);
  let damping = 1e-3;
  let steps = 0;
  const mostSteps = options.mostSteps ?? 200;
  for (; steps < mostSteps; steps += 1) {
    const rows = y.map((_, index) => [...gradient(parameters, index)]);
    if (!rows.every((row) => row.every(Number.isFinite))) return { problem: 'not-finite' };
    for (let column = 0; column < width; column += 1) {
      scales[column] = Math.max(scales[column] as number, columnNorm(rows, column));
      if (!((scales[column] as number) > 0)) return { problem: 'not-identifiable' };
    }
    let moved = false;
    let settled = false;
    while (damping < 1e18) {
      const root = Math.sqrt(damping);
      const damped = scales.map((scale, column) => Array.from({ length: width }, (_, other) => (other === column ? root * scale : 0)));
      const step = solveLeastSquares([...rows, ...damped], [...residuals, ...new Array<number>(width).fill(0)]);
      if (!step) { damping *= 10; continue; }
      // what a straight curve would gain by this step is nothing any more: the end, up to the last digits (see finish)
      if (squares - step.squares <= 1e-13 * squares) break;
      const next = parameters.map((each, column) => each + (step.solution[column] as number));
      const small = step.solution.every((each, column) => Math.abs(each) <= 1e-14 * (Math.abs(parameters[column] as number) + 1e-300));
      const after = residualsAt(next);
      if (after.squares < squares) {
        settled = squares - after.squares <= 1e-15 * squares && step.solution.every((each, column) => Math.abs(each) <= 1e-9 * Math.abs(next[column] as number));
        parameters = next;
        ({ residuals, squares } = after);
        damping = Math.max(damping / 10, 1e-20);
        moved = true;
        break;
      }
      if (small) break;
      damping *= 10;
    }
    if (!moved || settled || squares <= 1e-29 * size) break;
    damping = Math.min(damping, 1e16);
  }
  return finish(parameters, residuals, squares, y, gradient, steps, residualsAt);
}

function finish(
  given: readonly number[], givenResiduals: readonly number[], givenSquares: number, y: readonly number[], gradient: CurveGradient, steps: number,
  residualsAt: (parameters: readonly number[]) => { residuals: number[]; squares: number },
): CurveFit | StatisticsProblem {
  let parameters = given;
  let residuals = givenResiduals;
  let squares = givenSquares;
  const degreesOfFreedom = y.length - parameters.length;
  // the last digits: undamped steps while they shrink, even where the sum of squares no longer shows it
  let lastStep = Infinity;
  for (let polish = 0; polish < 6; polish += 1) {
    const linear = solveLeastSquares(y.map((_, index) => gradient(parameters, index)), residuals, leastCurveIndependence);
    if (!linear) return { problem: 'not-identifiable' };
    const size = Math.max(...linear.solution.map((each, column) => Math.abs(each) / (Math.abs(parameters[column] as number) + 1e-300)));
    if (!(size < lastStep / 2) || size > 1e-4 || size < 1e-15) break;
    const next = parameters.map((each, column) => each + (linear.solution[column] as number));
    const after = residualsAt(next);
    if (!(after.squares <= squares * (1 + 1e-12))) break;
    lastStep = size;
    parameters = next;
    ({ residuals, squares } = after);
  }
  const linear = solveLeastSquares(y.map((_, index) => gradient(parameters, index)), residuals, leastCurveIndependence);
  if (!linear) return { problem: 'not-identifiable' };
  const noise = squares / degreesOfFreedom;
  const size = y.reduce((sum, each) => sum + each * each, 0);
  // data without noise: what is left is rounding
  const offset = squares <= 1e-24 * size ? 0 : Math.sqrt(linear.explained / parameters.length / noise);
  if (!(offset < greatestOffset)) return { problem: 'not-converged' };
  const covariance = linear.unscaledCovariance.map((row) => row.map((each) => each * noise));
  return {
    parameters, residuals, squares, degreesOfFreedom, steps, offset, covariance,
    standardErrors: covariance.map((row, column) => Math.sqrt(row[column] as number)), residualDeviation: Math.sqrt(noise),
  };
}

/** Interval of one parameter by its standard error and Student's t. */
export function parameterInterval(fit: CurveFit, parameter: number, confidence = 0.95): Interval {
  const centre = fit.parameters[parameter] as number;
  const half = studentQuantile(0.5 + confidence / 2, fit.degreesOfFreedom) * (fit.standardErrors[parameter] as number);
  return { low: centre - half, high: centre + half };
}

/** Correlation of two parameters' estimates, −1 to 1. */
export function parameterCorrelation(fit: CurveFit, a: number, b: number): number {
  return (fit.covariance[a]?.[b] as number) / ((fit.standardErrors[a] as number) * (fit.standardErrors[b] as number));
}
