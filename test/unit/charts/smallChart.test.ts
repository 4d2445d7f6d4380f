// The small chart of a hover: well-formed, in the theme's colours, true to the readings.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { parseFragment } from 'parse5';
import { smallChart } from '../../../src/charts/smallChart.ts';
import { chartColours } from '../../../src/charts/theme.ts';
import { readNote } from '../../../src/experiment/readNote.ts';

const plan = `question: Invented, to draw a small chart
place: {time zone: Europe/Amsterdam}
tanks:
  mat: {role: treatment}
  open: {role: control}
schedule: {start: 2026-03-14 20:00, end: 2026-03-15 00:00, light off: 22:00, every: 30 min}
measure:
  DO: {what: dissolved oxygen, unit: mg/L}
`;
const noteWith = (rows: string) => readNote(`# Small\n\n\`\`\`protocol\n${plan}\`\`\`\n\n\`\`\`readings\ntime  mat.DO\n${rows}\`\`\`\n`);
const draw = (rows: string, theme: 'light' | 'dark' | 'high-contrast' = 'light', mark: number | null = null) => {
  const note = noteWith(rows);
  const series = note.dataset.series.get('mat.DO');
  return series ? smallChart(note, series, theme, mark) : null;
};
const usual = '20:00  8.20\n20:30  8.10\n21:00  7.90?\n21:30  (2.00)  ; bumped the probe\n22:00  7.80\n22:30  7.60\n23:00  7.40\n';
const count = (svg: string, pattern: RegExp): number => [...svg.matchAll(pattern)].length;

suite('small chart', () => {
  test('its facts leave out what is left out', () => {
    deepEqual(draw(usual)?.facts, { readings: 6, from: '20:00', to: '23:00', lowest: '7.40', highest: '8.20' });
  });

  test('every reading is drawn as in the large charts, the line never over a gap', () => {
    const { svg } = draw(usual)!;
    equal(count(svg, /r="2\.2"/g), 5, 'plain readings');
    equal(count(svg, /r="3" /g), 1, 'doubtful ones');
    equal(count(svg, /l6,6m0,-6l-6,6/g), 1, 'left-out ones');
    equal(count(svg, /stroke-linejoin/g), 2, 'lines');
  });

  test('the dark hours are shaded, and one reading can be ringed', () => {
    const { svg } = draw(usual)!;
    equal(count(svg, new RegExp(`fill="${chartColours('light').dark}"`, 'g')), 1);
    const note = noteWith(usual);
    equal(count(smallChart(note, note.dataset.series.get('mat.DO')!, 'light', note.tables[0]!.rows[4]!.instant)!.svg, /r="6"/g), 1);
    equal(count(svg, /r="6"/g), 0);
  });

  test('the theme gives the colours', () => {
    for (const theme of ['light', 'dark', 'high-contrast'] as const) {
      const { svg } = draw(usual, theme)!;
      const colours = chartColours(theme);
      ok(svg.includes(`fill="${colours.background}"`) && svg.includes(`stroke="${colours['tank-0']}"`), theme);
    }
  });

  test('one reading, or readings that are all words, make no chart', () => {
    equal(draw('20:00  8.20\n'), null);
    equal(draw('20:00  -\n20:30  -\n'), null);
  });

  test('a level series, a thousand readings and readings outside the range stay inside the picture', () => {
    const many = Array.from({ length: 240 }, (_, index) => `${String(20 + Math.floor(index / 60)).padStart(2, '0')}:${String(index % 60).padStart(2, '0')}  ${(8 - index / 200).toFixed(2)}`).join('\n');
    for (const rows of ['20:00  8.20\n20:30  8.20\n', `${many}\n`, '20:00  8.20\n20:30  <0.10\n21:00  >20\n']) {
      const { svg, width, height } = draw(rows)!;
      const elements = parseFragment(svg).childNodes;
      equal(elements.length, 1);
      for (const [, x, y] of svg.matchAll(/c?x="([\d.-]+)" c?y="([\d.-]+)"/g)) ok(Number(x) >= 0 && Number(x) <= width && Number(y) >= 0 && Number(y) <= height, `${x}, ${y}`);
      ok(svg.length < 20_000 && !/NaN|Infinity/.test(svg));
    }
  });
});
