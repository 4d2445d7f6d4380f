// The options of `figure` and `limits` blocks, read as text and typed with places; what they ask for and cannot have.
// Drawing is src/charts; the options are read here so that readNote knows their problems.
import { LineCounter, isMap, isScalar, isSeq, parseDocument, type Node } from 'yaml';
import { fix, problem, type Problem, type SourceRange } from '../problems/problem.ts';
import { nearestName } from '../problems/nearest.ts';
import { sliceMapped, toDocumentRange, type MappedText } from '../note/mappedText.ts';
import type { Block, NoteSyntax } from '../note/syntax.ts';
import type { Placed, Protocol } from '../protocol/types.ts';
import { flag, type Dataset } from '../dataset/types.ts';
import { createContext, type FormulaContext } from '../formula/context.ts';
import { evaluate } from '../formula/evaluate.ts';
import type { Instant } from '../time/instant.ts';

export interface FigureOptions {
  /** Ids of series: `mat.DO`, `room.P`, `mat.DO@titration`; a bare quantity (`DO`) or tank (`mat`) was expanded. */
  readonly show: readonly Placed<string>[];
  /** null: from the first reading shown. */
  readonly from: Instant | null;
  /** null: to the last reading shown. */
  readonly to: Instant | null;
  readonly title: string | null;
  /** Stands before the generated caption. */
  readonly caption: string | null;
  /** Where problems of the whole figure are shown. */
  readonly range: SourceRange;
  /** Layout width in CSS pixels; default 680. Below 480 the chart is laid out for a phone. */
  readonly width?: number;
}

const figureKeys = ['show', 'from', 'to', 'title', 'caption'];
const limitsKeys = ['for'];
const axisKeys = ['second axis', 'second-axis', 'right axis', 'axis', 'y2', 'axes'];

/** One option of a block: its key, and its text or list of texts. */
interface Option { readonly key: string; readonly keyRange: SourceRange; readonly texts: readonly Placed<string>[]; readonly range: SourceRange }

/** Where problems of a whole block stand: its opening fence. */
const blockRange = (block: Block): SourceRange => ({ start: block.range.start, end: Math.max(block.range.start + 1, block.infoRange.end) });

function documentRange(block: Block, range: readonly [number, number]): SourceRange {
  return toDocumentRange(block.content, { start: range[0], end: range[1] });
}

/** The block's YAML as options with places; an empty block has none. */
function readOptions(block: Block): { options: Option[]; problems: Problem[] } {
  const lineCounter = new LineCounter();
  const document = parseDocument(block.content.text, { schema: 'failsafe', lineCounter, prettyErrors: false, uniqueKeys: true });
  const unreadable = (offset: number, reason: string): { options: Option[]; problems: Problem[] } => {
    const length = block.content.text.length;
    const start = Math.max(0, Math.min(offset, length - 1));
    return { options: [], problems: [problem('block-unreadable', documentRange(block, [start, Math.min(length, start + 1)]),
      { block: block.word, line: String(lineCounter.linePos(start).line), reason })] };
  };
  const error = document.errors[0];
  if (error) return unreadable(error.pos[0], error.message.replace(/\s+/g, ' ').replace(/[.:]+$/, '').replace(/^./, (letter) => letter.toLowerCase()));
  const root = document.contents as Node | null;
  if (root === null || (isScalar(root) && String(root.value ?? '').trim() === '')) return { options: [], problems: [] };
  if (!isMap(root)) return unreadable(root.range?.[0] ?? 0, 'it should hold lines of the form “option: value”');
  const options: Option[] = [];
  for (const pair of root.items) {
    const keyNode = pair.key as Node;
    const valueNode = pair.value as Node | null;
    const keyRange = documentRange(block, [keyNode.range?.[0] ?? 0, keyNode.range?.[1] ?? 0]);
    const texts: Placed<string>[] = [];
    const take = (node: unknown): void => {
      if (isScalar(node)) {
        const value = String(node.value ?? '').trim();
        if (value !== '') texts.push({ value, range: documentRange(block, [node.range?.[0] ?? 0, node.range?.[1] ?? 0]) });
      } else if (isSeq(node)) node.items.forEach(take);
    };
    take(valueNode);
    options.push({ key: String((keyNode as { value?: unknown }).value ?? ''), keyRange, texts,
      range: valueNode?.range ? documentRange(block, [valueNode.range[0], valueNode.range[1]]) : keyRange });
  }
  return { options, problems: [] };
}

function unknownOption(option: Option, block: Block, known: readonly string[]): Problem {
  const close = nearestName(option.key, known);
  return problem('option-unknown', option.keyRange, { option: option.key, block: block.word, nearest: close ?? '', known: known.join(', ') },
    close ? [fix('replace-with', { text: close }, [{ range: option.keyRange, newText: close }], { preferred: true })] : []);
}

/** Series ids that a name under `show` stands for: a series, a quantity (every place that has it), a tank, a role. */
function expand(name: string, protocol: Protocol, dataset: Dataset): string[] {
  if (dataset.series.has(name)) return [name];
  const found: string[] = [];
  const [place, quantity] = name.includes('.') ? [name.slice(0, name.indexOf('.')), name.slice(name.indexOf('.') + 1)] : [null, name];
  const places = (wanted: string): string[] => protocol.tanks
    .filter((tank) => tank.id === wanted || tank.role?.value === wanted || tank.group?.value === wanted).map((tank) => tank.id)
    .concat(wanted === 'room' ? ['room'] : []);
  for (const series of dataset.series.values()) {
    if (place !== null) {
      if (places(place).includes(series.place) && (series.quantity === quantity || series.id.endsWith(`.${quantity}`))) found.push(series.id);
    } else if (series.quantity === quantity || places(name).includes(series.place)) found.push(series.id);
  }
  const order = (id: string): number => {
    const tank = protocol.tanks.findIndex((each) => id.startsWith(`${each.id}.`));
    return tank < 0 ? protocol.tanks.length : tank;
  };
  return found.sort((a, b) => order(a) - order(b));
}

function readInstant(text: MappedText, context: FormulaContext): Instant | null {
  const value = evaluate(text, context).value;
  return value?.type === 'instant' || value?.type === 'event' ? value.instant : null;
}

const hasNumbers = (dataset: Dataset, id: string): boolean => {
  const series = dataset.series.get(id);
  return series !== undefined && series.flags.some((bits) => (bits & (flag.missing | flag.word)) === 0);
};
const hasWords = (dataset: Dataset, id: string): boolean => dataset.series.get(id)?.flags.some((bits) => (bits & flag.word) !== 0) ?? false;

/** Reads the YAML of a `figure` block. `options` is null when nothing can be drawn from it. */
export function readFigureBlock(block: Block, protocol: Protocol, dataset: Dataset): { options: FigureOptions | null; problems: Problem[] } {
  const read = readOptions(block);
  const problems = [...read.problems];
  const whole = blockRange(block);
  if (problems.length > 0) return { options: null, problems };
  const show: Placed<string>[] = [];
  let from: Instant | null = null;
  let to: Instant | null = null;
  let title: string | null = null;
  let caption: string | null = null;
  let refused = false;
  let shows = false;
  const context = createContext({ protocol, dataset, results: [] });
  for (const option of read.options) {
    const first = option.texts[0];
    if (option.key === 'show') {
      shows = true;
      for (const name of option.texts) {
        const ids = expand(name.value, protocol, dataset);
        if (ids.length === 0) {
          const known = [...dataset.series.keys()];
          const close = nearestName(name.value, known);
          problems.push(problem('series-unknown', name.range, { name: name.value, nearest: close ?? '', known: known.slice(0, 12).join(', ') },
            close ? [fix('replace-with', { text: close }, [{ range: name.range, newText: close }], { preferred: true })] : []));
        }
        for (const id of ids) if (!show.some((each) => each.value === id)) show.push({ value: id, range: name.range });
      }
    } else if (option.key === 'from' || option.key === 'to') {
      const offset = first ? block.content.text.indexOf(first.value) : -1;
      const found = first && offset >= 0 ? readInstant(sliceMapped(block.content, offset, offset + first.value.length), context) : null;
      if (found === null) problems.push(problem('figure-time-unreadable', option.range, { option: option.key, text: first?.value ?? '' }));
      else if (option.key === 'from') from = found;
      else to = found;
    } else if (option.key === 'title') title = first?.value ?? null;
    else if (option.key === 'caption') caption = first?.value ?? null;
    else if (option.key === 'spec') {
      refused = true;
      problems.push(problem('not-yet', option.keyRange, { what: 'a chart from a specification of your own (“spec”)', instead: 'name the readings under “show”' }));
    } else if (axisKeys.includes(option.key)) problems.push(problem('second-axis', option.keyRange, { option: option.key }));
    else problems.push(unknownOption(option, block, figureKeys));
  }
  if (refused) return { options: null, problems };
  if (!shows) for (const id of dataset.series.keys()) show.push({ value: id, range: whole });
  for (const each of shows ? show : []) {
    if (hasWords(dataset, each.value)) problems.push(problem('words-not-drawn', each.range, { series: each.value }));
  }
  const drawn = show.filter((each) => hasNumbers(dataset, each.value));
  const inside = drawn.some(({ value }) => {
    const series = dataset.series.get(value)!;
    return series.times.some((time, index) => (series.flags[index]! & (flag.missing | flag.word)) === 0
      && (from === null || time >= from) && (to === null || time <= to));
  });
  if (!inside) {
    if (problems.every((each) => each.severity !== 'error')) {
      problems.push(problem('figure-empty', whole, { shown: show.map((each) => each.value).join(', ') }));
    }
    return { options: null, problems };
  }
  return { options: { show: drawn, from, to, title, caption, range: whole }, problems };
}

/** Whom a `limits` block restricts itself to (option `for`); empty: every limit of the protocol. */
export function readLimitsBlock(block: Block, protocol: Protocol): { for: readonly string[]; problems: Problem[] } {
  const read = readOptions(block);
  const problems = [...read.problems];
  const wanted: string[] = [];
  const known = [...new Set(protocol.limits.map((limit) => limit.for))];
  for (const option of read.options) {
    if (option.key !== 'for') problems.push(unknownOption(option, block, limitsKeys));
    else wanted.push(...option.texts.map((each) => each.value));
  }
  if (known.length === 0 && problems.length === 0) problems.push(problem('no-limits-stated', blockRange(block)));
  return { for: wanted.filter((name) => known.includes(name)), problems };
}

/** The options of a `methods` block: `checklist: yes` adds the reporting checklist. */
export function readMethodsBlock(block: Block): { checklist: boolean; problems: Problem[] } {
  const read = readOptions(block);
  const problems = [...read.problems];
  let checklist = false;
  for (const option of read.options) {
    const [text] = option.texts;
    if (option.key !== 'checklist') problems.push(unknownOption(option, block, ['checklist']));
    else if (text && /^(?:yes|no)$/.test(text.value)) checklist = text.value === 'yes';
    else problems.push(problem('option-value', text?.range ?? option.keyRange, { option: option.key, known: 'yes, no' },
      [fix('replace-with', { text: 'yes' }, [{ range: text?.range ?? option.range, newText: text ? 'yes' : `${option.key}: yes` }])]));
  }
  return { checklist, problems };
}

/** Problems of every `figure`, `summary`, `limits` and `methods` block of a note. */
export function drawnBlockProblems(syntax: NoteSyntax, protocol: Protocol, dataset: Dataset): Problem[] {
  return syntax.blocks.flatMap((block) => {
    if (block.word === 'figure') return readFigureBlock(block, protocol, dataset).problems;
    if (block.word === 'limits') return readLimitsBlock(block, protocol).problems;
    if (block.word === 'methods') return readMethodsBlock(block).problems;
    if (block.word === 'summary') {
      return [problem('not-yet', blockRange(block), { what: 'a summary table', instead: 'name the numbers in a values block' })];
    }
    return [];
  });
}
