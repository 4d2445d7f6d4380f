import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { showValue } from '../../../src/formula/show.ts';
import { answer, ask, contextFrom } from '../formula/support.ts';
import { workedIntervals } from './workedIntervals.ts';
import { workedNight } from './workedNight.ts';

const page = readFileSync(new URL('../../../docs/worked-night.md', import.meta.url), 'utf8');
const bold = [...page.matchAll(/\*\*(.+?)\*\*/g)].map((found) => found[1]!);
const context = contextFrom(exampleNote);

suite('docs: the worked night', () => {
  const { steps, table } = workedNight();
  const by = workedIntervals();
  const k = Number(steps.find((step) => step.name === 'k')!.shown.split(' ')[0]);
  const minutes = Math.round(60 * by.halfOfTime);
  const intervals = {
    correlation: by.correlation.toFixed(2), errorOfK: by.plainError.k.toFixed(3), errorOfR: by.plainError.R.toFixed(3), t: by.t.toFixed(3), serial: by.serial.toFixed(2),
    halfOfK: by.half.k.toFixed(3), ends: `${(k - by.half.k).toFixed(3)} to ${(k + by.half.k).toFixed(3)}`, halfOfR: by.half.R.toFixed(3), respiration: `0.55 ± ${by.halfOfR.toFixed(2)} mg/L/h`,
    net: `${by.net.value.toFixed(3)} ± ${by.net.half.toFixed(3)}`, time: `± ${Math.floor(minutes / 60)} h ${minutes % 60} min`,
  };
  const shown = (name: string): string => steps.find((step) => step.name === name)!.shown;

  test('every figure that arithmetic gives stands on the page, and its table is the rows', () => {
    for (const step of steps) assert.ok(bold.includes(step.shown), `${step.name}: ${step.shown} is not on the page`);
    assert.ok(page.includes(table.join('\n')));
  });

  test('every figure of the page is accounted for', () => {
    const known = new Set([...steps.map((step) => step.shown), ...Object.values(intervals)]);
    assert.deepEqual(bold.filter((each) => !known.has(each)), []);
    for (const each of Object.values(intervals)) assert.ok(bold.includes(each), `${each} is not on the page`);
  });

  test('the formulas answer what the arithmetic gives', () => {
    assert.equal(answer('at(saturation(mat.DO), 22:00)', context), shown('saturation at 22:00'));
    assert.equal(answer('time-to(mat.DO, 5.5 mg/L)', context), shown('time to 5.5 mg/L'));
    assert.equal(answer('predicted-min(mat.DO, dark 12 h)', context), shown('lowest after 12 h'));
    assert.equal(answer('predicted-min(mat.DO, exchange 2)', context), shown('lowest with twice the exchange'));
    assert.equal(answer('predicted-min(mat.DO)', context), shown('fitted at 06:00'));
    assert.equal(answer('balance-point(mat.DO)', context), shown('balance point'));
    const remarks = (formula: string): ReadonlyMap<string, Readonly<Record<string, string | number>>> => new Map(ask(formula, context).working.flatMap((step) => step.remarks).map((each) => [each.code, each.args]));
    const fit = remarks('respiration(mat.DO)').get('night-fit')!;
    assert.equal(`${fit['exchange']} /h`, shown('k'));
    assert.equal(`${fit['respiration']} mg/L/h`, shown('R'));
    assert.equal(`${fit['scatter']} mg/L`, shown('scatter'));
    assert.equal(`${fit['low']} to ${fit['high']}`, intervals.ends);
    assert.equal(fit['correlation'], intervals.correlation);
    const joint = remarks('respiration(mat.DO)').get('night-joint')!;
    assert.equal(`${joint['net']} ± ${joint['half']}`, intervals.net);
    const { value } = ask('respiration(mat.DO)', context);
    assert.ok(value?.type === 'number');
    const half = 2 * Math.sqrt([...value.contributions!.values()].reduce((sum, each) => sum + each ** 2, 0));
    assert.equal(`${value.value.toFixed(2)} ± ${half.toFixed(2)} mg/L/h`, intervals.respiration);
    assert.equal(remarks('respiration(mat.DO)').get('scatter-follows')!['correlation'], intervals.serial);
    const time = ask('time-to(mat.DO, 5.5 mg/L)', context).value;
    assert.ok(time);
    assert.equal(showValue(time, context, { withUncertainty: true }), `${shown('time to 5.5 mg/L')} ${intervals.time}`);
  });
});
