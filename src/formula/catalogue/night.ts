// Functions of a whole night: respiration, surface exchange, the balance point and the time to a level, from one fit.
import { balanceHours, balanceInterval } from '../../analysis/balance.ts';
import { fitNight, hoursToLevel, type NightFit, type NightRow } from '../../analysis/nightFit.ts';
import { timeToInterval } from '../../analysis/nightTimes.ts';
import { leastSquaresLine } from '../../analysis/line.ts';
import { hour, minute } from '../../time/instant.ts';
import { formatDuration } from '../../time/text.ts';
import { parseUnit, perHour } from '../../quantities/units.ts';
import { formatNumber } from '../../quantities/format.ts';
import { numberValue, standardUncertainty } from '../../quantities/value.ts';
import { isStatisticsProblem, type Interval } from '../../statistics/outcome.ts';
import type { Call } from '../call.ts';
import { withInterval, type TimeInterval } from '../timeIntervals.ts';
import type { FormulaNumber, FormulaValue, SeriesPoint, WindowValue } from '../types.ts';
import { oxygenColumn, oxygenRows } from './oxygen.ts';
import { windowParameter, type FunctionEntry, type Parameter, type Signature } from './entry.ts';
import { enoughDecimals, fewForSerial } from './summary.ts';
import { oxygenMilligrams } from './waterRows.ts';
import { between } from '../../analysis/points.ts';

/** `source` names the fit: two fits of different series or windows have scatters of their own. */
export interface Night { readonly fit: NightFit; readonly pairs: readonly [SeriesPoint, SeriesPoint][]; readonly source: string }

export function rowsOf(pairs: readonly [SeriesPoint, SeriesPoint][]): NightRow[] {
  const start = pairs[0]?.[0].time ?? 0;
  return pairs.map(([oxygen, full]) => ({ hours: (oxygen.time - start) / hour, oxygen: oxygen.value, solubility: full.value }));
}

/** The dark phase, where the formula names no window. */
function darkPhase(call: Call): WindowValue | null {
  const phases = call.run.context.protocol?.phases ?? [];
  const dark = phases.filter((phase) => /^dark(?:-\d+)?$/u.test(phase.id));
  if (dark.length === 1) return { type: 'window', ...dark[0]!.window, phase: dark[0]!.id };
  return dark.length === 0 ? call.fail('no-such-phase', { name: 'dark' }) : call.fail('ambiguous-phase', { name: 'dark', phases: dark.map((phase) => phase.id) });
}

/** The fit over the window (the dark phase without one); refused where exchange and respiration cannot be told apart. */
export function night(call: Call, window: WindowValue | null): Night | null {
  const stretch = window ?? darkPhase(call);
  if (!stretch) return null;
  const all = oxygenRows(call, null);
  if (!all) return null;
  const inside = new Set(between(all.pairs.map(([oxygen]) => oxygen), stretch.from, stretch.to));
  const pairs = all.pairs.filter(([oxygen]) => inside.has(oxygen));
  const points = pairs.map(([oxygen]) => oxygen);
  if (!call.within(points, 0) || !call.needs(points, 5, 0)) return null;
  const rows = rowsOf(pairs);
  const { origin } = call.series(0);
  const key = origin ? `${origin.place}.${origin.quantity}@${origin.instrument ?? ''} ${stretch.from} ${stretch.to}${call.run.includeLeftOut ? ' with left-out' : ''}` : null;
  const fit = (key === null ? undefined : call.run.context.nightFits.get(key)) ?? fitNight(rows);
  if (key !== null) call.run.context.nightFits.set(key, fit);
  const line = leastSquaresLine(points);
  const decline = line ? `${formatNumber(-line.slope, 3)} mg/L/h` : '';
  if (isStatisticsProblem(fit) || !fit.identified) {
    return call.fail('exchange-not-identified', { function: call.name, decline, count: points.length }, call.range);
  }
  call.use(points);
  call.remark('night-fit', {
    count: points.length, exchange: formatNumber(fit.exchange, 3), low: formatNumber(fit.exchangeInterval.low, 3), high: formatNumber(fit.exchangeInterval.high, 3),
    respiration: formatNumber(fit.respiration, 3), correlation: formatNumber(fit.correlation, 2), scatter: formatNumber(fit.fit.residualDeviation, 3),
  });
  call.remark('night-joint', {
    exchangeLow: formatNumber(fit.jointExchange.low, 3), exchangeHigh: formatNumber(fit.jointExchange.high, 3), respirationLow: formatNumber(fit.jointRespiration.low, 3),
    respirationHigh: formatNumber(fit.jointRespiration.high, 3), net: formatNumber(fit.netLoss.value, 3), half: formatNumber(fit.netLoss.halfWidth, 3), deficit: formatNumber(fit.netLoss.meanDeficit, 2),
  });
  if (fit.scatterFollows) call.remark('scatter-follows', { correlation: formatNumber(fit.serial ?? 0, 2) });
  else if (points.length < fewForSerial) call.remark('few-for-serial', { count: points.length });
  return { fit, pairs, source: key ?? call.run.textOf(call.range) };
}

/** Half the interval over 2, so that the 95 % half-width printed is that of Student's t. */
function scatter(interval: Interval): number { return (interval.high - interval.low) / 4; }

/** What one instrument's systematic part, a standard uncertainty of it, does to every row alike: mg/L. */
export interface Shift { readonly oxygen: number; readonly solubility: number }

/** The shifts by instrument; null where no accuracy is stated for something that went in. */
export function shiftsOf(pairs: readonly [SeriesPoint, SeriesPoint][]): Map<string, Shift> | null {
  const sums = new Map<string, Shift>();
  const add = (contributions: ReadonlyMap<string, number>, part: keyof Shift): void => {
    for (const [key, size] of contributions) {
      if (!key.startsWith('instrument:')) continue;
      const before = sums.get(key) ?? { oxygen: 0, solubility: 0 };
      sums.set(key, { ...before, [part]: before[part] + size / pairs.length });
    }
  };
  for (const [oxygen, full] of pairs) {
    if (!oxygen.contributions || !full.contributions) return null;
    add(oxygen.contributions, 'oxygen');
    add(full.contributions, 'solubility');
  }
  return sums;
}

function respiration(call: Call): FormulaValue | null {
  const found = night(call, call.window(1));
  if (!found) return null;
  const { fit, pairs } = found;
  const shifts = shiftsOf(pairs);
  const contributions = shifts && new Map([[`fit:${call.name}:${found.source}`, scatter(fit.respirationInterval)],
    ...[...shifts].map(([key, { oxygen, solubility }]): [string, number] => [key, (solubility - oxygen) * fit.exchange])]);
  return withDigits(numberValue(fit.respiration, milligramsPerHour, contributions));
}

function reaeration(call: Call): FormulaValue | null {
  const found = night(call, call.window(1));
  if (!found) return null;
  return withDigits(numberValue(found.fit.exchange, perHourUnit, new Map([[`fit:${call.name}:${found.source}`, scatter(found.fit.exchangeInterval)]])));
}

export function withDigits(value: FormulaNumber): FormulaNumber {
  const u = standardUncertainty(value);
  const decimals = u !== null && u > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(2 * u)))) : value.value === 0 ? 0 : 3;
  return { ...value, ...enoughDecimals(value.value, { decimals }) };
}

function timeTo(call: Call): FormulaValue | null {
  const level = call.levelIn(0, call.number(1), call.rangeOf(1));
  const found = night(call, call.window(2));
  if (!found || !level) return null;
  const hours = hoursToLevel(found.fit, level.value);
  if (hours === null || hours > 24 * 365) {
    return call.fail('level-never-reached', { level: call.run.textOf(call.rangeOf(1)), equilibrium: formatNumber(found.fit.equilibrium, 2) }, call.rangeOf(1));
  }
  call.remark('extrapolated', {});
  const bare = timeToInterval(found.fit, level.value) ?? { low: 0, high: null };
  const known = withInstruments(hours, bare, shiftsOf(found.pairs), (shift) => {
    // What shifts the solubility is made up for by the respiration; what shifts the oxygen shifts start and end alike.
    const moved = { ...found.fit, initial: found.fit.initial + shift.oxygen, equilibrium: found.fit.equilibrium + shift.oxygen };
    return hoursToLevel(moved, level.value);
  });
  const said = (hours: number): string => formatDuration(inMinutes(hours));
  const { low, high } = known ?? bare;
  if (high === null) call.remark('time-open', { low: said(low) });
  else call.remark('time-interval', { low: said(low), high: said(high) });
  if (!known) call.remark('scatter-alone', {});
  return { type: 'duration', duration: inMinutes(hours), ...timeInterval(hours, known) };
}

interface Ends { readonly low: number; readonly high: number | null }

const inMinutes = (hours: number): number => Math.round(hours * 60) * minute;

/**
 * An interval in hours with the instruments' systematic parts counted in, each as the distance by which two standard
 * uncertainties of it move the time, in squares beside the scatter's. null where no accuracy is stated.
 */
function withInstruments(hours: number, scatter: Ends, shifts: ReadonlyMap<string, Shift> | null, at: (shift: Shift) => number | null): Ends | null {
  if (!shifts) return null;
  let squares = 0;
  let open = scatter.high === null;
  for (const { oxygen, solubility } of shifts.values()) {
    const moved = [1, -1].map((sign) => at({ oxygen: sign * oxygen, solubility: sign * solubility }));
    if (moved.includes(null)) open = true;
    squares += (2 * Math.max(...moved.map((each) => (each === null ? 0 : Math.abs(each - hours))))) ** 2;
  }
  const low = Math.max(0, hours - Math.hypot(hours - scatter.low, Math.sqrt(squares)));
  return { low, high: open || scatter.high === null ? null : hours + Math.hypot(scatter.high - hours, Math.sqrt(squares)) };
}

/** The interval for the value, in whole minutes as the value itself. */
function timeInterval(hours: number, ends: Ends | null): { interval?: TimeInterval } {
  return withInterval(ends === null ? undefined : {
    // an interval from the first reading on, without an end, says nothing
    earlier: ends.low > 0 || ends.high !== null ? inMinutes(hours) - inMinutes(ends.low) : null, later: ends.high === null ? null : inMinutes(ends.high) - inMinutes(hours),
  });
}

function balancePoint(call: Call): FormulaValue | null {
  const dark = darkPhase(call);
  const found = dark && night(call, dark);
  if (!found || !dark) return null;
  const all = oxygenRows(call, null);
  if (!all) return null;
  const stretch = call.window(1) ?? { from: dark.to - hour, to: Number.MAX_SAFE_INTEGER };
  const pairs = all.pairs.filter(([oxygen]) => oxygen.time >= stretch.from && oxygen.time <= stretch.to);
  const points = pairs.map(([oxygen]) => oxygen);
  if (!call.within(points, 0) || !call.needs(points, 3, 0)) return null;
  const rows = rowsOf(pairs);
  const hours = balanceHours(rows, found.fit.exchange);
  if (hours === null) return call.fail('no-balance', { name: call.run.textOf(call.rangeOf(0)) });
  call.use(points);
  const start = points[0]!.time;
  const instantOf = (at: number): number => Math.round((start + at * hour) / minute) * minute;
  const bare = balanceInterval(rows, found.fit);
  const shifted = (shift: Shift): number | null =>
    balanceHours(rows.map((row) => ({ ...row, oxygen: row.oxygen + shift.oxygen, solubility: row.solubility + shift.solubility })), found.fit.exchange);
  const known = bare && withInstruments(hours, bare, shiftsOf(pairs), shifted);
  const ends = known ?? bare;
  if (!ends || ends.high === null) call.remark('balance-open', {});
  else call.remark('time-interval', { low: call.time(instantOf(ends.low)), high: call.time(instantOf(ends.high)) });
  if (bare && !known) call.remark('scatter-alone', {});
  return { type: 'instant', instant: instantOf(hours), ...timeInterval(hours, known) };
}

const milligramsPerHour = perHour(oxygenMilligrams);
const perHourUnit = parseUnit('/h') ?? parseUnit('1/h') ?? oxygenMilligrams;
export const nightWindow: Parameter = { ...windowParameter, about: 'a stretch of darkness; the dark phase without one' };
const nightSignature: readonly Signature[] = [{ parameters: [oxygenColumn, nightWindow], options: [] }];
const on = 'the oxygen of the mat tank in the dark';
const odum = 'Odum (1956), Limnology and Oceanography 1, 102–117; start by Hornberger and Kelly (1975), J. Environ. Eng. Div. ASCE 101, 729–739';

export const nightFunctions: readonly FunctionEntry[] = [
  {
    name: 'respiration', group: 'oxygen', gives: 'number', units: 'mg/L/h', signatures: nightSignature,
    definition: 'The oxygen that everything alive in the tank takes up in an hour of darkness, with the exchange at the surface taken out.',
    equation: 'dC/dt = k(Cs − C) − R, fitted to the window; R', source: odum,
    example: { formula: 'respiration(mat.DO, dark)', on, gives: '0.55 mg/L/h' }, words: 'the respiration computed from {1}{window}', evaluate: respiration,
  },
  {
    name: 'reaeration', group: 'oxygen', gives: 'number', units: '/h', signatures: nightSignature,
    definition: 'The first-order rate at which the surface exchanges oxygen with the air, from a stretch of darkness.',
    equation: 'dC/dt = k(Cs − C) − R, fitted to the window; k', source: odum,
    example: { formula: 'reaeration(mat.DO, dark)', on, gives: '0.133/h' }, words: 'the surface exchange rate from {1}{window}', evaluate: reaeration,
  },
  {
    name: 'balance-point', group: 'oxygen', gives: 'instant', units: 'a time',
    signatures: [{ parameters: [oxygenColumn, { ...windowParameter, about: 'where to look; from the last dark hour on without one' }], options: [] }],
    definition: 'The time at which production begins to outweigh respiration, with the exchange at the surface, as fitted to the dark phase, taken out.',
    equation: 'zero of dC/dt − k(Cs − C), its values between readings allowed only to rise',
    source: `${odum}; levels by Ayer, Brunk, Ewing, Reid and Silverman (1955), Ann. Math. Statist. 26, 641–647`,
    example: { formula: 'balance-point(mat.DO)', on, gives: '06:04' }, words: 'the time at which production met respiration by {1}{window}', evaluate: balancePoint,
  },
  {
    name: 'time-to', group: 'oxygen', gives: 'duration', units: 'a length of time',
    signatures: [{ parameters: [oxygenColumn, { name: 'level', type: 'number', about: 'a level, such as 3 mg/L' }, nightWindow], options: [] }],
    definition: 'How long after the first reading of the dark stretch the fitted night would reach the level, if the night went on alike.',
    equation: 't = ln((C₀ − Ceq) / (L − Ceq)) / k, Ceq = Cs − R/k', source: odum,
    example: { formula: 'time-to(mat.DO, 5.5 mg/L)', on, gives: '8 h 38 min' }, words: 'the time that {1} would need to reach {2}{window}', evaluate: timeTo,
  },
];
