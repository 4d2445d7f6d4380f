// A note's structure while it is being read: every fence, whatever its language, and every stretch of inline text.
import type { Token } from 'markdown-it';
import type { SourceRange } from '../problems/problem.ts';
import type { MappedText } from './mappedText.ts';
import type { Block } from './syntax.ts';
import type { InlineReading } from './readInline.ts';
import type { SourceLines } from './sourceLines.ts';

/** A fence of the document, whatever its language. */
export interface Fence {
  readonly info: string;
  readonly range: SourceRange;
  readonly infoRange: SourceRange;
  readonly content: MappedText;
  readonly linePrefix: string;
  readonly lineBreak: string;
  readonly closed: boolean;
  readonly startLine: number;
  readonly endLine: number;
  readonly level: number;
}

/** The inline text of a paragraph, heading or cell with its way back to the note. */
export interface InlineText {
  readonly mapped: MappedText;
  readonly reading: InlineReading;
  readonly level: number;
  /** The tag of what holds the text: `td`, `th`, `p`, `h1`… */
  readonly holder: string;
  /** True when only the marks of paragraphs, lists, quotes, headings and rows stand between this text and the one before. */
  readonly follows: boolean;
  /** For a cell of a table's body: the words of its column's head and of its row's first cell. */
  readonly heads?: readonly string[];
}

export interface Structure {
  readonly text: string;
  readonly lines: SourceLines;
  readonly isNote: boolean;
  readonly fences: readonly Fence[];
  readonly blocks: readonly Block[];
  readonly inlines: readonly InlineText[];
  /** Blocks of HTML and of indented code. */
  readonly html: readonly Token[];
  readonly code: readonly Token[];
}
