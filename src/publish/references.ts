// The sources a post rests on: of stated claims, of limits, of the equations used, of the methods.
import type { RenderContext } from '../render/context.ts';
import { functionByName } from '../formula/catalogue.ts';
import { describedIn } from '../formula/catalogue/described.ts';
import { writeMethods } from '../writing/methods.ts';
import { writeResults } from '../writing/results.ts';
import { postWords } from '../words/post.ts';
import { element, escapeHtml, type Html } from '../render/html.ts';

/** Every source once, in alphabetical order (by code unit, the same everywhere). */
export function sourcesOf(context: RenderContext): string[] {
  const { note } = context;
  const sources = new Set<string>();
  const add = (text: string | null | undefined): void => { if (text && text.trim() !== '') sources.add(text.trim()); };
  for (const claim of note.claims) if (claim.syntax.form === 'stated') add(claim.syntax.source);
  for (const limit of note.protocol?.limits ?? []) add(limit.source);
  const evaluations = [...note.claims.map((claim) => claim.evaluation), ...note.results.map((result) => result.evaluation)];
  for (const evaluation of evaluations) for (const step of evaluation?.working ?? []) {
    const entry = step.function === null ? null : functionByName(step.function);
    if (entry) add(describedIn(context.language, entry).source);
  }
  const words = new Set(note.syntax.blocks.map((block) => block.word));
  const paragraphs = [...(words.has('methods') ? writeMethods(note) : []), ...(words.has('results') ? writeResults(note) : [])];
  for (const paragraph of paragraphs) for (const run of paragraph.runs) if (run.kind === 'citation') add(run.source);
  // One work is one entry, also where a function says what it takes from it: `…, for the solubility`.
  const works = [...sources].filter((source) => ![...sources].some((other) => source.startsWith(`${other}, `)));
  return works.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
}

export function referencesHtml(context: RenderContext): Html {
  const sources = sourcesOf(context);
  if (sources.length === 0) return '';
  return element('section', { class: 'references', 'aria-labelledby': 'references' }, element('h2', { id: 'references' }, postWords(context.language).references),
    element('ul', {}, ...sources.map((source) => element('li', {}, escapeHtml(source)))));
}
