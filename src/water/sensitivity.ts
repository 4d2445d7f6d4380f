// How much an equation's answer moves with one of its inputs: derivatives for carrying uncertainty through.
import { isWaterProblem, type Outcome, type WaterProblem } from './outcome.ts';

/**
 * Derivative of an equation by one input at a point, in answer per input, by central difference (step 1e-4 of the input's
 * size, at least 1e-4); at the edge of the equation's range by one-sided difference. null where no neighbour has an answer.
 */
export function sensitivity<Input extends Readonly<Record<Key, number>>, Key extends keyof Input & string>(
  equation: (input: Input) => Outcome | WaterProblem, at: Input, key: Key,
): number | null {
  const here = equation(at);
  if (isWaterProblem(here)) return null;
  const position = at[key] as number;
  const step = Math.max(Math.abs(position) * 1e-4, 1e-4);
  const above = equation({ ...at, [key]: position + step });
  const below = equation({ ...at, [key]: position - step });
  const rise = isWaterProblem(above) ? null : above.value - here.value;
  const fall = isWaterProblem(below) ? null : here.value - below.value;
  if (rise !== null && fall !== null) return (rise + fall) / (2 * step);
  const one = rise ?? fall;
  return one === null ? null : one / step;
}
