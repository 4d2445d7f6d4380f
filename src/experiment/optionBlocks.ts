// The options of `limits` and `methods` blocks.
import { problem, type Problem } from '../problems/problem.ts';
import type { Block } from '../note/syntax.ts';
import type { Protocol } from '../protocol/types.ts';
import { blockRange, readOptions, readYesNo, unknownOption } from './blockOptions.ts';

/** Whom a `limits` block restricts itself to (option `for`); empty: every limit of the protocol. */
export function readLimitsBlock(block: Block, protocol: Protocol): { for: readonly string[]; problems: Problem[] } {
  const read = readOptions(block);
  const problems = [...read.problems];
  const wanted: string[] = [];
  const known = [...new Set(protocol.limits.map((limit) => limit.for))];
  for (const option of read.options) {
    if (option.key !== 'for') problems.push(unknownOption(option, block, ['for']));
    else wanted.push(...option.texts.map((each) => each.value));
  }
  if (known.length === 0 && problems.length === 0) problems.push(problem('no-limits-stated', blockRange(block)));
  return { for: wanted.filter((name) => known.includes(name)), problems };
}

/** The options of a `methods` block: `checklist: yes` adds the reporting checklist. */
export function readMethodsBlock(block: Block): { checklist: boolean; problems: Problem[] } {
  const read = readOptions(block);
  const problems = [...read.problems];
  let checklist = false;
  for (const option of read.options) {
    if (option.key === 'checklist') checklist = readYesNo(option, problems) ?? false;
    else problems.push(unknownOption(option, block, ['checklist']));
  }
  return { checklist, problems };
}
