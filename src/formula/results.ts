// Named results of `values` blocks inside formulas: evaluated once each, on demand, and never in a circle.
import type { SourceRange } from '../problems/problem.ts';
import { parseFormula, type ParsedFormula } from './parse.ts';
import type { FormulaContext } from './context.ts';
import type { Run } from './run.ts';
import type { Expression, FormulaValue } from './types.ts';

/** The syntax tree of a formula, read once a context. */
export function parsedFormula(text: string, context: FormulaContext): ParsedFormula {
  const known = context.parsed.get(text);
  if (known) return known;
  const parsed = parseFormula(text);
  context.parsed.set(text, parsed);
  return parsed;
}

/** The value of a named result at the place where another formula names it. */
export function evaluateNamedResult(run: Run, name: string, range: SourceRange): FormulaValue | null {
  if (circularResults(run.context).has(name)) return run.fail('result-circle', range, { name });
  const evaluation = run.evaluateResult(name);
  if (!evaluation || evaluation.value === null) return run.fail('result-failed', range, { name });
  return evaluation.value;
}

/** Names of results that refer to themselves, directly or through others. */
export function circularResults(context: FormulaContext): ReadonlySet<string> {
  if (context.circles) return context.circles;
  const uses = new Map<string, string[]>();
  for (const [name, result] of context.resultsByName) {
    const names = new Set<string>();
    collectBareNames(parsedFormula(result.formula.text, context).expression, names);
    uses.set(name, [...names].filter((each) => context.resultsByName.has(each)));
  }
  const circles = new Set<string>();
  for (const name of uses.keys()) {
    const seen = new Set<string>();
    const queue = [...(uses.get(name) ?? [])];
    while (queue.length > 0) {
      const next = queue.pop()!;
      if (next === name) {
        circles.add(name);
        break;
      }
      if (seen.has(next)) continue;
      seen.add(next);
      queue.push(...(uses.get(next) ?? []));
    }
  }
  context.circles = circles;
  return circles;
}

/** Every bare name in a formula. */
function collectBareNames(expression: Expression, into: Set<string>): void {
  switch (expression.kind) {
    case 'reference':
      if (expression.parts.length === 1) into.add(expression.parts[0]!);
      return;
    case 'call':
      for (const operand of expression.operands) collectBareNames(operand, into);
      for (const option of expression.options) collectBareNames(option.value, into);
      return;
    case 'binary':
      collectBareNames(expression.left, into);
      collectBareNames(expression.right, into);
      return;
    case 'unary':
    case 'convert':
      collectBareNames(expression.operand, into);
      return;
    default:
  }
}
