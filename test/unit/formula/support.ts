// Contexts for the tests of the formula room: a note's text in, a context out, without the rooms below.
import { mappedText } from '../../../src/note/mappedText.ts';
import { readSyntax } from '../../../src/note/readSyntax.ts';
import { readProtocol } from '../../../src/protocol/readProtocol.ts';
import { readTable } from '../../../src/readings/readTable.ts';
import { buildDataset } from '../../../src/dataset/buildDataset.ts';
import type { ReadingsTable } from '../../../src/readings/types.ts';
import type { Protocol } from '../../../src/protocol/types.ts';
import { createContext, type FormulaContext, type ResultDefinition } from '../../../src/formula/context.ts';
import { evaluate } from '../../../src/formula/evaluate.ts';
import { showValue } from '../../../src/formula/show.ts';
import type { Evaluation } from '../../../src/formula/types.ts';

export function contextFrom(note: string, results: Readonly<Record<string, string>> = {}): FormulaContext {
  const syntax = readSyntax(note);
  const plan = syntax.blocks.find((block) => block.word === 'protocol');
  const protocol: Protocol | null = plan ? readProtocol(plan).protocol : null;
  const tables: ReadingsTable[] = [];
  if (protocol) {
    for (const [index, block] of syntax.blocks.entries()) {
      if (block.word === 'readings') tables.push(readTable(block, index, protocol, tables.at(-1) ?? null, new Map()).table);
    }
  }
  const dataset = protocol ? buildDataset(tables, protocol).dataset : { series: new Map(), times: [] };
  const named: ResultDefinition[] = Object.entries(results).map(([name, formula]) => ({ name, nameRange: { start: 0, end: name.length }, formula: mappedText(formula) }));
  return createContext({ protocol, dataset, results: named });
}

export function ask(formula: string, context: FormulaContext): Evaluation {
  return evaluate(mappedText(formula), context);
}

/** The value as text, or the codes of the errors in its way. */
export function answer(formula: string, context: FormulaContext): string {
  const { value, problems } = ask(formula, context);
  return value ? showValue(value, context) : problems.filter((each) => each.severity === 'error').map((each) => each.code).join(' ');
}

export function codes(formula: string, context: FormulaContext): string[] {
  return ask(formula, context).problems.map((each) => each.code);
}

/** The number, unrounded; fails the test when it is none. */
export function number(formula: string, context: FormulaContext): number {
  const { value, problems } = ask(formula, context);
  if (value?.type !== 'number') throw new Error(`${formula}: ${value?.type ?? 'nothing'} ${problems.map((each) => `${each.code} ${JSON.stringify(each.args)}`).join('; ')}`);
  return value.value;
}
