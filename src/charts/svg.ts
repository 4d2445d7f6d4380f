// A chart as one SVG element, drawn without a browser: no canvas, no network, no code from text, the same bytes everywhere.
import { compile, type TopLevelSpec } from 'vega-lite';
import * as vega from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import type { Chart } from './types.ts';
import { themed, withVariables } from './theme.ts';
import { textWidth } from './layout.ts';

export interface SvgOptions {
  /** Unique in the page: prefixes every id inside the SVG. */
  readonly id: string;
  /** True: colours are CSS variables with the light theme's colour as fallback, so that a page can switch them. */
  readonly variables?: boolean;
}

/** Parts of Vega that its type declarations leave out. */
const { SVGStringRenderer, textMetrics } = vega as unknown as {
  SVGStringRenderer: new (loader: vega.Loader) => {
    initialize(element: null, width: number, height: number, origin: readonly [number, number]): { render(scene: unknown): { svg(): string } };
  };
  textMetrics: { width(item: { fontSize?: number }, text: unknown): number };
};

/** Refuses every address: a chart's data are inside it. */
const loader = {
  load: () => Promise.reject(new Error('charts load nothing')),
  sanitize: () => Promise.reject(new Error('charts link to nothing')),
  http: () => Promise.reject(new Error('charts load nothing')),
  file: () => Promise.reject(new Error('charts load nothing')),
} as unknown as vega.Loader;

const escapeText = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** Draws the chart. Rejects only on a programming error. */
export async function chartSvg(chart: Chart, options: SvgOptions): Promise<string> {
  const specification = options.variables ? withVariables(chart.specification) : themed(chart.specification, 'light');
  const compiled = compile(specification as unknown as TopLevelSpec, { logger: silent() });
  const measure = textMetrics.width;
  // Text is measured by our own table, never by a canvas, and ids start anew: the same chart gives the same bytes.
  textMetrics.width = (item, text) => textWidth(String(text ?? ''), item.fontSize ?? 11);
  vega.resetSVGDefIds();
  try {
    const view = new vega.View(vega.parse(compiled.spec, undefined, { ast: true }), { renderer: 'none', expr: expressionInterpreter, loader, logger: silent() } as never);
    await view.runAsync();
    const { root } = (view as unknown as { scenegraph(): { root: unknown } }).scenegraph();
    const drawn = new SVGStringRenderer(loader).initialize(null, view.width(), view.height(), view.origin() as [number, number]).render(root).svg();
    view.finalize();
    return dress(drawn, chart, options.id);
  } finally {
    textMetrics.width = measure;
  }
}

/** Puts our own root element round the drawing: size, text alternative, ids with the page's prefix. */
function dress(drawn: string, chart: Chart, id: string): string {
  const inner = drawn.replace(/^<svg[^>]*>/, '').replace(/<\/svg>\s*$/, '')
    .replace(/<[a-z][^<>]*>/g, (tag) => tag.replace(/ (?:role|aria-[a-z]+|class)="[^"]*"/g, '')
      // Hundredths of a pixel are enough, and the last digits of a double are nobody's business.
      .replace(/ (?:d|transform|x|y|x2|y2|width|height)="[^"]*"/g, (attribute) => attribute.replace(/-?\d+\.\d{3,}(?:e-?\d+)?/g, (number) => String(Number(Number(number).toFixed(2)) || 0)))
      .replace(/\bid="([^"]+)"/g, (_, name: string) => `id="${id}-${name}"`)
      .replace(/url\(#([^)]+)\)/g, (_, name: string) => `url(#${id}-${name})`));
  return `<svg xmlns="http://www.w3.org/2000/svg" class="evenwater-drawing" width="${chart.width}" height="${chart.height}" viewBox="0 0 ${chart.width} ${chart.height}" role="img" aria-labelledby="${id}-title">`
    + `<title id="${id}-title">${escapeText(chart.alternative)}</title>${inner}</svg>`;
}

function silent(): never {
  const none = (): unknown => logger;
  const logger = { level: none, error: none, warn: none, info: none, debug: none };
  return logger as never;
}
