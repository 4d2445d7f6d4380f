// Problems of a note's structure: fences left open, misspelt block words, a second plan, claims that are cut or not closed.
import type { Token } from 'markdown-it';
import type { Problem } from '../problems/problem.ts';
import type { Block } from './syntax.ts';
import type { Fence, InlineText } from './readSyntax.ts';
import type { SourceLines } from './sourceLines.ts';

export interface Structure {
  readonly text: string;
  readonly lines: SourceLines;
  readonly isNote: boolean;
  readonly fences: readonly Fence[];
  readonly blocks: readonly Block[];
  readonly inlines: readonly InlineText[];
  readonly html: readonly Token[];
}

export function structureProblems(_structure: Structure): Problem[] {
  return [];
}
