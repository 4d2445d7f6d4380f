// Functions of a whole night: respiration, surface exchange, the balance point and the time to a level, from one fit.
import { balanceHours, fitNight, hoursToLevel, type NightFit, type NightRow } from '../../analysis/nightFit.ts';
import { balanceInterval, timeToInterval } from '../../analysis/nightTimes.ts';
import { leastSquaresLine } from '../../analysis/line.ts';
import { hour } from '../../time/instant.ts';
import { formatDuration } from '../../time/text.ts';
import { parseUnit } from '../../quantities/units.ts';
import { formatNumber } from '../../quantities/format.ts';
import { numberValue, standardUncertainty } from '../../quantities/value.ts';
import { isStatisticsProblem, type Interval } from '../../statistics/outcome.ts';
import type { Call } from '../call.ts';
import type { FormulaNumber, FormulaValue, SeriesPoint, WindowValue } from '../types.ts';
import { oxygenColumn, oxygenRows } from './oxygen.ts';
import { windowParameter, type FunctionEntry, type Parameter, type Signature } from './entry.ts';
import { enoughDecimals } from './summary.ts';
import { milligrams } from './waterRows.ts';
import { between } from '../../analysis/points.ts';

export interface Night { readonly fit: NightFit; readonly pairs: readonly [SeriesPoint, SeriesPoint][]; readonly start: number }

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
  return { fit, pairs, start: points[0]!.time };
}

/** Half the interval over 2, so that the 95 % half-width printed is that of Student's t. */
function scatter(interval: Interval): number { return (interval.high - interval.low) / 4; }

/** What the instruments' systematic parts do to the mean deficit: they shift every row alike. */
export function systematic(pairs: readonly [SeriesPoint, SeriesPoint][]): Map<string, number> | null {
  const sums = new Map<string, number>();
  for (const [oxygen, full] of pairs) {
    if (!oxygen.contributions || !full.contributions) return null;
    for (const [sign, point] of [[-1, oxygen], [1, full]] as const) {
      for (const [key, size] of point.contributions!) if (key.startsWith('instrument:')) sums.set(key, (sums.get(key) ?? 0) + sign * size / pairs.length);
    }
  }
  return sums;
}

function respiration(call: Call): FormulaValue | null {
  const found = night(call, call.window(1));
  if (!found) return null;
  const { fit, pairs } = found;
  const shifts = systematic(pairs);
  const contributions = shifts && new Map([[`fit:${call.name}:${pairs[0]![0].time}`, scatter(fit.respirationInterval)], ...[...shifts].map(([key, size]): [string, number] => [key, size * fit.exchange])]);
  return withDigits(numberValue(fit.respiration, milligramsPerHour, contributions));
}

function reaeration(call: Call): FormulaValue | null {
  const found = night(call, call.window(1));
  if (!found) return null;
  return withDigits(numberValue(found.fit.exchange, perHourUnit, new Map([[`fit:${call.name}:${found.pairs[0]![0].time}`, scatter(found.fit.exchangeInterval)]])));
}

export function withDigits(value: FormulaNumber): FormulaNumber {
  const u = standardUncertainty(value);
  const decimals = u !== null && u > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(2 * u)))) : 3;
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
  const interval = timeToInterval(found.fit, level.value);
  const said = (hours: number): string => formatDuration(Math.round(hours * 60) * 60_000);
  if (interval?.high != null) call.remark('time-interval', { low: said(interval.low), high: said(interval.high) });
  else call.remark('time-open', { low: said(interval?.low ?? 0) });
  return { type: 'duration', duration: Math.round(hours * 60) * 60_000 };
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
  const instantOf = (at: number): number => Math.round((points[0]!.time + at * hour) / 60_000) * 60_000;
  const interval = balanceInterval(rows, found.fit);
  if (interval) call.remark('time-interval', { low: call.time(instantOf(interval.low)), high: call.time(instantOf(interval.high)) });
  else call.remark('balance-open', {});
  return { type: 'instant', instant: instantOf(hours) };
}

const milligramsPerHour = parseUnit('mg/L/h') ?? milligrams;
const perHourUnit = parseUnit('/h') ?? parseUnit('1/h') ?? milligrams;
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
    equation: 'dC/dt − k(Cs − C) = 0', source: odum,
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
