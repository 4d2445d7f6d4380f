import assert from 'node:assert/strict';
import { assessDays } from '../../../src/analysis/criteria.ts';
import { criteria, criterionByName } from '../../../src/protocol/criteria.ts';
import { hour } from '../../../src/time/instant.ts';
import { utc } from '../../../src/time/zone.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { publishPost } from '../../../src/publish/post.ts';

/** Six-hourly readings over so many days: a wave around the centre. */
const days = (count: number, centre: number, swing: number): { time: number; value: number }[] =>
  Array.from({ length: 4 * count }, (_, index) => ({ time: Date.parse('2026-03-01T00:00:00Z') + index * 6 * hour, value: centre + swing * [0, -1, 0, 1][index % 4]! }));

suite('published criteria', () => {
  test('the table of the EPA (1986), figures as transcribed in its fact sheet 841F21007B, and of the CCME (1999)', () => {
    const parts = (name: string): string => criterionByName(name)!.parts.map((each) => `${each.part} ${each.atLeast}`).join(', ');
    assert.equal(parts('EPA 1986 warm water, other life stages'), 'minimum 3, 7-day mean minimum 4, 30-day mean 5.5');
    assert.equal(parts('EPA 1986 warm water, early life stages'), 'minimum 5, 7-day mean 6');
    assert.equal(parts('EPA 1986 cold water, other life stages'), 'minimum 4, 7-day mean minimum 5, 30-day mean 6.5');
    assert.equal(parts('EPA 1986 cold water, early life stages'), 'minimum 8, 7-day mean 9.5');
    assert.deepEqual(['warm water, early', 'warm water, other', 'cold water, early', 'cold water, other'].map((each) => parts(`CCME 1999 ${each} life stages`)), ['minimum 6', 'minimum 5.5', 'minimum 9.5', 'minimum 6.5']);
    assert.ok(criteria.every((each) => /\(19\d\d\)|19\d\d/.test(each.source)));
    assert.equal(criterionByName('epa 1986 warm water other life stages')?.name, 'EPA 1986 warm water, other life stages');
    assert.equal(criterionByName('Corydoras'), null);
  });

  test('a criterion of days is not assessable on a shorter run', () => {
    assert.deepEqual(assessDays(days(6, 5, 1), '7-day mean minimum', utc), { assessable: false, has: 6, needs: 7 });
    assert.deepEqual(assessDays(days(1, 5, 1).slice(0, 2), '7-day mean', utc), { assessable: false, has: 0, needs: 7 });
    assert.deepEqual(assessDays([], '30-day mean', utc), { assessable: false, has: 0, needs: 30 });
  });

  test('seven days: mean of the daily minima, mean of the daily means; a day with a gap breaks the row', () => {
    assert.deepEqual(assessDays(days(8, 5, 1), '7-day mean minimum', utc), { assessable: true, lowest: 4, from: '2026-03-01' });
    const mean = assessDays(days(7, 5, 0), '7-day mean', utc);
    assert.ok(mean.assessable && Math.abs(mean.lowest - 5) < 1e-12);
    const gappy = days(8, 5, 1).filter((_, index) => index !== 13 && index !== 14);
    assert.equal(assessDays(gappy, '7-day mean', utc).assessable, false);
  });

  const note = (limit: string): string => `# Night\n\n\`\`\`protocol
place: {name: Zwolle, latitude: 52.51, longitude: 6.09, time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, light off: 21:00, light on: 2026-03-15 00:00, end: 2026-03-15 00:00, every: 1 h}
measure:
  DO: {what: dissolved oxygen, unit: mg/L, with: optical probe, accuracy: 0.1 mg/L, resolution: 0.01 mg/L}
limits:
  - ${limit}
\`\`\`

\`\`\`readings
time   mat.DO  open.DO
20:00    6.20     6.30
21:00    5.20     6.30
22:00    3.60     6.20
23:00    2.60     6.10
00:00    3.00     6.05
\`\`\`

\`\`\`limits
\`\`\`
`;

  test('a plan names one; the limits block shows margin, hours below, first time below, and what cannot be assessed', async () => {
    const read = readNote(note('criterion: EPA 1986 warm water, other life stages'));
    assert.deepEqual(read.problems.filter((each) => each.severity === 'error'), []);
    const limit = read.protocol!.limits[0]!;
    assert.equal(limit.quantity?.value, 'DO');
    assert.equal(limit.atLeast?.value.value, 3);
    assert.match(limit.source ?? '', /440\/5-86-003/);
    const { html } = await publishPost(read, {} as never);
    const text = html.replace(/<[^>]+>/g, '');
    // 2 √((0.1/√3)² + (0.01/√12)²) = 0.12
    assert.match(text, /lowest 2\.60 ± 0\.12 mg\/L at 23:00/);
    assert.match(text, /margin −0\.40 ± 0\.1\d mg\/L/);
    // By straight lines: below 3 from 22:36 to 00:00.
    assert.match(text, /below it for 1\.4 h, first at 23:00/);
    assert.match(text, /7-day mean minimum at least 4\.0 mg\/L/);
    assert.match(text, /not assessable: it needs 7 days in a row, the readings cover none in full/);
    assert.match(text, /not assessable: it needs 30 days in a row/);
  });

  test('an unknown criterion is refused with the nearest; another level beside it too', () => {
    const codes = (limit: string): string[] => readNote(note(limit)).problems.map((each) => each.code);
    assert.ok(codes('{criterion: "EPA 1986 warm water, othr life stages"}').includes('unknown-value'));
    assert.ok(codes('{criterion: "Alabaster and Lloyd 1982", at least: 4 mg/L}').includes('criterion-with-level'));
    assert.ok(codes('{for: Corydoras, quantity: DO}').includes('missing-key'));
  });
});
