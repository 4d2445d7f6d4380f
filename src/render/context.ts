// What rendering one note needs at hand: the note, its numbers of figures and tables, and the values shown so far.
import type { Note } from '../experiment/types.ts';
import { contextOf } from '../experiment/readNote.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Chart } from '../charts/types.ts';
import { languageOf, type Language } from '../words/languages.ts';
import { pageWords, planWords, type PageWords, type PlanCardWords } from '../words/page.ts';
import { plainWords } from '../formula/plainWords.ts';
import { machineValue, showValue, type ShowOptions } from '../formula/show.ts';
import { evaluate } from '../formula/evaluate.ts';
import { mappedText } from '../note/mappedText.ts';
import { ChartCache, type OptionsWithChart } from './chartCache.ts';
import { escapeHtml, element, type Html } from './html.ts';

export type RenderTarget = 'preview' | 'post';

export interface BlockFigure extends OptionsWithChart { readonly number: number }

export interface RenderContext {
  readonly note: Note;
  readonly target: RenderTarget;
  /** Of the note; what we say beside the author's text is in it. */
  readonly language: Language;
  readonly words: PageWords;
  /** Of problems: the note's in a post, the interface's in the preview. */
  readonly problemLanguage: Language;
  readonly plan: PlanCardWords;
  /** Figures by index of their block: `figure` and `readings` blocks that have one. */
  readonly figures: ReadonlyMap<number, BlockFigure>;
  /** Number of the first table of a block. */
  readonly tableNumber: ReadonlyMap<number, number>;
  readonly figureHtml: ((block: number, chart: Chart) => Html) | null;
}

/** Quantities that a readings block has columns of, in the order of the heads: one table each. */
export function tableQuantities(note: Note, blockIndex: number): string[] {
  const table = note.tables.find((each) => each.block === blockIndex);
  return table ? [...new Set(table.columns.map((column) => column.quantity))] : [];
}

export function createRenderContext(note: Note, target: RenderTarget, figureHtml: RenderContext['figureHtml'] = null, charts = new ChartCache(), interfaceLanguage: Language = 'en'): RenderContext {
  const figures = new Map<number, BlockFigure>();
  const tableNumber = new Map<number, number>();
  let tables = 0;
  note.syntax.blocks.forEach((block, index) => {
    const figure = charts.of(note, index);
    if (figure) figures.set(index, { ...figure, number: figures.size + 1 });
    const count = block.word === 'readings' ? tableQuantities(note, index).length
      : block.word === 'values' || note.drawn.get(index)?.summary || (block.word === 'limits' && (note.protocol?.limits.length ?? 0) > 0) ? 1 : 0;
    if (count > 0) tableNumber.set(index, tables + 1);
    tables += count;
  });
  const language = languageOf(note.protocol?.language);
  return { note, target, language, problemLanguage: target === 'post' ? language : interfaceLanguage, words: pageWords(language), plan: planWords(language), figures, tableNumber, figureHtml };
}

/** The `lang` of words of ours in the preview, whose page is in the editor's language, so that they are read out as what they are. A post has one for the whole page. */
export const previewLanguage = (context: Pick<RenderContext, 'target'>, language: Language): Language | null => (context.target === 'preview' ? language : null);

/** A computed value: what the reader sees, with the formula it came from. */
export function dataHtml(text: string, machine: string, formula: string, title: string | null = null, className: string | null = null): Html {
  return element('data', { value: machine, 'data-formula': formula, title, class: className }, escapeHtml(text));
}

/** Evaluates a formula for a table; null where it has no value. */
export function computed(context: RenderContext, formula: string, options: ShowOptions = {}): { text: string; machine: string } | null {
  const formulas = contextOf(context.note);
  const { value } = evaluate(mappedText(formula), formulas);
  return value === null ? null : { text: showValue(value, formulas, options), machine: machineValue(value, formulas) };
}

/** The formula in words, for a title or the appendix; the formula itself where there are none. */
export function formulaWords(context: RenderContext, formula: string): string {
  return plainWords(formula, contextOf(context.note)) || formula;
}

/** Tanks of a role, in the protocol's order. */
export function tanksOfRole(protocol: Protocol, role: 'treatment' | 'control'): string[] {
  return protocol.tanks.filter((tank) => tank.role?.value === role).map((tank) => tank.id);
}
