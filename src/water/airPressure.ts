// Air pressure and elevation: the standard atmosphere, sea-level to station pressure, and pressures that cannot be.
import { outsideRange, standardAtmosphere, type Outcome, type WaterProblem } from './outcome.ts';

/**
 * Pressure of the standard atmosphere in hPa at `elevation` in m above sea level, −500 to 11 000 m:
 * P = 1013.25 (1 − 0.0065 h / 288.15)^5.255876. Source: International Standard Atmosphere (ISO 2533), US Standard
 * Atmosphere 1976, troposphere. Outside the range a problem.
 */
export function standardPressure(elevation: number): Outcome | WaterProblem {
  return outsideRange(['elevation', elevation, -500, 11_000, 'm'])
    ?? { value: standardAtmosphere * (1 - 0.0065 * elevation / 288.15) ** 5.255876 };
}

/**
 * Station pressure in hPa from a pressure reduced to sea level in hPa and the elevation in m:
 * P = P(sea) · P(ISA, h) / 1013.25. Source: ratio of the standard atmosphere; the weather services' own reductions use the
 * day's temperature and differ by some hPa above 500 m, so the answer is an estimate and its formula is named beside it.
 * Sea-level pressures outside 850 to 1100 hPa are a problem.
 */
export function stationPressure(seaLevelPressure: number, elevation: number): Outcome | WaterProblem {
  const outside = outsideRange(['pressure', seaLevelPressure, 850, 1100, 'hPa']);
  if (outside) return outside;
  const standard = standardPressure(elevation);
  return 'problem' in standard ? standard : { value: seaLevelPressure * standard.value / standardAtmosphere };
}

/**
 * Pressure at an elevation by an isothermal atmosphere at 15 °C, in hPa, as some oxygen programs use it:
 * P = 1013.25 exp(−g M h / (R · 288.15)). Only to explain their numbers; 0 to 3000 m, else a problem.
 */
export function isothermalPressure(elevation: number): Outcome | WaterProblem {
  return outsideRange(['elevation', elevation, 0, 3000, 'm'])
    ?? { value: standardAtmosphere * Math.exp((-9.80665 * 0.0289644 * elevation) / (8.31447 * 288.15)) };
}

export interface StationCheck {
  /** `impossible`: no weather gives it there (sea-level equivalent outside 870–1085 hPa); `unlikely`: outside 940–1060 hPa. */
  readonly verdict: 'possible' | 'unlikely' | 'impossible';
  /** What the standard atmosphere has at the elevation, hPa. */
  readonly expected: number;
  /** True when the value would be an ordinary sea-level pressure: the reading is probably reduced to sea level. */
  readonly looksReduced: boolean;
}

/**
 * Whether a pressure in hPa can be the station pressure at an elevation in m. The bounds are the records of sea-level
 * pressure (870 hPa in a typhoon, 1085 hPa in a Siberian winter) and, for `unlikely`, common practice without a source.
 */
export function checkStationPressure(pressure: number, elevation: number): StationCheck | WaterProblem {
  const standard = standardPressure(elevation);
  if ('problem' in standard) return standard;
  const atSea = pressure * standardAtmosphere / standard.value;
  const verdict = !(atSea >= 870 && atSea <= 1085) ? 'impossible' : atSea < 940 || atSea > 1060 ? 'unlikely' : 'possible';
  return { verdict, expected: standard.value, looksReduced: verdict !== 'possible' && pressure >= 940 && pressure <= 1060 };
}
