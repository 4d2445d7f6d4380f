// Functions that compare two series or ask whether a difference can be told at all.
import { parseUnit } from '../../quantities/units.ts';
import { combine, expandedUncertainty, isFailure, toUnit } from '../../quantities/value.ts';
import { formatValue } from '../../quantities/format.ts';
import { hasTrueZero } from '../../quantities/units.ts';
import type { Call } from '../call.ts';
import { between } from '../../analysis/points.ts';
import { calculate } from '../operations.ts';
import type { FormulaNumber, FormulaValue, SeriesValue } from '../types.ts';
import { contrast, permutationP } from './contrast.ts';
import { windowParameter, type FunctionEntry, type Signature } from './entry.ts';

const pair: readonly Signature[] = [{
  parameters: [
    { name: 's', type: 'number or series', about: 'the first value or readings' },
    { name: 't', type: 'number or series', about: 'what it is compared with' }, windowParameter,
  ],
  options: [],
}];
const percentUnit = parseUnit('%')!;

/** The operand, cut to the window. */
function cut(call: Call, index: number): FormulaValue | null {
  const value = call.operand(index)!;
  const stretch = call.window(2);
  if (value.type !== 'series' || !stretch) return value;
  const points = call.points(index, 2, { limits: true });
  return points && { ...value, points, holes: (value.holes ?? []).filter((time) => time >= stretch.from && time <= stretch.to) };
}

function difference(call: Call): FormulaValue | null {
  const a = cut(call, 0);
  const b = cut(call, 1);
  const left = call.expression(0);
  const right = call.expression(1);
  if (!a || !b || !left || !right) return null;
  return calculate(call.run, '-', { value: a, expression: left }, { value: b, expression: right }, call.range);
}

function percentDifference(call: Call): FormulaValue | null {
  const a = cut(call, 0) as FormulaNumber | SeriesValue | null;
  const b = cut(call, 1) as FormulaNumber | SeriesValue | null;
  if (!a || !b) return null;
  for (const each of [a, b]) if (!hasTrueZero(each.unit)) return call.fail('no-true-zero', { unit: each.unit.symbol }, call.rangeOf(each === a ? 0 : 1));
  const one = (p: FormulaNumber, q: FormulaNumber): FormulaNumber | null => {
    const same = toUnit(p, q.unit);
    if (isFailure(same)) return call.failure(same);
    if (q.value === 0) return call.fail('zero-base', { unit: q.unit.symbol }, call.rangeOf(1));
    const value = 100 * (same.value - q.value) / q.value;
    return { ...combine(value, percentUnit, [{ value: same, derivative: 100 / q.value }, { value: q, derivative: -100 * same.value / q.value ** 2 }]), decimals: 1 };
  };
  if (a.type === 'number' && b.type === 'number') return one(a, b);
  const left = call.expression(0)!;
  const right = call.expression(1)!;
  const gap = calculate(call.run, '-', { value: a, expression: left }, { value: b, expression: right }, call.range);
  if (!gap || gap.type !== 'series') return null;
  const at = (value: FormulaNumber | SeriesValue, time: number): FormulaNumber => {
    if (value.type === 'number') return value;
    const point = between(value.points, time, time)[0]!;
    return { type: 'number', value: point.value, unit: value.unit, contributions: point.contributions };
  };
  const points = [];
  for (const point of gap.points) {
    const value = one(at(a, point.time), at(b, point.time));
    if (!value) return null;
    points.push({ ...point, value: value.value, contributions: value.contributions, decimals: 1 });
  }
  return { type: 'series', unit: percentUnit, points, holes: gap.holes ?? [], content: 'number' };
}

function resolved(call: Call): FormulaValue | null {
  const value = call.number(0);
  const half = expandedUncertainty(value);
  if (half === null) return call.fail('accuracy-needed', { name: call.run.textOf(call.rangeOf(0)), function: call.name }, call.rangeOf(0));
  call.remark('half-width', { value: formatValue({ ...value, value: half, contributions: null }) });
  return { type: 'truth', truth: Math.abs(value.value) > half };
}

export const comparisonFunctions: readonly FunctionEntry[] = [
  {
    name: 'difference', group: 'comparison', gives: 'number or series', units: 'that of a difference of the first', signatures: pair,
    definition: 'The first minus the second, reading by reading at the times that both have.', equation: 's − t', source: null,
    example: { formula: 'max(difference(open.DO, mat.DO))', on: 'the oxygen of both tanks', gives: '2.26 mg/L' }, words: '{1} minus {2}{window}',
    evaluate: difference,
  },
  {
    name: 'percent-difference', group: 'comparison', gives: 'number or series', units: '% of the second', signatures: pair,
    definition: 'The first minus the second as a percentage of the second.', equation: '100 · (s − t) / t', source: null,
    example: { formula: 'percent-difference(at(mat.DO, 06:00), at(open.DO, 06:00))', on: 'the oxygen of both tanks', gives: '-28.0 %' },
    words: 'the difference of {1} from {2} in per cent of the latter{window}',
    evaluate: percentDifference,
  },
  {
    name: 'contrast', group: 'comparison', gives: 'number', units: 'that of a difference of the quantity',
    signatures: [{ parameters: [{ name: 'quantity', type: 'quantity', about: 'a measured quantity, such as DO' }, { ...windowParameter, optional: false }], options: [] }],
    definition: 'How much more the treatment tanks changed from the baseline to the window than the control tanks did.',
    equation: '(T̄(window) − T̄(baseline)) − (C̄(window) − C̄(baseline)), paired in time',
    source: 'Stewart-Oaten, Murdoch and Parker (1986), Ecology 67, 929–940',
    example: { formula: 'contrast(DO, dark)', on: 'the oxygen of both tanks', gives: '-1.51 mg/L' },
    words: 'the change of {1} in the treatment tanks beyond that in the control tanks, from the baseline{window}',
    evaluate: contrast,
  },
  {
    name: 'permutation-p', group: 'comparison', gives: 'number', units: 'a probability',
    signatures: [{ parameters: [{ name: 'quantity', type: 'quantity', about: 'a measured quantity, such as DO' }, { ...windowParameter, optional: false }], options: [] }],
    definition: 'The exact two-sided p of the contrast with each tank counted once: how many of all ways to divide the tanks into two groups set them at least as far apart; two tanks a side at least.',
    equation: 'divisions with |difference of the tanks’ mean changes| ≥ the one seen, over all', source: 'Fisher (1935), The Design of Experiments; Hurlbert (1984), Ecological Monographs 54, 187–211',
    example: { formula: 'permutation-p(DO, dark)', on: 'one tank a side, so there is no p', gives: 'replicates-needed' },
    words: 'the exact permutation p of the change of {1} in the treatment tanks beyond that in the control tanks{window}',
    evaluate: permutationP,
  },
  {
    name: 'resolved', group: 'comparison', gives: 'truth', units: 'true or false',
    signatures: [{ parameters: [{ name: 'x', type: 'number', about: 'a change or difference' }], options: [] }],
    definition: 'True when a change or difference is larger than its 95 % half-width, so that the instruments can tell it from nothing.',
    equation: '|x| > U(x)', source: 'JCGM 100:2008 (GUM)',
    example: { formula: 'resolved(fall(mat.DO, 22:00..23:00))', on: 'the oxygen in the mat tank', gives: 'true' }, words: '{1} is more than the instruments’ uncertainty',
    evaluate: resolved,
  },
];
