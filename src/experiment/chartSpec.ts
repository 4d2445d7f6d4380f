// `spec:` of a figure: Vega-Lite within a closed list of keys and values over the data set `readings`. What is not on the
// list is a problem at its place; nothing of the author's text becomes an expression, an address, a format or a setting.
import type { Problem } from '../problems/problem.ts';
import type { MapNode, TreeNode } from '../protocol/planTree.ts';
import type { BlockOption } from './blockOptions.ts';
import { SpecChecker, colour, either, keys, listOf, nothing, numberIn, oneOf, text, truth, type Rule } from './chartSpecRules.ts';

export interface ChartSpec {
  /** The author's keys with their values as JSON: `mark` and `encoding`, or `layer`; `transform`. Checked through and through. */
  readonly body: Readonly<Record<string, unknown>>;
  readonly title: string | null;
  /** CSS pixels; null: the width of the page. */
  readonly width: number | null;
  readonly height: number | null;
}

/** Fields of the data set, with the type by which they are drawn where the author says nothing. */
export const readingFields = {
  time: 'temporal', hours: 'quantitative', series: 'nominal', tank: 'nominal', label: 'nominal', quantity: 'nominal', value: 'quantitative',
  unit: 'nominal', low: 'quantitative', high: 'quantitative', phase: 'nominal', doubtful: 'nominal',
} as const satisfies Readonly<Record<string, 'temporal' | 'quantitative' | 'nominal'>>;
export type ReadingField = keyof typeof readingFields;

const marks = ['line', 'point', 'circle', 'square', 'tick', 'bar', 'area', 'rule', 'rect', 'text', 'trail', 'boxplot', 'errorbar', 'errorband'] as const;
const aggregates = ['count', 'mean', 'median', 'min', 'max', 'sum', 'stdev', 'q1', 'q3', 'distinct'] as const;
const timeUnits = ['hours', 'minutes', 'hoursminutes', 'date', 'day', 'month', 'monthdate', 'yearmonthdate', 'yearmonthdatehours'] as const;
const shapes = ['circle', 'square', 'cross', 'diamond', 'triangle-up', 'triangle-down', 'triangle-right', 'triangle-left', 'stroke'] as const;
const words = text(120);

const bin = either(truth, keys({ maxbins: numberIn(2, 200), step: numberIn(1e-9, 1e9) }));
const field: Rule = (node, checker) => checker.field(node);

const axis = either(nothing, keys({
  title: either(nothing, words), orient: oneOf(['left', 'right', 'top', 'bottom']), grid: truth, ticks: truth, labels: truth, domain: truth,
  labelAngle: numberIn(-90, 90), tickCount: numberIn(1, 40), values: listOf(numberIn(-1e15, 1e15), 60),
}));
const legend = either(nothing, keys({ title: either(nothing, words), orient: oneOf(['left', 'right', 'top', 'bottom', 'none']), columns: numberIn(1, 12) }));
const scale = keys({
  type: oneOf(['linear', 'log', 'sqrt', 'symlog', 'point', 'band', 'ordinal']), zero: truth, nice: truth, reverse: truth,
  domain: listOf(either(numberIn(-1e15, 1e15), words), 40), range: listOf(either(numberIn(-2000, 2000), colour), 40), padding: numberIn(0, 100),
});
/** A channel of the encoding; `value` says what a fixed value of it may be. */
const channelRules = (value: Rule): Readonly<Record<string, Rule>> => ({
  field, type: oneOf(['quantitative', 'temporal', 'nominal', 'ordinal']), aggregate: oneOf(aggregates), bin, timeUnit: oneOf(timeUnits),
  title: either(nothing, words), axis, legend, scale, sort: either(nothing, oneOf(['ascending', 'descending']), listOf(words, 40)),
  stack: either(nothing, truth, oneOf(['zero', 'normalize', 'center'])), value, datum: either(numberIn(-1e15, 1e15), words),
});
const channelOf = (value: Rule): Rule => keys(channelRules(value));
const number = channelOf(numberIn(-1e6, 1e6));
const coloured = channelOf(colour);
const worded = channelOf(words);
const several = either(worded, listOf(worded, 12));
const encodingRules = {
  x: number, y: number, x2: number, y2: number, xOffset: number, yOffset: number, opacity: number, size: number, strokeWidth: number,
  color: coloured, fill: coloured, stroke: coloured, shape: channelOf(oneOf(shapes)), strokeDash: channelOf(listOf(numberIn(0, 100), 8)),
  text: worded, detail: several, order: several, tooltip: several,
} as const;
const encoding = keys(encodingRules);
const mark = either(oneOf(marks), keys({
  type: oneOf(marks), color: colour, fill: colour, stroke: colour, filled: truth, opacity: numberIn(0, 1), fillOpacity: numberIn(0, 1), strokeOpacity: numberIn(0, 1),
  size: numberIn(0, 5000), strokeWidth: numberIn(0, 40), strokeDash: listOf(numberIn(0, 100), 8), point: truth, line: truth, borders: truth, ticks: truth,
  interpolate: oneOf(['linear', 'linear-closed', 'monotone', 'step', 'step-before', 'step-after']), shape: oneOf(shapes), extent: either(oneOf(['min-max', 'ci', 'stderr', 'stdev', 'iqr']), numberIn(0, 10)),
  align: oneOf(['left', 'center', 'right']), baseline: oneOf(['top', 'middle', 'bottom']), dx: numberIn(-200, 200), dy: numberIn(-200, 200), angle: numberIn(-180, 180),
  fontSize: numberIn(6, 40), fontWeight: oneOf(['normal', 'bold']), cornerRadius: numberIn(0, 40), clip: truth, orient: oneOf(['horizontal', 'vertical']), text: words,
}));
const predicate = keys({
  field, equal: either(truth, numberIn(-1e15, 1e15), words), lt: numberIn(-1e15, 1e15), lte: numberIn(-1e15, 1e15), gt: numberIn(-1e15, 1e15), gte: numberIn(-1e15, 1e15),
  range: listOf(numberIn(-1e15, 1e15), 2), oneOf: listOf(either(numberIn(-1e15, 1e15), words), 60), valid: truth,
});
const made: Rule = (node, checker) => checker.madeField(node);
const transformRules = {
  filter: predicate, aggregate: listOf(keys({ op: oneOf(aggregates), field, as: made }), 20), groupby: listOf(field, 12),
  timeUnit: oneOf(timeUnits), bin, field, as: made,
} as const;
const transform = listOf(keys(transformRules), 20);
const layerRules = { mark, encoding, transform } as const;
const layer = listOf(keys(layerRules), 12);
const data = keys({ name: oneOf(['readings']) });
const topRules = { mark, encoding, layer, transform, title: words, width: numberIn(120, 1200), height: numberIn(60, 1000) } as const;
// `$schema` and `data: {name: readings}` may stand in a specification from elsewhere and change nothing.
const specification = keys({ ...topRules, $schema: text(200), data });

/** What may be written where, for suggestions: keys of the specification, of its channels, and words for their values. */
export const specWords = {
  top: Object.keys(topRules), layer: Object.keys(layerRules), channels: Object.keys(encodingRules), channel: Object.keys(channelRules(colour)), transform: Object.keys(transformRules),
  values: { mark: marks, type: ['quantitative', 'temporal', 'nominal', 'ordinal'], aggregate: aggregates, op: aggregates, timeUnit: timeUnits, field: Object.keys(readingFields), groupby: Object.keys(readingFields), shape: shapes },
} as const;

/** Reads the specification of a figure; null with problems where any part of it is not on the list. */
export function readChartSpec(option: BlockOption): { readonly spec: ChartSpec | null; readonly problems: readonly Problem[] } {
  const checker = new SpecChecker(Object.keys(readingFields));
  if (option.value.kind !== 'map') {
    checker.wants(option.range, 'spec', option.texts[0]?.value ?? '', { wants: 'keys', known: ['mark', 'encoding', 'layer'] });
    return { spec: null, problems: checker.problems };
  }
  const found = specification(transformsFirst(option.value), checker) as Record<string, unknown> | undefined;
  if (found && found['mark'] === undefined && found['layer'] === undefined && checker.problems.length === 0) {
    checker.wants(option.keyRange, 'spec', '', { wants: 'mark', known: ['mark', 'layer'] });
  }
  if (!found || checker.problems.length > 0) return { spec: null, problems: checker.problems };
  const { $schema: _, data: __, title, width, height, ...body } = found;
  return { spec: { body, title: (title as string | undefined) ?? null, width: (width as number | undefined) ?? null, height: (height as number | undefined) ?? null }, problems: [] };
}

/** Transforms are read first: they make fields that the encoding may name. */
function transformsFirst(node: MapNode): MapNode {
  const rank = (key: string): number => (key === 'transform' ? 0 : 1);
  const order = (each: TreeNode): TreeNode => (each.kind === 'map' ? transformsFirst(each) : each.kind === 'list' ? { ...each, items: each.items.map(order) } : each);
  return { ...node, entries: [...node.entries].sort((a, b) => rank(a.key) - rank(b.key)).map((entry) => ({ ...entry, value: order(entry.value) })) };
}
