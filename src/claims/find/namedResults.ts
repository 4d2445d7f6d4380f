// Named results that are the number: they stand in for the formula they name, since one fact has one place.
import type { FormulaContext } from '../../formula/context.ts';
import { evaluate } from '../../formula/evaluate.ts';
import { mappedText } from '../../note/mappedText.ts';
import { parsedFormula } from '../../formula/results.ts';
import type { Expression, FormulaValue } from '../../formula/types.ts';
import type { Instant } from '../../time/instant.ts';
import { everyExpression } from '../formulaShape.ts';
import { canonicalFormula } from './canonical.ts';
import type { Family, Found } from './types.ts';

const families: Readonly<Record<string, Family>> = {
  at: 'reading', first: 'first', last: 'last', min: 'lowest', max: 'highest', mean: 'mean', median: 'median', sd: 'deviation', range: 'range', fall: 'fall', rise: 'rise', change: 'rise', 'percent-fall': 'percent-fall',
  'percent-rise': 'percent-rise', 'percent-change': 'percent-rise', rate: 'rate', slope: 'slope', 'steepest-fall': 'steepest', 'steepest-rise': 'steepest', 'hours-below': 'hours-below', 'hours-above': 'hours-above',
  'first-below': 'first-below', 'first-above': 'first-above', 'time-of-min': 'time-of-lowest', 'time-of-max': 'time-of-highest', duration: 'duration', respiration: 'special', reaeration: 'special',
};

/** Puts the name where a found formula is what it names; adds results of other shapes that give the number. */
export function resultFormulas(context: FormulaContext, gives: (value: FormulaValue) => boolean, found: Map<string, Found>): void {
  if (context.results.length === 0) return;
  let canonical: Map<string, string> | null = null;
  for (const result of context.results) {
    const { value } = evaluate(mappedText(result.name), context);
    if (!value || !gives(value)) continue;
    canonical ??= new Map([...found.keys()].slice(0, 400).map((formula) => [canonicalFormula(formula, context), formula]));
    const same = canonical.get(canonicalFormula(result.name, context));
    const known = same === undefined ? undefined : found.get(same);
    if (known) {
      found.delete(same!);
      found.set(result.name, { ...known, formula: result.name, isResult: true });
    } else found.set(result.name, shapeOf(result.name, result.formula.text, value, context));
  }
}

function shapeOf(name: string, formula: string, value: FormulaValue, context: FormulaContext): Found {
  const { expression } = parsedFormula(formula, context);
  const all = everyExpression({ expression, text: mappedText(formula) }, context);
  const references = all.filter((each): each is Extract<Expression, { kind: 'reference' }> => each.kind === 'reference' && each.parts.length === 2);
  const outer = expression.kind === 'convert' ? expression.operand : expression;
  const family = outer.kind === 'call' ? families[outer.name] ?? 'result' : outer.kind === 'binary' && outer.operator === '-' ? 'compared' : 'result';
  const moments = all.flatMap((each): number[] => {
    if (each.kind !== 'instant' && !(each.kind === 'reference' && each.parts.length === 1)) return [];
    const found = evaluate(mappedText(formula.slice(each.range.start, each.range.end)), context).value;
    return found?.type === 'instant' || found?.type === 'event' ? [found.instant] : found?.type === 'window' ? [found.from, found.to] : [];
  });
  const reached = reachedBy(outer, formula, context);
  return {
    formula: name, isResult: true, ...(reached === null ? {} : { reached }), family, places: [...new Set(references.map((each) => each.parts[0]!))], quantity: references[0]?.parts[1] ?? null, moments, level: null,
    value: value.type === 'number' ? value.value : 0, unit: value.type === 'number' ? value.unit : null,
  };
}

/** When the value of a `min` or `max` was read. */
function reachedBy(outer: Expression, formula: string, context: FormulaContext): Instant | null {
  if (outer.kind !== 'call' || (outer.name !== 'min' && outer.name !== 'max') || outer.operands.length === 0) return null;
  const operands = formula.slice(outer.operands[0]!.range.start, outer.operands.at(-1)!.range.end);
  const { value } = evaluate(mappedText(`time-of-${outer.name}(${operands})`), context);
  return value?.type === 'instant' ? value.instant : null;
}
