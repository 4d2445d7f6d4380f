// Salinity from specific gravity, with the reference temperature that the hydrometer was made for.
import { bisect, outsideRange, type Outcome, type WaterProblem } from './outcome.ts';
import { densityAtScaleOf1968 } from './density.ts';
import { toScaleOf1968 } from './practicalSalinity.ts';

export interface SpecificGravityReading {
  /** Density of the water at `temperature` over density of pure water at `reference`. */
  readonly specificGravity: number;
  /** Water temperature, °C: 0 to 40. */
  readonly temperature: number;
  /** Reference temperature of the pure water, °C: 0 to 40, printed on the instrument (15, 20, 25; 60 °F is 15.56). */
  readonly reference: number;
}

/**
 * Specific gravity ρ(S, t) / ρ(0, reference) of water of practical salinity 0 to 42; both temperatures in °C, 0 to 40.
 * Source: EOS-80 as in `waterDensity`. Outside the range a problem.
 */
export function specificGravityOf(salinity: number, temperature: number, reference: number): Outcome | WaterProblem {
  return outsideRange(['salinity', salinity, 0, 42, 'PSU'], ['temperature', temperature, 0, 40, 'degC'], ['reference temperature', reference, 0, 40, 'degC'])
    ?? { value: densityAtScaleOf1968(salinity, toScaleOf1968(temperature)) / densityAtScaleOf1968(0, toScaleOf1968(reference)) };
}

/**
 * Practical salinity from a specific gravity: EOS-80 (see `waterDensity`) turned round by bisection on S between 0 and 42.
 * The expansion of the hydrometer's glass is left out. A gravity that no salinity from 0 to 42 gives at these
 * temperatures is outside the range.
 */
export function salinityOfSpecificGravity(reading: SpecificGravityReading): Outcome | WaterProblem {
  const { specificGravity, temperature, reference } = reading;
  const least = specificGravityOf(0, temperature, reference);
  const most = specificGravityOf(42, temperature, reference);
  if ('problem' in least) return least;
  if ('problem' in most) return most;
  const outside = outsideRange(['specific gravity', specificGravity, least.value, most.value, 'SG']);
  if (outside) return outside;
  const pure = densityAtScaleOf1968(0, toScaleOf1968(reference));
  const salinity = bisect((each) => densityAtScaleOf1968(each, toScaleOf1968(temperature)) / pure - specificGravity, 0, 42);
  return salinity === null ? { problem: 'no-solution', about: 'salinity' } : { value: salinity };
}
