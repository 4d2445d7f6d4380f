// Colours: contrast in every theme, a shape and a dash beside every colour, tokens replaced everywhere.
import assert from 'node:assert/strict';
import { chartColours, dashOf, hueCount, tankColour, tankShape, themed, withVariables, type ColourName } from '../../../src/charts/theme.ts';
import type { ChartTheme } from '../../../src/charts/types.ts';

/** WCAG 2.2, definition of relative luminance and contrast ratio. */
function contrast(first: string, second: string): number {
  const luminance = (hex: string): number => {
    const [red, green, blue] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255).map((each) => (each <= 0.04045 ? each / 12.92 : ((each + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [low, high] = [luminance(first), luminance(second)].sort((a, b) => a - b);
  return (high! + 0.05) / (low! + 0.05);
}

suite('charts: colours', () => {
  const themes: ChartTheme[] = ['light', 'dark', 'high-contrast', 'high-contrast-light', 'print'];
  for (const theme of themes) {
    test(`lines and labels are legible on the ${theme} ground`, () => {
      const colours = chartColours(theme);
      const least = theme.startsWith('high') ? 7 : 4.5;
      for (const name of ['text', 'muted', 'limit', 'room', ...Array.from({ length: hueCount }, (_, index) => `tank-${index}`)] as ColourName[]) {
        const ratio = contrast(colours[name], colours.background);
        assert.ok(ratio >= least, `${name} has ${ratio.toFixed(2)} on the background`);
      }
      // On shaded hours lines still have the 3:1 that WCAG 1.4.11 asks of graphics.
      for (let index = 0; index < hueCount; index += 1) assert.ok(contrast(colours[tankColour(index)], colours.dark) >= 3);
    });
  }

  test('no two of the first seven tanks share a colour, a shape or a dash', () => {
    const indexes = [0, 1, 2, 3, 4, 5, 6];
    assert.equal(new Set(indexes.map((index) => chartColours('light')[tankColour(index)])).size, 7);
    assert.equal(new Set(indexes.map(tankShape)).size, 7);
    assert.equal(new Set(indexes.map((index) => dashOf(index).join())).size, 7);
  });

  test('a tank beyond the seventh repeats a hue with another shape', () => {
    assert.equal(tankColour(7), tankColour(0));
    assert.notEqual(tankShape(7), tankShape(0));
  });

  test('colour names are replaced at any depth, own colours first', () => {
    const specification = { a: 'evenwater:text', b: [{ c: 'evenwater:tank-1', d: 'plain' }], e: null, f: 3 };
    assert.deepEqual(themed(specification, 'dark', { text: '#123456' }), { a: '#123456', b: [{ c: '#F2994A', d: 'plain' }], e: null, f: 3 });
    assert.deepEqual(withVariables({ a: 'evenwater:tank-0' }), { a: 'var(--evenwater-tank-0, #0072B2)' });
  });
});
