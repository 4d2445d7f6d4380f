// The post: one self-contained HTML file of a note, with its figures, its formulas and its readings; no script, no network.
import type { Token } from 'markdown-it';
import type { Problem } from '../problems/problem.ts';
import type { Note } from '../experiment/types.ts';
import type { Chart } from '../charts/types.ts';
import { unthemedChart } from '../charts/readingsChart.ts';
import { chartSvg } from '../charts/svg.ts';
import { formatInstant } from '../time/text.ts';
import { createRenderContext, type RenderContext } from '../render/context.ts';
import { element, escapeHtml, tameText, type Html } from '../render/html.ts';
import { datesWords } from '../charts/chartWords.ts';
import { languageOf } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import { dataSectionHtml } from './dataSection.ts';
import { embeddedFiles, embedMeta, type PostSource } from './embed.ts';
import { publishedOf, publishedWords } from './published.ts';
import { createPostParser } from './postMarkdown.ts';
import { referencesHtml } from './references.ts';
import { postStyle } from './style.ts';
import { appendixHtml } from './working.ts';

export interface PostOptions {
  /** File name without `.tank.md`: the name of the post, and its title when the note has none. */
  readonly stem: string;
  readonly toolVersion: string;
  /** Name of the note's file; default `<stem>.tank.md`. */
  readonly noteName?: string;
  /** The note's file as it is on disk; default its text as UTF-8. */
  readonly noteBytes?: Uint8Array;
  /** Time of publishing, as `readPublished` gives it; default the protocol's, else none is printed. */
  readonly published?: string;
}

/** Nothing may run and nothing may be fetched; the page's own style and images inside it are all there is. */
export const contentPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** Layout width of figures for phones. */
const phoneWidth = 350;

/** Every figure drawn twice: for a page and for a phone; the stylesheet shows one of them. */
async function drawFigures(context: RenderContext): Promise<Map<number, Html>> {
  const drawings = new Map<number, Html>();
  for (const [block, figure] of context.figures) {
    const id = `figure-${figure.number}`;
    const wide = await chartSvg(figure.chart, { id, variables: true });
    const small = unthemedChart(context.note, { ...figure.options, width: phoneWidth });
    const narrow = small ? await chartSvg(small, { id: `${id}-narrow`, variables: true }) : '';
    drawings.set(block, element('div', { class: narrow === '' ? null : 'wide' }, wide) + (narrow === '' ? '' : element('div', { class: 'narrow' }, narrow)));
  }
  return drawings;
}

/** The first heading of level 1, when the note starts with it: it becomes the page's title. */
function takeTitle(tokens: Token[]): { title: Token[]; rest: Token[] } {
  const first = tokens.findIndex((token) => token.type !== 'html_block' && token.type !== 'evenwater_block');
  const open = tokens[first];
  if (open?.type !== 'heading_open' || open.tag !== 'h1') return { title: [], rest: tokens };
  return { title: tokens.slice(first, first + 3), rest: [...tokens.slice(0, first), ...tokens.slice(first + 3)] };
}

const plain = (html: Html): string => html.replace(/<[^>]*>/g, '').replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&quot;/g, '"').replace(/&#39;/g, '\'').replace(/&amp;/g, '&').replace(/\s+/g, ' ').trim();

function bylineHtml(note: Note, published: string | null): Html {
  const { protocol } = note;
  if (!protocol) return '';
  const { schedule } = protocol;
  const language = languageOf(protocol.language);
  const words = postWords(language);
  const parts: Html[] = [];
  if (protocol.by) parts.push(escapeHtml(protocol.by.value));
  if (schedule) {
    const end = schedule.end ?? schedule.start;
    parts.push(element('time', { datetime: formatInstant(schedule.start, protocol.zone) }, escapeHtml(datesWords(schedule.start, end, protocol))));
  }
  if (protocol.place.name) parts.push(escapeHtml(protocol.place.name.value));
  if (published !== null) parts.push(words.published(element('time', { datetime: published }, escapeHtml(publishedWords(published, language)))));
  return parts.length === 0 ? '' : element('p', { class: 'byline' }, ...parts.map((part) => element('span', {}, part)));
}

/** What stands in the page's head: its rules, where it comes from, its title and its style. */
function headHtml({ protocol }: Note, source: PostSource, title: string): Html {
  return [
    '<meta charset="utf-8">',
    element('meta', { 'http-equiv': 'Content-Security-Policy', content: contentPolicy }),
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta name="referrer" content="no-referrer">',
    element('meta', { name: 'generator', content: `Evenwater ${source.toolVersion}` }),
    ...(protocol?.by ? [element('meta', { name: 'author', content: protocol.by.value })] : []),
    ...(protocol?.question ? [element('meta', { name: 'description', content: protocol.question.value })] : []),
    ...embedMeta(source),
    element('title', {}, escapeHtml(title)),
    `<style>${postStyle}</style>`,
  ].join('\n');
}

/**
 * Makes the post. `problems` are those found while drawing it; whether a note with errors may be published is the
 * caller's decision, from `note.problems`. Equal notes give equal bytes: no clock, no locale, no path goes in.
 */
export async function publishPost(note: Note, options: PostOptions): Promise<{ html: string; problems: Problem[] }> {
  const drawings = await drawFigures(createRenderContext(note, 'post'));
  const figureHtml = (block: number, _chart: Chart): Html => drawings.get(block) ?? '';
  const context = createRenderContext(note, 'post', figureHtml);
  const md = createPostParser({ noteFor: () => note, target: 'post', figureHtml }, () => context);
  const words = postWords(context.language);
  const env = {};
  const { title, rest } = takeTitle(md.parse(note.text, env));
  const name = note.protocol?.title?.value ?? options.stem;
  const heading = title.length > 0 ? md.renderer.render(title, md.options, env).trim() : element('h1', {}, escapeHtml(name));
  // Code that is wider than the page scrolls, by keyboard too.
  const text = md.renderer.render(rest, md.options, env).replace(/<pre(?=[ >])/g, '<pre tabindex="0"');
  const source: PostSource = {
    stem: options.stem, toolVersion: options.toolVersion, published: publishedOf(note, options.published),
    files: embeddedFiles(note, options.noteName ?? `${options.stem}.tank.md`, options.noteBytes),
  };
  const language = /^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/.test(note.protocol?.language ?? '') ? note.protocol!.language : 'en';
  const html = `<!doctype html>
<html lang="${escapeHtml(language)}">
<head>
${headHtml(note, source, plain(heading) || name)}
</head>
<body>
<a class="skip" href="#main">${escapeHtml(words.skip)}</a>
<main id="main">
<article class="evenwater-written">
<header>
${heading}
${bylineHtml(note, source.published)}
</header>
${text}</article>
${appendixHtml(context)}
${referencesHtml(context)}
${dataSectionHtml(context, source)}
<footer><p>${escapeHtml(words.foot(options.toolVersion))}</p></footer>
</main>
</body>
</html>
`;
  // Text that markdown-it wrote by itself, and the chart's, have not been through `escapeHtml`.
  return { html: tameText(html), problems: [] };
}
