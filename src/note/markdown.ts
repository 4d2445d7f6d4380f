// The Markdown parser of notes: markdown-it with the claim rule and with maths kept out of the way.
import createMarkdown, { type MarkdownIt } from 'markdown-it';
import { claimRule } from './claimRule.ts';

export { claimRule, infoWords, type ClaimMeta, type NoteEnvironment } from './claimRule.ts';

/**
 * A parser for notes: CommonMark with tables and strikethrough, the claim rule added. HTML is seen (a comment hides what is in it), so
 * a renderer that must not let HTML through replaces the renderer rules `html_block` and `html_inline`.
 */
export function createNoteParser(): MarkdownIt {
  const md = createMarkdown({ html: true, linkify: false, typographer: false });
  claimRule(md);
  return md;
}
