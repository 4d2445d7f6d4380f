// `{any words if CONDITION}`: the words stand while the condition is true. That the condition holds proves no cause.
import { fix, problem, type Problem } from '../problems/problem.ts';
import { sliceMapped, toDocumentOffset, toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import { parseFormula } from '../formula/parse.ts';
import { machineValue } from '../formula/show.ts';
import type { Expression } from '../formula/types.ts';
import { comparisonWarnings } from './changeWarnings.ts';
import { computedText } from './computedText.ts';
import { claimWords } from '../words/claimWords.ts';
import { languageOf } from '../words/languages.ts';
import { readClaimWords } from './claimWords.ts';
import { isOfNumbersAlone, partOf } from './formulaShape.ts';
import { formulaOfNumbers } from './mismatch.ts';
import { looseInWords } from './looseNumbers.ts';
import { relatedReadings } from './readingsBehind.ts';
import { checkShown } from './shownNumbers.ts';
import { utc } from '../time/zone.ts';
import type { CheckedClaim } from './types.ts';

export function checkStatement(syntax: ClaimSyntax, context: FormulaContext): CheckedClaim {
  const evaluation = evaluate(syntax.formula, context);
  const { value } = evaluation;
  const none = { syntax, mark: 'unchecked', state: 'failed', evaluation, computed: null, machine: null, approximate: false } as const;
  if (!value) return { ...none, problems: evaluation.problems };
  if (value.type !== 'truth') {
    const computed = computedText(value, evaluation, context);
    const check = checkShown(syntax.words.text, readClaimWords(syntax.words.text, context), value, context.protocol?.zone ?? utc);
    const separator = { start: toDocumentOffset(syntax.words, syntax.words.text.length, true), end: toDocumentOffset(syntax.formula, 0) };
    const fixes = check.state === 'no-number' || separator.end <= separator.start ? [] : [fix('claim-with-equals', {}, [{ range: separator, newText: ' = ' }], { preferred: true })];
    return { ...none, computed, problems: [...evaluation.problems,
      problem('statement-not-truth', toDocumentRange(syntax.formula, { start: 0, end: syntax.formula.text.length }), { formula: syntax.formula.text.trim(), value: computed }, fixes)] };
  }
  const loose = looseInWords(syntax, readClaimWords(syntax.words.text, context), context, () => false, true);
  const warnings = [...comparisonWarnings(syntax, evaluation, context), ...loose];
  const machine = machineValue(value, context);
  const computed = claimWords(languageOf(context.protocol?.language)).truths[value.truth ? 1 : 0];
  if (value.truth) {
    const empty = isOfNumbersAlone(partOf(syntax.formula, context), context) ? [formulaOfNumbers(syntax)] : [];
    return { ...none, mark: empty.length === 0 ? 'condition' : 'unchecked', state: 'holds', computed, machine, problems: [...evaluation.problems, ...empty, ...warnings] };
  }
  const notTrue = falseStatement(syntax, evaluation, context);
  return { ...none, state: 'false', computed, machine, problems: [...evaluation.problems, notTrue, ...warnings] };
}

function falseStatement(syntax: ClaimSyntax, evaluation: ReturnType<typeof evaluate>, context: FormulaContext): Problem {
  return problem('statement-false', toDocumentRange(syntax.words, { start: 0, end: syntax.words.text.length }),
    { words: syntax.words.text.trim().replace(/\s+/g, ' '), condition: syntax.formula.text.trim().replace(/\s+/g, ' '), because: sidesText(syntax, context) }, [],
    relatedReadings(evaluation, context));
}

/** The two sides of the comparison that is not true, as text: `−0.48 mg/L/h < −0.60 mg/L/h`. */
function sidesText(syntax: ClaimSyntax, context: FormulaContext): string {
  const comparison = falseComparison(parseFormula(syntax.formula.text).expression, syntax, context);
  if (!comparison) return '';
  const side = (part: Expression): string => {
    const evaluation = evaluate(sliceMapped(syntax.formula, part.range.start, part.range.end), context);
    return evaluation.value ? computedText(evaluation.value, evaluation, context) : '';
  };
  const left = side(comparison.left);
  const right = side(comparison.right);
  return left && right ? `${left} ${comparison.operator} ${right}` : '';
}

type Binary = Extract<Expression, { kind: 'binary' }>;

function falseComparison(expression: Expression, syntax: ClaimSyntax, context: FormulaContext): Binary | null {
  if (expression.kind !== 'binary') return null;
  if (expression.operator === 'and') {
    for (const part of [expression.left, expression.right]) {
      const found = falseComparison(part, syntax, context);
      if (found && isFalse(found, syntax, context)) return found;
    }
    return null;
  }
  return ['<', '>', '<=', '>=', '=='].includes(expression.operator) && isFalse(expression, syntax, context) ? expression : null;
}

function isFalse(expression: Expression, syntax: ClaimSyntax, context: FormulaContext): boolean {
  const { value } = evaluate(sliceMapped(syntax.formula, expression.range.start, expression.range.end), context);
  return value?.type === 'truth' && !value.truth;
}
