// The readings that went into a value: their places, tanks, times and decimals.
import type { RelatedPlace, SourceRange } from '../problems/problem.ts';
import type { FormulaContext } from '../formula/context.ts';
import type { Evaluation } from '../formula/types.ts';
import type { ReadingSource, Series } from '../dataset/types.ts';
import { formatClock } from '../time/text.ts';
import type { Instant } from '../time/instant.ts';

export interface ReadingBehind { readonly source: ReadingSource; readonly series: Series; readonly instant: Instant; readonly range: SourceRange }

/** Every reading whose place stands in the working, once, in order of series and time. */
export function readingsBehind(evaluation: Evaluation, context: FormulaContext): ReadingBehind[] {
  const wanted = new Set<string>();
  for (const step of evaluation.working) for (const range of step.readings) wanted.add(`${range.start}:${range.end}`);
  if (wanted.size === 0) return [];
  const found: ReadingBehind[] = [];
  for (const series of context.dataset.series.values()) {
    series.sources.forEach((source, index) => {
      const { range } = source.cell;
      if (wanted.has(`${range.start}:${range.end}`)) found.push({ source, series, instant: series.times[index]!, range });
    });
  }
  return found;
}

const mostPlaces = 6;

/** Places to show beside a problem: the first and last readings where there are many. */
export function relatedReadings(evaluation: Evaluation, context: FormulaContext): RelatedPlace[] {
  const all = readingsBehind(evaluation, context);
  const shown = all.length <= mostPlaces ? all : [...all.slice(0, mostPlaces / 2), ...all.slice(-mostPlaces / 2)];
  return shown.map(({ source, series, instant, range }) => ({
    range, message: 'reading-used', args: { series: series.id, time: context.protocol ? formatClock(instant, context.protocol.zone) : '', text: source.cell.text },
  }));
}
