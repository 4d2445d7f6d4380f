// The before/after by treatment/control contrast, paired in time. With one tank a side its interval counts the serial
// correlation of the readings in; with several, each tank counts once.
import { differenceUnit } from '../../quantities/units.ts';
import { isFailure, numberValue, subtract } from '../../quantities/value.ts';
import { formatNumber } from '../../quantities/format.ts';
import { mean } from '../../statistics/describe.ts';
import { isStatisticsProblem } from '../../statistics/outcome.ts';
import { smallestSplitP } from '../../statistics/permutation.ts';
import { serialEstimate } from '../../statistics/serialModel.ts';
import { welch } from '../../statistics/studentTests.ts';
import { medianStep } from '../../analysis/points.ts';
import type { Call } from '../call.ts';
import { tanksNamed } from '../references.ts';
import { groupSeries, joinByTime, pointNumber } from '../seriesValues.ts';
import type { FormulaValue, SeriesPoint, SeriesValue, WindowValue } from '../types.ts';
import { decimalsOf } from './summary.ts';

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
    ? betweenTanks(call, treatment, control, quantity, before, after) : betweenReadings(call, [...earlier, ...later].map(([point]) => point), d, earlier.length);
  const contributions = half === null ? null : new Map([[`contrast:${quantity}:${after.from}`, half / 2]]);
  return { ...numberValue(value, differenceUnit(treated.unit), contributions), ...decimalsOf([...earlier, ...later].flat()) };
}

/** Half the interval with serial correlation; null where there are too few readings for one. */
function betweenReadings(call: Call, points: readonly SeriesPoint[], d: readonly number[], before: number): number | null {
  call.remark('one-tank-a-side');
  const step = medianStep(points);
  const gaps = points.map((point, index) => (index === 0 || !step ? 1 : (point.time - points[index - 1]!.time) / step));
  const found = serialEstimate(d.map((_, index) => [1, index >= before ? 1 : 0]), d, 1, { gaps });
  if (isStatisticsProblem(found)) return null;
  call.remark('serial', { correlation: formatNumber(found.correlation, 2) });
  return (found.interval.high - found.interval.low) / 2;
}

/** Half Welch's interval over the tanks' own changes. */
function betweenTanks(call: Call, treatment: readonly string[], control: readonly string[], quantity: string, before: WindowValue, after: WindowValue): number | null {
  const changes = (tanks: readonly string[]): number[] | null => {
    const found: number[] = [];
    for (const tank of tanks) {
      const series: SeriesValue | null = groupSeries(call.run, tank, [tank], quantity, null, call.rangeOf(0));
      if (!series) return null;
      const early = series.points.filter(inside(before)).map((point) => point.value);
      const late = series.points.filter((point) => inside(after)(point) && !inside(before)(point)).map((point) => point.value);
      if (early.length === 0 || late.length === 0) return null;
      found.push(mean(late) - mean(early));
    }
    return found;
  };
  const a = changes(treatment);
  const b = changes(control);
  call.remark('tanks-as-units', { treatment: treatment.length, control: control.length, smallest: formatNumber(smallestSplitP(treatment.length, control.length), 3) });
  const found = a && b ? welch(a, b) : null;
  return !found || isStatisticsProblem(found) ? null : (found.interval.high - found.interval.low) / 2;
}
