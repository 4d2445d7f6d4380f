// What a formula is made of, named results followed: which functions it calls and which names it uses.
import { sliceMapped, type MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import type { FormulaContext } from '../formula/context.ts';
import { parseFormula } from '../formula/parse.ts';
import type { Expression } from '../formula/types.ts';

/** Functions that give the change of one series over a window. */
export const changeFunctions: ReadonlySet<string> = new Set(['change', 'rise', 'fall', 'percent-change', 'percent-rise', 'percent-fall', 'rate', 'slope']);
/** Functions whose value is a difference, so that it may be too small to tell from nothing. */
export const differenceFunctions: ReadonlySet<string> = new Set([...changeFunctions, 'steepest-fall', 'steepest-rise', 'difference', 'percent-difference', 'contrast']);

/** An expression with the text it was read from; a bare result name is followed to its formula. */
export interface Part { readonly expression: Expression; readonly text: MappedText }

export function partOf(text: MappedText, context: FormulaContext): Part {
  return followed({ expression: parseFormula(text.text).expression, text }, context, 0);
}

function followed(part: Part, context: FormulaContext, depth: number): Part {
  const { expression } = part;
  if (expression.kind !== 'reference' || expression.parts.length !== 1 || depth > 20) return part;
  const result = context.results.find((each) => each.name === expression.parts[0]);
  return result ? followed({ expression: parseFormula(result.formula.text).expression, text: result.formula }, context, depth + 1) : part;
}

/** A part inside a part. */
export function within(part: Part, expression: Expression, context: FormulaContext): Part {
  return followed({ expression, text: part.text }, context, 0);
}

/** The text of a part, with its way back to the note. */
export function textOf(part: Part): MappedText {
  const range: SourceRange = part.expression.range;
  return sliceMapped(part.text, range.start, range.end);
}

/** The part without unit conversion, sign, `abs` and `round`. */
export function core(part: Part, context: FormulaContext): Part {
  const { expression } = part;
  if (expression.kind === 'convert' || expression.kind === 'unary') return core(within(part, expression.operand, context), context);
  if (expression.kind === 'call' && (expression.name === 'abs' || expression.name === 'round') && expression.operands[0]) return core(within(part, expression.operands[0], context), context);
  return part;
}

/** Every expression in the formula and in the results it names. */
export function everyExpression(part: Part, context: FormulaContext): Expression[] {
  return everyPart(part, context).map((each) => each.expression);
}

/** The same with the text that each was read from. */
export function everyPart(part: Part, context: FormulaContext, depth = 0): Part[] {
  const here = followed(part, context, depth);
  const found: Part[] = [here];
  if (depth > 20) return found;
  const inner = (expression: Expression): void => { found.push(...everyPart({ expression, text: here.text }, context, depth + 1)); };
  const { expression } = here;
  if (expression.kind === 'call') { expression.operands.forEach(inner); expression.options.forEach((option) => inner(option.value)); }
  if (expression.kind === 'binary') { inner(expression.left); inner(expression.right); }
  if (expression.kind === 'unary' || expression.kind === 'convert') inner(expression.operand);
  return found;
}

export function callsAny(part: Part, names: ReadonlySet<string>, context: FormulaContext): boolean {
  return everyExpression(part, context).some((each) => each.kind === 'call' && names.has(each.name));
}

/** True for a formula over typed numbers alone: no reading, no fact of the plan, no moment goes in. */
export function isOfNumbersAlone(part: Part, context: FormulaContext): boolean {
  const all = everyExpression(part, context);
  return !all.some((each) => each.kind === 'reference' || each.kind === 'instant' || each.kind === 'error' || each.kind === 'word');
}
