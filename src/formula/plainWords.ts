// A formula or condition in plain words of the note's language, shown to readers beside each claim.
import { formatDuration } from '../time/text.ts';
import { formatNumber } from '../quantities/format.ts';
import { measureByName } from '../quantities/measures.ts';
import { parseUnit } from '../quantities/units.ts';
import { mappedText } from '../note/mappedText.ts';
import { measureOf } from '../dataset/readingValue.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { plainWordsIn, type Phrase, type PlaceOf, type PlainWords, type QuantityFacts } from '../words/plainWords.ts';
import { unitWords } from '../words/units.ts';
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
 * lights-off and 22:30", in the note's language or the one given. What cannot be read is given back as it stands.
 */
export function plainWords(formula: string, context: FormulaContext, language?: Language): string {
  const { expression, errors } = parsedFormula(formula, context);
  const spoken = language && context.protocol ? { ...context, protocol: { ...context.protocol, language } } : context;
  return errors.length > 0 ? formula.trim() : phrase(expression, spoken, 0).nominative;
}

function wordsOf(context: FormulaContext): PlainWords {
  return plainWordsIn(languageOf(context.protocol?.language));
}

const deepestResult = 6;

function phrase(expression: Expression, context: FormulaContext, depth: number): Phrase {
  const say = wordsOf(context);
  switch (expression.kind) {
    case 'number': return say.plain(numberWords(expression.value, expression.unit, context));
    case 'duration': return say.plain(formatDuration(expression.duration).replace('.', decimalMark(context)));
    case 'instant': return expression.text.startsWith('+') ? say.afterStart(expression.text.slice(1)) : say.moment(expression.text.replace('T', ' '));
    case 'word': return say.quoted(expression.text);
    case 'reference': return referencePhrase(expression, context, depth);
    case 'convert': return say.inUnit(phrase(expression.operand, context, depth), printed(expression.unit, context));
    case 'unary': return expression.operator === 'not' ? notPhrase(expression.operand, context, depth) : minusPhrase(expression.operand, context, depth);
    case 'call': return callPhrase(expression, context, depth);
    case 'binary': return binaryPhrase(expression, context, depth);
    case 'error': return say.plain('…');
  }
}

/** The opposite said straight where there is one: "is not less than", "is no more than the instruments’ uncertainty". */
function notPhrase(operand: Expression, context: FormulaContext, depth: number): Phrase {
  const of = operand.kind === 'binary' && comparisons.has(operand.operator) ? 'comparison' : operand.kind === 'call' && operand.name === 'resolved' ? 'resolved' : 'other';
  return wordsOf(context).not(phrase(operand, context, depth), of);
}

/** `-rate(…)`, as a falling quantity is claimed: "the hourly rate of fall of …". */
function minusPhrase(operand: Expression, context: FormulaContext, depth: number): Phrase {
  return operand.kind === 'call' && operand.name === 'rate' ? callPhrase(operand, context, depth, true) : wordsOf(context).minus(phrase(operand, context, depth));
}

function printed(unit: string, context: FormulaContext): string {
  return unitWords(parseUnit(unit)?.print || unit, languageOf(context.protocol?.language));
}

function numberWords(value: number, unit: string | null, context: FormulaContext): string {
  const decimals = Math.min(12, (String(value).split('.')[1] ?? '').length);
  const digits = formatNumber(value, decimals, decimalMark(context));
  return unit === null ? digits : `${digits} ${printed(unit, context)}`;
}

function referencePhrase(reference: Reference, context: FormulaContext, depth: number): Phrase {
  const [first, second] = reference.parts as [string, string?];
  const { protocol } = context;
  const say = wordsOf(context);
  if (second !== undefined) return say.series(quantityFacts(second, reference.instrument, context), placeOf(first, context));
  const result = context.resultsByName.get(first);
  if (result) {
    return depth >= deepestResult || circularResults(context).has(first) ? say.quoted(first) : phrase(parsedFormula(result.formula.text, context).expression, context, depth + 1);
  }
  const tank = protocol?.tanks.find((each) => each.id === first);
  if (tank) return say.tank(tank.id, tank.label);
  if (protocol?.measure.some((each) => each.id === first)) return say.quantity(quantityFacts(first, null, context));
  const event = protocol?.events.find((each) => each.id === first);
  if (event) return say.event(event.what);
  const time = say.time(first);
  if (time) return time;
  if (protocol?.phases.some((each) => each.id === first)) return phasePhrase(first, say);
  return say.quoted(first);
}

function phasePhrase(id: string, say: PlainWords): Phrase {
  const night = /^(dark|recovery|baseline)-(\d+)$/u.exec(id);
  return say.phase(night ? night[1]! : id, night ? night[2]! : null);
}

function quantityFacts(id: string, instrument: string | null, context: FormulaContext): QuantityFacts {
  const { protocol } = context;
  const what = protocol ? measureOf(protocol, id, instrument)?.what?.value : undefined;
  const entry = what === undefined ? null : measureByName(what);
  return { known: entry?.name ?? null, name: what === undefined ? id.replaceAll('-', ' ') : entry?.print ?? what, instrument };
}

function placeOf(place: string, context: FormulaContext): PlaceOf {
  if (place === 'room') return { kind: 'room' };
  const tanks = context.protocol?.tanks ?? [];
  if (place === 'treatment' || place === 'control') {
    const [only, ...more] = tanks.filter((tank) => tank.role?.value === place);
    return only && more.length === 0 ? { kind: 'tank', id: only.id, label: only.label } : { kind: 'role', role: place };
  }
  const tank = tanks.find((each) => each.id === place);
  return tank ? { kind: 'tank', id: tank.id, label: tank.label } : { kind: 'group', name: place };
}

function callPhrase(call: CallExpression, context: FormulaContext, depth: number, falling = false): Phrase {
  const say = wordsOf(context);
  const entry = functionByName(call.name);
  if (!entry) return say.plain(printFormula(call));
  const difference = call.name === 'abs' && call.operands[0]?.kind === 'binary' && call.operands[0].operator === '-' ? call.operands[0] : null;
  if (difference) return say.differenceBetween(phrase(difference.left, context, depth), phrase(difference.right, context, depth));
  const signature = entry.signatures.find((each) => each.parameters.length >= call.operands.length && fitsTank(each.parameters[0]?.type, call, context)) ?? entry.signatures[0]!;
  const first = call.operands[0];
  const windowAt = call.operands.findIndex((operand) => isWindow(operand, context));
  const values = call.operands.filter((_, index) => index !== windowAt || call.name === 'duration');
  return say.call({
    name: call.name, template: signature.words ?? entry.words, ofTank: signature.parameters[0]?.type === 'tank', falling,
    ofCondition: call.name === 'count' && first?.kind === 'binary' && comparisons.has(first.operator),
    operands: values.map((operand) => (isWindow(operand, context) ? stretchPhrase(operand, context, depth) : phrase(operand, context, depth))),
    steps: values.map((operand) => operand.kind === 'call' && operand.name.endsWith('steps')),
    window: windowAt < 0 ? null : windowWords(call.operands[windowAt]!, context, depth),
    options: Object.fromEntries(call.options.map((option) => [option.name, phrase(option.value, context, depth)])),
  });
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
  const say = wordsOf(context);
  if (expression.kind === 'binary') return say.between(phrase(expression.left, context, depth), phrase(expression.right, context, depth));
  return say.during(phrase(expression, context, depth));
}

function stretchPhrase(expression: Expression, context: FormulaContext, depth: number): Phrase {
  return expression.kind === 'binary' ? wordsOf(context).stretch(phrase(expression.left, context, depth), phrase(expression.right, context, depth)) : phrase(expression, context, depth);
}

const comparisons = new Set(['<', '>', '<=', '>=', '==']);

function binaryPhrase(expression: Binary, context: FormulaContext, depth: number): Phrase {
  const { operator, left, right } = expression;
  const say = wordsOf(context);
  const compared = comparisons.has(operator) ? comparedRates(expression, context, depth) : null;
  if (compared) return compared;
  const a = phrase(left, context, depth);
  const b = (comparisons.has(operator) ? that(left, right, a, context) : null) ?? phrase(right, context, depth);
  if (operator === '..') return say.fromTo(a, b);
  if (operator === 'and' || operator === 'or') return say.joined(operator, a, b);
  if (operator === '+' && isTime(left, context)) return say.after(b, a);
  if (operator === '-' && isTime(left, context) && !isTime(right, context) && right.kind === 'duration') return say.before(b, a);
  if (operator === '-' && isTime(left, context) && isTime(right, context)) return say.stretch(b, a);
  return say.arithmetic(operator, a, b) ?? say.compare(operator, comparedKind(expression, context), a, b);
}

function comparedKind({ left, right }: Binary, context: FormulaContext): 'time' | 'word' | 'number' {
  if (isTime(left, context) || isTime(right, context)) return 'time';
  return right.kind === 'reference' && right.parts.length === 1 ? 'word' : 'number';
}

const timeFunctions = new Set(['time-of-min', 'time-of-max', 'first-below', 'first-above', 'settled', 'turning-point', 'balance-point']);

function isTime(expression: Expression, context: FormulaContext): boolean {
  if (expression.kind === 'instant') return true;
  if (expression.kind === 'call') return timeFunctions.has(expression.name);
  if (expression.kind !== 'reference' || expression.parts.length !== 1) return false;
  const name = expression.parts[0]!;
  return (wordsOf(context).time(name) !== null && name !== 'standard-pressure') || (context.protocol?.events.some((event) => event.id === name) ?? false);
}

/** "that in the open-surface tank", where both sides are one quantity, or one function over one window. */
function that(left: Expression, right: Expression, named: Phrase, context: FormulaContext): Phrase | null {
  if (left.kind === 'reference' && right.kind === 'reference' && left.parts.length === 2 && left.parts[1] === right.parts[1] && left.parts[0] !== right.parts[0]) {
    return wordsOf(context).that(named, placeOf(right.parts[0]!, context));
  }
  if (left.kind !== 'call' || right.kind !== 'call' || left.name !== right.name || left.operands.length !== right.operands.length || left.operands.length === 0) return null;
  const rest = (call: CallExpression): string => [...call.operands.slice(1).map((each) => printFormula(each)), ...call.options.map((each) => printFormula(each.value))].join(', ');
  if (rest(left) !== rest(right)) return null;
  return that(left.operands[0]!, right.operands[0]!, named, context);
}

/** `rate(a, w) < rate(b, w)` where both fell: "a fell faster than b between … and …". */
function comparedRates(expression: Binary, context: FormulaContext, depth: number): Phrase | null {
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
  const named = phrase(left.operands[0]!, context, depth);
  const ofRate = left.name === 'rate' || left.name === 'slope';
  const falling = ofRate ? p < 0 : left.name.endsWith('fall') === (p > 0);
  return wordsOf(context).comparedRates({
    a: named, b: that(left.operands[0]!, right.operands[0]!, named, context) ?? phrase(right.operands[0]!, context, depth),
    falling, more: ofRate ? (operator === '<') === falling : (operator === '>') === (p > 0), ofRate, inPercent: left.name.startsWith('percent'),
    window: left.operands[1] ? windowWords(left.operands[1], context, depth) : null,
  });
}
