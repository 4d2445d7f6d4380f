// The post as plain Markdown for forums and blogs: the author's own text with its claims as plain words, every block as
// text, lists, tables and image files, and the same appendix, references and data section as the page.
import type { Chart } from '../../charts/types.ts';
import { unthemedChart } from '../../charts/readingsChart.ts';
import { chartSvg } from '../../charts/svg.ts';
import type { Note } from '../../experiment/types.ts';
import { createNoteParser } from '../../note/markdown.ts';
import { toDocumentRange } from '../../note/mappedText.ts';
import { blockHtml } from '../../render/block.ts';
import { createRenderContext } from '../../render/context.ts';
import { element } from '../../render/html.ts';
import { dataSectionHtml } from '../dataSection.ts';
import { embeddedFiles } from '../embed.ts';
import type { PostOptions } from '../post.ts';
import { publishedOf } from '../published.ts';
import { referencesHtml } from '../references.ts';
import { appendixHtml } from '../working.ts';
import { parseHtml } from './htmlTree.ts';
import { escapeMarkdown, toMarkdown } from './toMarkdown.ts';

export interface PublishedFile { readonly path: string; readonly content: string | Uint8Array }

/** A chart as an image file of its own, in the colours of paper. */
export async function figureSvg(chart: Chart, id: string): Promise<string> {
  const drawn = await chartSvg(chart, { id });
  return `${drawn.replace(/^(<svg[^>]*>\s*<title[^>]*>[^<]*<\/title>)/, '$1<rect width="100%" height="100%" fill="#FFFFFF"/>')}\n`;
}

interface Edit { readonly start: number; readonly end: number; readonly text: string }

/** Comments of the note's text, outside code and blocks: the author's own, not for readers. */
function commentEdits(note: Note): Edit[] {
  const starts = [0];
  for (const match of note.text.matchAll(/\r\n|\n|\r/g)) starts.push(match.index + match[0].length);
  const code = createNoteParser().parse(note.text, {}).filter((token) => (token.type === 'fence' || token.type === 'code_block') && token.map)
    .map((token) => ({ start: starts[token.map![0]] ?? 0, end: starts[token.map![1]] ?? note.text.length }));
  return [...note.text.matchAll(/<!--[\s\S]*?-->/g)].filter((match) => !code.some((each) => match.index >= each.start && match.index < each.end))
    .map((match) => ({ start: match.index, end: match.index + match[0].length, text: '' }));
}

/** The words of a claim as they stand in the note, Markdown and all; the computed value where they were left open. */
function claimEdits(note: Note): Edit[] {
  return note.claims.map((claim) => {
    const { range, words, form } = claim.syntax;
    const place = toDocumentRange(words, { start: 0, end: words.text.length });
    return { start: range.start, end: range.end, text: form === 'unfilled' ? escapeMarkdown(claim.computed ?? '?') : note.text.slice(place.start, place.end) };
  });
}

function frontMatter(note: Note, title: string, published: string | null): string {
  const { protocol } = note;
  const fields: [string, string | null | undefined][] = [
    ['title', title], ['description', protocol?.question?.value], ['author', protocol?.by?.value], ['date', published], ['lang', protocol?.language], ['license', protocol?.licence?.value],
  ];
  return `---\n${fields.filter((field): field is [string, string] => typeof field[1] === 'string' && field[1] !== '').map(([key, value]) => `${key}: ${JSON.stringify(value)}`).join('\n')}\n---\n\n`;
}

/** `<stem>.post.md` with its figures as SVG files beside it. Equal notes give equal files. */
export async function publishMarkdown(note: Note, options: PostOptions & { readonly frontMatter?: boolean }): Promise<PublishedFile[]> {
  const files: PublishedFile[] = [];
  const numbering = createRenderContext(note, 'post');
  const name = (block: number): string => `${options.stem}-figure-${numbering.figures.get(block)!.number}.svg`;
  for (const [block, figure] of numbering.figures) {
    const chart = unthemedChart(note, figure.options) ?? figure.chart;
    files.push({ path: name(block), content: await figureSvg(chart, `figure-${figure.number}`) });
  }
  const context = createRenderContext(note, 'post', (block, chart) => element('img', { src: encodeURI(name(block)), alt: chart.alternative }));
  const published = publishedOf(note, options.published);
  const blockEdits = note.syntax.blocks.map((block, index): Edit => {
    const prefix = block.linePrefix ?? '';
    const text = toMarkdown(parseHtml(blockHtml(index, block.content.text, context)));
    return { start: block.range.start, end: block.range.end, text: text.split('\n').map((each, place) => (place === 0 ? each : (prefix + each).trimEnd())).join('\n') };
  });
  const within = (edit: Edit): boolean => note.syntax.blocks.some((block) => edit.start >= block.range.start && edit.start < block.range.end);
  const edits = [...blockEdits, ...[...claimEdits(note), ...commentEdits(note)].filter((edit) => !within(edit))].sort((a, b) => a.start - b.start);
  let text = '';
  let at = 0;
  for (const edit of edits) {
    if (edit.start < at) continue;
    text += note.text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  text = (text + note.text.slice(at)).replace(/\r\n?/g, '\n').replace(/\n{3,}/g, '\n\n').trim();
  const first = note.syntax.headings[0];
  const ownTitle = first?.level === 1 && note.text.slice(0, first.range.start).trim() === '' ? first.text : null;
  const title = ownTitle ?? note.protocol?.title?.value ?? options.stem;
  const source = { stem: options.stem, toolVersion: options.toolVersion, published, files: embeddedFiles(note, options.noteName ?? `${options.stem}.tank.md`, options.noteBytes) };
  const rest = [appendixHtml(context), referencesHtml(context), dataSectionHtml(context, source)].map((html) => toMarkdown(parseHtml(html))).filter((each) => each !== '');
  const markdown = [...(ownTitle === null ? [`# ${escapeMarkdown(title)}`] : []), text, ...rest].join('\n\n');
  return [{ path: `${options.stem}.post.md`, content: `${options.frontMatter ? frontMatter(note, title, published) : ''}${markdown}\n` }, ...files];
}
