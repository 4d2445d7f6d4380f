// Words by which a plan says "nothing of the kind", in every language that we have words for.
const words = '(?:none|no|nothing|keine?|kein(?:er|es)|nichts|ohne|-|–|0)';
const nothingElse = new RegExp(`^\\s*${words}?\\s*$`, 'i');
const first = new RegExp(`^\\s*${words}\\b`, 'i');

/** `none`, `keine`, `–`, or nothing at all. */
export const saysNone = (text: string | null | undefined): boolean => text == null || nothingElse.test(text);

/** The same, also with more words behind it: `none, they moved to another tank`. */
export const beginsWithNone = (text: string | null | undefined): boolean => saysNone(text) || first.test(text ?? '');
