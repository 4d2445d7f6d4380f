// The post: self-contained, well formed, its numbers with their formulas, the same bytes everywhere.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readNote } from '../../../src/experiment/readNote.ts';
import { sha256Of } from '../../../src/protocol/sha256.ts';
import { imageAllowed, linkAllowed } from '../../../src/publish/links.ts';
import { headingId } from '../../../src/publish/postMarkdown.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { nightReadings, noteText } from '../charts/handmade.ts';
import { htmlFaults } from '../render/wellFormed.ts';
import { samplePostText } from './samplePost.ts';

const publish = async (text: string): Promise<string> => (await publishPost(readNote(text, new Map()), { stem: 'night', toolVersion: '1.2.3' })).html;

suite('publish: the post', () => {
  let html = '';
  suiteSetup(async () => { html = await publish(samplePostText); });

  test('is well formed, every link inside it leads somewhere', () => assert.deepEqual(htmlFaults(html), []));

  test('runs nothing and fetches nothing', () => {
    assert.match(html, /<meta http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;; img-src data:; base-uri &#39;none&#39;; form-action &#39;none&#39;">/);
    assert.doesNotMatch(html, /<script|<iframe|<object|<embed|<link|@import|url\((?!#)|\ssrc="(?!data:)|\son[a-z]+="/i);
  });

  test('has language, title, viewport, generator, author and a way past the head', () => {
    assert.match(html, /^<!doctype html>\n<html lang="en">/);
    assert.match(html, /<title>Water lettuce and the night<\/title>/);
    assert.match(html, /<meta name="viewport"/);
    assert.match(html, /<meta name="generator" content="Evenwater 1\.2\.3">/);
    assert.match(html, /<meta name="author" content="A keeper">/);
    assert.match(html, /<a class="skip" href="#main">/);
    assert.equal([...html.matchAll(/<h1/g)].length, 1);
    assert.match(html, /<p class="byline"><span>A keeper<\/span><span><time [^>]*>14 to 15 March 2026<\/time><\/span><span>Zwolle<\/span><\/p>/);
  });

  test('shows no number that is none', () => assert.doesNotMatch(html, /NaN|undefined|Infinity|\[object|>null</));

  test('every figure is an SVG with a text alternative, drawn for page and phone', () => {
    const figures = [...html.matchAll(/<figure class="evenwater-figure">([\s\S]*?)<\/figure>/g)].map((each) => each[1]!);
    assert.equal(figures.length, 2);
    for (const figure of figures) {
      assert.equal([...figure.matchAll(/<svg [^>]*class="evenwater-drawing"[^>]*role="img" aria-labelledby="([^"]+)"><title id="\1">Line chart of /g)].length, 2);
      assert.match(figure, /<figcaption>/);
      assert.doesNotMatch(figure, /evenwater-chart/);
    }
  });

  test('every table has a caption', () => {
    const tables = [...html.matchAll(/<table[^>]*>(?!<caption)/g)].filter((each) => html.slice(each.index, each.index + 40).includes('class='));
    assert.deepEqual(tables.filter((each) => !each[0].includes('evenwater-written-table')).map((each) => each[0]), []);
  });

  test('each claim leads to its entry in the appendix and back', () => {
    const claims = [...html.matchAll(/<a href="#how-(\d+)" id="claim-\1"/g)].map((each) => Number(each[1]));
    assert.deepEqual(claims, [1, 2, 3, 4, 5]);
    assert.match(html, /<li id="how-1" class="how-number">[\s\S]*?<q>4\.80 mg\/L<\/q>[\s\S]*?<code>lowest-mat<\/code>, which is <code>min\(mat\.DO\)<\/code>/);
    assert.match(html, /<details class="working"><summary>How these 4 were checked<\/summary>/);
  });

  test('every computed value in claims, tables and generated prose has value and formula', () => {
    const data = [...html.matchAll(/<data([^>]*)>/g)].map((each) => each[1]!);
    assert.ok(data.length > 100, String(data.length));
    for (const attributes of data) {
      assert.match(attributes, /value="[^"]+"/);
      assert.match(attributes, /data-formula="[^"]+"/);
    }
    const methods = /<div class="evenwater-prose evenwater-methods">([\s\S]*?)<\/div>/.exec(html)![1]!;
    assert.match(methods, /<data value="[^"]+" data-formula="[^"]+"/);
  });

  test('the data section has every reading as recorded, and the note\'s hash', () => {
    const section = html.slice(html.indexOf('id="data"'));
    for (const cell of nightReadings.split('\n').slice(1).flatMap((line) => line.split(';')[0]!.trim().split(/\s+/).slice(1))) {
      assert.ok(section.includes(`>${cell.replace(/>/g, '&gt;')}</td>`), cell);
    }
    assert.ok(section.includes(`SHA-256 ${createHash('sha256').update(samplePostText, 'utf8').digest('hex')}`));
  });

  test('one work is one reference, whatever was taken from it', async () => {
    // Its methods cite the work, its claims what saturation takes from it.
    const page = await publish(readFileSync('samples/overnight-oxygen.tank.md', 'utf8'));
    const section = page.slice(page.indexOf('id="references"'), page.indexOf('id="data"'));
    assert.equal(section.match(/Benson and Krause \(1984\)/gu)?.length, 1, section);
  });

  test('references gather stated claims, limits and methods', () => {
    const section = html.slice(html.indexOf('id="references"'), html.indexOf('id="data"'));
    assert.match(section, /<li>A keeper&#39;s handbook, 2019, p\. 12<\/li>/);
    assert.match(section, /<li>invented for the test<\/li>/);
  });

  test('the note\'s text stands in the post and gives the hash', () => {
    const text = /<pre class="note-text" tabindex="0">\n([\s\S]*?)<\/pre>/.exec(html)![1]!.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&#39;/g, '\'').replace(/&amp;/g, '&');
    assert.equal(text, samplePostText);
    assert.equal(sha256Of(text), createHash('sha256').update(samplePostText, 'utf8').digest('hex'));
  });

  test('the same bytes in another time zone and language', () => {
    const script = 'import(\'./test/unit/publish/samplePost.ts\').then((each) => each.publishSample()).then((html) => process.stdout.write(html));';
    const other = execFileSync(process.execPath, ['--import', 'tsx', '-e', script],
      { encoding: 'utf8', env: { ...process.env, TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' }, maxBuffer: 1e8 });
    assert.equal(createHash('sha256').update(other).digest('hex'), createHash('sha256').update(html).digest('hex'));
  }).timeout(60_000);
});

suite('publish: hostile notes', () => {
  test('raw HTML is shown as text, comments are gone', async () => {
    const html = await publish(noteText('<div onclick="alert(1)">block</div>\n\ninline <b onmouseover="x">b</b> <!-- secret --> end\n\n<script>alert(1)</script>\n'));
    assert.deepEqual(htmlFaults(html), []);
    const body = html.slice(0, html.indexOf('class="note-text"'));
    assert.match(body, /&lt;div onclick=&quot;alert\(1\)&quot;&gt;block/);
    assert.match(body, /inline &lt;b onmouseover=&quot;x&quot;&gt;b&lt;\/b&gt; {2}end/);
    assert.doesNotMatch(body, /secret|<script/);
  });

  test('links that a post may not have become text; images become links', async () => {
    const html = await publish(noteText('[a](javascript:alert(1)) [b](https://example.org/) [c](other.html) [d](file:///etc/passwd) [e](data:text/html,x)\n\n![A photo](photo.jpg) ![No](javascript:x)\n\n[f][r]\n\n[r]: vbscript:x\n'));
    assert.deepEqual(htmlFaults(html), []);
    const links = [...html.slice(0, html.indexOf('id="data"')).matchAll(/<a href="([^"#][^"]*)"/g)].map((each) => each[1]);
    assert.deepEqual(links, ['https://example.org/', 'other.html', 'photo.jpg']);
    assert.match(html, /class="image-link">A photo \(image\)<\/a>/);
    assert.doesNotMatch(html.slice(0, html.indexOf('class="note-text"')), /<img/);
  });

  test('which addresses are links', () => {
    for (const href of ['https://example.org/', 'http://example.org', 'mailto:a@example.org', '#place', 'a.html', './a/b.html#c', 'a?b=c:d']) assert.ok(linkAllowed(href), href);
    for (const href of ['javascript:alert(1)', 'JaVaScRiPt:x', ' java\nscript:x', 'vbscript:x', 'data:text/html,x', 'file:///x', '//evil.example', '\\\\evil', 'javascript%3Ax', '', 'x:y']) assert.ok(!linkAllowed(href), href);
    assert.ok(imageAllowed('data:image/png;base64,iVBORw0KGgo='));
    for (const source of ['data:image/svg+xml;base64,AAAA', 'https://example.org/a.png', 'a.png', 'data:image/png,x']) assert.ok(!imageAllowed(source), source);
  });

  test('headings get ids that do not take the page\'s own', () => {
    const taken = new Set<string>();
    assert.deepEqual(['Data', 'The night', 'The night', 'how-3', '???'].map((text) => headingId(text, taken)), ['section-data', 'the-night', 'the-night-1', 'section-how-3', 'section']);
  });

  test('a note without a title takes the file\'s name', async () => {
    const html = await publish(noteText().replace('# Water lettuce and the night\n\n', '').replace('title: Water lettuce and the night\n', ''));
    assert.match(html, /<h1>night<\/h1>/);
    assert.match(html, /<title>night<\/title>/);
  });
});
