// The way in: a formula's text and a context in, its value with problems and working out.
import type { MappedText } from '../note/mappedText.ts';
import { problem } from '../problems/problem.ts';
import { toDocumentRange } from '../note/mappedText.ts';
import type { Instant } from '../time/instant.ts';
import type { Window } from '../protocol/types.ts';
import type { FormulaContext } from './context.ts';
import { interpret, noteWhole, trimmed } from './interpret.ts';
import { bareNameKinds } from './names.ts';
import { isTruths, pointTruth } from './truths.ts';
import { circularResults, parsedFormula } from './results.ts';
import { Run } from './run.ts';
import type { Evaluation, FormulaValue } from './types.ts';
import { valueKind } from './valueKinds.ts';

/** The value of a formula with its problems and working. Never throws; a value of null always comes with a problem. */
export function evaluate(formula: MappedText, context: FormulaContext): Evaluation {
  const run = start(formula, context, false);
  const value = valueIn(run);
  if (value && isTruths(value)) {
    const place = trimmed(formula.text);
    run.fail('all-or-any', place, {}, ['all', 'any'].map((name) => run.replace(place, `${name}(${run.textOf(place)})`)));
  } else if (value && (value.type === 'tank' || value.type === 'quantity')) {
    run.fail('formula-not-a-value', trimmed(formula.text), { found: valueKind(value) });
  }
  return finish(run, value);
}

/** The evaluation of a named result; null when there is no result of that name. */
export function evaluateResult(name: string, context: FormulaContext): Evaluation | null {
  const known = context.cache.get(name);
  if (known) return known;
  const result = context.resultsByName.get(name);
  if (!result) return null;
  // A circle is reported at the names that close it; the mark below ends any way round that was missed.
  context.cache.set(name, { value: null, problems: [problem('result-circle', result.nameRange, { name })], working: [] });
  const kinds = bareNameKinds(context.names, name);
  const found = circularResults(context).has(name) || result.formula.text.trim() !== '' ? evaluate(result.formula, context)
    : { value: null, problems: [problem('formula-empty', toDocumentRange(result.formula, { start: 0, end: result.formula.text.length }))], working: [] };
  const evaluation: Evaluation = kinds.length < 2 ? found
    : { ...found, value: null, problems: [problem('name-used-twice', result.nameRange, { name, kind: 'result', other: kinds[1]! }), ...found.problems] };
  context.cache.set(name, evaluation);
  return evaluation;
}

export interface ReadingTruth {
  readonly instant: Instant;
  readonly truth: boolean;
}

/** A condition's truth at every instant at which all its series have a reading, with what stood in the way. */
export interface ReadingTruths { readonly truths: readonly ReadingTruth[]; readonly problems: Evaluation['problems'] }

/**
 * A condition over paired readings, instant by instant, as `accept` and `stop if` ask for it. Readings outside the
 * instrument's range that cannot tell are left away. A condition without readings in it is told once, at the window's end.
 */
export function evaluateAtEachReading(
  formula: MappedText, context: FormulaContext, window: Window | null, options: { includeLeftOut?: boolean } = {},
): ReadingTruths {
  const run = start(formula, context, options.includeLeftOut ?? false);
  const value = valueIn(run);
  if (value && value.type !== 'truth' && !isTruths(value)) run.fail('condition-needed', trimmed(formula.text), { found: valueKind(value) });
  if (!value || run.failed) return { truths: [], problems: finish(run, null).problems };
  if (value.type === 'truth') {
    const instant = window?.to ?? context.dataset.times.at(-1);
    return { truths: instant === undefined ? [] : [{ instant, truth: value.truth }], problems: run.problems };
  }
  if (!isTruths(value)) return { truths: [], problems: run.problems };
  const truths: ReadingTruth[] = [];
  for (const point of value.points) {
    if (window && (point.time < window.from || point.time > window.to)) continue;
    const truth = pointTruth(point);
    if (truth !== null) truths.push({ instant: point.time, truth });
  }
  return { truths, problems: run.problems };
}

function start(formula: MappedText, context: FormulaContext, includeLeftOut: boolean): Run {
  return new Run(context, formula, (name) => evaluateResult(name, context), includeLeftOut);
}

function valueIn(run: Run): FormulaValue | null {
  const { expression, errors } = parsedFormula(run.formula.text, run.context);
  for (const error of errors) {
    run.fail(error.code, error.range, error.args, error.replacement === null ? [] : [run.replace(error.range, error.replacement, { preferred: true, safe: true })]);
  }
  const value = interpret(run, expression);
  if (value && !run.failed) noteWhole(run, expression, value);
  return value;
}

function finish(run: Run, value: FormulaValue | null): Evaluation {
  const failed = run.failed;
  if (!value && !failed) run.fail('formula-syntax', trimmed(run.formula.text), { expected: ['expected-formula'], found: run.formula.text.trim() });
  return { value: failed ? null : value, problems: run.problems, working: run.working };
}
