// The before/after by treatment/control contrast, paired in time. With one tank a side its interval counts the serial
// correlation of the readings in; with several, each tank counts once.
import { differenceUnit } from '../../quantities/units.ts';
import { isFailure, numberValue, subtract } from '../../quantities/value.ts';
import { formatNumber, formatValue } from '../../quantities/format.ts';
import type { Unit } from '../../quantities/types.ts';
import { mean } from '../../statistics/describe.ts';
import { isStatisticsProblem } from '../../statistics/outcome.ts';
import { exactSplit, smallestSplitP } from '../../statistics/permutation.ts';
import { serialEstimate } from '../../statistics/serialModel.ts';
import { welch } from '../../statistics/studentTests.ts';
import { medianStep } from '../../analysis/points.ts';
import type { Call } from '../call.ts';
import { tanksNamed } from '../references.ts';
import { groupSeries, joinByTime, one, pointNumber } from '../seriesValues.ts';
import type { FormulaValue, SeriesPoint, SeriesValue, WindowValue } from '../types.ts';
import { decimalsOf, remarkSerial } from './summary.ts';

type Pair = readonly [SeriesPoint, SeriesPoint];

function baselineOf(call: Call): WindowValue | null {
  const phases = call.run.context.protocol?.phases.filter((phase) => /^baseline(?:-\d+)?$/u.test(phase.id)) ?? [];
  if (phases.length === 1) return { type: 'window', ...phases[0]!.window, phase: phases[0]!.id };
  return phases.length === 0 ? call.fail('no-such-phase', { name: 'baseline' }) : call.fail('ambiguous-phase', { name: 'baseline', phases: phases.map((phase) => phase.id) });
}

const inside = (window: WindowValue) => (point: SeriesPoint): boolean =>
  point.time >= window.from && point.time <= window.to && !(window.opensAtLightsOff && point.time === window.from);

/** `contrast(DO, dark)`. */
export function contrast(call: Call): FormulaValue | null {
  const quantity = (call.operand(0) as { id: string }).id;
  const after = call.window(1);
  const before = baselineOf(call);
  if (!after || !before) return null;
  const treatment = tanksNamed(call.run, 'treatment')?.ids ?? [];
  const control = tanksNamed(call.run, 'control')?.ids ?? [];
  const at = call.rangeOf(0);
  const treated = groupSeries(call.run, 'treatment', treatment, quantity, null, at);
  const untreated = groupSeries(call.run, 'control', control, quantity, null, at);
  if (!treated || !untreated) return null;
  const pairs: Pair[] = joinByTime(treated, untreated).pairs;
  const earlier = pairs.filter(([point]) => inside(before)(point));
  const later = pairs.filter(([point]) => inside(after)(point) && !inside(before)(point));
  for (const [part, least] of [[earlier, 2], [later, 2]] as const) {
    const points = part.map(([point]) => point);
    if (points.length < least) return call.fail('too-few-readings', { function: call.name, name: `treatment.${quantity} and control.${quantity}`, count: points.length, least });
    if (!call.within(part.flat(), 0)) return null;
  }
  call.use([...earlier, ...later].flat());
  const gaps = (part: readonly Pair[]): number[] => part.map(([t, c]) => {
    const difference = subtract(pointNumber(t, treated.unit), pointNumber(c, untreated.unit));
    return isFailure(difference) ? Number.NaN : difference.value;
  });
  const d = [...gaps(earlier), ...gaps(later)];
  const value = mean(d.slice(earlier.length)) - mean(d.slice(0, earlier.length));
  if (!Number.isFinite(value)) return call.fail('unit-mismatch', { left: treated.unit.print, right: untreated.unit.print }, at);
  const half = treatment.length > 1 && control.length > 1
    ? betweenTanks(call, treatment, control, quantity, before, after) : betweenReadings(call, [...earlier, ...later].map(([point]) => point), d, { before: earlier.length, value, unit: differenceUnit(treated.unit) });
  const contributions = half === null ? null : new Map([[`contrast:${quantity}:${after.from}..${after.to}`, half / 2]]);
  return { ...numberValue(value, differenceUnit(treated.unit), contributions), ...decimalsOf([...earlier, ...later].flat()) };
}

/** Half the interval with serial correlation; null where there are too few readings for one. */
function betweenReadings(call: Call, points: readonly SeriesPoint[], d: readonly number[], { before, value, unit }: { before: number; value: number; unit: Unit }): number | null {
  call.remark('one-tank-a-side');
  const step = medianStep(points);
  const gaps = points.map((point, index) => (index === 0 || !step ? 1 : (point.time - points[index - 1]!.time) / step));
  const found = serialEstimate(d.map((_, index) => [1, index >= before ? 1 : 0]), d, 1, { gaps });
  if (isStatisticsProblem(found)) return null;
  const half = (found.interval.high - found.interval.low) / 2;
  const shown = formatValue(numberValue(value, unit, new Map([['contrast', half / 2]])), { uncertainty: true });
  call.remark('serial', { value: shown, correlation: formatNumber(found.correlation, 2) });
  remarkSerial(call, found, d.length);
  return half;
}

/** Each tank's own change from the baseline to the window, in the unit of the first series; null after a problem. */
function changesOf(call: Call, tanks: readonly string[], quantity: string, before: WindowValue, after: WindowValue): number[] | null {
  const found: number[] = [];
  for (const tank of tanks) {
    const series: SeriesValue | null = groupSeries(call.run, tank, [tank], quantity, null, call.rangeOf(0));
    if (!series) return null;
    const early = series.points.filter(inside(before));
    const late = series.points.filter((point) => inside(after)(point) && !inside(before)(point));
    if (early.length === 0 || late.length === 0) return null;
    if (!call.within([...early, ...late], 0)) return null;
    found.push(mean(late.map((point) => point.value)) - mean(early.map((point) => point.value)));
  }
  return found;
}

/** Half Welch's interval over the tanks' own changes. */
function betweenTanks(call: Call, treatment: readonly string[], control: readonly string[], quantity: string, before: WindowValue, after: WindowValue): number | null {
  const a = changesOf(call, treatment, quantity, before, after);
  const b = changesOf(call, control, quantity, before, after);
  const exact = a && b ? exactSplit(a, b) : null;
  const args = { treatment: treatment.length, control: control.length, smallest: smallText(smallestSplitP(treatment.length, control.length)) };
  if (exact && !isStatisticsProblem(exact)) call.remark('tanks-as-units-p', { ...args, p: smallText(exact.p) });
  else call.remark('tanks-as-units', args);
  const found = a && b ? welch(a, b) : null;
  return !found || isStatisticsProblem(found) ? null : (found.interval.high - found.interval.low) / 2;
}

const smallText = (p: number): string => formatNumber(p, p < 0.01 ? 4 : 3);

/** `permutation-p(DO, dark)`: with replicate tanks the tank is the unit. */
export function permutationP(call: Call): FormulaValue | null {
  const quantity = (call.operand(0) as { id: string }).id;
  const after = call.window(1);
  const before = baselineOf(call);
  const treatment = tanksNamed(call.run, 'treatment')?.ids ?? [];
  const control = tanksNamed(call.run, 'control')?.ids ?? [];
  if (!after || !before) return null;
  if (treatment.length < 2 || control.length < 2) return call.fail('replicates-needed', { function: call.name, treatment: treatment.length, control: control.length });
  const a = changesOf(call, treatment, quantity, before, after);
  const b = changesOf(call, control, quantity, before, after);
  if (!a || !b) return call.run.failed ? null : call.fail('too-few-readings', { function: call.name, name: quantity, count: 0, least: 1 });
  const exact = exactSplit(a, b);
  if (isStatisticsProblem(exact)) return call.fail('too-many-tanks', { function: call.name, count: treatment.length + control.length });
  call.remark('tanks-as-units-p', { treatment: treatment.length, control: control.length, smallest: smallText(exact.smallestP), p: smallText(exact.p) });
  return { ...numberValue(exact.p, one, new Map()), decimals: exact.p < 0.01 ? 4 : 3 };
}
