// The reporting checklist: covered by a sentence, missing, or not applicable; asked for by an option of the methods block.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readNote } from '../../../src/experiment/readNote.ts';
import { blockHtml } from '../../../src/render/block.ts';
import { createRenderContext } from '../../../src/render/context.ts';
import { checklistWriting as german } from '../../../src/words/de/checklist.ts';
import { checklistWriting as english } from '../../../src/words/en/checklist.ts';
import { writeChecklist } from '../../../src/writing/checklist.ts';
import { paragraphText } from '../../../src/writing/figures.ts';
import { writeMethods } from '../../../src/writing/methods.ts';
import { noteText } from '../charts/handmade.ts';

const itemsOf = (text: string) => new Map(writeChecklist(readNote(text, new Map())).map((each) => [each.id, each]));
const sample = readFileSync(new URL('../../../samples/overnight-oxygen.tank.md', import.meta.url), 'utf8');

suite('writing: the reporting checklist', () => {
  test('an item is covered by a sentence that stands in the methods, word for word', () => {
    const note = readNote(sample, new Map());
    const methods = writeMethods(note).map((each) => paragraphText(each.runs)).join(' ').replace(/\s+/g, ' ');
    const items = writeChecklist(note);
    for (const each of items) {
      if (each.state === 'missing' || each.state === 'not-applicable') { assert.equal(each.sentence, null, each.id); assert.ok(each.advice, each.id); continue; }
      assert.ok(each.sentence, each.id);
      if (!/^in the (?:text|plan): /.test(each.sentence) && each.id !== 'access' && each.id !== 'results') assert.ok(methods.includes(each.sentence), `${each.id}: ${each.sentence}`);
      if (each.state === 'partly') assert.ok(each.advice, each.id);
    }
    const state = (id: string): string => items.find((each) => each.id === id)!.state;
    assert.deepEqual(['design', 'exclusion', 'outcomes', 'procedures', 'results', 'volume', 'oxygen', 'pressure', 'monitoring', 'generality', 'access'].map(state), Array(11).fill('covered'));
    assert.deepEqual(['blinding', 'registration', 'ph', 'interests', 'ethics'].map(state), Array(5).fill('missing'));
    assert.deepEqual(['sample-size', 'instruments', 'light', 'sampling'].map(state), Array(4).fill('partly'));
  });

  test('without animals their items do not apply; the author\'s own text counts', () => {
    const bare = itemsOf(noteText(''));
    for (const id of ['animals', 'ethics', 'stocking', 'feeding'] as const) assert.equal(bare.get(id)!.state, 'not-applicable', id);
    const told = itemsOf(noteText('The person who read the meter did not know which tank had the mat. Tap water was used.\n'));
    assert.equal(told.get('blinding')!.sentence, 'in the text: The person who read the meter did not know which tank had the mat.');
    assert.equal(told.get('source')!.state, 'covered');
    assert.equal(bare.get('blinding')!.state, 'missing');
  });

  test('only what somebody wrote stands in quotes, not where it stands', () => {
    assert.deepEqual([english, german].map((words, index) => words.quoted(words.inText(['It came from the tap.', 'Es kam aus der „Leitung“.'][index]!))), ['in the text: “It came from the tap.”', 'im Text: „Es kam aus der ‚Leitung‘.“']);
    assert.equal(english.quoted('Both tanks held 42 L.'), '“Both tanks held 42 L.”');
  });

  test('the option shows it as a table below the methods; a mistyped option or value is a problem', () => {
    const html = (options: string): string => {
      const note = readNote(noteText(`\`\`\`methods\n${options}\`\`\`\n`), new Map());
      return blockHtml(note.syntax.blocks.findIndex((block) => block.word === 'methods'), options, createRenderContext(note, 'post'));
    };
    assert.match(html('checklist: yes\n'), /<table><caption>[\s\S]*Reporting checklist: \d+ items covered[\s\S]*<th scope="row">5\. Blinding/);
    assert.doesNotMatch(html(''), /Reporting checklist/);
    assert.doesNotMatch(html('checklist: no\n'), /Reporting checklist/);
    const codes = (options: string): string[] => readNote(noteText(`\`\`\`methods\n${options}\`\`\`\n`), new Map()).problems.filter((each) => each.severity === 'error').map((each) => each.code);
    assert.deepEqual([codes('checklist: yes\n'), codes('cheklist: yes\n'), codes('checklist: maybe\n')], [[], ['option-unknown'], ['option-value']]);
  });
});
