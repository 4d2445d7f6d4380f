// Whether a bare value is the number somebody wrote: the unit is looked at once a unit, the value is then two comparisons.
import type { NumberValue, Unit } from '../../quantities/types.ts';
import { convert } from '../../quantities/units.ts';
import { fittingUnit, holdsNumber } from '../compareNumber.ts';
import type { NumberMention } from '../mentions.ts';

export interface Matcher {
  /** True when a value in that unit can be shown as the number is. */
  fits(unit: Unit): boolean;
  /** True when the value, in that unit, is the number as shown. */
  gives(value: number, unit: Unit): boolean;
  /** The value in the unit of the number. */
  shown(value: number, unit: Unit): number;
}

export function matcherOf(mention: NumberMention): Matcher {
  const fitting = new Map<Unit, { readonly unit: Unit; readonly scale: number; readonly shift: number } | null>();
  const look = (unit: Unit): { readonly unit: Unit; readonly scale: number; readonly shift: number } | null => {
    let known = fitting.get(unit);
    if (known === undefined) {
      const shown = fittingUnit(mention.unit, unit);
      const shift = shown ? convert(0, unit, shown) : 0;
      known = shown ? { unit: shown, scale: convert(1, unit, shown) - shift, shift } : null;
      fitting.set(unit, known);
    }
    return known;
  };
  return {
    fits: (unit) => look(unit) !== null,
    gives: (value, unit) => {
      const known = look(unit);
      return known !== null && holdsNumber(mention.value, mention.decimals, value * known.scale + known.shift, mention);
    },
    shown: (value, unit) => {
      const known = look(unit);
      return known ? value * known.scale + known.shift : NaN;
    },
  };
}

export const sameLevel = (a: NumberValue, b: NumberValue): boolean => fittingUnit(a.unit, b.unit) !== null && Math.abs(convert(a.value, a.unit, b.unit) - b.value) <= 1e-9 * Math.abs(b.value);
