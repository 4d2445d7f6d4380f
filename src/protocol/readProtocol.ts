// From a protocol block to the plan as typed facts, with every problem at its place.
import type { Block } from '../note/syntax.ts';
import type { Problem } from '../problems/problem.ts';
import type { Protocol } from './types.ts';

export function readProtocol(_block: Block): { protocol: Protocol | null; problems: Problem[] } {
  return { protocol: null, problems: [] };
}
