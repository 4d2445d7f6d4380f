// Draws one chart to a string, for the test that runs it under other time zones and languages.
import { readingsFigureOptions, unthemedChart } from '../../../src/charts/readingsChart.ts';
import { chartSvg } from '../../../src/charts/svg.ts';
import { nightNote } from './handmade.ts';

export function drawOne(): Promise<string> {
  const note = nightNote();
  return chartSvg(unthemedChart(note, readingsFigureOptions(1, note)!)!, { id: 'f', variables: true });
}
