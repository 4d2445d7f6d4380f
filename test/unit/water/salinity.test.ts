// Salinity, conductance, density and specific gravity against the check values of their publications.
import fc from 'fast-check';
import { conductivityOfSalinity, practicalSalinity } from '../../../src/water/practicalSalinity.ts';
import { salinityOfSpecificConductance, specificConductanceOfSalinity } from '../../../src/water/specificConductance.ts';
import { densityAtScaleOf1968, waterDensity } from '../../../src/water/density.ts';
import { salinityOfSpecificGravity, specificGravityOf } from '../../../src/water/specificGravity.ts';
import { near, refused, valueOf } from './near.ts';

suite('practical salinity, PSS-78', () => {
  // Fofonoff and Millard (1983): [conductivity ratio, t68, dbar, salinity]
  const published: [number, number, number, number][] = [[1, 15, 0, 35], [1.2, 20, 2000, 37.24563], [0.65, 5, 1500, 27.99535]];
  for (const [ratio, t68, pressure, expected] of published) {
    test(`R ${ratio}, ${t68} °C, ${pressure} dbar: ${expected} (UNESCO 44)`, () => near(practicalSalinity(ratio * 42.914, t68 / 1.00024, pressure), expected, 1e-5));
  }

  // GSW (TEOS-10) at 25 °C: [mS/cm, SP]; below 2 the extension of Hill et al. (1986)
  const grid: [number, number][] = [
    [0.5, 0.240378], [1, 0.492451], [2, 1.0166], [5, 2.679605], [10, 5.626644], [20, 11.914998], [30, 18.569945], [40, 25.518879], [50, 32.733167], [53.087, 35.011849],
  ];
  for (const [conductivity, expected] of grid) {
    test(`${conductivity} mS/cm at 25 °C: ${expected} (GSW)`, () => near(practicalSalinity(conductivity, 25), expected, 1e-5));
  }

  // GSW: [SP, mS/cm at 15, 20, 25 °C]
  const inverse: [number, number[]][] = [[35, [42.9175, 47.918, 53.071]], [10, [13.703, 15.3381, 17.0243]]];
  for (const [salinity, row] of inverse) {
    test(`salinity ${salinity} at 15, 20, 25 °C: ${row.join(', ')} mS/cm (GSW)`, () => [15, 20, 25].forEach((temperature, index) => near(conductivityOfSalinity(salinity, temperature), row[index] as number, 6e-4)));
  }

  test('there and back, at every salinity, the joint at 2 included', () => {
    fc.assert(fc.property(fc.double({ min: 0.02, max: 41.9, noNaN: true }), fc.double({ min: 0, max: 35, noNaN: true }), (salinity, temperature) => {
      near(practicalSalinity(valueOf(conductivityOfSalinity(salinity, temperature)), temperature), salinity, 1e-9);
    }));
  });
  test('it rises with conductivity across the joint', () => {
    let last = -1;
    for (let conductivity = 0; conductivity < 49; conductivity += 0.05) {
      const value = valueOf(practicalSalinity(conductivity, 22));
      if (!(value > last || conductivity === 0)) throw new Error(`${conductivity}: ${value} after ${last}`);
      last = value;
    }
    near(practicalSalinity(0, 25), 0, 2e-3);
  });
  test('outside its range', () => {
    refused(practicalSalinity(50, 36), 'outside-range', 'temperature');
    refused(practicalSalinity(70, 20), 'outside-range', 'salinity');
    refused(practicalSalinity(-1, 20), 'outside-range', 'conductivity');
  });
});

suite('specific conductance, Schemel (2001)', () => {
  test('10 000 µS/cm: 5.6245', () => near(salinityOfSpecificConductance(10_000), 5.6245, 5e-5));
  const inverse: [number, number][] = [[5, 8960], [10, 17035.2], [20, 32096.6], [35, 53087]];
  for (const [salinity, expected] of inverse) test(`salinity ${salinity}: ${expected} µS/cm`, () => near(specificConductanceOfSalinity(salinity), expected, 0.05));
  test('differs from PSS-78 by 0.0121 at most over its range', () => {
    for (let conductance = 500; conductance <= 53_087; conductance += 100) {
      near(salinityOfSpecificConductance(conductance), valueOf(practicalSalinity(conductance / 1000, 25)), 0.01215, String(conductance));
    }
  });
  test('outside its range', () => {
    refused(salinityOfSpecificConductance(400), 'outside-range', 'specific conductance');
    refused(specificConductanceOfSalinity(36), 'outside-range', 'salinity');
  });
});

suite('density, EOS-80', () => {
  // Fofonoff and Millard (1983): [S, t68, kg/m³] at 0 bar
  const published: [number, number, number][] = [[0, 5, 999.96675], [35, 5, 1027.67547], [0, 25, 997.04796], [35, 25, 1023.34306]];
  for (const [salinity, t68, expected] of published) test(`S ${salinity}, ${t68} °C: ${expected} (UNESCO 44)`, () => near(densityAtScaleOf1968(salinity, t68), expected, 5e-6));
  // TEOS-10 at 25 °C; another equation of state, within 0.03
  const teos: [number, number][] = [[20, 1012.0498], [30, 1019.5709], [33, 1021.8335], [35, 1023.3436], [40, 1027.1248]];
  for (const [salinity, expected] of teos) test(`S ${salinity} at 25 °C: ${expected} by TEOS-10, within 0.03`, () => near(waterDensity(salinity, 25), expected, 0.03));
  test('outside its range', () => refused(waterDensity(43, 25), 'outside-range', 'salinity'));
});

suite('specific gravity', () => {
  // [reference and water temperature, SG of salinity 35] by TEOS-10
  const same: [number, number][] = [[15, 1.026898], [20, 1.026607], [25, 1.026374]];
  for (const [temperature, expected] of same) test(`35 PSU, ${temperature}/${temperature} °C: ${expected}`, () => near(specificGravityOf(35, temperature, temperature), expected, 1e-5));
  test('35 PSU at 25 °C against water of 15 °C: 1.024263, of 3.98 °C: 1.023369', () => {
    near(specificGravityOf(35, 25, 15), 1.024263, 1e-5);
    near(specificGravityOf(35, 25, 3.98), 1.023369, 1e-5);
  });
  test('turned round it gives the salinity back', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 42, noNaN: true }), fc.double({ min: 5, max: 35, noNaN: true }), fc.constantFrom(3.98, 15, 15.56, 20, 25), (salinity, temperature, reference) => {
      const specificGravity = valueOf(specificGravityOf(salinity, temperature, reference));
      near(salinityOfSpecificGravity({ specificGravity, temperature, reference }), salinity, 1e-6);
    }));
  });
  test('the reference temperature matters: 1.025 is 33.2 at 25/25 and 36.0 at 25/15', () => {
    near(salinityOfSpecificGravity({ specificGravity: 1.025, temperature: 25, reference: 25 }), 33.18, 0.05);
    near(salinityOfSpecificGravity({ specificGravity: 1.025, temperature: 25, reference: 15 }), 35.97, 0.05);
  });
  test('a gravity that no sea water has', () => {
    refused(salinityOfSpecificGravity({ specificGravity: 1.05, temperature: 25, reference: 25 }), 'outside-range', 'specific gravity');
    refused(salinityOfSpecificGravity({ specificGravity: 0.99, temperature: 25, reference: 25 }), 'outside-range', 'specific gravity');
  });
});
