// NIST Statistical Reference Datasets: digits of agreement with the certified values are printed and held.
// Source: NIST/ITL StRD, certified values of Norris, Longley, Misra1a, Michelso, NumAcc3 and NumAcc4.
import assert from 'node:assert/strict';
import { autocorrelation, mean, standardDeviation } from '../../../src/statistics/describe.ts';
import { solveLeastSquares } from '../../../src/statistics/leastSquares.ts';
import { fitLine } from '../../../src/statistics/regression.ts';
import { fitCurve } from '../../../src/statistics/levenbergMarquardt.ts';
import { digits, got } from './near.ts';

const norris: [number, number][] = [
  [0.1, 0.2], [338.8, 337.4], [118.1, 118.2], [888.0, 884.6], [9.2, 10.1], [228.1, 226.5], [668.5, 666.3], [998.5, 996.3], [449.1, 448.6], [778.9, 777.0], [559.2, 558.2],
  [0.3, 0.4], [0.1, 0.6], [778.1, 775.5], [668.8, 666.9], [339.3, 338.0], [448.9, 447.5], [10.8, 11.6], [557.7, 556.0], [228.3, 228.1], [998.0, 995.8], [888.8, 887.6],
  [119.6, 120.2], [0.3, 0.3], [0.6, 0.3], [557.6, 556.8], [339.3, 339.1], [888.0, 887.2], [998.5, 999.0], [778.9, 779.0], [10.2, 11.1], [117.6, 118.3], [228.9, 229.2], [668.4, 669.1], [449.2, 448.9], [0.2, 0.5],
];
/** y, then x1 to x6. */
const longley: readonly (readonly number[])[] = [
  [60323, 83, 234289, 2356, 1590, 107608, 1947], [61122, 88.5, 259426, 2325, 1456, 108632, 1948], [60171, 88.2, 258054, 3682, 1616, 109773, 1949], [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
  [63221, 96.2, 328975, 2099, 3099, 112075, 1951], [63639, 98.1, 346999, 1932, 3594, 113270, 1952], [64989, 99, 365385, 1870, 3547, 115094, 1953], [63761, 100, 363112, 3578, 3350, 116219, 1954],
  [66019, 101.2, 397469, 2904, 3048, 117388, 1955], [67857, 104.6, 419180, 2822, 2857, 118734, 1956], [68169, 108.4, 442769, 2936, 2798, 120445, 1957], [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
  [68655, 112.6, 482704, 3813, 2552, 123366, 1959], [69564, 114.2, 502601, 3931, 2514, 125368, 1960], [69331, 115.7, 518173, 4806, 2572, 127852, 1961], [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
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
  test('Longley, multiple regression with columns that hardly tell themselves apart, 10 digits', () => {
    const found = solveLeastSquares(longley.map(([, ...x]) => [1, ...x]), longley.map(([y]) => y as number));
    assert.ok(found);
    const deviation = Math.sqrt(found.squares / (16 - 7));
    const certified: readonly (readonly [number, number])[] = [
      [-3482258.63459582, 890420.383607373], [15.0618722713733, 84.9149257747669], [-0.0358191792925910, 0.0334910077722432], [-2.02022980381683, 0.488399681651699],
      [-1.03322686717359, 0.214274163161675], [-0.0511041056535807, 0.226073200069370], [1829.15146461355, 455.478499142212],
    ];
    agree('Longley', 10, [...certified.flatMap(([value, error], place): [string, number, number][] => [
      [`b${place}`, found.solution[place] as number, value], [`se b${place}`, deviation * Math.sqrt(found.unscaledCovariance[place]?.[place] as number), error],
    ]), ['residual sd', deviation, 304.854073561965]]);
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
