// One chart in its box: a shadow root on the placeholder, a drawing in it, and what was drawn last.
// Charts are drawn by the interpreter: the preview's content policy allows no code made from text.
import embed, { type Result } from 'vega-embed';
import { expressionInterpreter } from 'vega-interpreter';
import { themed } from '../charts/theme.ts';
import type { ChartTheme } from '../charts/types.ts';
import { showTooltip } from './tooltip.ts';

/** Nothing is ever fetched: data stand inside the specification. */
const refusingLoader = {
  load: () => Promise.reject(new Error('A chart loads nothing.')),
  sanitize: () => Promise.reject(new Error('A chart links nowhere.')),
  http: () => Promise.reject(new Error('A chart loads nothing.')),
  file: () => Promise.reject(new Error('A chart loads nothing.')),
};

export class ChartBox {
  readonly #placeholder: HTMLElement;
  readonly #root: ShadowRoot;
  #drawn = '';
  #result: Result | null = null;

  constructor(placeholder: HTMLElement) {
    this.#placeholder = placeholder;
    this.#root = placeholder.shadowRoot ?? placeholder.attachShadow({ mode: 'open' });
  }

  /** Draws the placeholder's specification, unless that is what stands there already. */
  async show(theme: ChartTheme): Promise<void> {
    const { evenwaterSpecification: specification = '', evenwaterMark: mark = specification } = this.#placeholder.dataset;
    const wanted = `${theme} ${mark}`;
    if (wanted === this.#drawn) return;
    this.#drawn = wanted;
    const frame = document.createElement('div');
    frame.setAttribute('aria-hidden', 'true'); // The placeholder itself carries the text alternative.
    try {
      const result = await embed(frame, themed(JSON.parse(specification) as Record<string, unknown>, theme), {
        mode: 'vega-lite', renderer: 'svg', actions: false, defaultStyle: false, tooltip: showTooltip(this.#root),
        ast: true, expr: expressionInterpreter, loader: refusingLoader, logLevel: 0,
      });
      this.#replace(wanted, frame, result);
    } catch (error) {
      frame.textContent = error instanceof Error ? error.message : String(error);
      frame.removeAttribute('aria-hidden');
      this.#replace(wanted, frame, null);
    }
  }

  /** Puts a finished drawing in the place of the one before, unless a newer one was asked for meanwhile. */
  #replace(wanted: string, frame: HTMLElement, result: Result | null): void {
    if (wanted !== this.#drawn) {
      result?.finalize();
      return;
    }
    this.#result?.finalize();
    this.#result = result;
    this.#root.replaceChildren(styleOf(this.#root), frame);
  }
}

function styleOf(root: ShadowRoot): HTMLStyleElement {
  const style = root.querySelector('style') ?? document.createElement('style');
  style.textContent = ':host{display:block;position:relative}svg{display:block;max-width:100%;height:auto}'
    + '.tip{position:absolute;pointer-events:none;white-space:pre;padding:4px 8px;font:12px var(--vscode-font-family,sans-serif);'
    + 'color:var(--vscode-editorHoverWidget-foreground);background:var(--vscode-editorHoverWidget-background);'
    + 'border:1px solid var(--vscode-editorHoverWidget-border)}';
  return style;
}
