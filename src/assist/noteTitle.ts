// What a note is called in lists of notes: its title and its question, read without reading the whole note.
import { readSyntax } from '../note/readSyntax.ts';
import { readProtocol } from '../protocol/readProtocol.ts';
import type { SourceRange } from '../problems/problem.ts';

export interface NoteTitle { readonly title: string; readonly question: string; readonly range: SourceRange }

/** The title of a note; null for a text without a plan. */
export function noteTitle(text: string): NoteTitle | null {
  const syntax = readSyntax(text);
  const block = syntax.blocks.find((each) => each.word === 'protocol');
  if (!block) return null;
  const { protocol } = readProtocol(block);
  const heading = syntax.headings[0];
  const question = protocol?.question?.value ?? '';
  const title = protocol?.title?.value ?? heading?.text ?? question;
  return { title: title.trim() === '' ? question : title.trim(), question, range: heading?.range ?? block.infoRange };
}

/** True where every letter of the query stands in the text in this order, as lists of symbols search. */
export function matchesQuery(text: string, query: string): boolean {
  let at = 0;
  const lower = text.toLowerCase();
  for (const letter of query.toLowerCase().replace(/\s+/gu, '')) {
    at = lower.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}
