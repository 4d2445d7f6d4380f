// Joins the readings tables of a note into one data set: a series a tank, quantity and instrument, sorted by time.
import { problem, type Problem } from '../problems/problem.ts';
import type { Protocol } from '../protocol/types.ts';
import type { Unit } from '../quantities/types.ts';
import { convert, convertible, parseUnit } from '../quantities/units.ts';
import { measureFor, planUnit } from '../readings/heads.ts';
import type { Cell, ReadingRow, ReadingsTable } from '../readings/types.ts';
import type { Instant } from '../time/instant.ts';
import { formatInstant } from '../time/text.ts';
import { outsideRun, slotsMissed } from './coverage.ts';
import { offerPairing, pairedTimes, type RowTimes } from './pairing.ts';
import { seriesName } from './series.ts';
import { flag, type Dataset, type ReadingSource, type Series } from './types.ts';

/** A unit for words of a scale and counts. */
const one: Unit = {
  symbol: '1', dimension: { mass: 0, length: 0, time: 0, temperature: 0, amount: 0, current: 0, luminosity: 0 },
  kind: 'plain', factor: 1, offset: 0, ucum: '1', print: '',
};

interface Double { readonly columns: Set<string>; readonly rows: Set<ReadingRow>; readonly source: ReadingSource; readonly first: ReadingSource }
interface Entry { readonly time: Instant; readonly source: ReadingSource; readonly order: number }
interface Gathered { readonly place: string; readonly quantity: string; readonly instrument: string | null; readonly entries: Entry[]; readonly units: Unit[]; readonly scale: readonly string[] | null }

/**
 * Joins tables by time. A series' unit is that of its heads where they agree, else the plan's; values of other
 * columns are converted to it. Columns that name no tank, quantity or unit take no part (a problem said so before).
 * Two values for one time are `duplicate-reading`; both are kept, in the order of the note.
 */
export function buildDataset(tables: readonly ReadingsTable[], protocol: Protocol): { dataset: Dataset; problems: Problem[] } {
  const problems: Problem[] = [];
  const times = pairedTimes(tables, protocol.pairWithin);
  const gathered = gather(tables, times, protocol);
  const doubles = new Map<ReadingRow | ReadingsTable, Double>();
  const series = new Map<string, Series>();
  for (const [id, part] of gathered) {
    const built = buildSeries(id, part, protocol, (source, first) => {
      // Rows of a file have no place of their own in the note: all of its doubles are one problem.
      const key = source.table.file ? source.table : source.row;
      const known = doubles.get(key) ?? { columns: new Set(), rows: new Set(), source, first };
      known.columns.add(source.column.id);
      known.rows.add(source.row);
      doubles.set(key, known);
    });
    if (built) series.set(id, built);
  }
  for (const { columns, rows, source, first } of doubles.values()) {
    const range = columns.size > 1 && source.table.file === null ? source.row.timeRange : source.cell.range;
    const at = source.row.instant === null ? source.row.timeText : formatInstant(source.row.instant, protocol.zone);
    problems.push(problem('duplicate-reading', range, { columns: [...columns], time: at, count: rows.size }, [], [
      { range: first.cell.range, message: 'first-value-here', args: {} },
    ]));
  }
  const dataset: Dataset = { series, times: allTimes(series) };
  problems.push(...offerPairing(tables, protocol), ...outsideRun(tables, protocol), ...slotsMissed(dataset, protocol));
  return { dataset, problems };
}

function gather(tables: readonly ReadingsTable[], times: RowTimes, protocol: Protocol): Map<string, Gathered> {
  const gathered = new Map<string, Gathered>();
  let order = 0;
  for (const table of tables) {
    const seen = new Set<string>();
    table.columns.forEach((column, index) => {
      const measure = measureFor(protocol, column.quantity, column.instrument);
      const known = column.place === 'room' || protocol.tanks.some((tank) => tank.id === column.place);
      const scale = measure?.scale ?? null;
      const id = seriesName(column.place, column.quantity, column.instrument);
      if (!measure || !known || seen.has(id) || (!column.unit && !scale)) return;
      seen.add(id);
      let part = gathered.get(id);
      if (!part) gathered.set(id, part = { place: column.place, quantity: column.quantity, instrument: column.instrument, entries: [], units: [], scale });
      if (column.unit) part.units.push(column.unit);
      for (const row of table.rows) {
        const time = times.get(row) ?? row.instant;
        const cell = row.cells[index];
        if (time === null || !cell) continue;
        part.entries.push({ time, source: { table, row, column, cell }, order: order += 1 });
      }
    });
  }
  return gathered;
}

/** Bits of a cell. */
export function flagsOf(cell: Cell): number {
  const { kind } = cell.state;
  let bits = 0;
  if (kind === 'missing' || kind === 'unreadable') bits |= flag.missing;
  if (kind === 'below') bits |= flag.below;
  if (kind === 'above') bits |= flag.above;
  if (kind === 'word') bits |= flag.word;
  if (cell.leftOut) bits |= flag.leftOut;
  if (cell.doubtful) bits |= flag.doubtful;
  if (cell.earlier.length > 0) bits |= flag.corrected;
  if (cell.state.repeats.length > 1) bits |= flag.repeated;
  return bits;
}

function buildSeries(
  id: string, part: Gathered, protocol: Protocol, onDouble: (source: ReadingSource, first: ReadingSource) => void,
): Series | null {
  const unit = part.scale ? parseUnit('1') ?? one : seriesUnit(part, protocol);
  if (!unit) return null;
  const sorted = [...part.entries].sort((a, b) => a.time - b.time || a.order - b.order);
  const kept: Entry[] = [];
  for (const entry of sorted) {
    const before = kept.at(-1);
    if (!before || before.time !== entry.time) { kept.push(entry); continue; }
    const empty = (cell: Cell): boolean => cell.state.kind === 'missing' && cell.earlier.length === 0;
    // A gap and a value at one time are no contradiction: the value stands.
    if (empty(entry.source.cell)) continue;
    if (empty(before.source.cell)) { kept[kept.length - 1] = entry; continue; }
    onDouble(entry.source, before.source);
    kept.push(entry);
  }
  const times = Float64Array.from(kept, (entry) => entry.time);
  const values = new Float64Array(kept.length);
  const flags = new Uint8Array(kept.length);
  const words = new Int16Array(kept.length).fill(-1);
  kept.forEach(({ source }, index) => {
    const { cell, column } = source;
    flags[index] = flagsOf(cell);
    if (cell.state.value !== null) {
      values[index] = column.unit && column.unit.symbol !== unit.symbol && convertible(column.unit, unit)
        ? convert(cell.state.value, column.unit, unit) : cell.state.value;
    }
    if (cell.state.word !== null && part.scale) words[index] = part.scale.indexOf(cell.state.word);
  });
  return { id, place: part.place, quantity: part.quantity, instrument: part.instrument, unit, times, values, flags, words, sources: kept.map((entry) => entry.source) };
}

function seriesUnit(part: Gathered, protocol: Protocol): Unit | null {
  const first = part.units[0] ?? null;
  if (part.units.every((unit) => unit.symbol === first?.symbol)) return first;
  return planUnit(measureFor(protocol, part.quantity, part.instrument)) ?? first;
}

function allTimes(series: ReadonlyMap<string, Series>): Instant[] {
  const all = new Set<Instant>();
  for (const each of series.values()) for (const time of each.times) all.add(time);
  return [...all].sort((a, b) => a - b);
}
