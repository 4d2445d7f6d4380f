// New notes: every template checks clean, stands in samples/templates as it is written, and can be run from plan to post;
// every answer may be skipped; a repeat is the same plan with new dates.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { applyEdits } from '../../../src/edits/edit.ts';
import { fillInEdits } from '../../../src/claims/fillIn.ts';
import { newNote } from '../../../src/edits/newNote.ts';
import { answerNames, checkAnswer, type NewNoteAnswers } from '../../../src/edits/newNoteAnswers.ts';
import { templates } from '../../../src/edits/newNoteTemplates.ts';
import { libraryMeasures } from '../../../src/edits/planLibrary.ts';
import { templateSample } from '../../../src/edits/templateSamples.ts';
import { repeatNote } from '../../../src/edits/repeatNote.ts';
import { sealPlan } from '../../../src/edits/sealPlan.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { protocolDigest } from '../../../src/protocol/digest.ts';
import { planDeviations, repeatFacts } from '../../../src/protocol/planSeal.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { formatDate } from '../../../src/time/text.ts';
import { editSentence } from '../../../src/words/edits.ts';
import { languages } from '../../../src/words/languages.ts';
import { problemSentence } from '../../../src/words/words.ts';
import { seededRandom } from '../../../src/statistics/random.ts';

const surroundings = { today: '2026-05-02', timeZone: 'Europe/Amsterdam' };
const read = (text: string): Note => readNote(text, new Map(), undefined, { fileIsNote: true });
/** What is to be mended, but for the instructions that the author writes over. */
const loud = (note: Note): string[] => note.problems.filter((each) => (each.severity === 'error' || each.severity === 'warning') && each.code !== 'template-text').map((each) => `${each.code}: ${problemSentence(each)}`);

/** Invented levels: where a quantity starts, how far it goes in the treated and in the other tanks over the run. */
const course: Readonly<Record<string, readonly [number, number, number, number]>> = {
  DO: [8.2, -2.2, -0.4, 2], T: [24.5, -0.6, -0.6, 1], P: [1008, -4, -4, 1], air: [16, -1, -1, 1], RH: [55, 3, 3, 0], pH: [7.1, 0.9, 0.1, 2], KH: [5, 0, 0, 1], TAN: [2, -2, -1.9, 2],
  NO2: [0.1, 1.2, 0.4, 2], NO3: [5, 20, 12, 0], SAL: [35, 0.8, 2, 1], level: [300, -6, -21, 1], gill: [84, -9, 4, 0],
};
const heaterOff: Readonly<Record<string, readonly [number, number, number, number]>> = { T: [25, -5, -7, 1] };

/** The table of a note filled row by row with a straight course and a little seeded scatter. */
function filled(text: string, template: string): string {
  const note = read(text);
  const random = seededRandom(`${template} readings`);
  const [table] = note.tables;
  assert.ok(table && note.protocol);
  const edits = table.rows.flatMap((row, index) => row.cells.map((cell, column) => {
    const { place, quantity } = table.columns[column]!;
    const role = note.protocol!.tanks.find((tank) => tank.id === place)?.role?.value;
    const scale = note.protocol!.measure.find((each) => each.id === quantity)?.scale;
    if (scale) return { range: cell.range, newText: random.next() < (role === 'treatment' ? 0.8 : 0.5) ? scale[0]! : scale[1]! };
    const [start, treated, other, decimals] = (template === 'heater-failure' ? heaterOff[quantity] : undefined) ?? course[quantity]!;
    const off = note.protocol!.schedule!.lightOff[0] ?? -Infinity;
    const before = table.rows.filter((each) => each.instant! <= off).length;
    const share = Math.max(0, index + 1 - Math.max(1, before)) / Math.max(1, table.rows.length - Math.max(1, before));
    return { range: cell.range, newText: (start + share * (role === 'treatment' ? treated : other)).toFixed(decimals) };
  }));
  return applyEdits(text, edits);
}

suite('new note', () => {
  for (const template of templates) {
    test(`${template.name}: the sample is as written, and has nothing to mend`, () => {
      const text = templateSample(template.name);
      assert.equal(readFileSync(`samples/templates/${template.name}.tank.md`, 'utf8'), text, 'run npx tsx scripts/templates.ts');
      assert.deepEqual(loud(read(text)), []);
    });

    for (const language of languages) test(`${template.name}: from plan to post, ${language}`, async () => {
      const text = filled(newNote({ template: template.name }, { ...surroundings, language }), template.name);
      const logged = read(text);
      const done = applyEdits(text, fillInEdits(logged));
      const note = read(done);
      assert.deepEqual(loud(note), []);
      assert.ok(note.claims.length > 0 && note.claims.every((claim) => claim.state === 'holds'), 'every claim is filled in');
      const { html, problems } = await publishPost(note, { stem: template.name, toolVersion: 'test' });
      assert.deepEqual(problems, []);
      assert.doesNotMatch(html, /undefined|NaN|Infinity|\{\?/);
      for (const claim of note.claims) assert.ok(html.includes('evenwater-claim'), claim.computed ?? '');
    });
  }

  test('nothing answered gives a whole note', () => assert.deepEqual(loud(read(newNote({}, surroundings))), []));

  test('answers stand in the plan', () => {
    const note = read(newNote({
      template: 'overnight-oxygen', question: 'Do marbles: many or few? lower the #minimum', treatment: 'marbles', tanks: 'Left, right', measure: 'do, water temperature', place: 'Zwolle, 52.51, 6.09',
      start: '2026-06-01 21:00', lightOff: '23:00', every: '20 min', length: '12 h',
    }, surroundings));
    assert.deepEqual(loud(note), []);
    const plan = note.protocol!;
    assert.equal(plan.question?.value, 'Do marbles: many or few? lower the #minimum');
    assert.deepEqual(plan.tanks.map((tank) => tank.id), ['left', 'right']);
    assert.deepEqual(plan.tanks.map((tank) => tank.role?.value).sort(), ['control', 'treatment']);
    assert.equal(plan.tanks.find((tank) => tank.role?.value === 'treatment')?.plants?.value, 'marbles');
    assert.deepEqual(plan.measure.map((each) => each.id), ['DO', 'T']);
    assert.equal(plan.place.latitude?.value, 52.51);
    assert.equal(formatDate(plan.schedule!.start, plan.zone), '2026-06-01');
    assert.equal(plan.schedule!.end! - plan.schedule!.start, 12 * 3_600_000);
    assert.equal(plan.orderRule?.value, 'random');
    assert.equal(note.tables[0]!.rows.length, plan.schedule!.slots.length);
  });

  test('the draw follows the seed, and only the seed', () => {
    const roles = (seed: string): string => read(newNote({ tanks: 'a, b, c, d' }, { ...surroundings, seed })).protocol!.tanks.map((tank) => tank.role!.value[0]).join('');
    assert.equal(roles('1'), roles('1'));
    const drawn = new Set(Array.from({ length: 40 }, (_, index) => roles(String(index))));
    assert.equal(drawn.size, 6, 'all six ways to treat two of four tanks come up');
    for (const each of drawn) assert.equal(each.replaceAll('c', '').length, 2);
  });

  test('one tank is an observation without roles', () => {
    const note = read(newNote({ tanks: 'reef' }, surroundings));
    assert.deepEqual(loud(note), []);
    assert.equal(note.protocol!.tanks[0]!.role, null);
  });

  test('every measure of the library can be planned', () => {
    for (const { id } of libraryMeasures) assert.deepEqual(loud(read(newNote({ measure: id }, surroundings))), [], id);
  });

  test('whatever is answered, the note can be read', () => {
    const text = fc.option(fc.oneof(fc.string({ maxLength: 30 }), fc.constantFrom('none', '22:00', '7 d', '5 min', 'left, right', '2026-10-25', '52, 6', 'DO, pH')), { nil: undefined });
    fc.assert(fc.property(fc.record(Object.fromEntries(answerNames.map((name) => [name, text]))), (answers) => {
      const given = answers as NewNoteAnswers;
      const note = read(newNote(given, surroundings));
      const errors = note.problems.filter((each) => each.severity === 'error' && each.code !== 'duplicate-reading');
      assert.deepEqual(errors.map((each) => `${each.code} ${note.text.slice(each.range.start, each.range.end)}`), []);
    }), { numRuns: 60 });
  });

  test('an answer that cannot be read is named with an example', () => {
    for (const [name, answer] of [['start', 'tomorrow'], ['every', 'often'], ['length', '14'], ['lightOff', 'late'], ['tanks', 'a, a'], ['measure', 'DO, colour'], ['template', 'x'], ['place', 'A, 1, 2, 3']] as const) {
      const wrong = checkAnswer(name, answer);
      assert.ok(wrong, name);
      assert.match(editSentence(wrong), /^\S.*\.$/);
    }
    for (const name of answerNames) assert.equal(checkAnswer(name, ''), null);
  });
});

suite('new note: what the author writes over', () => {
  const left = (text: string): string[] => read(text).problems.filter((each) => each.code === 'template-text').map((each) => text.slice(each.range.start, each.range.end).replace(/\s+/g, ' '));

  test('every instruction is found at its place, also with the lines wrapped anew', () => {
    const text = newNote({ template: 'overnight-oxygen' }, surroundings);
    const wanted = ['Write here what you saw. A number that comes from the readings is written as a claim', 'Write here what follows from it for a keeper, and what does not.'];
    assert.deepEqual(left(text), wanted);
    assert.deepEqual(left(text.replace('here what you saw. A number that', 'here\nwhat you\nsaw.\nA number that').replace('for a keeper', 'for a\nkeeper')), wanted);
  });

  test('own words in their place leave none', () => {
    const text = newNote({ template: 'overnight-oxygen' }, surroundings);
    assert.deepEqual(left(text.replace(/Write here what you saw\.[^{]*?question mark\./, 'The mat lay still.').replace(/Write here what follows.*/, 'Air helps.')), []);
  });

  test('the blank template is found in title and plan', () => {
    const found = left(newNote({}, surroundings));
    for (const wanted of ['What do you want to know?', 'write here what you change', 'write here what the control has instead']) assert.ok(found.includes(wanted), wanted);
  });

  test('they are information until something is read; those of a sealed plan are warnings at once', () => {
    const severities = (text: string): string[] => [...new Set(read(text).problems.filter((each) => each.code === 'template-text').map((each) => each.severity))];
    const text = newNote({ template: 'overnight-oxygen' }, surroundings);
    assert.deepEqual(severities(text), ['information']);
    assert.deepEqual(severities(filled(text, 'overnight-oxygen')), ['warning']);
    const blank = newNote({}, surroundings);
    assert.deepEqual(severities(blank), ['information']);
    const sealed = sealPlan(read(blank), new Date('2026-05-02T12:00:00Z').getTime());
    assert.ok(sealed.ok);
    const [plan, prose] = ['write here what you change', 'Write here what you saw.'].map((words) => {
      const note = read(applyEdits(blank, sealed.edits));
      return note.problems.find((each) => each.code === 'template-text' && note.text.slice(each.range.start).startsWith(words))?.severity;
    });
    assert.deepEqual([plan, prose], ['warning', 'information']);
  });

  test('another treatment is asked about, in no words of the template', () => {
    for (const { name } of templates) {
      const plan = read(newNote({ template: name, treatment: 'a floating wad of moss' }, surroundings)).protocol!;
      assert.match(plan.question!.value, /^Does a floating wad of moss (?:change .+|make a difference)\?$/, name);
      assert.equal(plan.hypothesis, null);
      assert.equal(plan.tanks.find((tank) => tank.role?.value === 'treatment')?.label, 'treated tank');
    }
    const mat = templates[0]!;
    assert.equal(read(newNote({ template: mat.name, treatment: mat.treatment }, surroundings)).protocol!.question!.value, mat.question);
  });
});

suite('repeat', () => {
  const first = readFileSync('samples/overnight-oxygen.tank.md', 'utf8');

  test('the same plan with new dates, linked by its digest', () => {
    const original = read(first);
    const result = repeatNote(original, 'overnight-oxygen.tank.md', '2026-04-25');
    assert.ok(result.ok);
    const note = read(result.text);
    assert.deepEqual(loud(note), []);
    assert.deepEqual(repeatFacts(note.protocol!), { name: 'overnight-oxygen.tank.md', digest: protocolDigest(original.protocol!), changed: [] });
    assert.equal(note.protocol!.schedule!.start - original.protocol!.schedule!.start, 14 * 86_400_000);
    assert.deepEqual(note.protocol!.equalise.map((step) => step.done), [null, null, null]);
    assert.equal(note.tables[0]!.rows.length, original.protocol!.schedule!.slots.length);
    assert.ok(!result.text.includes('8.18'), 'no reading of the first run');
  });

  test('what the repeat changed is named', () => {
    const result = repeatNote(read(first), 'overnight-oxygen.tank.md', '2026-04-25');
    assert.ok(result.ok);
    const note = read(result.text.replace('water depth: 26 cm', 'water depth: 24 cm').replace('light off: 22:00', 'light off: 21:30'));
    assert.deepEqual(repeatFacts(note.protocol!)!.changed, ['tanks', 'schedule']);
  });

  test('over a change of clocks the clock times stay', () => {
    const result = repeatNote(read(first), 'x.tank.md', '2026-10-24');
    assert.ok(result.ok);
    const note = read(result.text);
    assert.deepEqual(repeatFacts(note.protocol!)!.changed, []);
    assert.ok(result.text.includes('light on: 2026-10-25 08:30'));
  });
});

suite('plan seal', () => {
  const plan = newNote({ template: 'overnight-oxygen' }, surroundings);

  test('a sealed plan stays sealed through layout, and names what changes', () => {
    const note = read(plan);
    const result = sealPlan(note, note.protocol!.schedule!.start - 3_600_000);
    assert.ok(result.ok);
    const sealed = applyEdits(plan, result.edits);
    assert.equal(planDeviations(read(sealed).protocol!), null);
    assert.equal(planDeviations(read(sealed.replace('water depth: 30 cm', 'water depth:   "30 cm"   # measured')).protocol!), null);
    assert.deepEqual(planDeviations(read(sealed.replace('every: [30 min', 'every: [20 min')).protocol!)?.parts, ['schedule']);
    assert.deepEqual(planDeviations(read(sealed.replace('mat.DO < 3.5 mg/L', 'mat.DO < 2.5 mg/L')).protocol!)?.parts, ['stop']);
    const again = sealPlan(read(sealed), 0);
    assert.ok(!again.ok && again.message.code === 'plan-already-sealed');
  });

  test('after the first reading there is no sealing', () => {
    const result = sealPlan(read(filled(plan, 'overnight-oxygen')), 0);
    assert.ok(!result.ok && result.message.code === 'plan-has-readings');
  });
});
