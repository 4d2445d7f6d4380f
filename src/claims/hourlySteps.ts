// Steps shown per hour: `2.5 to 4.9 %/h` for `percent-steps(mat.DO, every 1 h)`, whose steps are in %.
import type { MappedText } from '../note/mappedText.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { FormulaValue } from '../formula/types.ts';
import { readDuration } from '../time/text.ts';
import { hour } from '../time/instant.ts';
import { perHour } from '../quantities/units.ts';
import { core, partOf } from './formulaShape.ts';

type SeriesValue = Extract<FormulaValue, { type: 'series' }>;

/** The steps of a `steps` or `percent-steps` call divided by their length; null for other formulas and steps without a length. */
export function stepsPerHour(formula: MappedText, value: SeriesValue, context: FormulaContext): SeriesValue | null {
  const inner = core(partOf(formula, context), context);
  if (inner.expression.kind !== 'call' || !/^(?:percent-)?steps$/.test(inner.expression.name)) return null;
  const every = inner.expression.options.find((option) => option.name === 'every')?.value;
  if (!every) return null;
  const length = every.kind === 'duration' ? every.duration : readDuration(inner.text.text.slice(every.range.start, every.range.end));
  if (length === null || length <= 0) return null;
  return { ...value, unit: perHour(value.unit), points: value.points.map((point) => ({ ...point, value: point.value * hour / length })) };
}
