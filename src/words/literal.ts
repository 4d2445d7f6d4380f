// A text inside a pattern.

/** The text as a piece of a regular expression that means the text itself. */
export const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
