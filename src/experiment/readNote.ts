// Reads a note whole: text and data files in, one immutable Note out. The one wiring of the pure rooms;
// read it from top to bottom to see the data's way through the house.
import { sortProblems, type Problem } from '../problems/problem.ts';
import { readSyntax } from '../note/readSyntax.ts';
import type { Block, NoteSyntax } from '../note/syntax.ts';
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
import { checkClaim } from '../claims/checkClaim.ts';
import { findLooseNumbers } from '../claims/looseNumbers.ts';
import { checkWording } from '../claims/wording.ts';
import { separateAccepted } from './accepted.ts';
import { checkEqualisation, checkStopRules } from './conditions.ts';
import { drawnBlockProblems } from './figureBlock.ts';
import { readValueBlocks } from './valuesBlock.ts';
import type { NamedResult, Note } from './types.ts';

export const noFiles: FileContents = new Map();

export interface ReadNoteOptions {
  /** True for `*.tank.md`: a missing protocol is then a problem, not a sign that this is plain Markdown. */
  readonly fileIsNote?: boolean;
}

/**
 * Reads a note.
 * @param text the note's whole text, as it stands in the editor or on disk
 * @param files bytes of the data files named in `wants` of an earlier reading; a path that is absent is not loaded yet, null is missing
 * @param previous an earlier Note of the same document; parts whose text did not change are taken from it
 */
export function readNote(text: string, files: FileContents = noFiles, previous?: Note, options: ReadNoteOptions = {}): Note {
  const syntax = readSyntax(text, previous?.syntax, options);
  const protocolIndex = syntax.blocks.findIndex((block) => block.word === 'protocol');
  const protocolBlock = syntax.blocks[protocolIndex];
  if (!protocolBlock) return plainMarkdown(text, syntax);

  const { protocol, problems: protocolProblems } = readProtocol(protocolBlock);
  if (!protocol) return { ...plainMarkdown(text, syntax), problems: sortProblems([...syntax.problems, ...protocolProblems]) };

  const { tables, wants, problems: readingProblems } = readTables(syntax.blocks, protocol, files);
  const { dataset, problems: datasetProblems } = buildDataset(tables, protocol);
  const { results: definitions, problems: valueProblems } = readValueBlocks(syntax.blocks, (name) => isReserved(name) || functionByName(name) !== null);
  const context = createContext({ protocol, dataset, results: definitions });

  const results: NamedResult[] = definitions.map((definition) => ({
    ...definition, evaluation: evaluateResult(definition.name, context) ?? { value: null, problems: [], working: [] },
  }));
  const claims = syntax.claims.map((claim) => checkClaim(claim, context));
  const equalise = checkEqualisation(protocol, context);
  const stopRules = checkStopRules(protocol, context);

  const { standing, accepted } = separateAccepted([
    ...syntax.problems, ...protocolProblems, ...readingProblems, ...datasetProblems, ...valueProblems,
    ...results.flatMap((result) => result.evaluation.problems),
    ...claims.flatMap((claim) => claim.problems),
    ...findLooseNumbers(syntax.prose, context, syntax.claims),
    ...checkWording(syntax, context),
    ...equalise.problems, ...stopRules.problems,
    ...drawnBlockProblems(syntax, protocol, dataset),
  ], protocol);

  return {
    text, syntax, protocol, tables, dataset, results, claims, wants, context,
    equalise: equalise.checks, stopRules: stopRules.checks,
    problems: sortProblems(standing), accepted: sortProblems(accepted),
  };
}

/** What formulas of this note are evaluated against. */
export function contextOf(note: Note): FormulaContext {
  return note.context;
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

/** A document without a readable protocol: nothing is computed; blocks that need one say so. */
function plainMarkdown(text: string, syntax: NoteSyntax): Note {
  const dataset: Dataset = { series: new Map(), times: [] };
  return {
    text, syntax, protocol: null, tables: [], dataset, results: [], claims: [], equalise: [], stopRules: [], wants: [],
    context: createContext({ protocol: null, dataset, results: [] }), problems: syntax.problems, accepted: [],
  };
}
