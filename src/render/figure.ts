// A figure: the drawing (or, in the preview, a sized place for it), its caption and the same in words.
import type { Chart } from '../charts/types.ts';
import type { BlockFigure, RenderContext } from './context.ts';
import { element, escapeHtml, jsonText, type Html } from './html.ts';
import { runsHtml } from './proseBlock.ts';

/** A short mark of the chart's content, so that the preview script redraws only what changed (FNV-1a, 32 bit). */
function contentMark(text: string): string {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    hash ^= text.charCodeAt(index);
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  return hash.toString(16).padStart(8, '0');
}

/**
 * The place of a chart in the preview. The specification has colour names (`evenwater:tank-0`) in place of colours: the
 * script puts the theme's in with `themed` of src/charts/theme.ts. The box has the chart's size, so nothing moves when
 * the drawing arrives.
 */
function placeHtml(chart: Chart): Html {
  const specification = jsonText(chart.specification);
  return element('div', {
    class: 'evenwater-chart', role: 'img', 'aria-label': chart.alternative,
    style: `width:${chart.width}px;max-width:100%;aspect-ratio:${chart.width} / ${chart.height}`,
    'data-evenwater-specification': specification, 'data-evenwater-mark': contentMark(specification),
    'data-evenwater-width': chart.width, 'data-evenwater-height': chart.height,
  });
}

export function figureHtml(blockIndex: number, figure: BlockFigure, context: RenderContext): Html {
  const { chart } = figure;
  const drawing = context.target === 'post' && context.figureHtml ? context.figureHtml(blockIndex, chart) : placeHtml(chart);
  const caption = element('figcaption', {}, element('span', { class: 'evenwater-number-label' }, context.words.figure(figure.number)), ' ', runsHtml(chart.caption, context));
  const words = element('details', { class: 'evenwater-alternative' }, element('summary', {}, context.words.figureInWords), element('p', {}, escapeHtml(chart.alternative)));
  return element('figure', { class: 'evenwater-figure' }, drawing, caption, words);
}
