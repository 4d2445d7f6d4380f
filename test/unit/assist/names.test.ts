// Definition, references and rename of the names of a note.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { definitions, linkedPlaces, nameAt, prepareRename, references, rename } from '../../../src/assist/navigate.ts';
import { namePlaces } from '../../../src/assist/names.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { TextEdit } from '../../../src/problems/problem.ts';
import { noteAt, noteText, plan, readings, values } from './support.ts';

const prose = 'It lost {2.9 % = first-loss}; {it fell if fall(mat.DO, late) > 0 mg/L and fall(mats.DO, feeding..end) > 0 mg/L}.\n\n```figure\nshow: [mat.DO, open]\nfrom: feeding\n```\n';
const whole = noteText({ prose });
const at = (text: string, part: string, inside = 0) => { const start = text.indexOf(part); ok(start >= 0, part); return start + inside; };
const lineOf = (text: string, offset: number) => text.slice(text.lastIndexOf('\n', offset - 1) + 1, text.indexOf('\n', offset));
const apply = (text: string, edits: readonly TextEdit[]) => [...edits].sort((a, b) => b.range.start - a.range.start)
  .reduce((before, edit) => before.slice(0, edit.range.start) + edit.newText + before.slice(edit.range.end), text);

suite('assist: names', () => {
  const note = readNote(whole);

  test('the sample is sound', () => { deepEqual(note.problems.filter((each) => each.severity === 'error').map((each) => each.code), []); });

  test('every place has the name at exactly its range', () => {
    for (const place of namePlaces(note)) equal(whole.slice(place.range.start, place.range.end), place.name);
  });

  test('a column, a list, a claim and a figure lead to the declaration', () => {
    const tank = at(whole, '  mat:\n', 2);
    for (const use of [at(whole, 'time   mat.DO', 8), at(whole, 'tanks: [mat', 8), at(whole, 'fall(mat.DO, late', 6), at(whole, 'show: [mat', 8), at(whole, 'like: mat', 6)]) {
      deepEqual(definitions(note, use)!.targets, [{ start: tank, end: tank + 3 }], lineOf(whole, use));
    }
    equal(definitions(note, at(whole, 'fall(mat.DO, late', 10))!.targets[0]!.start, at(whole, '  DO: {what', 2));
    equal(definitions(note, at(whole, '= first-loss}', 4))!.targets[0]!.start, at(whole, 'first-loss = percent'));
    equal(definitions(note, at(whole, 'from: feeding', 7))!.targets[0]!.start, at(whole, 'id: feeding', 4));
    equal(definitions(note, at(whole, 'mat.DO, late', 9))!.targets[0]!.start, at(whole, '{late: light', 1));
    equal(definitions(note, at(whole, 'fall(mats.DO', 6))!.targets[0]!.start, at(whole, 'group: mats', 7));
  });

  test('a word of the language leads to the key it comes from', () => {
    equal(definitions(note, at(whole, 'light-off..22:30', 3))!.targets[0]!.start, at(whole, '  light off:', 2));
    equal(definitions(note, at(whole, 'feeding..end', 10))!.targets[0]!.start, at(whole, '  end: 2026', 2));
    equal(definitions(note, at(whole, 'A night')), null);
  });

  test('references over plan, heads, values, claims and figures', () => {
    const found = references(note, at(whole, '  open:\n', 3)).map((each) => lineOf(whole, each.range.start).trim());
    deepEqual(found, [
      'open:', '- {at: 21:00, what: fed, tanks: [mat, open], id: feeding}', 'accept: abs(mat.T - open.T) <= 0.5 degC',
      'time   mat.DO  mat.T  open.DO  open.T  room.P   mat.B', 'time   mat.DO  mat.T  open.DO  open.T  room.P   mat.B', 'show: [mat.DO, open]',
    ]);
    deepEqual(references(note, at(whole, '  DO: {what', 2)).length, 9);
  });

  test('at a seam the name that starts there', () => {
    equal(nameAt(namePlaces(note), at(whole, 'fall(mat.DO, late', 9))!.name, 'DO');
  });

  test('a renamed note reads as before', () => {
    for (const [part, inside, name] of [['  mat:\n', 2, 'lettuce'], ['  DO: {what', 2, 'oxygen'], ['id: feeding', 5, 'meal'], ['{late: light', 2, 'second-half'], ['first-loss = ', 3, 'früher-verlust'], ['group: mats', 8, 'covered']] as const) {
      const answer = rename(note, at(whole, part, inside), name);
      ok('edits' in answer && answer.edits.length >= 2, name);
      const after = readNote(apply(whole, answer.edits));
      deepEqual(after.problems.map((each) => each.code), note.problems.map((each) => each.code), name);
      deepEqual(after.claims.map((claim) => claim.state), note.claims.map((claim) => claim.state), name);
      deepEqual(after.dataset.series.size, note.dataset.series.size, name);
    }
  });

  test('only whole names: mat is not renamed in mats', () => {
    const answer = rename(note, at(whole, '  mat:\n', 3), 'lettuce');
    ok('edits' in answer);
    const after = apply(whole, answer.edits);
    ok(after.includes('group: mats') && after.includes('fall(mats.DO') && after.includes('floating-mat tank'));
  });

  test('in a quote the places are exact', () => {
    const quoted = readNote(whole.split('\n').map((line) => `> ${line}`).join('\n'));
    const answer = rename(quoted, at(quoted.text, '>   mat:\n', 5), 'lettuce');
    ok('edits' in answer);
    deepEqual(readNote(apply(quoted.text, answer.edits)).problems.map((each) => each.code), quoted.problems.map((each) => each.code));
  });

  test('refusals say why', () => {
    const why = (offset: number, name?: string) => { const answer = name === undefined ? prepareRename(note, offset) : rename(note, offset, name); return 'refusal' in answer ? answer.refusal : null; };
    equal(why(at(whole, 'A night', 3)), 'no-name');
    equal(why(at(whole, 'light-off..22:30', 3)), 'built-in');
    equal(why(at(whole, 'percent-fall(', 3)), 'function');
    const tank = at(whole, '  mat:\n', 3);
    equal(why(tank), null);
    equal(why(tank, 'dark'), 'reserved');
    equal(why(tank, 'mean'), 'reserved');
    equal(why(tank, 'open'), 'taken');
    equal(why(tank, 'feeding'), 'taken');
    equal(why(tank, '2nd tank'), 'not-a-name');
    const sealed = noteAt(noteText({ plan: plan.replace('  mat:', '  m‸at:'), readings: readings.replace('20:00', '# sealed 2026-03-15T10:20+01:00 sha256:00\n20:00'), values }));
    equal((prepareRename(sealed.note, sealed.offset) as { refusal?: string }).refusal, 'sealed-readings');
  });

  test('a named result may be edited as one with its uses, nothing else may', () => {
    const linked = (offset: number) => linkedPlaces(note, offset).map((range) => whole.slice(range.start, range.end));
    deepEqual(linked(at(whole, 'first-loss = ', 3)), ['first-loss', 'first-loss']);
    deepEqual(linked(at(whole, '= first-loss}', 4)), ['first-loss', 'first-loss']);
    for (const [part, inside] of [['  mat:\n', 3], ['light-off..22:30', 3], ['percent-fall(', 3], ['A night', 3]] as const) deepEqual(linked(at(whole, part, inside)), []);
  });
});

suite('assist: names in figures and summaries', () => {
  const drawn = noteText({ prose: '```figure\nshow: [mat.DO - open.DO, "saturation(mat.DO)"]\nto: feeding + 1 h\n```\n\n```summary\nof: [DO, mat.T]\nrows: before-after feeding\nshow: [mean, max]\n```\n' });
  const note = readNote(drawn);
  const renamed = (part: string, inside: number, name: string): string => {
    const answer = rename(note, at(drawn, part, inside), name);
    ok('edits' in answer, JSON.stringify(answer));
    return apply(drawn, answer.edits);
  };

  test('a tank is renamed inside the formulas of both', () => {
    const text = renamed('  mat:\n', 2, 'lettuce');
    ok(text.includes('show: [lettuce.DO - open.DO, "saturation(lettuce.DO)"]'), text.slice(text.indexOf('```figure')));
    ok(text.includes('of: [DO, lettuce.T]'));
  });

  test('a quantity and an event too', () => {
    ok(renamed('  DO: {what', 2, 'oxygen').includes('of: [oxygen, mat.T]'));
    ok(renamed('id: feeding', 4, 'meal').includes('rows: before-after meal'));
    ok(renamed('id: feeding', 4, 'meal').includes('to: meal + 1 h'));
  });

  test('every place has the name at exactly its range, functions of a summary among them', () => {
    const places = namePlaces(note);
    for (const place of places) equal(drawn.slice(place.range.start, place.range.end), place.name);
    ok(places.some((place) => place.kind === 'function' && place.name === 'mean' && place.range.start > drawn.indexOf('show: [mean')));
  });
});
