// Respiration and surface exchange from a dark stretch: the oxygen balance fitted to the readings, each row with its own
// solubility. dC/dt = k (Cs − C) − R. Odum (1956), Limnology and Oceanography 1, 102–117.
import { studentQuantile } from '../statistics/distributions.ts';
import { fitLine } from '../statistics/regression.ts';
import { solveLeastSquares } from '../statistics/leastSquares.ts';
import { fitCurve, parameterCorrelation, parameterInterval, type CurveFit } from '../statistics/levenbergMarquardt.ts';
import { isStatisticsProblem, type Interval, type StatisticsProblem } from '../statistics/outcome.ts';
import { serialEstimates } from '../statistics/serialModel.ts';

/** One row: hours since the start of the stretch, oxygen and solubility in mg/L. */
export interface NightRow { readonly hours: number; readonly oxygen: number; readonly solubility: number }

export interface NightFit {
  /** mg/L at the first row. */
  readonly initial: number;
  /** Surface exchange k, per hour. */
  readonly exchange: number;
  /** Respiration R, mg/L an hour. */
  readonly respiration: number;
  readonly exchangeInterval: Interval;
  readonly respirationInterval: Interval;
  /** The pair together: both hold at once in 95 % of nights (a box about the joint region, by Snedecor's F). */
  readonly jointExchange: Interval;
  readonly jointRespiration: Interval;
  /** What the night fixes best: the net loss at the mean deficit, R − k·D̄, mg/L an hour, with half its 95 % interval. */
  readonly netLoss: { readonly value: number; readonly halfWidth: number; readonly meanDeficit: number };
  /** Correlation of the two estimates: near 1 they are known well together and badly apart. */
  readonly correlation: number;
  /** False where the interval of k reaches 0: the pair cannot be told apart, only the net decline is known. */
  readonly identified: boolean;
  readonly fit: CurveFit;
  /** Covariance of C₀, k and R behind the intervals: that of the fit, widened where the scatter is correlated in time. */
  readonly covariance: readonly (readonly number[])[];
  /** Most credible lag-1 correlation of the scatter about the curve; null where too few rows tell. */
  readonly serial: number | null;
  /** The scatter may follow its neighbours so closely that the intervals cover less often than they say (docs/coverage.md). */
  readonly scatterFollows: boolean;
  /** Where the oxygen would come to rest with the mean solubility of the rows: Cs − R/k. */
  readonly equilibrium: number;
}

/**
 * The closed form of one step with a solubility that changes along a straight line from row to row:
 * C₂ = C₁E + Cs₁(1 − E) + b(Δ − f) − R f, E = exp(−kΔ), f = (1 − E)/k, b the slope of Cs.
 */
function step(oxygen: number, exchange: number, respiration: number, from: NightRow, to: NightRow): number {
  const length = to.hours - from.hours;
  const left = Math.exp(-exchange * length);
  const f = Math.abs(exchange * length) < 1e-9 ? length * (1 - exchange * length / 2) : -Math.expm1(-exchange * length) / exchange;
  const slope = (to.solubility - from.solubility) / length;
  return oxygen * left + from.solubility * (1 - left) + slope * (length - f) - respiration * f;
}

/** Oxygen in mg/L at every row, from `initial` in mg/L, the exchange per hour and the respiration in mg/L an hour. */
export function nightCurve(rows: readonly NightRow[], initial: number, exchange: number, respiration: number): number[] {
  const values = [initial];
  for (let index = 1; index < rows.length; index += 1) values.push(step(values[index - 1]!, exchange, respiration, rows[index - 1]!, rows[index]!));
  return values;
}

/**
 * Night-time regression for the starting values: dC/dt between rows against the mean deficit; slope k per hour, intercept −R in mg/L an hour.
 * Source: Hornberger and Kelly (1975), Journal of the Environmental Engineering Division ASCE 101, 729–739.
 */
export function nightRegression(rows: readonly NightRow[]): { readonly exchange: number; readonly respiration: number } | null {
  const deficits: number[] = [];
  const rates: number[] = [];
  for (let index = 1; index < rows.length; index += 1) {
    const from = rows[index - 1]!;
    const to = rows[index]!;
    deficits.push((from.solubility - from.oxygen + to.solubility - to.oxygen) / 2);
    rates.push((to.oxygen - from.oxygen) / (to.hours - from.hours));
  }
  const line = fitLine(deficits, rates);
  return isStatisticsProblem(line) ? null : { exchange: line.slope, respiration: -line.intercept };
}

/**
 * Fits C₀, k and R by least squares. Rows in order of time, five at least, no two at one time. The start is the best of the
 * night-time regression and a row of rates from 0.02 to 60 over the whole stretch. Intervals: the scatter about the curve is
 * taken as autoregressive of first order (see `serialEstimates`) in the curve's straight neighbourhood of the solution; with
 * fewer than 8 rows, or rows without scatter, as independent, by Student's t.
 */
export function fitNight(rows: readonly NightRow[], confidence = 0.95): NightFit | StatisticsProblem {
  const span = (rows.at(-1)?.hours ?? 0) - (rows[0]?.hours ?? 0);
  if (rows.length < 5) return { problem: 'too-few', has: rows.length, needs: 5 };
  if (!(span > 0)) return { problem: 'no-spread' };
  const start = bestStart(rows, span);
  if (!start) return { problem: 'not-identifiable' };
  const curve = lastKept((parameters) => nightCurve(rows, parameters[0]!, parameters[1]!, parameters[2]!));
  const gradient = lastKept((parameters) => curveSlopes(rows, parameters, start));
  const fit = fitCurve((parameters, index) => curve(parameters)[index]!, rows.map((row) => row.oxygen), start, { gradient: (parameters, index) => gradient(parameters)[index]! });
  if (isStatisticsProblem(fit)) return fit;
  const [initial, exchange, respiration] = fit.parameters as [number, number, number];
  const { intervals, covariance, serial, nearlyRandomWalk } = widen(rows, gradient(fit.parameters), fit, confidence);
  const [exchangeInterval, respirationInterval] = [intervals[1]!, intervals[2]!];
  const quantile = studentQuantile(0.5 + confidence / 2, fit.degreesOfFreedom);
  const meanSolubility = rows.reduce((sum, row) => sum + row.solubility, 0) / rows.length;
  const meanDeficit = meanSolubility - rows.reduce((sum, row) => sum + row.oxygen, 0) / rows.length;
  const netVariance = covariance[2]![2]! - 2 * meanDeficit * covariance[1]![2]! + meanDeficit ** 2 * covariance[1]![1]!;
  // P(F > f) = (1 + 2f/n)^(−n/2) for 2 and n degrees of freedom.
  const joint = Math.sqrt(fit.degreesOfFreedom * ((1 - confidence) ** (-2 / fit.degreesOfFreedom) - 1)) / quantile;
  return {
    initial, exchange, respiration, exchangeInterval, respirationInterval, fit, covariance, serial,
    jointExchange: stretched(exchangeInterval, joint), jointRespiration: stretched(respirationInterval, joint),
    netLoss: { value: respiration - exchange * meanDeficit, halfWidth: quantile * Math.sqrt(Math.max(0, netVariance)), meanDeficit },
    scatterFollows: nearlyRandomWalk || (serial ?? 0) > 0.6, correlation: parameterCorrelation(fit, 1, 2), identified: exchangeInterval.low > 0,
    equilibrium: meanSolubility - respiration / exchange,
  };
}

/** The start from which the fit sets out: the k whose straight problem in C₀ and R leaves least; null where none has an answer. */
function bestStart(rows: readonly NightRow[], span: number): [initial: number, exchange: number, respiration: number] | null {
  const candidates: number[] = [];
  const regression = nightRegression(rows);
  if (regression && regression.exchange > 0) candidates.push(regression.exchange);
  for (let index = 0; index <= 40; index += 1) candidates.push(0.02 * 3000 ** (index / 40) / span);
  let best: { squares: number; start: [number, number, number] } | null = null;
  for (const exchange of candidates) {
    // For one k the curve is linear in C₀ and R.
    const base = nightCurve(rows, 0, exchange, 0);
    const ofInitial = nightCurve(rows, 1, exchange, 0).map((value, index) => value - base[index]!);
    const ofRespiration = nightCurve(rows, 0, exchange, 1).map((value, index) => value - base[index]!);
    const solved = solveLeastSquares(rows.map((_, index) => [ofInitial[index]!, ofRespiration[index]!]), rows.map((row, index) => row.oxygen - base[index]!));
    if (solved && (!best || solved.squares < best.squares)) best = { squares: solved.squares, start: [solved.solution[0]!, exchange, solved.solution[1]!] };
  }
  return best && best.start;
}

/** Derivatives of the curve at every row by C₀, k and R, by central differences. `sizes`: how large the three may be expected to be. */
function curveSlopes(rows: readonly NightRow[], parameters: readonly number[], sizes: readonly number[]): number[][] {
  const columns = parameters.map((parameter, column) => {
    const size = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(parameter), 0.1 * Math.abs(sizes[column]!), 1e-8);
    const moved = (by: number): number[] => nightCurve(rows, parameters[0]! + (column === 0 ? by : 0), parameters[1]! + (column === 1 ? by : 0), parameters[2]! + (column === 2 ? by : 0));
    const above = moved(size);
    const below = moved(-size);
    return above.map((value, row) => (value - below[row]!) / (2 * size));
  });
  return rows.map((_, row) => columns.map((column) => column[row]!));
}

/** Keeps the last answer: the fit asks row by row with the same parameters. */
function lastKept<Answer>(work: (parameters: readonly number[]) => Answer): (parameters: readonly number[]) => Answer {
  let last: { key: string; answer: Answer } | null = null;
  return (parameters) => {
    const key = parameters.join(' ');
    if (last?.key !== key) last = { key, answer: work(parameters) };
    return last.answer;
  };
}

/** The interval about its own middle, so many times as wide. */
function stretched(interval: Interval, factor: number): Interval {
  const centre = (interval.low + interval.high) / 2;
  const half = factor * (interval.high - interval.low) / 2;
  return { low: centre - half, high: centre + half };
}

interface Widened { readonly intervals: readonly Interval[]; readonly covariance: readonly (readonly number[])[]; readonly serial: number | null; readonly nearlyRandomWalk: boolean }

/** Intervals and covariance with the scatter's correlation in time counted in. */
function widen(rows: readonly NightRow[], slopes: readonly (readonly number[])[], fit: CurveFit, confidence: number): Widened {
  const plain = [0, 1, 2].map((place) => parameterInterval(fit, place, confidence));
  const independent: Widened = { intervals: plain, covariance: fit.covariance, serial: null, nearlyRandomWalk: false };
  if (rows.length < leastForSerial || rows.length > mostForSerial) return independent;
  const steps = rows.map((row, index) => (index === 0 ? 1 : row.hours - rows[index - 1]!.hours));
  const usual = [...steps.slice(1)].sort((a, b) => a - b)[(steps.length - 1) >> 1]!;
  const gaps = steps.map((step, index) => (index === 0 ? 1 : step / usual));
  const found = serialEstimates(slopes, fit.residuals, { gaps, confidence });
  if (isStatisticsProblem(found)) return independent;
  const halves = found.map((each) => (each.interval.high - each.interval.low) / 2);
  const intervals = halves.map((half, place) => ({ low: fit.parameters[place]! - half, high: fit.parameters[place]! + half }));
  const factors = halves.map((half, place) => 2 * half / (plain[place]!.high - plain[place]!.low));
  const covariance = fit.covariance.map((row, a) => row.map((each, b) => each * factors[a]! * factors[b]!));
  return { intervals, covariance, serial: found[0]!.correlation, nearlyRandomWalk: found[0]!.nearlyRandomWalk };
}

/** Fewer rows tell nothing of the scatter's correlation. */
const leastForSerial = 8;
/** Above this many rows it takes too long while typing. */
const mostForSerial = 2000;

/** Hours from the first row until the fitted curve, with its mean solubility kept, reaches the level in mg/L; null where it never does. */
export function hoursToLevel(night: NightFit, level: number): number | null {
  const ratio = (night.initial - night.equilibrium) / (level - night.equilibrium);
  if (!(night.exchange > 0) || !(ratio >= 1) || !Number.isFinite(ratio)) return null;
  return Math.log(ratio) / night.exchange;
}
