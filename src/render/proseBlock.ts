// Generated prose (methods, results) as HTML: every computed value keeps its formula, every citation its source.
import type { Paragraph, Run } from '../writing/types.ts';
import type { RenderContext } from './context.ts';
import { dataHtml, formulaWords } from './context.ts';
import { element, escapeHtml, type Html } from './html.ts';
import { unbrokenClass, unbrokenHtml } from './unbroken.ts';

function runHtml(run: Run, context: RenderContext): Html {
  switch (run.kind) {
    case 'text': return unbrokenHtml(run.text);
    case 'value': return dataHtml(run.text, run.machine, run.formula, formulaWords(context, run.formula), unbrokenClass(run.text));
    case 'citation': return element('cite', { class: 'evenwater-cite', title: run.source }, escapeHtml(run.text));
  }
}

export function runsHtml(runs: readonly Run[], context: RenderContext): Html {
  return runs.map((run) => runHtml(run, context)).join('');
}

export function proseHtml(paragraphs: readonly Paragraph[], word: 'methods' | 'results', context: RenderContext): Html {
  if (paragraphs.length === 0) {
    return element('p', { class: 'evenwater-empty' }, word === 'methods' ? context.words.noMethods : context.words.noResults);
  }
  const parts = paragraphs.map((paragraph) => element('p', {}, runsHtml(paragraph.runs, context)));
  return element('div', { class: `evenwater-prose evenwater-${word}` }, ...parts);
}
