// The options of a `figure` block, typed with their places; what it asks for and cannot have. Drawing is src/charts.
import { fix, problem, type Fix, type Problem, type SourceRange } from '../problems/problem.ts';
import type { Block } from '../note/syntax.ts';
import type { FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import type { Instant } from '../time/instant.ts';
import { blockRange, readOptions, readYesNo, unknownOption, unknownValue, type BlockOption } from './blockOptions.ts';
import { readChartSpec, type ChartSpec } from './chartSpec.ts';
import { addSeries, everySeries, hasNumbers, hasWords, seriesNamed, seriesValue, type NamedSeries, type ShownSeries } from './shownSeries.ts';

export interface FigureOptions {
  readonly show: readonly ShownSeries[];
  /** null: from the first reading shown. */
  readonly from: Instant | null;
  /** null: to the last reading shown. */
  readonly to: Instant | null;
  readonly title: string | null;
  /** Stands before the generated caption. */
  readonly caption: string | null;
  /** Stands before the generated text alternative. */
  readonly alternative: string | null;
  /** Small panels with one shared scale a quantity: one a tank, or one a quantity. null: one panel a unit. */
  readonly facets: 'tanks' | 'quantities' | null;
  /** Draws the 95 % interval that the instruments' accuracy leaves, as a band. */
  readonly uncertainty: boolean;
  /** The author's own specification over the data set `readings`; null: the chart is ours. */
  readonly spec: ChartSpec | null;
  /** Layout width in CSS pixels; default 680. Below 480 the chart is laid out for a phone. */
  readonly width?: number;
}

/** What a figure is where its author asks for nothing. */
export const plainFigure: Omit<FigureOptions, 'show'> = {
  from: null, to: null, title: null, caption: null, alternative: null, facets: null, uncertainty: false, spec: null,
};

export const figureKeys = ['show', 'from', 'to', 'facets', 'uncertainty', 'title', 'caption', 'alt', 'spec'] as const;
export const facetKinds = ['tanks', 'quantities'] as const;
const axisKeys = ['second axis', 'second-axis', 'secondary axis', 'right axis', 'right-axis', 'right', 'axis', 'axes', 'y2'];

/** The moment that an option names; null with a problem where it names none. */
export function readMoment(option: BlockOption, context: FormulaContext, problems: Problem[]): Instant | null {
  const [text] = option.texts;
  const value = text ? evaluate(text.mapped, context).value : null;
  if (value?.type === 'instant' || value?.type === 'event') return value.instant;
  problems.push(problem('figure-time-unreadable', option.range, { option: option.key, text: text?.value ?? '' }));
  return null;
}

/** Takes the axis away, puts its series under `show` and gives each quantity a panel. */
function facetsInstead(option: BlockOption, options: readonly BlockOption[]): Fix {
  const entry = { start: option.keyRange.start, end: option.range.end };
  const edits = [{ range: entry, newText: options.some((each) => each.key === 'facets') ? '' : 'facets: quantities' }];
  const show = options.find((each) => each.key === 'show');
  const missing = option.texts.map((each) => each.value).filter((name) => !show?.texts.some((each) => each.value === name));
  const last = show?.texts.at(-1);
  if (missing.length > 0 && last && show?.value.kind === 'list') edits.push({ range: { start: last.range.end, end: last.range.end }, newText: `, ${missing.join(', ')}` });
  return fix('facets-instead', {}, edits, { preferred: true });
}

class FigureReader {
  readonly problems: Problem[] = [];
  readonly named: NamedSeries[] = [];
  options: FigureOptions = { ...plainFigure, show: [] };
  /** True once a key asked for something that cannot be drawn. */
  refused = false;
  private readonly block: Block;
  private readonly context: FormulaContext;

  constructor(block: Block, context: FormulaContext) {
    this.block = block;
    this.context = context;
  }

  read(option: BlockOption, all: readonly BlockOption[]): void {
    const first = option.texts[0]?.value.trim() ?? null;
    switch (option.key) {
      case 'show': this.show(option); break;
      case 'from': case 'to': this.set({ [option.key]: readMoment(option, this.context, this.problems) }); break;
      case 'title': case 'caption': this.set({ [option.key]: first }); break;
      case 'alt': this.set({ alternative: first }); break;
      case 'uncertainty': this.set({ uncertainty: readYesNo(option, this.problems) ?? false }); break;
      case 'facets': this.facets(option); break;
      case 'spec': this.spec(option); break;
      default:
        this.problems.push(axisKeys.includes(option.key) ? problem('second-axis', option.keyRange, { option: option.key }, [facetsInstead(option, all)])
          : unknownOption(option, this.block, figureKeys));
    }
  }

  private set(part: Partial<FigureOptions>): void { this.options = { ...this.options, ...part }; }

  private show(option: BlockOption): void {
    for (const text of option.texts) {
      const { series, problems } = seriesNamed(text, this.context);
      this.problems.push(...problems);
      addSeries(this.named, series);
    }
  }

  private facets(option: BlockOption): void {
    const kind = facetKinds.find((each) => each === option.texts[0]?.value);
    if (kind) this.set({ facets: kind });
    else this.problems.push(unknownValue(option, facetKinds));
  }

  private spec(option: BlockOption): void {
    const { spec, problems } = readChartSpec(option);
    this.problems.push(...problems);
    this.set({ spec });
    this.refused = spec === null;
  }
}

/** More rows than this are not handed to a specification: it would draw for seconds. */
export const mostSpecRows = 4000;

/** What the readings shown cannot give: a band where no accuracy is stated, a drawing of too many rows. */
function asksTooMuch(written: readonly BlockOption[], options: FigureOptions, drawn: readonly NamedSeries[], context: FormulaContext): Problem[] {
  const at = (key: string): SourceRange => written.find((each) => each.key === key)!.keyRange;
  const values = drawn.map((each) => ({ each, points: seriesValue(each, context)?.points ?? [] }));
  const problems: Problem[] = [];
  const unknown = values.filter(({ points }) => points.every((point) => point.contributions === null)).map(({ each }) => each.value);
  if (options.uncertainty && unknown.length > 0) problems.push(problem('uncertainty-unknown', at('uncertainty'), { series: unknown.join(', ') }));
  const inside = (time: number): boolean => (options.from === null || time >= options.from) && (options.to === null || time <= options.to);
  const rows = values.reduce((sum, { points }) => sum + points.filter((point) => inside(point.time)).length, 0);
  if (options.spec && rows > mostSpecRows) problems.push(problem('spec-too-many', at('spec'), { rows: String(rows), most: String(mostSpecRows) }));
  return problems;
}

/** Reads the YAML of a `figure` block. `options` is null when nothing can be drawn from it. */
export function readFigureBlock(block: Block, context: FormulaContext): { options: FigureOptions | null; problems: Problem[] } {
  const { dataset } = context;
  const read = readOptions(block);
  const whole = blockRange(block);
  if (read.problems.some((each) => each.code === 'block-unreadable')) return { options: null, problems: [...read.problems] };
  const reader = new FigureReader(block, context);
  for (const option of read.options) reader.read(option, read.options);
  const { options, named } = reader;
  const problems = [...read.problems, ...reader.problems];
  if (reader.refused) return { options: null, problems };
  const asked = read.options.some((each) => each.key === 'show');
  if (asked) problems.push(...named.filter((each) => hasWords(each, dataset)).map((each) => problem('words-not-drawn', each.range, { series: each.value })));
  else addSeries(named, everySeries(dataset, whole));
  const drawn = named.filter((each) => hasNumbers(each, dataset));
  if (drawn.some((each) => hasNumbers(each, dataset, options.from, options.to))) {
    problems.push(...asksTooMuch(read.options, options, drawn, context));
    return { options: { ...options, show: drawn.map(({ value, computed }) => ({ value, computed })) }, problems };
  }
  if (problems.every((each) => each.severity !== 'error')) problems.push(problem('figure-empty', whole, { shown: named.map((each) => each.value).join(', ') }));
  return { options: null, problems };
}
