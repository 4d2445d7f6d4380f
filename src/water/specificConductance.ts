// Salinity from specific conductance (conductivity compensated to 25 °C), and back.
import { outsideRange, type Outcome, type WaterProblem } from './outcome.ts';

/** Specific conductance of sea water of salinity 35 at 25 °C, µS/cm. */
const seawater = 53_087;

/**
 * Practical salinity from specific conductance at 25 °C in µS/cm, 500 to 53 087:
 * S = 0.0120 − 0.2174 R^½ + 25.3283 R + 13.7714 R^1.5 − 6.4788 R² + 2.5842 R^2.5 with R = SC/53087.
 * Source: Schemel (2001), IEP Newsletter 14(1), 17–18. The coefficients were not read in the original; they were checked
 * against PSS-78 as computed by TEOS-10 software (GSW 3.6.16) and agree within 0.0122 over the range (largest at 53 000 µS/cm), which the tests hold.
 * Outside the range a problem. Tap water's ions are not those of sea water.
 */
export function salinityOfSpecificConductance(specificConductance: number): Outcome | WaterProblem {
  const outside = outsideRange(['specific conductance', specificConductance, 500, seawater, 'uS/cm']);
  if (outside) return outside;
  const ratio = specificConductance / seawater;
  const root = Math.sqrt(ratio);
  return { value: 0.012 - 0.2174 * root + 25.3283 * ratio + 13.7714 * ratio * root - 6.4788 * ratio ** 2 + 2.5842 * ratio ** 2 * root };
}

/**
 * Specific conductance at 25 °C in µS/cm of water of practical salinity 0.5 to 35:
 * SC = (S/35)·53087 + S(S − 35)(−16.072 + 4.1495 S^½ − 0.5345 S + 0.0261 S^1.5). Source: Schemel (2001), as above.
 * Outside the range a problem.
 */
export function specificConductanceOfSalinity(salinity: number): Outcome | WaterProblem {
  const outside = outsideRange(['salinity', salinity, 0.5, 35, 'PSU']);
  if (outside) return outside;
  const root = Math.sqrt(salinity);
  return { value: salinity / 35 * seawater + salinity * (salinity - 35) * (-16.072 + 4.1495 * root - 0.5345 * salinity + 0.0261 * salinity * root) };
}
