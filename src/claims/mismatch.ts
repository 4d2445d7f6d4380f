// Problems and mends for a claim whose words do not say what its formula gives.
import { fix, problem, type Fix, type Problem, type TextEdit } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { parseFormula } from '../formula/parse.ts';
import type { Evaluation, FormulaValue } from '../formula/types.ts';
import type { Unit } from '../quantities/types.ts';
import type { Language } from '../words/languages.ts';
import { percentagePoints } from '../words/units.ts';
import { fittingUnit } from './compareNumber.ts';
import { printedUnit } from './computedText.ts';
import type { AnyMention, NumberMention } from './mentions.ts';
import { relatedReadings } from './readingsBehind.ts';
import type { Disagreement, ShownCheck } from './shownNumbers.ts';

/** One problem for all numbers that disagree, at the first of them; its first mend changes them all. */
export function disagreementProblem(
  syntax: ClaimSyntax, check: ShownCheck, _value: FormulaValue, computed: string, evaluation: Evaluation, context: FormulaContext,
): Problem[] {
  const words = syntax.words.text;
  const problems: Problem[] = [];
  const wrong = check.disagreements.filter((each) => each.kind !== 'no-half-width');
  for (const each of check.disagreements) {
    if (each.kind === 'no-half-width') problems.push(problem('claim-uncertainty-unknown', toDocumentRange(syntax.words, each), { formula: syntax.formula.text.trim() }));
  }
  const [first] = wrong;
  if (!first) return problems;
  const last = wrong.at(-1)!;
  const span = { start: first.start, end: Math.max(first.end, last.end) };
  const edits: TextEdit[] = wrong.map((each) => ({ range: toDocumentRange(syntax.words, { start: each.editStart, end: each.editEnd }), newText: each.newText }));
  const fixes: Fix[] = [];
  const signLost = wrong.every((each) => each.kind === 'sign-lost');
  const turned = signLost ? turnedFormula(syntax) : null;
  if (turned) fixes.push(turned);
  fixes.push(fix('replace-with', { text: replaced(words, span, wrong) }, edits, { preferred: turned === null }));
  const kinds = signLost ? 'negative' : wrong.every((each) => each.kind === 'half-width') ? 'half-width' : '';
  const value = kinds === 'half-width' ? `± ${first.newText}` : computed;
  problems.push(problem('claim-mismatch', toDocumentRange(syntax.words, span),
    { shown: words.slice(span.start, span.end).replace(/\s+/g, ' '), value, formula: syntax.formula.text.trim(), sign: kinds, instead: turned ? String(turned.args.name ?? '') : '' },
    fixes, relatedReadings(evaluation, context)));
  return problems;
}

/** The stretch of words with the new numbers in it. */
function replaced(words: string, span: { start: number; end: number }, wrong: readonly Disagreement[]): string {
  let text = '';
  let at = span.start;
  for (const each of [...wrong].sort((a, b) => a.editStart - b.editStart)) {
    text += words.slice(at, each.editStart) + each.newText;
    at = each.editEnd;
  }
  return (text + words.slice(at, span.end)).replace(/\s+/g, ' ');
}

const opposites: Readonly<Record<string, string>> = {
  change: 'fall', rise: 'fall', fall: 'rise', 'percent-change': 'percent-fall', 'percent-rise': 'percent-fall', 'percent-fall': 'percent-rise',
  'steepest-rise': 'steepest-fall', 'steepest-fall': 'steepest-rise',
};

/** The formula that gives the same change without a minus: `fall(…)` for `change(…)`, the other way round for `difference(a, b)`. */
function turnedFormula(syntax: ClaimSyntax): Fix | null {
  const text = syntax.formula.text;
  const { expression } = parseFormula(text);
  const call = expression.kind === 'convert' ? expression.operand : expression;
  if (call.kind === 'call') {
    const name = opposites[call.name];
    if (name) return fix('use-function', { name }, [{ range: toDocumentRange(syntax.formula, call.nameRange), newText: name }], { preferred: true });
    const [left, right] = call.operands;
    if (call.name === 'difference' && left && right && call.operands.length >= 2) {
      const cut = (range: { start: number; end: number }): string => text.slice(range.start, range.end);
      return fix('turn-difference', { name: `difference(${cut(right.range)}, ${cut(left.range)})` }, [
        { range: toDocumentRange(syntax.formula, left.range), newText: cut(right.range) },
        { range: toDocumentRange(syntax.formula, right.range), newText: cut(left.range) },
      ], { preferred: true });
    }
  }
  const whole = { start: text.length - text.trimStart().length, end: text.trimEnd().length };
  if (whole.end <= whole.start || call.kind === 'error') return null;
  if (expression.kind === 'convert') return null;
  const negated = expression.kind === 'call' ? `-${text.slice(whole.start, whole.end)}` : `-(${text.slice(whole.start, whole.end)})`;
  return fix('use-formula', { name: negated }, [{ range: toDocumentRange(syntax.formula, whole), newText: negated }], { preferred: true });
}

/** Digits that cannot be read without guessing, where they would be the claimed number. */
export function unclearProblem(syntax: ClaimSyntax, mentions: readonly AnyMention[], value: FormulaValue, computed: string, noOther: boolean): Problem | null {
  const valueUnit = value.type === 'number' || value.type === 'series' ? value.unit : null;
  for (const mention of mentions) {
    if (mention.kind !== 'unclear') continue;
    const fits = valueUnit !== null && (mention.unit === null ? noOther : fittingUnit(mention.unit, valueUnit) !== null);
    if (!fits) continue;
    const range = toDocumentRange(syntax.words, { start: mention.valueStart, end: mention.valueEnd });
    const fixes = mention.suggestion === '' ? [] : [fix('replace-with', { text: mention.suggestion }, [{ range, newText: mention.suggestion }], { preferred: true })];
    return problem('claim-number-unclear', range, { text: mention.text, suggestion: mention.suggestion, value: computed }, fixes);
  }
  return null;
}

const isPercent = (unit: Unit | null): boolean => unit?.kind === 'percentage';

/** Nothing in the words fits: a different unit, percent for percentage points, or no number at all. */
export function noNumberProblem(syntax: ClaimSyntax, mentions: readonly AnyMention[], value: FormulaValue, computed: string, language: Language): Problem {
  const all = { start: 0, end: syntax.words.text.length };
  const numbers = mentions.filter((mention): mention is NumberMention => mention.kind === 'number' && mention.unit !== null);
  const unit = value.type === 'number' || value.type === 'series' ? value.unit : null;
  const percent = unit?.kind === 'percentage-points' ? numbers.find((mention) => isPercent(mention.unit)) : undefined;
  if (percent) {
    const place = { start: percent.valueEnd, end: percent.end };
    const points = percentagePoints[language];
    const edits = place.end > place.start ? [{ range: toDocumentRange(syntax.words, place), newText: ` ${points}` }] : [];
    return problem('claim-percent-points', toDocumentRange(syntax.words, percent), { shown: syntax.words.text.slice(percent.start, percent.end), value: computed },
      edits.length > 0 ? [fix('replace-with', { text: `${syntax.words.text.slice(percent.start, percent.valueEnd)} ${points}` }, edits, { preferred: true })] : []);
  }
  const [only] = numbers;
  const range = toDocumentRange(syntax.words, all);
  if (only && numbers.length === 1 && !only.unitFromNext) {
    const place = toDocumentRange(syntax.words, only);
    return problem('claim-unit-differs', place, { shown: syntax.words.text.slice(only.start, only.end).replace(/\s+/g, ' '), value: computed },
      [fix('replace-with', { text: computed }, [{ range: place, newText: computed }], { preferred: true })]);
  }
  const end = { start: range.end, end: range.end };
  return problem('claim-no-number', range, { value: computed }, syntax.words.text.trim() === '' ? []
    : [fix('add-to-words', { text: computed }, [{ range: end, newText: ` ${computed}` }])]);
}

export function unitMissingProblem(syntax: ClaimSyntax, claimed: AnyMention, value: FormulaValue): Problem {
  const print = value.type === 'number' || value.type === 'series' ? printedUnit(value.unit) : 'h';
  const place = { start: claimed.end, end: claimed.end };
  return problem('claim-without-unit', toDocumentRange(syntax.words, claimed), { shown: syntax.words.text.slice(claimed.start, claimed.end), unit: print },
    [fix('add-unit', { unit: print }, [{ range: toDocumentRange(syntax.words, place), newText: ` ${print}` }], { preferred: true, safe: true })]);
}

/** Nothing that was read or planned goes into the formula. */
export function formulaOfNumbers(syntax: ClaimSyntax): Problem {
  return problem('formula-of-numbers', toDocumentRange(syntax.formula, { start: 0, end: syntax.formula.text.length }), { formula: syntax.formula.text.trim().replace(/\s+/g, ' ') });
}

/** A number rounded so far that it says something else. */
export function coarseProblem(syntax: ClaimSyntax, { start, end }: AnyMention, computed: string): Problem {
  return problem('rounded-coarsely', toDocumentRange(syntax.words, { start, end }), { shown: syntax.words.text.slice(start, end).trim().replace(/\s+/g, ' '), value: computed });
}
