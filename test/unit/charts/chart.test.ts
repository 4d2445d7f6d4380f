// A chart as a whole: inline data, words, panels, limits to its size, and the same bytes on every machine.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFigureBlock } from '../../../src/experiment/figureBlock.ts';
import { readingsChart, readingsFigureOptions, unthemedChart } from '../../../src/charts/readingsChart.ts';
import { chartSvg } from '../../../src/charts/svg.ts';
import type { Chart } from '../../../src/charts/types.ts';
import { nightNote, nightProtocol, nightReadings } from './handmade.ts';

function chartOf(yaml: string, readings = nightReadings, protocol = nightProtocol): Chart {
  const note = nightNote(`\`\`\`figure\n${yaml}\n\`\`\`\n`, readings, protocol);
  const { options } = readFigureBlock(note.syntax.blocks.find((each) => each.word === 'figure')!, note.context);
  const { chart } = readingsChart(note, options!, 'light');
  assert.ok(chart);
  return chart;
}

function walk(value: unknown, visit: (key: string, value: unknown) => void): void {
  if (Array.isArray(value)) value.forEach((each) => walk(each, visit));
  else if (value !== null && typeof value === 'object') for (const [key, each] of Object.entries(value)) { visit(key, each); walk(each, visit); }
}

suite('charts: specification', () => {
  test('data are inside; nothing is fetched, listened to or linked', () => {
    const forbidden = new Set(['url', 'params', 'signal', 'signals', 'href', 'usermeta', 'selection', 'transform', 'expr', 'loader', 'datasets']);
    walk(chartOf('show: [DO, T]').specification, (key) => assert.ok(!forbidden.has(key), key));
  });

  test('text of the note is data, never part of an expression', () => {
    const hostile = nightProtocol.replace('Air pump on', '\']; alert(1); //').replace('floating-mat tank', 'x" + datum.evil + "');
    walk(chartOf('show: DO', nightReadings, hostile).specification, (key, value) => {
      if (key === 'labelExpr') assert.ok(!/alert|evil/.test(String(value)));
    });
  });

  test('series of different units get a panel each, over the same hours', () => {
    const { specification } = chartOf('show: [DO, T]');
    const panels = specification['vconcat'] as { layer: { encoding: { x?: { scale?: { domain: number[] } } } }[] }[];
    assert.equal(panels.length, 2);
    const domains = panels.map((panel) => panel.layer.map((layer) => layer.encoding.x?.scale?.domain).find(Boolean));
    assert.deepEqual(domains[0], domains[1]);
    assert.equal(chartOf('show: DO').specification['vconcat'], undefined);
  });

  test('the axis shows wall-clock time of the note\'s zone', () => {
    const { specification } = chartOf('show: DO');
    const layers = specification['layer'] as { encoding: { x?: { scale?: { domain: number[] } } } }[];
    const domain = layers.map((layer) => layer.encoding.x?.scale?.domain).find(Boolean);
    assert.deepEqual(domain, [Date.UTC(2026, 2, 14, 20), Date.UTC(2026, 2, 15, 10)]);
  });

  test('a long run is thinned to 1500 points, its extreme kept', () => {
    const start = Date.UTC(2026, 2, 14, 20);
    const rows = Array.from({ length: 6000 }, (_, index) => `${new Date(start + index * 8000).toISOString().slice(0, 19)} ${(index === 4321 ? 1.11 : 7 + Math.sin(index / 300)).toFixed(2)}`);
    const { specification } = chartOf('show: mat.DO', `time mat.DO\n${rows.join('\n')}\n`);
    const lines = (specification['layer'] as { mark: { type: string }; data: { values: { v: number }[] } }[]).filter((layer) => layer.mark.type === 'line');
    assert.equal(lines.length, 1);
    assert.ok(lines[0]!.data.values.length <= 1504, String(lines[0]!.data.values.length));
    assert.ok(lines[0]!.data.values.some((each) => each.v === 1.11));
  });
});

suite('charts: words', () => {
  test('the text alternative gives start, lowest and when, and end of each series', () => {
    const { alternative } = chartOf('show: DO');
    assert.match(alternative, /^Line chart of dissolved oxygen \(mg\/L\) from 20:00 on 14 March 2026 to 10:00 on 15 March 2026 \(Europe\/Amsterdam\)\./);
    assert.match(alternative, /Floating-mat tank: starts at 8\.21 mg\/L \(20:00\), lowest 4\.80 mg\/L at 07:00, highest 8\.26 mg\/L at 22:00, ends at 6\.20 mg\/L \(10:00\); 14 readings, 1 left out\./);
    assert.match(alternative, /Open-surface tank: starts at 8\.31 mg\/L \(20:00\), lowest 7\.96 mg\/L at 07:00/);
    assert.match(alternative, /Event: Air pump on \(floating-mat tank\) at 02:00\./);
    assert.match(alternative, /Limit drawn: at least 5 mg\/L for small catfish\./);
  });

  test('several panels: each sentence names its quantity; over days each time has its date', () => {
    assert.match(chartOf('show: [DO, T]').alternative, /Floating-mat tank, water temperature: starts at 24\.9 °C \(20:00\)/);
    const days = nightProtocol.replace('end: 2026-03-15 10:00', 'end: 2026-03-17 10:00');
    assert.match(chartOf('show: mat.DO', 'time mat.DO\n2026-03-14T20:00 8.2\n2026-03-15T20:00 7.5\n2026-03-16T20:00 7.9\n', days).alternative, /lowest 7\.5 mg\/L at 20:00 on 15 March, /);
  });

  test('the caption explains the marks that occur, and no others', () => {
    const text = (yaml: string): string => chartOf(yaml).caption.map((run) => run.text).join('');
    assert.match(text('show: DO\ncaption: One night'), /^One night\. Dissolved oxygen in the floating-mat tank and the open-surface tank, 14 to 15 March 2026\./);
    assert.match(text('show: DO'), /hollow: a doubtful reading; cross: a reading left out/);
    assert.doesNotMatch(text('show: mat.T'), /hollow|cross|dashed across/);
  });

  test('a note in Dutch writes decimal commas in the words', () => {
    assert.match(chartOf('show: DO', nightReadings, `language: nl\n${nightProtocol}`).alternative, /8,21 mg\/L/);
  });
});

suite('charts: SVG', () => {
  test('has the chart\'s size, a title, prefixed ids, and no number that is none', async () => {
    const note = nightNote();
    const chart = unthemedChart(note, readingsFigureOptions(1, note)!)!;
    const svg = await chartSvg(chart, { id: 'figure-9', variables: true });
    assert.match(svg, new RegExp(`^<svg [^>]*width="${chart.width}" height="${chart.height}" viewBox="0 0 ${chart.width} ${chart.height}" role="img" aria-labelledby="figure-9-title"><title id="figure-9-title">`));
    assert.doesNotMatch(svg, /NaN|undefined|Infinity|\bnull\b/);
    assert.doesNotMatch(svg, /<script|<image|<foreignObject|href=/);
    for (const [, id] of svg.matchAll(/\bid="([^"]+)"/g)) assert.match(id!, /^figure-9-/);
    assert.match(svg, /var\(--evenwater-tank-0, #0072B2\)/);
  });

  test('the frame that Vega works out is the size the chart states', async () => {
    // The translation of the outermost group is what `pad` found left of and above the first panel: our own margins.
    const chart = chartOf('show: DO');
    const svg = await chartSvg(chart, { id: 'f' });
    const frame = JSON.stringify(chart.specification).match(/"type":"rect","x":(-?\d+),"x2":([\d.]+),"y":(-?\d+),"y2":([\d.]+)/)!;
    assert.equal(Number(frame[2]) - Number(frame[1]), chart.width);
    assert.equal(Number(frame[4]) - Number(frame[3]), chart.height);
    assert.match(svg, new RegExp(`transform="translate\\(${-Number(frame[1])},${-Number(frame[3])}\\)"`));
  });

  test('drawing twice gives the same bytes', async () => {
    const chart = chartOf('show: [DO, T]');
    assert.equal(await chartSvg(chart, { id: 'a' }), await chartSvg(chart, { id: 'a' }));
  });

  test('the same bytes in another time zone and language', function () {
    this.timeout(60_000);
    const script = 'import(\'./test/unit/charts/drawOne.ts\').then((each) => each.drawOne()).then((svg) => process.stdout.write(svg));';
    const draw = (zone: string, language: string): string => execFileSync(process.execPath, ['--import', 'tsx', '-e', script],
      { encoding: 'utf8', env: { ...process.env, TZ: zone, LANG: language, LC_ALL: language }, maxBuffer: 1e8 });
    const first = draw('UTC', 'C');
    assert.ok(first.startsWith('<svg'));
    assert.equal(draw('Pacific/Auckland', 'de_DE.UTF-8'), first);
  });

  test('phone layout: a legend above, nothing right of the plot', () => {
    const note = nightNote();
    const options = readingsFigureOptions(1, note)!;
    const narrow = unthemedChart(note, { ...options, width: 350 })!;
    assert.equal(narrow.width, 350);
    assert.ok(narrow.height > 300);
  });
});
