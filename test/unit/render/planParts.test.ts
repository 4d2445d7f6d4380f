// The parts of the plan card that follow from the plan: the alarm of a crossed stop rule, the design check, materials and steps,
// the timeline's marks.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readNote } from '../../../src/experiment/readNote.ts';
import { createRenderContext } from '../../../src/render/context.ts';
import { planCardHtml } from '../../../src/render/planCard.ts';
import { preparationOf } from '../../../src/render/preparation.ts';
import { blockHtml } from '../../../src/render/block.ts';

const sample = readFileSync('samples/overnight-oxygen.tank.md', 'utf8');
const card = (text: string): string => { const note = readNote(text); return planCardHtml(note.protocol!, createRenderContext(note, 'post')); };
const crossed = sample.replace('07:30         5.83', '07:30         3.41');
const outcome = '    do: Open the cover over half of the surface, switch the air pump on and end the run';

suite('render: the plan card', () => {
  test('no alarm while no rule is crossed', () => assert.doesNotMatch(card(sample), /evenwater-alarm/));

  test('a crossed rule stands first, says what to do, and is an alert', () => {
    const html = card(crossed);
    const alarm = /<div class="evenwater-alarm" role="alert">.*?<\/div>/s.exec(html)?.[0] ?? '';
    assert.match(alarm, /STOP: a stop rule is crossed.*duckweed\.DO &lt; 3\.5 mg\/L.*07:30 on 2026-04-12.*Open the cover.*outcome/s);
    assert.ok(html.indexOf('evenwater-alarm') < html.indexOf('evenwater-question'));
  });

  test('with its outcome written up it stays, quieter', () => {
    const html = card(crossed.replace(outcome, `${outcome}\n    outcome: Pump on at 07:32 <b>now</b>`));
    assert.match(html, /evenwater-alarm evenwater-written-up">.*What was done: Pump on at 07:32 &lt;b&gt;now/s);
    assert.doesNotMatch(html, /role="alert"/);
  });

  test('the design check lists every point once: not in the box of problems as well', () => {
    const note = readNote(sample.replace('    like: duckweed\n', '    like: duckweed\n    equipment: air pump\n').replace('\nstop if:', '\naccepted: [one-tank-per-role]\nstop if:'));
    const index = note.syntax.blocks.findIndex((block) => block.word === 'protocol');
    const html = blockHtml(index, '', createRenderContext(note, 'preview'));
    assert.equal([...html.matchAll(/The tanks differ in equipment/g)].length, 1);
    assert.match(html, /evenwater-design-point evenwater-warning/);
    assert.match(html, /evenwater-accepted.*accepted by the author/s);
  });

  test('materials and steps follow from the plan', () => {
    const { materials, steps } = preparationOf(readNote(sample).protocol!);
    for (const each of ['2 tanks (45 x 28 x 30 cm, 32.8 L of water each)', 'duckweed, 90 % of the surface (duckweed tank)', 'sponge filter, 25 W heater (every tank)', 'a timer for the lamps']) assert.ok(materials.includes(each), materials.join(' | '));
    assert.ok(steps.includes('Bring both tanks to one temperature.'));
    assert.ok(!steps.some((step) => step.startsWith('Move one of two run-in sponges')), 'what is done is no step any more');
    assert.ok(steps.some((step) => step.includes('switch the air pump on')));
  });

  test('the timeline has sunrise and sunset to the minute, every planned reading, and named phases', () => {
    const html = card(sample.replace('\nstop if:', '\nphases: {late: light-off + 3 h..light-on}\nstop if:'));
    assert.match(html, /sunset \d\d:\d\d</);
    assert.match(html, /sunrise \d\d:\d\d</);
    assert.equal([...html.matchAll(/class="evenwater-slot"/g)].length, 27);
    assert.match(html, /class="evenwater-phase"[^>]*>late</);
  });
});
