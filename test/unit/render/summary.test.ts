// Summary tables as HTML and in posts: heads, signs, intervals, dashes with reasons, captions, languages; and charts that are kept.
import assert from 'node:assert/strict';
import createMarkdown from 'markdown-it';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { publishMarkdown } from '../../../src/publish/markdown/markdownPost.ts';
import { ChartCache } from '../../../src/render/chartCache.ts';
import { evenwaterMarkdown } from '../../../src/render/plugin.ts';
import { nightNote, nightProtocol, nightReadings } from '../charts/handmade.ts';
import { htmlFaults } from './wellFormed.ts';

const noteOf = (yaml: string, protocol = nightProtocol): Note => nightNote(`\`\`\`summary\n${yaml}\n\`\`\`\n`, nightReadings, protocol);
function html(yaml: string, protocol = nightProtocol): string {
  const note = noteOf(yaml, protocol);
  const whole = evenwaterMarkdown(createMarkdown({ html: false }), { noteFor: () => note, target: 'preview' }).render(note.text);
  const block = whole.slice(whole.indexOf('<div class="evenwater-block evenwater-block-summary"'));
  assert.deepEqual(htmlFaults(block), []);
  return block;
}
const caption = (text: string): string => /<caption>(.*?)<\/caption>/.exec(text)![1]!.replace(/<[^>]*>/g, '');
const cells = (text: string): string[][] => [...text.slice(text.indexOf('<tbody>')).matchAll(/<tr[^>]*>(.*?)<\/tr>/g)].map(([, row]) => [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map(([, cell]) => cell!.replace(/<[^>]*>/g, '')));

suite('render: summary tables', () => {
  test('the caption says of fitted values that their interval comes from the scatter', () => {
    assert.match(caption(html('of: DO\nrows: phases\nshow: [mean, slope]')), /: of fitted values from the scatter about the fit, of others from the stated accuracy/);
    assert.match(caption(html('of: DO\nrows: phases\nshow: [mean, slope]', `language: de\n${nightProtocol}`)), /: bei angepassten Werten aus der Streuung um die Anpassung, sonst aus/);
    assert.doesNotMatch(caption(html('of: DO\nrows: phases\nshow: [mean, change]')), /scatter about the fit/);
  });
  test('figures with their formula, interval and sign; units in the head', () => {
    const text = html('of: DO\nrows: phases\nshow: [min, mean]');
    assert.match(text, /<data value="5\.02" data-formula="min\(mat\.DO, dark\)" title="the lowest dissolved oxygen in the floating-mat tank during the dark phase">5\.02 ±\u00a00\.12<\/data>/);
    assert.deepEqual(cells(text)[1], ['Dark', '5.02 ±\u00a00.12', '6.44 ±\u00a00.12', '7.99 ±\u00a00.12', '8.12 ±\u00a00.12', '−2.97 ±\u00a00.01', '−1.67 ±\u00a0&lt;0.01']);
    assert.match(text, />lowest \(mg\/L\)<.*>mean \(mg\/L\)</);
    assert.match(text, /evenwater-tank-mark[^>]*>.*Floating-mat tank.*Open-surface tank.*Treatment − control/);
  });

  test('the caption names the stretches of time, their readings, the base and what ± means', () => {
    assert.equal(caption(html('of: DO\nrows: phases\nshow: [mean, percent-change]\ncaption: What the night took')),
      'Table 3. What the night took. Dissolved oxygen by phase. Baseline: 20:00 to 22:00, 3 readings a column; dark: 22:00 to 06:50, 7; recovery: 06:50 to 10:00, 4. '
      + 'Percentages are of the first reading of the same stretch of time. The reading at lights-off serves both sides for changes, lowest and highest, and counts to the time before in means and counts. '
      + 'Figures after ± are half of a 95 % interval, from the stated accuracy and resolution of the instruments.');
  });

  test('before and after: rows, the contrast and what its interval counts', () => {
    const text = html('of: DO\nrows: before-after light-off');
    assert.deepEqual(cells(text).map((row) => row[0]), ['Before lights-off', 'After lights-off', 'After minus before']);
    assert.match(text, /data-formula="contrast\(DO, dark\)"[^>]*>−1\.8 ±\u00a01\.7</);
    assert.match(caption(text), /is a contrast paired in time; its ± counts the scatter of the readings/);
    assert.match(caption(html('of: DO\nrows: before-after pump')), /before and after “Air pump on”\. .*A reading at 02:00 itself counts to both sides\./);
  });

  test('a dash has a letter, the letter its reason', () => {
    const text = html('of: DO\nrows: [22:00, 06:10]');
    assert.deepEqual(cells(text)[1], ['06:10', '–a', '–b', '–a']);
    assert.match(text, /<li>There is no reading of mat\.DO at 06:10; the nearest are at 06:00 and 07:00\.<\/li>/);
    assert.match(text, /aria-label="no value"/);
  });

  test('by tank: quantities in the head, the difference last', () => {
    const rows = cells(html('of: [DO, T]\nrows: tanks\nshow: [max]'));
    assert.deepEqual(rows, [['Floating-mat tank', '8.26 ±\u00a00.12', '24.9 ±\u00a00.2'], ['Open-surface tank', '8.31 ±\u00a00.12', '24.7 ±\u00a00.2'], ['Treatment − control', '−0.05 ±\u00a00.01', '+0.2 ±\u00a00.1']]);
  });

  test('by tank: a series of two tanks has a row and a name of its own', () => {
    const rows = cells(html('of: [DO, mat.DO - open.DO]\nrows: tanks\nshow: [min]'));
    assert.deepEqual(rows.map((row) => row[0]), ['Floating-mat tank', 'Open-surface tank', 'Floating-mat tank minus open-surface tank', 'Treatment − control']);
    assert.deepEqual(rows[2], ['Floating-mat tank minus open-surface tank', '', '−3.16 ±\u00a00.01']);
  });

  test('German: decimal comma, words, phases', () => {
    const text = html('of: DO\nrows: phases\nshow: [mean]', `language: de\n${nightProtocol}`);
    assert.deepEqual(cells(text)[1], ['Dunkelphase', '6,44 ±\u00a00,12', '8,12 ±\u00a00,12', '−1,67 ±\u00a0&lt;0,01']);
    assert.match(caption(text), /^Tabelle 3\. Sauerstoffgehalt nach Phasen\. Ausgangsphase: 20:00 bis 22:00, 3 Messwerte je Spalte; Dunkelphase: 22:00 bis 06:50, 7;/);
  });

  test('an option that cannot be read leaves the block\'s own text, with the problem above it', () => {
    const text = html('of: DO\nrows: [22:00, dark]');
    assert.match(text, /evenwater-problem evenwater-error/);
    assert.match(text, /rows: \[22:00, dark\]/);
  });

  test('stands in the post and in the Markdown post, numbered like the other tables', async () => {
    const note = noteOf('of: DO\nrows: phases\nshow: [min]');
    const post = await publishPost(note, { stem: 'night', toolVersion: '0' });
    assert.match(post.html, /Table 3\.<\/span> Dissolved oxygen by phase\./);
    assert.match(post.html, /<data value="5\.02" data-formula="min\(mat\.DO, dark\)">5\.02 ±\u00a00\.12<\/data>/);
    const files = await publishMarkdown(note, { stem: 'night', toolVersion: '0' });
    const markdown = files.map((file) => file.content).join('\n');
    assert.match(markdown, /\| Phase \| Floating-mat tank: lowest \(mg\/L\) \| Open-surface tank: lowest \(mg\/L\) \| Treatment − control: lowest \(mg\/L\) \|/);
    assert.match(markdown, /\| Dark \| 5\.02 ± 0\.12 \| 7\.99 ± 0\.12 \| −2\.97 ± 0\.01 \|/);
  });
});

suite('render: charts are kept', () => {
  test('a key typed in prose draws no chart again; a new reading draws it', () => {
    const cache = new ChartCache();
    const note = nightNote('Words.\n\n```figure\nshow: [DO, mat.DO - open.DO]\n```\n');
    const figure = note.syntax.blocks.findIndex((block) => block.word === 'figure');
    const readings = note.syntax.blocks.findIndex((block) => block.word === 'readings');
    const longer = readNote(note.text.replace('Words', 'More words'), new Map(), note);
    for (const block of [figure, readings]) {
      assert.ok(cache.of(note, block));
      assert.equal(cache.of(longer, block)?.chart, cache.of(note, block)?.chart);
      assert.notEqual(cache.of(readNote(note.text.replace('8.21', '8.11'), new Map(), note), block)?.chart, cache.of(note, block)?.chart);
    }
  });
});
