// Figures for generated prose: a formula in, a value run out, so that no number can differ from what a claim would get.
import { computedText, digitsOf, instantText, withUnit } from '../claims/computedText.ts';
import { evaluate } from '../formula/evaluate.ts';
import { machineValue } from '../formula/show.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { Evaluation, FormulaNumber, FormulaValue } from '../formula/types.ts';
import { mappedText } from '../note/mappedText.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { decimalsFor, roundTo } from '../quantities/format.ts';
import { expandedUncertainty } from '../quantities/value.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Unit } from '../quantities/types.ts';
import type { Pieces } from '../words/pieces.ts';
import { inUnits, timeInWords, wordsOf } from './facts.ts';
import type { Paragraph, Run, ValueRun } from './types.ts';

export type RunPieces = Pieces<Run>;

/** A formula worked out: its value and the run that shows it. */
export interface Figure { readonly run: ValueRun; readonly value: FormulaValue; readonly evaluation: Evaluation }

/** Works a formula out; null when it has no value, so that the sentence about it is left away. */
export function figure(formula: string, context: FormulaContext): Figure | null {
  const evaluation = evaluate(mappedText(formula), context);
  const { value } = evaluation;
  if (!value || evaluation.problems.some((each) => each.severity === 'error')) return null;
  const text = inLanguage(computedText(value, evaluation, context), context);
  return text === '' ? null : { run: { kind: 'value', text, formula, machine: machineValue(value, context) }, value, evaluation };
}

/** Units with a word in them, in the words of the note's language. */
function inLanguage(text: string, context: FormulaContext): string {
  return inUnits(text, context.protocol);
}

function amount(digits: string, unit: Unit, context: FormulaContext): string {
  return inLanguage(withUnit(digits, unit), context);
}

/** A figure that is a time or a stretch of time, as prose says it: `22:00 on 14 March`. */
export function timeFigure(formula: string, context: FormulaContext, protocol: Protocol): ValueRun | null {
  const found = figure(formula, context);
  if (!found) return null;
  const { run, value } = found;
  const said = (instant: number): string => timeInWords(instantText(instant, context), protocol);
  if (value.type === 'instant' || value.type === 'event') return { ...run, text: said(value.instant) };
  return value.type === 'window' ? { ...run, text: wordsOf(protocol).names.span(said(value.from), said(value.to)) } : run;
}

export interface NumberFigure extends Figure { readonly value: FormulaNumber }

export function numberFigure(formula: string, context: FormulaContext): NumberFigure | null {
  const found = figure(formula, context);
  return found?.value.type === 'number' ? { ...found, value: found.value } : null;
}

/** The 95 % half-width of a figure as text with its unit; null where no accuracy was stated. */
export function halfWidthText(found: NumberFigure, context: FormulaContext): string | null {
  const half = expandedUncertainty(found.value);
  return half === null ? null : amount(digitsOf(half, decimalsFor(half, half), decimalMarkOf(context.protocol?.language ?? 'en')), found.value.unit, context);
}

/** The figure shown with `± half-width` where one is known: `0.24 ± 0.02 mg/L`. */
export function withHalfWidth(found: NumberFigure, context: FormulaContext): ValueRun {
  const half = expandedUncertainty(found.value);
  if (half === null || half === 0) return found.run;
  const mark = decimalMarkOf(context.protocol?.language ?? 'en');
  const shown = decimalsShown(found.run.text);
  const blurred = roundTo(half, shown) >= roundTo(Math.abs(found.value.value), shown) && half < Math.abs(found.value.value);
  const decimals = Math.max(blurred ? shown + 1 : shown, half < 0.5 * 10 ** -shown ? Math.max(0, -Math.floor(Math.log10(half))) : 0);
  return { ...found.run, text: amount(`${digitsOf(found.value.value, decimals, mark)} ± ${digitsOf(half, decimals, mark)}`, found.value.unit, context) };
}

/** A figure below its half-width, with so many decimals that it shows as below it. */
export function belowHalfWidth(found: NumberFigure, context: FormulaContext): ValueRun {
  const half = expandedUncertainty(found.value);
  if (half === null) return found.run;
  const size = Math.abs(found.value.value);
  const decimals = decimalsFor(half, half);
  const shown = decimalsShown(found.run.text);
  if (roundTo(size, shown) < roundTo(half, decimals)) return found.run;
  return { ...found.run, text: amount(digitsOf(found.value.value, Math.max(shown, decimals), decimalMarkOf(context.protocol?.language ?? 'en')), found.value.unit, context) };
}

/** Digits after the decimal mark of the last number of a text. */
function decimalsShown(text: string): number {
  return /\d(?:[.,](\d+))?/.exec(text.replace(/^.*?(?=\d+(?:[.,]\d+)?\s*\D*$)/, ''))?.[1]?.length ?? 0;
}

/** Rows of pieces as one paragraph: neighbouring texts joined, spaces made single. */
export function paragraph(topic: string, sentences: readonly RunPieces[]): Paragraph | null {
  const runs: Run[] = [];
  const text = (more: string): void => {
    if (more === '') return;
    const last = runs.at(-1);
    if (last?.kind === 'text') runs[runs.length - 1] = { kind: 'text', text: last.text + more };
    else runs.push({ kind: 'text', text: more });
  };
  sentences.filter((pieces) => pieces.some((piece) => piece !== '')).forEach((pieces, index) => {
    if (index > 0) text(' ');
    for (const piece of pieces) if (typeof piece === 'string') text(piece); else runs.push(piece);
  });
  const tidy = runs.map((run): Run => (run.kind === 'text' ? { kind: 'text', text: run.text.replace(/[ \t\n]{2,}/g, ' ') } : run));
  return tidy.length === 0 ? null : { topic, runs: tidy };
}

export function paragraphText(runs: readonly Run[]): string {
  return runs.map((run) => run.text).join('');
}
