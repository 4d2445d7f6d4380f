// What is known about the thing under the cursor beyond what its own text says: the series a name stands for, the saturation
// and uncertainty of a reading, the equations behind a value, what could give a loose number.
import type { Series } from '../dataset/types.ts';
import { findFormulas, type Candidate } from '../experiment/findNumbers.ts';
import type { Note } from '../experiment/types.ts';
import { functionByName, type FunctionEntry } from '../formula/catalogue.ts';
import { evaluate } from '../formula/evaluate.ts';
import { showValue } from '../formula/show.ts';
import type { Evaluation, FormulaValue } from '../formula/types.ts';
import type { SourceRange } from '../problems/problem.ts';
import { formatValue } from '../quantities/format.ts';
import { measureByName } from '../quantities/measures.ts';
import { parseUnit } from '../quantities/units.ts';
import { isFailure, numberValue, toUnit } from '../quantities/value.ts';
import type { Cell, ReadingColumn, ReadingRow } from '../readings/types.ts';
import { formatInstant } from '../time/text.ts';
import { nameAt } from './navigate.ts';
import { namePlaces, type NamePlace } from './names.ts';

/** The value of a formula that stands nowhere in the note; null where it has none. */
export function valueOf(formula: string, note: Note): FormulaValue | null {
  return evaluate({ text: formula, pieces: [{ offset: 0, document: 0, length: formula.length }] }, note.context).value;
}

/** `8.02 ± 0.12 mg/L`, `06:04 (05:41–06:20)`; null where the plan states no accuracy. */
export function withUncertainty(value: FormulaValue | null, note: Note): string | null {
  if (!value) return null;
  const text = showValue(value, note.context, { withUncertainty: true });
  return text === showValue(value, note.context) ? null : text;
}

export interface ReadingFacts { readonly uncertainty: string | null; /** Of dissolved oxygen. */ readonly saturation: string | null }

/** What can be computed of one reading. Nothing for a reading that is left out, missing or a word. */
export function readingFacts(note: Note, column: ReadingColumn, row: ReadingRow): ReadingFacts {
  if (row.instant === null || !note.protocol) return { uncertainty: null, saturation: null };
  const when = formatInstant(row.instant, note.protocol.zone);
  const reading = valueOf(`at(${column.id}, ${when})`, note);
  if (!reading) return { uncertainty: null, saturation: null };
  const saturation = valueOf(`at(saturation(${column.id}), ${when})`, note);
  return { uncertainty: withUncertainty(reading, note), saturation: saturation && showValue(saturation, note.context) };
}

/** The functions that went into a value, each once, where they rest on an equation or a source. */
export function equationsBehind(evaluation: Evaluation): FunctionEntry[] {
  const names = new Set(evaluation.working.map((step) => step.function).filter((name) => name !== null));
  return [...names].map((name) => functionByName(name)).filter((entry) => entry !== null && (entry.equation !== '' || entry.source !== null)) as FunctionEntry[];
}

/** Most other units that are worth a line. */
const mostUnits = 2;

/** A reading in the other units that its quantity is measured in, where the number is a handy one: `76.6 °F`. */
export function inOtherUnits(note: Note, column: ReadingColumn, cell: Cell): string[] {
  const what = note.protocol?.measure.find((each) => each.id === column.quantity)?.what?.value;
  const from = column.unit;
  if (!what || !from || cell.state.kind !== 'number' || cell.state.value === null) return [];
  const written = numberValue(cell.state.value, from);
  const others = (measureByName(what)?.units ?? []).map((symbol) => parseUnit(symbol)).filter((unit) => unit !== null && unit.symbol !== from.symbol);
  return others.flatMap((unit) => {
    const value = toUnit(written, unit!);
    const power = Math.log10(from.factor / unit!.factor);
    // The same digits with the point elsewhere tell nothing new.
    if (isFailure(value) || (Number.isInteger(power) && unit!.offset === from.offset) || Math.abs(value.value) < 0.01 || Math.abs(value.value) >= 10_000) return [];
    const decimals = Math.max(0, cell.state.decimals - Math.round(power));
    return [formatValue(value, { decimals })];
  }).slice(0, mostUnits);
}

export interface SeriesHere { readonly range: SourceRange; readonly series: Series }

/** The series whose name stands at an offset: `mat.DO` in a formula, a head or a figure. */
export function seriesAt(note: Note, offset: number): SeriesHere | null {
  const places = namePlaces(note);
  const at = nameAt(places, offset);
  if (!at) return null;
  const [place, quantity] = at.kind === 'quantity' ? [before(places, at), at] : [at, after(places, at)];
  if (!place || !quantity) return null;
  const instrument = /^@[\p{L}\p{N}_-]+/u.exec(note.text.slice(quantity.range.end))?.[0] ?? '';
  const series = note.dataset.series.get(`${place.name}.${quantity.name}${instrument}`);
  return series ? { series, range: { start: place.range.start, end: quantity.range.end + instrument.length } } : null;
}

const before = (places: readonly NamePlace[], at: NamePlace): NamePlace | undefined => places.find((each) => each.range.end + 1 === at.range.start);
const after = (places: readonly NamePlace[], at: NamePlace): NamePlace | undefined => places.find((each) => each.range.start === at.range.end + 1 && each.kind === 'quantity');

/** The number under an offset that no formula checks, with what could give it, best first. */
export function looseNumberAt(note: Note, offset: number, most = 4): { readonly range: SourceRange; readonly text: string; readonly candidates: readonly Candidate[] } | null {
  const loose = note.problems.find((each) => each.code === 'loose-number' && each.range.start <= offset && offset <= each.range.end);
  if (!loose) return null;
  return { range: loose.range, text: note.text.slice(loose.range.start, loose.range.end), candidates: findFormulas(loose.range, note, { most }) };
}

/** When a moment or a stretch of time of the plan is: `22:00 on the first day`, as formulas would show it. Null for other names. */
export function momentAt(note: Note, offset: number): { readonly range: SourceRange; readonly name: string; readonly text: string } | null {
  const at = nameAt(namePlaces(note), offset);
  if (!at || !(at.kind === 'event' || at.kind === 'phase' || at.kind === 'word')) return null;
  const value = valueOf(at.name, note);
  if (!value || !(value.type === 'instant' || value.type === 'event' || value.type === 'window')) return null;
  return { range: at.range, name: at.name, text: showValue(value, note.context) };
}
