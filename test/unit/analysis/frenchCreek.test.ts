// Night-time regression against the reference figures for French Creek, Wyoming, night of 2012-08-24 (data of Hotchkiss and Hall,
// shipped with the USGS package streamMetabolizer, inst/extdata/french.csv; reference code run in R). The data stay out of this
// repository: give the 51 rows from 19:50 to 24:00 as `minutes,temp,oxy` in a file named by EVENWATER_FRENCH_CREEK to run it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fitNight } from '../../../src/analysis/nightFit.ts';
import { fitLine, slopeInterval } from '../../../src/statistics/regression.ts';
import { isStatisticsProblem } from '../../../src/statistics/outcome.ts';
import { oxygenSolubility } from '../../../src/water/oxygenSolubility.ts';

suite('French Creek', () => {
  const path = process.env['EVENWATER_FRENCH_CREEK'];

  if (!path) {
    process.stdout.write('      not run: no file in EVENWATER_FRENCH_CREEK (the data are not part of this repository)\n');
    return;
  }

  test('night-time regression gives the reference exchange and respiration', () => {
    const rows = readFileSync(path, 'utf8').trim().split('\n').slice(1).map((line) => line.split(',').map(Number) as [number, number, number]);
    assert.equal(rows.length, 51);
    const pressure = 523 * 1013.25 / 760;
    const full = rows.map(([, temperature]) => {
      const found = oxygenSolubility({ temperature, salinity: 0, pressure });
      assert.ok('value' in found);
      return found.value;
    });
    // The reference procedure: centred mean of three, first difference, deficit of the smoothed row.
    const smooth = rows.map((row, index) => (index === 0 || index === rows.length - 1 ? Number.NaN : (rows[index - 1]![2] + row[2] + rows[index + 1]![2]) / 3));
    const deficits: number[] = [];
    const rates: number[] = [];
    for (let index = 2; index < rows.length - 1; index += 1) {
      deficits.push(full[index]! - smooth[index]!);
      rates.push((smooth[index]! - smooth[index - 1]!) / (5 / 1440));
    }
    const line = fitLine(deficits, rates);
    assert.ok(!isStatisticsProblem(line));
    const interval = slopeInterval(line);
    // Reference: k 23.475243 /d, standard error 1.182399, interval 21.0952 to 25.8553; intercept −21.547384; R² 0.895497.
    // Its solubility is by Garcia and Gordon's equation, ours by Benson and Krause's: within 0.5 %.
    process.stdout.write(`      k ${line.slope.toFixed(4)} /d (${interval.low.toFixed(3)} to ${interval.high.toFixed(3)}), intercept ${line.intercept.toFixed(4)}, R² ${line.rSquared.toFixed(5)}\n`);
    assert.ok(Math.abs(line.slope / 23.475243 - 1) < 0.005, `k ${line.slope}`);
    assert.ok(Math.abs(line.slopeError / 1.182399 - 1) < 0.01);
    assert.ok(Math.abs(line.intercept / -21.547384 - 1) < 0.005);
    assert.ok(Math.abs(line.rSquared - 0.895497) < 0.002);

    const night = fitNight(rows.map(([minutes, , oxygen], index) => ({ hours: minutes / 60, oxygen, solubility: full[index]! })));
    assert.ok(!isStatisticsProblem(night));
    process.stdout.write(`      direct fit: k ${(24 * night.exchange).toFixed(2)} /d (${(24 * night.exchangeInterval.low).toFixed(2)} to ${(24 * night.exchangeInterval.high).toFixed(2)})\n`);
    // The direct fit of the same night: its interval and the regression's overlap.
    assert.ok(night.identified && 24 * night.exchangeInterval.low < interval.high && 24 * night.exchangeInterval.high > interval.low);
  });
});
