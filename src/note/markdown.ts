// The Markdown parser of notes: markdown-it with the claim rule and with maths kept out of the way.
import MarkdownIt from 'markdown-it';

/** Adds the token type `evenwater_claim` to a markdown-it instance; it arises only in documents with a `protocol` block. */
export function claimRule(_md: MarkdownIt): void {
  // The rule comes with the scanner.
}

/** A parser for notes: CommonMark with tables, HTML seen, the claim rule added. */
export function createNoteParser(): MarkdownIt {
  const md = new MarkdownIt({ html: true, linkify: false, typographer: false });
  claimRule(md);
  return md;
}
