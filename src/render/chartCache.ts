// Charts already made: a note that is read again on the same ground keeps the options of its figures, and so their charts.
import type { FigureOptions } from '../experiment/figureBlock.ts';
import type { Ground } from '../experiment/ground.ts';
import type { Note } from '../experiment/types.ts';
import { readingsFigureOptions, unthemedChart } from '../charts/readingsChart.ts';
import type { Chart } from '../charts/types.ts';

export interface OptionsWithChart { readonly options: FigureOptions; readonly chart: Chart }

export class ChartCache {
  private readonly figures = new WeakMap<FigureOptions, OptionsWithChart | null>();
  private readonly readings = new WeakMap<Ground, Map<number, OptionsWithChart | null>>();

  /** The figure of a block, as a `figure` block asks for it or of the columns of a `readings` block; null where nothing is drawn. */
  of(note: Note, block: number): OptionsWithChart | null {
    const options = note.drawn.get(block)?.figure;
    if (options) return known(this.figures, options, () => draw(note, options));
    if (note.syntax.blocks[block]?.word !== 'readings') return null;
    return known(known(this.readings, note.ground, () => new Map<number, OptionsWithChart | null>()), block, () => draw(note, readingsFigureOptions(block, note)));
  }
}

function draw(note: Note, options: FigureOptions | null): OptionsWithChart | null {
  const chart = options && unthemedChart(note, options);
  return options && chart ? { options, chart } : null;
}

/** What a map holds for a key; made and kept where it holds nothing. */
function known<Key extends object | number, Value>(map: { get(key: Key): Value | undefined; set(key: Key, value: Value): unknown; has(key: Key): boolean }, key: Key, make: () => Value): Value {
  if (map.has(key)) return map.get(key) as Value;
  const value = make();
  map.set(key, value);
  return value;
}
