// The Markdown parser of a post: claims and blocks drawn, raw HTML shown as text, links and images held to what a page
// without a network may have, headings with places to link to, and a note on the numbers below each paragraph.
import type { MarkdownIt, StateCore, Token } from 'markdown-it';
import { createNoteParser } from '../note/markdown.ts';
import { evenwaterMarkdown, type RenderOptions } from '../render/plugin.ts';
import type { RenderContext } from '../render/context.ts';
import { element, escapeHtml } from '../render/html.ts';
import { postWords } from '../words/post.ts';
import { imageAllowed, linkAllowed } from './links.ts';
import { workingNote } from './working.ts';

/** Ids that the page itself uses. */
const reservedIds = /^(?:main|how|how-\d+|claim-\d+|references|data|figure-.*)$/;

function plainText(tokens: readonly Token[] | null): string {
  return (tokens ?? []).map((token) => (token.children ? plainText(token.children) : token.type === 'softbreak' || token.type === 'hardbreak' ? ' ' : token.content)).join('');
}

/** `The night of 14 March` to `the-night-of-14-march`. */
export function headingId(text: string, taken: Set<string>): string {
  const base = text.trim().toLowerCase().replace(/[^\p{L}\p{N}\s_-]/gu, '').replace(/\s+/g, '-') || 'section';
  const safe = reservedIds.test(base) ? `section-${base}` : base;
  let id = safe;
  for (let count = 1; taken.has(id); count += 1) id = `${safe}-${count}`;
  taken.add(id);
  return id;
}

function tidyTokens(state: StateCore): void {
  const taken = new Set<string>();
  const { tokens } = state;
  for (let index = 0; index < tokens.length; index += 1) {
    const token = tokens[index]!;
    if (token.type === 'heading_open') token.attrSet('id', headingId(plainText(tokens[index + 1]?.children ?? null), taken));
    // The name of a language becomes a class; what is no such name is dropped.
    if (token.type === 'fence' && !/^[\p{L}\p{N}+#._-]{1,40}$/u.test(token.info.trim().split(/\s+/)[0] ?? '')) token.info = '';
    if (token.type === 'table_open') { token.attrJoin('class', 'evenwater-written-table'); }
    if (token.children) dropLinks(token.children);
  }
}

/** Turns links that a post may not have into plain text. */
function dropLinks(tokens: readonly Token[]): void {
  const open: boolean[] = [];
  for (const token of tokens) {
    if (token.type === 'link_open') {
      const kept = linkAllowed(String(token.attrGet('href') ?? ''));
      open.push(kept);
      if (!kept) token.type = 'evenwater_nothing';
      else if (/^https?:/i.test(String(token.attrGet('href')))) token.attrSet('rel', 'noopener noreferrer');
    } else if (token.type === 'link_close' && open.pop() === false) token.type = 'evenwater_nothing';
  }
}

/** Puts a note on its claims after each paragraph that has some. */
function addWorkings(state: StateCore): void {
  const result: Token[] = [];
  const { tokens } = state;
  tokens.forEach((token, index) => {
    result.push(token);
    if (token.type !== 'paragraph_close') return;
    const claims: number[] = [];
    const walk = (children: readonly Token[] | null): void => {
      for (const child of children ?? []) {
        const mark = (child.meta as { evenwaterMark?: { index: number } } | null)?.evenwaterMark;
        if (child.type === 'evenwater_claim' && mark) claims.push(mark.index);
        walk(child.children);
      }
    };
    walk(tokens[index - 1]?.children ?? null);
    if (claims.length === 0) return;
    const working = new state.Token('evenwater_working', '', 0);
    working.block = true;
    working.meta = { claims };
    result.push(working);
  });
  state.tokens = result;
}

/** @param contextOf gives the context that the post is made with */
export function createPostParser(options: RenderOptions, contextOf: () => RenderContext): MarkdownIt {
  const md = createNoteParser();
  evenwaterMarkdown(md, options);
  md.validateLink = () => true; // links are looked at by `dropLinks`, images by the rule below
  md.core.ruler.push('evenwater_post', tidyTokens);
  md.core.ruler.push('evenwater_workings', addWorkings);
  md.renderer.rules['evenwater_nothing'] = () => '';
  md.renderer.rules['evenwater_working'] = (tokens, index) => `${workingNote((tokens[index]!.meta as { claims: number[] }).claims, contextOf())}\n`;
  const commentless = (html: string): string => html.replace(/<!--[\s\S]*?-->/g, '');
  md.renderer.rules.html_block = (tokens, index) => {
    const text = commentless(tokens[index]!.content).trim();
    return text === '' ? '' : `${element('pre', { class: 'raw-html' }, element('code', {}, escapeHtml(text)))}\n`;
  };
  md.renderer.rules.html_inline = (tokens, index) => escapeHtml(commentless(tokens[index]!.content));
  md.renderer.rules.image = (tokens, index) => {
    const token = tokens[index]!;
    const source = String(token.attrGet('src') ?? '');
    const words = plainText(token.children);
    const say = postWords(contextOf().language);
    if (imageAllowed(source)) return element('img', { src: source, alt: words });
    const label = escapeHtml(words === '' ? say.imageAt(source) : say.image(words));
    return linkAllowed(source) ? element('a', { href: source, class: 'image-link' }, label) : label;
  };
  return md;
}
