// What the prompt for a row shows and does while it is typed: which value goes where, what looks wrong and when, what Enter does.
import { deepEqual, equal, ok } from 'node:assert/strict';
import fc from 'fast-check';
import { keepTyping, resumeTyping } from '../../../src/edits/keptTyping.ts';
import { planRow, type RowPlan } from '../../../src/edits/planRow.ts';
import { readRowInput, settledPart } from '../../../src/edits/readRowInput.ts';
import { entered, opened, paused, readState, typedInto } from '../../../src/editor/logging/promptModel.ts';
import { PromptText } from '../../../src/editor/logging/promptText.ts';
import { completed, rowView } from '../../../src/editor/logging/rowView.ts';
import { at, note, zone } from './smallNight.ts';

const view = (typed: string, now = at('22:00:10')) => { const plan = planRow(note, now)!; const input = readRowInput(typed, note, plan); return rowView(input, input, plan, zone); };

suite('logging prompt', () => {
  test('which value goes where, its unit, the change and since when', () => {
    const { lines, complete } = view('8.01 24.7');
    deepEqual(lines.map((line) => [line.head, line.text, line.unit, line.change, line.state]), [
      ['mat.DO', '8.01', 'mg/L', '−0.24', 'good'], ['mat.T', '24.7', '°C', '−0.1', 'good'], ['mat.mood', '', '', '', 'next'],
    ]);
    deepEqual(lines[0]!.last, { text: '8.25', clock: '21:30' });
    ok(!complete);
  });

  test('a word of the scale completes as typed; a begun one that is the only one is taken whole', () => {
    deepEqual(view('8.01 24.8 ').completions, ['calm', 'restless', 'surface', 'gasping']);
    deepEqual(view('8.01 24.8 re').completions, ['restless']);
    equal(completed('8.01 24.8 re', 'restless'), '8.01 24.8 restless ');
    equal(completed('8.01 24.8 ', 'calm'), '8.01 24.8 calm ');
    const whole = view('8.01 24.8 re');
    ok(whole.complete);
    equal(whole.lines[2]!.text, 'restless');
  });

  test('what looks wrong is marked where it stands', () => {
    deepEqual(view('8.01 76.6 calm').lines.map((line) => line.state), ['good', 'odd', 'good']);
    equal(view('8.01 76.6 calm').warnings[0]?.code, 'unit-slip');
    deepEqual(view('8.01 warm calm').lines.map((line) => line.state), ['good', 'wrong', 'good']);
    ok(!view('8.01 warm calm').complete);
  });
});

suite('logging prompt: typing a row', () => {
  const plan = planRow(note, at('22:00:10'))!;
  const shown = (value: string, rested = false) => {
    const { input, judged } = readState(rested ? paused(typedInto(value)) : typedInto(value), note, plan);
    return rowView(input, judged, plan, zone);
  };
  /** Types key by key as the prompt takes it; gives the text that was logged and how many keys it took. */
  const play = (keys: readonly string[]): { logged: string | null; value: string; warnings: string[] } => {
    let state = opened('');
    const warnings: string[] = [];
    for (const key of keys) {
      if (key !== 'Enter') {
        state = typedInto(state.value + key);
        warnings.push(...shown(state.value).warnings.map((each) => each.code));
        continue;
      }
      const after = entered(state, note, plan, null);
      if (after.logs) return { logged: state.value, value: state.value, warnings };
      state = after.state;
    }
    return { logged: null, value: state.value, warnings };
  };

  test('half a number raises no alarm; a separator, a pause or Enter does', () => {
    deepEqual(shown('2').warnings, []);
    deepEqual(shown('8.01 7').warnings, []);
    deepEqual(shown('8.01 76.6').warnings, []);
    deepEqual(shown('8.01 76.6').lines.map((line) => line.state), ['good', 'good', 'next']);
    deepEqual(shown('8.01 76.6 ').warnings.map((each) => each.code), ['unit-slip']);
    deepEqual(shown('8.01 76.6', true).warnings.map((each) => each.code), ['unit-slip']);
    deepEqual(shown('8.01 76.6 ').lines.map((line) => line.state), ['good', 'odd', 'next']);
    deepEqual(shown('02:').errors, []);
    deepEqual(shown('02: ').errors.map((each) => each.code), ['time-unreadable']);
    deepEqual([shown('8.x').errors.length, shown('8.x ').errors.length], [0, 1]);
    equal(settledPart('8.01 76.6 ; li'), '8.01 76.6 ; li');
  });

  test('a slipped value stays marked while the next one is begun', () => {
    deepEqual(shown('24.9 8').warnings.map((each) => each.code), shown('24.9 ').warnings.map((each) => each.code));
    deepEqual(shown('24.9 8.01 ').warnings.map((each) => each.code), ['swapped']);
  });

  test('Enter on part of a row moves on to the next value and keeps what is typed; on a whole one it logs', () => {
    deepEqual(play([...'8.01', 'Enter', ...'24.7', 'Enter', ...'calm', 'Enter']), { logged: '8.01 24.7 calm', value: '8.01 24.7 calm', warnings: [] });
    equal(shown('8.01 ').filled, 1);
    equal(play([...'8.01', 'Enter', 'Enter', 'Enter']).value, '8.01 ');
    equal(play(['Enter']).value, '');
    equal(play([...'-', 'Enter', ...'24.7', 'Enter', ...'-', 'Enter']).logged, '- 24.7 -');
    equal(play([...'22:07', 'Enter', ...'8.01', 'Enter']).value, '22:07 8.01 ');
    deepEqual(play([...'8.0x', 'Enter', 'Enter']), { logged: null, value: '8.0x', warnings: [] });
    equal(shown('8.01 ; lid', true).errors[0]?.code, 'too-few');
  });

  test('no word is chosen by Enter alone; a begun one is completed', () => {
    equal(play([...'8.01 24.7', 'Enter', 'Enter', 'Enter']).value, '8.01 24.7 ');
    equal(shown('8.01 24.7 ').wordBegun, false);
    equal(shown('8.01 24.7 re').wordBegun, true);
    deepEqual(shown('8.01 24.7 x').lines.map((line) => line.state), ['good', 'good', 'next']);
    const begun = entered(typedInto('8.01 24.7 g'), note, plan, null);
    ok(begun.logs); // The only word that begins so.
  });

  test('what looks wrong takes Enter twice, and any key in between takes that back', () => {
    equal(play([...'8.01 76.6 calm', 'Enter']).logged, null);
    equal(play([...'8.01 76.6 calm', 'Enter', 'Enter']).logged, '8.01 76.6 calm');
    equal(play([...'8.01 76.6 cal', 'Enter', 'm', 'Enter']).logged, null);
  });

  test('a row that the note cannot take is refused in the prompt, where it still stands', () => {
    const after = entered(typedInto('21:30 8.01 24.7 calm'), note, plan, null);
    ok(!after.logs && after.state.value === '21:30 8.01 24.7 calm' && after.state.refusal?.code === 'already-read');
  });

  test('keys pressed before the window shows what Enter did lose nothing, however late it does', () => {
    // Keys that differ: of two equal ones in the same instant nobody could tell which one the window shows.
    const keysOf = fc.array(fc.constantFrom('key', 'key', 'Enter'), { maxLength: 20 }).map((all) => all.map((each, at) => (each === 'key' ? String.fromCharCode(97 + at) : each)));
    const turn = fc.constantFrom('key' as const, 'extension' as const, 'window' as const);
    fc.assert(fc.property(keysOf, fc.array(turn, { maxLength: 120 }), (keys, turns) => {
      const afterEnter = (value: string) => (value === '' || value.endsWith(' ') ? value : `${value} `);
      let expected = '';
      for (const each of keys) expected = each === 'Enter' ? afterEnter(expected) : expected + each;
      // The window, the extension, and what is on its way between them.
      let shown = '';
      const text = new PromptText();
      const toExtension: ({ readonly value: string } | 'Enter')[] = [];
      const toWindow: string[] = [];
      const send = (value: string | null) => { if (value !== null) toWindow.push(value); };
      const show = (value: string) => { if (value !== shown) { shown = value; toExtension.push({ value }); } };
      const waiting = [...keys];
      const step = { key: () => {
        const next = waiting.shift();
        if (next === 'Enter') toExtension.push('Enter');
        else if (next !== undefined) show(shown + next);
      }, extension: () => {
        const next = toExtension.shift();
        if (next === 'Enter') send(text.want(afterEnter(text.wanted)));
        else if (next) send(text.heard(next.value));
      }, window: () => {
        const next = toWindow.shift();
        if (next !== undefined) show(next);
      } };
      for (const each of turns) step[each]();
      while (waiting.length > 0) { step.key(); step.extension(); step.window(); }
      for (let round = 0; round < 200; round += 1) { step.extension(); step.window(); }
      equal(shown, text.wanted);
      equal(text.wanted, expected);
    }), { numRuns: 3000 });
  });

  test('keystrokes of a row: its characters, one separator a value, one Enter', () => {
    const close = (middle: number, reach: number, decimals: number) => fc.integer({ min: -reach, max: reach }).map((step) => (middle + step / 10 ** decimals).toFixed(decimals));
    const row = fc.tuple(close(8.25, 20, 2), close(24.8, 5, 1), fc.constantFrom('calm', 'restless', 'surface', 'gasping'));
    fc.assert(fc.property(row, fc.array(fc.constantFrom(' ', 'Enter'), { minLength: 2, maxLength: 2 }), (values, separators) => {
      const keys = values.flatMap((value, at) => [...value, ...at < separators.length ? [separators[at]!] : []]).concat('Enter');
      const digits = values.join('').length;
      equal(keys.length, digits + (values.length - 1) + 1);
      const played = play(keys);
      equal(played.logged, values.join(' '));
      deepEqual(played.warnings, []);
    }), { numRuns: 60 });
  });

  test('a prompt that is left keeps what was typed, under the time at which it was typed', () => {
    const half = planRow(note, at('22:30:10'))!;
    const kept = keepTyping('8.01 24.7', note, plan)!;
    deepEqual(kept, { typed: '8.01 24.7', time: at('22:00') });
    equal(resumeTyping(kept, note, plan), '8.01 24.7');
    equal(resumeTyping(kept, note, half), '22:00 8.01 24.7');
    equal(readRowInput(resumeTyping(kept, note, half), note, half).time, at('22:00'));
    const early = keepTyping('now 8.01', note, planRow(note, at('22:07:10'))!)!;
    equal(resumeTyping(early, note, half), '22:07 8.01');
    const own = keepTyping('21:50 8.01', note, plan)!;
    equal(resumeTyping(own, note, half), '21:50 8.01');
    // Once the run is over a clock time is that of the run; the same clock time of another day is written with its date.
    const dayAfter = (date: string): RowPlan => planRow(note, Date.parse(`${date}T16:00:00+01:00`))!;
    equal(resumeTyping(kept, note, dayAfter('2026-03-15')), '22:00 8.01 24.7');
    const late = keepTyping('8.01 24.7', note, dayAfter('2026-03-16'))!;
    equal(resumeTyping(late, note, dayAfter('2026-03-17')), '2026-03-16T16:00 8.01 24.7');
    equal(keepTyping('  ', note, plan), null);
  });
});
