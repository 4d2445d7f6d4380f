// What a figure or a summary names: columns of readings by name, quantity, tank or role, and formulas that give a series.
import { problem, type Problem, type SourceRange } from '../problems/problem.ts';
import { nearestName } from '../problems/nearest.ts';
import type { Protocol } from '../protocol/types.ts';
import type { TextNode } from '../protocol/planTree.ts';
import { flag, type Dataset } from '../dataset/types.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import { printFormula } from '../formula/print.ts';
import { parsedFormula } from '../formula/results.ts';
import { columnValue } from '../formula/seriesValues.ts';
import type { Expression, SeriesValue } from '../formula/types.ts';
import { valueKind } from '../formula/valueKinds.ts';
import { mappedText, sliceMapped } from '../note/mappedText.ts';
import { replaceFix } from './blockOptions.ts';

/** A series to show. */
export interface ShownSeries {
  /** `mat.DO`, `room.P`, `mat.DO@titration`; for a computed series its formula, or the name of the result that holds it. */
  readonly value: string;
  /** null: the readings of a column. */
  readonly computed: ComputedSeries | null;
}

export interface ComputedSeries {
  readonly series: SeriesValue;
  /** Tanks (and `room`) whose readings went in, in the plan's order. */
  readonly places: readonly string[];
  /** The formula without its places, by which alike series are told: `saturation(DO)`, `DO - DO`. */
  readonly form: string;
  /** The series that a plain difference takes away, and what it takes it from. */
  readonly difference: { readonly from: string; readonly taken: string } | null;
  /** The named result that the series is, where it was asked for by name. */
  readonly name: string | null;
}

export interface NamedSeries extends ShownSeries { readonly range: SourceRange; /** The text in the block is the series' own name or formula. */ readonly verbatim: boolean }

const plainName = /^[\p{L}][\p{L}\p{N}_-]*(?:\.[\p{L}\p{N}_-]+)?(?:@[\p{L}\p{N}_-]+)?$/u;

/** Ids of tanks that a name before a dot stands for: a tank, a role, a group; `room` for itself. */
export function placesNamed(name: string, protocol: Protocol): string[] {
  return protocol.tanks.filter((tank) => tank.id === name || tank.role?.value === name || tank.group?.value === name).map((tank) => tank.id)
    .concat(name === 'room' ? ['room'] : []);
}

/** Series ids that a name stands for: a series, a quantity (every place that has it), a tank, a role. */
function expand(name: string, protocol: Protocol, dataset: Dataset): string[] {
  if (dataset.series.has(name)) return [name];
  const dot = name.indexOf('.');
  const [place, quantity] = dot < 0 ? [null, name] : [name.slice(0, dot), name.slice(dot + 1)];
  const places = placesNamed(place ?? name, protocol);
  const found = [...dataset.series.values()].filter((series) => (place === null
    ? series.quantity === quantity || places.includes(series.place)
    : places.includes(series.place) && (series.quantity === quantity || series.id.endsWith(`.${quantity}`)))).map((series) => series.id);
  const order = (id: string): number => {
    const tank = protocol.tanks.findIndex((each) => id.startsWith(`${each.id}.`));
    return tank < 0 ? protocol.tanks.length : tank;
  };
  return found.sort((a, b) => order(a) - order(b));
}

/** The series that one text of a block names; none with a problem where it names none. */
export function seriesNamed(text: TextNode, context: FormulaContext): { readonly series: readonly NamedSeries[]; readonly problems: readonly Problem[] } {
  const { protocol, dataset } = context;
  const value = text.value.trim();
  const common = { range: text.range };
  if (!protocol) return { series: [], problems: [] };
  if (!plainName.test(value) || context.resultsByName.has(value)) return computedSeries(text, context);
  const ids = expand(value, protocol, dataset);
  if (ids.length > 0) return { series: ids.map((id) => ({ value: id, computed: null, verbatim: id === text.value, ...common })), problems: [] };
  const known = [...dataset.series.keys()];
  const close = nearestName(value, known);
  return { series: [], problems: [problem('series-unknown', text.range, { name: value, nearest: close ?? '', known: known.slice(0, 12).join(', ') }, close ? [replaceFix(text.range, close)] : [])] };
}

function computedSeries(text: TextNode, context: FormulaContext): { readonly series: readonly NamedSeries[]; readonly problems: readonly Problem[] } {
  const formula = text.value.trim();
  const start = text.value.indexOf(formula);
  const { value, problems } = evaluate(sliceMapped(text.mapped, start, start + formula.length), context);
  if (!value) return { series: [], problems };
  if (value.type !== 'series' || (value.content ?? 'number') !== 'number') {
    return { series: [], problems: [...problems, problem('series-needed', text.range, { formula, found: valueKind(value) }, seriesInside(formula, context).slice(0, 1).map((each) => replaceFix(text.range, each)))] };
  }
  const name = context.resultsByName.has(formula) ? formula : null;
  const { expression } = parsedFormula(name === null ? formula : context.resultsByName.get(formula)!.formula.text, context);
  const computed: ComputedSeries = {
    series: value, places: placesIn(expression, context), form: printFormula(withoutPlaces(expression, context)), difference: differenceIn(expression), name,
  };
  return { series: [{ value: formula, computed, range: text.range, verbatim: text.value === formula }], problems };
}

/** Operands of a call that are series themselves: what was probably meant. */
function seriesInside(formula: string, context: FormulaContext): string[] {
  const { expression } = parsedFormula(formula, context);
  if (expression.kind !== 'call') return [];
  return expression.operands.map((operand) => printFormula(operand)).filter((operand) => evaluate(mappedText(operand), context).value?.type === 'series');
}

/** Visits an expression and everything in it. */
function visit(expression: Expression, act: (each: Expression) => void): void {
  act(expression);
  switch (expression.kind) {
    case 'call': for (const each of [...expression.operands, ...expression.options.map((option) => option.value)]) visit(each, act); break;
    case 'binary': visit(expression.left, act); visit(expression.right, act); break;
    case 'unary': case 'convert': visit(expression.operand, act); break;
    default:
  }
}

function placesIn(expression: Expression, context: FormulaContext, seen: readonly string[] = []): string[] {
  const { protocol } = context;
  const found = new Set<string>();
  visit(expression, (each) => {
    if (each.kind !== 'reference') return;
    const [first, second] = each.parts as [string, string | undefined];
    const result = second === undefined && !seen.includes(first) ? context.resultsByName.get(first) : undefined;
    if (result) for (const place of placesIn(parsedFormula(result.formula.text, context).expression, context, [...seen, first])) found.add(place);
    else for (const place of placesNamed(first, protocol!)) found.add(place);
  });
  return [...protocol!.tanks.map((tank) => tank.id), 'room'].filter((place) => found.has(place));
}

/** The same formula with its places taken out: `mat.DO` becomes `DO`, a bare tank becomes `tank`. */
function withoutPlaces(expression: Expression, context: FormulaContext): Expression {
  const inner = (each: Expression): Expression => withoutPlaces(each, context);
  switch (expression.kind) {
    case 'reference': {
      const [first, second] = expression.parts as [string, string | undefined];
      const parts = second !== undefined ? [second] : placesNamed(first, context.protocol!).length > 0 ? ['tank'] : [first];
      return { ...expression, parts };
    }
    case 'call': return { ...expression, operands: expression.operands.map(inner), options: expression.options.map((option) => ({ ...option, value: inner(option.value) })) };
    case 'binary': return { ...expression, left: inner(expression.left), right: inner(expression.right) };
    case 'unary': case 'convert': return { ...expression, operand: inner(expression.operand) };
    default: return expression;
  }
}

/** `a - b` or `difference(a, b)` of two columns of one quantity. */
function differenceIn(expression: Expression): ComputedSeries['difference'] {
  const sides = expression.kind === 'binary' && expression.operator === '-' ? [expression.left, expression.right]
    : expression.kind === 'call' && expression.name === 'difference' ? expression.operands : [];
  const [from, taken] = sides;
  if (from?.kind !== 'reference' || taken?.kind !== 'reference' || from.parts.length !== 2 || from.parts[1] !== taken.parts[1]) return null;
  return { from: printFormula(from), taken: printFormula(taken) };
}

/** The points of a series with what is known of their uncertainty; null where the note has no such column. */
export function seriesValue(shown: ShownSeries, context: FormulaContext): SeriesValue | null {
  if (shown.computed) return shown.computed.series;
  const column = context.dataset.series.get(shown.value);
  return column ? columnValue(context, column, false) : null;
}

/** Adds series to a list, each once. */
export function addSeries(list: NamedSeries[], more: readonly NamedSeries[]): void {
  for (const each of more) if (!list.some((other) => other.value === each.value)) list.push(each);
}

/** True when the series has a number to draw, in a stretch of time where one is given. */
export function hasNumbers(shown: ShownSeries, dataset: Dataset, from: number | null = null, to: number | null = null): boolean {
  const inside = (time: number): boolean => (from === null || time >= from) && (to === null || time <= to);
  if (shown.computed) return shown.computed.series.points.some((point) => inside(point.time));
  const series = dataset.series.get(shown.value);
  return series !== undefined && series.times.some((time, index) => (series.flags[index]! & (flag.missing | flag.word)) === 0 && inside(time));
}

/** True when words of a scale were recorded in the column. */
export function hasWords(shown: ShownSeries, dataset: Dataset): boolean {
  return dataset.series.get(shown.value)?.flags.some((bits) => (bits & flag.word) !== 0) ?? false;
}

/** Every column of the note. */
export function everySeries(dataset: Dataset, range: SourceRange): NamedSeries[] {
  return [...dataset.series.keys()].map((value) => ({ value, computed: null, range, verbatim: false }));
}
