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
export function flagText(bits: number): string {
  return flagNames.filter(([bit]) => (bits & bit) !== 0).map(([, name]) => name).join(' ');
}

const unitText = (unit: Unit | null): string => (unit === null || unit.symbol === '1' ? '' : unit.symbol);
const ucumText = (unit: Unit | null): string => unit?.ucum ?? '';
const apostrophe = 'Text that begins with =, +, - or @ is preceded by an apostrophe.';

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
  return {
    path: 'readings-long.csv', name: 'readings-long', title: 'Readings, one a row', key: ['time_utc', 'series'],
    description: 'Every reading as it counts now, with its unit, its uncertainty, its flags and, where it was corrected, its first value. Nothing recorded is left away.',
    columns: [
      column('time', 'time', `Local time with offset (${protocol.zone.name}).`, { required: true }), column('time_utc', 'utc', 'The same instant in UTC.', { required: true }),
      column('series', 'text', 'Place, quantity and instrument as formulas name them.', { required: true }), column('place', 'text', 'Short name of the tank, or room.', { required: true }),
      column('label', 'text', 'What the prose calls the tank.'), column('role', 'text', 'treatment or control.'), column('group', 'text', 'Group of tanks treated alike.'),
      column('quantity', 'text', 'Short name of the quantity.', { required: true }), column('what', 'text', 'The quantity in words.'), column('instrument', 'text', `The instrument in words. ${apostrophe}`),
      column('value', 'number', 'The reading in the unit of the same row; for below-range and above-range the limit of the instrument; empty where none was taken.'),
      column('word', 'text', 'For quantities on a scale of words.'), column('unit', 'text', 'Unit as the note writes it.'), column('unit_ucum', 'text', 'Unit as a UCUM code; what UCUM has no unit for stands in braces.'),
      column('half_width_95', 'number', 'Half of the 95 % interval from stated accuracy, resolution and repeats, in the same unit; empty where no accuracy is stated.'),
      column('flags', 'text', `Any of ${flagNames.map(([, name]) => name).join(', ')}, separated by spaces.`), column('used', 'yes-no', 'yes where the reading takes part in calculations.', { required: true }),
      column('first_value', 'number', 'The value first written, where it was corrected.'), column('corrections', 'text', `Every value written, the first at the start. ${apostrophe}`),
      column('repeats', 'text', 'The readings taken at once, whose mean is the value.'), column('as_written', 'text', `The cell as it stands in the note. ${apostrophe}`), column('remark', 'text', `The remark on the row. ${apostrophe}`),
      column('earlier_times', 'text', 'Times first written for the row, where its time was corrected.'), column('block', 'text', 'Name of the block of readings.'), column('unit_written', 'text', 'Unit in which the value was written down.'),
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
  return {
    path: 'readings-wide.csv', name: 'readings-wide', title: 'Readings, one time a row', key: ['time'],
    description: 'The readings that take part in calculations, a column a series; left-out, missing and out-of-range ones are empty and named in the flags.',
    columns: [column('time', 'time', `Local time with offset (${protocol.zone.name}).`, { required: true }), ...all.flatMap((series) => {
      const words = [...series.flags].some((bits) => (bits & flag.word) !== 0);
      const measure = measureOf(protocol, series.quantity, series.instrument);
      const tank = protocol.tanks.find((each) => each.id === series.place);
      return [
        column(series.id, words ? 'text' : 'number', `${measure?.what?.value ?? series.quantity}, ${tank?.label ?? series.place}${series.unit.symbol === '1' ? '' : `, in ${series.unit.print || series.unit.symbol}`}.`, { title: series.id, unit: words ? null : series.unit }),
        column(`${series.id} flags`, 'text', `Flags of ${series.id}, separated by spaces.`, { title: `${series.id} flags` }),
      ];
    })],
    rows,
  };
}

function instrumentTable(note: Note): DataTable {
  const protocol = note.protocol!;
  return {
    path: 'instruments.csv', name: 'instruments', title: 'Quantities and instruments', description: 'What was measured, with what, how well.', key: ['quantity'],
    columns: [
      column('quantity', 'text', 'Short name of the quantity.', { required: true }), column('what', 'text', 'The quantity in words.'), column('unit', 'text', 'Unit as the note writes it.'), column('unit_ucum', 'text', 'UCUM code.'),
      column('instrument', 'text', `In words. ${apostrophe}`), column('used_in', 'text', 'Tanks, or room; empty: all tanks.'), column('accuracy', 'number', 'As the maker states it (95 %), in the unit of accuracy_unit.'),
      column('accuracy_unit', 'text', 'Unit of the accuracy.'), column('accuracy_ucum', 'text', 'UCUM code of that unit.'), column('resolution', 'number', 'Smallest step of the display, in the unit of the readings.'),
      column('calibrated', 'text', `When and how. ${apostrophe}`), column('level', 'text', 'For air pressure: station or sea.'), column('scale', 'text', 'Words of a scale, least first.'),
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
    path: 'results.csv', name: 'results', title: 'Named results and claims', description: 'Every result and claim of the note with its formula and its value as computed.', key: ['kind', 'name'],
    columns: [
      column('kind', 'text', 'result or claim.', { required: true }), column('name', 'text', 'Name of the result, or number of the claim in the post.', { required: true }), column('formula', 'text', `The formula. ${apostrophe}`), column('shown', 'text', `As the reader sees it. ${apostrophe}`),
      column('value', 'number', 'The computed value, unrounded to 12 digits, in the unit of the same row.'), column('other_value', 'text', 'Instants, durations, words and truths. Durations in hours.'),
      column('unit', 'text', 'Unit as the note writes it.'), column('unit_ucum', 'text', 'UCUM code.'), column('half_width_95', 'number', 'Half of the 95 % interval in the same unit; of an instant or a length of time in hours.'), column('mark', 'text', 'computed, condition, stated or unchecked.'), column('source', 'text', `Source of a stated claim. ${apostrophe}`),
    ],
    rows,
  };
}

/** The tables of a note's data package. */
export function dataTables(note: Note): DataTable[] {
  return note.protocol === null ? [] : [longTable(note), wideTable(note), instrumentTable(note), resultTable(note)];
}

