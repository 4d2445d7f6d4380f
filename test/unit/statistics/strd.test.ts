// NIST Statistical Reference Datasets: digits of agreement with the certified values are printed and held.
// Source: NIST/ITL StRD, certified values of Norris, Misra1a, Michelso, NumAcc3 and NumAcc4.
import assert from 'node:assert/strict';
import { autocorrelation, mean, standardDeviation } from '../../../src/statistics/describe.ts';
import { fitLine } from '../../../src/statistics/regression.ts';
import { fitCurve } from '../../../src/statistics/levenbergMarquardt.ts';
import { digits, got } from './near.ts';

const norris: [number, number][] = [
  [0.1, 0.2], [338.8, 337.4], [118.1, 118.2], [888.0, 884.6], [9.2, 10.1], [228.1, 226.5], [668.5, 666.3], [998.5, 996.3], [449.1, 448.6], [778.9, 777.0], [559.2, 558.2],
  [0.3, 0.4], [0.1, 0.6], [778.1, 775.5], [668.8, 666.9], [339.3, 338.0], [448.9, 447.5], [10.8, 11.6], [557.7, 556.0], [228.3, 228.1], [998.0, 995.8], [888.8, 887.6],
  [119.6, 120.2], [0.3, 0.3], [0.6, 0.3], [557.6, 556.8], [339.3, 339.1], [888.0, 887.2], [998.5, 999.0], [778.9, 779.0], [10.2, 11.1], [117.6, 118.3], [228.9, 229.2], [668.4, 669.1], [449.2, 448.9], [0.2, 0.5],
];
const misraX = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
const misraY = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];
const michelson = [
  850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960, 960, 940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880, 880, 830, 800, 790, 760, 800,
  880, 880, 880, 860, 720, 720, 620, 860, 970, 950, 880, 910, 850, 870, 840, 840, 850, 840, 840, 840, 890, 810, 810, 820, 800, 770, 760, 740, 750, 760, 910, 920, 890, 860, 880, 720, 840, 850, 850, 780,
  890, 840, 780, 810, 760, 810, 790, 810, 820, 850, 870, 870, 810, 740, 810, 940, 950, 800, 810, 870,
].map((each) => (299_000 + each) / 1000);

/** Prints the digits of agreement and holds them to the least. */
function agree(title: string, least: number, rows: readonly (readonly [string, number, number])[]): void {
  const found = rows.map(([name, actual, certified]) => [name, digits(actual, certified)] as const);
  console.log(`      ${title}: ${found.map(([name, count]) => `${name} ${count.toFixed(1)}`).join(', ')}`);
  for (const [name, count] of found) assert.ok(count >= least, `${title} ${name}: ${count} digits, wants ${least}`);
}

suite('NIST StRD: digits of agreement', () => {
  test('Norris, straight line, 10 digits', () => {
    const line = got(fitLine(norris.map(([, x]) => x), norris.map(([y]) => y)));
    agree('Norris', 10, [
      ['b0', line.intercept, -0.262323073774029], ['b1', line.slope, 1.00211681802045], ['se b0', line.interceptError, 0.232818234301152], ['se b1', line.slopeError, 0.429796848199937e-3],
      ['residual sd', line.residualDeviation, 0.884796396144373], ['R²', line.rSquared, 0.999993745883712], ['F', line.fisher ?? 0, 5436385.54079785],
    ]);
  });
  test('the parameters of the dossier file are in the order y, x', () => assert.equal(norris.length, 36));
  for (const start of [[500, 1e-4], [250, 5e-4]]) {
    test(`Misra1a, exponential, from ${start.join(' and ')}, 8 digits, with given and with numeric derivatives`, () => {
      const curve = ([b1 = 0, b2 = 0]: readonly number[], index: number): number => b1 * (1 - Math.exp(-b2 * (misraX[index] as number)));
      const gradient = ([b1 = 0, b2 = 0]: readonly number[], index: number): number[] => {
        const x = misraX[index] as number;
        return [1 - Math.exp(-b2 * x), b1 * x * Math.exp(-b2 * x)];
      };
      for (const [name, options] of [['given', { gradient }], ['numeric', {}]] as const) {
        const fit = got(fitCurve(curve, misraY, start, options));
        agree(`Misra1a ${name}, ${fit.steps} steps`, 8, [
          ['b1', fit.parameters[0] as number, 238.94212918], ['b2', fit.parameters[1] as number, 5.5015643181e-4],
          ['se b1', fit.standardErrors[0] as number, 2.7070075241], ['se b2', fit.standardErrors[1] as number, 7.2668688436e-6], ['residual sd', fit.residualDeviation, 0.101878763302],
        ]);
      }
    });
  }
  test('Michelso, mean, deviation and lag-1 correlation, 12 digits', () => {
    assert.equal(michelson.length, 100);
    agree('Michelso', 12, [['mean', mean(michelson), 299.8524], ['sd', standardDeviation(michelson) ?? 0, 0.0790105478190518], ['r1', got(autocorrelation(michelson)), 0.535199668621283]]);
  });
  test('NumAcc3 and NumAcc4: values far from 0; the data itself hold 9.4 and 8.2 digits of the deviation', () => {
    for (const [name, base, least] of [['NumAcc3', 1e6, 9.4], ['NumAcc4', 1e7, 8.2]] as const) {
      const values = Array.from({ length: 1001 }, (_, index) => (index === 0 ? base + 0.2 : index % 2 === 1 ? base + 0.1 : base + 0.3));
      agree(name, least, [['mean', mean(values), base + 0.2], ['sd', standardDeviation(values) ?? 0, 0.1]]);
      agree(name, 8, [['r1', got(autocorrelation(values)), -0.999]]);
    }
  });
});
