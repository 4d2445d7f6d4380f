// A rename goes on into the repeats of a run, and the link to the first plan stays true.
import { deepEqual, equal, match, ok } from 'node:assert/strict';
import { nameAt, rename } from '../../../src/assist/navigate.ts';
import { namePlaces } from '../../../src/assist/names.ts';
import { mayRepeat, renameInRepeat } from '../../../src/assist/renameRepeats.ts';
import { applyEdits } from '../../../src/edits/edit.ts';
import { repeatNote } from '../../../src/edits/repeatNote.ts';
import { sealPlan } from '../../../src/edits/sealPlan.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { noteText } from './support.ts';

const prose = 'It lost {2.9 % = first-loss}.\n';
const first = readNote(noteText({ prose }));
const repeatText = ((): string => {
  const made = repeatNote(first, 'first.tank.md', '2026-05-02');
  ok(made.ok);
  return made.text;
})();

/** Renames what stands at `words` in the first note and follows into the repeat. */
function follow(words: string, newName: string, repeat: Note = readNote(repeatText)): { first: Note; repeat: string } {
  const offset = first.text.indexOf(words) + words.length;
  const found = rename(first, offset, newName);
  ok('edits' in found);
  const after = readNote(applyEdits(first.text, found.edits));
  const place = nameAt(namePlaces(first), offset)!;
  return { first: after, repeat: applyEdits(repeat.text, renameInRepeat(repeat, first, after, place, newName)) };
}

const codes = (text: string): string[] => readNote(text).problems.map((each) => each.code);

suite('assist: rename in repeats', () => {
  test('a repeat without changes says so before and after', () => {
    ok(!codes(repeatText).includes('repeat-changed'));
    for (const [words, name] of [['  mat', 'lid'], ['  DO', 'O2'], ['id: feeding', 'meal'], ['{late', 'late-night']] as const) {
      const { repeat } = follow(words, name);
      ok(!codes(repeat).includes('repeat-changed'), `${words} to ${name}: ${codes(repeat).join(' ')}`);
      ok(repeat !== repeatText, words);
    }
  });

  test('tank and link are renewed together', () => {
    const { first: after, repeat } = follow('  mat', 'lid');
    match(repeat, /\n {2}lid:\n/);
    ok(repeat.includes('lid.DO') && !/\bmat\.DO\b/.test(repeat));
    // The same link as a repeat made anew would have.
    const anew = repeatNote(after, 'first.tank.md', '2026-05-02');
    ok(anew.ok);
    equal(/^repeats: .*$/m.exec(repeat)![0], /^repeats: .*$/m.exec(anew.text)![0]);
  });

  test('a named result follows and leaves the link alone', () => {
    const { repeat } = follow('\nfirst-loss', 'early-loss');
    match(repeat, /\nearly-loss = /);
    equal(/^repeats: .*$/m.exec(repeat)![0], /^repeats: .*$/m.exec(repeatText)![0]);
  });

  test('a repeat of another state of the plan, a sealed one, one that has the name already, and a stranger stay as they are', () => {
    const other = repeatText.replace(/(sha256:)[0-9a-f]/, (whole, start: string) => `${start}${whole.endsWith('0') ? '1' : '0'}`);
    const taken = repeatText.replace('  open:', '  lid:').replaceAll('open.', 'lid.').replaceAll('[mat, open]', '[mat, lid]');
    const stranger = noteText({ prose });
    const sealed = sealPlan(readNote(repeatText), Date.UTC(2026, 4, 1));
    ok(sealed.ok);
    const fixed = applyEdits(repeatText, sealed.edits);
    match(fixed, /sealed:/);
    for (const text of [other, taken, stranger, fixed]) equal(follow('  mat', 'lid', readNote(text)).repeat, text);
  });

  test('a text is looked into only where it names the file', () => {
    deepEqual([mayRepeat(repeatText, 'first.tank.md'), mayRepeat(repeatText, 'other.tank.md'), mayRepeat(first.text, 'first.tank.md')], [true, false, false]);
  });
});
