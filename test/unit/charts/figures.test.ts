// Figures of computed series, panels for each tank or quantity, bands of uncertainty; colours that stay a tank's own.
import assert from 'node:assert/strict';
import { readFigureBlock } from '../../../src/experiment/figureBlock.ts';
import { unthemedChart } from '../../../src/charts/readingsChart.ts';
import { chartSvg } from '../../../src/charts/svg.ts';
import type { Chart } from '../../../src/charts/types.ts';
import { nightNote, nightProtocol, nightReadings } from './handmade.ts';

interface Layer { readonly mark: Readonly<Record<string, unknown>>; readonly data: { readonly values: readonly Readonly<Record<string, number>>[] }; readonly encoding: { readonly y?: { readonly scale?: { readonly domain: number[] } } } }
interface PanelSpec { readonly layer: readonly Layer[]; readonly width: number }

function figure(yaml: string, readings = nightReadings, protocol = nightProtocol) {
  const note = nightNote(`\`\`\`figure\n${yaml}\n\`\`\`\n`, readings, protocol);
  return { note, ...readFigureBlock(note.syntax.blocks.find((each) => each.word === 'figure')!, note.context) };
}
function chartOf(yaml: string, width = 680, readings = nightReadings, protocol = nightProtocol): Chart {
  const { note, options, problems } = figure(yaml, readings, protocol);
  assert.ok(options, problems.map((each) => each.code).join());
  const chart = unthemedChart(note, { ...options, width });
  assert.ok(chart);
  return chart;
}
const panelsOf = ({ specification }: Chart): PanelSpec[] => (specification['concat'] ?? specification['vconcat'] ?? [specification]) as PanelSpec[];
const marks = (panel: PanelSpec, type: string): Layer[] => panel.layer.filter((layer) => layer.mark['type'] === type);
const domain = (panel: PanelSpec): number[] | undefined => panel.layer.map((layer) => layer.encoding.y?.scale?.domain).find(Boolean);
const captionText = (chart: Chart): string => chart.caption.map((run) => run.text).join('');

suite('figures: computed series', () => {
  test('a difference of two tanks has a panel, a neutral colour and a name of its own', () => {
    const chart = chartOf('show: [DO, mat.DO - open.DO]');
    const panels = panelsOf(chart);
    assert.equal(panels.length, 2);
    assert.deepEqual(marks(panels[0]!, 'line').map((layer) => layer.mark['stroke']), ['evenwater:tank-0', 'evenwater:tank-1']);
    assert.deepEqual(marks(panels[1]!, 'line').map((layer) => layer.mark['stroke']), ['evenwater:computed']);
    assert.match(chart.alternative, /Floating-mat tank minus open-surface tank, difference in dissolved oxygen: starts at −0\.10 mg\/L \(20:00\), lowest −3\.16 mg\/L at 07:00/);
    assert.match(captionText(chart), /^Dissolved oxygen and difference in dissolved oxygen in the floating-mat tank and the open-surface tank/);
  });

  test('a function of one tank keeps the tank\'s colour, shape and dash, and alike ones share a panel', () => {
    const chart = chartOf('show: ["steps(mat.DO, every 1 h)", "steps(open.DO, every 1 h)"]');
    const [panel, ...more] = panelsOf(chart);
    assert.equal(more.length, 0);
    const plain = marks(panelsOf(chartOf('show: DO'))[0]!, 'line').map((layer) => [layer.mark['stroke'], layer.mark['strokeDash']]);
    assert.deepEqual(marks(panel!, 'line').map((layer) => [layer.mark['stroke'], layer.mark['strokeDash']]), plain);
    assert.match(chart.alternative, /^Line chart of changes in the dissolved oxygen in steps of 1 h \(mg\/L\)/);
  });

  test('a named result that is a series is shown by its name; unlike series have panels of their own', () => {
    const note = nightNote('```values\noxygen-gap = mat.DO - open.DO\n```\n\n```figure\nshow: [oxygen-gap, "saturation(mat.DO, standard-pressure)"]\n```\n');
    const { options } = readFigureBlock(note.syntax.blocks.find((each) => each.word === 'figure')!, note.context);
    const chart = unthemedChart(note, options!)!;
    assert.equal(panelsOf(chart).length, 2);
    assert.match(chart.alternative, /^Line chart of oxygen gap \(mg\/L\) and saturation of the dissolved oxygen/);
  });

  test('a computed line breaks where one of its readings is missing', () => {
    const [panel] = panelsOf(chartOf('show: mat.DO - open.DO'));
    const [line] = marks(panel!, 'line');
    assert.equal(new Set(line!.data.values.map((each) => each['s'])).size, 3, 'open.DO at 00:00 was not taken, mat.DO at 05:00 left out');
  });

  const raises = (yaml: string, code: string, place: string, fix: string | null = null): void => {
    test(`${code}: ${yaml.replace(/\n/g, ' / ')}`, () => {
      const { note, problems } = figure(yaml);
      const found = problems.find((each) => each.code === code);
      assert.ok(found, problems.map((each) => each.code).join());
      assert.equal(note.text.slice(found.range.start, found.range.end), place);
      if (fix !== null) assert.equal(found.fixes[0]?.edits[0]?.newText, fix);
    });
  };
  raises('show: ["min(mat.DO)"]', 'series-needed', '"min(mat.DO)"', 'mat.DO');
  raises('show: [mat.DO - opne.DO]', 'unknown-name', 'opne');
  raises('show: [steps(mat.DO, every 1 h)]', 'formula-needs-quotes', 'steps(mat.DO, every 1 h)', '"steps(mat.DO, every 1 h)"');
  raises('show: DO\nfacets: tank', 'option-value', 'tank', 'tanks');
  raises('show: DO\nuncertainty: maybe', 'option-value', 'maybe');
});

suite('figures: no second axis', () => {
  for (const key of ['second axis', 'axis', 'y2', 'right']) {
    test(key, () => {
      const { note, problems } = figure(`show: [mat.DO]\n${key}: mat.T`);
      const found = problems.find((each) => each.code === 'second-axis')!;
      assert.ok(found);
      let { text } = note;
      for (const edit of [...found.fixes[0]!.edits].sort((a, b) => b.range.start - a.range.start)) text = text.slice(0, edit.range.start) + edit.newText + text.slice(edit.range.end);
      assert.match(text, /show: \[mat\.DO, mat\.T\]\nfacets: quantities\n/);
    });
  }
});

suite('figures: facets', () => {
  test('a panel for each tank side by side, one scale for each quantity', () => {
    const chart = chartOf('show: [DO, T]\nfacets: tanks');
    const panels = panelsOf(chart);
    assert.equal(chart.specification['columns'], 2);
    assert.equal(panels.length, 4);
    assert.deepEqual(domain(panels[0]!), domain(panels[1]!));
    assert.deepEqual(domain(panels[2]!), domain(panels[3]!));
    assert.notDeepEqual(domain(panels[0]!), domain(panels[2]!));
    assert.match(captionText(chart), /One panel for each tank, with one scale for each quantity\./);
  });

  test('on a phone they stand one below the other', () => {
    const chart = chartOf('show: DO\nfacets: tanks', 350);
    assert.equal((chart.specification['vconcat'] as unknown[]).length, 2);
    assert.equal(chart.width, 350);
  });

  test('an event of one tank is drawn in its panel alone', () => {
    const rules = panelsOf(chartOf('show: DO\nfacets: tanks')).map((panel) => marks(panel, 'rule').filter((layer) => layer.mark['stroke'] === 'evenwater:event').flatMap((layer) => layer.data.values).length);
    assert.deepEqual(rules, [1, 0]);
  });

  test('quantities of one unit get a panel each where it is asked for', () => {
    const protocol = nightProtocol.replace('equalise:', '  NO3: {what: nitrate, unit: mg/L, with: test kit}\nequalise:').replace(/equalise:[\s\S]*$/, '');
    const readings = 'time mat.DO mat.NO3\n20:00 8.2 10\n21:00 8.1 11\n22:00 8.0 12\n';
    assert.equal(panelsOf(chartOf('show: mat', 680, readings, protocol)).length, 1);
    assert.equal(panelsOf(chartOf('show: mat\nfacets: quantities', 680, readings, protocol)).length, 2);
  });

  for (const [yaml, width] of [['show: [DO, T]\nfacets: tanks\nuncertainty: yes', 680], ['show: [DO, T]\nfacets: tanks', 350], ['show: [DO, mat.DO - open.DO]', 680], ['show: DO\ntitle: Oxygen\nfacets: tanks', 680]] as const) {
    test(`the drawing has the size it states: ${yaml.replace(/\n/g, ' / ')} at ${width}`, async () => {
      const chart = chartOf(yaml, width);
      const svg = await chartSvg(chart, { id: 'f' });
      const frame = JSON.stringify(chart.specification).match(/"type":"rect","x":(-?\d+),"x2":([\d.]+),"y":(-?\d+),"y2":([\d.]+)/)!;
      assert.deepEqual([Number(frame[2]) - Number(frame[1]), Number(frame[4]) - Number(frame[3])], [chart.width, chart.height]);
      // The translation of the outermost group is what Vega found left of and above the first panel: nothing reaches over our margins.
      assert.match(svg, new RegExp(`transform="translate\\(${-Number(frame[1])},${-Number(frame[3])}\\)"`));
    });
  }
});

suite('figures: phases', () => {
  const planned = nightProtocol.replace('limits:', 'phases:\n  feeding: 20:30..22:00\nlimits:');

  test('a phase that the plan states is framed with its name, and said', () => {
    const chart = chartOf('show: DO', 680, nightReadings, planned);
    const framed = marks(panelsOf(chart)[0]!, 'rect').filter((layer) => layer.mark['stroke'] === 'evenwater:muted');
    assert.deepEqual(framed.map((layer) => layer.data.values), [[{ t: Date.UTC(2026, 2, 14, 20, 30), u: Date.UTC(2026, 2, 14, 22) }]]);
    assert.match(JSON.stringify(chart.specification), /"text":"feeding"/);
    assert.match(captionText(chart), /framed: the phase feeding/);
    assert.match(chart.alternative, /Phase of the plan: feeding from 20:30 to 22:00\./);
  });

  test('a figure that does not reach it says nothing of it', () => {
    assert.doesNotMatch(captionText(chartOf('show: DO\nfrom: light-off', 680, nightReadings, planned)), /framed/);
  });
});

suite('figures: uncertainty', () => {
  test('a band of the 95 % interval from the instruments\' accuracy, said in caption and words', () => {
    const chart = chartOf('show: mat.DO\nuncertainty: yes');
    const [band] = marks(panelsOf(chart)[0]!, 'area');
    assert.ok(band);
    const first = band.data.values[0]!;
    // ± 0.1 mg/L as a rectangle and a step of 0.01 mg/L: 2 · √(0.1²/3 + 0.01²/12) = 0.1156 (JCGM 100:2008, 4.3.7 and F.2.2.1).
    assert.ok(Math.abs((first['h']! - first['l']!) / 2 - 2 * Math.sqrt(0.1 ** 2 / 3 + 0.01 ** 2 / 12)) < 1e-6, JSON.stringify(first));
    assert.match(captionText(chart), /band: 95 % interval from the accuracy and resolution of the instruments/);
    assert.match(chart.alternative, /each within ± 0\.12 mg\/L or less \(95 %\)/);
    const [low, high] = domain(panelsOf(chart)[0]!)!;
    assert.ok(band.data.values.every((each) => each['l']! >= low! && each['h']! <= high!));
  });

  test('the band of a difference is narrow where one instrument read both tanks', () => {
    const half = (yaml: string): number => { const first = marks(panelsOf(chartOf(yaml))[0]!, 'area')[0]!.data.values[0]!; return (first['h']! - first['l']!) / 2; };
    assert.ok(half('show: mat.DO - open.DO\nuncertainty: yes') < 0.1 * half('show: mat.DO\nuncertainty: yes'));
  });

  test('without it no band, and no accuracy is a warning', () => {
    assert.equal(marks(panelsOf(chartOf('show: mat.DO'))[0]!, 'area').length, 0);
    const { problems, note } = figure('show: mat.DO\nuncertainty: yes', nightReadings, nightProtocol.replace(', accuracy: 0.1 mg/L, resolution: 0.01 mg/L', ''));
    const found = problems.find((each) => each.code === 'uncertainty-unknown')!;
    assert.deepEqual([found.severity, note.text.slice(found.range.start, found.range.end)], ['warning', 'uncertainty']);
  });
});
