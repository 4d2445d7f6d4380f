// The options of a `summary` block, typed with their places: which series, which rows, which functions.
import { problem, type Problem, type SourceRange } from '../problems/problem.ts';
import { nearestName } from '../problems/nearest.ts';
import { mappedText, sliceMapped, type MappedText } from '../note/mappedText.ts';
import type { Block } from '../note/syntax.ts';
import type { TextNode } from '../protocol/planTree.ts';
import type { FormulaContext } from '../formula/context.ts';
import { functions, type FunctionEntry } from '../formula/catalogue.ts';
import { evaluate } from '../formula/evaluate.ts';
import type { Window } from '../protocol/types.ts';
import type { Instant } from '../time/instant.ts';
import { blockRange, readOptions, replaceFix, unknownOption, unknownValue, type BlockOption } from './blockOptions.ts';
import { addSeries, everySeries, hasNumbers, hasWords, seriesNamed, type NamedSeries } from './shownSeries.ts';

/** A text of a formula and the place in the block it came from. `verbatim`: the block says the same letters there. */
export interface Part { readonly text: string; readonly range: SourceRange; readonly verbatim: boolean }
export interface NamedWindow extends Part, Window {
  readonly phase: string | null;
  /** The reading at its beginning counts to the time before in means and counts. */
  readonly opensAtLightsOff: boolean;
}
export interface NamedMoment extends Part { readonly instant: Instant }

export type SummaryRows =
  | { readonly kind: 'phases' | 'windows'; readonly windows: readonly NamedWindow[] }
  | { readonly kind: 'tanks'; readonly window: Part | null }
  | { readonly kind: 'times'; readonly moments: readonly NamedMoment[] }
  | { readonly kind: 'before-after'; readonly moment: NamedMoment; readonly before: NamedWindow; readonly after: NamedWindow };

export interface SummaryOptions {
  readonly of: readonly NamedSeries[];
  readonly rows: SummaryRows;
  readonly show: readonly Part[];
  readonly caption: string | null;
  /** Where `rows`, `of` and `show` stand, for mends that write them anew. */
  readonly places: { readonly rows: SourceRange; readonly of: SourceRange | null; readonly show: SourceRange | null };
}

export const summaryKeys = ['of', 'rows', 'show', 'from', 'to', 'caption'] as const;
export const rowKinds = ['phases', 'tanks', 'before-after'] as const;

/** True for functions that make one figure of a series and a stretch of time, with nothing else needed. */
export function sumsUp(entry: FunctionEntry): boolean {
  return ['number', 'instant', 'duration', 'reading', 'number or series'].includes(entry.gives) && entry.signatures.some(({ parameters, options }) => (
    /^(?:series|readings|readings or condition)$/.test(parameters[0]?.type ?? '') && parameters[1]?.type === 'window' && parameters.length === 2
    && options.every((option) => !option.required)));
}

/** Functions for stretches of time, in the order of the catalogue. */
export const windowFunctions: readonly string[] = functions.filter(sumsUp).map((entry) => entry.name);
/** Functions for single moments. */
export const momentFunctions: readonly string[] = ['at', 'interpolate'];

// By time each function stands once a series and once a difference: three would not fit a page.
const usual = { phases: ['min', 'mean'], windows: ['min', 'mean'], tanks: ['min', 'mean'], times: ['at'], 'before-after': ['mean'] } as const;

class SummaryReader {
  readonly problems: Problem[] = [];
  private readonly options: readonly BlockOption[];
  private readonly block: Block;
  private readonly context: FormulaContext;

  constructor(block: Block, options: readonly BlockOption[], context: FormulaContext) {
    this.block = block;
    this.options = options;
    this.context = context;
    for (const option of options) if (!(summaryKeys as readonly string[]).includes(option.key)) this.problems.push(unknownOption(option, block, summaryKeys));
  }

  private option(key: (typeof summaryKeys)[number]): BlockOption | null { return this.options.find((each) => each.key === key) ?? null; }
  private part(text: TextNode): Part { return { text: text.value.trim(), range: text.range, verbatim: text.value.trim() === text.mapped.text }; }

  read(): SummaryOptions | null {
    const of = this.of();
    const rows = this.rows();
    if (!rows || of.length === 0) return null;
    const show = this.show(rows.kind);
    if (show.length === 0) return null;
    const place = (key: 'rows' | 'of' | 'show'): SourceRange | null => this.option(key)?.range ?? null;
    return { of, rows, show, caption: this.option('caption')?.texts[0]?.value.trim() ?? null, places: { rows: place('rows') ?? blockRange(this.block), of: place('of'), show: place('show') } };
  }

  private of(): NamedSeries[] {
    const option = this.option('of');
    const whole = blockRange(this.block);
    const found: NamedSeries[] = [];
    for (const text of option?.texts ?? []) {
      const { series, problems } = seriesNamed(text, this.context);
      this.problems.push(...problems);
      addSeries(found, series);
    }
    if (!option) addSeries(found, everySeries(this.context.dataset, whole));
    else this.problems.push(...found.filter((each) => hasWords(each, this.context.dataset)).map((each) => problem('words-not-summed', each.range, { series: each.value })));
    const counted = found.filter((each) => hasNumbers(each, this.context.dataset));
    if (counted.length === 0 && this.problems.every((each) => each.severity !== 'error')) {
      this.problems.push(problem('summary-empty', option?.range ?? whole, { of: found.map((each) => each.value).join(', ') }));
    }
    return counted;
  }

  private show(kind: SummaryRows['kind']): Part[] {
    const option = this.option('show');
    const known = kind === 'times' ? momentFunctions : windowFunctions;
    if (!option || option.texts.length === 0) return usual[kind].map((text) => ({ text, range: option?.range ?? blockRange(this.block), verbatim: false }));
    return option.texts.flatMap((text): Part[] => {
      const name = text.value.trim();
      if (known.includes(name)) return [this.part(text)];
      const close = nearestName(name, known) ?? known[0]!;
      const exists = functions.some((entry) => entry.name === name);
      this.problems.push(problem('summary-function', text.range, { function: name, exists: exists ? 'yes' : 'no', rows: kind, known: known.join(', ') }, [replaceFix(text.range, close)]));
      return [];
    });
  }

  private rows(): SummaryRows | null {
    const option = this.option('rows');
    const first = option?.texts[0];
    if (!option || !first) return this.phases(option?.range ?? blockRange(this.block), option !== null);
    const word = first.value.trim();
    const alone = option.texts.length === 1 && option.value.kind === 'text';
    if (alone && word === 'phases') return this.phases(first.range, true);
    if (alone && word === 'tanks') return { kind: 'tanks', window: this.window() };
    if (alone && /^before-after\b/.test(word)) return this.beforeAfter(option, first);
    if (alone && nearestName(word, rowKinds) !== null) {
      this.problems.push(unknownValue(option, rowKinds));
      return null;
    }
    this.notHere(['from', 'to'], 'list');
    return this.list(option);
  }

  /** Options that mean nothing beside these rows. */
  private notHere(names: readonly (typeof summaryKeys)[number][], rows: string): void {
    for (const name of names) {
      const option = this.option(name);
      if (option) this.problems.push(problem('option-not-here', option.keyRange, { option: name, rows }));
    }
  }

  /** Every phase of the plan; all readings in one row where it has none and nobody asked for phases. */
  private phases(range: SourceRange, asked: boolean): SummaryRows | null {
    const phases = this.context.protocol?.phases ?? [];
    if (phases.length === 0) {
      if (!asked) return { kind: 'tanks', window: this.window() };
      this.problems.push(problem('summary-no-phases', range, {}, [replaceFix(range, 'tanks')]));
      return null;
    }
    this.notHere(['from', 'to'], 'phases');
    return { kind: 'phases', windows: phases.map((phase) => this.phase(phase.id, range)) };
  }

  /** `from..to` as a formula; null where neither is given. */
  private window(): Part | null {
    const [from, to] = [this.moment('from'), this.moment('to')];
    if (!from && !to) return null;
    const range = { start: Math.min((from ?? to)!.range.start, (to ?? from)!.range.start), end: Math.max((from ?? to)!.range.end, (to ?? from)!.range.end) };
    return { text: `${from?.text ?? 'start'}..${to?.text ?? 'end'}`, range, verbatim: false };
  }

  private moment(key: 'from' | 'to'): NamedMoment | null {
    const option = this.option(key);
    if (!option) return null;
    const [text] = option.texts;
    const value = text ? this.value(text.mapped) : null;
    if (text && (value?.type === 'instant' || value?.type === 'event')) return { ...this.part(text), instant: value.instant };
    this.problems.push(problem('figure-time-unreadable', option.range, { option: key, text: text?.value ?? '' }));
    return null;
  }

  private phase(id: string, range: SourceRange): NamedWindow {
    const { window } = this.context.protocol!.phases.find((each) => each.id === id)!;
    const value = this.value(mappedText(id));
    return { text: id, range, verbatim: false, ...window, phase: id, opensAtLightsOff: value?.type === 'window' && value.opensAtLightsOff === true };
  }

  private value(formula: MappedText) { return evaluate(formula, this.context).value; }

  private beforeAfter(option: BlockOption, text: TextNode): SummaryRows | null {
    const start = /^before-after\s*/.exec(text.value)![0].length;
    const formula = sliceMapped(text.mapped, start, text.value.length);
    const name = formula.text.trim();
    const value = name === '' ? null : this.value(formula);
    if (value?.type !== 'instant' && value?.type !== 'event') {
      const reasons = name === '' ? [] : evaluate(formula, this.context).problems;
      this.problems.push(...(reasons.length > 0 ? reasons : [problem('summary-moment', option.range, { text: name }, [replaceFix(text.range, 'before-after light-off')])]));
      return null;
    }
    const { instant } = value;
    const moment: NamedMoment = { text: name, range: text.range, verbatim: false, instant };
    const [from, to] = [this.moment('from'), this.moment('to')];
    const phases = this.context.protocol?.phases ?? [];
    const before = from ? null : phases.find((phase) => phase.window.to === instant);
    const after = to ? null : phases.find((phase) => phase.window.from === instant);
    const named = (formula: string): NamedWindow | null => {
      const part: Part = { text: formula, range: text.range, verbatim: false };
      const found = evaluate({ text: formula, pieces: [{ offset: 0, document: text.range.start, length: text.range.end - text.range.start }] }, this.context);
      if (found.value?.type === 'window') return { ...part, from: found.value.from, to: found.value.to, phase: null, opensAtLightsOff: false };
      this.problems.push(...found.problems);
      return null;
    };
    const earlier = before ? this.phase(before.id, text.range) : named(`${from?.text ?? 'start'}..${name}`);
    const later = after ? this.phase(after.id, text.range) : named(`${name}..${to?.text ?? 'end'}`);
    return earlier && later ? { kind: 'before-after', moment, before: earlier, after: later } : null;
  }

  private list(option: BlockOption): SummaryRows | null {
    const windows: NamedWindow[] = [];
    const moments: NamedMoment[] = [];
    for (const text of option.texts) {
      const { value, problems } = evaluate(text.mapped, this.context);
      if (value?.type === 'window') windows.push({ ...this.part(text), from: value.from, to: value.to, phase: value.phase ?? null, opensAtLightsOff: value.opensAtLightsOff ?? false });
      else if (value?.type === 'instant' || value?.type === 'event') moments.push({ ...this.part(text), instant: value.instant });
      else this.problems.push(...(value || problems.some((each) => each.code === 'formula-not-a-value') ? [problem('summary-row', text.range, { text: text.value.trim() })] : problems));
    }
    if (windows.length > 0 && moments.length > 0) {
      this.problems.push(problem('summary-rows-mixed', option.range, { times: moments.map((each) => each.text).join(', '), stretches: windows.map((each) => each.text).join(', ') },
        [replaceFix(option.range, `[${moments.map((each) => each.text).join(', ')}]`)]));
      return null;
    }
    if (moments.length > 0) return { kind: 'times', moments };
    return windows.length > 0 ? { kind: 'windows', windows } : null;
  }
}

/** Reads the YAML of a `summary` block; null with problems where no table can be made of it. */
export function readSummaryBlock(block: Block, context: FormulaContext): { readonly options: SummaryOptions | null; readonly problems: readonly Problem[] } {
  const read = readOptions(block);
  if (read.problems.some((each) => each.code === 'block-unreadable')) return { options: null, problems: read.problems };
  const reader = new SummaryReader(block, read.options, context);
  const options = reader.read();
  return { options, problems: [...read.problems, ...reader.problems] };
}
