// Every number of a post against its own formula: what `<data value>` says is what the formula gives.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { contextOf, readNote } from '../../../src/experiment/readNote.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { machineValue } from '../../../src/formula/show.ts';
import { mappedText } from '../../../src/note/mappedText.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { samplePostText } from './samplePost.ts';

const notes: [string, string][] = [['the test note', samplePostText],
  ...['overnight-oxygen', 'heater-failure', 'naechtlicher-ausstroemer'].map((name): [string, string] => [name, readFileSync(new URL(`../../../samples/${name}.tank.md`, import.meta.url), 'utf8')])];

suite('publish: numbers and their formulas', () => {
  for (const [name, text] of notes) {
    test(name, async () => {
      const note = readNote(text, new Map());
      const { html } = await publishPost(note, { stem: name, toolVersion: '1.2.3' });
      const plain = (markup: string): string => markup.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&#39;/g, '\'').replace(/&amp;/g, '&');
      const faults: string[] = [];
      let count = 0;
      for (const [, value, formula] of html.matchAll(/<data[^>]* ?value="([^"]*)" data-formula="([^"]*)"/g)) {
        count += 1;
        const result = evaluate(mappedText(plain(formula!)), contextOf(note));
        const machine = result.value === null ? `no value: ${result.problems.map((each) => each.code).join()}` : machineValue(result.value, contextOf(note));
        const [a, b] = [Number(value), Number(machine)];
        const same = plain(value!) === machine || (Number.isFinite(a) && Number.isFinite(b) && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b)));
        if (!same) faults.push(`${plain(formula!)}: ${value}, formula gives ${machine}`);
      }
      assert.ok(count > 100, String(count));
      assert.deepEqual(faults.slice(0, 10), []);
    });
  }
});
