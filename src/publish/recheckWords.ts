// What a recheck found, in words: for the command line and the editor.
import type { PostDifference } from './compare.ts';
import type { EmbedFault } from './embed.ts';

/** What is wrong with a file inside a post. */
export function faultSentence(fault: EmbedFault): string {
  switch (fault.kind) {
    case 'no-note': return fault.found === '0' ? 'The post carries no note that can be read.' : 'The post carries more than one note.';
    case 'unreadable': return `The file "${fault.path}" in the post cannot be decoded.`;
    case 'hash-differs': return `The file "${fault.path}" in the post was altered: its SHA-256 is ${fault.found}, the post states ${fault.stated === '' ? 'none' : fault.stated}.`;
    case 'unsafe-path': return `The post names a file "${fault.path}" outside the note's folder; it is left out.`;
  }
}

/** What differs, as a noun. */
export const differenceNouns: Readonly<Record<PostDifference['kind'], string>> = {
  number: 'number', words: 'text', value: 'value behind the number', formula: 'formula', drawing: 'drawing', markup: 'markup',
};

/** What the post has and what the note gives. */
export function differenceSentence(each: Omit<PostDifference, 'range'>): string {
  const prints = each.printed === '' ? 'the post lacks it' : `the post has “${each.printed}”`;
  const gives = each.computed === '' ? 'the note gives nothing here' : `the note gives “${each.computed}”`;
  return `${prints}, ${gives}${each.formula === null ? '' : `, from ${each.formula}`}.`;
}
