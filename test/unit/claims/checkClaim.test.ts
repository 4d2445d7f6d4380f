// Claims against a small note: states, marks, problems, mends, fill-in. Expected numbers are worked out by hand from the table.
import assert from 'node:assert/strict';
import { fillInEdits } from '../../../src/claims/fillIn.ts';
import { findFixes } from '../../../src/experiment/findNumbers.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import { claimsCodes } from '../../../src/problems/codes/claims.ts';
import { exampleNote } from '../../../src/problems/examples.ts';
import type { Problem, TextEdit } from '../../../src/problems/problem.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';

const read = (prose: string, more: { values?: string; addToProtocol?: string; protocol?: string; readings?: string } = {}): Note => readNote(exampleNote({ prose, ...more }).text);
const claimCodes = new Set<string>(Object.keys(claimsCodes));
const own = (note: Note): Problem[] => note.problems.filter((each) => claimCodes.has(each.code));
const codes = (prose: string, more = {}): string[] => own(read(prose, more)).map((each) => each.code);
const at = (note: Note, problem: Problem): string => note.text.slice(problem.range.start, problem.range.end);

function apply(text: string, edits: readonly TextEdit[]): string {
  return [...edits].sort((a, b) => b.range.start - a.range.start).reduce((result, edit) => result.slice(0, edit.range.start) + edit.newText + result.slice(edit.range.end), text);
}
const prose = (text: string): string => text.slice(text.lastIndexOf('```') + 3).trim();
/** The prose after the preferred mend of the first problem. */
function mended(words: string, more = {}): string {
  const note = read(words, more);
  const [first] = own(note);
  const chosen = first?.fixes.find((each) => each.preferred) ?? assert.fail(`no preferred fix for ${words}`);
  return prose(apply(note.text, chosen.edits));
}

suite('claims: checking against a note', () => {
  const holding: readonly string[] = [
    '{8.21 mg/L = at(mat.DO, 20:00)}',
    '{8.2 mg/L = at(mat.DO, 20:00)}',
    '{about 8 mg/L = at(mat.DO, 20:00)}',
    '{2.9 % = first-loss}',
    '{fell 0.24 mg/L = fall(mat.DO, light-off..22:30)}',
    '{changed by −0.24 mg/L = change(mat.DO, light-off..22:30)}',
    '{24.9 °C (76.8 °F) = at(mat.T, 20:00)}',
    '{24.9 degrees Celsius = at(mat.T, 20:00)}',
    '{1009.4 hectopascal = at(room.P, 20:00)}',
    '{at 00:30 = time-of-min(mat.DO)}',
    '{at 12:30 am = time-of-min(mat.DO)}',
    '{tank mat had ten readings = count(mat.DO)}',
    '{10 readings = count(mat.DO)}',
    '{42 litres = volume(mat)}',
    '{0.3 °C = fall(mat.T)}',
    '{half an hour = duration(22:00..22:30)}',
    '{30 min = duration(22:00..22:30)}',
    '{0.16 to 0.24 mg/L = -1 * steps(mat.DO, 22:00..00:30, every 30 min)}',
    '{4 h 30 min = duration(20:00..00:30)}',
    '{from 8.21 mg/L = at(mat.DO, 20:00)}',
  ];
  for (const words of holding) {
    test(words, () => {
      const note = read(words);
      const [claim] = note.claims;
      assert.equal(claim?.state, 'holds', note.problems.map((each) => problemSentence(each)).join('\n'));
      assert.equal(claim.mark, 'computed');
      assert.deepEqual(own(note).filter((each) => each.severity === 'error'), []);
    });
  }

  test('a mistyped number is an error at the number, with the new value in the same style and the readings behind it', () => {
    const note = read('By 22:30 it had fallen to {8.20 mg/L = at(mat.DO, 22:30)}.');
    const found = own(note).find((each) => each.code === 'claim-mismatch') ?? assert.fail();
    assert.equal(found.severity, 'error');
    assert.equal(at(note, found), '8.20 mg/L');
    assert.equal(note.claims[0]?.state, 'mismatch');
    assert.equal(note.claims[0]?.mark, 'unchecked');
    assert.equal(problemSentence(found), 'The text says 8.20 mg/L, but `at(mat.DO, 22:30)` gives 8.02 mg/L.');
    assert.deepEqual(found.related.map((each) => note.text.slice(each.range.start, each.range.end)), ['8.02']);
    assert.equal(fixTitle(found.fixes[0]!), 'Replace with 8.02 mg/L');
    assert.equal(prose(apply(note.text, found.fixes[0]!.edits)), 'By 22:30 it had fallen to {8.02 mg/L = at(mat.DO, 22:30)}.');
  });

  test('mends keep decimals, unit words and marks', () => {
    assert.equal(mended('{**8.3** milligrams per litre = at(mat.DO, 20:00)}'), '{**8.2** milligrams per litre = at(mat.DO, 20:00)}');
    assert.equal(mended('{24.9 °C (77.7 °F) = at(mat.T, 20:00)}'), '{24.9 °C (76.8 °F) = at(mat.T, 20:00)}');
    assert.equal(mended('{nine readings = count(mat.DO)}'), '{ten readings = count(mat.DO)}');
    assert.equal(mended('{at 11:30 pm = time-of-min(mat.DO)}'), '{at 12:30 am = time-of-min(mat.DO)}');
    assert.equal(mended('{5.0 % = percent-fall(mat.DO, light-off..22:30)}'), '{2.9 % = percent-fall(mat.DO, light-off..22:30)}');
  });

  test('fell with a negative change names fall', () => {
    const note = read('It {fell 0.24 mg/L = change(mat.DO, light-off..22:30)}.');
    const found = own(note).find((each) => each.code === 'claim-mismatch') ?? assert.fail();
    assert.match(problemSentence(found), /fall/);
    assert.equal(mended('It {fell 0.24 mg/L = change(mat.DO, light-off..22:30)}.'), 'It {fell 0.24 mg/L = fall(mat.DO, light-off..22:30)}.');
    assert.equal(mended('{0.24 mg/L below = at(mat.DO, 22:30) - at(open.DO, 22:30)}'), '{0.24 mg/L below = -(at(mat.DO, 22:30) - at(open.DO, 22:30))}');
  });

  test('an unfilled claim is a warning that carries the value; filling in writes all of them', () => {
    const note = read('{? = at(mat.DO, 20:00)}, {? = first-loss}, {? = time-of-min(mat.DO)}, {? = volume(mat)}, {? = count(mat.DO)}, {? = no-such-thing}');
    assert.deepEqual(note.claims.map((each) => each.computed), ['8.21 mg/L', '2.91 %', '00:30', '42 L', '10', null]);
    assert.deepEqual(own(note).map((each) => [each.code, each.severity]), Array.from({ length: 5 }, () => ['claim-unfilled', 'warning']));
    const filled = apply(note.text, fillInEdits(note));
    assert.equal(prose(filled), '{8.21 mg/L = at(mat.DO, 20:00)}, {2.91 % = first-loss}, {00:30 = time-of-min(mat.DO)}, {42 L = volume(mat)}, {10 = count(mat.DO)}, {? = no-such-thing}');
    assert.deepEqual(readNote(filled).claims.slice(0, 5).map((each) => each.state), Array.from({ length: 5 }, () => 'holds'));
  });

  test('whatever a formula gives, its own text holds again', () => {
    const formulas = ['min(mat.DO)', 'mean(mat.DO)', 'sd(mat.DO)', 'rate(mat.DO, light-off..00:30)', 'percent-fall(mat.DO)', 'at(saturation(mat.DO), 22:00)', 'fall(mat.T)',
      'mean(mat.T)', 'mean(mat.T) in degF', 'duration(dark)', 'sunrise', 'light-off', 'hours-below(mat.DO, 8 mg/L)', 'steps(mat.DO, light-off..00:30, every 30 min)',
      'percent-steps(mat.DO, light-off..00:30, every 30 min)', 'time-of-steepest-fall(mat.DO)', 'change(mat.DO)', 'min(mat.DO) / min(open.DO)', 'volume(mat)', 'length(mat)'];
    const note = read(formulas.map((formula) => `{? = ${formula}}`).join('\n\n'));
    const filled = readNote(apply(note.text, fillInEdits(note)));
    assert.deepEqual(filled.claims.filter((each) => each.state !== 'holds').map((each) => `${each.syntax.words.text} = ${each.syntax.formula.text}`), []);
  });

  test('a statement stands while its condition is true', () => {
    const note = read('{The mat tank fell lower if min(mat.DO) < min(open.DO)}.');
    assert.equal(note.claims[0]?.state, 'holds');
    assert.equal(note.claims[0]?.mark, 'condition');
    assert.equal(note.claims[0]?.machine, 'true');
    const wrong = read('{The mat tank stayed higher if min(mat.DO) > min(open.DO)}.');
    assert.equal(wrong.claims[0]?.state, 'false');
    const found = own(wrong)[0] ?? assert.fail();
    assert.equal(found.code, 'statement-false');
    assert.equal(found.severity, 'error');
    assert.match(problemSentence(found), /7\.31 mg\/L > 8\.22 mg\/L does not hold/);
  });

  test('stated claims carry their source; a stated number of a measured quantity is a warning', () => {
    assert.deepEqual(codes('{4.0 cd = stated "a book"}'), []);
    assert.equal(read('{quiet = stated "a book"}').claims[0]?.mark, 'stated');
    assert.deepEqual(codes('{8.2 mg/L = stated "memory"}'), ['stated-measured']);
  });

  test('the wrong form is named', () => {
    assert.deepEqual(codes('{lower = last(mat.DO) < last(open.DO)}'), ['claim-needs-if']);
    assert.equal(mended('{lower = last(mat.DO) < last(open.DO)}'), '{lower if last(mat.DO) < last(open.DO)}');
    assert.equal(mended('{7.31 mg/L if min(mat.DO)}'), '{7.31 mg/L = min(mat.DO)}');
  });

  test('numbers that fit nothing, in another unit, in per cent for points, or with the other decimal mark', () => {
    assert.deepEqual(codes('{the lowest = min(mat.DO)}'), ['claim-no-number']);
    assert.deepEqual(codes('{7.31 hPa = min(mat.DO)}'), ['claim-unit-differs']);
    assert.ok(codes('{11.5 % = percent-fall(mat.DO, dark) - percent-fall(open.DO, dark)}').includes('claim-percent-points'));
    assert.equal(mended('{7,31 mg/L = min(mat.DO)}'), '{7.31 mg/L = min(mat.DO)}');
    const points = '= percent-fall(mat.DO) - percent-fall(open.DO)}';
    assert.equal(mended(`{0.5 % ${points}`), `{0.5 percentage points ${points}`);
    assert.equal(mended(`{0,5 % ${points}`, { addToProtocol: 'language: de' }), `{0,5 Prozentpunkte ${points}`);
  });

  test('the decimal mark follows the language of the note', () => {
    const more = { addToProtocol: 'language: nl\n' };
    assert.equal(read('{7,31 mg/L = min(mat.DO)}', more).claims[0]?.state, 'holds');
    assert.equal(read('{? = min(mat.DO)}', more).claims[0]?.computed, '7,31 mg/L');
    assert.equal(mended('{7,41 mg/L = min(mat.DO)}', more), '{7,31 mg/L = min(mat.DO)}');
  });

  test('± is checked against the half-width of the instruments', () => {
    // 0.1 mg/L limit: u = 0.1/√3; 0.01 mg/L step: u = 0.01/√12; 2·√(0.05774² + 0.00289²) = 0.116
    assert.equal(read('{8.21 ± 0.12 mg/L = at(mat.DO, 20:00)}').claims[0]?.state, 'holds');
    assert.equal(read('{8.21 ± 0.13 mg/L = at(mat.DO, 20:00)}').claims[0]?.state, 'mismatch');
  });

  test('a change below what the instruments resolve is a warning, and so is a comparison that they cannot tell apart', () => {
    // Two readings of one probe: its accuracy cancels, its step of 0.01 mg/L leaves 2·√2·0.01/√12 = 0.0082 mg/L.
    assert.deepEqual(codes('{0.00 mg/L = fall(open.DO, 20:30..21:00)}'), ['below-resolution']);
    assert.deepEqual(codes('{0.01 mg/L = fall(open.DO, 23:30..00:00)}'), []);
    assert.deepEqual(codes('{no lower if at(open.DO, 21:00) >= at(open.DO, 20:30)}'), ['below-resolution']);
    assert.deepEqual(codes('{0.24 mg/L = fall(mat.DO, 22:00..22:30)}'), []);
  });

  test('the warning says what the interval comes from: the instruments, or the scatter of a contrast, a slope or a fitted night', () => {
    const said = (formula: string, language: 'en' | 'de'): string => {
      const warning = own(read(`{? = ${formula}}`, { addToProtocol: `language: ${language}\n` })).find((each) => each.code === 'below-resolution');
      return problemSentence(warning ?? assert.fail(`no warning for ${formula}`), language);
    };
    const cases: readonly (readonly [string, RegExp, RegExp])[] = [
      ['fall(open.DO, 20:30..21:00)', /the ±0\.0082 mg\/L that the instruments can resolve here;/, /unter den ±0,0082 mg\/L, die die Messgeräte hier auflösen;/],
      ['contrast(T, dark)', /the ±0\.065 °C that the scatter leaves open \(95 %\);/, /unter den ±0,065 °C, die die Streuung offenlässt \(95 %\);/],
      ['slope(mat.DO, baseline)', /the ±0\.027 mg\/L\/h that the scatter leaves open/, /die die Streuung offenlässt/],
      ['contrast(T, dark) - fall(open.T, 22:00..22:30)', /that scatter and instruments leave open/, /die Streuung und Messgeräte zusammen offenlassen/],
    ];
    for (const [formula, english, german] of cases) {
      assert.match(said(formula, 'en'), english);
      assert.match(said(formula, 'de'), german);
    }
    assert.ok(codes('{higher if respiration(mat.DO, dark) > 0.45 mg/L/h}').includes('below-resolution'));
  });

  test('compared changes over different readings, and events in one tank only', () => {
    assert.ok(codes('{faster if fall(mat.DO, 22:00..22:30) > fall(open.DO, 20:00..22:30)}').includes('windows-differ'));
    assert.ok(!codes('{faster if fall(mat.DO, 22:00..22:30) > fall(open.DO, 22:00..22:30)}').includes('windows-differ'));
    assert.ok(!codes('{slower later if fall(mat.DO, 22:00..22:30) > fall(mat.DO, 23:00..23:30)}').includes('windows-differ'));
    const fed = { addToProtocol: 'events:\n  - {at: 2026-03-14 23:00, what: fed, tanks: [mat]}\n' };
    assert.ok(codes('{0.95 mg/L = fall(mat.DO, 22:00..00:30)}', fed).includes('event-in-window'));
    assert.ok(!codes('{0.24 mg/L = fall(mat.DO, 22:00..22:30)}', fed).includes('event-in-window'));
    const both = { addToProtocol: 'events:\n  - {at: 2026-03-14 23:00, what: fed, tanks: [mat, open]}\n' };
    assert.ok(!codes('{0.95 mg/L = fall(mat.DO, 22:00..00:30)}', both).includes('event-in-window'));
  });

  test('causal words in a sentence with a claim are named; the same words elsewhere are not', () => {
    const note = read('The mat tank fell {0.24 mg/L = fall(mat.DO, 22:00..22:30)} because of its plants. It was late because we talked.');
    const found = own(note).filter((each) => each.code === 'causal-wording');
    assert.deepEqual(found.map((each) => at(note, each)), ['because of']);
    assert.deepEqual(codes('It fell {0.24 mg/L = fall(mat.DO, 22:00..22:30)}, which may be due to the plants.'), []);
    assert.deepEqual(codes('It fell {0.24 mg/L = fall(mat.DO, 22:00..22:30)}, so plants breathe.'), ['causal-wording']);
    assert.deepEqual(codes('It fell {0.24 mg/L = fall(mat.DO, 22:00..22:30)} so far.'), []);
  });

  test('loose numbers are hints with the formula that gives them', () => {
    const note = read('The mat tank started at 8.21 mg/L and lost 2.9 % by 22:30.');
    const found = own(note);
    assert.deepEqual(found.map((each) => [each.code, each.severity, at(note, each)]), [
      ['loose-number', 'hint', '8.21 mg/L'], ['loose-number', 'hint', '2.9 %'], ['loose-number', 'hint', '22:30'],
    ]);
    assert.match(apply(note.text, findFixes(found[1]!, note)[0]!.edits), /\{2\.9 % = first-loss\}/);
    assert.match(apply(note.text, findFixes(found[0]!, note)[0]!.edits), /\{8\.21 mg\/L = (?:at\(mat\.DO, (?:20:00|start)\)|first\(mat\.DO\))\}/);
    assert.deepEqual(codes('Two tanks stood in room 12 since 2024; half an hour passed; see figure 3 and [1].'), []);
  });

  for (const code of Object.keys(claimsCodes) as ProblemCode[]) {
    test(`the example of ${code} raises it`, () => {
      const { text, files } = exampleNote(problemCodes[code].example);
      const note = readNote(text, files);
      const found = note.problems.find((each) => each.code === code);
      assert.ok(found, `raised: ${note.problems.map((each) => each.code).join(', ')}`);
      assert.equal(found.fixes.length > 0 || findFixes(found, note).length > 0, problemCodes[code].fixable);
      assert.ok(!/undefined|NaN|\[object/.test(problemSentence(found)), problemSentence(found));
      for (const each of found.fixes) assert.ok(!/undefined|NaN/.test(fixTitle(each)) && fixTitle(each) !== each.title, fixTitle(each));
    });
  }
});

suite('claims: hard cases', () => {
  const only = (words: string): { state: string | undefined; codes: string[] } => {
    const note = read(words);
    return { state: note.claims[0]?.state, codes: own(note).map((each) => each.code) };
  };
  test('steps may be shown per hour', () => {
    // 8.26 → 7.83 → 7.47 mg/L: 0.43 and 0.36 mg/L an hour, 5.21 and 4.60 %
    assert.deepEqual(only('{4.6 to 5.2 %/h = -percent-steps(mat.DO, 22:00..00:00, every 1 h)}'), { state: 'holds', codes: [] });
    assert.deepEqual(only('{0.36 to 0.43 mg/L per hour = -steps(mat.DO, 22:00..00:00, every 1 h)}'), { state: 'holds', codes: [] });
    assert.equal(only('{4.6 to 5.3 %/h = -percent-steps(mat.DO, 22:00..00:00, every 1 h)}').state, 'mismatch');
  });
  test('an unknown unit is not taken for no unit', () => {
    assert.deepEqual(only('{42 gallons = volume(mat)}'), { state: 'mismatch', codes: ['claim-no-number'] });
    assert.deepEqual(only('{24.9 degrees = at(mat.T, 20:00)}'), { state: 'mismatch', codes: ['claim-no-number'] });
  });
  test('a number inside the words that nothing checks is a hint', () => {
    assert.deepEqual(only('{fell 0.24 mg/L at 24.8 °C = fall(mat.DO, 22:00..22:30)}').codes, ['loose-number']);
    assert.deepEqual(only('{it fell below 9 mg/L if min(mat.DO) < 8 mg/L}').codes, ['loose-number']);
    assert.deepEqual(only('{it fell below 8 mg/L if min(mat.DO) < 8 mg/L}').codes, []);
  });
  test('windows, instants with dates, pressures and lengths in other units', () => {
    for (const words of ['{22:00–22:30 = time-of-steepest-fall(mat.DO)}', '{on 14 March at 22:00 = light-off}', '{29.81 inches of mercury = at(room.P, 20:00)}',
      '{19.7 inches = length(mat)}', '{0.2 °F = fall(mat.T, 20:00..21:30)}', '{an hour and a half = duration(22:00..23:30)}', '{11.8 pp = at(saturation(mat.DO), 22:00) - at(saturation(mat.DO), 00:30)}']) {
      assert.equal(only(words).state, 'holds', words);
    }
  });
  test('a claim in a quoted list over two lines is mended in place', () => {
    const note = read('> - It fell to {8.20\n>   mg/L = at(mat.DO, 22:30)}.');
    const found = own(note)[0] ?? assert.fail();
    assert.equal(prose(apply(note.text, found.fixes[0]!.edits)), '> - It fell to {8.02\n>   mg/L = at(mat.DO, 22:30)}.');
  });
  test('a change of the readings shows in the claim', () => {
    const { text } = exampleNote({ prose: '{8.21 mg/L = at(mat.DO, 20:00)}' });
    assert.equal(readNote(text).claims[0]?.state, 'holds');
    assert.equal(readNote(text.replace('20:00    8.21', '20:00    8.31')).claims[0]?.state, 'mismatch');
  });
});
