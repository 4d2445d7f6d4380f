// Specifications of one's own: what is drawn, and that nothing but drawing can come of one, however hostile.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { FigureOptions } from '../../../src/experiment/figureBlock.ts';
import { readNote } from '../../../src/experiment/readNote.ts';
import type { Note } from '../../../src/experiment/types.ts';
import { unthemedChart } from '../../../src/charts/readingsChart.ts';
import { chartSvg } from '../../../src/charts/svg.ts';
import { themed } from '../../../src/charts/theme.ts';
import type { Chart } from '../../../src/charts/types.ts';
import { publishPost } from '../../../src/publish/post.ts';
import { problemSentence } from '../../../src/words/words.ts';
import { nightNote, nightProtocol, nightReadings } from './handmade.ts';

const xy = 'encoding: {x: {field: time}, y: {field: value}, color: {field: label}}';
const noteOf = (spec: string, more = 'show: DO\n', protocol = nightProtocol): Note => nightNote(`\`\`\`figure\n${more}spec:\n${spec.split('\n').map((line) => `  ${line}`).join('\n')}\n\`\`\`\n`, nightReadings, protocol);
const optionsOf = (note: Note): FigureOptions | null => [...note.drawn.values()].find((each) => each.figure?.spec)?.figure ?? null;
function chartOf(note: Note): Chart {
  const options = optionsOf(note);
  assert.ok(options, note.problems.map((each) => `${each.code} ${JSON.stringify(each.args)}`).join());
  const chart = unthemedChart(note, options);
  assert.ok(chart);
  return chart;
}
const own = (note: Note) => note.problems.filter((each) => each.range.start > note.text.indexOf('```figure') && each.severity === 'error');

function keysIn(value: unknown, found = new Set<string>()): Set<string> {
  if (Array.isArray(value)) value.forEach((each) => keysIn(each, found));
  else if (value !== null && typeof value === 'object') for (const [key, each] of Object.entries(value)) { found.add(key); keysIn(each, found); }
  return found;
}

suite('a specification of one\'s own', () => {
  test('draws the readings that count as tidy rows named `readings`', () => {
    const { specification, caption } = chartOf(noteOf(`mark: line\n${xy}`));
    const rows = (specification['datasets'] as { readings: Record<string, unknown>[] }).readings;
    assert.deepEqual(specification['data'], { name: 'readings' });
    assert.equal(rows.length, 28);
    const { low, high, ...first } = rows[0]!;
    assert.deepEqual(first, {
      time: Date.UTC(2026, 2, 14, 20), hours: 0, series: 'mat.DO', tank: 'mat', label: 'Floating-mat tank', quantity: 'DO', value: 8.21, unit: 'mg/L', phase: 'baseline', doubtful: false, segment: 'mat.DO 0',
    });
    assert.ok(Math.abs((Number(high) - Number(low)) / 2 - 0.1155) < 0.001, 'accuracy of 0.1 mg/L as a rectangle: 2 · 0.1/√3 = 0.1155 (GUM 4.3.7)');
    assert.ok(!rows.some((row) => row['value'] === 4.1), 'left out');
    assert.match(caption.map((run) => run.text).join(''), /Drawn from 28 readings; 1 left out or outside the instrument's range is not among them\.$/);
  });

  test('tanks keep their colours and dashes, the author\'s scale goes first', () => {
    const encoding = (spec: string): Record<string, { scale?: { range?: unknown[] } }> => chartOf(noteOf(spec)).specification['encoding'] as never;
    assert.deepEqual(encoding(`mark: line\n${xy}`)['color']!.scale!.range, ['evenwater:tank-0', 'evenwater:tank-1']);
    assert.deepEqual(encoding('mark: line\nencoding: {x: {field: time}, y: {field: value}, color: {field: tank, scale: {range: [red, "#00f"]}}}')['color']!.scale!.range, ['red', '#00f']);
  });

  test('a line breaks where nothing was measured; a mean by hour joins', () => {
    const details = (spec: string): unknown => (chartOf(noteOf(spec)).specification['encoding'] as Record<string, unknown>)['detail'];
    assert.deepEqual(details(`mark: line\n${xy}`), [{ field: 'segment', type: 'nominal' }]);
    assert.equal(details('mark: line\nencoding: {x: {field: time, timeUnit: hours}, y: {field: value, aggregate: mean}}'), undefined);
  });

  test('layers, transforms in object form and made fields', async () => {
    const note = noteOf(`transform:
  - filter: {field: tank, oneOf: [mat, open]}
  - aggregate: [{op: mean, field: value, as: average}]
    groupby: [label, phase]
layer:
  - mark: bar
    encoding: {x: {field: phase, sort: [baseline, dark, recovery]}, y: {field: average}, color: {field: label}, xOffset: {field: label}}`);
    assert.deepEqual(own(note).map((each) => [each.code, each.args]), []);
    const svg = await chartSvg(chartOf(note), { id: 'f' });
    assert.equal([...svg.matchAll(/<path [^>]*d="M[^"]*h[^"]*v[^"]*h[^"]*Z"[^>]*fill="#(?:0072B2|B84C00)"/g)].length >= 6, true, 'six bars');
  });

  test('caption, axis and colours speak of what a filter keeps, in the note\'s language', async () => {
    const spec = `transform:
  - filter: {field: quantity, equal: DO}
  - filter: {field: hours, range: [0, 2]}
mark: bar
encoding: {x: {field: time, timeUnit: hours}, y: {field: value, aggregate: min}, color: {field: label}}`;
    const text = (chart: Chart): string => chart.caption.map((run) => run.text).join('');
    const all = chartOf(noteOf(spec, ''));
    assert.match(text(all), /^Dissolved oxygen in the [^.]*\. Drawn from 6 readings\.$/);
    assert.doesNotMatch(all.alternative, /temperature|pressure/);
    const svg = await chartSvg(all, { id: 'f' });
    assert.match(svg, />Lowest: Dissolved oxygen \(mg\/L\)</);
    assert.doesNotMatch(svg, />Room<|Min of value/);
    const german = await chartSvg(chartOf(noteOf(spec, '', `language: de\n${nightProtocol}`)), { id: 'f' });
    assert.match(german, />Tiefster Wert: Sauerstoffgehalt \(mg\/L\)</);
    assert.match(german, />Zeit</);
    const none = noteOf(spec.replace('equal: DO', 'equal: XX'), '');
    assert.equal(unthemedChart(none, optionsOf(none)!), null);
  });

  test('times are those of the note\'s clock in any zone, numbers have the note\'s mark', async () => {
    const german = await chartSvg(chartOf(noteOf(`mark: line\n${xy}`, 'show: DO\n', `language: de\n${nightProtocol}`)), { id: 'f' });
    assert.match(german, />20:00</);
    assert.match(german, />8,0</);
    assert.doesNotMatch(german, />19:00<|>8\.0</);
  });

  test('the text alternative is the author\'s words, then what is drawn, then the readings', () => {
    const { alternative } = chartOf(noteOf(`mark: line\n${xy}`, 'show: DO\nalt: Two lines that part at lights-off\n'));
    assert.match(alternative, /^Two lines that part at lights-off\. Drawing of 28 readings with line, x shows time, y shows value and color shows label\. The readings: dissolved oxygen \(mg\/L\) from 20:00/);
    assert.match(alternative, /lowest 4\.80 mg\/L at 07:00/);
  });

  test('the drawing has the size it states, on a page and on a phone', async () => {
    const note = noteOf(`height: 240\nwidth: 500\nmark: line\n${xy}`);
    assert.deepEqual([chartOf(note).width, chartOf(note).height], [500, 240]);
    assert.equal(unthemedChart(note, { ...optionsOf(note)!, width: 350 })!.width, 350);
    const post = await publishPost(note, { stem: 'x', toolVersion: '0' });
    assert.match(post.html, /<svg [^>]*width="500" height="240"/);
    assert.match(post.html, /<svg [^>]*width="350" height="240"/);
  });
});

/** Rows of the table of known attacks, each with the place that is named and why. */
const hostile: readonly (readonly [string, string, string, string])[] = [
  ['expression in a calculate', 'transform: [{calculate: "event.view.alert(1)", as: v}]', 'calculate', 'code'],
  ['expression as a filter', 'transform: [{filter: "datum.value > 3 || alert(1)"}]', '"datum.value > 3 || alert(1)"', ''],
  ['expression in a mark', 'mark: {type: line, opacity: {expr: "alert(1)"}}', '{expr: "alert(1)"}', ''],
  ['signal as a value', 'mark: {type: line, size: {signal: "alert(1)"}}', '{signal: "alert(1)"}', ''],
  ['signal as a title', 'title: {signal: "event"}\nmark: line', '{signal: "event"}', ''],
  ['signals', 'signals: [{name: a, on: [{events: "window:mousemove", update: "alert(1)"}]}]', 'signals', 'code'],
  ['selection parameters (CVE-2025-25304, CVE-2025-65110)', 'params: [{name: brush, select: interval}]', 'params', 'code'],
  ['a condition', 'encoding: {x: {field: time}, color: {condition: {test: "alert(1)", value: red}, value: blue}}', 'condition', 'code'],
  ['scale expressions', 'encoding: {x: {field: time, scale: {domain: {expr: "1"}}}}', '{expr: "1"}', ''],
  ['label expressions', 'encoding: {x: {field: time, axis: {labelExpr: "alert(1)"}}}', 'labelExpr', 'code'],
  ['a format from text', 'encoding: {x: {field: time, axis: {format: "%n"}}}', 'format', 'format'],
  ['a format type', 'encoding: {x: {field: time, axis: {formatType: "evil"}}}', 'formatType', 'format'],
  ['a link on a click (GHSA-cp47-r258-q626)', 'encoding: {x: {field: time}, href: {value: "javascript:alert(1)"}}', 'href', 'links'],
  ['a link of a mark', 'mark: {type: point, href: "javascript:alert(1)"}', 'href', 'links'],
  ['an image', 'mark: {type: image}', 'image', ''],
  ['an image address', 'encoding: {x: {field: time}, url: {value: "https://example.org/x.png"}}', 'url', 'loads'],
  ['data from an address', 'data: {url: "https://example.org/x.csv"}\nmark: line', 'url', 'loads'],
  ['data from a file', 'data: {url: "file:///etc/passwd"}\nmark: line', 'url', 'loads'],
  ['data of one\'s own', 'data: {values: [{value: 1}]}\nmark: line', 'values', ''],
  ['data sets', 'datasets: {readings: []}\nmark: line', 'datasets', 'loads'],
  ['a lookup', 'transform: [{lookup: tank, from: {data: {url: "x"}}}]', 'lookup', 'loads'],
  ['embed options (loader, config and patch addresses)', 'usermeta: {embedOptions: {loader: {}, config: "https://example.org/c.json", patch: "x"}}', 'usermeta', 'settings'],
  ['configuration', 'config: {background: red}', 'config', 'settings'],
  ['a background', 'background: red', 'background', 'settings'],
  ['a paint server as a colour', 'mark: {type: line, color: "url(https://example.org/x.svg#a)"}', '"url(https://example.org/x.svg#a)"', ''],
  ['a gradient', 'mark: {type: area, color: {gradient: linear, stops: []}}', '{gradient: linear, stops: []}', ''],
  ['a tooltip of data', 'mark: {type: line, tooltip: {content: data}}', 'tooltip', 'words'],
  ['a second axis', 'layer: [{mark: line}]\nresolve: {scale: {y: independent}}', 'resolve', 'axis'],
  ['a field by path', 'encoding: {x: {field: "[\'time\']"}, y: {field: value}}', '"[\'time\']"', ''],
  ['a field of the prototype', 'encoding: {x: {field: constructor}, y: {field: value}}', 'constructor', ''],
  ['a made field with code in its name', 'transform: [{aggregate: [{op: mean, field: value, as: "x\'];alert(1)//"}], groupby: [tank]}]', '"x\'];alert(1)//"', ''],
  ['the prototype as a key', '__proto__: {polluted: yes}\nmark: line', '__proto__', ''],
  ['a huge drawing', 'width: 1e9\nmark: line', '1e9', ''],
  ['a number that is none', 'height: .nan\nmark: line', '.nan', ''],
];

suite('hostile specifications', () => {
  for (const [name, spec, place, reason] of hostile) {
    test(name, () => {
      const note = noteOf(/^(?:mark|layer):|\n(?:mark|layer):/.test(spec) ? spec : `${spec}\nmark: line`);
      const found = own(note).filter((each) => each.code.startsWith('spec-'));
      assert.ok(found.some((each) => note.text.slice(each.range.start, each.range.end) === place && (reason === '' || each.args['reason'] === reason)),
        found.map((each) => `${each.code} ${note.text.slice(each.range.start, each.range.end)} ${String(each.args['reason'])}`).join('; '));
      for (const each of found) for (const language of ['en', 'de'] as const) assert.doesNotMatch(problemSentence(each, language), /undefined|\[object|\{expr/);
      assert.equal(optionsOf(note), null, 'nothing is drawn');
      assert.equal(({} as Record<string, unknown>)['polluted'], undefined);
    });
  }

  test('anchors and aliases are refused', () => {
    assert.ok(noteOf('mark: &m line\nencoding: {x: {field: *m}}').problems.some((each) => each.code === 'alias-refused' || each.code === 'block-unreadable'));
  });

  test('words of the author become text, whatever they look like', async () => {
    const words = '"</title><script>alert(1)</script> evenwater:tank-0 ${1+1} {{x}}"';
    const note = noteOf(`title: ${words}\nmark: line\nencoding: {x: {field: time, title: ${words}}, y: {field: value}, color: {field: label, legend: {title: ${words}}}}`, `show: DO\nalt: ${words}\ncaption: ${words}\n`);
    assert.deepEqual(own(note), []);
    const { html } = await publishPost(note, { stem: 'x', toolVersion: '0' });
    assert.doesNotMatch(html, /<script/);
    assert.match(html, /&lt;script&gt;alert\(1\)&lt;\/script&gt;/);
  });

  test('labels of tanks with code in them stay data', async () => {
    const note = noteOf(`mark: line\n${xy}`, 'show: DO\n', nightProtocol.replace('floating-mat tank', 'x" + alert(1) + "<b>'));
    const svg = await chartSvg(chartOf(note), { id: 'f' });
    assert.doesNotMatch(svg, /<b>/);
    assert.doesNotThrow(() => themed(chartOf(note).specification, 'dark'));
  });

  test('whatever is written, the drawing has no key that loads, runs, links or listens', () => {
    const forbidden = ['url', 'params', 'signal', 'signals', 'href', 'usermeta', 'expr', 'calculate', 'test', 'condition', 'loader', 'labelExpr', 'formatType', 'on', 'events', 'update', '__proto__'];
    const scraps = ['mark: line', 'mark: {type: bar, href: x}', 'params: []', 'encoding: {x: {field: time}}', 'encoding: {y: {field: value, format: x}}', 'layer: [{mark: point}]', 'usermeta: {}', 'transform: [{filter: {field: value, gt: 3}}]', 'transform: [{calculate: a}]', 'title: "{signal: x}"', '- a', 'x: [', 'data: {name: readings}', 'data: {url: x}'];
    fc.assert(fc.property(fc.array(fc.constantFrom(...scraps), { maxLength: 5 }), fc.string({ maxLength: 12 }), (lines, noise) => {
      const note = readNote(noteOf([...lines, `title: ${JSON.stringify(noise)}`].join('\n')).text);
      const options = optionsOf(note);
      const chart = options && unthemedChart(note, options);
      if (!chart) return;
      const { datasets: _, config: __, ...rest } = chart.specification;
      for (const key of keysIn(rest)) assert.ok(!forbidden.includes(key), key);
    }), { numRuns: 150 });
  });
});
