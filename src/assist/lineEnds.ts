// What can be shown at the ends of lines without moving a letter of the note: values of claims that are not filled in yet,
// and the steps of a row of readings since the row above.
import type { CheckedClaim } from '../claims/types.ts';
import type { Note } from '../experiment/types.ts';
import { formatNumber } from '../quantities/format.ts';
import { differenceUnit } from '../quantities/units.ts';
import type { Cell, ReadingRow, ReadingsTable } from '../readings/types.ts';
import { lineAt } from './place.ts';

export interface ValueAtLineEnd {
  readonly claim: CheckedClaim;
  readonly value: string;
  /** True where the text is broken and the value is that of the last whole text. */
  readonly kept: boolean;
}

export interface LineEnd<Part> { /** Offset of the line's end. */ readonly at: number; readonly parts: readonly Part[] }

/** Remembers values by formula from one reading of the note to the next. */
export type KnownValues = Map<string, string>;

/** The values of the claims with `?`, by line. While plan or readings are broken, those that were known stay. */
export function valuesAtLineEnds(note: Note, known: KnownValues): LineEnd<ValueAtLineEnd>[] {
  const broken = isBroken(note);
  const lines = new Map<number, ValueAtLineEnd[]>();
  for (const claim of note.claims) {
    if (claim.syntax.form !== 'unfilled') continue;
    const formula = claim.syntax.formula.text.trim();
    if (claim.computed !== null) known.set(formula, claim.computed);
    else if (!broken) known.delete(formula);
    const value = claim.computed ?? known.get(formula);
    if (value === undefined) continue;
    const { end } = lineAt(note.text, claim.syntax.range.end);
    const at = note.text[end - 1] === '\r' ? end - 1 : end;
    lines.set(at, [...lines.get(at) ?? [], { claim, value, kept: claim.computed === null }]);
  }
  return [...lines].map(([at, parts]) => ({ at, parts }));
}

/** True while the plan or a table has an error of its own. */
function isBroken(note: Note): boolean {
  if (!note.protocol) return true;
  const blocks = note.syntax.blocks.filter((block) => block.word === 'protocol' || block.word === 'readings').map((block) => block.range);
  return note.problems.some(({ severity, range }) => severity === 'error' && blocks.some((block) => block.start <= range.start && range.end <= block.end));
}

export interface Step {
  /** As typed in the head: `mat.DO`. */
  readonly column: string;
  /** `−0.24`, with a sign; empty where there is no step. */
  readonly text: string;
  readonly unit: string;
}

export interface RowOfSteps extends LineEnd<Step> { /** All steps, each column as wide in every row of its table. */ readonly label: string }

/** The steps of every row of the note's own tables, from the row above that has a reading. Rows without any are left out. */
export function stepsAtLineEnds(note: Note): RowOfSteps[] {
  return note.tables.filter((table) => !table.file).flatMap((table) => {
    const rows = stepsOf(table);
    const widths = table.columns.map((_, index) => Math.max(1, ...rows.map((row) => row.steps[index]!.text.length)));
    return rows.filter(({ steps }) => steps.some((step) => step.text !== '')).map(({ row, steps }) => {
      const { end } = lineAt(note.text, row.range.start);
      return {
        at: note.text[end - 1] === '\r' ? end - 1 : end, parts: steps,
        label: steps.map((step, index) => (step.text === '' ? '·' : step.text).padStart(widths[index]!, noBreak)).join(noBreak + noBreak),
      };
    });
  });
}

/** Keeps its width in a label. */
const noBreak = '\u00a0';

function stepsOf(table: ReadingsTable): { row: ReadingRow; steps: Step[] }[] {
  const last: (Cell | undefined)[] = [];
  return table.rows.map((row) => ({
    row,
    steps: table.columns.map((column, index) => {
      const cell = row.cells[index];
      const before = last[index];
      const counts = cell?.state.kind === 'number' && cell.state.value !== null && !cell.leftOut;
      if (counts) last[index] = cell;
      const unit = column.unit ? differenceUnit(column.unit).print : '';
      return { column: column.id, unit, text: counts && before ? stepText(before, cell) : '' };
    }),
  }));
}

function stepText(before: Cell, cell: Cell): string {
  const change = cell.state.value! - before.state.value!;
  return signed(change, Math.max(cell.state.decimals, before.state.decimals, 0));
}

/** With its sign, as changes are written; a change of nothing has none. */
export function signed(value: number, decimals: number): string {
  return `${Number(value.toFixed(decimals)) > 0 ? '+' : ''}${formatNumber(value, decimals)}`;
}
