// The markdown-it plugin: blocks and claims of a note to HTML. A document without a protocol block is left alone.
// It uses nothing but the instance it is given, so that it works with the Markdown preview's own markdown-it (12 to 15).
import type { MarkdownIt, RendererRule, StateCore, Token } from 'markdown-it';
import type { Chart } from '../charts/types.ts';
import type { CheckedClaim } from '../claims/types.ts';
import type { Note } from '../experiment/types.ts';
import { claimRule, hasProtocol, infoWords, type ClaimMeta } from '../note/claimRule.ts';
import { blockWords, type BlockWord } from '../note/syntax.ts';
import { blockHtml } from './block.ts';
import { ChartCache } from './chartCache.ts';
import { claimHtml } from './claim.ts';
import { createRenderContext, previewLanguage, type RenderContext } from './context.ts';
import type { Language } from '../words/languages.ts';
import { attributesHtml } from './html.ts';

export interface RenderOptions {
  /** The note that `source` (the text given to markdown-it) was read into; null leaves the blocks as plain fences. */
  readonly noteFor: (env: unknown, source: string) => Note | null;
  readonly target: 'preview' | 'post';
  /** Preview only: the language of problems. Default English. */
  readonly interfaceLanguage?: Language;
  /** Post only: the drawing of a chart, made beforehand. `block` is the index in NoteSyntax.blocks. */
  readonly figureHtml?: (block: number, chart: Chart) => string;
}

/** What the core rule leaves on a token of ours: the source, and the place among the claims or the blocks. */
interface Marked { readonly source: string; readonly index: number }
const marks = 'evenwaterMark';

function markOf(token: Token): Marked | null {
  return ((token.meta as Record<string, unknown> | null)?.[marks] as Marked | undefined) ?? null;
}

function setMark(token: Token, mark: Marked): void {
  token.meta = { ...(token.meta as Record<string, unknown> | null), [marks]: mark };
}

/** Marks blocks and claims with the source they stand in. Nothing is computed here: the preview parses and renders apart. */
function markTokens(state: StateCore): void {
  if (!hasProtocol(state.tokens)) return;
  const source = state.src;
  let block = 0;
  let claim = 0;
  const walk = (tokens: readonly Token[]): void => {
    for (const token of tokens) {
      if (token.type === 'fence' && (blockWords as readonly string[]).includes(infoWords(token.info)[0])) {
        token.type = 'evenwater_block';
        setMark(token, { source, index: block });
        block += 1;
      } else if (token.type === 'evenwater_claim') {
        setMark(token, { source, index: claim });
        claim += 1;
      }
      if (token.children) walk(token.children);
    }
  };
  walk(state.tokens);
}

/** The checked claim of a token: the one at its place, when its text agrees; else the first that agrees. */
function findClaim(note: Note, token: Token, index: number): { claim: CheckedClaim; index: number } | null {
  const meta = token.meta as ClaimMeta | null;
  const tidy = (text: string): string => text.replace(/\s+/g, ' ').trim();
  const agrees = (claim: CheckedClaim | undefined): claim is CheckedClaim => claim !== undefined && meta !== null
    && claim.syntax.form === meta.form && tidy(claim.syntax.formula.text) === tidy(meta.formula);
  const here = note.claims[index];
  if (agrees(here)) return { claim: here, index };
  const found = note.claims.findIndex((claim) => agrees(claim) && tidy(claim.syntax.words.text) === tidy(meta!.words));
  return found < 0 ? null : { claim: note.claims[found]!, index: found };
}

/** The block of a token: the one that starts on its line; else the one at its place among the blocks. */
function findBlock(note: Note, token: Token, index: number): number | null {
  const word = infoWords(token.info)[0] as BlockWord;
  const line = token.map?.[0];
  const found = note.syntax.blocks.findIndex((block) => block.startLine === line && block.word === word);
  if (found >= 0) return found;
  return note.syntax.blocks[index]?.word === word ? index : null;
}

/** Teaches a markdown-it instance to show notes. */
export function evenwaterMarkdown(md: MarkdownIt, options: RenderOptions): MarkdownIt {
  claimRule(md);
  md.core.ruler.push('evenwater_marks', markTokens);

  // One context a note: numbering and charts are worked out once, however many blocks and claims ask for them.
  const contexts = new WeakMap<Note, RenderContext>();
  const charts = new ChartCache();
  const contextFor = (env: unknown, source: string): RenderContext | null => {
    const note = options.noteFor(env, source);
    if (!note) return null;
    let context = contexts.get(note);
    if (!context) contexts.set(note, context = createRenderContext(note, options.target, options.figureHtml ?? null, charts, options.interfaceLanguage));
    return context;
  };

  const plainFence: RendererRule = (tokens, index, settings, env, renderer) => md.renderer.rules.fence!(tokens, index, settings, env, renderer);

  md.renderer.rules['evenwater_block'] = (tokens, index, settings, env, renderer) => {
    const token = tokens[index]!;
    const mark = markOf(token);
    const context = mark && contextFor(env, mark.source);
    const block = mark && context ? findBlock(context.note, token, mark.index) : null;
    if (!context || block === null) return plainFence(tokens, index, settings, env, renderer);
    const word = context.note.syntax.blocks[block]!.word;
    // `class="code-line" data-line` of the preview's scroll sync stay on our element.
    const attributes: Record<string, string | number> = {};
    for (const [name, value] of token.attrs ?? []) attributes[name] = value;
    const { class: classes, ...rest } = attributes;
    return `<div${attributesHtml({ class: `evenwater-block evenwater-block-${word}${classes ? ` ${classes}` : ''}`, lang: previewLanguage(context, context.language), ...rest })}>${blockHtml(block, token.content, context)}</div>\n`;
  };

  md.renderer.rules['evenwater_claim'] = (tokens, index, _settings, env) => {
    const token = tokens[index]!;
    const mark = markOf(token);
    const context = mark && contextFor(env, mark.source);
    const found = mark && context ? findClaim(context.note, token, mark.index) : null;
    return found && context ? claimHtml(found.claim, token.content, found.index, context) : md.utils.escapeHtml(token.content);
  };
  return md;
}
