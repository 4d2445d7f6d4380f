// Explains a difference of dissolved oxygen between two tanks: what temperature, pressure and salinity make of it through the
// solubility, and what is left; and finds the readings at which both tanks jump together.
import { oxygenSolubility } from '../water/oxygenSolubility.ts';
import { isWaterProblem } from '../water/outcome.ts';

/** One tank at one time: mg/L, °C, hPa at the place, practical salinity. */
export interface GapSide { readonly oxygen: number; readonly temperature: number; readonly pressure: number; readonly salinity: number }

export interface Gap {
  /** Oxygen of the first less the second, mg/L: the sum of the four parts. */
  readonly difference: number;
  readonly temperature: number;
  readonly pressure: number;
  readonly salinity: number;
  /** What solubility does not explain: the tanks' difference in saturation. */
  readonly left: number;
}

const factors = ['temperature', 'pressure', 'salinity'] as const;

/**
 * C = s·Cs in both tanks, so C₁ − C₂ = s̄(Cs₁ − Cs₂) + C̄s(s₁ − s₂) exactly. The first part is divided among temperature, pressure
 * and salinity by the mean over the six orders in which they can be changed one after the other (Shapley 1953). Solubility by
 * Benson and Krause (1984); null outside its range.
 */
export function explainGap(one: GapSide, other: GapSide): Gap | null {
  const solubility = (picked: readonly boolean[]): number => {
    const [temperature, pressure, salinity] = factors.map((factor, index) => (picked[index] ? one : other)[factor]) as [number, number, number];
    const found = oxygenSolubility({ temperature, pressure, salinity });
    return isWaterProblem(found) ? Number.NaN : found.value;
  };
  const full = solubility([true, true, true]);
  const fullOther = solubility([false, false, false]);
  const saturation = (one.oxygen / full + other.oxygen / fullOther) / 2;
  const parts = [0, 0, 0];
  for (const order of [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]]) {
    const picked = [false, false, false];
    let before = fullOther;
    for (const factor of order) {
      picked[factor] = true;
      const after = solubility(picked);
      parts[factor]! += (after - before) / 6;
      before = after;
    }
  }
  const [temperature, pressure, salinity] = parts.map((each) => saturation * each) as [number, number, number];
  const difference = one.oxygen - other.oxygen;
  const left = difference - temperature - pressure - salinity;
  return [temperature, pressure, salinity, left].every(Number.isFinite) ? { difference, temperature, pressure, salinity, left } : null;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** How far the step into each reading stands out from the three before and the three after it, on the nearer side; 0 where it does not. */
function standingOut(values: readonly number[]): number[] {
  const steps = values.slice(1).map((value, index) => value - values[index]!);
  return values.map((_, index) => {
    const at = index - 1;
    const before = steps.slice(Math.max(0, at - 3), Math.max(0, at));
    const after = steps.slice(at + 1, at + 4);
    if (at < 0 || before.length < 2 || after.length < 2) return 0;
    const a = steps[at]! - median(before);
    const b = steps[at]! - median(after);
    return Math.sign(a) === Math.sign(b) ? Math.sign(a) * Math.min(Math.abs(a), Math.abs(b)) : 0;
  });
}

/**
 * Positions (in values read at the same times, evenly spaced) at which both tanks jump together and alike: each by more than
 * four times the usual unevenness of its steps and more than `least`, the same way, the smaller at least half the larger.
 * That is a probe moved or wiped, or water stirred, more likely than two tanks doing the same at once. Common practice, no source.
 */
export function commonSteps(a: readonly number[], b: readonly number[], least: number): number[] {
  if (a.length !== b.length || a.length < 7) return [];
  const unevenness = (values: readonly number[]): number => {
    const second = values.slice(2).map((value, index) => value - 2 * values[index + 1]! + values[index]!);
    const centre = median(second);
    return 1.4826 * median(second.map((each) => Math.abs(each - centre)));
  };
  const bounds = [a, b].map((values) => Math.max(4 * unevenness(values), least));
  const [one, other] = [standingOut(a), standingOut(b)];
  return one.flatMap((step, index) => {
    const both = [Math.abs(step), Math.abs(other[index]!)];
    return Math.sign(step) === Math.sign(other[index]!) && both[0]! > bounds[0]! && both[1]! > bounds[1]! && Math.min(...both) >= 0.5 * Math.max(...both) ? [index] : [];
  });
}
