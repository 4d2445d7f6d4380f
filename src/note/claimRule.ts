// The markdown-it plugin that finds claims: an inline rule at `{` and one that keeps maths together, both only in notes.
// It imports types only, so that it works with the Markdown preview's own markdown-it.
import type { Env, MarkdownIt, StateCore, StateInline, Token } from 'markdown-it';
import { scanClaim, type ScannedClaim } from './scanClaim.ts';
import { displayMaths, mathsEnd } from './maths.ts';

/** What stands in `token.meta` of an `evenwater_claim`. Places are relative to the inline source that held the claim. */
export type ClaimMeta = { readonly [part in keyof ScannedClaim]: ScannedClaim[part] } & {
  readonly start: number;
  /** As written before the separator, Markdown escapes included. */
  readonly words: string;
  readonly formula: string;
};

/** What the core rule leaves in markdown-it's `env` for the inline rules. */
export interface NoteEnvironment extends Env {
  evenwater?: { readonly isNote: boolean; readonly maths: ReadonlySet<string> };
}

/** The first word of a fence's info string, and the second, or ''. */
export function infoWords(info: string): readonly [string, string] {
  const [first = '', second = ''] = info.trim().split(/\s+/);
  return [first, second];
}

/** True when the tokens hold a `protocol` block: the mark of a note. */
export function hasProtocol(tokens: readonly Token[]): boolean {
  return tokens.some((token) => token.type === 'fence' && infoWords(token.info)[0] === 'protocol');
}

/** Sets in `env` whether the document is a note, and where display maths stands. */
export function markNote(tokens: readonly Token[], env: NoteEnvironment): boolean {
  const isNote = hasProtocol(tokens);
  env.evenwater = { isNote, maths: isNote ? displayMaths(tokens) : new Set() };
  return isNote;
}

function inNote(state: StateInline): boolean {
  const { evenwater } = state.env as NoteEnvironment;
  return evenwater !== undefined && evenwater.isNote && !(evenwater.maths.size > 0 && evenwater.maths.has(state.src));
}

/** The inline rule at `{`. */
function claim(state: StateInline, silent: boolean): boolean {
  if (state.src.charCodeAt(state.pos) !== 0x7b || !inNote(state)) return false;
  const scanned = scanClaim(state.src, state.pos);
  if (!scanned || scanned.end > state.posMax) return false;
  if (!silent) {
    const token = state.push('evenwater_claim', '', 0);
    const words = state.src.slice(scanned.wordsStart, scanned.wordsEnd);
    const meta: ClaimMeta = { ...scanned, start: state.pos, words, formula: state.src.slice(scanned.formulaStart, scanned.formulaEnd) };
    token.content = state.md.utils.unescapeAll(words);
    token.markup = state.src.slice(state.pos, scanned.end);
    token.meta = meta;
  }
  state.pos = scanned.end;
  return true;
}

/** The inline rule at `$`: maths comes out as it was written. A maths plugin's own rule goes before. */
function maths(state: StateInline, silent: boolean): boolean {
  if (state.src.charCodeAt(state.pos) !== 0x24 || !inNote(state)) return false;
  const end = mathsEnd(state.src, state.pos, state.posMax);
  if (end < 0) return false;
  if (!silent) state.pending += state.src.slice(state.pos, end);
  state.pos = end;
  return true;
}

/** In the text of an image nothing is computed: a claim there is the plain text it was. */
function plainImageText(tokens: readonly Token[]): void {
  for (const token of tokens) {
    if (token.type === 'image') for (const child of token.children ?? []) {
      if (child.type === 'evenwater_claim') { child.type = 'text'; child.content = child.markup; child.markup = ''; child.meta = null; }
    }
    if (token.children) plainImageText(token.children);
  }
}

/** Adds the token type `evenwater_claim` to a markdown-it instance; it arises only in documents with a `protocol` block. Adding it again does nothing. */
export function claimRule(md: MarkdownIt): void {
  if (md.renderer.rules['evenwater_claim']) return;
  md.core.ruler.before('inline', 'evenwater_note', (state: StateCore) => {
    if (!state.inlineMode) markNote(state.tokens, state.env as NoteEnvironment);
  });
  md.core.ruler.after('inline', 'evenwater_image_text', (state: StateCore) => {
    if ((state.env as NoteEnvironment).evenwater?.isNote) plainImageText(state.tokens);
  });
  md.inline.ruler.before('link', 'evenwater_claim', claim);
  md.inline.ruler.push('evenwater_maths', maths);
  md.renderer.rules['evenwater_claim'] = (tokens, index) => md.utils.escapeHtml(tokens[index]!.content);
}
