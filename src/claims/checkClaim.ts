// Checks one claim: evaluates its formula and compares the words in the note with what comes out.
// Every failure is a problem with its place in the note; nothing throws.
import { isTimeUnit } from '../quantities/units.ts';
import { fix, problem, type Problem } from '../problems/problem.ts';
import { toDocumentOffset, toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import { machineValue } from '../formula/show.ts';
import type { Evaluation, FormulaValue } from '../formula/types.ts';
import { computedText } from './computedText.ts';
import { checkStated } from './checkStated.ts';
import { checkStatement } from './checkStatement.ts';
import { changeWarnings } from './changeWarnings.ts';
import { readClaimWords, saysName } from './claimWords.ts';
import type { AnyMention } from './mentions.ts';
import { isOfNumbersAlone, partOf } from './formulaShape.ts';
import { coarseProblem, disagreementProblem, formulaOfNumbers, noNumberProblem, unclearProblem, unitMissingProblem } from './mismatch.ts';
import { relatedReadings } from './readingsBehind.ts';
import { fittingUnit, isCoarse } from './compareNumber.ts';
import { stepsPerHour } from './hourlySteps.ts';
import { looseInWords } from './looseNumbers.ts';
import { checkShown } from './shownNumbers.ts';
import { utc } from '../time/zone.ts';
import { languageOf } from '../words/languages.ts';
import type { CheckedClaim } from './types.ts';

/** Checks a claim against the plan and the readings. The result carries the evaluation's own problems too. */
export function checkClaim(syntax: ClaimSyntax, context: FormulaContext): CheckedClaim {
  switch (syntax.form) {
    case 'stated': return checkStated(syntax, context);
    case 'if': return checkStatement(syntax, context);
    case 'unfilled': return checkUnfilled(syntax, context);
    case 'equals': return checkEquals(syntax, context);
  }
}

function failed(syntax: ClaimSyntax, evaluation: Evaluation, more: readonly Problem[] = []): CheckedClaim {
  return { syntax, mark: 'unchecked', state: 'failed', evaluation, computed: null, machine: null, approximate: false, problems: [...evaluation.problems, ...more] };
}

/** `{words = a < b}`: a truth is claimed with `if`. */
function needsIf(syntax: ClaimSyntax): Problem {
  const separator = { start: toDocumentOffset(syntax.words, syntax.words.text.length, true), end: toDocumentOffset(syntax.formula, 0) };
  const fixes = syntax.form === 'unfilled' || separator.end <= separator.start ? []
    : [fix('claim-with-if', {}, [{ range: separator, newText: ' if ' }], { preferred: true })];
  return problem('claim-needs-if', syntax.range, { formula: syntax.formula.text.trim() }, fixes);
}

function checkUnfilled(syntax: ClaimSyntax, context: FormulaContext): CheckedClaim {
  const evaluation = evaluate(syntax.formula, context);
  const { value } = evaluation;
  if (!value) return failed(syntax, evaluation);
  if (value.type === 'truth') return failed(syntax, evaluation, [needsIf(syntax)]);
  const computed = computedText(value, evaluation, context);
  const range = toDocumentRange(syntax.words, { start: 0, end: syntax.words.text.length });
  const unfilled = problem('claim-unfilled', syntax.range, { value: computed, formula: syntax.formula.text.trim() },
    [fix('fill-in', { value: computed }, [{ range, newText: computed }], { preferred: true })]);
  return { syntax, mark: 'computed', state: 'unfilled', evaluation, computed, machine: machineValue(value, context), approximate: false,
    problems: [...evaluation.problems, unfilled, ...changeWarnings(syntax, evaluation, context)] };
}

function checkEquals(syntax: ClaimSyntax, context: FormulaContext): CheckedClaim {
  const evaluation = evaluate(syntax.formula, context);
  const { value } = evaluation;
  if (!value) return failed(syntax, evaluation);
  if (value.type === 'truth') return failed(syntax, evaluation, [needsIf(syntax)]);
  const computed = computedText(value, evaluation, context);
  const machine = machineValue(value, context);
  const mentions = readClaimWords(syntax.words.text, context);
  const result = value.type === 'word' || value.type === 'tank' || value.type === 'quantity'
    ? checkName(syntax, value, computed, evaluation, context)
    : checkNumbers(syntax, mentions, value, computed, evaluation, context);
  const holds = result.state === 'holds';
  const empty = holds ? numbersAlone(syntax, context) : [];
  return { syntax, mark: holds && empty.length === 0 ? 'computed' : 'unchecked', state: result.state, evaluation, computed, machine, approximate: result.approximate,
    problems: [...evaluation.problems, ...result.problems, ...empty, ...changeWarnings(syntax, evaluation, context)] };
}

/** `{5.83 mg/L = 5.83 mg/L}` checks nothing. A level that has a name of its own (`careful-level`) is repeated, not claimed. */
function numbersAlone(syntax: ClaimSyntax, context: FormulaContext): Problem[] {
  if (/^\s*\p{L}[\p{L}\p{N}-]*\s*$/u.test(syntax.formula.text) || !isOfNumbersAlone(partOf(syntax.formula, context), context)) return [];
  return [formulaOfNumbers(syntax)];
}

interface Result { readonly state: 'holds' | 'mismatch'; readonly approximate: boolean; readonly problems: readonly Problem[] }

function checkNumbers(
  syntax: ClaimSyntax, mentions: readonly AnyMention[], value: FormulaValue, computed: string, evaluation: Evaluation, context: FormulaContext,
): Result {
  const zone = context.protocol?.zone ?? utc;
  const direct = checkShown(syntax.words.text, mentions, value, zone);
  const hourly = direct.state === 'no-number' && value.type === 'series' ? stepsPerHour(syntax.formula, value, context) : null;
  const check = hourly ? checkShown(syntax.words.text, mentions, hourly, zone) : direct;
  const unclear = unclearProblem(syntax, mentions, value, computed, check.state === 'no-number');
  if (unclear) return { state: 'mismatch', approximate: false, problems: [unclear] };
  if (check.state === 'no-number') return { state: 'mismatch', approximate: false, problems: [noNumberProblem(syntax, mentions, value, computed, languageOf(context.protocol?.language))] };
  if (check.state === 'mismatch') return { state: 'mismatch', approximate: check.approximate, problems: disagreementProblem(syntax, check, value, computed, evaluation, context) };
  const unchecked = looseInWords(syntax, mentions, context, (unit) => (value.type === 'number' || value.type === 'series') && fittingUnit(unit, value.unit) !== null,
    value.type === 'number' && !isTimeUnit(value.unit));
  const hints = check.unitMissing && check.claimed ? [unitMissingProblem(syntax, check.claimed, value)] : [];
  if (value.type === 'number' && check.claimed?.kind === 'number' && isCoarse(check.claimed, value)) hints.push(coarseProblem(syntax, check.claimed, computed));
  return { state: 'holds', approximate: check.approximate, problems: [...hints, ...(hourly ? [] : unchecked)] };
}

/** A word of a scale, a tank or a quantity is claimed by its name among the words. */
function checkName(
  syntax: ClaimSyntax, value: Extract<FormulaValue, { type: 'word' | 'tank' | 'quantity' }>, computed: string, evaluation: Evaluation, context: FormulaContext,
): Result {
  const names = value.type === 'word' ? [value.word] : [value.id, computed];
  if (names.some((name) => saysName(syntax.words.text, name))) return { state: 'holds', approximate: false, problems: [] };
  const range = toDocumentRange(syntax.words, { start: 0, end: syntax.words.text.length });
  const scale = value.type === 'word' ? (context.protocol?.measure ?? []).flatMap((each) => each.scale ?? []) : [];
  const other = scale.find((word) => saysName(syntax.words.text, word));
  const newText = other ? syntax.words.text.replace(new RegExp(`(?<![\\p{L}\\p{N}])${other}(?![\\p{L}\\p{N}])`, 'iu'), computed) : computed;
  return { state: 'mismatch', approximate: false, problems: [problem('claim-mismatch', range,
    { shown: syntax.words.text.trim(), value: computed, formula: syntax.formula.text.trim(), sign: '' },
    [fix('replace-with', { text: newText }, [{ range, newText }], { preferred: true })],
    relatedReadings(evaluation, context))] };
}
