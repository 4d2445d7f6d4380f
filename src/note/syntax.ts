// What a note's text consists of, before anything is understood: blocks, claims, prose, headings.
import type { Problem, SourceRange } from '../problems/problem.ts';
import type { MappedText } from './mappedText.ts';

export const blockWords = ['protocol', 'readings', 'values', 'figure', 'summary', 'limits', 'methods', 'results'] as const;
export type BlockWord = (typeof blockWords)[number];

export interface Block {
  readonly word: BlockWord;
  /** Second word of the info string, or null. */
  readonly name: string | null;
  /** From the opening fence's first backtick or tilde to the end of the closing fence. */
  readonly range: SourceRange;
  /** The info string. */
  readonly infoRange: SourceRange;
  /**
   * The text between the fences, without container prefixes; ends with a line break unless empty. Where the block was never closed it
   * ends at the next block's opening fence or at a closing fence of other marks.
   */
  readonly content: MappedText;
  /** What containers (quotes, lists) and the fence's indentation put before each line of the content: a new line needs it too. */
  readonly linePrefix?: string;
  /** The line break of the opening fence's line. */
  readonly lineBreak?: string;
  readonly closed: boolean;
  /** Lines of the note, from 0: of the opening fence, and one past the closing fence. */
  readonly startLine: number;
  readonly endLine: number;
}

/** `{6.44 mg/L = FORMULA}`, `{? = FORMULA}`, `{words if CONDITION}`, `{words = stated "source"}`. */
export interface ClaimSyntax {
  readonly form: 'equals' | 'unfilled' | 'if' | 'stated';
  /** From `{` to past `}`. */
  readonly range: SourceRange;
  /** What the reader sees; for `unfilled` it is `?`. */
  readonly words: MappedText;
  /** The formula or condition; for `stated` the text after the word `stated`. */
  readonly formula: MappedText;
  /** For `stated`: the source without its quotes, or null when it is missing. */
  readonly source: string | null;
}

export interface Heading { readonly level: number; readonly text: string; readonly range: SourceRange; readonly line: number }

/** A run of prose between markup: no code, maths, HTML, link targets or claims in it. Used to find loose numbers. */
export interface ProseRun {
  readonly text: MappedText;
  /** For a cell of a table: the words of its column's head and of its row's first cell, which may name the unit of its numbers. */
  readonly heads?: readonly string[];
}

export interface NoteSyntax {
  readonly text: string;
  /** True when the text holds a `protocol` block. */
  readonly isNote: boolean;
  readonly blocks: readonly Block[];
  readonly claims: readonly ClaimSyntax[];
  readonly prose: readonly ProseRun[];
  readonly headings: readonly Heading[];
  readonly problems: readonly Problem[];
  /** Kept for the next reading of a changed text; nobody else looks into it. */
  readonly cache?: unknown;
}
