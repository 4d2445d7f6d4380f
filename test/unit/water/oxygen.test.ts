// Oxygen solubility and its companions against the published tables. Every row names where its figure was printed.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { parseUnit } from '../../../src/quantities/units.ts';
import type { Unit } from '../../../src/quantities/types.ts';
import { roundTo } from '../../../src/quantities/format.ts';
import { oxygenFromSaturation, oxygenSaturation, oxygenSolubility, oxygenTheta } from '../../../src/water/oxygenSolubility.ts';
import { oxygenSolubilityGarciaGordon, oxygenSolubilityGarciaGordonVolume } from '../../../src/water/oxygenGarciaGordon.ts';
import { oxygenSolubilityWeiss } from '../../../src/water/oxygenWeiss.ts';
import { vapourPressureFresh, vapourPressureSaline } from '../../../src/water/vapourPressure.ts';
import { checkStationPressure, isothermalPressure, standardPressure, stationPressure } from '../../../src/water/airPressure.ts';
import { convertOxygen } from '../../../src/water/oxygenUnits.ts';
import { sensitivity } from '../../../src/water/sensitivity.ts';
import { standardAtmosphere } from '../../../src/water/outcome.ts';
import { near, nearPart, refused, valueOf } from './near.ts';

const fresh = (temperature: number, pressure = standardAtmosphere): number => valueOf(oxygenSolubility({ temperature, salinity: 0, pressure }));

suite('oxygen solubility, Benson and Krause (1984)', () => {
  // 101.325 kPa table, 0–13 °C, two decimals (the numbers of the ISO type of table)
  const twoDecimals = [14.62, 14.22, 13.83, 13.46, 13.11, 12.77, 12.45, 12.14, 11.84, 11.56, 11.29, 11.03, 10.78, 10.54];
  twoDecimals.forEach((expected, temperature) => test(`${temperature} °C: ${expected} (101.325 kPa table, two decimals)`, () => assert.equal(roundTo(fresh(temperature), 2), expected)));

  // APHA type of table, three decimals
  const threeDecimals: [number, number][] = [[0, 14.621], [8, 11.843], [16, 9.87], [24, 8.418], [32, 7.305], [40, 6.413]];
  for (const [temperature, expected] of threeDecimals) test(`${temperature} °C: ${expected} (APHA 1992 type of table)`, () => assert.equal(roundTo(fresh(temperature), 3), expected));

  test('5 °C, 101.3 kPa: 12.77 (CCME 1999)', () => assert.equal(roundTo(fresh(5, 1013), 2), 12.77));

  // grid at 101.325 kPa: [t, S0, S10, S35] by this equation; fresh column equals the APHA option of marelac
  const grid: [number, number, number, number][] = [
    [0, 14.6208, 13.633, 11.4457], [5, 12.771, 11.9457, 10.1083], [10, 11.2879, 10.5887, 9.0243], [15, 10.0839, 9.4838, 8.1352],
    [20, 9.0924, 8.5715, 7.3961], [25, 8.2635, 7.8067, 6.7721], [30, 7.5588, 7.1547, 6.2366], [35, 6.9493, 6.5893, 5.7688],
  ];
  for (const [temperature, ...row] of grid) {
    test(`${temperature} °C at salinity 0, 10, 35: ${row.join(', ')}`, () => [0, 10, 35].forEach((salinity, column) =>
      near(oxygenSolubility({ temperature, salinity, pressure: standardAtmosphere }), row[column] as number, 5e-5)));
  }

  // [t, values at 80, 90, 95, 100, 103 kPa]
  const pressures: [number, number[]][] = [
    [10, [8.8847, 10.0118, 10.5752, 11.1386, 11.4767]], [20, [7.1347, 8.0528, 8.5118, 8.9708, 9.2462]],
    [25, [6.4691, 7.3106, 7.7313, 8.152, 8.4044]], [30, [5.8992, 6.6775, 7.0666, 7.4557, 7.6891]],
  ];
  for (const [temperature, row] of pressures) {
    test(`${temperature} °C at 80, 90, 95, 100, 103 kPa`, () => [800, 900, 950, 1000, 1030].forEach((pressure, index) => near(fresh(temperature, pressure), row[index] as number, 5e-5)));
  }

  test('LakeMetabolizer at 21 °C, 1000.1 mbar: 8.795956, another vapour pressure, within 0.0015', () => near(fresh(21, 1000.1), 8.795956, 0.0015));
  test('1500 m at 25 °C: 6.852 by station pressure, 8.263 by one atmosphere (dossier, trap T1)', () => {
    near(fresh(25, valueOf(standardPressure(1500))), 6.852, 5e-4);
    near(fresh(25), 8.2635, 5e-5);
  });
  test('sensitivities at 25 °C: −0.1523 mg/L/K, +0.00841 mg/L/hPa, −0.57 % a salinity unit, −18.0 % at 35', () => {
    const at = { temperature: 25, salinity: 0, pressure: standardAtmosphere };
    near(sensitivity(oxygenSolubility, at, 'temperature') ?? 0, -0.1523, 5e-5);
    near(sensitivity(oxygenSolubility, at, 'pressure') ?? 0, 0.00841, 5e-6);
    near(100 * (sensitivity(oxygenSolubility, at, 'salinity') ?? 0) / fresh(25), -0.57, 5e-3);
    near(100 * (valueOf(oxygenSolubility({ ...at, salinity: 35 })) / fresh(25) - 1), -18, 0.06);
  });
  test('vapour pressure: printed values of both forms', () => {
    const rows: [number, number][] = [[0, 0.00602661], [10, 0.01211613], [20, 0.02307425], [25, 0.03126182], [30, 0.04187587], [40, 0.07279583]];
    for (const [temperature, expected] of rows) near(vapourPressureFresh(temperature), expected, 5e-9);
    near(vapourPressureSaline(25, 0), 0.031238, 5e-7);
    near(vapourPressureSaline(25, 35), 0.030651, 5e-7);
  });
  test('theta: printed values', () => {
    const rows: [number, number][] = [[0, 0.000975], [10, 0.00083884], [20, 0.00071554], [25, 0.00065872], [30, 0.00060512], [40, 0.00050758]];
    for (const [temperature, expected] of rows) near(oxygenTheta(temperature), expected, 5e-9);
  });
  test('the two vapour pressures differ by less than 0.0003 mg/L at 0.8 to 1.05 atm', () => {
    for (let temperature = 0; temperature <= 40; temperature += 5) for (const atmospheres of [0.8, 0.9, 1.05]) {
      const value = fresh(temperature, atmospheres * standardAtmosphere);
      const u = valueOf(vapourPressureFresh(temperature));
      const other = valueOf(vapourPressureSaline(temperature, 0));
      near(value * (((1 - other / atmospheres) / (1 - other)) / ((1 - u / atmospheres) / (1 - u))), value, 3e-4);
    }
  });
  test('outside its range there is a problem that names the input, never a value', () => {
    const inside = { temperature: 25, salinity: 0, pressure: 1000 };
    refused(oxygenSolubility({ ...inside, temperature: -0.1 }), 'outside-range', 'temperature');
    refused(oxygenSolubility({ ...inside, temperature: 40.1 }), 'outside-range', 'temperature');
    refused(oxygenSolubility({ ...inside, salinity: 40.1 }), 'outside-range', 'salinity');
    refused(oxygenSolubility({ ...inside, pressure: 500 }), 'outside-range', 'pressure');
    refused(oxygenSolubility({ ...inside, pressure: 1120 }), 'outside-range', 'pressure');
    refused(oxygenSolubility({ ...inside, temperature: Number.NaN }), 'outside-range', 'temperature');
    refused(oxygenSaturation(-1, inside), 'outside-range', 'concentration');
  });
  test('within its range it is finite, falls with temperature and salt, rises with pressure', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 39, noNaN: true }), fc.double({ min: 0, max: 39, noNaN: true }), fc.double({ min: 510, max: 1100, noNaN: true }), (temperature, salinity, pressure) => {
      const at = valueOf(oxygenSolubility({ temperature, salinity, pressure }));
      assert.ok(at > 0 && Number.isFinite(at));
      assert.ok(valueOf(oxygenSolubility({ temperature: temperature + 1, salinity, pressure })) < at);
      assert.ok(valueOf(oxygenSolubility({ temperature, salinity: salinity + 1, pressure })) < at);
      assert.ok(valueOf(oxygenSolubility({ temperature, salinity, pressure: pressure + 10 })) > at);
      const percent = valueOf(oxygenSaturation(5, { temperature, salinity, pressure }));
      near(oxygenFromSaturation(percent, { temperature, salinity, pressure }), 5, 1e-12);
    }));
  });
});

suite('oxygen saturation', () => {
  test('worked check of the dossier, section 6.5: 6.20 mg/L at 25 °C, 1000 hPa is 76.055 %', () => {
    near(oxygenSolubility({ temperature: 25, salinity: 0, pressure: 1000 }), 8.152, 5e-5);
    near(oxygenSaturation(6.2, { temperature: 25, salinity: 0, pressure: 1000 }), 76.055, 5e-4);
    const at = { temperature: 25, salinity: 0, pressure: 1000 };
    near(sensitivity(oxygenSolubility, at, 'temperature') ?? 0, -0.15042, 5e-6);
    near(sensitivity(oxygenSolubility, at, 'pressure') ?? 0, 0.0084133, 5e-8);
  });
  test('the two conventions differ where the barometer is low', () => {
    const at = { temperature: 25, salinity: 0, pressure: 845.56 };
    near(oxygenSaturation(6.852, at), 100, 0.01);
    near(oxygenSaturation(6.852, at, 'one-atmosphere'), 82.92, 0.01);
  });
});

suite('oxygen solubility, second opinions', () => {
  test('Garcia and Gordon at 10 °C, salinity 35: 274.610 µmol/kg (quoted in public code)', () => near(oxygenSolubilityGarciaGordon(10, 35), 274.61, 5e-4));

  // TEOS-10 manual page of O2sol_SP_pt: [SP, pt, value]; that code works on t68, which moves it by up to 0.013 %
  const manual: [number, number, number][] = [
    [34.7118, 28.8099, 194.682543169294], [34.8915, 28.4392, 195.6135062814438], [35.0256, 22.7862, 214.6559360234014],
    [34.8472, 10.2262, 273.5652832698713], [34.7366, 6.8272, 295.1580761415903], [34.7324, 4.3236, 312.9598716631408],
  ];
  for (const [salinity, temperature, expected] of manual) {
    test(`salinity ${salinity}, ${temperature} °C: ${expected} (TEOS-10 manual)`, () => {
      nearPart(oxygenSolubilityGarciaGordon(temperature, salinity), expected, 1.3e-4);
      nearPart(oxygenSolubilityGarciaGordon(temperature * 1.00024, salinity), expected, 1e-12);
    });
  }

  // [t, GG S0, S10, S35 in mg/L]: mL/L form times 1.42905, equal to LakeMetabolizer "garcia-benson"
  const grid: [number, number, number, number][] = [
    [0, 14.6212, 13.6353, 11.4469], [5, 12.7701, 11.9464, 10.1079], [10, 11.2877, 10.5898, 9.0241], [15, 10.0838, 9.4848, 8.1348],
    [20, 9.092, 8.572, 7.3951], [25, 8.2629, 7.8068, 6.7708], [30, 7.5586, 7.1551, 6.2355], [35, 6.9496, 6.5901, 5.7682],
  ];
  for (const [temperature, ...row] of grid) {
    test(`${temperature} °C: ${row.join(', ')}, and the primary equation within 0.003`, () => [0, 10, 35].forEach((salinity, column) => {
      const value = valueOf(oxygenSolubilityGarciaGordonVolume(temperature, salinity)) * 1.42905;
      near(value, row[column] as number, 5e-5);
      near(oxygenSolubility({ temperature, salinity, pressure: standardAtmosphere }), value, 0.003);
    }));
  }

  // [t, Weiss S0, S35 in mg/L]
  const weiss: [number, number, number][] = [
    [0, 14.6021, 11.4968], [5, 12.7576, 10.1308], [10, 11.2772, 9.0295], [15, 10.0718, 8.1287], [20, 9.0767, 7.3819], [25, 8.2443, 6.7545], [30, 7.5393, 6.2207], [35, 6.9348, 5.7608],
  ];
  for (const [temperature, ...row] of weiss) {
    test(`Weiss (1970) at ${temperature} °C: ${row.join(', ')}, and the primary equation within 0.06`, () => [0, 35].forEach((salinity, column) => {
      const value = valueOf(oxygenSolubilityWeiss(temperature, salinity)) * 1.42905;
      near(value, row[column] as number, 5e-5);
      near(oxygenSolubility({ temperature, salinity, pressure: standardAtmosphere }), value, 0.06);
    }));
  }
  test('outside their range', () => {
    refused(oxygenSolubilityGarciaGordon(41, 0), 'outside-range', 'temperature');
    refused(oxygenSolubilityWeiss(20, 41), 'outside-range', 'salinity');
  });
});

suite('oxygen units', () => {
  const unit = (text: string): Unit => parseUnit(text) as Unit;
  // dossier, section 1.5
  test('8.2635 mg/L is 258.244 µmol/L', () => near(convertOxygen(8.2635, unit('mg/L'), unit('umol/L')), 258.244, 5e-4));
  test('1 mL(STP)/L is 1.42905 mg/L and 44.6595 µmol/L', () => {
    near(convertOxygen(1, unit('mL(STP)/L'), unit('mg/L')), 1.42905, 1e-12);
    near(convertOxygen(1, unit('mL(STP)/L'), unit('umol/L')), 44.6595, 5e-5);
  });
  test('µmol/kg wants the density', () => {
    refused(convertOxygen(258.9676, unit('umol/kg'), unit('mg/L')), 'needs-density');
    near(convertOxygen(258.9676, unit('umol/kg'), unit('mg/L'), 997.047), 8.2622, 1e-4);
    near(convertOxygen(8.2622, unit('mg/L'), unit('ppm'), 997.047), 8.2867, 1e-4);
  });
  for (const other of ['mg/L-N', '%', 'mg', 'degC', 'mg/L/h', '1']) test(`${other} is no oxygen concentration`, () => refused(convertOxygen(1, unit('mg/L'), unit(other)), 'no-such-conversion'));
});

suite('air pressure', () => {
  // [m, hPa] by the standard atmosphere
  const rows: [number, number][] = [[0, 1013.25], [100, 1001.29], [250, 983.58], [500, 954.61], [1000, 898.75], [1500, 845.56], [2000, 794.95], [2500, 746.83], [3000, 701.09]];
  for (const [elevation, expected] of rows) test(`${elevation} m: ${expected} hPa (US Standard Atmosphere 1976)`, () => {
    near(standardPressure(elevation), expected, 5e-3);
    near(standardPressure(elevation), 1013.25 * (1 - 2.25577e-5 * elevation) ** 5.25588, 5e-3);
  });
  test('a sea-level pressure becomes a station pressure by the ratio', () => {
    near(stationPressure(1013.25, 1500), 845.56, 5e-3);
    near(stationPressure(1020, 0), 1020, 1e-12);
    refused(stationPressure(700, 0), 'outside-range', 'pressure');
    refused(stationPressure(1013, 12_000), 'outside-range', 'elevation');
  });
  test('a field rule of thumb gives 849 hPa at 1500 m, near the standard atmosphere', () => near(stationPressure(1013.25, 1500), 849, 4));
  // LakeMetabolizer by the isothermal form at 20 °C; its sea level is 1013.13 hPa
  const isothermal: [number, number][] = [[0, 9.091], [500, 8.5554], [1000, 8.0506], [1500, 7.5749], [2000, 7.1265]];
  for (const [elevation, expected] of isothermal) test(`isothermal ${elevation} m, 20 °C: ${expected} mg/L (LakeMetabolizer)`, () =>
    near(oxygenSolubility({ temperature: 20, salinity: 0, pressure: valueOf(isothermalPressure(elevation)) }), expected, 0.0025));
  test('pressures that cannot be station pressures', () => {
    const verdict = (pressure: number, elevation: number): string => {
      const check = checkStationPressure(pressure, elevation);
      return 'problem' in check ? check.problem : `${check.verdict}${check.looksReduced ? ', reduced' : ''}`;
    };
    assert.equal(verdict(1009.4, 4), 'possible');
    assert.equal(verdict(1013, 1500), 'impossible, reduced');
    assert.equal(verdict(1013, 500), 'unlikely, reduced');
    assert.equal(verdict(845, 1500), 'possible');
    assert.equal(verdict(760, 4), 'impossible');
  });
});
