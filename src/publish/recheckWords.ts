// What a recheck found, in words: for the command line and the editor.
import type { Language } from '../words/languages.ts';
import { postWords } from '../words/post.ts';
import type { DifferenceKind, PostDifference } from './compare.ts';
import type { EmbedFault } from './embed.ts';

/** What is wrong with a file inside a post. */
export function faultSentence(fault: EmbedFault, language: Language = 'en'): string {
  const words = postWords(language).recheck;
  switch (fault.kind) {
    case 'no-note': return fault.found === '0' ? words.noNote : words.severalNotes;
    case 'unreadable': return words.unreadable(fault.path);
    case 'hash-differs': return words.altered(fault.path, fault.found, fault.stated);
    case 'unsafe-path': return words.outside(fault.path);
  }
}

/** What differs, as a noun. */
export const differenceNoun = (kind: DifferenceKind, language: Language = 'en'): string => postWords(language).recheck.nouns[kind];

/** What the post has and what the note gives. */
export function differenceSentence(each: Omit<PostDifference, 'range'>, language: Language = 'en'): string {
  return postWords(language).recheck.difference(each);
}
