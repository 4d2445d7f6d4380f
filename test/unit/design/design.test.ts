// The design check: every problem has a note that raises it and a near one that does not; its mends mend it; the author may let
// it stand; and the samples of the house deserve no warning.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import path from 'node:path';
import { applyEdits } from '../../../src/edits/edit.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { designCodes } from '../../../src/problems/codes/design.ts';
import { problemCodes, type ProblemCode } from '../../../src/problems/codes.ts';
import type { Problem } from '../../../src/problems/problem.ts';
import { fixTitle, problemSentence } from '../../../src/words/words.ts';

const folder = fileURLToPath(new URL('../../fixtures/design/', import.meta.url));
const read = (text: string): Note => readNote(text, new Map(), undefined, { fileIsNote: true });
const fixture = (name: string): string => readFileSync(path.join(folder, `${name}.tank.md`), 'utf8');
const raised = (note: Note, code: string): Problem[] => note.problems.filter((each) => each.code === code);

suite('design check', () => {
  test('every code has a note that raises it and one that does not', () => {
    const wanted = Object.keys(designCodes).flatMap((code) => [`${code}.fine.tank.md`, `${code}.tank.md`]).sort();
    assert.deepEqual(readdirSync(folder).sort(), wanted);
  });

  for (const code of Object.keys(designCodes) as (keyof typeof designCodes)[]) {
    test(`${code}: raised`, () => {
      const text = fixture(code);
      const note = read(text);
      const [found, ...more] = raised(note, code);
      assert.ok(found, note.problems.map((each) => each.code).join(', '));
      assert.deepEqual(note.problems.filter((each) => each.severity === 'error').map((each) => problemSentence(each)), []);
      assert.match(problemSentence(found), /^\S.*[.]$/);
      assert.ok(found.range.end > found.range.start);
      // What only the readings tell stands at the reading.
      if (code !== 'common-step') assert.ok(found.range.start >= note.protocol!.range.start && found.range.end <= note.protocol!.range.end, 'it stands in the plan');

      for (const mend of found.fixes) {
        const mended = read(applyEdits(text, mend.edits));
        const name = `${mend.title}: ${fixTitle(mend)}`;
        assert.deepEqual(mended.problems.filter((each) => each.severity === 'error').map((each) => problemSentence(each)), [], name);
        if (mend.title === 'accept-problem') {
          assert.equal(raised(mended, code).length, 0, name);
          assert.ok(mended.accepted.some((each) => each.code === code), name);
        } else assert.equal(raised(mended, code).length, more.length, name);
      }
    });

    test(`${code}: not raised`, () => {
      const note = read(fixture(`${code}.fine`));
      assert.deepEqual(raised(note, code), []);
      const loud = note.problems.filter((each) => each.severity === 'error' || each.severity === 'warning');
      assert.deepEqual(loud.map((each) => problemSentence(each)), []);
    });
  }

  test('what a mend writes into the plan of a German note is German', () => {
    const german = (code: string): string => fixture(code).replace(/^```protocol\n/mu, '```protocol\nlanguage: de\nlimits:\n  - {for: snails, quantity: DO, at least: 4 mg/L, source: invented}\n').replace(/stop if:\n.*\n.*\n/u, '');
    const mended = (code: string, title: string): string => {
      const mend = raised(read(german(code)), code)[0]!.fixes.find((each) => each.title === title)!;
      const text = applyEdits(german(code), mend.edits);
      assert.deepEqual(read(text).problems.filter((each) => each.severity === 'error').map((each) => problemSentence(each)), []);
      return text;
    };
    assert.match(mended('tanks-differ-in-readings', 'equalise-quantity'), /step: Becken angleichen \(Wassertemperatur\)/);
    assert.match(mended('animals-without-stop-rule', 'add-stop-rule'), /do: Versuch beenden und das Becken/);
  });

  test('a warning is never an error, and says why in the trade’s words', () => {
    for (const code of Object.keys(designCodes) as ProblemCode[]) {
      assert.notEqual(problemCodes[code].severity, 'error', code);
      assert.ok(problemCodes[code].why.length > 60, code);
    }
  });

  test('the samples have no warning', () => {
    for (const name of ['overnight-oxygen', 'heater-failure', 'naechtlicher-ausstroemer']) {
      const note = read(readFileSync(`samples/${name}.tank.md`, 'utf8'));
      assert.deepEqual(note.problems.filter((each) => each.severity === 'error' || each.severity === 'warning').map((each) => problemSentence(each)), []);
    }
  });

  test('a plan changed after its seal names the parts that changed', () => {
    const [found] = raised(read(fixture('plan-changed-after-seal')), 'plan-changed-after-seal');
    assert.deepEqual(found!.args, { parts: ['tanks', 'schedule'], time: '2026-03-14 19:00' });
  });

  test('a repeat names the parts that it changed, dates aside', () => {
    const [found] = raised(read(fixture('repeat-changed')), 'repeat-changed');
    assert.deepEqual(found!.args, { name: 'lettuce-1.tank.md', parts: ['schedule'] });
  });
});
