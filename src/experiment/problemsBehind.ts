// The problems of the readings that a formula draws on: a value computed past an unreadable cell would not be the whole truth.
import type { Problem } from '../problems/problem.ts';
import { readingsCodes } from '../problems/codes/readings.ts';
import { parseFormula } from '../formula/parse.ts';
import type { Expression } from '../formula/types.ts';
import type { Note } from './types.ts';

/** Every `place.quantity` that the formula names, named results followed; a group name stands for all tanks. */
function seriesNamed(formula: string, note: Note, seen: Set<string>, found: Set<string>): Set<string> {
  const visit = (expression: Expression): void => {
    switch (expression.kind) {
      case 'reference': {
        const [first, second] = expression.parts;
        const result = second === undefined ? note.results.find((each) => each.name === first) : undefined;
        if (result && !seen.has(result.name)) {
          seen.add(result.name);
          seriesNamed(result.formula.text, note, seen, found);
        } else if (first !== undefined && second === undefined && note.protocol?.tanks.some((tank) => tank.id === first)) {
          for (const table of note.tables) for (const column of table.columns) if (column.place === first || column.place === 'room') found.add(`${column.place}.${column.quantity}`);
        } else if (first !== undefined && second !== undefined) {
          const isPlace = first === 'room' || note.protocol?.tanks.some((tank) => tank.id === first);
          if (isPlace) found.add(`${first}.${second}`);
          else for (const tank of note.protocol?.tanks ?? []) found.add(`${tank.id}.${second}`);
        }
        return;
      }
      case 'call': expression.operands.forEach(visit); expression.options.forEach((option) => { visit(option.value); }); return;
      case 'binary': visit(expression.left); visit(expression.right); return;
      case 'unary': case 'convert': visit(expression.operand); return;
      default: return;
    }
  };
  visit(parseFormula(formula).expression);
  return found;
}

/** Error-severity problems of readings in the columns that the formula draws on. */
export function problemsBehind(formula: string, note: Note): Problem[] {
  const named = seriesNamed(formula, note, new Set(), new Set());
  if (named.size === 0) return [];
  const errors = note.problems.filter((each) => each.severity === 'error' && each.code in readingsCodes);
  const behind = new Set<Problem>();
  for (const table of note.tables) {
    const columns = table.columns.flatMap((column, index) => named.has(`${column.place}.${column.quantity}`) ? [index] : []);
    if (columns.length === 0) continue;
    const touches = (each: Problem, start: number, end: number): boolean => each.range.start < end && start < each.range.end;
    for (const each of errors) {
      if (table.file && touches(each, table.file.range.start, table.file.range.end)) behind.add(each);
      for (const index of columns) {
        const column = table.columns[index]!;
        if (touches(each, column.range.start, column.range.end)) behind.add(each);
      }
      for (const row of table.rows) {
        if (each.range.end <= row.range.start || each.range.start >= row.range.end) continue;
        if (touches(each, row.timeRange.start, row.timeRange.end)) behind.add(each);
        if ((each.code as string) === 'column-count') behind.add(each);
        for (const index of columns) {
          const cell = row.cells[index];
          if (cell && touches(each, cell.range.start, cell.range.end)) behind.add(each);
        }
      }
    }
  }
  return [...behind];
}
