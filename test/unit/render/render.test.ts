// Blocks and claims to HTML: what a reader sees in the preview, what a plain document keeps, and that nothing gets out unescaped.
import assert from 'node:assert/strict';
import createMarkdown from 'markdown-it';
import { evenwaterMarkdown } from '../../../src/render/plugin.ts';
import { escapeHtml } from '../../../src/render/html.ts';
import { cautionsOf } from '../../../src/render/cautions.ts';
import { noteLetter } from '../../../src/render/readingsTable.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import { nightNote, nightProtocol, nightReadings, noteText } from '../charts/handmade.ts';
import { htmlFaults } from './wellFormed.ts';

function preview(text: string): string {
  const note = readNote(text, new Map());
  return evenwaterMarkdown(createMarkdown({ html: false }), { noteFor: () => note, target: 'preview' }).render(text);
}
const after = (prose: string, readings = nightReadings, protocol = nightProtocol): string => preview(noteText(prose, readings, protocol));

suite('render: documents that are no notes', () => {
  for (const text of ['# Title\n\n{4.0 mg/L = stated "x"} and {a if b}\n', '```readings\ntime mat.DO\n```\n', '```values\na = 1\n```\n\n{? = a}\n', '    ```protocol\n    ```\n']) {
    test(JSON.stringify(text), () => {
      const plain = createMarkdown();
      const ours = evenwaterMarkdown(createMarkdown(), { noteFor: () => { throw new Error('nothing is asked for'); }, target: 'preview' });
      assert.equal(ours.render(text), plain.render(text));
    });
  }

  test('a note that the host does not know yet keeps its fences', () => {
    const ours = evenwaterMarkdown(createMarkdown(), { noteFor: () => null, target: 'preview' });
    assert.match(ours.render(noteText()), /<pre><code class="language-protocol">title: Water lettuce/);
  });
});

suite('render: the language of our words', () => {
  const german = nightProtocol.replace('place:', 'language: de\nplace:');
  test('a German note in an English editor: blocks and marks are German, its problems English', () => {
    const html = after('It fell to {4,80 mg/L = min(mat.DO)} and {1 mg/L = min(mat.XX)}.', nightReadings, german);
    assert.match(html, /<div class="evenwater-block evenwater-block-protocol" lang="de">/);
    assert.match(html, /<sup class="evenwater-mark"[^>]* lang="de" aria-label="aus den Messwerten/);
    assert.match(html, /<strong class="evenwater-complaint" lang="en"> ✕ [^<]*XX/);
    assert.match(after('', nightReadings, `${german}\ndept: 3`), /<ul class="evenwater-problems" role="list" lang="en">/);
  });
});

suite('render: claims', () => {
  test('a computed claim carries value and formula, with the mark told in words', () => {
    assert.match(after('It fell to {4.80 mg/L = min(mat.DO)}.'), /<data class="evenwater-claim evenwater-computed evenwater-unbroken" value="4\.8" data-formula="min\(mat\.DO\)" title="computed from the readings: [^"]+">4\.80 mg\/L<\/data><sup class="evenwater-mark" [^>]*aria-label="computed from the readings">/);
  });
  test('a condition that holds is marked as checked, not as proved', () => {
    assert.match(after('{It fell if fall(mat.DO) > 1 mg/L}.'), /<data class="evenwater-claim evenwater-condition" value="true" data-formula="fall\(mat\.DO\) &gt; 1 mg\/L"[^>]*>It fell<\/data><sup[^>]*aria-label="condition checked"/);
  });
  test('a stated claim names its source and carries no formula', () => {
    const html = after('A guide says {5 % = stated "A handbook, p. 12"}.');
    assert.match(html, /<span class="evenwater-claim evenwater-stated evenwater-unbroken" title="stated, not computed: A handbook, p\. 12">5 %<\/span>/);
  });
  test('a mismatch is loud and says the value', () => {
    assert.match(after('It fell to {5.80 mg/L = min(mat.DO)}.'), /evenwater-loud evenwater-mismatch[^>]*>5\.80 mg\/L<\/data><strong class="evenwater-complaint" lang="en"> ✕ the readings give 4\.80 mg\/L<\/strong>/);
  });
  test('a false statement is loud', () => {
    assert.match(after('{It rose if rise(mat.DO) > 1 mg/L}.'), /evenwater-loud evenwater-false[^>]*>It rose<\/data><strong class="evenwater-complaint" lang="en"> ✕ not true of the readings/);
  });
  test('an unfilled claim shows the value and says that it is not filled in', () => {
    assert.match(after('It fell to {? = min(mat.DO)}.'), /evenwater-unfilled[^>]*>4\.80 mg\/L<\/data>[\s\S]*○ not filled in yet/);
  });
  test('a claim that cannot be computed says why', () => {
    assert.match(after('It fell to {1 mg/L = min(mat.XX)}.'), /evenwater-failed[^>]*>1 mg\/L<\/data><strong class="evenwater-complaint" lang="en"> ✕ [^<]*XX/);
  });
  test('claims keep their order through lists, tables and links', () => {
    const html = after('- {4.80 mg/L = min(mat.DO)}\n- [{8.26 mg/L = max(mat.DO)}](https://example.org/)\n\n| a |\n|---|\n| {7.96 mg/L = min(open.DO)} |\n');
    assert.deepEqual([...html.matchAll(/<data class="evenwater-claim[^"]*" value="([^"]*)"/g)].map((each) => each[1]), ['4.8', '8.26', '7.96']);
    assert.ok(!html.includes('evenwater-loud'));
  });
});

suite('render: blocks', () => {
  const html = after('```values\nlowest = min(mat.DO)\n```\n\n```limits\n```\n\n```figure\nshow: DO\n```\n\n```methods\n```\n\n```results\n```\n');

  test('is well formed and shows no number that is none', () => {
    assert.deepEqual(htmlFaults(html), []);
    assert.doesNotMatch(html.replace(/ data-evenwater-specification="[^"]*"/g, ''), /NaN|undefined|Infinity|\[object|>null</);
  });

  test('the plan card shows question, tanks, what differs, schedule, conditions and cautions', () => {
    assert.match(html, /<p class="evenwater-question">Does a floating mat lower the overnight oxygen minimum\?<\/p>/);
    assert.match(html, /<tr class="evenwater-differs"><th scope="row">Plants <span class="evenwater-tag evenwater-planned">≠ as planned<\/span><\/th><td>water lettuce, 80 % cover<\/td><td>none<\/td><\/tr>/);
    assert.match(html, /data-formula="volume\(mat\)"[^>]*>42(?:\.0)? L</);
    assert.match(html, /From 20:00 on 14 March 2026 to 10:00 on 15 March 2026 \(14 h\)\. Lights off at 22:00 and on at 09:30\. Readings planned every hour: 15 in all\./);
    assert.match(html, /✓ held at 3 paired readings, 20:00 to 22:00; widest figure 0\.2/);
    assert.match(html, /✓ not crossed at any reading/);
    assert.match(html, /residual-current device of 30 mA or less/);
    assert.match(html, /drip loop/);
  });

  test('a difference that nobody declared is marked', () => {
    assert.match(after('', nightReadings, nightProtocol.replace('    plants: none\n', '    plants: none\n    equipment: sponge filter\n')), /Equipment <span class="evenwater-tag evenwater-undeclared">≠ not declared/);
  });

  test('readings keep every flag, and steps and rates carry formulas', () => {
    assert.match(html, /<s title="left out of every calculation">4\.10<\/s><span class="evenwater-flag">left out<\/span>/);
    assert.match(html, /8\.15<span class="evenwater-flag evenwater-sign-flag" title="doubtful">\?<\/span>/);
    assert.match(html, /8\.26<span class="evenwater-flag evenwater-corrected">first <del>8\.28<\/del><\/span>/);
    assert.match(html, /<li>open probe being rinsed<\/li>/);
    // Where the comma is the decimal mark, a first value has it as well.
    assert.match(after('', nightReadings, nightProtocol.replace('place:', 'language: de\nplace:')), /8,26<span class="evenwater-flag evenwater-corrected">zuerst <del>8,28<\/del><\/span>/);
    assert.match(html, /<data value="-0\.44" data-formula="change\(mat\.DO, 2026-03-14T22:00\.\.2026-03-14T23:00\)">−0\.44<\/data>/);
    assert.match(html, /<data value="-0\.295" data-formula="rate\(mat\.DO, 2026-03-15T04:00\.\.2026-03-15T06:00\)">−0\.295<\/data>/);
    assert.match(html, /<data value="-0\.1" data-formula="at\(treatment\.DO, 2026-03-14T20:00\) - at\(control\.DO, 2026-03-14T20:00\)">−0\.10<\/data>/);
    assert.match(html, /since 04:00/);
  });

  test('a chart is a sized place with its specification, and words beside it', () => {
    const match = /<div class="evenwater-chart" role="img" aria-label="Line chart of [^"]*" style="width:680px;max-width:100%;aspect-ratio:680 \/ \d+" data-evenwater-specification="([^"]*)" data-evenwater-mark="[0-9a-f]{8}"/.exec(html);
    assert.ok(match);
    const json = match[1]!.replace(/&quot;/g, '"').replace(/&#39;/g, '\'').replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&amp;/g, '&');
    assert.equal((JSON.parse(json) as { $schema: string }).$schema, 'https://vega.github.io/schema/vega-lite/v6.json');
    assert.match(html, /<figcaption><span class="evenwater-number-label">Figure 1\.<\/span>/);
    assert.match(html, /<summary>The figure in words<\/summary>/);
  });

  test('limits stand against the lowest reading, kept and crossed told by sign', () => {
    assert.match(html, /<span class="evenwater-crossed"><span aria-hidden="true">✕ <\/span>lowest <data value="4\.8" data-formula="min\(mat\.DO\)">4\.80 ± 0\.12 mg\/L<\/data> at 07:00<\/span>/);
    assert.match(html, /<span class="evenwater-kept"><span aria-hidden="true">✓ <\/span>lowest <data value="7\.96" data-formula="min\(open\.DO\)">/);
  });

  test('figures and tables are numbered in order', () => {
    assert.deepEqual([...html.matchAll(/>(Figure \d+|Table \d+)\.</g)].map((each) => each[1]), ['Figure 1', 'Table 1', 'Table 2', 'Table 3', 'Table 4', 'Figure 2']);
  });

  test('scroll sync keeps its class and line', () => {
    const note = nightNote();
    const md = createMarkdown();
    md.core.ruler.push('lines', (state) => { for (const token of state.tokens) if (token.map) { token.attrSet('data-line', String(token.map[0])); token.attrJoin('class', 'code-line'); } });
    evenwaterMarkdown(md, { noteFor: () => note, target: 'preview' });
    assert.match(md.render(noteText()), /<div class="evenwater-block evenwater-block-protocol code-line" lang="en" data-line="2">/);
  });

  test('parsing and rendering with different environments', () => {
    const note = nightNote('{4.80 mg/L = min(mat.DO)}\n');
    const md = evenwaterMarkdown(createMarkdown(), { noteFor: (env) => ((env as { known?: boolean }).known ? note : null), target: 'preview' });
    const tokens = md.parse(note.text, {});
    assert.match(md.renderer.render(tokens, md.options, { known: true }), /evenwater-computed/);
  });

  test('an unreadable protocol shows its problem with the line, and the text as it stands', () => {
    const broken = preview('```protocol\njust words\n```\n');
    assert.match(broken, /<li class="evenwater-problem evenwater-error code-line" data-line="\d+"[^>]*>.*<button type="button" class="evenwater-to-source" title="[^"]+" data-vscode-context="[^"]+">Error, line \d+: <\/button>/);
    assert.match(broken, /<pre class="evenwater-source-text"><code>just words/);
    assert.deepEqual(htmlFaults(broken), []);
  });

  test('a problem hands its place to the menu that goes there, in the preview only', () => {
    const note = nightNote('One more line.\nAt dawn it was {4.81 mg/L = min(mat.DO)}.\n\n```figure\nshow: [mat.DO, nobody.DO]\n```\n');
    const broken = note.problems.find((each) => note.text.slice(each.range.start, each.range.end).startsWith('nobody'))!;
    const [, handed] = /<li class="evenwater-problem evenwater-error[^>]* data-vscode-context="([^"]*)"/.exec(preview(note.text))!;
    const { webviewSection, line, character } = JSON.parse(handed!.replaceAll('&quot;', '"')) as { webviewSection: string; line: number; character: number };
    assert.equal(webviewSection, 'evenwater-problem');
    assert.equal(note.text.split('\n')[line]!.slice(character, character + 6), note.text.slice(broken.range.start, broken.range.start + 6));
    assert.doesNotMatch(evenwaterMarkdown(createMarkdown(), { noteFor: () => note, target: 'post' }).render(note.text), /data-vscode-context/);
  });

  test('a readings block without rows says so', () => {
    assert.match(after('', 'time mat.DO\n'), /No readings yet\./);
  });
});

suite('render: escaping', () => {
  const evil = '"><script>alert(1)</script><img src=x onerror=alert(1)>\'&';
  const places: [string, string][] = [
    ['question', noteText('', nightReadings, nightProtocol.replace('Does a floating mat lower the overnight oxygen minimum?', JSON.stringify(evil)))],
    ['label', noteText('', nightReadings, nightProtocol.replace('label: floating-mat tank', `label: ${JSON.stringify(evil)}`))],
    ['plants', noteText('', nightReadings, nightProtocol.replace('water lettuce, 80 % cover', JSON.stringify(evil)))],
    ['event', noteText('', nightReadings, nightProtocol.replace('Air pump on', JSON.stringify(evil)))],
    ['limit', noteText('```limits\n```\n', nightReadings, nightProtocol.replace('small catfish', JSON.stringify(evil)))],
    ['source', noteText('```limits\n```\n', nightReadings, nightProtocol.replace('invented for the test', JSON.stringify(evil)))],
    ['instrument', noteText('', nightReadings, nightProtocol.replace('with: optical probe', `with: ${JSON.stringify(evil)}`))],
    ['step', noteText('', nightReadings, nightProtocol.replace('Bring both tanks to one temperature', JSON.stringify(evil)))],
    ['stop rule', noteText('', nightReadings, nightProtocol.replace('Switch the air pump on and end the run', JSON.stringify(evil)))],
    ['remark', noteText('', nightReadings.replace('open probe being rinsed', evil))],
    ['cell', noteText('', nightReadings.replace('7.31 ', `${evil.replace(/\s/g, '')} `))],
    ['claim', noteText(`{${evil} 4.80 mg/L = min(mat.DO)} {${evil} if true} {x = stated "${evil.slice(1)}"}`)],
    ['formula', noteText(`{4 mg/L = min(${evil})}`)],
    ['values', noteText(`\`\`\`values\nevil = ${evil}\n\`\`\`\n`)],
    ['caption', noteText(`\`\`\`figure\nshow: DO\ncaption: ${JSON.stringify(evil)}\ntitle: ${JSON.stringify(evil)}\n\`\`\`\n`)],
    ['fence name', noteText(`\`\`\`figure ${evil.replace(/\s/g, '')}\nshow: DO\n\`\`\`\n`)],
  ];
  for (const [place, text] of places) {
    test(`hostile text in ${place}`, () => {
      const html = preview(text);
      assert.deepEqual(htmlFaults(html), []);
      assert.doesNotMatch(html, /<script|<img|onerror=alert\(1\)>/);
    });
  }

  test('control characters do not reach the page', () => assert.equal(escapeHtml('a\0b\x1Bc'), 'a\uFFFDb\uFFFDc'));
});

suite('render: cautions', () => {
  const ids = (protocol: string): string[] => cautionsOf(nightNote('', nightReadings, protocol).protocol!).map((each) => each.id);
  test('follow from what the plan mentions', () => {
    assert.deepEqual(ids(nightProtocol), ['mains', 'release', 'night']);
    assert.ok(ids(nightProtocol.replace('animals: none', 'animals: six corydoras')).includes('animals'));
    assert.ok(ids(nightProtocol.replace('internal filter', 'CO2 cylinder with regulator')).includes('gas'));
    assert.ok(ids(nightProtocol.replace('optical probe', 'Winkler titration')).includes('chemicals'));
    assert.ok(ids(nightProtocol.replace('internal filter', '100 W heater')).includes('heat'));
  });
  for (const text of ['–', 'keine', 'none, they moved to another tank']) {
    test(`no animals are kept where the plan says ${JSON.stringify(text)}`, () => assert.ok(!ids(nightProtocol.replace('animals: none', `animals: "${text}"`)).includes('animals')));
  }
  test('notes are lettered a to z, then aa', () => assert.deepEqual([1, 26, 27, 52, 53].map(noteLetter), ['a', 'z', 'aa', 'az', 'ba']));
});
