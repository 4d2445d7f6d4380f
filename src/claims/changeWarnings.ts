// Warnings beside a claim: a change too small to resolve, compared changes over different readings,
// and a window crossed by an event in some of the tanks only.
import { problem, type Problem } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { ClaimSyntax } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import { intervalSource } from '../formula/intervalSource.ts';
import type { Evaluation } from '../formula/types.ts';
import { decimalsFor } from '../quantities/format.ts';
import type { NumberValue } from '../quantities/types.ts';
import { expandedUncertainty, isFailure, subtract } from '../quantities/value.ts';
import { formatClock } from '../time/text.ts';
import type { Instant } from '../time/instant.ts';
import type { IntervalSource } from '../words/intervals.ts';
import type { Phrase } from '../words/phrases.ts';
import { computedText, digitsOf, withUnit } from './computedText.ts';
import { decimalMarkOf } from '../quantities/decimalMark.ts';
import { callsAny, changeFunctions, core, differenceFunctions, everyExpression, partOf, textOf, within, type Part } from './formulaShape.ts';
import { readingsBehind, type ReadingBehind } from './readingsBehind.ts';

/** Warnings for a claim that shows a number. */
export function changeWarnings(syntax: ClaimSyntax, evaluation: Evaluation, context: FormulaContext): Problem[] {
  const whole = partOf(syntax.formula, context);
  const inner = core(whole, context);
  const range = toDocumentRange(syntax.words, { start: 0, end: syntax.words.text.length });
  const problems: Problem[] = [];
  const isDifference = inner.expression.kind === 'call' ? differenceFunctions.has(inner.expression.name)
    : inner.expression.kind === 'binary' && inner.expression.operator === '-';
  if (isDifference && evaluation.value?.type === 'number') {
    const small = tooSmall(evaluation.value, computedText(evaluation.value, evaluation, context), context);
    if (small) problems.push(problem('below-resolution', range, small));
  }
  if (inner.expression.kind === 'binary' && (inner.expression.operator === '-' || inner.expression.operator === '/')) {
    problems.push(...windowsDiffer(within(inner, inner.expression.left, context), within(inner, inner.expression.right, context), range, context));
  }
  if (callsAny(whole, differenceFunctions, context)) problems.push(...eventsInside(whole, evaluation, range, context));
  return problems;
}

/** Warnings for a statement whose condition is true. */
export function comparisonWarnings(syntax: ClaimSyntax, evaluation: Evaluation, context: FormulaContext): Problem[] {
  if (evaluation.value?.type !== 'truth' || !evaluation.value.truth) return [];
  const range = toDocumentRange(syntax.words, { start: 0, end: syntax.words.text.length });
  const whole = partOf(syntax.formula, context);
  const problems: Problem[] = [];
  for (const { left, right } of comparisons(whole, context)) {
    const a = evaluate(textOf(left), context);
    const b = evaluate(textOf(right), context);
    if (a.value?.type === 'number' && b.value?.type === 'number') {
      const gap = subtract(a.value, b.value);
      if (!isFailure(gap)) {
        const decimals = Math.max(a.value.decimals ?? 0, b.value.decimals ?? 0) || decimalsFor(gap.value, expandedUncertainty(gap));
        const small = tooSmall(gap, withUnit(digitsOf(Math.abs(gap.value), decimals, decimalMarkOf(context.protocol?.language ?? 'en')), gap.unit), context);
        if (small) problems.push(problem('below-resolution', range, small));
      }
    }
    problems.push(...windowsDiffer(left, right, range, context));
  }
  return [...problems, ...eventsInside(whole, evaluation, range, context)];
}

function tooSmall(value: NumberValue, shown: string, context: FormulaContext): { value: string; halfWidth: string; by: IntervalSource } | null {
  const half = expandedUncertainty(value);
  const by = intervalSource(value);
  if (half === null || by === null || Math.abs(value.value) >= half) return null;
  return { value: shown, by, halfWidth: withUnit(digitsOf(half, decimalsFor(half, half), decimalMarkOf(context.protocol?.language ?? 'en')), value.unit) };
}

function comparisons(part: Part, context: FormulaContext): { left: Part; right: Part }[] {
  const { expression } = part;
  if (expression.kind === 'unary') return comparisons(within(part, expression.operand, context), context);
  if (expression.kind !== 'binary') return [];
  const left = within(part, expression.left, context);
  const right = within(part, expression.right, context);
  if (expression.operator === 'and' || expression.operator === 'or') return [...comparisons(left, context), ...comparisons(right, context)];
  return ['<', '>', '<=', '>='].includes(expression.operator) ? [{ left, right }] : [];
}

/** Two changes, of different series, whose first or last readings are not at the same times. */
function windowsDiffer(left: Part, right: Part, range: { start: number; end: number }, context: FormulaContext): Problem[] {
  const sides = [left, right].map((side) => core(side, context));
  if (!sides.every(({ expression }) => expression.kind === 'call' && changeFunctions.has(expression.name))) return [];
  const spans = sides.map((side) => spanOf(readingsBehind(evaluate(textOf(side), context), context)));
  const [a, b] = spans;
  if (!a || !b || (a.from === b.from && a.to === b.to) || a.series === b.series) return [];
  const zone = context.protocol?.zone;
  const shown = (span: Span): Phrase | '' => (zone ? ['from-to', formatClock(span.from, zone), formatClock(span.to, zone)] : '');
  return [problem('windows-differ', range, { left: shown(a), right: shown(b) })];
}

interface Span { readonly from: Instant; readonly to: Instant; readonly series: string }

function spanOf(readings: readonly ReadingBehind[]): Span | null {
  if (readings.length === 0) return null;
  const times = readings.map((each) => each.instant);
  return { from: Math.min(...times), to: Math.max(...times), series: [...new Set(readings.map((each) => each.series.id))].sort().join(' ') };
}

/** Events strictly inside the readings' span that concern some, not all, of the tanks; unless the formula names the event. */
function eventsInside(whole: Part, evaluation: Evaluation, range: { start: number; end: number }, context: FormulaContext): Problem[] {
  const { protocol } = context;
  if (!protocol || protocol.events.length === 0) return [];
  const readings = readingsBehind(evaluation, context);
  const span = spanOf(readings);
  if (!span || span.from === span.to) return [];
  const used = new Set(readings.map((each) => each.series.place));
  const named = new Set(everyExpression(whole, context).flatMap((each) => (each.kind === 'reference' ? [each.parts.join('.')] : [])));
  return protocol.events.flatMap((event) => {
    const tanks = event.tanks.map((each) => each.value);
    const partly = tanks.length > 0 && protocol.tanks.some((tank) => !tanks.includes(tank.id));
    if (!partly || !tanks.some((tank) => used.has(tank)) || event.at <= span.from || event.at >= span.to || (event.id !== null && named.has(event.id))) return [];
    const labels = tanks.map((id) => protocol.tanks.find((tank) => tank.id === id)?.label ?? id);
    return [problem('event-in-window', range, { event: event.what, time: formatClock(event.at, protocol.zone), tanks: labels })];
  });
}
