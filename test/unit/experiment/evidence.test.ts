// The evidence end to end: whole notes in, problems and answers out. All figures are invented.
import assert from 'node:assert/strict';
import createMarkdown from 'markdown-it';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { showValue } from '../../../src/formula/show.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { evenwaterMarkdown } from '../../../src/render/plugin.ts';
import { cautionsBehind, remarkSentence, remarksBehind } from '../../../src/words/remarks.ts';

const prose = (claims: string): Note => readNote(`${exampleNote}\n${claims}\n`);
const codesOf = (note: Note): string[] => note.problems.map((each) => each.code);
const claimsOf = (note: Note): string[] => note.claims.flatMap((claim) => claim.problems.map((each) => each.code));
const ask = (formula: string, note: Note): string[] => { const { value, problems } = evaluate(mappedText(formula), note.context); return value ? ['a value'] : problems.map((each) => each.code); };

suite('evidence, end to end', () => {
  test('resolved() as a condition, and a change below what the instrument tells', () => {
    assert.deepEqual(claimsOf(prose('{It fell clearly if resolved(fall(mat.DO, 22:00..23:00))}.')), []);
    assert.deepEqual(claimsOf(prose('{It fell clearly if resolved(change(open.DO, 20:00..21:00))}.')), ['statement-false']);
    assert.ok(claimsOf(prose('It rose by {0.00 mg/L = change(open.DO, 20:00..21:00)}.')).includes('below-resolution'));
  });

  test('± is held against the 95 % half-width', () => {
    // √2 · 2 · 0.01/√12 = 0.008
    assert.deepEqual(claimsOf(prose('It fell by {0.400 ± 0.008 mg/L = fall(mat.DO, 22:00..23:00)}.')), []);
    assert.ok(claimsOf(prose('It fell by {0.400 ± 0.030 mg/L = fall(mat.DO, 22:00..23:00)}.')).includes('claim-mismatch'));
    assert.deepEqual(claimsOf(prose('Respiration was {0.55 ± 0.18 mg/L/h = respiration(mat.DO)}.')), []);
    assert.deepEqual(claimsOf(prose('In 12 h of darkness it would have fallen to about {5.0 mg/L = predicted-min(mat.DO, dark 12 h)}.')), []);
  });

  const plan = (place: string, pressure: string, rows: string): Note => readNote(`\`\`\`protocol
place: {${place}, time zone: Europe/Zurich}
tanks:
  a: {role: treatment}
  b: {role: control}
schedule: {start: 2026-03-14 20:00, light off: 22:00, end: 2026-03-15 02:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: probe, accuracy: 0.1 mg/L}
  T: {what: water temperature, unit: degC, with: thermistor, accuracy: 0.2 degC}
  P: {what: air pressure, unit: hPa, with: barometer, in: room, ${pressure}}
  S: {what: salinity, unit: PSU, with: refractometer}
  pH: {what: pH, unit: pH, with: electrode}
  TAN: {what: total ammonia, unit: mg/L-N, with: colour test}
  KH: {what: carbonate hardness, unit: dKH, with: drop test}
  NO3: {what: nitrate, unit: mg/L, with: colour test}
\`\`\`

\`\`\`readings
${rows}
\`\`\`
`);

  test('a sea-level pressure is turned at the stated elevation, and the formula says how', () => {
    const note = plan('name: Davos, elevation: 1560 m', 'level: sea', 'time a.DO a.T room.P\n20:00 6.8 25.0 1013.25');
    const { value, working } = evaluate(mappedText('first(saturation(a.DO))'), note.context);
    assert.ok(value?.type === 'number');
    // ISA at 1560 m: 1013.25 (1 − 0.0065·1560/288.15)^5.255876 = 839.3 hPa; Cs 6.800 mg/L at 25 °C
    assert.ok(Math.abs(value.value - 100) < 0.3, String(value.value));
    assert.ok(working.some((step) => step.remarks.some((each) => each.code === 'pressure-from-sea-level')));
    assert.deepEqual(ask('first(saturation(a.DO))', plan('name: Davos', 'level: sea', 'time a.DO a.T room.P\n20:00 6.8 25.0 1013.25')), ['elevation-needed']);
  });

  test('a station pressure that cannot be one is a problem', () => {
    const note = plan('name: Davos, elevation: 1560 m', 'level: station', 'time a.DO a.T room.P\n20:00 6.8 25.0 1013.25');
    assert.deepEqual(ask('first(saturation(a.DO))', note), ['pressure-not-station']);
  });

  test('ammonia in saline water by the equation of sea water, which the working says; carbon dioxide does not apply there', () => {
    const marine = plan('name: Davos', 'level: station', 'time a.TAN a.pH a.T a.S a.KH\n20:00 1.00 8.0 25.0 34 7.0');
    const { value, working } = evaluate(mappedText('first(un-ionised-ammonia(a))'), marine.context);
    assert.ok(value?.type === 'number');
    // Bower and Bidwell (1978): 4.28 % at salinity 34, 25 °C, pH 8.0
    assert.ok(Math.abs(value.value - 0.0428) < 0.0005, String(value.value));
    assert.ok(working.some((step) => step.remarks.some((each) => each.code === 'ammonia-saline')));
    assert.deepEqual(ask('first(carbon-dioxide(a))', marine), ['not-for-saline-water']);
  });

  test('carbon dioxide: the rule of thumb stands beside the equation, labelled, with the difference explained', () => {
    const { value, working } = evaluate(mappedText('first(carbon-dioxide(mat))'), prose('').context);
    assert.ok(value?.type === 'number');
    const remark = working.flatMap((step) => step.remarks).find((each) => each.code === 'carbon-dioxide-rule')!;
    // KH 4.0, pH 7.12: 3 · 4 · 10^(−0.12) = 9.1; the equation 3.53 · 4 · 10^(−0.12) = 10.7
    assert.deepEqual([remark.args['rule'], remark.args['value'], remark.args['coefficient'], remark.args['low']], ['9.1', '10.7', '3.53', '15']);
    assert.match(remarkSentence(remark), /rule of thumb, 3 · KH · 10\^\(7 − pH\), which no published equation stands behind, would give 9\.1 mg\/L instead of 10\.7, 15 % less/u);
    assert.match(remarkSentence(remark, 'de'), /Faustregel .* 9,1 statt 10,7 mg\/L/u);
  });

  test('nitrate as ion and as nitrogen are not mixed', () => {
    const note = plan('name: Davos', 'level: station', 'time a.NO3 b.NO3\n20:00 20 22');
    assert.ok(ask('first(a.NO3) < 5 mg/L-N', note).includes('unit-mismatch'));
    assert.ok(ask('first(a.NO3) - first(b.NO3) + 1 mg/L-N', note).includes('unit-mismatch'));
  });

  test('salinity from specific gravity, with the reference temperature printed on the hydrometer', () => {
    const note = (key: string): Note => readNote(`\`\`\`protocol
place: {name: Davos, time zone: Europe/Zurich}
tanks: {a: {role: treatment}}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 02:00, every: 1 h}
measure:
  SG: {what: specific gravity, unit: SG, with: hydrometer, accuracy: 0.0005 SG${key}}
  T: {what: water temperature, unit: degC, with: thermistor, accuracy: 0.2 degC}
\`\`\`

\`\`\`readings
time   a.SG    a.T
20:00  1.0264  25.0
\`\`\`
`);
    const salinity = (key: string): number => {
      const { value, problems } = evaluate(mappedText('first(salinity(a))'), note(key).context);
      assert.ok(value?.type === 'number', JSON.stringify(problems));
      return value.value;
    };
    // TEOS-10 (gsw 3.6.16): salinity 35 at 25 °C has 1.026374 against water of 25 °C and 1.024263 against water of 15 °C.
    assert.ok(Math.abs(salinity(', reference temperature: 25 degC') - 35) < 0.1);
    assert.ok(Math.abs(salinity(', reference temperature: 77 degF') - 35) < 0.1);
    assert.ok(salinity(', reference temperature: 15 degC') > 37);
    assert.deepEqual(ask('first(salinity(a))', note('')), ['reference-temperature-needed']);
  });

  test('what a reader must know of a value stands beside it: in the values table, in the appendix of a post, on the mark in the preview', async () => {
    const text = 'The carbon dioxide stood at {10.7 mg/L = first(carbon-dioxide(mat))}, and the contrast was {? = contrast(DO, dark)}.';
    const note = readNote(`${exampleNote.replace('first-loss = ', 'effect = contrast(DO, dark)\nfirst-loss = ')}\n${text}\n`);
    const { html } = await publishPost(note, {} as never);
    const values = html.slice(html.indexOf('evenwater-values"'), html.indexOf('</table>', html.indexOf('evenwater-values"')));
    assert.match(values, /<span class="evenwater-caution">One tank a side: these two tanks differ so; what the treatment does, replicate tanks must show\.<\/span>/u);
    const appendix = html.slice(html.indexOf('id="how-1"'));
    assert.match(appendix, /<ul class="remarks">[\s\S]*?rule of thumb, 3 · KH · 10\^\(7 − pH\), which no published equation stands behind, would give 9\.1 mg\/L instead of 10\.7/u);
    assert.match(appendix, /95 % interval −\d+\.\d+ ± \d+\.\d+ mg\/L, with the serial correlation of the readings counted in/u);
    const remark = note.claims[1]!.evaluation!.working;
    assert.ok(cautionsBehind(remark).length >= 1 && cautionsBehind(remark).length < remarksBehind(remark).length);
    assert.match(cautionsBehind(remark, 'de')[0]!, /Becken/u);
    const preview = evenwaterMarkdown(createMarkdown(), { noteFor: () => note, target: 'preview' }).render(note.text);
    assert.match(preview, /title="[^"]*rule of thumb, 3 · KH/u);
  });

  test('what-if stands beneath the results, with its caution', async () => {
    const { html } = await publishPost(prose('```results\n```'), {} as never);
    const text = html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
    assert.match(text, /11 h of darkness/);
    assert.match(text, /An air pump that doubles the surface exchange 6\.50 ± 0\.45 mg\/L/);
    assert.match(text, /do not rely on them/);
    // nine readings whose scatter follows its neighbours, and nine in the other tank
    assert.match(text, /Floating-mat tank ?: The scatter about the fitted night may follow its neighbours so closely/u);
    assert.match(text, /What this design can tell apart/);
    assert.match(text, /The smallest differences that the instruments resolve \(95 %\), while an instrument that reads both is off by the same amount in both:/);
    assert.match(text, /With one tank on a side no number of readings can tell the treatment from the tank/);
  });

  test('what-if asked as formulas: an interval, and the caution in the working; no time at all is a plain 0 h', () => {
    const note = prose('');
    const shown = (formula: string): string => { const { value } = evaluate(mappedText(formula), note.context); assert.ok(value, formula); return showValue(value, note.context, { withUncertainty: true }); };
    for (const formula of ['predicted-min(mat.DO, dark 12 h)', 'predicted-min(mat.DO, exchange 2)', 'predicted-min(mat.DO, stocking 0.5)', 'predicted-hours-below(mat.DO, 6 mg/L, dark 12 h)']) {
      assert.match(shown(formula), /^\d+\.\d+ ± \d+\.\d+ (?:mg\/L|h)$/u, formula);
      const remarks = evaluate(mappedText(formula), note.context).working.flatMap((step) => step.remarks);
      const caution = remarks.find((each) => each.code === 'what-if')!;
      assert.match(remarkSentence(caution), /A prediction, not a reading.*It takes every animal, plant and bacterium to go on as in the fitted night/u);
    }
    assert.equal(shown('predicted-hours-below(mat.DO, 2 mg/L)'), '0 h');
  });

  test('a step in both tanks at one reading is pointed out; none in the example night', () => {
    assert.ok(!codesOf(prose('')).includes('common-step'));
    const rows = ['8.21 8.31', '8.20 8.30', '8.18 8.30', '8.17 8.29', '7.87 7.98', '7.85 7.97', '7.84 7.97', '7.82 7.96'];
    const stepped = plan('name: Davos', 'level: station', `time a.DO b.DO\n${rows.map((row, index) => `${['20:00', '20:30', '21:00', '21:30', '22:00', '22:30', '23:00', '23:30'][index]} ${row}`).join('\n')}`);
    assert.ok(codesOf(stepped).includes('common-step'));
  });
});
