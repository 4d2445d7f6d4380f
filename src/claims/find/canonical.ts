// One way of writing for formulas that mean the same: names of moments, phases and results resolved, `fall` as a difference of
// readings. Two formulas with one canonical form have one value by construction.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { mappedText } from '../../note/mappedText.ts';
import { printFormula } from '../../formula/print.ts';
import { parsedFormula } from '../../formula/results.ts';
import type { Expression } from '../../formula/types.ts';

const deepest = 6;

/** The canonical text; formulas that cannot be read come back as they are. */
export function canonicalFormula(formula: string, context: FormulaContext): string {
  const { expression, errors } = parsedFormula(formula, context);
  return errors.length > 0 ? formula.trim() : write(expression, context, 0);
}

function write(expression: Expression, context: FormulaContext, depth: number): string {
  switch (expression.kind) {
    case 'instant': return moment(printFormula(expression), context) ?? printFormula(expression);
    case 'reference': return reference(expression, context, depth);
    case 'unary': return expression.operator === '-' ? negated(write(expression.operand, context, depth)) : `not ${write(expression.operand, context, depth)}`;
    case 'convert': return `${write(expression.operand, context, depth)} in ${expression.unit}`;
    case 'binary': return `(${write(expression.left, context, depth)} ${expression.operator} ${write(expression.right, context, depth)})`;
    case 'call': {
      const operands = expression.operands.map((each) => write(each, context, depth));
      const options = expression.options.map((each) => `${each.name} ${write(each.value, context, depth)}`);
      return call(expression.name, operands, options);
    }
    default: return printFormula(expression);
  }
}

const negated = (text: string): string => (text.startsWith('-') ? text.slice(1) : `-${text}`);

function call(name: string, operands: readonly string[], options: readonly string[]): string {
  const [series, second] = operands;
  if (name === 'abs' && series?.startsWith('(')) return series;
  const ends = second === undefined ? null : /^\((\d+) \.\. (\d+)\)$/u.exec(second);
  const [from, to] = ends ? [`at(${series}, ${ends[1]})`, `at(${series}, ${ends[2]})`] : [`first(${series})`, `last(${series})`];
  if (second === undefined || ends) {
    if (name === 'fall') return `(${from} - ${to})`;
    if (name === 'rise' || name === 'change') return `(${to} - ${from})`;
    if (name === 'percent-rise') return `percent-change(${operands.join(', ')})`;
    if (name === 'percent-fall') return `-percent-change(${operands.join(', ')})`;
    if ((name === 'first' || name === 'last') && ends) return name === 'first' ? from : to;
  }
  const gap = name === 'at' && second !== undefined ? /^difference\((.+), (.+)\)$/u.exec(series ?? '') : null;
  if (gap) return `(at(${gap[1]}, ${second}) - at(${gap[2]}, ${second}))`;
  return `${name}(${[...operands, ...options].join(', ')})`;
}

function moment(text: string, context: FormulaContext): string | null {
  const { value } = evaluate(mappedText(text), context);
  return value?.type === 'instant' || value?.type === 'event' ? String(value.instant) : null;
}

function reference(expression: Extract<Expression, { kind: 'reference' }>, context: FormulaContext, depth: number): string {
  const [first, second] = expression.parts as [string, string?];
  if (second !== undefined) return printFormula(expression);
  const result = context.resultsByName.get(first);
  if (result && depth < deepest) {
    const { expression: own, errors } = parsedFormula(result.formula.text, context);
    return errors.length > 0 ? first : write(own, context, depth + 1);
  }
  if (context.protocol?.tanks.some((tank) => tank.id === first)) return first;
  const phase = context.protocol?.phases.find((each) => each.id === first);
  if (phase) return /^dark/u.test(first) ? first : `(${phase.window.from} .. ${phase.window.to})`;
  return moment(first, context) ?? first;
}
