// The evidence end to end: whole notes in, problems and answers out. All figures are invented.
import assert from 'node:assert/strict';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { exampleNote } from '../../../src/formula/catalogue/exampleNote.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import { publishPost } from '../../../src/publish/post.ts';

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
    assert.deepEqual(claimsOf(prose('Respiration was {0.55 ± 0.13 mg/L/h = respiration(mat.DO)}.')), []);
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

  test('ammonia in saline water does not apply; nitrate as ion and as nitrogen are not mixed', () => {
    assert.deepEqual(ask('first(un-ionised-ammonia(a))', plan('name: Davos', 'level: station', 'time a.TAN a.pH a.T a.S\n20:00 0.30 7.9 24.9 33')), ['not-for-saline-water']);
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

  test('what-if stands beneath the results, with its caution', async () => {
    const { html } = await publishPost(prose('```results\n```'), {} as never);
    const text = html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
    assert.match(text, /11 h of darkness/);
    assert.match(text, /An air pump that doubles the surface exchange 6\.50 ± 0\.38 mg\/L/);
    assert.match(text, /do not rely on them/);
    assert.match(text, /What this design can tell apart/);
    assert.match(text, /With one tank on a side no number of readings can tell the treatment from the tank/);
  });

  test('a step in both tanks at one reading is pointed out; none in the example night', () => {
    assert.ok(!codesOf(prose('')).includes('common-step'));
    const rows = ['8.21 8.31', '8.20 8.30', '8.18 8.30', '8.17 8.29', '7.87 7.98', '7.85 7.97', '7.84 7.97', '7.82 7.96'];
    const stepped = plan('name: Davos', 'level: station', `time a.DO b.DO\n${rows.map((row, index) => `${['20:00', '20:30', '21:00', '21:30', '22:00', '22:30', '23:00', '23:30'][index]} ${row}`).join('\n')}`);
    assert.ok(codesOf(stepped).includes('common-step'));
  });
});
