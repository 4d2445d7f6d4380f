// The markdown-it plugin: blocks and claims of a note to HTML. A document without a protocol block is left alone.
import type MarkdownIt from 'markdown-it';
import type { Chart } from '../charts/types.ts';
import type { Note } from '../experiment/types.ts';

export interface RenderOptions {
  /** The note that `source` (the text given to markdown-it) was read into; null leaves the blocks as plain fences. */
  readonly noteFor: (env: unknown, source: string) => Note | null;
  readonly target: 'preview' | 'post';
  /** Post only: the drawing of a chart, made beforehand. `block` is the index in NoteSyntax.blocks. */
  readonly figureHtml?: (block: number, chart: Chart) => string;
}

/** Teaches a markdown-it instance to show notes. Works with markdown-it 12 to 15; uses nothing but the instance. */
export function evenwaterMarkdown(md: MarkdownIt, _options: RenderOptions): MarkdownIt {
  return md;
}
