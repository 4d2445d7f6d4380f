// A formula or condition in plain English, shown to readers beside each claim.
import { formatDuration } from '../time/text.ts';
import { formatNumber } from '../quantities/format.ts';
import { measureByName } from '../quantities/measures.ts';
import { parseUnit } from '../quantities/units.ts';
import { mappedText } from '../note/mappedText.ts';
import { measureOf } from '../dataset/readingValue.ts';
import { functionByName } from './catalogue.ts';
import type { FormulaContext } from './context.ts';
import { evaluate } from './evaluate.ts';
import { printFormula } from './print.ts';
import { circularResults, parsedFormula } from './results.ts';
import { decimalMark } from './show.ts';
import type { Expression } from './types.ts';

type CallExpression = Extract<Expression, { kind: 'call' }>;
type Binary = Extract<Expression, { kind: 'binary' }>;
type Reference = Extract<Expression, { kind: 'reference' }>;

/**
 * `rate(mat.DO, light-off..22:30)` as "the hourly rate of change of the dissolved oxygen in the floating-mat tank between
 * lights-off and 22:30". What cannot be read is given back as it stands.
 */
export function plainWords(formula: string, context: FormulaContext): string {
  const { expression, errors } = parsedFormula(formula, context);
  return errors.length > 0 ? formula.trim() : words(expression, context, 0);
}

const deepestResult = 6;

function words(expression: Expression, context: FormulaContext, depth: number): string {
  switch (expression.kind) {
    case 'number': return numberWords(expression.value, expression.unit, context);
    case 'duration': return formatDuration(expression.duration);
    case 'instant': return expression.text.startsWith('+') ? `${expression.text.slice(1)} after the start` : expression.text.replace('T', ' ');
    case 'word': return `“${expression.text}”`;
    case 'reference': return referenceWords(expression, context, depth);
    case 'convert': return `${words(expression.operand, context, depth)}, in ${printed(expression.unit)}`;
    case 'unary': return expression.operator === 'not' ? notWords(expression.operand, context, depth) : minusWords(expression.operand, context, depth);
    case 'call': return callWords(expression, context, depth);
    case 'binary': return binaryWords(expression, context, depth);
    case 'error': return '…';
  }
}

/** The opposite said straight where there is one: "is not less than", "is no more than the instruments’ uncertainty". */
function notWords(operand: Expression, context: FormulaContext, depth: number): string {
  const text = words(operand, context, depth);
  const simple = operand.kind === 'binary' && comparisons[operand.operator] !== undefined;
  if (operand.kind === 'call' && operand.name === 'resolved') return text.replace(/ is more than (?=the instruments’)/u, ' is no more than ');
  const turned = simple ? text.replace(/ is (?=(?:less than|more than|at most|at least|equal to|before|after) )/u, ' is not ') : text;
  return turned === text ? `it is not so that ${text}` : turned;
}

/** `-rate(…)`, as a falling quantity is claimed: "the hourly rate of fall of …". */
function minusWords(operand: Expression, context: FormulaContext, depth: number): string {
  const text = words(operand, context, depth);
  if (operand.kind === 'call' && operand.name === 'rate') return text.replace(/^the hourly rate of change of /u, 'the hourly rate of fall of ');
  return `minus ${text}`;
}

function printed(unit: string): string { return parseUnit(unit)?.print || unit; }

function numberWords(value: number, unit: string | null, context: FormulaContext): string {
  const decimals = Math.min(12, (String(value).split('.')[1] ?? '').length);
  const digits = formatNumber(value, decimals, decimalMark(context));
  return unit === null ? digits : `${digits} ${printed(unit)}`;
}

const timeWords: Readonly<Record<string, string>> = {
  start: 'the start', end: 'the end', 'light-off': 'lights-off', 'light-on': 'lights-on', sunrise: 'sunrise', sunset: 'sunset', dawn: 'dawn', dusk: 'dusk',
  'standard-pressure': 'one standard atmosphere',
};

function referenceWords(reference: Reference, context: FormulaContext, depth: number): string {
  const [first, second] = reference.parts as [string, string?];
  const { protocol } = context;
  if (second !== undefined) return `the ${quantityWords(second, reference.instrument, context)} ${placeWords(first, context)}`;
  const result = context.resultsByName.get(first);
  if (result) {
    return depth >= deepestResult || circularResults(context).has(first) ? `“${first}”` : words(parsedFormula(result.formula.text, context).expression, context, depth + 1);
  }
  if (protocol?.tanks.some((tank) => tank.id === first)) return tankWords(first, context);
  if (protocol?.measure.some((each) => each.id === first)) return `the ${quantityWords(first, null, context)}`;
  const event = protocol?.events.find((each) => each.id === first);
  if (event) return `“${event.what}”`;
  if (timeWords[first] !== undefined) return timeWords[first]!;
  if (protocol?.phases.some((phase) => phase.id === first)) return phaseWords(first);
  return `“${first}”`;
}

function phaseWords(id: string): string {
  const night = /^(dark|recovery|baseline)-(\d+)$/u.exec(id);
  const name = night ? night[1]! : id;
  const number = night ? ` of night ${night[2]!}` : '';
  if (name === 'baseline') return `the baseline${number}`;
  if (name === 'dark' || name === 'recovery') return `the ${name} phase${number}`;
  return `the phase “${id}”`;
}

function quantityWords(id: string, instrument: string | null, context: FormulaContext): string {
  const { protocol } = context;
  const what = protocol ? measureOf(protocol, id, instrument)?.what?.value : undefined;
  const name = what === undefined ? id.replaceAll('-', ' ') : measureByName(what)?.print ?? what;
  return instrument === null ? name : `${name} (${instrument})`;
}

function placeWords(place: string, context: FormulaContext): string {
  if (place === 'room') return 'in the room';
  if (place === 'treatment' || place === 'control') {
    const tanks = context.protocol?.tanks.filter((tank) => tank.role?.value === place) ?? [];
    return tanks.length === 1 ? `in ${tankWords(tanks[0]!.id, context)}` : `in the ${place} tanks (their mean)`;
  }
  return context.protocol?.tanks.some((tank) => tank.id === place) ? `in ${tankWords(place, context)}` : `in the tanks of group “${place}” (their mean)`;
}

function tankWords(id: string, context: FormulaContext): string {
  const label = context.protocol?.tanks.find((tank) => tank.id === id)?.label ?? id;
  if (label === id) return `tank ${id}`;
  return /^(?:the|tank)\s/iu.test(label) || /^[A-Z]/u.test(label) ? label : `the ${label}`;
}

function callWords(call: CallExpression, context: FormulaContext, depth: number): string {
  const entry = functionByName(call.name);
  if (!entry) return printFormula(call);
  const difference = call.name === 'abs' && call.operands[0]?.kind === 'binary' && call.operands[0].operator === '-' ? call.operands[0] : null;
  if (difference) return `the difference between ${words(difference.left, context, depth)} and ${words(difference.right, context, depth)}`;
  const signature = entry.signatures.find((each) => each.parameters.length >= call.operands.length && fitsTank(each.parameters[0]?.type, call, context)) ?? entry.signatures[0]!;
  const first = call.operands[0];
  const counted = call.name === 'count' && first?.kind === 'binary' && comparisons[first.operator] !== undefined;
  const template = counted ? 'the number of readings at which {1}{window}' : signature.words ?? entry.words;
  const windowAt = call.operands.findIndex((operand) => isWindow(operand, context));
  const values = call.operands.filter((_, index) => index !== windowAt || call.name === 'duration');
  const filled = template.replace(/\{(bare )?(\w+)\}/gu, (_, bare: string | undefined, key: string) => {
    if (key === 'window') return windowAt < 0 ? '' : ` ${windowWords(call.operands[windowAt]!, context, depth)}`;
    if (/^\d$/u.test(key)) {
      const operand = values[Number(key) - 1];
      if (!operand) return '';
      const text = isWindow(operand, context) ? stretchWords(operand, context, depth) : words(operand, context, depth);
      if (!bare) return text;
      return operand.kind === 'call' && operand.name.endsWith('steps') ? `of ${text}` : text.replace(/^the /u, '');
    }
    const option = call.options.find((each) => each.name === key);
    if (!option) return '';
    const length = words(option.value, context, depth);
    return key === 'over' ? ` over ${length}` : key === 'every' ? ` in steps of ${length}` : length;
  });
  const pressure = (call.name === 'saturation' || call.name === 'deficit') && values[1] !== undefined ? `, at ${words(values[1], context, depth)}` : '';
  return filled.replace(/ and $/u, '') + pressure;
}

function fitsTank(type: string | undefined, call: CallExpression, context: FormulaContext): boolean {
  const first = call.operands[0];
  const tank = first?.kind === 'reference' && first.parts.length === 1 && (context.protocol?.tanks.some((each) => each.id === first.parts[0]) ?? false);
  return (type === 'tank') === tank;
}

function isWindow(expression: Expression, context: FormulaContext): boolean {
  if (expression.kind === 'binary') return expression.operator === '..';
  return expression.kind === 'reference' && expression.parts.length === 1 && !context.resultsByName.has(expression.parts[0]!)
    && (context.protocol?.phases.some((phase) => phase.id === expression.parts[0]) ?? false);
}

function windowWords(expression: Expression, context: FormulaContext, depth: number): string {
  if (expression.kind === 'binary') return `between ${words(expression.left, context, depth)} and ${words(expression.right, context, depth)}`;
  return `during ${words(expression, context, depth)}`;
}

function stretchWords(expression: Expression, context: FormulaContext, depth: number): string {
  return expression.kind === 'binary' ? `the time from ${words(expression.left, context, depth)} to ${words(expression.right, context, depth)}` : words(expression, context, depth);
}

const comparisons: Readonly<Record<string, string>> = { '<': 'is less than', '>': 'is more than', '<=': 'is at most', '>=': 'is at least', '==': 'is equal to' };
const arithmetic: Readonly<Record<string, string>> = { '+': 'plus', '-': 'minus', '*': 'times', '/': 'divided by' };

function binaryWords(expression: Binary, context: FormulaContext, depth: number): string {
  const { operator, left, right } = expression;
  const a = (): string => words(left, context, depth);
  const b = (): string => words(right, context, depth);
  if (operator === '..') return `from ${a()} to ${b()}`;
  if (operator === 'and' || operator === 'or') return `${a()}, ${operator} ${b()}`;
  if (operator === '+' && isTime(left, context)) return `${b()} after ${a()}`;
  if (operator === '-' && isTime(left, context) && !isTime(right, context) && right.kind === 'duration') return `${b()} before ${a()}`;
  if (operator === '-' && isTime(left, context) && isTime(right, context)) return `the time from ${b()} to ${a()}`;
  if (arithmetic[operator] !== undefined) return `${a()} ${arithmetic[operator]} ${b()}`;
  return comparedRates(expression, context, depth) ?? `${a()} ${verb(expression, context)} ${that(left, right, context, depth) ?? b()}`;
}

function verb(expression: Binary, context: FormulaContext): string {
  if (isTime(expression.left, context) || isTime(expression.right, context)) {
    return { '<': 'is before', '>': 'is after', '<=': 'is not after', '>=': 'is not before', '==': 'is' }[expression.operator as '<'];
  }
  if (expression.operator === '==' && expression.right.kind === 'reference' && expression.right.parts.length === 1) return 'is';
  return comparisons[expression.operator]!;
}

const timeFunctions = new Set(['time-of-min', 'time-of-max', 'first-below', 'first-above', 'settled', 'turning-point', 'balance-point']);

function isTime(expression: Expression, context: FormulaContext): boolean {
  if (expression.kind === 'instant') return true;
  if (expression.kind === 'call') return timeFunctions.has(expression.name);
  if (expression.kind !== 'reference' || expression.parts.length !== 1) return false;
  const name = expression.parts[0]!;
  return (timeWords[name] !== undefined && name !== 'standard-pressure') || (context.protocol?.events.some((event) => event.id === name) ?? false);
}

/** "that in the open-surface tank", where both sides are one quantity, or one function over one window. */
function that(left: Expression, right: Expression, context: FormulaContext, depth: number): string | null {
  if (left.kind === 'reference' && right.kind === 'reference' && left.parts.length === 2 && left.parts[1] === right.parts[1] && left.parts[0] !== right.parts[0]) {
    return `that ${placeWords(right.parts[0]!, context)}`;
  }
  if (left.kind !== 'call' || right.kind !== 'call' || left.name !== right.name || left.operands.length !== right.operands.length || left.operands.length === 0) return null;
  const rest = (call: CallExpression): string => [...call.operands.slice(1).map((each) => printFormula(each)), ...call.options.map((each) => printFormula(each.value))].join(', ');
  if (rest(left) !== rest(right)) return null;
  const inner = that(left.operands[0]!, right.operands[0]!, context, depth);
  return inner ?? null;
}

/** `rate(a, w) < rate(b, w)` where both fell: "a fell faster than b between … and …". */
function comparedRates(expression: Binary, context: FormulaContext, depth: number): string | null {
  const { left, right, operator } = expression;
  if (left.kind !== 'call' || right.kind !== 'call' || left.name !== right.name || (operator !== '<' && operator !== '>')) return null;
  if (!['rate', 'slope', 'fall', 'rise', 'percent-fall', 'percent-rise'].includes(left.name)) return null;
  const tail = (call: CallExpression): string => call.operands.slice(1).map((each) => printFormula(each)).join(', ');
  if (tail(left) !== tail(right) || left.operands.length > 2) return null;
  const value = (call: CallExpression): number | null => {
    const found = evaluate(mappedText(printFormula(call)), context).value;
    return found?.type === 'number' ? found.value : null;
  };
  const p = value(left);
  const q = value(right);
  if (p === null || q === null || p === 0 || q === 0 || (p < 0) !== (q < 0)) return null;
  const names = [words(left.operands[0]!, context, depth), that(left.operands[0]!, right.operands[0]!, context, depth) ?? words(right.operands[0]!, context, depth)] as const;
  const window = left.operands[1] ? ` ${windowWords(left.operands[1], context, depth)}` : '';
  const ofRate = left.name === 'rate' || left.name === 'slope';
  const falling = ofRate ? p < 0 : left.name.endsWith('fall') === (p > 0);
  const more = ofRate ? (operator === '<') === falling : (operator === '>') === (p > 0);
  const manner = ofRate ? (more ? 'faster' : 'more slowly') : more ? 'more' : 'less';
  const percent = left.name.startsWith('percent') ? ' in per cent' : '';
  return `${names[0]} ${falling ? 'fell' : 'rose'} ${manner}${percent} than ${names[1]}${window}`;
}
