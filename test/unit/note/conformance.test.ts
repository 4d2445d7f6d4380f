// Plain Markdown stays plain: without a protocol block, markdown-it with the claim rule writes byte for byte what it writes without it.
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import markdownIt15, { type MarkdownIt, type MarkdownItOptions } from 'markdown-it';
import { claimRule } from '../../../src/note/markdown.ts';
import { randomDocument } from './randomDocument.ts';

const require = createRequire(import.meta.url);
const { tests: examples } = require('commonmark-spec') as { tests: { markdown: string; html: string; number: number }[] };
type Create = (preset: 'commonmark' | 'default', options?: MarkdownItOptions) => MarkdownIt;
const versions: [string, Create][] = [
  ['15', markdownIt15 as unknown as Create], ['14', require('markdown-it-14') as Create], ['12', require('markdown-it-12') as Create],
];

for (const [version, create] of versions) {
  suite(`claim rule in markdown-it ${version}`, () => {
    for (const preset of ['commonmark', 'default'] as const) for (const html of [true, false]) {
      test(`all CommonMark examples, preset ${preset}, html ${html}`, () => {
        const plain = create(preset, { html });
        const ruled = create(preset, { html });
        claimRule(ruled);
        assert.ok(examples.length > 600);
        for (const example of examples) assert.equal(ruled.render(example.markdown), plain.render(example.markdown), `example ${example.number}`);
      });
    }

    test('documents with claims and maths but no protocol block', () => {
      const plain = create('default', { html: true, linkify: true, typographer: true });
      const ruled = create('default', { html: true, linkify: true, typographer: true });
      claimRule(ruled);
      for (const text of ['A {2.9 % = loss} b', '$a_1$ and $b_1$ {x = 1}', '![{2 = x}](a.png)', '```text\n```protocol\n```\n{2 = x}', '````\n```protocol\n```\n````\n{2 = x}',
        '<!--\n```protocol\n```\n-->\n\n{2 = x}', '    ```protocol\n\n{2 = x}']) {
        assert.equal(ruled.render(text), plain.render(text), text);
        assert.equal(ruled.renderInline(text), plain.renderInline(text), text);
      }
    });

    test('random documents without a protocol block', () => {
      const plain = create('default', { html: true });
      const ruled = create('default', { html: true });
      claimRule(ruled);
      fc.assert(fc.property(randomDocument, (text) => {
        const without = text.replaceAll('protocol', 'protokoll');
        assert.equal(ruled.render(without), plain.render(without));
      }), { numRuns: 150 });
    });

    test('shows the words of a claim in a note', () => {
      const md = create('default', { html: true });
      claimRule(md);
      const html = md.render('```protocol\n```\n\nLost {2.9 % = loss} & {a < b \\{c\\} if x < y}; \\{2 = x} and `{3 = x}` and ![{4 = x}](a.png) $\\frac{5 = x}$.');
      assert.equal(html, '<pre><code class="language-protocol"></code></pre>\n'
        + '<p>Lost 2.9 % &amp; a &lt; b {c}; {2 = x} and <code>{3 = x}</code> and <img src="a.png" alt="{4 = x}"> $\\frac{5 = x}$.</p>\n');
    });

    test('an environment used again follows the new document', () => {
      const md = create('default');
      claimRule(md);
      const env = {};
      assert.equal(md.render('```protocol\n```\n{2 = x}', env), '<pre><code class="language-protocol"></code></pre>\n<p>2</p>\n');
      assert.equal(md.render('{2 = x}', env), '<p>{2 = x}</p>\n');
    });
  });
}
