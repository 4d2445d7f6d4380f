// Words by which a plan says "nothing of the kind", in every language that we have words for.
const none = /^\s*(?:none|no|nothing|keine?|kein(?:er|es)|nichts|ohne|-|–|0)?\s*$/i;

/** `none`, `keine`, `–`, or nothing at all. */
export const saysNone = (text: string | null | undefined): boolean => text == null || none.test(text);
