import assert from 'node:assert/strict';
import { mappedText } from '../../../src/note/mappedText.ts';
import { evaluateAtEachReading, evaluateResult } from '../../../src/formula/evaluate.ts';
import { jsonValue, machineValue } from '../../../src/formula/show.ts';
import { expandedUncertainty } from '../../../src/quantities/value.ts';
import { answer, ask, codes, contextFrom, number } from './support.ts';
import { night, nights } from './notes.ts';

const c = contextFrom(night);
const several = contextFrom(nights);

function near(actual: number, expected: number, tolerance = 1e-9): void {
  assert.ok(Math.abs(actual - expected) <= tolerance * Math.max(1, Math.abs(expected)), `${actual} is not ${expected}`);
}

function failed(formula: string, context = c): { code: string; text: string; args: Record<string, unknown>; fixes: string[] } {
  const { value, problems } = ask(formula, context);
  assert.equal(value, null, formula);
  const first = problems.find((each) => each.severity === 'error')!;
  assert.ok(first, formula);
  return { code: first.code, text: formula.slice(first.range.start, first.range.end), args: first.args, fixes: first.fixes.map((each) => each.edits[0]!.newText) };
}

function halfWidth(formula: string, context = c): number | null {
  const { value } = ask(formula, context);
  assert.ok(value?.type === 'number', formula);
  return expandedUncertainty(value);
}

suite('formulas: names', () => {
  test('tanks, quantities, facts, events, phases, times', () => {
    near(number('mat.plant-mass', c), 120);
    assert.equal(answer('fed', c), '21:10');
    assert.equal(answer('light-off', c), '22:00');
    assert.equal(answer('start', c), '20:00');
    assert.equal(answer('end', c), '06:00');
    assert.equal(answer('dark', c), '22:00 to 05:00');
    assert.equal(answer('standard-pressure', c), '1013.25 hPa');
    assert.equal(failed('mat').code, 'formula-not-a-value');
  });

  test('an unknown name has the nearest one as its fix, at its place', () => {
    assert.deepEqual([failed('min(mta.DO)').text, failed('min(mta.DO)').fixes], ['mta', ['mat']]);
    assert.deepEqual([failed('min(mat.D0)').text, failed('min(mat.D0)').fixes], ['D0', ['DO']]);
    assert.deepEqual([failed('duration(drak)').code, failed('duration(drak)').fixes], ['unknown-name', ['dark']]);
    assert.deepEqual(failed('avg(mat.DO)').fixes, ['mean']);
    assert.deepEqual(failed('meann(mat.DO)').fixes, ['mean']);
    assert.equal(failed('mean').code, 'function-without-operands');
  });

  test('a result named as a tank is an error at every use', () => {
    const twice = contextFrom(night, { mat: '1', fine: '2' });
    assert.equal(failed('mat * 2', twice).code, 'name-used-twice');
    near(number('fine * 2', twice), 4);
    assert.equal(evaluateResult('mat', twice)?.problems[0]?.code, 'name-used-twice', 'at its own line too');
  });

  test('results refer to one another; a circle is found at both', () => {
    const results = contextFrom(night, { loss: 'fall(mat.DO, 22:00..22:30)', double: 'loss * 2', p: 'q + 1', q: 'p + 1', self: 'self', broken: 'min(mta.DO)' });
    near(number('double', results), 0.48);
    assert.equal(evaluateResult('p', results)?.problems[0]?.code, 'result-circle');
    assert.equal(evaluateResult('q', results)?.problems[0]?.code, 'result-circle');
    assert.equal(failed('self', results).code, 'result-circle');
    assert.equal(failed('broken + 1', results).code, 'result-failed');
    assert.equal(evaluateResult('nothing', results), null);
    assert.equal(evaluateResult('double', results), evaluateResult('double', results), 'computed once');
  });

  test('groups are means over tanks, only where all have a value', () => {
    near(number('first(treatment.DO)', several), 8.3);
    near(number('first(planted.DO)', several), 8.3);
    near(number('count(treatment.DO)', several), 3);
    near(number('count(control.DO)', several), 4);
    assert.equal(failed('mean(treatment)', several).code, 'quantity-after-group');
    assert.equal(answer('first(control.DO)', c), '8.31 mg/L', 'a group of one');
  });

  test('one of several instruments', () => {
    near(number('first(mat.DO@titration)', c), 8.1);
    near(number('count(mat.DO@titration)', c), 3);
    assert.equal(failed('mean(mat.DO@meter)').code, 'no-column');
    const both = contextFrom(night.replace('mat.DO       mat.T', 'mat.DO@probe mat.T').replace('DO: {what: dissolved oxygen, unit: mg/L, with: optical probe', 'DO: {what: dissolved oxygen, unit: mg/L, with: optical probe'));
    assert.deepEqual(failed('mean(mat.DO)', both).fixes, ['mat.DO@probe', 'mat.DO@titration']);
  });
});

suite('formulas: times', () => {
  test('a clock time is the one within the run, past midnight too', () => {
    assert.equal(answer('at(mat.DO, 00:00)', c), '7.47 mg/L');
    assert.equal(answer('at(mat.DO, 2026-03-15 00:00)', c), '7.47 mg/L');
    assert.equal(answer('at(mat.DO, 2026-03-14T23:00Z)', c), '7.47 mg/L');
    assert.equal(answer('at(mat.DO, +2h30)', c), '8.02 mg/L');
    assert.equal(answer('at(mat.DO, +90)', c), '8.25 mg/L');
    assert.equal(failed('at(mat.DO, 15:00)').code, 'time-outside-run');
    assert.equal(failed('at(mat.DO, 2026-02-30 12:00)').code, 'instant-unreadable');
  });

  test('several days fit: a problem that lists them', () => {
    const found = failed('at(a1.DO, 02:00)', several);
    assert.deepEqual([found.code, found.text, found.fixes], ['ambiguous-time', '02:00', ['2026-03-15 02:00', '2026-03-16 02:00', '2026-03-17 02:00']]);
    near(number('at(a1.DO, 2026-03-16 02:00)', several), 7.1);
    assert.equal(failed('light-off', several).code, 'ambiguous-time');
    const phases = failed('mean(a1.DO, dark)', several);
    assert.deepEqual([phases.code, phases.fixes], ['ambiguous-phase', ['dark-1', 'dark-2', 'dark-3']]);
    near(number('mean(a1.DO, dark-1)', several), 7.2);
  });

  test('the skipped and the repeated hour of a clock change', () => {
    const plan = (start: string, end: string): string => `\`\`\`protocol
place: {name: Zwolle, time zone: Europe/Amsterdam}
tanks: {a: {role: treatment}, b: {role: control}}
differs: []
schedule: {start: ${start}, end: ${end}, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
\`\`\`

\`\`\`readings
time a.DO
01:30 8.1
`;
    const spring = contextFrom(`${plan('2026-03-28 20:00', '2026-03-29 08:00').replace('01:30 8.1', '2026-03-29T01:30 8.1\n2026-03-29T03:30 8.0')}\`\`\`\n`);
    assert.equal(failed('at(a.DO, 02:30)', spring).code, 'time-skipped');
    assert.equal(answer('at(a.DO, 01:30) - at(a.DO, 03:30)', spring), '0.1 mg/L');
    assert.equal(answer('rate(a.DO, 01:30..03:30)', spring), '-0.1 mg/L/h', 'one hour lies between them');
    const autumn = contextFrom(`${plan('2026-10-24 20:00', '2026-10-25 08:00').replace('01:30 8.1', '2026-10-25T02:30+02:00 8.1\n2026-10-25T02:30+01:00 8.0')}\`\`\`\n`);
    assert.deepEqual(failed('at(a.DO, 02:30)', autumn).fixes, ['2026-10-25 02:30+02:00', '2026-10-25 02:30+01:00']);
    assert.equal(answer('at(a.DO, 2026-10-25 02:30+01:00)', autumn), '8.0 mg/L');
    assert.equal(answer('at(a.DO, 02:30+01:00)', autumn), '8.0 mg/L');
  });

  test('instants and durations add up', () => {
    assert.equal(answer('light-off + 1 h', c), '23:00');
    assert.equal(answer('fed - 10 min', c), '21:00');
    assert.equal(answer('time-of-max(mat.DO) - start', c), '2 h');
    assert.equal(answer('duration(dark) / 2', c), '3 h 30 min');
    near(number('duration(dark) / 1 h', c), 7);
    near(number('duration(dark) in min', c), 420);
    assert.equal(answer('light-off > start and fed < light-off', c), 'true');
    assert.equal(failed('light-off + start').code, 'operands-do-not-fit');
    const backwards = failed('mean(mat.DO, 23:00..22:00)');
    assert.deepEqual([backwards.code, backwards.text], ['window-backwards', '23:00..22:00']);
  });
});

suite('formulas: windows', () => {
  test('both ends are included', () => {
    near(number('count(mat.DO, 20:00..21:00)', c), 3);
    near(number('max(mat.DO, 21:30..22:00)', c), 8.26);
  });

  test('the reading at lights-off serves both phases for changes, and counts to the baseline', () => {
    near(number('count(mat.DO, baseline)', c), 5);
    near(number('count(mat.DO, dark)', c), 5);
    near(number('mean(mat.DO, dark)', c), (8.02 + 7.83 + 7.47 + 7.16 + 7.03) / 5);
    near(number('fall(mat.DO, dark)', c), 8.26 - 7.03);
    near(number('max(mat.DO, dark)', c), 8.26);
    near(number('count(mat.DO, light-off..light-on)', c), 6);
  });

  test('left-out readings take no part, corrected ones count with their last value, repeats with their mean', () => {
    near(number('max(mat.DO, 23:30..01:30)', c), 7.47);
    near(number('at(open.DO, 22:30)', c), 8.26);
    near(number('last(mat.DO)', c), 7.03);
    near(number('missing(mat.DO)', c), 1, 0);
    near(number('missing(open.DO)', c), 1, 0);
    assert.equal(failed('at(mat.DO, 00:30)').args['dropped'], 'yes');
  });

  test('a written end needs a reading at that time for changes and rates; the neighbours are named', () => {
    const found = failed('fall(mat.DO, 22:00..22:45)');
    assert.deepEqual([found.code, found.text, found.args['neighbours'], found.fixes], ['no-reading-at-time', '22:45', ['22:30', '23:00'], ['22:30', '23:00']]);
    assert.equal(failed('rate(mat.DO, 22:15..23:00)').text, '22:15');
    near(number('mean(mat.DO, 21:50..22:45)', c), (8.26 + 8.02) / 2);
    assert.equal(failed('fall(mat.DO, 23:30..01:00)').code, 'no-reading-at-time');
  });

  test('named ends and sums use the nearest reading inside, shown in the working', () => {
    const found = ask('fall(mat.DO, fed..light-off + 15 min)', c);
    assert.equal(found.problems.length, 0);
    near(found.value?.type === 'number' ? found.value.value : NaN, 8.25 - 8.26);
    assert.deepEqual(found.working[0]?.remarks.map((each) => each.code), ['nearest-reading', 'nearest-reading']);
  });

  test('more than one interval away is a warning', () => {
    assert.deepEqual(codes('fall(mat.DO, light-off..end)', c), ['reading-far-from-end']);
    assert.equal(answer('fall(mat.DO, light-off..end)', c), '1.23 mg/L');
  });

  test('an empty window, and one with too few readings', () => {
    assert.deepEqual([failed('mean(mat.DO, 03:00..04:00)').code, failed('mean(mat.DO, 03:00..04:00)').text], ['empty-window', '03:00..04:00']);
    assert.equal(failed('change(mat.DO, 22:00..22:00)').code, 'too-few-readings');
  });
});

suite('formulas: functions', () => {
  test('picking', () => {
    assert.equal(answer('first(mat.behaviour)', c), 'calm');
    assert.equal(answer('at(mat.behaviour, 01:00)', c), 'gasping');
    near(number('interpolate(mat.DO, 22:15)', c), 8.14);
    assert.equal(failed('interpolate(mat.DO, 05:00)').code, 'outside-readings');
    assert.deepEqual(failed('at(mat.DO, 22:15)').fixes, ['22:00', '22:30', 'interpolate']);
    near(number('count(mat.DO < 8 mg/L)', c), 4);
  });

  test('summary', () => {
    const dark = [8.02, 7.83, 7.47, 7.16, 7.03];
    near(number('median(mat.DO, dark)', c), 7.47);
    near(number('median(mat.DO, 20:00..21:30)', c), 8.245);
    const mean = dark.reduce((a, b) => a + b) / 5;
    near(number('sd(mat.DO, dark)', c), Math.sqrt(dark.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 4));
    near(number('range(mat.DO)', c), 8.26 - 7.03);
    assert.equal(answer('time-of-max(mat.T)', c), '20:00');
    assert.ok(ask('time-of-max(mat.T)', c).working[0]?.remarks.some((each) => each.code === 'tie'));
  });

  test('mean, deviation and lag against the certified values of NIST StRD Michelso', () => {
    // Means of large numbers must not lose digits: 20 of the 100 Michelson values, shifted; mean and deviation computed by hand in integers.
    const rows = [850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960];
    const text = rows.map((x, index) => `2026-03-14T${String(Math.floor(index / 4)).padStart(2, '0')}:${String((index % 4) * 15).padStart(2, '0')} ${299_000_000 + x}`).join('\n');
    const big = contextFrom(`\`\`\`protocol\nplace: {time zone: UTC}\ntanks: {a: {role: control}}\nmeasure:\n  x: {what: light, unit: umol/m2/s}\n\`\`\`\n\n\`\`\`readings\ntime a.x\n${text}\n\`\`\`\n`);
    const mean = rows.reduce((a, b) => a + b) / rows.length;
    near(number('mean(a.x)', big), 299_000_000 + mean, 1e-15);
    near(number('sd(a.x)', big), Math.sqrt(rows.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (rows.length - 1)), 1e-12);
  });

  test('all and any, over a window', () => {
    assert.equal(answer('all(mat.T >= open.T)', c), 'true');
    assert.equal(answer('all(mat.DO > 7.5 mg/L, 20:00..23:00)', c), 'true');
    assert.equal(answer('any(mat.DO < 7.1 mg/L)', c), 'true');
    assert.equal(answer('all(abs(mat.T - open.T) <= 0.5 degC)', c), 'true');
    assert.equal(answer('any(mat.behaviour == gasping)', c), 'true');
    assert.equal(answer('all(mat.behaviour == calm, baseline)', c), 'true');
    assert.deepEqual(failed('any(mat.behaviour == gaspin)').fixes, ['gasping']);
    assert.equal(failed('mat.DO > 3 mg/L').code, 'all-or-any');
    assert.equal(failed('all(mat.DO)').code, 'wrong-argument');
    assert.equal(answer('not any(mat.DO < 7 mg/L) and all(mat.DO < 9 mg/L)', c), 'true');
  });

  test('change', () => {
    near(number('change(mat.DO, 22:00..22:30)', c), -0.24);
    near(number('fall(mat.DO, 22:00..22:30)', c), 0.24);
    near(number('rise(mat.DO, 22:00..22:30)', c), -0.24);
    near(number('percent-fall(mat.DO, 22:00..22:30)', c), 100 * 0.24 / 8.26);
    near(number('rate(mat.DO, 22:00..22:30)', c), -0.48);
    assert.equal(answer('percent-fall(mat.DO, light-off..22:30)', c), '2.9 %');
    assert.equal(failed('percent-change(mat.T)').code, 'no-true-zero');
    assert.equal(answer('change(mat.T)', c), '-0.4 °C');
    near(number('slope(mat.DO, 22:00..23:00)', c), -0.43);
  });

  test('the steepest fall lies between neighbouring slots and never crosses a missing or left-out reading', () => {
    near(number('steepest-fall(mat.DO)', c), 0.48);
    assert.equal(answer('time-of-steepest-fall(mat.DO)', c), '22:00 to 22:30');
    near(number('steepest-fall(mat.DO, 22:30..01:30)', c), 0.38);
    near(number('steepest-fall(mat.DO, over 1 h)', c), 0.43);
    assert.equal(failed('steepest-fall(mat.DO, 23:00..01:00)').code, 'no-neighbours');
    assert.equal(failed('steepest-fall(mat.DO, over 5 h)').code, 'no-stretch');
  });

  test('steps', () => {
    const steps = ask('steps(mat.DO, every 1 h)', c).value;
    assert.ok(steps?.type === 'series');
    assert.deepEqual(steps.points.map((point) => Number(point.value.toFixed(2))), [0.04, 0.01, -0.43, -0.36, -0.31]);
    const percent = ask('percent-steps(mat.DO, every 1 h)', c).value;
    assert.ok(percent?.type === 'series');
    near(percent.points[2]!.value, -100 * 0.43 / 8.26);
    near(percent.points[3]!.value, -100 * 0.36 / 7.83);
  });

  test('levels', () => {
    assert.equal(answer('first-below(mat.DO, 7.5 mg/L)', c), '00:00');
    assert.equal(answer('first-above(mat.DO, 8.24 mg/L)', c), '21:00');
    assert.equal(failed('first-below(mat.DO, 3 mg/L)').code, 'level-not-reached');
    near(number('hours-above(mat.DO, 8 mg/L, 22:00..23:00)', c), 0.5 + 0.5 * (0.02 / 0.19));
    near(number('hours-below(mat.DO, 8 mg/L, 22:00..23:00)', c), 0.5 * (0.17 / 0.19));
    near(number('hours-below(mat.DO, 9 mg/L)', c), 5.5);
    assert.deepEqual(codes('hours-below(mat.DO, 8 mg/L)', c), [], 'gaps of two intervals are bridged without a word');
    near(number('hours-below(mat.T, 24.85 degC, 20:00..22:00)', c), 0.75);
    assert.equal(answer('settled(mat.T, within 0.1 degC, for 1 h)', c), '20:00');
    assert.equal(failed('settled(mat.T, within 0.1 degC)').code, 'missing-argument');
    assert.equal(failed('turning-point(mat.DO)').code, 'never-turns');
  });

  test('gaps over two intervals are a warning', () => {
    const gap = contextFrom(night.replace(/^2[23]:[03]0 .*\n/gmu, ''));
    assert.deepEqual(codes('hours-below(mat.DO, 8 mg/L)', gap), ['gap-bridged']);
  });

  test('comparison and arithmetic, pointwise by time', () => {
    const gap = ask('mat.DO - open.DO', c).value;
    assert.ok(gap?.type === 'series');
    assert.equal(gap.points.length, 10, 'only where both have a value');
    near(number('max(open.DO - mat.DO)', c), 8.20 - 7.03);
    near(number('max(difference(open.DO, mat.DO))', c), 8.20 - 7.03);
    near(number('percent-difference(at(mat.DO, 23:00), at(open.DO, 23:00))', c), 100 * (7.83 - 8.25) / 8.25);
    near(number('mean(mat.DO * 2, baseline) / mean(mat.DO, baseline)', c), 2);
    near(number('abs(at(mat.T, 22:00) - at(open.T, 22:00))', c), 0.2);
    near(number('round(2.345, 2)', c), 2.35);
    near(number('sqrt(2) * sqrt(2)', c), 2);
    near(number('ln(at(mat.DO, 22:00) / at(mat.DO, 22:30))', c), Math.log(8.26 / 8.02));
    near(number('volume(mat)', c), 42);
    near(number('volume(mat) in mL', c), 42_000);
    near(number('mat.plant-mass / volume(mat)', c), 120 / 42);
  });

  test('conversion', () => {
    near(number('at(mat.T, 22:00) in degF', c), 24.8 * 1.8 + 32);
    near(number('fall(mat.T, 20:00..22:00) in degF', c), 0.18, 1e-6);
    near(number('at(mat.DO, 22:00) in ug/L', c), 8260);
    assert.deepEqual([failed('at(mat.DO, 22:00) in degC').code, failed('at(mat.DO, 22:00) in degC').text], ['unit-mismatch', 'degC']);
    assert.equal(failed('at(mat.DO, 22:00) in mgg/L').code, 'unknown-unit');
  });

  test('pH, salinity and percentages', () => {
    const water = contextFrom(`\`\`\`protocol
place: {name: Zwolle, time zone: UTC}
tanks: {a: {role: treatment}, b: {role: control}}
differs: []
schedule: {start: 2026-03-14 20:00, end: 2026-03-14 22:00, every: 1 h}
measure:
  pH: {what: pH, unit: pH}
  sat: {what: oxygen saturation, unit: "%"}
  S: {what: salinity, unit: PSU}
\`\`\`

\`\`\`readings
time  a.pH a.sat a.S
20:00 7.40  95   33
21:00 7.10  80   33
22:00 6.90  76   34
\`\`\`
`);
    assert.equal(answer('first-below(a.pH, 7)', water), '22:00');
    assert.equal(answer('all(a.pH < 7.5) and all(a.pH > 6.5 pH)', water), 'true');
    near(number('fall(a.pH)', water), 0.5);
    assert.equal(failed('percent-change(a.pH)', water).code, 'no-true-zero');
    assert.equal(answer('change(a.sat)', water), '-19 pp');
    assert.equal(answer('fall(a.sat) > 15 %', water), 'true');
    assert.equal(answer('any(a.S > 33.5)', water), 'true');
    assert.equal(answer('settled(a.pH, within 0.5, for 2 h)', water), '20:00');
  });

  test('mixed dimensions are a problem at their place', () => {
    const found = failed('min(mat.DO) < 3');
    assert.deepEqual([found.code, found.text, found.fixes], ['unit-mismatch', '<', ['3 mg/L']]);
    assert.equal(failed('mean(mat.DO) + mean(mat.T)').text, '+');
    assert.deepEqual([failed('first-below(mat.DO, 3 degC)').code, failed('first-below(mat.DO, 3 degC)').text], ['unit-mismatch', '3 degC']);
    assert.equal(failed('mat.DO + light-off').code, 'operands-do-not-fit');
    assert.equal(failed('mean(mat.T) * 2').code, 'no-true-zero');
    assert.equal(failed('1 / 0').code, 'zero-base');
    assert.deepEqual(failed('min(mat)').fixes.slice(0, 2), ['mat.DO', 'mat.T']);
  });

  test('readings outside the instrument’s range', () => {
    for (const name of ['min', 'max', 'mean', 'median', 'sd', 'range', 'first', 'change']) assert.equal(failed(`${name}(mat.NO2)`).code, 'censored-value', name);
    near(number('max(mat.NO2, 20:30..end)', c), 0.5);
    near(number('count(mat.NO2)', c), 12);
    near(number('last(mat.NO2)', c), 0.5);
    assert.equal(answer('all(mat.NO2 < 0.6 mg/L)', c), 'true', 'below 0.05 is below 0.6');
    assert.equal(failed('all(mat.NO2 > 0.01 mg/L)').code, 'censored-value');
    assert.equal(answer('any(mat.NO2 > 0.45 mg/L)', c), 'true');
    assert.equal(failed('max(mat.NO2 * 2)').code, 'censored-value');
  });

  test('values within 1e-9 of each other are equal', () => {
    assert.equal(answer('0.1 + 0.2 == 0.3', c), 'true');
    assert.equal(answer('0.1 + 0.2 > 0.3', c), 'false');
    assert.equal(answer('1.000001 > 1', c), 'true');
    assert.equal(answer('3 mg/L == 3000 ug/L', c), 'true');
  });
});

suite('formulas: uncertainty', () => {
  const accuracy = 0.1 / Math.sqrt(3);
  const resolution = 0.01 / Math.sqrt(12);

  test('a single reading, a difference on one instrument, a mean', () => {
    near(halfWidth('at(mat.DO, 22:00)')!, 2 * Math.hypot(accuracy, resolution));
    near(halfWidth('fall(mat.DO, 22:00..22:30)')!, 2 * Math.SQRT2 * resolution, 1e-6);
    near(halfWidth('at(open.DO, 22:00) - at(mat.DO, 22:00)')!, 2 * Math.SQRT2 * resolution, 1e-6);
    near(halfWidth('mean(mat.DO, baseline)')!, 2 * Math.hypot(accuracy, resolution / Math.sqrt(5)));
    near(halfWidth('at(mat.DO, 22:00) - at(mat.DO@titration, 22:00)')!, 2 * Math.hypot(accuracy, resolution, 0.05 / Math.sqrt(3)));
    near(halfWidth('rate(mat.DO, 22:00..22:30)')!, 2 * Math.SQRT2 * resolution / 0.5, 1e-6);
  });

  test('no accuracy stated is unknown, never nothing', () => {
    assert.equal(halfWidth('last(mat.NO2)'), null);
    assert.equal(halfWidth('last(mat.NO2) - at(mat.NO2, 20:30)'), null);
  });

  test('resolved', () => {
    assert.equal(answer('resolved(fall(mat.DO, 22:00..22:30))', c), 'true');
    assert.equal(answer('resolved(fall(mat.DO, 21:00..21:30))', c), 'false');
    assert.equal(failed('resolved(change(mat.NO2, 20:30..22:00))').code, 'accuracy-needed');
  });

  test('repeats enter', () => {
    const spread = Math.sqrt(((7.02 - 7.03) ** 2 + (7.06 - 7.03) ** 2 + (7.01 - 7.03) ** 2) / 2 / 3);
    near(halfWidth('last(mat.DO)')!, 2 * Math.hypot(accuracy, resolution / Math.sqrt(3), spread), 1e-6);
  });
});

suite('formulas: oxygen', () => {
  test('solubility to the published tables, and in the row’s own water', () => {
    // Benson and Krause (1984), as in APHA Standard Methods 4500-O: 25 °C 8.263, 20 °C 9.092; at 1000 hPa by the equation.
    assert.equal(answer('solubility(25 degC, standard-pressure) in ug/L', c).slice(0, 4), '8263');
    near(number('solubility(20 degC, standard-pressure)', c), 9.0924, 1e-5);
    near(number('solubility(25 degC, 1000 hPa)', c), 8.1520, 1e-5);
    near(number('solubility(25 degC, standard-pressure, 35 PSU)', c), 6.7721, 1e-5);
    assert.equal(failed('solubility(45 degC, standard-pressure)').code, 'outside-equation-range');
    near(number('at(solubility(mat), 22:00)', c), number('solubility(24.8 degC, 1008.9 hPa)', c));
  });

  test('saturation and deficit use temperature and pressure of the same row', () => {
    const full = number('solubility(24.8 degC, 1008.9 hPa)', c);
    near(number('at(saturation(mat.DO), 22:00)', c), 100 * 8.26 / full);
    near(number('at(deficit(mat.DO), 22:00)', c), full - 8.26);
    near(number('at(saturation(mat.DO, standard-pressure), 22:00)', c), 100 * 8.26 / number('solubility(24.8 degC, standard-pressure)', c));
    assert.equal(answer('at(saturation(mat.DO), 22:00)', c), '100.0 %');
    assert.ok(ask('min(saturation(mat.DO))', c).working.some((step) => step.remarks.some((each) => each.code === 'saturation-local-pressure')));
    assert.equal(failed('min(saturation(mat.T))').code, 'oxygen-column-needed');
    assert.equal(failed('min(saturation(a1.DO))', several).code, 'quantity-needed');
    const dry = contextFrom(night.replaceAll(/ 100\d\.\d/gu, ' -'));
    assert.equal(failed('min(saturation(mat.DO))', dry).code, 'no-joint-rows');
  });

  test('uncertainty of saturation: the worked example of the science page', () => {
    // DO 6.20 ± 0.2 (0.01, s = 0.05, n = 3), 25 ± 0.3 °C, 1000 ± 3 hPa: 76.055 %, u 1.4868 %.
    const worked = contextFrom(`\`\`\`protocol
place: {name: Zwolle, elevation: 4 m, time zone: UTC}
tanks: {a: {role: treatment}, b: {role: control}}
differs: []
schedule: {start: 2026-03-14 20:00, end: 2026-03-14 21:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe, accuracy: 0.2 mg/L, resolution: 0.01 mg/L}
  T: {what: water temperature, unit: degC, with: probe, accuracy: 0.3 degC}
  P: {what: air pressure, unit: hPa, with: barometer, in: room, level: station, accuracy: 3 hPa}
\`\`\`

\`\`\`readings
time a.DO a.T room.P
20:00 6.15/6.20/6.25 25.0 1000
\`\`\`
`);
    near(number('first(saturation(a.DO))', worked), 76.055, 1e-5);
    const expected = 2 * 1.4868;
    assert.ok(Math.abs(halfWidth('first(saturation(a.DO))', worked)! - expected) < 0.005 * expected);
  });

  test('sea-level pressure is turned into station pressure with the elevation', () => {
    const plan = (level: string, elevation: string): string => night.replace('level: station', level).replace('elevation: 4 m', elevation);
    const sea = contextFrom(plan('level: sea', 'elevation: 1500 m'));
    // 1008.9 hPa at sea level is 841.94 hPa at 1500 m by the standard atmosphere (845.56/1013.25).
    near(number('at(saturation(mat.DO), 22:00)', sea), 100 * 8.26 / number(`solubility(24.8 degC, ${1008.9 * 845.5597 / 1013.25} hPa)`, sea), 1e-5);
    assert.equal(failed('min(saturation(mat.DO))', contextFrom(plan('level: sea', 'daylight: yes'))).code, 'elevation-needed');
    assert.equal(failed('min(saturation(mat.DO))', contextFrom(night.replace(', level: station', ''))).code, 'pressure-level-needed');
    assert.equal(failed('min(saturation(mat.DO))', contextFrom(plan('level: station', 'elevation: 1500 m'))).code, 'pressure-not-station');
  });
});

suite('formulas: evidence', () => {
  const rows = [[7.9, 7.8], [8.1, 7.9], [8.0, 7.9], [8.2, 8.0], [6.1, 7.6], [5.8, 7.5], [5.6, 7.4], [5.5, 7.4]];
  const times = ['20:00', '20:30', '21:00', '21:30', '22:30', '23:00', '23:30', '00:00'];
  const toy = contextFrom(`\`\`\`protocol
place: {name: Zwolle, time zone: UTC}
tanks: {t: {role: treatment}, c: {role: control}}
differs: []
schedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 06:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe}
\`\`\`

\`\`\`readings
time t.DO c.DO
${rows.map(([t, control], index) => `${times[index]} ${t} ${control}`).join('\n')}
\`\`\`
`);

  test('contrast: the worked example of the statistics', () => {
    // D before .1 .2 .1 .2, after −1.5 −1.7 −1.8 −1.9: effect −1.875
    near(number('contrast(DO, dark)', toy), -1.875);
    assert.ok(ask('contrast(DO, dark)', toy).working[0]?.remarks.some((each) => each.code === 'one-tank-a-side'));
    assert.ok(halfWidth('contrast(DO, dark)', toy)! > 0.22, 'wider than the paired interval that takes the readings as independent');
    assert.equal(answer('resolved(contrast(DO, dark))', toy), 'true');
  });

  test('with several tanks a side each tank counts once', () => {
    const two = contextFrom(`\`\`\`protocol
place: {name: Zwolle, time zone: UTC}
tanks: {a1: {role: treatment}, a2: {role: treatment}, b1: {role: control}, b2: {role: control}}
differs: []
schedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 02:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe}
\`\`\`

\`\`\`readings
time  a1.DO a2.DO b1.DO b2.DO
20:00  8.20  8.40  8.30  8.30
22:00  8.20  8.40  8.30  8.30
23:00  7.20  7.60  8.20  8.22
01:00  7.20  7.60  8.20  8.22
\`\`\`
`);
    // changes −1.0 and −0.8 against −0.10 and −0.08; Welch: s² 0.02 and 0.0002, error √(0.0101), df 1.02, t 12.28
    near(number('contrast(DO, dark)', two), -0.9 + 0.09);
    const remark = ask('contrast(DO, dark)', two).working[0]?.remarks.find((each) => each.code === 'tanks-as-units-p');
    assert.equal(remark?.args['smallest'], '0.333');
    // Every split of −1.0 −0.8 −0.10 −0.08 in two pairs: only the one seen and its mirror are as far apart, 2 of 6.
    assert.equal(remark.args['p'], '0.333');
    near(number('permutation-p(DO, dark)', two), 2 / 6);
    const half = halfWidth('contrast(DO, dark)', two)!;
    assert.ok(half > 1.1 && half < 1.3, String(half));
  });

  test('slope has an interval by its scatter', () => {
    assert.ok(halfWidth('slope(mat.DO, dark)')! > 0);
  });
});

suite('formulas: conditions at each reading', () => {
  const truths = (formula: string, window: { from: number; to: number } | null, includeLeftOut = false): string =>
    evaluateAtEachReading(mappedText(formula), c, window, { includeLeftOut }).truths.map((each) => (each.truth ? '1' : '0')).join('');

  test('paired readings only, inside the window', () => {
    assert.equal(truths('abs(mat.T - open.T) <= 0.5 degC', null), '1'.repeat(12));
    const { schedule } = c.protocol!;
    assert.equal(truths('abs(mat.T - open.T) <= 0.15 degC', { from: schedule!.start, to: schedule!.lightOff[0]! }), '00000');
  });

  test('stop rules look at left-out readings too', () => {
    assert.equal(truths('mat.DO > 7.8 mg/L', null), '1111111000');
    assert.equal(truths('mat.DO > 7.8 mg/L', null, true), '11111110100');
    near(number('count(mat.DO)', c), 10, 0);
  });

  test('a chain of comparisons is one problem; one in brackets is of another kind', () => {
    assert.deepEqual(codes('3 mg/L < min(mat.DO) < 9 mg/L', c), ['formula-chained']);
    assert.deepEqual(codes('(3 mg/L < min(mat.DO)) < 9 mg/L', c), ['operands-do-not-fit']);
  });

  test('a condition that is none is a problem', () => {
    assert.equal(evaluateAtEachReading(mappedText('mat.DO'), c, null).problems[0]?.code, 'condition-needed');
    assert.equal(evaluateAtEachReading(mappedText('mat.DO <'), c, null).problems[0]?.code, 'formula-syntax');
  });
});

suite('formulas: values for machines', () => {
  const json = (formula: string): Record<string, unknown> => {
    const { value, problems } = ask(formula, c);
    assert.ok(value, `${formula} ${problems.map((each) => each.code).join()}`);
    return { ...jsonValue(value, c) };
  };

  test('every type has all keys', () => {
    assert.deepEqual(json('at(mat.NO2, 22:00)'), { type: 'number', value: 0.2, unit: 'mg/L', uncertainty: null, text: '0.20 mg/L' });
    assert.deepEqual(json('light-off'), { type: 'instant', value: '2026-03-14T22:00:00+01:00', unit: null, uncertainty: null, text: '22:00' });
    assert.deepEqual(json('fed'), { type: 'event', value: '2026-03-14T21:10:00+01:00', unit: null, uncertainty: null, text: '21:10' });
    assert.deepEqual(json('duration(dark)'), { type: 'duration', value: 7, unit: 'h', uncertainty: null, text: '7 h' });
    assert.deepEqual(json('1 < 2'), { type: 'truth', value: true, unit: null, uncertainty: null, text: 'true' });
    assert.deepEqual(json('first(mat.behaviour)'), { type: 'word', value: 'calm', unit: null, uncertainty: null, text: 'calm' });
    assert.deepEqual(json('dark')['value'], { from: '2026-03-14T22:00:00+01:00', to: '2026-03-15T05:00:00+01:00' });
    assert.deepEqual(json('count(mat.DO)'), { type: 'number', value: 10, unit: '1', uncertainty: 0, text: '10' });
    assert.equal(json('rate(mat.DO, 22:00..22:30)')['unit'], 'mg/L/h');
    assert.equal(json('hours-below(mat.DO, 8 mg/L)')['unit'], 'h');
    assert.equal(json('percent-fall(mat.DO, 22:00..22:30)')['unit'], '%');
    assert.equal(json('at(mat.T, 22:00)')['unit'], 'degC');
  });

  test('series carry times, values and flags', () => {
    const series = json('mat.DO');
    const points = series['value'] as { time: string; value: number; flags: string[] }[];
    assert.equal(points.length, 10);
    assert.deepEqual(points[2], { time: '2026-03-14T21:00:00+01:00', value: 8.25, flags: ['doubtful'] });
    assert.deepEqual((json('open.DO')['value'] as typeof points)[5], { time: '2026-03-14T22:30:00+01:00', value: 8.26, flags: ['corrected'] });
  });

  test('the machine form is unrounded', () => {
    const { value } = ask('percent-fall(mat.DO, 22:00..22:30)', c);
    near(Number(machineValue(value!, c)), 100 * 0.24 / 8.26);
  });

  test('a decimal comma where the note’s language has one', () => {
    const german = contextFrom(night.replace('place:', 'language: de\nplace:'));
    assert.equal(answer('at(mat.DO, 22:00)', german), '8,26 mg/L');
  });
});

suite('formulas: working', () => {
  test('names function, value and readings with their places in the note', () => {
    const { working } = ask('percent-fall(mat.DO, 22:00..22:30)', c);
    assert.equal(working.length, 1);
    assert.equal(working[0]!.function, 'percent-fall');
    assert.equal(working[0]!.value, '2.9 %');
    assert.deepEqual(working[0]!.readings.map((each) => night.slice(each.start, each.end)), ['8.26', '8.02']);
  });

  test('a context without a plan answers what needs none', () => {
    const bare = contextFrom('# nothing\n');
    assert.equal(answer('1 + 2 * 3', bare), '7');
    assert.equal(answer('20:00', bare), 'schedule-needed');
    assert.equal(answer('min(mat.DO)', bare), 'unknown-name');
  });
});
