// Concentrations of a known substance in mass, amount and gas volume. Factors: USGS OWQ memorandum 2011.03 (1.42905 mg of
// oxygen in a mL(STP), the real molar volume); molar masses from the IUPAC standard atomic weights. All readings are invented.
import assert from 'node:assert/strict';
import { substanceOf } from '../../../src/water/concentrations.ts';
import type { Language } from '../../../src/words/languages.ts';
import { problemSentence } from '../../../src/words/words.ts';
import { answer, ask, codes, contextFrom } from './support.ts';

const note = `\`\`\`protocol
question: Invented
place: {time zone: UTC}
tanks: {mat: {label: mat tank}, open: {label: open tank}}
schedule: {start: 2026-03-14 20:00, end: 2026-03-14 22:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
  DO@titration: {what: dissolved oxygen, unit: umol/L, with: titration}
  NO3: {what: nitrate, unit: mg/L, with: kit}
  TAN: {what: total ammonia, unit: mg/L, with: kit}
  CO2: {what: carbon dioxide, unit: mg/L, with: kit}
  Cl: {what: chlorine, unit: mg/L, with: kit}
  sat: {what: oxygen saturation, unit: '%', with: probe}
\`\`\`

\`\`\`readings
time  mat.DO@ open.DO@titration mat.NO3 mat.TAN mat.CO2 mat.Cl mat.sat
20:00 8.2635  250.000 62.0049 0.50 44.01 0.5 100
21:00 7.14525 240.000 31.0000 0.40 22.00 0.4 90
22:00 6.0000  230.000 10.0000 0.30 11.00 0.3 80
\`\`\`
`.replace('mat.DO@ ', 'mat.DO ');
const context = contextFrom(note);

function number(formula: string): number {
  const { value, problems } = ask(formula, context);
  assert.ok(value?.type === 'number', `${formula}: ${problems.map((each) => each.code).join(' ')}`);
  return value.value;
}
const near = (formula: string, wanted: number, within: number): void => assert.ok(Math.abs(number(formula) - wanted) <= within, `${formula} = ${number(formula)}`);

suite('concentrations of a known substance', () => {
  test('mg/L of oxygen in µmol/L and mmol/L: 8.2635 mg/L are 258.244 µmol/L (31.9988 g/mol)', () => {
    near('at(mat.DO, 20:00) in umol/L', 258.244, 0.0005);
    near('at(mat.DO, 20:00) in µmol/L', 258.244, 0.0005);
    near('at(mat.DO, 20:00) in mmol/L', 0.258244, 5e-7);
    assert.match(answer('at(mat.DO, 20:00) in umol/L', context), /^258\.\d+ µmol\/L|^258 µmol\/L/);
  });

  test('gas volume: 7.14525 mg/L are 5 mL/L at 1.42905 mg/mL (USGS 2011.03), written mL/L or mL(STP)/L; 1 mL/L is 44.6595 µmol/L', () => {
    near('at(mat.DO, 21:00) in mL/L', 5, 1e-9);
    near('at(mat.DO, 21:00) in mL(STP)/L', 5, 1e-9);
    near('(at(mat.DO, 21:00) in mL/L) in umol/L', 5 * 44.6595, 0.0005);
    near('at(open.DO@titration, 20:00) in mL/L', 250 / 44.6595, 1e-5);
  });

  test('carried through summaries, changes, rates, sums of the same substance, plain factors and whole series', () => {
    near('min(mat.DO) in umol/L', 6 / 0.0319988, 1e-6);
    near('mean(mat.DO) / 2 in umol/L', (8.2635 + 7.14525 + 6) / 6 / 0.0319988, 1e-6);
    near('fall(mat.DO, 20:00..22:00) in umol/L', 2.2635 / 0.0319988, 1e-6);
    near('rate(mat.DO, 20:00..22:00) in umol/L/h', -1.13175 / 0.0319988, 1e-2);
    near('at(mat.DO, 20:00) - at(open.DO@titration, 20:00)', 8.2635 - 250 * 0.0319988, 1e-9);
    near('max(mat.DO in umol/L)', 258.244, 0.0005);
    near('max(mat.DO - open.DO@titration) in umol/L', 258.244 - 250, 0.0005);
  });

  test('the uncertainty is converted by the same factor', () => {
    const size = (formula: string): number => {
      const { value } = ask(formula, context);
      return value?.type === 'number' && value.contributions ? Math.hypot(...value.contributions.values()) : Number.NaN;
    };
    assert.ok(size('at(mat.DO, 20:00)') > 0);
    assert.ok(Math.abs(size('at(mat.DO, 20:00) in umol/L') - size('at(mat.DO, 20:00)') / 0.0319988) < 1e-9);
  });

  test('a typed level is of the substance beside it', () => {
    assert.equal(answer('at(mat.DO, 21:00) > 4.9 mL/L', context), answer('1 > 0', context));
    assert.equal(answer('at(mat.DO, 21:00) > 5.1 mL/L', context), answer('1 < 0', context));
    assert.equal(answer('all(mat.DO > 180 umol/L)', context), answer('1 > 0', context));
    assert.deepEqual(codes('first-below(mat.DO, 5 mL/L)', context).filter((code) => code.endsWith('needed') || code === 'unit-mismatch'), []);
  });

  test('nitrate as the ion and in moles (62.0049 g/mol), then as nitrogen (14.0067 g/mol), never straight; carbon dioxide (44.0095 g/mol)', () => {
    near('at(mat.NO3, 20:00) in mmol/L', 1, 1e-4);
    near('(at(mat.NO3, 20:00) in mmol/L) in mg/L-N', 14.0067, 1e-3);
    assert.deepEqual(codes('at(mat.NO3, 20:00) in mg/L-N', context), ['unit-mismatch']);
    near('at(mat.CO2, 20:00) in mmol/L', 1, 1e-4);
    assert.equal(substanceOf('no3')?.name, 'nitrate');
  });

  test('refused with the reason: mixed and unknown substances, products, gas volumes of others, what needs a density', () => {
    for (const formula of [
      '(at(mat.DO, 20:00) + at(mat.CO2, 20:00)) in umol/L', 'at(open.DO@titration, 20:00) - at(mat.NO3, 20:00)', 'min(mat.Cl) in umol/L',
      'at(mat.TAN, 20:00) in umol/L', 'min(mat.CO2) in mL/L', '3 mg/L in mmol/L', 'min(mat.DO) * min(mat.DO) / min(mat.NO3) in umol/L',
    ]) assert.deepEqual(codes(formula, context), ['substance-needed'], formula);
    for (const formula of ['min(mat.DO) in ppm', 'min(mat.DO) in umol/kg', 'min(mat.DO) < 200 umol/kg']) assert.deepEqual(codes(formula, context), ['density-needed'], formula);
    assert.deepEqual(codes('min(mat.sat) in mg/L', context), ['unit-mismatch']);
    assert.deepEqual(codes('min(mat.DO) / min(mat.NO3) in umol/L', context), ['unit-mismatch']);
    assert.deepEqual(codes('min(mat.DO) in umol/L/h', context), ['unit-mismatch']);
  });

  test('ppm are refused with the way out where the instrument means mg/L, in both languages', () => {
    const sentence = (formula: string, language: Language): string => problemSentence(ask(formula, context).problems[0]!, language);
    assert.match(sentence('min(mat.DO) in ppm', 'en'), /give both in one unit\. Where the manual of the instrument says that its ppm are mg\/L, write mg\/L in the plan\.$/u);
    assert.match(sentence('min(mat.DO) in ppm', 'de'), /beides in einer Einheit angeben\. Wo laut Anleitung des Messgeräts ppm für mg\/L steht, im Plan mg\/L schreiben\.$/u);
    assert.doesNotMatch(sentence('min(mat.DO) in umol/kg', 'en'), /ppm/u);
  });

  test('a sum of two substances keeps its common unit', () => {
    near('at(mat.DO, 20:00) + at(mat.CO2, 20:00)', 52.2735, 1e-9);
  });
});
