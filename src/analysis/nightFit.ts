// Respiration and surface exchange from a dark stretch: the oxygen balance fitted to the readings, each row with its own
// solubility. dC/dt = k (Cs − C) − R. Odum (1956), Limnology and Oceanography 1, 102–117.
import { fitLine } from '../statistics/regression.ts';
import { solveLeastSquares } from '../statistics/leastSquares.ts';
import { fitCurve, parameterCorrelation, parameterInterval, type CurveFit } from '../statistics/levenbergMarquardt.ts';
import { isStatisticsProblem, type Interval, type StatisticsProblem } from '../statistics/outcome.ts';

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
  /** Correlation of the two estimates: near 1 they are known well together and badly apart. */
  readonly correlation: number;
  /** False where the interval of k reaches 0: the pair cannot be told apart, only the net decline is known. */
  readonly identified: boolean;
  readonly fit: CurveFit;
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

/** Oxygen at every row for the given start, exchange and respiration. */
export function nightCurve(rows: readonly NightRow[], initial: number, exchange: number, respiration: number): number[] {
  const values = [initial];
  for (let index = 1; index < rows.length; index += 1) values.push(step(values[index - 1]!, exchange, respiration, rows[index - 1]!, rows[index]!));
  return values;
}

/**
 * Night-time regression for the starting values: dC/dt between rows against the mean deficit; slope k, intercept −R.
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
 * night-time regression and a row of rates from 0.02 to 60 over the whole stretch. Intervals are by Student's t and take the
 * scatter about the curve as independent.
 */
export function fitNight(rows: readonly NightRow[], confidence = 0.95): NightFit | StatisticsProblem {
  const span = (rows.at(-1)?.hours ?? 0) - (rows[0]?.hours ?? 0);
  if (rows.length < 5) return { problem: 'too-few', has: rows.length, needs: 5 };
  if (!(span > 0)) return { problem: 'no-spread' };
  const y = rows.map((row) => row.oxygen);
  const candidates: number[] = [];
  const regression = nightRegression(rows);
  if (regression && regression.exchange > 0) candidates.push(regression.exchange);
  for (let index = 0; index <= 40; index += 1) candidates.push(0.02 * 3000 ** (index / 40) / span);
  let best: { squares: number; start: number[] } | null = null;
  for (const exchange of candidates) {
    // For one k the curve is linear in C₀ and R.
    const base = nightCurve(rows, 0, exchange, 0);
    const ofInitial = nightCurve(rows, 1, exchange, 0).map((value, index) => value - base[index]!);
    const ofRespiration = nightCurve(rows, 0, exchange, 1).map((value, index) => value - base[index]!);
    const solved = solveLeastSquares(rows.map((_, index) => [ofInitial[index]!, ofRespiration[index]!]), y.map((value, index) => value - base[index]!));
    if (solved && (!best || solved.squares < best.squares)) best = { squares: solved.squares, start: [solved.solution[0]!, exchange, solved.solution[1]!] };
  }
  if (!best) return { problem: 'not-identifiable' };
  let known: { key: string; values: number[] } | null = null;
  const curve = (parameters: readonly number[], index: number): number => {
    const key = parameters.join(' ');
    if (known?.key !== key) known = { key, values: nightCurve(rows, parameters[0]!, parameters[1]!, parameters[2]!) };
    return known.values[index]!;
  };
  let gradients: { key: string; rows: number[][] } | null = null;
  const gradient = (parameters: readonly number[], index: number): readonly number[] => {
    const key = parameters.join(' ');
    if (gradients?.key !== key) {
      const columns = parameters.map((parameter, column) => {
        const size = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(parameter), 0.1 * Math.abs(best.start[column]!), 1e-8);
        const moved = (by: number): number[] => nightCurve(rows, parameters[0]! + (column === 0 ? by : 0), parameters[1]! + (column === 1 ? by : 0), parameters[2]! + (column === 2 ? by : 0));
        const above = moved(size);
        const below = moved(-size);
        return above.map((value, row) => (value - below[row]!) / (2 * size));
      });
      gradients = { key, rows: rows.map((_, row) => columns.map((column) => column[row]!)) };
    }
    return gradients.rows[index]!;
  };
  const fit = fitCurve(curve, y, best.start, { gradient });
  if (isStatisticsProblem(fit)) return fit;
  const [initial, exchange, respiration] = fit.parameters as [number, number, number];
  const exchangeInterval = parameterInterval(fit, 1, confidence);
  const meanSolubility = rows.reduce((sum, row) => sum + row.solubility, 0) / rows.length;
  return {
    initial, exchange, respiration, exchangeInterval, respirationInterval: parameterInterval(fit, 2, confidence),
    correlation: parameterCorrelation(fit, 1, 2), identified: exchangeInterval.low > 0, fit, equilibrium: meanSolubility - respiration / exchange,
  };
}

/** Hours from the first row until the fitted curve, with its mean solubility kept, reaches the level; null where it never does. */
export function hoursToLevel(night: NightFit, level: number): number | null {
  const ratio = (night.initial - night.equilibrium) / (level - night.equilibrium);
  if (!(night.exchange > 0) || !(ratio >= 1) || !Number.isFinite(ratio)) return null;
  return Math.log(ratio) / night.exchange;
}

/**
 * When the metabolism (change less exchange) turns from loss to gain: the first crossing of zero between the midpoints of
 * neighbouring rows, by a straight line. Hours; null where it never turns.
 */
export function balanceHours(rows: readonly NightRow[], exchange: number): number | null {
  let before: { hours: number; net: number } | null = null;
  for (let index = 1; index < rows.length; index += 1) {
    const from = rows[index - 1]!;
    const to = rows[index]!;
    const deficit = (from.solubility - from.oxygen + to.solubility - to.oxygen) / 2;
    const here = { hours: (from.hours + to.hours) / 2, net: (to.oxygen - from.oxygen) / (to.hours - from.hours) - exchange * deficit };
    if (before && before.net < 0 && here.net >= 0) return before.hours + (here.hours - before.hours) * (-before.net / (here.net - before.net));
    before = here;
  }
  return null;
}
