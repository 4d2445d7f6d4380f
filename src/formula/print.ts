// A syntax tree back to text, in one canonical form. Parsing what it prints gives the same tree.
import { day, hour, minute, second, type Duration } from '../time/instant.ts';
import type { Expression } from './types.ts';

const strength: Readonly<Record<string, number>> = {
  or: 1, and: 2, not: 3, '<': 4, '>': 4, '<=': 4, '>=': 4, '==': 4, in: 5, '..': 6, '+': 7, '-': 7, '*': 8, '/': 8, sign: 9, atom: 10,
};

/** The formula in its canonical spelling: spaced operators, plain signs. */
export function printFormula(expression: Expression): string {
  return print(expression, 0);
}

function print(expression: Expression, needed: number): string {
  const text = bare(expression);
  return strengthOf(expression) < needed ? `(${text})` : text;
}

function strengthOf(expression: Expression): number {
  switch (expression.kind) {
    case 'binary': return strength[expression.operator]!;
    case 'unary': return expression.operator === 'not' ? strength['not']! : strength['sign']!;
    case 'convert': return strength['in']!;
    default: return strength['atom']!;
  }
}

function bare(expression: Expression): string {
  switch (expression.kind) {
    case 'number': return expression.unit === null ? plainNumber(expression.value) : `${plainNumber(expression.value)} ${expression.unit}`;
    case 'duration': return printDuration(expression.duration);
    case 'instant': return expression.text;
    case 'word': return `"${expression.text}"`;
    case 'reference': return expression.parts.join('.') + (expression.instrument === null ? '' : `@${expression.instrument}`);
    case 'call': {
      const parts = [...expression.operands.map((each) => print(each, 0)), ...expression.options.map((each) => `${each.name} ${print(each.value, 9)}`)];
      return `${expression.name}(${parts.join(', ')})`;
    }
    case 'binary': {
      const own = strength[expression.operator]!;
      const once = own === 4 || own === 6;
      const left = print(expression.left, once ? own + 1 : own);
      const right = print(expression.right, own + 1);
      return expression.operator === '..' ? `${left}..${right}` : `${left} ${expression.operator} ${right}`;
    }
    case 'unary': return expression.operator === 'not' ? `not ${print(expression.operand, 3)}` : `-${print(expression.operand, 10)}`;
    case 'convert': return `${print(expression.operand, 5)} in ${expression.unit}`;
    case 'error': return '?';
  }
}

function plainNumber(value: number): string {
  return String(value);
}

/** `9 h 30 min`; fractions of a second in the seconds. */
function printDuration(duration: Duration): string {
  const parts: string[] = [];
  let rest = Math.abs(duration);
  for (const [name, length] of [['d', day], ['h', hour], ['min', minute]] as const) {
    const whole = Math.floor(rest / length);
    if (whole > 0) parts.push(`${whole} ${name}`);
    rest -= whole * length;
  }
  if (rest > 0 || parts.length === 0) parts.push(`${rest / second} s`);
  return parts.join(' ');
}
