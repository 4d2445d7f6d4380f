// What a note stands on: plan, readings, named results, and the plan's conditions held against them. It depends on the
// protocol, readings and values blocks alone, so that a key typed in prose below them leaves it as it is.
import type { Problem } from '../problems/problem.ts';
import type { Block } from '../note/syntax.ts';
import { readProtocol } from '../protocol/readProtocol.ts';
import { isReserved } from '../protocol/names.ts';
import type { Protocol } from '../protocol/types.ts';
import { readTable } from '../readings/readTable.ts';
import type { FileContents, ReadingsTable } from '../readings/types.ts';
import { buildDataset } from '../dataset/buildDataset.ts';
import type { Dataset } from '../dataset/types.ts';
import { createContext, type FormulaContext } from '../formula/context.ts';
import { functionByName } from '../formula/catalogue.ts';
import { evaluateResult } from '../formula/evaluate.ts';
import { checkEqualisation, checkStopRules } from './conditions.ts';
import { readValueBlocks } from './valuesBlock.ts';
import type { EqualiseCheck, NamedResult, StopRuleCheck } from './types.ts';

export interface Ground {
  /** The blocks that went in, for telling whether a later text still stands on the same ground. */
  readonly blocks: readonly Block[];
  readonly files: FileContents;
  readonly protocol: Protocol | null;
  readonly tables: readonly ReadingsTable[];
  readonly wants: readonly string[];
  readonly dataset: Dataset;
  readonly context: FormulaContext;
  readonly results: readonly NamedResult[];
  readonly equalise: readonly EqualiseCheck[];
  readonly stopRules: readonly StopRuleCheck[];
  readonly problems: readonly Problem[];
}

const emptyDataset: Dataset = { series: new Map(), times: [] };

/** True when a block says the same at the same place. */
function sameBlock(a: Block | undefined, b: Block | undefined): boolean {
  if (!a || !b) return false;
  return a.word === b.word && a.name === b.name && a.closed === b.closed && a.range.start === b.range.start && a.range.end === b.range.end
    && a.content.text === b.content.text && a.content.pieces.length === b.content.pieces.length
    && a.content.pieces.every((piece, index) => piece.document === b.content.pieces[index]!.document);
}

function sameFiles(a: FileContents, b: FileContents): boolean {
  return a === b || (a.size === b.size && [...a].every(([path, bytes]) => b.has(path) && b.get(path) === bytes));
}

const carries = (block: Block): boolean => block.word === 'protocol' || block.word === 'readings' || block.word === 'values';

/** Reads the ground of a note, or takes the earlier one where nothing that it depends on has changed or moved. */
export function readGround(blocks: readonly Block[], files: FileContents, previous: Ground | null): Ground {
  if (previous && sameFiles(files, previous.files) && sameCarryingBlocks(blocks, previous.blocks)) return previous;

  const protocolBlock = blocks.find((block) => block.word === 'protocol');
  const read = protocolBlock ? readProtocol(protocolBlock) : { protocol: null, problems: [] };
  const { protocol } = read;
  if (!protocol) {
    return {
      blocks, files, protocol, tables: [], wants: [], dataset: emptyDataset, context: createContext({ protocol, dataset: emptyDataset, results: [] }),
      results: [], equalise: [], stopRules: [], problems: read.problems,
    };
  }

  const { tables, wants, problems: readingProblems } = readTables(blocks, protocol, files);
  const { dataset, problems: datasetProblems } = buildDataset(tables, protocol);
  const { results: definitions, problems: valueProblems } = readValueBlocks(blocks, (name) => isReserved(name) || functionByName(name) !== null);
  const context = createContext({ protocol, dataset, results: definitions });
  const results: NamedResult[] = definitions.map((definition) => ({
    ...definition, evaluation: evaluateResult(definition.name, context) ?? { value: null, problems: [], working: [] },
  }));
  const equalise = checkEqualisation(protocol, context);
  const stopRules = checkStopRules(protocol, context);
  return {
    blocks, files, protocol, tables, wants, dataset, context, results, equalise: equalise.checks, stopRules: stopRules.checks,
    problems: [
      ...read.problems, ...readingProblems, ...datasetProblems, ...valueProblems,
      ...results.flatMap((result) => result.evaluation.problems), ...equalise.problems, ...stopRules.problems,
    ],
  };
}

/** True when the carrying blocks are the same, at the same places and in the same order among all blocks. */
function sameCarryingBlocks(blocks: readonly Block[], earlier: readonly Block[]): boolean {
  const last = Math.max(blocks.findLastIndex(carries), earlier.findLastIndex(carries));
  for (let index = 0; index <= last; index += 1) {
    const [now, then] = [blocks[index], earlier[index]];
    if (!now || !then || carries(now) !== carries(then)) return false;
    if (carries(now) && !sameBlock(now, then)) return false;
  }
  return true;
}

function readTables(blocks: readonly Block[], protocol: Protocol, files: FileContents): { tables: ReadingsTable[]; wants: string[]; problems: Problem[] } {
  const tables: ReadingsTable[] = [];
  const wants: string[] = [];
  const problems: Problem[] = [];
  blocks.forEach((block, index) => {
    if (block.word !== 'readings') return;
    const read = readTable(block, index, protocol, tables.at(-1) ?? null, files);
    tables.push(read.table);
    wants.push(...read.wants);
    problems.push(...read.problems);
  });
  return { tables, wants: [...new Set(wants)], problems };
}
