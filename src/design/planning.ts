// Planning figures: what the planned instruments, interval and number of tanks can tell apart before the first reading.
import { amountIn } from '../dataset/readingValue.ts';
import type { MeasuredQuantity, Phase, Protocol } from '../protocol/types.ts';
import { differenceUnit } from '../quantities/units.ts';
import type { Unit } from '../quantities/types.ts';
import { isStatisticsProblem } from '../statistics/outcome.ts';
import { minimumDifference } from '../statistics/minimumDifference.ts';
import { smallestSplitP } from '../statistics/permutation.ts';
import { differenceHalfWidth } from './instruments.ts';

export interface PlanningFigures {
  readonly quantity: string;
  /** Unit of the differences below. */
  readonly unit: Unit;
  /** Smallest difference of two tanks that one pair of readings resolves, 95 %. */
  readonly singleReading: number;
  /** The same for the mean difference over a phase, by the planned readings in it; the shared part of the instruments' errors stays. */
  readonly overPhase: { readonly phase: string; readonly readings: number; readonly difference: number } | null;
  /** The smallest difference between a change in one tank and that in the other, first to last reading. */
  readonly change: number;
}

export interface TankFigures {
  readonly treatment: number;
  readonly control: number;
  /** With at least two tanks a side: the smallest true difference found with a probability of 80 % at 5 %, in standard deviations between tanks treated alike. */
  readonly inDeviations: number | null;
  /** The smallest p of an exact permutation test; null with one tank a side, where no p can be given. */
  readonly smallestP: number | null;
}

/** Planned readings inside a phase, the one that opens a dark phase left to the phase before. */
function plannedIn(phase: Phase, protocol: Protocol): number {
  const dark = phase.id.startsWith('dark');
  return (protocol.schedule?.slots ?? []).filter((slot) => (dark ? slot > phase.window.from : slot >= phase.window.from) && slot <= phase.window.to).length;
}

function isShared(measure: MeasuredQuantity, protocol: Protocol): boolean {
  const places = measure.in.map((each) => each.value);
  return (places.length === 0 ? protocol.tanks.length : protocol.tanks.filter((tank) => places.includes(tank.id)).length) > 1;
}

/** For every quantity measured in two tanks at least, with a stated accuracy. Uncertainty as in formulas: GUM, 95 %. */
export function planningFigures(protocol: Protocol): PlanningFigures[] {
  const phase = protocol.phases.find((each) => /^dark(?:-\d+)?$/.test(each.id)) ?? null;
  const readings = phase ? plannedIn(phase, protocol) : 0;
  return protocol.measure.flatMap((measure): PlanningFigures[] => {
    if (!measure.unit || measure.id.includes('@') || measure.in.some((each) => each.value === 'room')) return [];
    const single = differenceHalfWidth(measure, protocol);
    if (single === null || protocol.tanks.length < 2) return [];
    // 2 · √(2 readings · δ²/12), and a/√3 for each of two instruments.
    const rounding = 2 * Math.sqrt(2) * (amountIn(measure.resolution, measure.unit, 0) ?? 0) / Math.sqrt(12);
    const instruments = isShared(measure, protocol) && measure.resolution ? 0 : Math.sqrt(Math.max(0, single ** 2 - rounding ** 2));
    return [{
      quantity: measure.id, unit: differenceUnit(measure.unit), singleReading: single,
      overPhase: phase && readings > 1 ? { phase: phase.id, readings, difference: Math.sqrt(instruments ** 2 + rounding ** 2 / readings) } : null,
      // Four readings; what each instrument is off by stays the same from first to last and cancels, where its resolution is stated.
      change: measure.resolution ? Math.SQRT2 * rounding : Math.SQRT2 * single,
    }];
  });
}

/** What the number of tanks allows; null without both roles. */
export function tankFigures(protocol: Protocol): TankFigures | null {
  const count = (role: 'treatment' | 'control'): number => protocol.tanks.filter((tank) => tank.role?.value === role).length;
  const [treatment, control] = [count('treatment'), count('control')];
  if (treatment === 0 || control === 0) return null;
  const least = Math.min(treatment, control);
  const found = least >= 2 ? minimumDifference({ count: least, deviation: 1, kind: 'two-groups' }) : null;
  return { treatment, control, inDeviations: found === null || isStatisticsProblem(found) ? null : found, smallestP: least >= 2 ? smallestSplitP(treatment, control) : null };
}
