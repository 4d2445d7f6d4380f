// Colours by meaning: tanks, quantities, functions, units, moments, phases, named results, and readings that are left out or doubtful.
import type { Note } from '../experiment/types.ts';
import { parseFormula } from '../formula/parse.ts';
import type { Expression } from '../formula/types.ts';
import { toDocumentRange, type MappedText } from '../note/mappedText.ts';
import type { SourceRange } from '../problems/problem.ts';
import { formulasOf, namePlaces, type NameKind } from './names.ts';
import { walkPlan } from './planWalk.ts';

/** Declared in the manifest under the same names; a test holds them together. */
export const tokenTypes = ['tank', 'quantity', 'unit', 'moment', 'phase', 'result', 'function', 'reading'] as const;
export const tokenModifiers = ['declaration', 'leftOut', 'doubtful', 'corrected'] as const;
export type TokenType = (typeof tokenTypes)[number];
export type TokenModifier = (typeof tokenModifiers)[number];

export interface Token { readonly range: SourceRange; readonly type: TokenType; readonly modifiers: readonly TokenModifier[] }

const typeOf: Readonly<Record<NameKind, TokenType | null>> = {
  tank: 'tank', group: 'tank', quantity: 'quantity', fact: 'quantity', event: 'moment', phase: 'phase', result: 'result', function: 'function', word: 'moment',
};

/** Every token of the note, in order, none over another, none over a line's end. */
export function tokens(note: Note): Token[] {
  if (!note.protocol) return [];
  const found: Token[] = [];
  const add = (range: SourceRange, type: TokenType, modifiers: readonly TokenModifier[] = []): void => {
    if (range.end > range.start && !/[\r\n]/u.test(note.text.slice(range.start, range.end))) found.push({ range, type, modifiers });
  };
  for (const place of namePlaces(note)) {
    const type = place.kind === 'word' ? wordType(place.name) : typeOf[place.kind];
    if (type) add(place.range, type, place.declares && place.kind !== 'word' ? ['declaration'] : []);
  }
  const plan = walkPlan(note);
  for (const formula of formulasOf(note, plan)) formulaTokens(formula, add);
  for (const text of plan.texts) if (text.entry.type === 'unit') add(toDocumentRange(text.text, { start: 0, end: text.text.text.length }), 'unit');
  for (const table of note.tables) {
    for (const column of table.columns) {
      const bracket = /\[([^\]]+)\]/u.exec(note.text.slice(column.range.start, column.range.end));
      if (bracket) add({ start: column.range.start + bracket.index + 1, end: column.range.start + bracket.index + 1 + bracket[1]!.length }, 'unit');
    }
    if (table.file) continue;
    for (const row of table.rows) {
      for (const cell of row.cells) {
        const modifiers: TokenModifier[] = [...(cell.leftOut ? ['leftOut' as const] : []), ...(cell.doubtful ? ['doubtful' as const] : []), ...(cell.earlier.length > 0 ? ['corrected' as const] : [])];
        if (modifiers.length > 0) add(cell.range, 'reading', modifiers);
      }
    }
  }
  const sorted = found.sort((a, b) => a.range.start - b.range.start || b.range.end - a.range.end);
  const apart: Token[] = [];
  for (const token of sorted) if (apart.length === 0 || token.range.start >= apart.at(-1)!.range.end) apart.push(token);
  return apart;
}

function wordType(name: string): TokenType {
  if (/^(?:baseline|dark|recovery)(?:-\d+)?$/u.test(name)) return 'phase';
  return name === 'treatment' || name === 'control' || name === 'room' ? 'tank' : 'moment';
}

function formulaTokens(formula: MappedText, add: (range: SourceRange, type: TokenType) => void): void {
  const place = (range: SourceRange): SourceRange => toDocumentRange(formula, range);
  const visit = (expression: Expression): void => {
    switch (expression.kind) {
      case 'number': if (expression.unitRange) add(place(expression.unitRange), 'unit'); break;
      case 'instant': add(place(expression.range), 'moment'); break;
      case 'convert': visit(expression.operand); add(place(expression.unitRange), 'unit'); break;
      case 'call': expression.operands.forEach(visit); expression.options.forEach((option) => visit(option.value)); break;
      case 'binary': visit(expression.left); visit(expression.right); break;
      case 'unary': visit(expression.operand); break;
      default:
    }
  };
  visit(parseFormula(formula.text).expression);
}
