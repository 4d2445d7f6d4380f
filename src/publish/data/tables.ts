// The open data as tables: every reading in a row (long), every time in a row (wide), instruments, computed results.
import type { Note } from '../../experiment/types.ts';
import { flag, type Series } from '../../dataset/types.ts';
import { isCensored, isUsable } from '../../dataset/series.ts';
import { amountIn, measureOf, readingValue } from '../../dataset/readingValue.ts';
import { machineValue, showValue } from '../../formula/show.ts';
import { halfWidthOf } from '../../formula/timeIntervals.ts';
import type { FormulaValue } from '../../formula/types.ts';
import type { Unit } from '../../quantities/types.ts';
import { expandedUncertainty } from '../../quantities/value.ts';
import { hour } from '../../time/instant.ts';
import { formatInstant } from '../../time/text.ts';
import { utc } from '../../time/zone.ts';
import { languageOf } from '../../words/languages.ts';
import { openDataWords, type OpenDataWords } from '../../words/openData.ts';
import { quantityName } from '../../words/quantities.ts';
import { unitWords } from '../../words/units.ts';
import { claimWords } from '../working.ts';
import type { CsvCell } from './csv.ts';

export type ColumnType = 'text' | 'number' | 'integer' | 'time' | 'utc' | 'yes-no';

export interface DataColumn {
  readonly name: string;
  readonly title: string;
  readonly type: ColumnType;
  readonly description: string;
  /** Where every number of the column has one unit. */
  readonly unit?: Unit | null;
  readonly required?: boolean;
}

export interface DataTable {
  /** File name. */
  readonly path: string;
  /** Lower-case name for the descriptor. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly columns: readonly DataColumn[];
  readonly rows: readonly (readonly CsvCell[])[];
  readonly key: readonly string[];
}

const flagNames: readonly (readonly [number, string])[] = [
  [flag.missing, 'not-taken'], [flag.leftOut, 'left-out'], [flag.doubtful, 'doubtful'], [flag.corrected, 'corrected'], [flag.below, 'below-range'],
  [flag.above, 'above-range'], [flag.repeated, 'repeated'], [flag.word, 'word'],
];

/** `left-out doubtful`; empty for a plain reading. */
function flagText(bits: number): string {
  return flagNames.filter(([bit]) => (bits & bit) !== 0).map(([, name]) => name).join(' ');
}

const unitText = (unit: Unit | null): string => (unit === null || unit.symbol === '1' ? '' : unit.symbol);
const ucumText = (unit: Unit | null): string => unit?.ucum ?? '';

const wordsOf = (note: Note): OpenDataWords => openDataWords(languageOf(note.protocol?.language));

function column(name: string, type: ColumnType, description: string, more: Partial<DataColumn> = {}): DataColumn {
  return { name, title: name.replace(/_/g, ' '), type, description, ...more };
}

/** Series in the order of tanks and quantities of the plan. */
function seriesInOrder(note: Note): Series[] {
  const { protocol } = note;
  const tank = (series: Series): number => { const index = protocol?.tanks.findIndex((each) => each.id === series.place) ?? -1; return index < 0 ? 1e6 : index; };
  const quantity = (series: Series): number => { const index = protocol?.measure.findIndex((each) => each.id === series.quantity) ?? -1; return index < 0 ? 1e6 : index; };
  return [...note.dataset.series.values()].sort((a, b) => quantity(a) - quantity(b) || tank(a) - tank(b) || (a.id < b.id ? -1 : 1));
}

function longTable(note: Note): DataTable {
  const protocol = note.protocol!;
  const rows = seriesInOrder(note).flatMap((series) => [...series.times.keys()].map((index): CsvCell[] => {
    const instant = series.times[index]!;
    const bits = series.flags[index]!;
    const { cell, row, column: head, table } = series.sources[index]!;
    const tank = protocol.tanks.find((each) => each.id === series.place);
    const measure = measureOf(protocol, series.quantity, series.instrument);
    const numeric = (bits & (flag.missing | flag.word)) === 0 && cell.state.kind !== 'unreadable';
    const usable = isUsable(series, index) && !isCensored(series, index);
    const first = cell.earlier[0];
    const half = usable ? expandedUncertainty(readingValue(series, index, protocol)) : null;
    return [
      formatInstant(instant, protocol.zone), formatInstant(instant, utc).replace('+00:00', 'Z'), series.id, series.place, tank?.label ?? null, tank?.role?.value ?? null, tank?.group?.value ?? null,
      series.quantity, measure?.what?.value ?? null, series.instrument ?? measure?.with?.value ?? null, numeric ? series.values[index]! : null, (bits & flag.word) !== 0 ? cell.state.word : null,
      unitText(series.unit), ucumText(series.unit), half === null ? null : half, flagText(bits),
      numeric && !(bits & flag.leftOut) ? 'yes' : 'no', first ? (first.kind === 'number' || first.kind === 'below' || first.kind === 'above' ? first.value : null) : null,
      cell.earlier.length > 0 ? [...cell.earlier.map((each) => each.text), cell.state.text].join(' -> ') : null,
      cell.state.repeats.length > 1 ? cell.state.repeats.join(' / ') : null, cell.text, row.remark, row.earlierTimes.length > 0 ? row.earlierTimes.join(' -> ') : null,
      table.name ?? null, head.unit === null ? null : unitText(head.unit),
    ];
  }));
  const words = wordsOf(note).long;
  const say = words.columns;
  return {
    path: 'readings-long.csv', name: 'readings-long', title: words.title, key: ['time_utc', 'series'],
    description: words.description,
    columns: [
      column('time', 'time', say.time(protocol.zone.name), { required: true }), column('time_utc', 'utc', say.time_utc, { required: true }),
      column('series', 'text', say.series, { required: true }), column('place', 'text', say.place, { required: true }),
      column('label', 'text', say.label), column('role', 'text', say.role), column('group', 'text', say.group),
      column('quantity', 'text', say.quantity, { required: true }), column('what', 'text', say.what), column('instrument', 'text', say.instrument),
      column('value', 'number', say.value),
      column('word', 'text', say.word), column('unit', 'text', say.unit), column('unit_ucum', 'text', say.unit_ucum),
      column('half_width_95', 'number', say.half_width_95),
      column('flags', 'text', say.flags(flagNames.map(([, name]) => name).join(', '))), column('used', 'yes-no', say.used, { required: true }),
      column('first_value', 'number', say.first_value), column('corrections', 'text', say.corrections),
      column('repeats', 'text', say.repeats), column('as_written', 'text', say.as_written), column('remark', 'text', say.remark),
      column('earlier_times', 'text', say.earlier_times), column('block', 'text', say.block), column('unit_written', 'text', say.unit_written),
    ],
    rows,
  };
}

function wideTable(note: Note): DataTable {
  const protocol = note.protocol!;
  const all = seriesInOrder(note);
  const times = [...new Set(all.flatMap((series) => [...series.times]))].sort((a, b) => a - b);
  const places = all.map((series) => new Map([...series.times].map((time, index) => [time, index])));
  const rows = times.map((time): CsvCell[] => [formatInstant(time, protocol.zone), ...all.flatMap((series, position): CsvCell[] => {
    const index = places[position]!.get(time);
    if (index === undefined) return [null, null];
    const bits = series.flags[index]!;
    const used = (bits & (flag.missing | flag.leftOut | flag.below | flag.above)) === 0;
    return [!used ? null : (bits & flag.word) !== 0 ? series.sources[index]!.cell.state.word : series.values[index]!, flagText(bits)];
  })]);
  const words = wordsOf(note).wide;
  const language = languageOf(protocol.language);
  return {
    path: 'readings-wide.csv', name: 'readings-wide', title: words.title, key: ['time'],
    description: words.description,
    columns: [column('time', 'time', wordsOf(note).long.columns.time(protocol.zone.name), { required: true }), ...all.flatMap((series) => {
      const onScale = [...series.flags].some((bits) => (bits & flag.word) !== 0);
      const measure = measureOf(protocol, series.quantity, series.instrument);
      const tank = protocol.tanks.find((each) => each.id === series.place);
      return [
        column(series.id, onScale ? 'text' : 'number', words.series({ what: measure?.what ? quantityName(measure.what.value, language) : series.quantity, where: tank?.label ?? series.place, unit: series.unit.symbol === '1' ? null : unitWords(series.unit.print || series.unit.symbol, language) }), { title: series.id, unit: onScale ? null : series.unit }),
        column(`${series.id} flags`, 'text', words.flags(series.id), { title: `${series.id} flags` }),
      ];
    })],
    rows,
  };
}

function instrumentTable(note: Note): DataTable {
  const protocol = note.protocol!;
  const words = wordsOf(note).instruments;
  const say = words.columns;
  return {
    path: 'instruments.csv', name: 'instruments', title: words.title, description: words.description, key: ['quantity'],
    columns: [
      column('quantity', 'text', say.quantity, { required: true }), column('what', 'text', say.what), column('unit', 'text', say.unit), column('unit_ucum', 'text', say.unit_ucum),
      column('instrument', 'text', say.instrument), column('used_in', 'text', say.used_in), column('accuracy', 'number', say.accuracy),
      column('accuracy_unit', 'text', say.accuracy_unit), column('accuracy_ucum', 'text', say.accuracy_ucum), column('resolution', 'number', say.resolution),
      column('calibrated', 'text', say.calibrated), column('level', 'text', say.level), column('scale', 'text', say.scale),
    ],
    rows: protocol.measure.map((each): CsvCell[] => [
      each.id, each.what?.value ?? null, unitText(each.unit), ucumText(each.unit), each.with?.value ?? null, each.in.map((place) => place.value).join(' '),
      each.accuracy?.value ?? null, each.accuracy ? unitText(each.accuracy.unit) : null, each.accuracy ? ucumText(each.accuracy.unit) : null,
      each.resolution && each.unit ? amountIn(each.resolution, each.unit, 0) : null, each.calibrated?.value ?? null, each.level?.value ?? null, each.scale?.join(' < ') ?? null,
    ]),
  };
}

/** Half of the 95 % interval: of a number in its unit, of an instant or a length of time in hours. */
function halfWidth(value: FormulaValue | null): number | null {
  if (value?.type === 'number') return expandedUncertainty(value);
  const half = value?.type === 'instant' || value?.type === 'duration' ? halfWidthOf(value.interval) : null;
  return half === null ? null : half / hour;
}

function resultTable(note: Note): DataTable {
  const words = wordsOf(note).results;
  const say = words.columns;
  const rows: CsvCell[][] = note.results.map((result) => {
    const { value } = result.evaluation;
    const number = value?.type === 'number' ? value : null;
    return ['result', result.name, result.formula.text.trim(), value === null ? null : showValue(value, note.context), number?.value ?? null,
      value === null || number ? null : machineValue(value, note.context), number ? unitText(number.unit) : null, number ? ucumText(number.unit) : null, halfWidth(value), null, null];
  });
  note.claims.forEach((claim, index) => {
    const value = claim.evaluation?.value ?? null;
    const number = value?.type === 'number' ? value : null;
    rows.push(['claim', String(index + 1), claim.syntax.form === 'stated' ? null : claim.syntax.formula.text.replace(/\s+/g, ' ').trim(), claimWords(claim), number?.value ?? null,
      number || claim.machine === null ? null : claim.machine, number ? unitText(number.unit) : null, number ? ucumText(number.unit) : null, halfWidth(value), claim.mark, claim.syntax.source]);
  });
  return {
    path: 'results.csv', name: 'results', title: words.title, description: words.description, key: ['kind', 'name'],
    columns: [
      column('kind', 'text', say.kind, { required: true }), column('name', 'text', say.name, { required: true }), column('formula', 'text', say.formula), column('shown', 'text', say.shown),
      column('value', 'number', say.value), column('other_value', 'text', say.other_value),
      column('unit', 'text', say.unit), column('unit_ucum', 'text', say.unit_ucum), column('half_width_95', 'number', say.half_width_95), column('mark', 'text', say.mark), column('source', 'text', say.source),
    ],
    rows,
  };
}

/** The tables of a note's data package. */
export function dataTables(note: Note): DataTable[] {
  return note.protocol === null ? [] : [longTable(note), wideTable(note), instrumentTable(note), resultTable(note)];
}

